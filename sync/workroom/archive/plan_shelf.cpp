// SPDX-License-Identifier: Apache-2.0
#include "workroom/archive/plan_shelf.h"

#include "workroom/archive/erasure.h"

namespace truehang::workroom {

Result<std::optional<KeptPlan>> PlanShelf::plan(std::string_view survey) const {
    return archive_.database().read<std::optional<KeptPlan>>([survey = std::string(survey)](
                                                                 Records& records) -> Result<std::optional<KeptPlan>> {
        Query query(records,
                    "SELECT survey_sha256, rolls_sha256, rules_sha256, planner, worked_at, bytes "
                    "FROM roll_plan WHERE survey = ?");
        query.bind(1, survey);
        if (!query.step()) {
            return std::optional<KeptPlan>();
        }
        return std::optional(KeptPlan{{query.text(0), query.text(1), query.text(2), static_cast<int>(query.number(3))},
                                      query.text(4),
                                      query.text(5)});
    });
}

Result<KeptPlan> PlanShelf::keep(std::string_view survey, PlanBasis basis, std::string bytes) const {
    KeptPlan kept{std::move(basis), sync::write_time(archive_.clock()()), std::move(bytes)};
    return archive_.database().write_and_wait<KeptPlan>([survey = std::string(survey),
                                                         kept](Records& records) -> Result<KeptPlan> {
        if (is_erased(records, survey)) {
            return erased_error("This survey");
        }
        Query insert(
            records,
            "INSERT INTO roll_plan(survey, survey_sha256, rolls_sha256, "
            "rules_sha256, planner, worked_at, bytes) VALUES(?, ?, ?, ?, ?, ?, ?) ON CONFLICT(survey) DO UPDATE SET "
            "survey_sha256 = excluded.survey_sha256, rolls_sha256 = excluded.rolls_sha256, "
            "rules_sha256 = excluded.rules_sha256, planner = excluded.planner, "
            "worked_at = excluded.worked_at, bytes = excluded.bytes");
        insert.bind(1, survey);
        insert.bind(2, kept.basis.survey_sha256);
        insert.bind(3, kept.basis.rolls_sha256);
        insert.bind(4, kept.basis.rules_sha256);
        insert.bind(5, kept.basis.planner);
        insert.bind(6, kept.worked_at);
        insert.bind_bytes(7, kept.bytes);
        insert.exec();
        return kept;
    });
}

}  // namespace truehang::workroom
