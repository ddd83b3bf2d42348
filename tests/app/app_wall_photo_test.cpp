// SPDX-License-Identifier: Apache-2.0
#include "straightened.h"

#include <QPainter>
#include <QTest>
#include <cmath>

using namespace truehang;

/// A wall of known sizes, drawn as a camera sees it, comes back straight.
class WallPhotoTest : public QObject {
    Q_OBJECT

private:
    static constexpr int width = 1600;
    static constexpr int height = 1200;

    /// A spot of the wall, mm from the opening’s bottom left corner, y up, as the picture has it: pixels. It narrows to
    /// the right and leans.
    static QPointF seen(double x, double y) {
        const double w = 1.0 + 6e-5 * x + 2e-5 * y;
        return {(430.0 + 0.42 * x + 0.02 * y) / w, (860.0 - 0.40 * y + 0.015 * x) / w};
    }
    static QPolygonF quad(double left, double bottom, double right, double top) {
        return {{seen(left, top), seen(right, top), seen(right, bottom), seen(left, bottom)}};
    }
    static TappedCorners tapped(const QPolygonF& corners) {
        TappedCorners taps;
        for (const QPointF& corner : corners) {
            taps.push_back({{corner.x() / width, corner.y() / height}});
        }
        return taps;
    }
    /// The opening 1200 x 1400 dark, a sheet white, a radiator of 800 x 500 red below it.
    static QImage picture() {
        QImage image(width, height, QImage::Format_RGB32);
        image.fill(QColor(170, 165, 155));
        QPainter painter(&image);
        painter.setPen(Qt::NoPen);
        const auto fill = [&](const QPolygonF& corners, const QColor& colour) {
            painter.setBrush(colour);
            painter.drawPolygon(corners);
        };
        fill(quad(0, 0, 1200, 1400), QColor(60, 70, 80));
        fill(quad(1300, 400, 1510, 697), Qt::white);
        fill(quad(200, -700, 1000, -200), QColor(200, 30, 30));
        return image;
    }
    static PhotoPlane plane() {
        PhotoPlane plane;
        plane.width_px = width;
        plane.height_px = height;
        plane.sheets.push_back({Length::mm(210), Length::mm(297), tapped(quad(1300, 400, 1510, 697)), {}});
        plane.opening = tapped(quad(0, 0, 1200, 1400));
        return plane;
    }
    static bool isRed(QRgb colour) { return qRed(colour) > 150 && qGreen(colour) < 90; }

private slots:
    void edgesStandWhereTheyAreOnTheWall_data() {
        QTest::addColumn<double>("share");
        QTest::newRow("as it was tapped") << 1.0;
        QTest::newRow("read at half its size") << 0.5;
    }
    void edgesStandWhereTheyAreOnTheWall() {
        QFETCH(double, share);
        const auto shape = photo_shape(plane());
        QVERIFY2(shape.ok(), shape.ok() ? "" : shape.error().text.c_str());
        const QImage photo =
            picture().scaled(QSize(width, height) * share, Qt::IgnoreAspectRatio, Qt::SmoothTransformation);
        const StraightPhoto straight = straightened(photo, *shape);
        const double px_per_mm = (straight.opening[1].x() - straight.opening[0].x()) / 1200.0;
        const auto pixel = [&](double x, double y) {
            return QPoint(static_cast<int>(std::lround(straight.opening[0].x() + x * px_per_mm)),
                          static_cast<int>(std::lround(straight.opening[0].y() - y * px_per_mm)));
        };
        constexpr double within = 10.0;  // mm: a pixel of the photo is 2.5, read at half 5
        for (const double along : {-650.0, -450.0, -250.0}) {
            QVERIFY(isRed(straight.picture.pixel(pixel(200.0 + within, along))));
            QVERIFY(!isRed(straight.picture.pixel(pixel(200.0 - within, along))));
            QVERIFY(isRed(straight.picture.pixel(pixel(1000.0 - within, along))));
            QVERIFY(!isRed(straight.picture.pixel(pixel(1000.0 + within, along))));
        }
        for (const double along : {250.0, 600.0, 950.0}) {
            QVERIFY(isRed(straight.picture.pixel(pixel(along, -200.0 - within))));
            QVERIFY(!isRed(straight.picture.pixel(pixel(along, -200.0 + within))));
            QVERIFY(isRed(straight.picture.pixel(pixel(along, -700.0 + within))));
            QVERIFY(!isRed(straight.picture.pixel(pixel(along, -700.0 - within))));
        }
    }

    void whatThePhotoDoesNotShowIsLeftOpen() {
        const auto shape = photo_shape(plane());
        const StraightPhoto straight = straightened(picture(), *shape);
        QCOMPARE(qAlpha(straight.picture.pixel(straight.opening[0].toPoint())), 255);
        int open = 0;
        for (int row = 0; row < straight.picture.height(); ++row) {
            open += qAlpha(straight.picture.pixel(0, row)) == 0 ? 1 : 0;
        }
        // 700 mm to the left of the opening lies at 136 pixels or more in this picture; 900 mm below it beyond its
        // lower edge.
        QCOMPARE(qAlpha(straight.picture.pixel(0, straight.picture.height() - 1)), 0);
        QVERIFY(open > 0 && open < straight.picture.height());
        QVERIFY(std::max(straight.picture.width(), straight.picture.height()) == 1400);
    }
};

QTEST_GUILESS_MAIN(WallPhotoTest)
#include "app_wall_photo_test.moc"
