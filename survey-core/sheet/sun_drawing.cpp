// SPDX-License-Identifier: Apache-2.0
#include "sheet/sun_drawing.h"

#include "light/degrees.h"
#include "light/panes.h"
#include "sheet/label_placing.h"
#include "sheet/opening_drawing.h"
#include "sheet/window_outline.h"
#include "sheet/words.h"
#include "units/saying.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

namespace truehang {
namespace {

using namespace std::chrono_literals;

constexpr double back_share = 0.5;  ///< of the opening’s height, from glass to eye
constexpr double beside = 0.3;      ///< of the opening’s width, drawn at each side of it
constexpr double over = 0.35;       ///< of its height, above
constexpr double under = 0.15;
constexpr double pad_px = 8.0;
constexpr auto step = 5min;
constexpr std::size_t steps_a_day = 288;

struct Day {
    unsigned month;
    std::string_view name;
};
constexpr std::array days{Day{6, to_say("June")}, Day{3, to_say("March")}, Day{12, to_say("December")}};

/// The sun at one moment, where somebody in the room would see it.
struct Sighting {
    Spot spot;
    double clock = 0.0;  ///< hours
    bool seen = false;   ///< in the window, nothing before it
};

/// Looks out of a window from the middle of its sill.
class Looker {
public:
    Looker(const Window& window, const WindowFigures& figures, const WindowOutline& outline)
        : outline_(outline), plan_(figures.plan), skyline_(skyline_of(window, {})) {
        middle_ = (outline.left_x[1] + outline.right_x[1]) / 2.0;
        eye_ = outline.at(outline.sill, middle_);
        back_ = back_share * std::max(1.0, top_at(middle_) - eye_);
    }

    /// Where a direction (to the right, out and up) meets the window, or the wall beside it; nothing behind the wall.
    [[nodiscard]] std::optional<Spot> meets(double right, double out, double up) const {
        if (out <= 0.02) {
            return std::nullopt;
        }
        if (outline_.is_folded() && plan_.size() > 2) {
            const auto facet = meets_facet(right, out, up);
            return facet ? facet : meets_beside(right, out, up);
        }
        const double along = back_ / out;
        return Spot{middle_ + along * right, eye_ + along * up};
    }

    [[nodiscard]] bool is_in_opening(Spot spot) const {
        const auto [x, y] = spot;
        if (x < outline_.left_x[1] || x > outline_.right_x[1] || y < outline_.at(outline_.sill, x)) {
            return false;
        }
        return y <= top_at(x);
    }

    /// The upper edge of the opening.
    [[nodiscard]] double top_at(double x) const {
        if (outline_.is_peaked() && outline_.peak.size() > 1) {
            const auto right = std::ranges::find_if(outline_.peak, [&](const auto& point) { return point.first >= x; });
            if (right == outline_.peak.begin() || right == outline_.peak.end()) {
                return outline_.eaves[1];
            }
            const auto left = std::prev(right);
            const double share = (x - left->first) / std::max(1e-9, right->first - left->first);
            return left->second + share * (right->second - left->second);
        }
        return outline_.at(outline_.head, x);
    }

    [[nodiscard]] bool is_hidden(double turned, double altitude) const {
        return std::ranges::any_of(skyline_, [&](const SkyBlock& block) {
            return turned >= block.from.degrees() && turned <= block.to.degrees() && altitude < block.height.degrees();
        });
    }
    [[nodiscard]] const std::vector<SkyBlock>& skyline() const { return skyline_; }

private:
    /// A bay stands unfolded: the spot lies on the facet that the look goes through.
    [[nodiscard]] std::optional<Spot> meets_facet(double right, double out, double up) const {
        const double from_x = plan_.back().x.mm() / 2.0;
        const double from_y = -back_;
        const std::size_t facets = std::min(plan_.size() - 1, outline_.facets.size());
        for (std::size_t i = 0; i < facets; ++i) {
            const double ax = plan_[i].x.mm() - from_x;
            const double ay = plan_[i].y.mm() - from_y;
            const double bx = plan_[i + 1].x.mm() - from_x - ax;
            const double by = plan_[i + 1].y.mm() - from_y - ay;
            const double across = right * by - out * bx;
            if (std::abs(across) < 1e-9) {
                continue;
            }
            const double along = (ax * by - ay * bx) / across;
            const double share = (ax * out - ay * right) / across;
            if (along > 0.0 && share >= 0.0 && share <= 1.0) {
                const FacetOutline& facet = outline_.facets[i];
                return Spot{facet.left + share * (facet.right - facet.left), eye_ + along * up};
            }
        }
        return std::nullopt;
    }

    /// The wall beside the mouth of a bay goes on from its outer facets.
    [[nodiscard]] std::optional<Spot> meets_beside(double right, double out, double up) const {
        const double mouth = plan_.back().x.mm();
        const double along = back_ / out;
        const double x = mouth / 2.0 + along * right;
        if (x >= 0.0 && x <= mouth) {
            return std::nullopt;
        }
        return Spot{x < 0.0 ? outline_.left_x[1] + x : outline_.right_x[1] + x - mouth, eye_ + along * up};
    }

    const WindowOutline& outline_;
    const std::vector<PlanPoint>& plan_;
    std::vector<SkyBlock> skyline_;
    double middle_ = 0.0, eye_ = 0.0, back_ = 0.0;
};

class SunDrawer {
public:
    SunDrawer(const Window& window, const WindowFigures& figures, const WindowLight& light,
              const SunDrawingOptions& options)
        : light_(light), options_(options), outline_(outline_of(window, figures)), looker_(window, figures, outline_) {}

    Elevation drawn(std::string title) {
        fit();
        DrawingBoard board(elevation_, zero_, elevation_.scale, options_.pixel);
        draw_opening(board, outline_);
        draw_skyline(board);
        if (light_.clock) {
            for (const Day& day : days) {
                draw_day(board, day);
            }
        }
        place_labels(elevation_, std::move(labels_), options_.text_width, options_.pixel);
        elevation_.title = std::move(title);
        elevation_.description = described();
        elevation_.guessed = !outline_.width_known || !outline_.height_known;
        return std::move(elevation_);
    }

private:
    void fit() {
        const double width = outline_.width();
        const double sill = outline_.sill.y[1];
        double top = outline_.head.y[1];
        for (const auto& point : outline_.peak) {
            top = std::max(top, point.second);
        }
        const double height = std::max(1.0, top - sill);
        left_ = outline_.left_x[1] - beside * width;
        right_ = outline_.right_x[1] + beside * width;
        low_ = sill - under * height;
        high_ = top + over * height;
        const double pad = pad_px * options_.pixel;
        elevation_.width = options_.width;
        elevation_.height = options_.height;
        elevation_.scale = std::min((options_.width - 2.0 * pad) / std::max(1.0, right_ - left_),
                                    (options_.height - 2.0 * pad) / std::max(1.0, high_ - low_));
        // What is left over shows more of the wall.
        const double wide = (options_.width - 2.0 * pad) / elevation_.scale;
        const double tall = (options_.height - 2.0 * pad) / elevation_.scale;
        left_ -= (wide - (right_ - left_)) / 2.0;
        right_ = left_ + wide;
        high_ += (tall - (high_ - low_)) / 2.0;
        low_ = high_ - tall;
        zero_ = {pad - left_ * elevation_.scale, options_.height - pad + low_ * elevation_.scale};
        elevation_.origin = zero_;
    }

    [[nodiscard]] bool is_on_paper(Spot spot) const {
        return spot.first >= left_ && spot.first <= right_ && spot.second >= low_ && spot.second <= high_;
    }

    void draw_skyline(DrawingBoard& board) {
        for (const SkyBlock& block : looker_.skyline()) {
            std::vector<Spot> top;
            for (double turned = block.from.degrees(); turned <= block.to.degrees() + 1e-9; turned += 1.5) {
                const double level = turned * per_degree;
                const double up = std::tan(block.height.degrees() * per_degree);
                const auto spot = looker_.meets(std::sin(level), std::cos(level), up);
                if (!spot || spot->first < outline_.left_x[1] || spot->first > outline_.right_x[1]) {
                    continue;
                }
                const double sill = outline_.at(outline_.sill, spot->first);
                const double y = std::min(spot->second, looker_.top_at(spot->first));
                if (y > sill) {
                    top.push_back({spot->first, y});
                    board.line(Role::hairline, stroke_px::hair, {spot->first, sill}, top.back(), "skyline");
                }
            }
            if (top.size() > 1) {
                board.polyline(Role::ink, stroke_px::fine, top, "skyline");
            }
        }
    }

    [[nodiscard]] std::vector<Sighting> follow(const Day& day) const {
        const SunClock& clock = *light_.clock;
        const std::chrono::sys_days date = std::chrono::year(clock.year) / std::chrono::month(day.month) / 21;
        const Moment start = Moment(date) - clock.offset(Moment(date) + 12h);
        const double bearing = light_.facing.bearing->bearing.degrees();
        std::vector<Sighting> seen;
        std::size_t number = 0;
        for (const Direction& sun : sun_every(clock.place, start, step, steps_a_day)) {
            const double hour = static_cast<double>(number++) / 12.0;
            const auto at = position_of(sun);
            const double altitude = at.altitude.degrees() + refraction(at.altitude).degrees();
            const double turned = turn(Angle::degrees(bearing), at.azimuth).degrees();
            const double level = std::cos(altitude * per_degree);
            const auto spot =
                altitude <= 0.0 ? std::nullopt
                                : looker_.meets(level * std::sin(turned * per_degree),
                                                level * std::cos(turned * per_degree), std::sin(altitude * per_degree));
            if (spot && is_on_paper(*spot)) {
                seen.push_back({*spot, hour, looker_.is_in_opening(*spot) && !looker_.is_hidden(turned, altitude)});
            }
        }
        return seen;
    }

    void draw_day(DrawingBoard& board, const Day& day) {
        const auto seen = follow(day);
        std::vector<Spot> run;
        for (std::size_t i = 0; i < seen.size(); ++i) {
            const bool goes_on = i > 0 && seen[i].clock - seen[i - 1].clock < 0.1;
            if (!goes_on || seen[i].seen != seen[i - 1].seen) {
                end_run(board, run, i > 0 && seen[i - 1].seen);
                if (goes_on) {
                    run.push_back(seen[i - 1].spot);
                }
            }
            run.push_back(seen[i].spot);
            mark_hour(board, seen[i]);
        }
        end_run(board, run, !seen.empty() && seen.back().seen);
        name_day(seen, day);
        told_.push_back(told(seen, day));
    }

    void end_run(DrawingBoard& board, std::vector<Spot>& run, bool seen) {
        if (run.size() > 1) {
            board.polyline(seen ? Role::ink : Role::guide, seen ? stroke_px::strong : stroke_px::fine, run, "sun");
        }
        run.clear();
    }

    void mark_hour(DrawingBoard& board, const Sighting& sighting) {
        const double hour = std::round(sighting.clock);
        if (std::abs(sighting.clock - hour) > 0.01 || !sighting.seen) {
            return;
        }
        board.circle(Role::ink, stroke_px::ink, sighting.spot, board.mm_of_px(3.0), "sun", true);
        if (static_cast<int>(hour) % 3 == 0) {
            want(fmt::format("{:.0f}", hour), sighting.spot, sighting.spot, 1, false);
        }
    }

    /// In the middle of where it stands in the window, else of where it is dotted.
    void name_day(const std::vector<Sighting>& seen, const Day& day) {
        std::vector<Sighting> from;
        std::ranges::copy_if(seen, std::back_inserter(from), &Sighting::seen);
        const auto& of = from.empty() ? seen : from;
        if (of.size() > 1) {
            const std::size_t middle = of.size() / 2;
            want(worded(day.name), of[middle - 1].spot, of[middle].spot, 2, true);
        }
    }

    void want(std::string text, Spot from, Spot to, int importance, bool must) {
        const auto at = [&](Spot spot) {
            return Point{zero_.x + elevation_.scale * spot.first, zero_.y - elevation_.scale * spot.second};
        };
        labels_.push_back({.text = std::move(text),
                           .station = {},
                           .from = at(from),
                           .to = at(to),
                           .size = options_.label_size * options_.pixel,
                           .importance = importance,
                           .must = must,
                           .over_own = true});
    }

    static std::string clock_text(double hour) {
        const int minutes = static_cast<int>(std::lround(hour * 2.0)) * 30;
        return fmt::format("{}:{:02}", minutes / 60, minutes % 60);
    }

    [[nodiscard]] static std::string told(const std::vector<Sighting>& seen, const Day& day) {
        std::string spans;
        for (std::size_t i = 0; i < seen.size();) {
            std::size_t end = i;
            while (end + 1 < seen.size() && seen[end + 1].seen == seen[i].seen &&
                   seen[end + 1].clock - seen[end].clock < 0.1) {
                ++end;
            }
            if (seen[i].seen) {
                spans += (spans.empty() ? "" : ", ") +
                         say("{} to {}", clock_text(seen[i].clock), clock_text(seen[end].clock));
            }
            i = end + 1;
        }
        return spans.empty() ? say("21 {}: the sun doesn’t stand in it.", worded(day.name))
                             : say("21 {}: the sun stands in it {}.", worded(day.name), spans);
    }

    [[nodiscard]] std::string described() const {
        std::string text = say("As seen from the middle of the sill, half the window’s height back.");
        for (const std::string& one : told_) {
            text += " " + one;
        }
        return text;
    }

    const WindowLight& light_;
    const SunDrawingOptions& options_;
    WindowOutline outline_;
    Looker looker_;
    Elevation elevation_{};
    Point zero_{};
    double left_ = 0.0, right_ = 0.0, low_ = 0.0, high_ = 0.0;
    std::vector<WantedLabel> labels_;
    std::vector<std::string> told_;
};

}  // namespace

Elevation sun_drawing_of(const Room& room, const Window& window, const WindowFigures& figures, const WindowLight& light,
                         const SunDrawingOptions& options) {
    return SunDrawer(window, figures, light, options).drawn(window_title(room, window));
}

}  // namespace truehang
