// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "protocol/marks.h"
#include "units/result.h"
#include "workroom/archive/archive.h"

#include <string>
#include <string_view>
#include <vector>

namespace truehang::workroom {

/// What was marked as done with the layers of each survey. A mark is never changed or taken out: it is taken back by
/// another mark.
class MarkShelf {
public:
    explicit MarkShelf(Archive& archive) : archive_(archive) {}

    /// All marks of a survey, rising.
    [[nodiscard]] Result<std::vector<sync::LayerMark>> marks(std::string_view survey) const;

    /// Adds marks in one go, numbered and dated here: how many were new. What stands already (the same step of the same
    /// layer by the same revision and the same figures, or nothing to take back) isn't marked again. They are on the
    /// disk when this returns. `missing` where the survey, or a revision that a mark names, isn't here; `out_of_range`
    /// for more than `sync::marks_limit`.
    [[nodiscard]] Result<std::size_t> add(std::string_view survey, std::vector<sync::LayerMark> marks) const;

    /// Takes in marks as they were exported, numbers and times with them; those that are here already first. `conflict`
    /// where others are here; nothing is added then.
    [[nodiscard]] Result<Done> take_in(const sync::LayerMarks& marks) const;

private:
    Archive& archive_;
};

/// Whether that revision is here.
[[nodiscard]] bool has_revision(Records& records, const std::string& survey, long long revision);

/// All marks of a survey on a connection, rising.
[[nodiscard]] std::vector<sync::LayerMark> marks_of(Records& records, const std::string& survey);

}  // namespace truehang::workroom
