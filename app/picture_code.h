// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "units/result.h"

#include <QByteArray>
#include <QImage>
#include <QStringList>

namespace truehang {

/// How many pixels of a picture file are looked through for codes: a larger photo is read smaller, which is
/// quicker and takes noise out of it.
inline constexpr qint64 code_pixel_limit = 12'000'000;

/// What the QR codes (ISO/IEC 18004) in a picture say, in the order in which they are found; none where none can be
/// read. They may lie turned, askew and in poor light. May run on any thread.
[[nodiscard]] QStringList codes_in(const QImage& picture);
/// The same of a picture file's bytes, within the limits and with the errors of `read_picture`.
[[nodiscard]] Result<QStringList> codes_in(const QByteArray& file);

}  // namespace truehang
