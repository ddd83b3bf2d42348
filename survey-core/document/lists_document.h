// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "document/rules_document.h"

#include <string>
#include <string_view>
#include <vector>

// What a surveyor keeps to use again, apart from visits (format truehang.lists/1): cloths, hardware, house rules.

namespace truehang {

struct OwnLists {
    std::vector<Fabric> fabrics;       ///< each with an id of its own
    std::vector<Hardware> hardware;    ///< each with a name of its own
    std::vector<RulesDocument> rules;  ///< each with a name of its own
    Extra extra;
};

/// Reads the lists with every fault at its pointer; two of one id or name are a fault, and so is one without. At most
/// as many cloths as a survey, 1,000 of the others.
[[nodiscard]] Result<OwnLists, Faults> read_own_lists(std::string_view bytes);

/// Writes them: reading what was written gives the same.
[[nodiscard]] std::string write_own_lists(const OwnLists& lists);

}  // namespace truehang
