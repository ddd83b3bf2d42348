// SPDX-License-Identifier: Apache-2.0
#include "photo_import.h"

#include "photo_segments.h"

#include <QBuffer>
#include <QCoreApplication>
#include <QImageReader>
#include <QImageWriter>
#include <algorithm>

namespace truehang {

namespace {

constexpr int jpeg_quality = 88;

Error error(ErrorCode code, const char* source) {
    return {code, "photo", QCoreApplication::translate("photos", source).toStdString()};
}

/// A reader's scaled size so that neither side is longer than `longest`; the size itself where it fits.
QSize fitted(const QSize& size, int longest) {
    return std::max(size.width(), size.height()) > longest ? size.scaled(longest, longest, Qt::KeepAspectRatio) : size;
}

/// What the reader is about to read. Qt's own limit for one picture, 128 MB, is raised to what `size_to_read` allows.
PictureToRead picture_in(QImageReader& reader, const QByteArray& file) {
    static const bool raised = [] {
        QImageReader::setAllocationLimit(static_cast<int>(picture_memory_limit / (1024 * 1024)));
        return true;
    }();
    Q_UNUSED(raised);
    const QSize size = reader.size();
    return {size, reader.imageFormat(), reader.format() == "jpeg", jpeg_held(file)};
}

/// Only the pixels, over paper white where they were transparent: texts, colour profiles and resolution stay behind.
/// What isn't transparent already lies as it is wanted and isn't copied; `picture` must outlive the answer.
QImage bare_pixels(const QImage& picture) {
    if (picture.format() == QImage::Format_RGB32) {
        return {picture.constBits(), picture.width(), picture.height(), picture.bytesPerLine(), QImage::Format_RGB32};
    }
    QImage bare(picture.size(), QImage::Format_RGB32);
    for (int y = 0; y < bare.height(); ++y) {  // row by row: a copy of the whole would take as much memory again
        const QImage row = picture.copy(0, y, picture.width(), 1).convertToFormat(QImage::Format_ARGB32_Premultiplied);
        const auto* from = reinterpret_cast<const QRgb*>(row.constScanLine(0));
        auto* to = reinterpret_cast<QRgb*>(bare.scanLine(y));
        for (int x = 0; x < bare.width(); ++x) {
            const int lack = 255 - qAlpha(from[x]);
            to[x] = qRgb(qRed(from[x]) + lack, qGreen(from[x]) + lack, qBlue(from[x]) + lack);
        }
    }
    return bare;
}

}  // namespace

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
    const auto smaller = size_to_read(picture_in(reader, file), most_pixels);
    if (!smaller) {
        return error(ErrorCode::out_of_range,
                     QT_TRANSLATE_NOOP("photos",
                                       "The picture has more pixels than can be opened here. Save a smaller "
                                       "copy of it and choose that."));
    }
    if (*smaller != size) {
        reader.setScaledSize(*smaller);
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
    const QSize small = fitted(reader.size(), thumbnail_side);
    if (small.isEmpty() || !size_to_read(picture_in(reader, jpeg), qint64{small.width()} * small.height())) {
        return {};
    }
    reader.setScaledSize(small);
    return reader.read();
}

}  // namespace truehang
