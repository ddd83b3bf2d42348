// SPDX-License-Identifier: Apache-2.0
#include "workroom/keeping/kept_at.h"

#include "workroom/records/postgres_records.h"
#include "workroom/records/sqlite_records.h"

#include <CLI/CLI.hpp>

#include <chrono>

namespace truehang::workroom {

std::unique_ptr<RecordsEngine> engine_of(const KeptAt& kept, std::chrono::milliseconds patience) {
    if (!kept.database.empty()) {
        return std::make_unique<PostgresEngine>(kept.database);
    }
    return std::make_unique<SqliteEngine>(std::filesystem::path(kept.data) / "workroom.sqlite", patience);
}

void add_kept_at(CLI::App& command, KeptAt& kept) {
    command.add_option("--data", kept.data, "The folder that keeps what comes in")->required();
    command
        .add_option("--database", kept.database,
                    "The PostgreSQL database that holds the records, as postgresql://HOST/NAME; where none is given "
                    "they lie in the folder")
        ->check(CLI::Validator(
            [](std::string& given) {
                return is_postgres_url(given) ? std::string() : std::string("a database begins with postgresql://");
            },
            "URL"));
}

Result<std::unique_ptr<Archive>> open_archive(const KeptAt& kept) {
    const auto now = [] {
        return std::chrono::time_point_cast<std::chrono::milliseconds>(std::chrono::system_clock::now());
    };
    return Archive::open(kept.data, now, kept.database);
}

Result<std::unique_ptr<Archive>> open_standing_archive(const KeptAt& kept) {
    if (kept.database.empty() && !std::filesystem::exists(std::filesystem::path(kept.data) / "workroom.sqlite")) {
        return Error{ErrorCode::missing, kept.data, "There are no records of a workroom in this folder."};
    }
    return open_archive(kept);
}

}  // namespace truehang::workroom
