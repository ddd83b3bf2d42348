// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "rolls/lots.h"

#include <string>
#include <vector>

// Pieces as runs of slots along a roll; used by the files of this folder alone.

namespace truehang::laying {

struct InSlot {
    int piece = 0;  ///< its place in the list
    Um offset = 0;  ///< from the slot's start
    bool beside = false;
};

struct SlottedWindow {
    std::string id;
    std::string room;
    std::vector<int> pieces;
    WindowRuns runs;
};

struct Slotted {
    std::vector<SlottedWindow> windows;
    std::vector<std::vector<InSlot>> slots;
    Um step = 0;  ///< of the pattern, 0 where nothing is matched
};

/// Two halves that are alike lie side by side in one slot; loose halves of a window lie beside an odd half of it where
/// it is long enough.
[[nodiscard]] Slotted slotted(const std::vector<PieceToCut>& pieces, const RollRules& rules);

}  // namespace truehang::laying
