// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "light/bearing.h"
#include "survey/survey.h"

#include <optional>
#include <string>
#include <vector>

// Which way a window of a survey faces, from all that was taken of it, in words.

namespace truehang {

/// What one look at it comes to.
struct FacingTold {
    std::string id;
    std::optional<Bearing> bearing;  ///< none: it can’t be counted, and `minds` says why
    std::string says;                ///< "Shadow on the sill: 184° ± 1°"
    std::vector<std::string> minds;  ///< what has to be minded of it, sentences
    bool apart = false;              ///< it doesn’t agree with the others and isn’t counted, or two disagree
};

struct Facing {
    std::optional<Bearing> bearing;
    std::vector<FacingTold> told;  ///< in the order they were taken; one where only the window’s own bearing stands
    std::string says;              ///< "Faces south, 184° ± 2°"; "Which way it faces isn’t known."
    std::optional<std::string> mind;  ///< where those that were taken disagree
};

/// Of a window of the survey. Where nothing stands in its outlook, its own `bearing_deg` counts, as good as what it is
/// from. A shadow or a compass isn’t counted while the site’s place isn’t known.
[[nodiscard]] Facing facing_of(const Survey& survey, const Window& window);

/// Where the survey’s site lies; none where it isn’t told.
[[nodiscard]] std::optional<Place> place_of(const Survey& survey);

/// "north", "north-east" … of eight.
[[nodiscard]] std::string compass_word(Angle bearing);

/// "184° ± 4°": twice the standard uncertainty, at least a degree.
[[nodiscard]] std::string said_bearing(const Bearing& bearing);

}  // namespace truehang
