// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "sheet/drawing_board.h"
#include "sheet/window_outline.h"

#include <array>
#include <optional>
#include <string_view>
#include <vector>

namespace truehang {

/// Where the tape of a station runs that is drawn in its own place, not in a column beside the opening.
struct PlacedRun {
    std::array<Point, 2> run;
    std::array<Point, 2> edge;
    std::vector<Point> arc{};                     ///< of an angle, in place of the straight tape
    std::optional<std::array<Point, 2>> label{};  ///< what its label stands by; none: the run
    bool over_own = true;                         ///< its label may break its hairline
    double outward = -1.0;
};

/// Whether the station is one of a bay's, a corner's, an arch's or a gable's own.
[[nodiscard]] bool is_of_a_shape(std::string_view word);

/// Whether the outline has what the station is measured on: a bay of three facets has no fourth.
[[nodiscard]] bool has_place(const WindowOutline& outline, std::string_view word);

/// The run of such a station on the elevation (`board`) or on its plan; nothing for other stations and where there is
/// no place for it.
[[nodiscard]] std::optional<PlacedRun> placed_run(const DrawingBoard& board, const DrawingBoard* plan,
                                                  const WindowOutline& outline, std::string_view word);

}  // namespace truehang
