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
void weigh(PlanParts& parts);

}  // namespace truehang
