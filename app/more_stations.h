// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "shown_rows.h"
#include "survey/stations.h"

#include <vector>

namespace truehang {

/// What can be measured here beside what the walk asks for: a bay's next facet, an arch's next ordinate, depths and
/// angles that check. Roles: `station` (key), `says`.
[[nodiscard]] QList<ShownRows::Row> more_rows(const Window& window, const std::vector<Station>& walk);

}  // namespace truehang
