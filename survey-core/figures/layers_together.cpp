// SPDX-License-Identifier: Apache-2.0
#include "figures/layers_together.h"

#include "units/length_text.h"
#include "units/rounding.h"
#include "units/saying.h"

#include <algorithm>

namespace truehang {

namespace {

bool is_more(Length a, Length b) { return a.mm() > b.mm() + whole_tolerance; }

Flag flag(std::string code, Severity severity, std::string text, const StandingLayer& layer) {
    return {std::move(code), severity, {}, std::move(text), "", layer.id, {}};
}

/// Writes the flags of layers that hang one before the other.
class Comparing {
public:
    explicit Comparing(LengthUnit unit) : unit_(unit) {}
    std::vector<Flag> flags;

    /// How far one stands in the way of the next.
    void depth(const StandingLayer& inner, const StandingLayer& outer) {
        if (!inner.far || !outer.near) {
            flags.push_back(flag(
                "layers-not-checked", Severity::note,
                say("Whether {} clears {} isn’t checked: say how far each hangs off the wall.", inner.name, outer.name),
                outer));
            return;
        }
        const Length overlap = *inner.far - *outer.near;
        if (is_more(overlap, Length())) {
            flags.push_back(
                flag("layers-foul", Severity::decide,
                     say("The {} stands out to {} off the wall, and the {} begins at {}: they meet. "
                         "Hang the outer one {} further off, or the inner one nearer to the wall.",
                         inner.name, said(*inner.far), outer.name, said(*outer.near), said(cut_up(overlap))),
                     outer));
        }
    }

    void cover(const StandingLayer& inner, const StandingLayer& outer) {
        if (!inner.left || !outer.left || !inner.right || !outer.right) {
            return;
        }
        const Length on_left = *outer.left - *inner.left;
        const Length on_right = *inner.right - *outer.right;
        std::string sides;
        if (is_more(on_left, Length())) {
            sides = say("{} on the left", said(on_left));
        }
        if (is_more(on_right, Length())) {
            const std::string there = say("{} on the right", said(on_right));
            sides = sides.empty() ? there : say("{} and {}", sides, there);
        }
        if (!sides.empty()) {
            flags.push_back(flag("layers-foul", Severity::decide,
                                 say("The {} doesn’t cover the {}: it lacks {}. Choose it longer, or move it.",
                                     outer.name, inner.name, sides),
                                 outer));
        }
    }

    void hems(const StandingLayer& inner, const StandingLayer& outer) {
        constexpr double told_from = 5.0;  // less isn’t seen (common practice, no source)
        // A blind inside its recess hides nothing that hangs outside, nor shows below it.
        if (!inner.bottom || !outer.bottom || inner.inside || outer.inside) {
            return;
        }
        const Length shows = *outer.bottom - *inner.bottom;
        if (is_more(shows, Length::mm(told_from))) {
            flags.push_back(flag("layers-foul", Severity::note,
                                 say("The {} hangs out below the {} by {}.", inner.name, outer.name, said(shows)),
                                 outer));
        }
    }

    void recess(const StandingLayer& layer) {
        if (layer.inside && layer.far && is_more(*layer.far, Length())) {
            flags.push_back(flag("layers-foul", Severity::decide,
                                 say("Drawn up, the {} is deeper than its recess by {}. Hang it outside, or choose "
                                     "fewer folds.",
                                     layer.name, said(*layer.far)),
                                 layer));
        }
    }

private:
    [[nodiscard]] std::string said(Length length) const { return said_length(length, unit_); }
    LengthUnit unit_;
};

}  // namespace

Length half_thickness(const LayerAsked& asked, const Blind* blind) {
    switch (asked.heading) {
        case Heading::roman:
            return Length::mm(12.5 + 3.0 * (blind != nullptr ? blind->rods : 0));
        case Heading::eyelet:
        case Heading::pinch_pleat:
            return Length::mm(50.0);
        case Heading::goblet:
        case Heading::s_fold:
            return Length::mm(60.0);
        default:
            break;
    }
    return Length::mm(40.0);
}

StandingLayer standing_of(const LayerContext& layer, const FinishedSizes& sizes, const Blind* blind, std::size_t number,
                          const std::string& id, const Findings& findings) {
    const LayerAsked& asked = layer.asked;
    StandingLayer standing;
    standing.id = id;
    standing.name = say("layer {} ({})", number, worded(heading_rule(asked.heading).says));
    standing.inside = asked.is_inside_blind();
    const Length half = half_thickness(asked, blind);
    const HungAt hung = placed(layer, sizes);
    if (standing.inside) {
        if (const Estimate* depth = layer.measured.spans.find("opening.depth")) {
            standing.far = 2.0 * half - depth->value;
        } else {
            standing.far = Length();  // taken to fit
        }
    } else if (hung.projection) {
        const Length reach = std::max(half, asked.diameter() / 2.0);
        standing.near = *hung.projection - reach;
        standing.far = *hung.projection + reach;
    }
    standing.left = hung.left;
    standing.right = hung.right;
    if (sizes.can_be_made() && !findings.stops()) {
        standing.bottom = sizes.top ? std::optional(*sizes.top - sizes.drop) : hung.bottom;
    }
    return standing;
}

std::vector<Flag> layer_flags(const std::vector<StandingLayer>& layers, LengthUnit unit) {
    Comparing comparing(unit);
    for (std::size_t i = 0; i < layers.size(); ++i) {
        comparing.recess(layers[i]);
        if (i + 1 < layers.size()) {
            comparing.depth(layers[i], layers[i + 1]);
            comparing.cover(layers[i], layers[i + 1]);
            comparing.hems(layers[i], layers[i + 1]);
        }
    }
    return std::move(comparing.flags);
}

}  // namespace truehang
