// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <QByteArray>

// What a JPEG file says beside its pixels: marker segments after the start of the image (ITU-T T.81, B.1.1.4 and
// B.2.4.6). Exif 2.32 and XMP stand in APP1, IPTC in APP13.

namespace truehang {

/// The whole segments APP1 and APP13 of a JPEG, in their order, with every orientation in them set to upright: Exif's
/// tag 0x0112 of the first directory, and XMP's `tiff:Orientation`. Empty where there are none, the file is no JPEG, or
/// its segments are cut short.
[[nodiscard]] QByteArray said_beside_pixels(const QByteArray& jpeg);

/// A JPEG with these segments after its start and its APP0.
[[nodiscard]] QByteArray with_segments(const QByteArray& jpeg, const QByteArray& segments);

}  // namespace truehang
