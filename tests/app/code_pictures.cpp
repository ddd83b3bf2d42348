// SPDX-License-Identifier: Apache-2.0
#include "code_pictures.h"

#include <QBuffer>
#include <QPainter>
#include <QRandomGenerator>
#include <QTransform>
#include <algorithm>
#include <qrcodegen/qrcodegen.hpp>

namespace truehang::test {

namespace {

QImage drawn(const qrcodegen::QrCode& code, int module) {
    constexpr int quiet_zone = 4;
    const int side = (code.getSize() + 2 * quiet_zone) * module;
    QImage picture(side, side, QImage::Format_RGB32);
    picture.fill(Qt::white);
    QPainter painter(&picture);
    for (int y = 0; y < code.getSize(); ++y) {
        for (int x = 0; x < code.getSize(); ++x) {
            if (code.getModule(x, y)) {
                painter.fillRect((x + quiet_zone) * module, (y + quiet_zone) * module, module, module, Qt::black);
            }
        }
    }
    return picture;
}

/// Less light towards the right, never quite black, and grain.
void light(QImage& picture, const Shot& shot) {
    QRandomGenerator chance(1);
    for (int y = 0; y < picture.height(); ++y) {
        auto* line = reinterpret_cast<QRgb*>(picture.scanLine(y));
        for (int x = 0; x < picture.width(); ++x) {
            const double here = shot.light * (1.0 - 0.6 * x / picture.width());
            const int grain = static_cast<int>(chance.bounded(2 * shot.noise + 1)) - shot.noise;
            const auto part = [&](int value) {
                return std::clamp(static_cast<int>(value * here) + 20 + grain, 0, 255);
            };
            line[x] = qRgb(part(qRed(line[x])), part(qGreen(line[x])), part(qBlue(line[x])));
        }
    }
}

}  // namespace

QImage picture_of(const QString& text, int module) {
    return drawn(qrcodegen::QrCode::encodeText(text.toUtf8().constData(), qrcodegen::QrCode::Ecc::MEDIUM), module);
}

QImage picture_of_a_broken_count() {
    const qrcodegen::QrSegment broken(qrcodegen::QrSegment::Mode::BYTE, 80, std::vector<bool>(16));
    return drawn(qrcodegen::QrCode::encodeSegments({broken}, qrcodegen::QrCode::Ecc::MEDIUM), 8);
}

QImage photographed(const QImage& flat, const Shot& shot) {
    const double side = shot.share * shot.size.height();
    const QPointF at(shot.size.width() * 0.3, shot.size.height() * 0.15);
    const QPolygonF from(
        {{0, 0}, {1.0 * flat.width(), 0}, {1.0 * flat.width(), 1.0 * flat.height()}, {0, 1.0 * flat.height()}});
    const double high = side * flat.height() / flat.width();
    const QPolygonF to({at, at + QPointF(side, 0.12 * high), at + QPointF(0.9 * side, 0.95 * high),
                        at + QPointF(-0.08 * side, 0.85 * high)});
    QTransform askew;
    QTransform::quadToQuad(from, to, askew);
    QImage photo(shot.size, QImage::Format_RGB32);
    photo.fill(QColor(70, 60, 50));
    QPainter painter(&photo);
    painter.setRenderHints(QPainter::SmoothPixmapTransform | QPainter::Antialiasing);
    painter.setTransform(askew);
    painter.drawImage(0, 0, flat);
    painter.end();
    if (shot.blur > 1) {
        photo = photo.scaled(shot.size / shot.blur, Qt::IgnoreAspectRatio, Qt::SmoothTransformation)
                    .scaled(shot.size, Qt::IgnoreAspectRatio, Qt::SmoothTransformation);
    }
    light(photo, shot);
    return photo.transformed(QTransform().rotate(shot.turned));
}

QByteArray file_of(const QImage& picture, const char* format, int quality) {
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    picture.save(&buffer, format, quality);
    return bytes;
}

}  // namespace truehang::test
