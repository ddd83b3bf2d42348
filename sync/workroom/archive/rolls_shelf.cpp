// SPDX-License-Identifier: Apache-2.0
#include "workroom/archive/rolls_shelf.h"

#include "workroom/archive/erasure.h"

namespace truehang::workroom {

namespace {

long long newest_version(Records& records, const std::string& survey) {
    Query query(records, "SELECT coalesce(max(version), 0) FROM rolls WHERE survey = ?");
    query.bind(1, survey);
    query.step();
    return query.number(0);
}

}  // namespace

Result<std::vector<KeptRolls>> RollsShelf::versions(std::string_view survey) const {
    return archive_.database().read<std::vector<KeptRolls>>(
        [survey = std::string(survey)](Records& records) -> Result<std::vector<KeptRolls>> {
            Query query(records, "SELECT version, saved_at FROM rolls WHERE survey = ? ORDER BY version");
            query.bind(1, survey);
            std::vector<KeptRolls> versions;
            while (query.step()) {
                versions.push_back({query.number(0), query.text(1), {}});
            }
            return versions;
        });
}

Result<std::optional<KeptRolls>> RollsShelf::version(std::string_view survey, long long number) const {
    return archive_.database().read<std::optional<KeptRolls>>(
        [survey = std::string(survey), number](Records& records) -> Result<std::optional<KeptRolls>> {
            Query query(records, "SELECT version, saved_at, bytes FROM rolls WHERE survey = ? AND version = ?");
            query.bind(1, survey);
            query.bind(2, static_cast<std::int64_t>(number == 0 ? newest_version(records, survey) : number));
            if (!query.step()) {
                return std::optional<KeptRolls>();
            }
            return std::optional(KeptRolls{query.number(0), query.text(1), query.text(2)});
        });
}

Result<KeptRolls> RollsShelf::save(std::string_view survey, std::string bytes, long long from) const {
    KeptRolls kept{from + 1, sync::write_time(archive_.clock()()), std::move(bytes)};
    return archive_.database().write_and_wait<KeptRolls>(
        [survey = std::string(survey), kept, from](Records& records) -> Result<KeptRolls> {
            if (is_erased(records, survey)) {
                return erased_error("This survey");
            }
            if (newest_version(records, survey) != from) {
                return Error{ErrorCode::conflict, "rolls", "Somebody saved other rolls meanwhile. Look at them first."};
            }
            Query insert(records, "INSERT INTO rolls(survey, version, saved_at, bytes) VALUES(?, ?, ?, ?)");
            insert.bind(1, survey);
            insert.bind(2, static_cast<std::int64_t>(kept.version));
            insert.bind(3, kept.saved_at);
            insert.bind_bytes(4, kept.bytes);
            insert.exec();
            return kept;
        });
}

}  // namespace truehang::workroom
