// SPDX-License-Identifier: Apache-2.0
#include "light/window_light.h"

#include "document/document.h"
#include "light/clear_sky.h"
#include "light/degrees.h"
#include "light/light_advice.h"
#include "light/room_daylight.h"
#include "light/zone.h"
#include "units/saying.h"

#include <algorithm>
#include <cmath>

namespace truehang {
namespace {

constexpr int usual_year = 2025;
/// EN 17037 leaves out a sun so low that the least altitude of the country’s capital isn’t reached; ours where no
/// country is known.
constexpr Angle lowest_sun = Angle::degrees(10.0);
/// Optical depths of a middling clear sky: those of San Francisco in May (ASHRAE Handbook, Fundamentals, 2009), good
/// for an order of magnitude anywhere.
constexpr SkyDepths middling_sky{0.368, 2.360};

int year_of(const Survey& survey) {
    const auto at = read_rfc3339(survey.measured_at);
    if (!at) {
        return usual_year;
    }
    const int year = int(std::chrono::year_month_day(std::chrono::floor<std::chrono::days>(*at)).year());
    return std::clamp(year, 2000, 2060);
}

/// The strongest beam on the panes on the 21st of a month, W/m², to a hundred.
double strongest_on(const Place& place, const std::vector<Pane>& panes, int year) {
    using namespace std::chrono;
    double strongest = 0.0;
    for (unsigned month = 1; month <= 12; ++month) {
        const sys_days day = std::chrono::year(year) / std::chrono::month(month) / 21;
        const int number = static_cast<int>((day - sys_days(std::chrono::year(year) / 1 / 1)).count()) + 1;
        for (const Direction& sun : sun_every(place, Moment(day), minutes(30), 48)) {
            const auto at = position_of(sun);
            for (const Pane& pane : panes) {
                const double lit = lit_share(pane.opening.width, pane.opening.height, pane.opening.outer_depth,
                                             pane.opening.bearing, at);
                const double on = std::cos(incidence(pane.opening.bearing, at).incidence.degrees() * per_degree);
                strongest =
                    lit > 0.0 ? std::max(strongest, on * clear_sky(middling_sky, number, at.altitude).beam) : strongest;
            }
        }
    }
    return 100.0 * std::round(strongest / 100.0);
}

class LightMaker {
public:
    LightMaker(const Survey& survey, const Room& room, const Window& window, const FiguresOf& figures)
        : survey_(survey), room_(room), window_(window), figures_(figures), place_(place_of(survey)) {}

    WindowLight made() {
        light_.facing = facing_of(survey_, window_);
        const WindowFigures* figures = figures_(window_);
        const Angle bearing = light_.facing.bearing ? light_.facing.bearing->bearing : Angle();
        const Panes panes = figures != nullptr ? panes_of(survey_, window_, *figures, bearing) : Panes();
        say_what_is_wanted(panes);
        if (place_ && light_.facing.bearing && !panes.openings.empty()) {
            follow_sun(panes);
        }
        light_.assumed.insert(light_.assumed.end(), panes.assumed.begin(), panes.assumed.end());
        auto daylight = room_daylight(survey_, room_, window_, figures_);
        light_.daylight = daylight.factors;
        std::ranges::move(daylight.assumed, std::back_inserter(light_.assumed));
        light_.advice = light_advice(survey_, window_, light_);
        return std::move(light_);
    }

private:
    void say_what_is_wanted(const Panes& panes) {
        if (!place_) {
            light_.wanted.push_back(say("Where the house stands: with it the sun can be worked out."));
        }
        if (!light_.facing.bearing) {
            light_.wanted.push_back(say("Which way this window faces: with it the sun can be worked out."));
        }
        if (panes.openings.empty()) {
            light_.wanted.push_back(say("The width and height of the opening, or of its glass."));
        }
        const auto& interior = room_.interior;
        if (!interior || !interior->width || !interior->depth || !interior->height) {
            light_.wanted.push_back(
                say("The room’s width, depth and height: with them its daylight can be worked out."));
        }
    }

    void follow_sun(const Panes& panes) {
        auto offset = offset_in(survey_.time_zone);
        if (!offset) {
            light_.assumed.push_back(
                say("Hours are the sun’s own, as the visit’s time zone isn’t known: noon is when it stands highest."));
            offset = offset_by_sun(place_->longitude);
        }
        const int year = year_of(survey_);
        light_.clock = SunClock{*place_, *offset, year};
        light_.hours = sun_hours(*place_, panes.openings, year, *offset);
        for (const GlassOpening& opening : panes.openings) {
            const bool alone = panes.openings.size() == 1;
            const double hours =
                sum(alone ? light_.hours->on_glass : sun_hours(*place_, {opening}, year, *offset).on_glass);
            light_.panes.push_back({opening, hours});
            const SunlightDay best = best_february_day(*place_, opening, year, lowest_sun);
            if (!light_.sunlight || best.hours > light_.sunlight->hours) {
                light_.sunlight = best;
            }
        }
        light_.strongest_w_m2 = strongest_on(*place_, light_.panes, year);
        if (!window_.outlook || window_.outlook->skyline.empty()) {
            light_.assumed.push_back(say("Nothing stands before the sky outside."));
        }
    }

    const Survey& survey_;
    const Room& room_;
    const Window& window_;
    const FiguresOf& figures_;
    std::optional<Place> place_;
    WindowLight light_;
};

}  // namespace

WindowLight light_of(const Survey& survey, const Room& room, const Window& window, const FiguresOf& figures) {
    return LightMaker(survey, room, window, figures).made();
}

}  // namespace truehang
