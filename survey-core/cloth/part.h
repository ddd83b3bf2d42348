// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "cloth/plan.h"

namespace truehang {

/// What the parts of a plan are worked from and written to; used by the files of this folder alone.
struct PlanParts {
    const LayerContext& layer;
    const FinishedSizes& sizes;
    const LayerFabrics& fabrics;
    Findings& findings;
    ClothPlan& plan;
};

/// Face cloth of curtains or of a blind. False where it can't be cut.
[[nodiscard]] bool plan_face(PlanParts& parts);
void plan_lining(PlanParts& parts);
void plan_interlining(PlanParts& parts);
void plan_tabs(PlanParts& parts);
void plan_eyelets(PlanParts& parts);
void plan_weights(PlanParts& parts);
void plan_blind(PlanParts& parts);
void plan_pelmet(PlanParts& parts);
void plan_pleats_and_hooks(PlanParts& parts);
void plan_tie_backs(PlanParts& parts);
void weigh(PlanParts& parts);
void list_what_is_bought(PlanParts& parts);
void say_what_the_load_rests_on(PlanParts& parts);

/// Whether the curtain’s lining hangs on its own tape; never a blind’s.
[[nodiscard]] bool lining_is_separate(const LayerAsked& asked);

/// `count` centres, evenly from `first` to `last`, each figured for itself so that the last is exact; none where there
/// are more than a curtain can have.
[[nodiscard]] std::vector<Length> evenly(Length first, Length last, int count);

/// What hangs flat at a curtain’s leading edge (the one that meets the other, or that is drawn across): half the
/// overlap of a pair, return and overlap of one alone. The rest of what hangs flat is the other edge’s return.
[[nodiscard]] Length flat_at_leading_edge(const LayerContext& layer, Length hangs_flat);

/// A whole number of things from a quotient, kept below what a house rule gone wild would ask for.
[[nodiscard]] int whole_count(double whole);

}  // namespace truehang
