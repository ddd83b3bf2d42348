// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "sheet/stamp.h"
#include "store/store.h"

#include <optional>
#include <string_view>

namespace truehang {

/// What is stamped on sheets of a visit as the store has it now: the code of the revision where the workroom confirmed
/// it, that it isn't there yet where there is a workroom, else nothing. Errors as the store's own.
[[nodiscard]] Result<std::optional<SheetStamp>> sheet_stamp(Store& store, std::string_view visit);

}  // namespace truehang
