// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "workroom/archive/archive.h"

#include <chrono>
#include <memory>
#include <string>

namespace CLI {
class App;
}

namespace truehang::workroom {

/// Where a workroom keeps what comes in.
struct KeptAt {
    std::string data;      ///< a folder
    std::string database;  ///< URL of the PostgreSQL database that holds the records; empty: they lie in the folder
};

/// What connects to the records; SQLite waits `patience` for other processes.
[[nodiscard]] std::unique_ptr<RecordsEngine> engine_of(const KeptAt& kept, std::chrono::milliseconds patience);

/// The options `--data` and `--database` of a command.
void add_kept_at(CLI::App& command, KeptAt& kept);

/// Opens or makes it, by the system's clock. Errors as `Archive::open`.
[[nodiscard]] Result<std::unique_ptr<Archive>> open_archive(const KeptAt& kept);
/// Opens what is there already; `missing` where no workroom's records are in the folder.
[[nodiscard]] Result<std::unique_ptr<Archive>> open_standing_archive(const KeptAt& kept);

}  // namespace truehang::workroom
