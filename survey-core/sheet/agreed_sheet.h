// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "figures/figures.h"
#include "sheet/sheet.h"
#include "survey/survey.h"

#include <optional>

namespace truehang {

/// A signature as strokes in ink, `width` wide in target units, over a line to write on; the line alone where none was
/// drawn.
[[nodiscard]] Elevation signature_drawing(const std::optional<Signature>& signature, double width, double pixel);

/// The client’s copy: each window drawn, what was agreed for it as it was frozen, the name and the signature, and where
/// it no longer covers what stands in the survey. While nobody has signed it says what there is to agree, over a line
/// for a pen. Nothing where there is nothing to agree.
[[nodiscard]] std::optional<Sheet> agreed_sheet(const Survey& survey, const Figures& figures, const SheetStyle& style);

/// What an agreement comes to, a sum for each currency: "236.04 GBP"; empty where no cloth has a price.
[[nodiscard]] std::string agreed_sum(const Agreed& agreed, const SheetStyle& style);

}  // namespace truehang
