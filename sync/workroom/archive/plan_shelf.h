// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "units/result.h"
#include "workroom/archive/archive.h"

#include <optional>
#include <string>
#include <string_view>

namespace truehang::workroom {

/// What a roll plan is worked from. Digests are SHA-256 in hexadecimal.
struct PlanBasis {
    std::string survey_sha256;  ///< of the survey document
    std::string rolls_sha256;   ///< of the rolls document
    std::string rules_sha256;   ///< of the house rules that hold for the survey
    int planner = 0;            ///< `planner_version`

    bool operator==(const PlanBasis&) const = default;
};

struct KeptPlan {
    PlanBasis basis;
    std::string worked_at;  ///< RFC 3339
    std::string bytes;      ///< the roll plan document
};

/// The plan that was last worked out of each survey: the one thing here that is replaced, since it can be worked out
/// again from what is kept.
class PlanShelf {
public:
    explicit PlanShelf(Archive& archive) : archive_(archive) {}

    /// The plan of a survey, whatever it was worked from; nothing where none was worked out.
    [[nodiscard]] Result<std::optional<KeptPlan>> plan(std::string_view survey) const;
    /// Keeps a plan in the place of the one before; it is on the disk when this returns.
    [[nodiscard]] Result<KeptPlan> keep(std::string_view survey, PlanBasis basis, std::string bytes) const;

private:
    Archive& archive_;
};

}  // namespace truehang::workroom
