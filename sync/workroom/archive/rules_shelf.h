// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "document/rules_document.h"
#include "protocol/time_text.h"
#include "units/result.h"

#include <filesystem>
#include <vector>

namespace truehang::workroom {

/// The workroom's house rules: one rules document a version, in files named by it, none ever replaced.
class RulesShelf {
public:
    explicit RulesShelf(std::filesystem::path folder) : folder_(std::move(folder)) {}

    /// Versions that are here, rising; none where the defaults hold.
    [[nodiscard]] std::vector<long long> versions() const;
    /// One version, or the defaults for 0. `missing` where it isn't here, `damaged` where it can't be read.
    [[nodiscard]] Result<RulesDocument> version(long long number) const;
    /// The newest version, or the defaults.
    [[nodiscard]] Result<RulesDocument> current() const;

    /// Keeps `document` as the version after `from`, dated `now`: the document as it was kept. `conflict` where another
    /// version was saved since `from`; `full` or `io` where it can't be written. It is on the disk when this returns.
    [[nodiscard]] Result<RulesDocument> save(RulesDocument document, long long from, sync::Time now);

private:
    [[nodiscard]] std::filesystem::path file_of(long long number) const;

    std::filesystem::path folder_;
};

}  // namespace truehang::workroom
