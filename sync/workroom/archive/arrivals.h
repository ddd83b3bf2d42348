// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "units/result.h"
#include "workroom/archive/archive.h"

#include <string>
#include <string_view>

namespace truehang::workroom {

/// What came in after a page was made.
struct Arrivals {
    std::string next;  ///< the cursor after all of it
    std::string says;  ///< in one or two sentences, without line ends; empty where nothing came
};

/// The cursor after everything that is here: what a page that is made from now on shows.
[[nodiscard]] Result<std::string> newest_cursor(Archive& archive);

/// What came in and was erased after the cursor `since`, of one survey or of all (`survey` empty), told newest first.
/// Looks at a thousand changes at most. Where these records didn't give the cursor (they were brought back from a copy)
/// it says so.
[[nodiscard]] Result<Arrivals> arrivals_since(Archive& archive, std::string_view since, std::string_view survey);

}  // namespace truehang::workroom
