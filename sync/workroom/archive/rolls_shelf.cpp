// SPDX-License-Identifier: Apache-2.0
#include "workroom/archive/rolls_shelf.h"

#include "workroom/archive/erasure.h"

namespace truehang::workroom {

namespace {

long long newest_version(SQLite::Database& database, const std::string& survey) {
    SQLite::Statement query(database, "SELECT coalesce(max(version), 0) FROM rolls WHERE survey = ?");
    query.bind(1, survey);
    query.executeStep();
    return query.getColumn(0).getInt64();
}

}  // namespace

Result<std::vector<KeptRolls>> RollsShelf::versions(std::string_view survey) const {
    return archive_.database().read<std::vector<KeptRolls>>(
        [survey = std::string(survey)](SQLite::Database& database) -> Result<std::vector<KeptRolls>> {
            SQLite::Statement query(database, "SELECT version, saved_at FROM rolls WHERE survey = ? ORDER BY version");
            query.bind(1, survey);
            std::vector<KeptRolls> versions;
            while (query.executeStep()) {
                versions.push_back({query.getColumn(0).getInt64(), query.getColumn(1).getString(), {}});
            }
            return versions;
        });
}

Result<std::optional<KeptRolls>> RollsShelf::version(std::string_view survey, long long number) const {
    return archive_.database().read<std::optional<KeptRolls>>(
        [survey = std::string(survey), number](SQLite::Database& database) -> Result<std::optional<KeptRolls>> {
            SQLite::Statement query(database,
                                    "SELECT version, saved_at, bytes FROM rolls WHERE survey = ? AND version = ?");
            query.bind(1, survey);
            query.bind(2, static_cast<std::int64_t>(number == 0 ? newest_version(database, survey) : number));
            if (!query.executeStep()) {
                return std::optional<KeptRolls>();
            }
            return std::optional(KeptRolls{query.getColumn(0).getInt64(), query.getColumn(1).getString(),
                                           query.getColumn(2).getString()});
        });
}

Result<KeptRolls> RollsShelf::save(std::string_view survey, std::string bytes, long long from) const {
    KeptRolls kept{from + 1, sync::write_time(archive_.clock()()), std::move(bytes)};
    return archive_.database().write_and_wait<KeptRolls>([survey = std::string(survey), kept,
                                                          from](SQLite::Database& database) -> Result<KeptRolls> {
        if (is_erased(database, survey)) {
            return erased_error("This survey");
        }
        if (newest_version(database, survey) != from) {
            return Error{ErrorCode::conflict, "rolls", "Somebody saved other rolls meanwhile. Look at them first."};
        }
        SQLite::Statement insert(database, "INSERT INTO rolls(survey, version, saved_at, bytes) VALUES(?, ?, ?, ?)");
        insert.bind(1, survey);
        insert.bind(2, static_cast<std::int64_t>(kept.version));
        insert.bind(3, kept.saved_at);
        insert.bind(4, kept.bytes.data(), static_cast<int>(kept.bytes.size()));
        insert.exec();
        return kept;
    });
}

}  // namespace truehang::workroom
