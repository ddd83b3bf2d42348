// SPDX-License-Identifier: Apache-2.0
#include "workroom/archive/plan_shelf.h"

#include "workroom/archive/erasure.h"

namespace truehang::workroom {

Result<std::optional<KeptPlan>> PlanShelf::plan(std::string_view survey) const {
    return archive_.database().read<std::optional<KeptPlan>>(
        [survey = std::string(survey)](SQLite::Database& database) -> Result<std::optional<KeptPlan>> {
            SQLite::Statement query(database,
                                    "SELECT survey_sha256, rolls_sha256, rules_sha256, planner, worked_at, bytes "
                                    "FROM roll_plan WHERE survey = ?");
            query.bind(1, survey);
            if (!query.executeStep()) {
                return std::optional<KeptPlan>();
            }
            return std::optional(KeptPlan{{query.getColumn(0).getString(), query.getColumn(1).getString(),
                                           query.getColumn(2).getString(), query.getColumn(3).getInt()},
                                          query.getColumn(4).getString(),
                                          query.getColumn(5).getString()});
        });
}

Result<KeptPlan> PlanShelf::keep(std::string_view survey, PlanBasis basis, std::string bytes) const {
    KeptPlan kept{std::move(basis), sync::write_time(archive_.clock()()), std::move(bytes)};
    return archive_.database().write_and_wait<KeptPlan>(
        [survey = std::string(survey), kept](SQLite::Database& database) -> Result<KeptPlan> {
            if (is_erased(database, survey)) {
                return erased_error("This survey");
            }
            SQLite::Statement insert(database,
                                     "INSERT OR REPLACE INTO roll_plan(survey, survey_sha256, rolls_sha256, "
                                     "rules_sha256, planner, worked_at, bytes) VALUES(?, ?, ?, ?, ?, ?, ?)");
            insert.bind(1, survey);
            insert.bind(2, kept.basis.survey_sha256);
            insert.bind(3, kept.basis.rolls_sha256);
            insert.bind(4, kept.basis.rules_sha256);
            insert.bind(5, kept.basis.planner);
            insert.bind(6, kept.worked_at);
            insert.bind(7, kept.bytes.data(), static_cast<int>(kept.bytes.size()));
            insert.exec();
            return kept;
        });
}

}  // namespace truehang::workroom
