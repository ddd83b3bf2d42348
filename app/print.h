// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "sheet/paper.h"
#include "sheet/sheets.h"
#include "sheet/stamp.h"
#include "store/visit_file.h"
#include "survey/survey.h"
#include "units/result.h"

#include <QString>
#include <optional>
#include <vector>

namespace truehang {

/// What is printed, and how.
struct PrintAsked {
    std::vector<SheetKind> kinds{SheetKind::measure};
    QString window{};                  ///< its id; empty: all windows
    std::optional<Paper> paper{};      ///< none: the locale's
    std::optional<LengthUnit> unit{};  ///< mm or in; none: the survey's own
    std::optional<SheetStamp> stamp{};
};

/// The paper of the system's locale.
[[nodiscard]] Paper locale_paper();

/// Writes sheets as one PDF, each from a fresh page and with its own pages counted, every number as `sheet` writes it.
/// Needs a QGuiApplication (an offscreen one will do), on any thread. False: it was stopped, and what stands in `file`
/// is of no use. Errors: `missing` where the survey has no such window or nothing is worked that such a sheet could
/// say, `io` where the file can't be written.
[[nodiscard]] Result<bool> print_sheets(const Survey& survey, const PrintAsked& asked, const QString& file,
                                        const LongWork& work = {});

/// The measure sheet of one window.
[[nodiscard]] Result<bool> print_sheet(const Survey& survey, const QString& windowId, const QString& file);

}  // namespace truehang
