// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "workroom/archive/archive.h"

#include <optional>
#include <string>
#include <string_view>

namespace truehang::workroom {

/// A page that says of a printed sheet whether it is current, and its HTTP status: 200, 410 where its survey was erased
/// for good, 404 where no document here has such a digest.
struct SheetCodePage {
    int status = 200;
    std::string html;
};

/// The page of `/sheet/CODE`; nothing for any other path. Errors are the records'.
[[nodiscard]] std::optional<Result<SheetCodePage>> sheet_code_page(Archive& archive, std::string_view path);

}  // namespace truehang::workroom
