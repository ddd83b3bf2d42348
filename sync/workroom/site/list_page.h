// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "workroom/archive/heads.h"
#include "workroom/people/door.h"

#include <string>

namespace truehang::workroom {

/// The surveys that came in, a page at a time, with a search; `found` is what was `asked` for. It leads the
/// caller to what they may see to, and listens for what comes in after the cursor `since`.
[[nodiscard]] std::string list_page(const HeadsPage& found, const HeadsAsked& asked, const Caller& caller,
                                    const std::string& since);

}  // namespace truehang::workroom
