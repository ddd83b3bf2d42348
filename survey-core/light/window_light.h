// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "figures/figures.h"
#include "light/facing.h"
#include "light/window_sun.h"
#include "survey/survey.h"

#include <functional>
#include <optional>
#include <string>
#include <vector>

// What light a window of a survey gives, as far as what was taken goes: what phone, sheet and page show. It costs a
// year of the sun, some milliseconds: ask where it is shown.

namespace truehang {

/// One pane: of a bay or corner one for each facet, else the window.
struct Pane {
    GlassOpening opening;
    double hours_on_glass = 0.0;  ///< a year
};

/// The average daylight factor of BS 8206-2, per cent.
struct Daylight {
    double open = 0.0;                 ///< of this window with nothing before it
    std::optional<double> drawn_back;  ///< with what hangs there drawn back
    std::optional<double> longer;      ///< the same on hardware of `longer_length`, where that clears the glass
    std::optional<Length> longer_length;
    double room = 0.0;            ///< of all the room’s windows as they hang, drawn back
    std::optional<double> least;  ///< what the standard asks of a room of this use
    bool room_whole = true;       ///< every window of the room is counted in `room`
};

/// A piece of advice and its reason, sentences.
struct LightAdvice {
    std::string text, reason;
};

/// Where and by what clock the sun is followed.
struct SunClock {
    Place place;
    OffsetAt offset;  ///< by the visit’s zone, else by the sun
    int year = 0;
};

struct WindowLight {
    Facing facing;
    std::optional<SunClock> clock;  ///< none where place, bearing or size aren’t known
    std::vector<Pane> panes;
    std::optional<SunHours> hours;         ///< on any of the panes; where there is a clock
    std::optional<SunlightDay> sunlight;   ///< EN 17037: the best day between 1 February and 21 March
    std::optional<double> strongest_w_m2;  ///< of the sun on this glass under a clear sky, to a hundred
    std::optional<Daylight> daylight;      ///< none where the room’s size isn’t known
    std::vector<LightAdvice> advice;
    std::vector<std::string> assumed;  ///< what stands in for what wasn’t measured, sentences
    std::vector<std::string> wanted;   ///< what would have to be told for more, sentences
};

/// EN 17037 asks for so many hours on that day, at least.
inline constexpr double least_sunlight_hours = 1.5;

/// The figures of a window of the same survey.
using FiguresOf = std::function<const WindowFigures*(const Window&)>;

/// Never fails: what isn’t known is none in its place, and `wanted` says what is missing.
[[nodiscard]] WindowLight light_of(const Survey& survey, const Room& room, const Window& window,
                                   const FiguresOf& figures);

}  // namespace truehang
