// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <QByteArray>
#include <QImage>
#include <QSize>
#include <optional>

// What reading a picture costs in memory, and how small it is read so that it stays within bounds.

namespace truehang {

/// How many pixels are kept: a phone's photo stays as large as it is, a poster's scan is made smaller.
inline constexpr qint64 photo_pixel_limit = 60'000'000;
/// The most that reading one picture may take at once, in bytes: a phone's photo of 108 million pixels takes 0.5 GB as
/// cameras write it.
inline constexpr qint64 picture_memory_limit = 800LL * 1024 * 1024;

/// A picture as its file says it is, before its pixels are read.
struct PictureToRead {
    QSize size;
    QImage::Format format = QImage::Format_RGB32;  ///< as it is read, where it isn't a JPEG
    bool jpeg = false;                             ///< a JPEG is made smaller while it is read
    qint64 held = 0;                               ///< bytes of `jpeg_held`
};

/// The size to read a picture at, of at most `most_pixels` and in its proportions: fewer where more would take too much
/// memory. Nothing where no size is within bounds.
[[nodiscard]] std::optional<QSize> size_to_read(const PictureToRead& picture, qint64 most_pixels);

/// The size at which a picture is kept: its own, or as many pixels as are kept in the same proportion.
[[nodiscard]] QSize kept_size(const QSize& size, qint64 most_pixels = photo_pixel_limit);

/// The bytes of coefficients that are held until a JPEG's last scan is read: of one that comes in several scans, as a
/// progressive one does (ITU-T T.81, G.1.1), two for each sample; 0 for any other and for what is no JPEG.
[[nodiscard]] qint64 jpeg_held(const QByteArray& jpeg);

}  // namespace truehang
