// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "protocol/time_text.h"
#include "units/result.h"
#include "workroom/keeping/kept_at.h"

#include <string>

namespace truehang::workroom {

struct Erasing {
    std::string survey;  ///< its id
    std::string by;      ///< who does it, for the list of what was erased
    sync::Time now;
};

struct ErasedCounts {
    long long revisions = 0, rolls = 0, photos = 0;
    bool before = false;  ///< it was erased before; what had been left of it is gone now
};

/// Erases a survey for good, also while they are served: every row that any table has of it, and photos that no
/// other survey names, with their files; then all records are written anew without what was freed, and the log is
/// emptied. A row with id, time, who and counts stays. Done again it finishes what was broken off. Errors: `missing`
/// where there is no such survey, `busy`, `full`, `io`, `damaged`; where it failed after the rows were gone the text
/// says so.
[[nodiscard]] Result<ErasedCounts> erase_survey(const KeptAt& kept, const Erasing& erasing);

}  // namespace truehang::workroom
