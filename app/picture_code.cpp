// SPDX-License-Identifier: Apache-2.0
#include "picture_code.h"

#include "photo_import.h"

#include <ZXing/ReadBarcode.h>
#include <QPainter>
#include <exception>

namespace truehang {

namespace {

/// Light and dark alone, over paper white where it was transparent.
QImage greys_of(const QImage& picture) {
    QImage greys(picture.size(), QImage::Format_Grayscale8);
    greys.fill(Qt::white);
    QPainter(&greys).drawImage(0, 0, picture);
    return greys;
}

QStringList codes_as_it_is(const QImage& picture) {
    const QImage greys = greys_of(picture);
    const ZXing::ImageView view(greys.constBits(), greys.width(), greys.height(), ZXing::ImageFormat::Lum,
                                static_cast<int>(greys.bytesPerLine()));
    const auto hints = ZXing::DecodeHints()
                           .setFormats(ZXing::BarcodeFormat::QRCode)
                           .setTryHarder(true)
                           .setTryRotate(true)
                           .setTryDownscale(true);
    QStringList codes;
    try {
        for (const auto& code : ZXing::ReadBarcodes(view, hints)) {
            codes.append(QString::fromStdString(code.text()));
        }
    } catch (const std::exception&) {
        // A code whose text ends before its own count of letters makes version 1.4 throw: nothing can be read in it.
        return {};
    }
    return codes;
}

}  // namespace

QStringList codes_in(const QImage& picture) {
    if (picture.isNull()) {
        return {};
    }
    const QStringList codes = codes_as_it_is(picture);
    if (!codes.isEmpty()) {
        return codes;
    }
    // Half as large: grain goes, which the library's own steps of a third take the modules with.
    return codes_as_it_is(picture.scaled(picture.size() / 2, Qt::IgnoreAspectRatio, Qt::SmoothTransformation));
}

Result<QStringList> codes_in(const QByteArray& file) {
    const auto picture = read_picture(file, code_pixel_limit);
    return picture ? Result<QStringList>(codes_in(*picture)) : Result<QStringList>(picture.error());
}

}  // namespace truehang
