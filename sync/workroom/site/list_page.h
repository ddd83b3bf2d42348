// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "workroom/archive/heads.h"

#include <string>

namespace truehang::workroom {

/// The surveys that came in, a page at a time, with a search; `found` is what was `asked` for.
[[nodiscard]] std::string list_page(const HeadsPage& found, const HeadsAsked& asked);

}  // namespace truehang::workroom
