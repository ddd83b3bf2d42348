// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "sizing/clearances.h"

#include <span>
#include <string_view>
#include <vector>

namespace truehang {

/// When a caution is due.
enum class Moment {
    cord,      ///< anything corded in a room that small children may use
    heat,      ///< cloth in front of or near something hot
    drilling,  ///< before the wall is drilled
    ladder,    ///< before climbing
    load,      ///< before something heavy hangs
    escape,    ///< a window that someone may have to leave by
    weights,   ///< corner weights where small children are
};

/// One caution: a sentence for a person, and where it comes from. Nothing here certifies anything.
struct Caution {
    Moment moment;
    std::string_view region;   ///< where its source holds; "any" for general sense
    std::string_view text;     ///< always ends in local rules and qualified people
    std::string_view source;   ///< standard and edition, or "common practice, no source"
    std::string_view checked;  ///< date, ISO 8601
};

/// All cautions, as data. A caution is added here.
[[nodiscard]] std::span<const Caution> cautions();

/// The cautions due at a moment, most general first.
[[nodiscard]] std::vector<Caution> cautions_at(Moment moment);

/// Cautions that this layer gives cause for (flags `curtain-over-heat` and `cord-within-reach`).
void flag_cautions(const LayerContext& layer, const FinishedSizes& sizes, Findings& findings);

}  // namespace truehang
