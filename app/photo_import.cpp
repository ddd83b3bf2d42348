// SPDX-License-Identifier: Apache-2.0
#include "photo_import.h"

#include "photo_segments.h"

#include <QBuffer>
#include <QCoreApplication>
#include <QImageReader>
#include <QImageWriter>
#include <algorithm>
#include <cmath>

namespace truehang {

namespace {

constexpr int jpeg_quality = 88;
constexpr int side_read_limit = 30'000;  // of the file's picture, each way

Error error(ErrorCode code, const char* source) {
    return {code, "photo", QCoreApplication::translate("photos", source).toStdString()};
}

/// A reader's scaled size so that neither side is longer than `longest`; the size itself where it fits.
QSize fitted(const QSize& size, int longest) {
    return std::max(size.width(), size.height()) > longest ? size.scaled(longest, longest, Qt::KeepAspectRatio) : size;
}

/// Only the pixels, over paper white where they were transparent: texts, colour profiles and resolution stay behind.
/// What isn't transparent already lies as it is wanted and isn't copied; `picture` must outlive the answer.
QImage bare_pixels(const QImage& picture) {
    if (picture.format() == QImage::Format_RGB32) {
        return {picture.constBits(), picture.width(), picture.height(), picture.bytesPerLine(), QImage::Format_RGB32};
    }
    QImage bare(picture.size(), QImage::Format_RGB32);
    const QImage same = picture.convertToFormat(QImage::Format_ARGB32_Premultiplied);
    for (int y = 0; y < bare.height(); ++y) {
        const auto* from = reinterpret_cast<const QRgb*>(same.constScanLine(y));
        auto* to = reinterpret_cast<QRgb*>(bare.scanLine(y));
        for (int x = 0; x < bare.width(); ++x) {
            const int lack = 255 - qAlpha(from[x]);
            to[x] = qRgb(qRed(from[x]) + lack, qGreen(from[x]) + lack, qBlue(from[x]) + lack);
        }
    }
    return bare;
}

}  // namespace

QSize kept_size(const QSize& size, qint64 most_pixels) {
    const double pixels = static_cast<double>(size.width()) * size.height();
    if (pixels <= static_cast<double>(most_pixels)) {
        return size;
    }
    const double share = std::sqrt(static_cast<double>(most_pixels) / pixels);
    return {std::max(1, static_cast<int>(size.width() * share)), std::max(1, static_cast<int>(size.height() * share))};
}

Result<QImage> read_picture(const QByteArray& file, qint64 most_pixels) {
    if (file.size() > photo_file_limit) {
        return error(ErrorCode::out_of_range,
                     QT_TRANSLATE_NOOP("photos", "The file is larger than 64 MB. Choose a smaller picture."));
    }
    QBuffer buffer;
    buffer.setData(file);
    buffer.open(QIODevice::ReadOnly);
    QImageReader reader(&buffer);
    reader.setAutoTransform(true);
    reader.setDecideFormatFromContent(true);
    const QSize size = reader.size();
    if (!size.isValid() || size.isEmpty()) {
        return error(ErrorCode::unreadable,
                     QT_TRANSLATE_NOOP("photos", "This isn’t a picture that can be read. Choose a JPEG or PNG."));
    }
    if (size.width() > side_read_limit || size.height() > side_read_limit) {
        return error(ErrorCode::out_of_range,
                     QT_TRANSLATE_NOOP("photos", "The picture is larger than can be opened here."));
    }
    if (kept_size(size, most_pixels) != size) {
        reader.setScaledSize(kept_size(size, most_pixels));
    }
    QImage read = reader.read();
    if (read.isNull()) {
        return error(ErrorCode::unreadable,
                     QT_TRANSLATE_NOOP("photos", "The picture is damaged or cut short. Choose it again."));
    }
    return read;
}

Result<ImportedPhoto> import_photo(const QByteArray& file, SaidBeside said) {
    const auto read = read_picture(file);
    if (!read) {
        return read.error();
    }
    const auto photo = import_photo(*read);
    if (!photo || said == SaidBeside::dropped) {
        return photo;
    }
    return ImportedPhoto{with_segments(photo->jpeg, said_beside_pixels(file)), photo->width, photo->height};
}

Result<ImportedPhoto> import_photo(const QImage& picture) {
    if (picture.isNull()) {
        return error(ErrorCode::unreadable, QT_TRANSLATE_NOOP("photos", "There is no picture to take in."));
    }
    const QSize size = kept_size(picture.size());
    const QImage sized =
        size == picture.size() ? picture : picture.scaled(size, Qt::IgnoreAspectRatio, Qt::SmoothTransformation);
    const QImage bare = bare_pixels(sized);
    ImportedPhoto photo{{}, bare.width(), bare.height()};
    QBuffer out(&photo.jpeg);
    out.open(QIODevice::WriteOnly);
    QImageWriter writer(&out, "jpeg");
    writer.setQuality(jpeg_quality);
    if (!writer.write(bare)) {
        return error(ErrorCode::io, QT_TRANSLATE_NOOP("photos", "The picture can’t be written as JPEG."));
    }
    out.close();
    if (photo.jpeg.size() > photo_kept_limit) {  // noise that hardly packs: fewer pixels rather than none
        return import_photo(sized.scaled(sized.size() * 0.7, Qt::KeepAspectRatio, Qt::SmoothTransformation));
    }
    return photo;
}

QImage thumbnail_of(const QByteArray& jpeg) {
    QBuffer buffer;
    buffer.setData(jpeg);
    buffer.open(QIODevice::ReadOnly);
    QImageReader reader(&buffer, "jpeg");
    reader.setScaledSize(fitted(reader.size(), thumbnail_side));
    return reader.read();
}

}  // namespace truehang
