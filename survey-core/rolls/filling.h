// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "rolls/ground.h"

#include <optional>
#include <utility>
#include <vector>

// Ways to fill one clean stretch; used by the files of this folder alone.

namespace truehang::laying {

/// Runs that are cut alike: the same slots in the same order.
struct Kind {
    std::vector<Slot> slots;
    Um room = 0;      ///< along the roll, with what the pattern costs each slot
    Um overhang = 0;  ///< by how much the last slot is shorter than its room
    std::vector<int> runs;
};

/// Room along the roll that one slot takes before the next: up to whole steps of the pattern where it is matched.
[[nodiscard]] Um room_of(const Slot& slot, Um step);

struct Filling {
    std::vector<std::pair<int, int>> kinds;  ///< kind and how many of it, in the order of kinds
    int straddles = -1;                      ///< the kind of one more run that goes on behind the stretch
    int slots_before = 0;                    ///< how many of its slots lie before
    Um waste = 0;                            ///< room left that is too short to be of use
    Um rest = 0;                             ///< room left
    int slots = 0;                           ///< in it
    unsigned lot = 0;                        ///< decides between equals where fillings are shuffled
    Um counts = 0;                           ///< waste above what is tolerated
};

struct FillingAsked {
    Um room = 0;
    Um useful = 0;
    Um step = 0;    ///< of the pattern
    int must = -1;  ///< a kind that must take part
    bool may_straddle = false;
    Um tolerated = 0;      ///< so much waste counts as none: few large runs are then better than a full stretch
    Um bearable = 0;       ///< a filling that wastes more is of no use
    bool few = false;      ///< of equals, the one of the fewest slots
    std::size_t most = 8;  ///< fillings wanted
    long tries = 400;
    unsigned* shuffle =
        nullptr;  ///< equal fillings come in an order drawn from this seed; null: in that of their search
};

/// The best fillings found from what is left of each kind (kinds by room, largest first): least waste first, then the
/// fullest. Only fillings that nothing more fits into.
[[nodiscard]] std::vector<Filling> fillings(const std::vector<Kind>& kinds, const std::vector<int>& left,
                                            const FillingAsked& asked, long& steps);

}  // namespace truehang::laying
