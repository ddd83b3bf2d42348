// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <QImage>
#include <QSize>
#include <QString>

// Picture codes as a workroom's page shows them, and photos of them as a hand takes them.

namespace truehang::test {

/// A pairing text of an invented workroom. The pin is the SHA-256 of “abc”: FIPS 180-2, appendix B.1.
inline const QString pairing_text =
    "truehang:pair?at=https://192.0.2.7:8737&code=7K2M-QX4D&until=2026-03-14T10:30:00.000Z&pin="
    "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad";

/// A text as a QR code (ISO/IEC 18004, error correction M) with the light edge that it needs, `module` pixels a module.
[[nodiscard]] QImage picture_of(const QString& text, int module = 8);
/// A code that says that more letters follow than it holds.
[[nodiscard]] QImage picture_of_a_broken_count();

/// How something flat is photographed: askew, on a dark table, in light that fails towards one side.
struct Shot {
    QSize size{1200, 900};
    double share = 0.6;  ///< of the photo's height that the flat thing takes
    double light = 1.0;  ///< of what would be white at the brighter side
    int noise = 5;       ///< each pixel is off by as much at most, of 255
    int blur = 1;        ///< pixels that run into one
    int turned = 0;      ///< degrees
};
[[nodiscard]] QImage photographed(const QImage& flat, const Shot& shot = {});

/// A picture as a file.
[[nodiscard]] QByteArray file_of(const QImage& picture, const char* format = "jpeg", int quality = 80);

}  // namespace truehang::test
