// SPDX-License-Identifier: Apache-2.0
#include "cloth/plan.h"

#include "cloth/part.h"
#include "cloth/wishes.h"
#include "units/rounding.h"

#include <algorithm>

namespace truehang {

namespace {

const Fabric* named(const std::optional<std::string>& id, const std::vector<Fabric>& fabrics) {
    if (!id) {
        return nullptr;
    }
    const auto found = std::ranges::find(fabrics, *id, &Fabric::id);
    return found == fabrics.end() ? nullptr : &*found;
}

}  // namespace

LayerFabrics fabrics_of(const Treatment& treatment, const std::vector<Fabric>& fabrics) {
    return {named(treatment.fabric, fabrics), named(treatment.lining, fabrics), named(treatment.interlining, fabrics),
            named(treatment.second_lining, fabrics)};
}

Length usable_width(const Fabric& fabric) { return fabric.width - 2.0 * fabric.selvedge; }

Length joined_width(const Fabric& fabric) {
    const Length usable = usable_width(fabric);
    const Length repeat = fabric.repeat_across.value_or(Length());
    const bool any_way = fabric.match && fabric.match->is(Match::none);
    return any_way || repeat.mm() <= 0.0 ? usable : floor_whole(usable / repeat) * repeat;
}

Match match_of(const Fabric& fabric) {
    if (fabric.repeat.mm() <= 0.0) {
        return Match::none;
    }
    return fabric.match ? fabric.match->known().value_or(Match::straight) : Match::straight;
}

namespace {

/// All that follows from the face cloth.
void plan_after_face(PlanParts& parts) {
    plan_lining(parts);
    plan_interlining(parts);
    if (!parts.layer.asked.is_blind()) {
        plan_tabs(parts);
        plan_eyelets(parts);
        plan_weights(parts);
        plan_pleats_and_hooks(parts);
        plan_tie_backs(parts);
    }
    plan_pelmet(parts);
    weigh(parts);
    say_what_the_load_rests_on(parts);
}

}  // namespace

ClothPlan plan_cloth(const LayerContext& layer, const FinishedSizes& sizes, const LayerFabrics& fabrics,
                     Findings& findings) {
    ClothPlan plan;
    PlanParts parts{layer, sizes, fabrics, findings, plan};
    if (const auto wish = impossible_wish(parts)) {
        findings.flag("impossible", Severity::stop, *wish);
        return plan;
    }
    if (layer.asked.is_blind()) {
        plan_blind(parts);
    }
    if (fabrics.face != nullptr && plan_face(parts)) {
        if (const auto wish = impossible_part(parts)) {
            findings.flag("impossible", Severity::stop, *wish);
            return plan;
        }
        plan_after_face(parts);
    }
    list_what_is_bought(parts);
    return plan;
}

}  // namespace truehang
