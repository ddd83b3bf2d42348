// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "units/result.h"
#include "workroom/archive/archive.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace truehang::workroom {

/// One version of the rolls that came for a survey.
struct KeptRolls {
    long long version = 0;  ///< from 1; 0: nothing was saved yet
    std::string saved_at;   ///< RFC 3339
    std::string bytes;      ///< the rolls document
};

/// The rolls that came, a document a version for each survey, none ever replaced.
class RollsShelf {
public:
    explicit RollsShelf(Archive& archive) : archive_(archive) {}

    /// Every version of a survey's rolls, rising, without their bytes.
    [[nodiscard]] Result<std::vector<KeptRolls>> versions(std::string_view survey) const;
    /// One version, or the newest for 0; nothing where it isn't here.
    [[nodiscard]] Result<std::optional<KeptRolls>> version(std::string_view survey, long long number) const;
    /// Keeps `bytes` as the version after `from`; it is on the disk when this returns. `conflict` where another version
    /// was saved since `from`.
    [[nodiscard]] Result<KeptRolls> save(std::string_view survey, std::string bytes, long long from) const;

private:
    Archive& archive_;
};

}  // namespace truehang::workroom
