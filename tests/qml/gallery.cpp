// SPDX-License-Identifier: Apache-2.0
#include "plates.h"

#include <CLI/CLI.hpp>
#include <QDir>
#include <QGuiApplication>
#include <QHash>
#include <algorithm>
#include <cstdio>
#include <cstdlib>

using namespace truehang::test;

namespace {

// The largest compression that a PNG can have.
constexpr int smallest = 0;

int apart(QRgb one, QRgb other) {
    return std::max({std::abs(qRed(one) - qRed(other)), std::abs(qGreen(one) - qGreen(other)),
                     std::abs(qBlue(one) - qBlue(other))});
}

/// With a table of colours in which each is at most 3 of 255 from what it was: a third of the bytes. As it is where 256
/// don't do.
QImage small(const QImage& picture) {
    static constexpr int rounding = 3;
    static_assert(2 * rounding < golden_tolerance);
    QImage indexed(picture.size(), QImage::Format_Indexed8);
    QList<QRgb> colours;
    QHash<QRgb, int> places;
    for (int y = 0; y < picture.height(); ++y) {
        for (int x = 0; x < picture.width(); ++x) {
            const QRgb colour = picture.pixel(x, y);
            auto place = places.constFind(colour);
            if (place == places.constEnd()) {
                const auto near = std::find_if(colours.cbegin(), colours.cend(),
                                               [&](QRgb other) { return apart(colour, other) <= rounding; });
                place = places.insert(colour, static_cast<int>(near - colours.cbegin()));
                if (near == colours.cend()) {
                    colours << colour;
                }
            }
            if (colours.size() > 256) {
                return picture;
            }
            indexed.scanLine(y)[x] = static_cast<uchar>(*place);
        }
    }
    indexed.setColorTable(colours);
    return indexed;
}

bool write(Plates& plates, const GalleryLook& look, const QString& control, const QString& folder) {
    if (!Plates::pictured(control, look)) {
        return true;
    }
    const QString place = folder + QLatin1Char('/') + QLatin1String(look.name);
    const QString file = place + QLatin1Char('/') + control + QStringLiteral(".png");
    plates.show(control);
    if (!QDir().mkpath(place) || !small(stacked(plates.taken())).save(file, "PNG", smallest)) {
        std::fprintf(stderr, "%s can't be written.\n", qPrintable(file));
        return false;
    }
    return true;
}

int write_all(const QString& folder) {
    Plates plates;
    for (const GalleryLook& look : gallery_looks) {
        plates.dress(look);
        for (const QString& control : plates.controls()) {
            if (!write(plates, look, control, folder)) {
                return 1;
            }
        }
    }
    return Scene::warnings().isEmpty() ? 0 : 1;
}

}  // namespace

/// Shows every control in every state, or writes their pictures, a file a control and look.
int main(int argc, char** argv) {
    CLI::App command("Every control of the face in every state.");
    std::string folder;
    command.add_option("--out", folder, "Write the pictures into this folder and show nothing.");
    CLI11_PARSE(command, argc, argv);
    if (!folder.empty()) {
        pin_what_pictures_hang_on();
    }
    QGuiApplication app(argc, argv);
    QGuiApplication::setFont(QFont(QStringLiteral("Lato")));
    if (!folder.empty()) {
        return write_all(QString::fromStdString(folder));
    }
    Plates plates;
    plates.showAll({420, 900});
    return QGuiApplication::exec();
}
