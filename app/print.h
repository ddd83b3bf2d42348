// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "survey/survey.h"
#include "units/result.h"

#include <QString>

namespace truehang {

/// Writes the sheet of one window as PDF on A4, a page or more for each layer, every number as `sheet` writes it. Needs
/// a QGuiApplication (an offscreen one will do). Errors: `missing` where the survey has no such window, `io` where the
/// file can't be written.
[[nodiscard]] Result<Done> print_sheet(const Survey& survey, const QString& windowId, const QString& file);

}  // namespace truehang
