// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "document/rules_document.h"
#include "protocol/time_text.h"
#include "units/result.h"

#include <filesystem>
#include <string>
#include <vector>

namespace truehang::workroom {

class Archive;
class Database;

/// The workroom's house rules: one rules document a version, none ever replaced; in files named by it, or in the
/// records where those hold everything.
class RulesShelf {
public:
    explicit RulesShelf(std::filesystem::path folder) : folder_(std::move(folder)) {}
    explicit RulesShelf(Archive& archive);

    /// Versions that are here, rising; none where the defaults hold. Errors: only of records.
    [[nodiscard]] Result<std::vector<long long>> versions() const;
    /// One version, or the defaults for 0. `missing` where it isn't here, `damaged` where it can't be read.
    [[nodiscard]] Result<RulesDocument> version(long long number) const;
    /// The newest version, or the defaults.
    [[nodiscard]] Result<RulesDocument> current() const;

    /// Keeps `document` as the version after `from`, dated `now`: the document as it was kept. `conflict` where another
    /// version was saved since `from`; `full` or `io` where it can't be written. It is on the disk when this returns.
    [[nodiscard]] Result<RulesDocument> save(RulesDocument document, long long from, sync::Time now);

private:
    [[nodiscard]] std::filesystem::path file_of(long long number) const;
    [[nodiscard]] std::vector<long long> files() const;
    [[nodiscard]] Result<Done> keep_file(long long number, const std::string& bytes) const;
    [[nodiscard]] Result<std::string> bytes_of(long long number) const;

    std::filesystem::path folder_;
    Database* records_ = nullptr;  ///< that hold the rules; null: files do
};

}  // namespace truehang::workroom
