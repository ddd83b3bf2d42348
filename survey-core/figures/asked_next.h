// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "adjust/measured.h"
#include "figures/figures.h"

#include <optional>

namespace truehang {

/// Sets `next`, the one reading worth taking, or `nothing_more`, why there is none. In this order: what a figure lacks;
/// what tells best why readings don't add up; what rests on no tape; a level line where floor or sill and head can't be
/// told apart; what makes a drop surer whose ± decides how much is cut. `drop_along` is the span of the drop that
/// matters.
void ask_next(const Window& window, const MeasuredWindow& measured, const std::optional<PlumbSpan>& drop_along,
              WindowFigures& figures);

}  // namespace truehang
