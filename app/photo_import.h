// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "units/result.h"

#include <QByteArray>
#include <QImage>

namespace truehang {

/// The largest file taken in, in bytes, and the longest side kept, in px: a phone's photo fits, a poster's scan is made
/// smaller.
inline constexpr qint64 photo_file_limit = 64LL * 1024 * 1024;
inline constexpr int photo_side_limit = 4096;
inline constexpr int thumbnail_side = 320;

/// A picture as it is kept: upright, JPEG, without a byte of what the file said about place, owner, camera or time.
struct ImportedPhoto {
    QByteArray jpeg;
    int width = 0;
    int height = 0;
};

/// Reads a picture file's bytes, turns it upright as its orientation tag asks (Exif 2.32, tag 0x0112) and encodes its
/// pixels anew. Errors: `unreadable` for what isn't a picture or is cut short, `out_of_range` for one that is too large
/// to be opened. May run on any thread.
[[nodiscard]] Result<ImportedPhoto> import_photo(const QByteArray& file);
/// The same for pixels that are in hand already, as from the clipboard.
[[nodiscard]] Result<ImportedPhoto> import_photo(const QImage& picture);

/// A small picture of a kept photo; null where it doesn't read. May run on any thread.
[[nodiscard]] QImage thumbnail_of(const QByteArray& jpeg);

}  // namespace truehang
