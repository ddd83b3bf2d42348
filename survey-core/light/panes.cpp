// SPDX-License-Identifier: Apache-2.0
#include "light/panes.h"

#include "light/bearing.h"
#include "light/degrees.h"
#include "survey/counted.h"
#include "units/length_text.h"
#include "units/saying.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numbers>

namespace truehang {
namespace {

// Common practice, no source.
constexpr Length usual_outer_depth = Length::mm(100.0);
constexpr double usual_glass_share = 0.8;  ///< of an opening’s area, the rest is frame

const Size* size_named(const WindowFigures& figures, const std::string& name) {
    const auto found = std::ranges::find(figures.sizes, name, &Size::name);
    return found == figures.sizes.end() ? nullptr : &*found;
}

/// The mean of what is known.
std::optional<Length> mean_of(std::initializer_list<std::optional<Length>> lengths) {
    double sum = 0.0;
    int count = 0;
    for (const auto& length : lengths) {
        sum += length ? length->mm() : 0.0;
        count += length ? 1 : 0;
    }
    return sum <= 0.0 ? std::nullopt : std::optional(Length::mm(sum / count));
}

/// How far each facet is turned from the mouth of the bay, clockwise seen from above, in their order.
std::vector<Angle> turns_of(const std::vector<PlanPoint>& plan) {
    const auto along = [](const PlanPoint& from, const PlanPoint& to) {
        return std::atan2((to.y - from.y).mm(), (to.x - from.x).mm()) / per_degree;
    };
    std::vector<Angle> turns;
    for (std::size_t facet = 1; facet < plan.size(); ++facet) {
        const double mouth = along(plan.front(), plan.back());
        turns.push_back(Angle::degrees(-std::remainder(along(plan[facet - 1], plan[facet]) - mouth, 360.0)));
    }
    return turns;
}

class PanesMaker {
public:
    PanesMaker(const Survey& survey, const Window& window, const WindowFigures& figures, Angle bearing)
        : window_(window),
          figures_(figures),
          readings_(counted_readings(window, window.shape.known().value_or(Shape::recess))),
          bearing_(bearing),
          unit_(survey.entry_unit ? length_unit(*survey.entry_unit).value_or(LengthUnit::mm) : LengthUnit::mm) {
        if (window.outlook) {
            outlook_ = &*window.outlook;
        }
    }

    Panes made() {
        if (window_.shape.is(Shape::bay) || window_.shape.is(Shape::corner)) {
            take_facets();
        } else {
            take_opening();
        }
        if (!panes_.openings.empty() && !(outlook_ != nullptr && outlook_->outer_depth)) {
            panes_.assumed.push_back(
                say("The glass stands {} back from the outside of the wall.", said(usual_outer_depth)));
        }
        return panes_;
    }

private:
    [[nodiscard]] std::string said(Length length) const { return said_length(length, unit_); }
    [[nodiscard]] Length outer_depth() const {
        return outlook_ != nullptr ? outlook_->outer_depth.value_or(usual_outer_depth) : usual_outer_depth;
    }

    /// An adjusted size, else the reading that counts.
    [[nodiscard]] std::optional<Length> known(const std::string& station) const {
        if (const Size* size = size_named(figures_, station)) {
            return size->value;
        }
        const CountedReading* reading = find_counted(readings_, station);
        return reading == nullptr ? std::nullopt : std::optional(reading->value);
    }

    /// From sill (or floor) to head at a plumb line.
    [[nodiscard]] std::optional<Length> height_at(const std::string& line) const {
        const Size* sill = size_named(figures_, "sill." + line);
        const Size* head = size_named(figures_, "head." + line);
        if (sill != nullptr && head != nullptr) {
            return head->value - sill->value;
        }
        return known("opening.height." + line);
    }

    struct Height {
        std::optional<Length> most;
        double filled = 1.0;  ///< the share of the box that an arch or a gable fills
    };
    [[nodiscard]] Height height() const {
        const auto sides = mean_of({height_at("left"), height_at("right")});
        const auto centre = height_at("centre");
        const bool arch = window_.shape.is(Shape::arch);
        if (!arch && !window_.shape.is(Shape::gable)) {
            return {mean_of({height_at("left"), centre, height_at("right")})};
        }
        const auto rise = known("arch.rise");
        const Length feet = sides ? *sides : rise && centre ? std::max(Length(), *centre - *rise) : Length();
        const Length most = centre ? *centre : feet + rise.value_or(Length());
        if (most.mm() <= 0.0) {
            return {};
        }
        // Half an ellipse, or a triangle, over its feet.
        const double of_peak = arch ? std::numbers::pi / 4.0 : 0.5;
        return {most, (feet.mm() + of_peak * std::max(0.0, (most - feet).mm())) / most.mm()};
    }

    void add(Length width, Length height, Angle turned) {
        panes_.openings.push_back({as_bearing(bearing_.degrees() + turned.degrees()), width, height, outer_depth(),
                                   known("opening.depth").value_or(Length()), skyline_of(window_, turned)});
        panes_.width = panes_.width + width;
        panes_.glass_m2 += width.metres() * height.metres();
    }

    void take_opening() {
        const auto width =
            mean_of({known("opening.width.top"), known("opening.width.middle"), known("opening.width.bottom")});
        const auto [height, filled] = this->height();
        const auto glass_width = outlook_ != nullptr ? outlook_->glass_width : std::nullopt;
        const auto glass_height = outlook_ != nullptr ? outlook_->glass_height : std::nullopt;
        const bool measured = glass_width && glass_height && glass_width->mm() > 0.0 && glass_height->mm() > 0.0;
        if (measured) {
            add(*glass_width, *glass_height, {});
            panes_.height = *glass_height;
            panes_.margin = width ? std::max(Length(), (*width - *glass_width) / 2.0) : Length();
        } else if (width && height) {
            add(*width, *height, {});
            panes_.height = *height;
            panes_.glass_m2 *= usual_glass_share * filled;
            panes_.assumed.push_back(say("The glass fills the opening, {} × {}, but for a fifth that is frame.",
                                         said(*width), said(*height)));
        }
    }

    void take_facets() {
        const auto turns = turns_of(figures_.plan);
        for (std::size_t facet = 0; facet < turns.size(); ++facet) {
            const auto width = known(fmt::format("facet.{}.width", facet + 1));
            const auto own = known(fmt::format("facet.{}.height", facet + 1));
            const auto height = own ? own : known("facet.1.height");
            if (width && height && width->mm() > 0.0 && height->mm() > 0.0) {
                panes_.height = panes_.openings.empty() ? *height : panes_.height;
                add(*width, *height, turns[facet]);
            }
        }
        if (!panes_.openings.empty()) {
            panes_.glass_m2 *= usual_glass_share;
            panes_.assumed.push_back(say("The glass fills each facet but for a fifth that is frame."));
        }
    }

    const Window& window_;
    const WindowFigures& figures_;
    std::vector<CountedReading> readings_;
    Angle bearing_;
    LengthUnit unit_;
    const Outlook* outlook_ = nullptr;
    Panes panes_;
};

}  // namespace

std::vector<SkyBlock> skyline_of(const Window& window, Angle turned) {
    std::vector<SkyBlock> blocks;
    if (!window.outlook) {
        return blocks;
    }
    for (const SkylinePart& part : window.outlook->skyline) {
        const double from = part.from.value_or(Angle::degrees(-90.0)).degrees() - turned.degrees();
        const double to = part.to.value_or(Angle::degrees(90.0)).degrees() - turned.degrees();
        if (part.height && part.height->degrees() > 0.0 && from < to && to > -90.0 && from < 90.0) {
            blocks.push_back({Angle::degrees(std::max(from, -90.0)), Angle::degrees(std::min(to, 90.0)), *part.height});
        }
    }
    return blocks;
}

Angle mean_height(const std::vector<SkyBlock>& skyline) {
    double sum = 0.0;
    double weights = 0.0;
    for (double turned = -89.5; turned < 90.0; turned += 1.0) {
        double height = 0.0;
        for (const SkyBlock& block : skyline) {
            const bool here = turned >= block.from.degrees() && turned <= block.to.degrees();
            height = here ? std::max(height, block.height.degrees()) : height;
        }
        const double weight = std::cos(turned * per_degree);
        sum += weight * height;
        weights += weight;
    }
    return Angle::degrees(sum / weights);
}

Panes panes_of(const Survey& survey, const Window& window, const WindowFigures& figures, Angle bearing) {
    return PanesMaker(survey, window, figures, bearing).made();
}

}  // namespace truehang
