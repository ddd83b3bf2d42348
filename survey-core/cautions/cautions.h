// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "cloth/plan.h"
#include "sizing/clearances.h"

#include <span>
#include <string_view>
#include <vector>

namespace truehang {

/// What a caution is about, and with it when it is due.
enum class Hazard {
    cord,      ///< anything corded in a room that small children may use
    heat,      ///< cloth in front of or near something hot
    power,     ///< a motor
    fire,      ///< cloth for public places
    drilling,  ///< before the wall is drilled
    ladder,    ///< before climbing
    load,      ///< before something heavy hangs
    lifting,   ///< what one person can't carry up a ladder
    escape,    ///< a window that someone may have to leave by
    weights,   ///< corner weights where small children are
};

/// One caution: a sentence for a person, and where it comes from. Nothing here certifies anything.
struct Caution {
    Hazard hazard;
    std::string_view region;   ///< where its source holds; "any" for general sense
    std::string_view text;     ///< always ends in local rules and qualified people
    std::string_view source;   ///< standard, or "common practice, no source"
    std::string_view edition;  ///< of the standard; "check the edition" where that isn't sure, empty without a standard
    std::string_view checked;  ///< date, ISO 8601
};

/// All cautions, as data.
[[nodiscard]] std::span<const Caution> cautions();

/// The cautions about it, most general first.
[[nodiscard]] std::vector<Caution> cautions_at(Hazard hazard);

/// The cautions that what was chosen brings by itself, before any size is worked: flags `cord-within-reach`,
/// `loop-within-reach`, `lead-weights` (where small children may be; not known counts as that),
/// `power-at-the-window` and, where what the room is used as tells of a public place, `cloth-for-public-place`.
[[nodiscard]] std::vector<Flag> cautions_of_choice(const Room& room, const Treatment& treatment);

/// All cautions that this layer gives cause for: beside those of the choice the flags
/// `curtain-over-heat` and `heavy-curtain`.
void flag_cautions(const LayerContext& layer, const FinishedSizes& sizes, const ClothPlan& plan, Findings& findings);

}  // namespace truehang
