// SPDX-License-Identifier: Apache-2.0
#include "light/window_sun.h"

#include "light/bearing.h"
#include "light/degrees.h"

#include <algorithm>
#include <cmath>
#include <functional>
#include <numeric>

namespace truehang {
namespace {

using namespace std::chrono_literals;

constexpr auto step = 10min;
constexpr double step_hours = 1.0 / 6.0;
constexpr double lifted_below = 0.26;  ///< sine of 15°: above it the air lifts by less than 0.06°

/// A direction seen from a window: to the right of straight out as seen from inside, straight out, and up. The sun’s
/// azimuth grows to the right for somebody who looks out.
struct FromWindow {
    double right = 0.0, out = 0.0, up = 0.0;
};

/// The sun as the air lifts it.
Direction lifted(Direction sun) {
    if (std::abs(sun.up) < lifted_below) {
        const double altitude = std::asin(sun.up);
        sun.up = std::sin(altitude + refraction(Angle::degrees(altitude / per_degree)).degrees() * per_degree);
    }
    return sun;
}

class FacedWindow {
public:
    explicit FacedWindow(Angle bearing)
        : sine_(std::sin(bearing.degrees() * per_degree)), cosine_(std::cos(bearing.degrees() * per_degree)) {}

    [[nodiscard]] FromWindow see(const Direction& sun) const {
        return {sun.east * cosine_ - sun.north * sine_, sun.east * sine_ + sun.north * cosine_, sun.up};
    }

private:
    double sine_, cosine_;
};

/// What stands outside, for a sun that is up and before the window.
class Outside {
public:
    explicit Outside(const std::vector<SkyBlock>& blocks) {
        for (const auto& block : blocks) {
            blocks_.push_back({std::clamp(block.from.degrees(), -90.0, 90.0) * per_degree,
                               std::clamp(block.to.degrees(), -90.0, 90.0) * per_degree,
                               std::tan(std::clamp(block.height.degrees(), 0.0, 89.999) * per_degree)});
        }
    }

    [[nodiscard]] bool hides(const FromWindow& sun) const {
        if (blocks_.empty()) {
            return false;
        }
        const double turned = std::atan2(sun.right, sun.out);
        const double level = std::hypot(sun.right, sun.out);
        return std::ranges::any_of(blocks_, [&](const Block& block) {
            return turned >= block.from && turned <= block.to && sun.up < block.slope * level;
        });
    }

private:
    struct Block {
        double from, to, slope;
    };
    std::vector<Block> blocks_;
};

double share(Length width, Length height, Length depth, const FromWindow& sun) {
    if (sun.out <= 0.0 || sun.up <= 0.0) {
        return 0.0;
    }
    const double across = depth.mm() * std::abs(sun.right) / sun.out;
    const double down = depth.mm() * sun.up / sun.out;
    return std::max(0.0, width.mm() - across) * std::max(0.0, height.mm() - down) / (width.mm() * height.mm());
}

/// One opening of those that are asked together.
class Lit {
public:
    explicit Lit(const GlassOpening& opening) : opening_(opening), faced_(opening.bearing), outside_(opening.skyline) {}

    [[nodiscard]] bool on_glass(const Direction& sun) const { return reached(sun, opening_.outer_depth); }
    [[nodiscard]] bool on_cloth(const Direction& sun) const {
        return reached(sun, opening_.outer_depth + opening_.inner_depth);
    }

private:
    [[nodiscard]] bool reached(const Direction& sun, Length depth) const {
        const auto seen = faced_.see(sun);
        return seen.out > 0.0 && seen.up > 0.0 && !outside_.hides(seen) &&
               share(opening_.width, opening_.height, depth, seen) > 0.0;
    }

    const GlassOpening& opening_;
    FacedWindow faced_;
    Outside outside_;
};

/// The middle of the opening on the wall’s inner face sees the sun.
bool reaches_middle(const GlassOpening& opening, const FromWindow& sun) {
    const double depth = (opening.outer_depth + opening.inner_depth).mm();
    return sun.out > 0.0 && sun.up > 0.0 && depth * std::abs(sun.right) < sun.out * opening.width.mm() / 2.0 &&
           depth * sun.up < sun.out * opening.height.mm() / 2.0;
}

}  // namespace

Incidence incidence(Angle bearing, const SunPosition& sun) {
    const auto seen = FacedWindow(bearing).see(direction_of(sun));
    return {turn(bearing, sun.azimuth), Angle::degrees(std::acos(std::clamp(seen.out, -1.0, 1.0)) / per_degree),
            Angle::degrees(std::atan2(seen.up, seen.out) / per_degree)};
}

double lit_share(Length width, Length height, Length depth, Angle bearing, const SunPosition& sun) {
    return share(width, height, depth, FacedWindow(bearing).see(direction_of(sun)));
}

double sum(const HourTable& table) {
    double hours = 0.0;
    for (int month = 0; month < 12; ++month) {
        hours += sum(table, month);
    }
    return hours;
}

double sum(const HourTable& table, int month) {
    const auto& row = table[static_cast<std::size_t>(month)];
    return std::accumulate(row.begin(), row.end(), 0.0);
}

SunHours sun_hours(const Place& place, const std::vector<GlassOpening>& openings, int year, const OffsetAt& offset) {
    const std::chrono::sys_days first = std::chrono::year(year) / 1 / 1;
    const std::chrono::sys_days end = std::chrono::year(year + 1) / 1 / 1;
    const std::vector<Lit> panes(openings.begin(), openings.end());
    const Moment start = Moment(first) - offset(Moment(first));
    const auto count = static_cast<std::size_t>((end - first) / step);
    const auto path = sun_every(place, start + step / 2, step, count);  // each stands for the ten minutes around it
    SunHours hours;
    for (std::size_t hour = 0; hour * 6 < count; ++hour) {
        const Moment began = start + std::chrono::hours(hour);
        const auto local = began + offset(began);
        const auto day = std::chrono::floor<std::chrono::days>(local);
        const auto month = static_cast<unsigned>(std::chrono::year_month_day(day).month()) - 1;
        const auto clock = static_cast<std::size_t>((local - day) / 1h);
        for (std::size_t i = hour * 6; i < std::min(hour * 6 + 6, count); ++i) {
            const Direction sun = lifted(path[i]);
            hours.up[month][clock] += sun.up > 0.0 ? step_hours : 0.0;
            const auto glass = std::ranges::any_of(panes, [&](const Lit& pane) { return pane.on_glass(sun); });
            hours.on_glass[month][clock] += glass ? step_hours : 0.0;
            const auto cloth = glass && std::ranges::any_of(panes, [&](const Lit& pane) { return pane.on_cloth(sun); });
            hours.on_cloth[month][clock] += cloth ? step_hours : 0.0;
        }
    }
    return hours;
}

SunlightDay best_february_day(const Place& place, const GlassOpening& opening, int year, Angle lowest) {
    const std::chrono::sys_days first = std::chrono::year(year) / 2 / 1;
    const std::chrono::sys_days last = std::chrono::year(year) / 3 / 21;
    const FacedWindow facing(opening.bearing);
    const Outside outside(opening.skyline);
    const double least = std::sin(lowest.degrees() * per_degree);
    // A day by the sun: from its midnight on.
    const auto shift = std::chrono::milliseconds(static_cast<long long>(place.longitude.degrees() * 240'000.0));
    SunlightDay best{first, 0.0};
    for (auto day = first; day <= last; day += std::chrono::days(1)) {
        double hours = 0.0;
        for (const auto& at : sun_every(place, Moment(day) - shift + step / 2, step, 144)) {
            const auto sun = facing.see(lifted(at));
            hours += sun.up >= least && reaches_middle(opening, sun) && !outside.hides(sun) ? step_hours : 0.0;
        }
        if (hours > best.hours) {
            best = {day, hours};
        }
    }
    return best;
}

}  // namespace truehang
