// SPDX-License-Identifier: Apache-2.0
#include "sizing/shaped_top.h"

#include "units/rounding.h"
#include "units/saying.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace truehang {

namespace {

using Corner = ShapedTop::Corner;

/// Straight between corners, level beyond the first and the last.
double on(const std::vector<Corner>& line, double x) {
    if (x <= line.front().first) {
        return line.front().second;
    }
    for (std::size_t i = 1; i < line.size(); ++i) {
        const auto [x0, y0] = line[i - 1];
        const auto [x1, y1] = line[i];
        if (x <= x1) {
            return x1 > x0 ? y0 + (y1 - y0) * (x - x0) / (x1 - x0) : y1;
        }
    }
    return line.back().second;
}

/// Where a function that bulges upward once between two places is highest.
template <class Function>
double highest(double low, double high, const Function& height) {
    constexpr int steps = 100;
    for (int i = 0; i < steps; ++i) {
        const double third = (high - low) / 3.0;
        if (height(low + third) < height(high - third)) {
            low += third;
        } else {
            high -= third;
        }
    }
    return (low + high) / 2.0;
}

void sort_out(std::vector<double>& places) {
    std::ranges::sort(places);
    const auto near = [](double a, double b) { return std::abs(a - b) < whole_tolerance; };
    places.erase(std::unique(places.begin(), places.end(), near), places.end());
}

/// Gathers the shape from the adjusted sizes.
class Working {
public:
    Working(const LayerContext& layer, PlumbMark base, Length hem, Findings& findings)
        : layer_(layer), base_(base), hem_(hem.mm()), findings_(findings) {}

    std::optional<ShapedSizes> work() { return layer_.measured.shape == Shape::arch ? arch() : gable(); }

private:
    struct Height {
        Line line;
        Estimate over_base;
    };

    const Estimate* span(std::string_view station) {
        const Estimate* found = layer_.measured.spans.find(station);
        if (found == nullptr) {
            missing_.emplace_back(station);
        } else {
            rests_on_.insert(rests_on_.end(), found->rests_on.begin(), found->rests_on.end());
        }
        return found;
    }

    std::optional<Estimate> head(Line line) const {
        return layer_.measured.plumb.between(line, base_, PlumbMark::head);
    }

    void lack_head(Line line) {
        const std::string suffix = "." + std::string(word_of(line));
        if (base_ == PlumbMark::floor && !layer_.measured.plumb.height(line, PlumbMark::sill)) {
            missing_.push_back("below" + suffix);
        }
        if (!layer_.measured.plumb.between(line, PlumbMark::sill, PlumbMark::head)) {
            missing_.push_back("opening.height" + suffix);
        }
    }

    bool lacks() {
        if (!missing_.empty()) {
            findings_.flag("missing-reading", Severity::stop,
                           say("The shaped top can’t be worked yet. Still to measure: {}.",
                               stations_words(missing_, layer_.measured.shape)),
                           missing_);
        }
        return !missing_.empty();
    }

    std::optional<ShapedSizes> arch() {
        const Estimate* width = span("opening.width.top");
        const Estimate* rise = span("arch.rise");
        std::vector<Height> springings;
        for (const Line line : all_lines) {
            if (auto height = head(line); height && rise != nullptr) {
                if (line == Line::centre) {
                    height->value = height->value - rise->value;
                }
                springings.push_back({line, std::move(*height)});
            }
        }
        if (springings.empty()) {
            lack_head(Line::centre);
        }
        if (lacks()) {
            return std::nullopt;
        }
        if (width->value.mm() < 1.0 || rise->value.mm() < 1.0) {
            return refused(say("There is no arch to follow: its width or its rise is nothing."));
        }
        auto curve = curve_of(width->value, rise->value);
        if (!curve && !layer_.measured.spans.arch_form) {
            return std::nullopt;
        }
        std::vector<Corner> over = curve ? std::vector<Corner>{{0.0, 0.0}} : ordinates(width->value, rise->value);
        return standing(width, rise, std::move(springings), std::move(over), curve);
    }

    std::optional<ArchCurve> curve_of(Length width, Length rise) {
        const auto form = layer_.measured.spans.arch_form;
        const double half = width.mm() / 2.0;
        if (!form) {
            if (rise.mm() > half + 1.0) {
                findings_.flag(
                    "missing-reading", Severity::stop,
                    say("The shaped top can’t be worked yet: an arch higher than half its width is no part of "
                        "one circle. Measure its height at some places along the springing line."),
                    {"ordinate.1.along", "ordinate.1.height"});
                return std::nullopt;
            }
            findings_.flag(
                "not-checked", Severity::note,
                say("The arch was taken as part of one circle, from its width and rise: nothing checks that. "
                    "Measure its height at a place or two along the springing line."));
            return ArchCurve{ArchForm::segmental, width.mm(), rise.mm(), 0.0};
        }
        if (*form == ArchForm::ordinates) {
            return std::nullopt;
        }
        const Estimate* side = layer_.measured.spans.find("arch.radius.side");
        return ArchCurve{*form, width.mm(), rise.mm(), side != nullptr ? side->value.mm() : 0.0};
    }

    /// The places that were read, straight between them.
    std::vector<Corner> ordinates(Length width, Length rise) const {
        std::vector<Corner> corners{{0.0, 0.0}, {width.mm() / 2.0, rise.mm()}, {width.mm(), 0.0}};
        for (int n = 1; n <= most_ordinates; ++n) {
            const Estimate* along = layer_.measured.spans.find(fmt::format("ordinate.{}.along", n));
            const Estimate* height = layer_.measured.spans.find(fmt::format("ordinate.{}.height", n));
            if (along == nullptr || height == nullptr) {
                continue;
            }
            const double x = along->value.mm();
            const auto same = [x](const Corner& corner) { return std::abs(corner.first - x) < 1.0; };
            if (x > 0.0 && x < width.mm() && std::ranges::none_of(corners, same)) {
                corners.emplace_back(x, height->value.mm());
            }
        }
        std::ranges::sort(corners);
        return corners;
    }

    /// The arch on its springings: on one height, or on each line's own where the hem follows.
    std::optional<ShapedSizes> standing(const Estimate* width, const Estimate* rise, std::vector<Height> springings,
                                        std::vector<Corner> over, std::optional<ArchCurve> curve) {
        const auto by_value = [](const Height& a, const Height& b) {
            return a.over_base.value.mm() < b.over_base.value.mm() - whole_tolerance;
        };
        const bool least = layer_.asked.hem_at == HemAt::floor || layer_.asked.hem_at == HemAt::sill;
        const bool follows = layer_.asked.drops == DropsAt::per_line;
        const auto deciding = least && !follows ? std::ranges::min_element(springings, by_value)
                                                : std::ranges::max_element(springings, by_value);
        const Height decided = *deciding;
        std::vector<Corner> feet;
        for (const Height& each : springings) {
            const double x = static_cast<double>(each.line) * width->value.mm() / 2.0;
            if (follows || each.line == decided.line) {
                feet.emplace_back(x, each.over_base.value.mm() - hem_);
            }
        }
        const Length drop_u = decided.line == Line::centre
                                  ? decided.over_base.u
                                  : Length::mm(std::hypot(decided.over_base.u.mm(), rise->u.mm()));
        rests_on_.insert(rests_on_.end(), decided.over_base.rests_on.begin(), decided.over_base.rests_on.end());
        return whole({ShapedTop(width->value, std::move(feet), std::move(over), curve), width->u, drop_u,
                      PlumbSpan{decided.line, base_, PlumbMark::head}, rests_on_});
    }

    std::optional<ShapedSizes> gable() {
        const Estimate* width = span("opening.width.bottom");
        const Estimate* apex = span("gable.apex.along");
        std::array<std::optional<Estimate>, 3> heads;
        for (const Line line : all_lines) {
            auto& own = heads[static_cast<std::size_t>(line)];
            own = head(line);
            if (!own) {
                lack_head(line);
            } else {
                rests_on_.insert(rests_on_.end(), own->rests_on.begin(), own->rests_on.end());
            }
        }
        if (lacks()) {
            return std::nullopt;
        }
        if (width->value.mm() < 1.0 || apex->value.mm() < 0.0 || apex->value > width->value) {
            return refused(say("The apex doesn’t stand over the window. Look at where it was measured."));
        }
        std::vector<Corner> slopes{{0.0, heads[0]->value.mm() - hem_},
                                   {apex->value.mm(), heads[1]->value.mm() - hem_},
                                   {width->value.mm(), heads[2]->value.mm() - hem_}};
        return whole({ShapedTop(width->value, {{0.0, 0.0}}, std::move(slopes), std::nullopt), width->u, heads[1]->u,
                      PlumbSpan{Line::centre, base_, PlumbMark::head}, rests_on_});
    }

    std::optional<ShapedSizes> refused(const std::string& why) {
        findings_.flag("impossible", Severity::stop, why);
        return std::nullopt;
    }

    std::optional<ShapedSizes> whole(ShapedSizes sizes) {
        if (sizes.top.shortest().mm() <= 0.0) {
            return refused(say(
                "At its side the curtain would have no length: the hem hangs as high as the foot of the arch or slope. "
                "Choose a longer one, or a straight top."));
        }
        return sizes;
    }

    const LayerContext& layer_;
    PlumbMark base_;
    double hem_;
    Findings& findings_;
    std::vector<std::string> missing_, rests_on_;
};

/// Headings that run on something straight can't be cut to a shape.
bool follows_a_shape(Heading heading) { return heading_rule(heading).hangs_from == HangsFrom::rings_or_track; }

}  // namespace

ShapedTop::ShapedTop(Length width, std::vector<Corner> feet, std::vector<Corner> rise, std::optional<ArchCurve> curve)
    : width_(width), feet_(std::move(feet)), rise_(std::move(rise)), curve_(curve) {}

Length ShapedTop::drop_at(Length across) const {
    const double x = std::clamp(across.mm(), 0.0, width_.mm());
    double over = 0.0;
    if (!curve_) {
        over = on(rise_, x);
    } else if (x > 0.0 && x < width_.mm()) {  // at the springings themselves nothing stands over them
        over = std::max(0.0, curve_->height_at(x));
    }
    return Length::mm(on(feet_, x) + over);
}

std::vector<Length> ShapedTop::corners() const {
    std::vector<double> places{0.0, width_.mm()};
    for (const auto* line : {&feet_, &rise_}) {
        for (const Corner& corner : *line) {
            if (line->size() > 1 && corner.first > 0.0 && corner.first < width_.mm()) {
                places.push_back(corner.first);
            }
        }
    }
    sort_out(places);
    std::vector<Length> corners;
    for (const double place : places) {
        corners.push_back(Length::mm(place));
    }
    return corners;
}

Length ShapedTop::longest_at() const {
    const auto ends = corners();
    const auto height = [this](double x) { return drop_at(Length::mm(x)).mm(); };
    double best = ends.front().mm();
    for (std::size_t i = 0; i + 1 < ends.size(); ++i) {
        for (const double x : {highest(ends[i].mm(), ends[i + 1].mm(), height), ends[i + 1].mm()}) {
            best = height(x) > height(best) + whole_tolerance ? x : best;
        }
    }
    return Length::mm(best);
}

Length ShapedTop::shortest() const {
    // Between two corners the edge bulges upward or is straight: the least stands at a corner.
    Length least = drop_at(Length());
    for (const Length place : corners()) {
        least = std::min(least, drop_at(place));
    }
    return least;
}

std::optional<ShapedSizes> shaped_top(const LayerContext& layer, PlumbMark base, Length hem, Findings& findings) {
    const Shape shape = layer.measured.shape;
    if (shape != Shape::arch && shape != Shape::gable) {
        findings.flag("impossible", Severity::stop,
                      say("There is no arch or slope here for the top to follow. Choose a straight top."));
        return std::nullopt;
    }
    if (!follows_a_shape(layer.asked.heading)) {
        findings.flag(
            "impossible", Severity::stop,
            say("A {} heading runs along something straight and can’t follow {}. Choose pleats, or a straight "
                "top.",
                worded(Word<Heading>::word_for(layer.asked.heading)),
                shape == Shape::arch ? say("an arch") : say("the slopes of a gable")));
        return std::nullopt;
    }
    return Working(layer, base, hem, findings).work();
}

std::vector<TopPoint> top_points(const ShapedTop& top, Length from, Length to, double fullness, Length step) {
    std::vector<double> places{from.mm(), to.mm()};
    for (int i = 1; from.mm() + i * step.mm() < to.mm(); ++i) {
        places.push_back(from.mm() + i * step.mm());
    }
    std::vector<Length> told = top.corners();
    told.push_back(top.longest_at());
    for (const Length place : told) {
        if (place > from && place < to) {
            places.push_back(place.mm());
        }
    }
    sort_out(places);
    std::vector<TopPoint> points;
    for (const double place : places) {
        const Length hung = Length::mm(place) - from;
        points.push_back({hung, fullness * hung, top.drop_at(Length::mm(place))});
    }
    return points;
}

std::vector<PlanPoint> hung_outline(const std::vector<TopPoint>& points) {
    std::vector<PlanPoint> outline;
    for (const TopPoint& point : points) {
        outline.push_back({point.hung, point.drop});
    }
    return outline;
}

std::vector<PlanPoint> flat_outline(const std::vector<TopPoint>& points) {
    std::vector<PlanPoint> outline;
    for (const TopPoint& point : points) {
        outline.push_back({point.flat, point.drop});
    }
    return outline;
}

}  // namespace truehang
