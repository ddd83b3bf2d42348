// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "units/length.h"

namespace truehang {

/// A point of a bay seen from above: its left outer edge at the origin, its right outer edge on the x axis; x to the
/// right as seen from inside the room, y away from the room (negative on the room's side of the mouth).
struct PlanPoint {
    Length x, y;
};

}  // namespace truehang
