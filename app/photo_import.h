// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "picture_memory.h"
#include "units/result.h"

#include <QByteArray>
#include <QImage>

namespace truehang {

/// The largest file taken in, in bytes; how many of its pixels are kept: `photo_pixel_limit`.
inline constexpr qint64 photo_file_limit = 64LL * 1024 * 1024;
/// The largest that a kept photo becomes, in bytes: what a workroom takes.
inline constexpr qint64 photo_kept_limit = 32LL * 1024 * 1024;
inline constexpr int thumbnail_side = 320;

/// What is kept of what a file says beside its pixels: place, owner, camera, time.
enum class SaidBeside {
    dropped,
    kept,  ///< Exif, XMP and IPTC of a JPEG; only where the surveyor asked for it
};

/// A picture as it is kept: upright, JPEG, without a byte of what the file said about place, owner, camera or time,
/// unless that is asked for.
struct ImportedPhoto {
    QByteArray jpeg;
    int width = 0;
    int height = 0;
};

/// Reads a picture file's bytes and turns it upright as its orientation tag asks (Exif 2.32, tag 0x0112); of more than
/// `most_pixels`, or where it would take more than `picture_memory_limit`, it is read smaller. Errors: `unreadable` for
/// what isn't a picture or is cut short, `out_of_range` for one that is too large to be opened. May run on any thread.
[[nodiscard]] Result<QImage> read_picture(const QByteArray& file, qint64 most_pixels = photo_pixel_limit);

/// The same, and encodes its pixels anew, as many as are kept.
[[nodiscard]] Result<ImportedPhoto> import_photo(const QByteArray& file, SaidBeside said = SaidBeside::dropped);
/// The same for pixels that are in hand already, as from the clipboard.
[[nodiscard]] Result<ImportedPhoto> import_photo(const QImage& picture);

/// A small picture of a kept photo; null where it doesn't read. May run on any thread.
[[nodiscard]] QImage thumbnail_of(const QByteArray& jpeg);

}  // namespace truehang
