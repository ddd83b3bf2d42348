// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "figures/figures.h"
#include "sheet/drawing.h"
#include "survey/survey.h"
#include "units/length_text.h"

#include <functional>
#include <string>
#include <string_view>

namespace truehang {

/// How wide a text is, in target units, at a size, in the shipped figure font. The same function on phone, page and
/// paper makes the same labels.
using TextWidth = std::function<double(std::string_view text, double size, bool bold)>;

/// Advances of Lato's digits and letters as shares of the size, for callers that have no font at hand. Never narrower
/// than Lato 2.0 regular and bold set the texts that a drawing has.
[[nodiscard]] double plain_text_width(std::string_view text, double size, bool bold);

/// How curtains and blinds are shown.
enum class Drawn {
    absent,  ///< while measuring: hardware only
    back,    ///< curtains drawn back, blinds up
    shut,    ///< curtains drawn shut, blinds down
};

struct ElevationOptions {
    double width = 320.0;  ///< the target rectangle, in target units; at least 120 each way
    double height = 280.0;
    double pixel = 1.0;           ///< a device-independent px in target units: 1 on screens, 25.4/96 on paper in mm
    double label_size = 16.0;     ///< in px, as all of the following
    double active_size = 18.0;    ///< of the station being measured
    bool dimensions = true;       ///< measured dimensions with their tapes and labels
    Drawn drawn = Drawn::absent;  ///< what hangs there
    std::string active_station;   ///< the station being measured, else empty
    std::string typed;            ///< its half-typed text as it stands in the field, else empty
    LengthStyle length_style;     ///< how dimensions are written: the surveyor's entry unit, the locale's decimal mark
    TextWidth text_width = plain_text_width;
};

/// The options with the survey's entry unit for its dimensions.
[[nodiscard]] ElevationOptions elevation_options_for(const Survey& survey);

/// The window from inside the room, to scale, as far as it is known: from the adjusted sizes of `figures`, from the
/// readings that count where there is no size yet, in dashed typical proportions where nothing was measured. Floor and
/// ceiling slope where a level line was taken; without one the floor is drawn level. The labels never lie on each
/// other, on the end of a line or across ink; the least important are left out rather, never the active one.
[[nodiscard]] Elevation elevation_of(const Survey& survey, const Room& room, const Window& window,
                                     const WindowFigures& figures, const ElevationOptions& options);

/// The window turned round: a cut through wall, sill, radiator and pole, the room to the right, showing how far each
/// stands out from the wall face.
[[nodiscard]] Elevation side_view_of(const Survey& survey, const Room& room, const Window& window,
                                     const WindowFigures& figures, const ElevationOptions& options);

}  // namespace truehang
