// SPDX-License-Identifier: Apache-2.0
#include "cloth/part.h"
#include "units/rounding.h"

#include <algorithm>

// What is bought beside the cloth for one layer, by number or by length. Counts follow from the figures; the makings
// themselves (a ring or a glider to each hook, tape turned in at its ends, two rings to a tie-back, a cord down each
// line of a blind) are common practice, no source.

namespace truehang {

namespace {

/// Adds to the list of one layer, leaving out what comes to nothing.
class Shelf {
public:
    explicit Shelf(std::vector<Bought>& bought) : bought_(bought) {}

    void count(const char* what, int count, Length each = {}) {
        if (count > 0) {
            bought_.push_back({what, count, Length(), each});
        }
    }
    void length(const char* what, Length length) {
        if (length.mm() > 0.0) {
            bought_.push_back({what, 0, cut_up(length), Length()});
        }
    }

private:
    std::vector<Bought>& bought_;
};

void add_heading(const PlanParts& parts, Shelf& shelf) {
    const LayerAsked& asked = parts.layer.asked;
    const Length flat = parts.plan.cloth->flat;
    const Length turned = Length::mm(2.0 * parts.layer.rules.tape_turn);
    switch (asked.heading) {
        case Heading::pencil_pleat:
        case Heading::s_fold:
            shelf.length("heading tape", asked.curtains() * (flat + turned));
            break;
        case Heading::pinch_pleat:
        case Heading::goblet:
        case Heading::box_pleat:
        case Heading::eyelet:
            shelf.length("buckram", asked.curtains() * flat);
            break;
        case Heading::tab:
        case Heading::slot:
        case Heading::roman:
            break;
    }
}

void add_separate_lining(const PlanParts& parts, const std::optional<Lining>& lining, Shelf& shelf) {
    if (!lining || !lining->separate) {
        return;
    }
    const HouseRules& rules = parts.layer.rules;
    const int curtains = parts.layer.asked.curtains();
    const int hooks = 1 + whole_count(std::max(1.0, ceil_whole(parts.sizes.width.mm() / rules.hook_gap)));
    shelf.length("lining tape", curtains * (lining->flat + Length::mm(2.0 * rules.tape_turn)));
    shelf.count("lining hooks", curtains * hooks);
}

void add_curtain(const PlanParts& parts, Shelf& shelf) {
    const LayerAsked& asked = parts.layer.asked;
    const ClothPlan& plan = parts.plan;
    if (!plan.cloth) {
        return;
    }
    add_heading(parts, shelf);
    add_separate_lining(parts, plan.lining, shelf);
    add_separate_lining(parts, plan.making.second_lining, shelf);
    if (plan.making.hooks && asked.hardware != nullptr) {
        shelf.count("hooks", plan.making.hooks->in_all);
        shelf.count(asked.is_on_track() ? "gliders" : "rings", plan.making.hooks->in_all);
    }
    shelf.count("eyelets", plan.eyelets ? asked.curtains() * plan.eyelets->each : 0);
    shelf.count("weights", plan.weights ? asked.curtains() * plan.weights->each : 0);
    if (const auto& tie_back = plan.making.tie_back) {
        const bool is_cloth = tie_back->length.has_value();
        shelf.count("holdbacks", is_cloth ? 0 : tie_back->count);
        shelf.count("tie-back rings", is_cloth ? 2 * tie_back->count : 0);
        shelf.count("tie-back hooks", is_cloth ? tie_back->count : 0);
    }
}

/// Whether it is drawn up by hand on cords; not said counts as that.
bool counts_as_corded(const Treatment& treatment) {
    return !treatment.operation || treatment.operation->is(Operation::cord);
}

/// Lines that lift a blind: one near each edge, at most a gap apart.
int lift_lines(const PlanParts& parts) {
    return 1 + std::max(1, whole_count(ceil_whole(parts.sizes.width.mm() / parts.layer.rules.cord_gap)));
}

void add_blind(const PlanParts& parts, Shelf& shelf) {
    const Treatment& asked = *parts.layer.asked.treatment;
    const Length width = parts.sizes.width;
    const int rods = parts.plan.blind->rods;
    const Length rod = cut_up(std::max(Length(), width - Length::mm(parts.layer.rules.rod_short)));
    const int lines = lift_lines(parts);
    shelf.count("blind rods", rods, rod);
    shelf.count("blind bottom bars", 1, rod);
    shelf.length("hook-and-loop", width);
    shelf.count("blind rings", lines * rods);
    if (counts_as_corded(asked)) {
        // Each line up the drop, across to the side that it is drawn at (half the width on average), and down again.
        shelf.length("cord", lines * (2.0 * parts.sizes.drop + width / 2.0));
        shelf.count("cleats", 1);
    } else if (asked.operation->is(Operation::chain) || asked.operation->is(Operation::motor)) {
        shelf.length("lift cord", lines * parts.sizes.drop);
    }
}

void add_pelmet(const PlanParts& parts, Shelf& shelf) {
    if (const auto& pelmet = parts.plan.pelmet) {
        shelf.count("pelmet boards", 1, cut_up(pelmet->face));
        shelf.length("hook-and-loop", pelmet->face + 2.0 * parts.layer.asked.treatment->pelmet->return_depth);
    }
}

}  // namespace

void list_what_is_bought(PlanParts& parts) {
    Shelf shelf(parts.plan.making.bought);
    if (parts.layer.asked.is_blind()) {
        add_blind(parts, shelf);
    } else {
        add_curtain(parts, shelf);
    }
    add_pelmet(parts, shelf);
}

}  // namespace truehang
