// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "protocol/records.h"
#include "units/result.h"
#include "workroom/archive/archive.h"

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace truehang::workroom {

/// What came in and was erased after `cursor` (empty: from the beginning), at most `most` of it, in the order of the
/// commits. A place in that order is given by the one writer within the transaction that keeps the revision, so that
/// whatever commits later has a later place: a cursor never passes over what is still under way. Error `missing` for a
/// cursor that these records didn't give.
[[nodiscard]] Result<sync::Changes> changes_after(Archive& archive, std::string_view cursor, std::size_t most);

/// A cursor, `INSTANCE-PLACE`: records that were brought back from a copy are another instance, and cursors begin anew.
[[nodiscard]] std::string cursor_of(const std::string& instance, std::int64_t place);
/// The place that a cursor names, 0 for an empty one; nothing where the instance didn’t give it.
[[nodiscard]] std::optional<std::int64_t> place_of_cursor(std::string_view cursor, const std::string& instance,
                                                          std::int64_t last);

/// Within the transaction that erases a survey and all rows of it: the erasure's own place in the order.
void note_erasure(Records& records, const std::string& survey);

/// Makes records another instance, as every copy is: cursors that the original gave lead nowhere in it. Records of a
/// version that gave none stay as they are.
void become_another_instance(Records& records);

}  // namespace truehang::workroom
