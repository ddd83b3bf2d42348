// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "sheet/made.h"
#include "sheet/words.h"

#include <string>
#include <vector>

// What differs between two revisions, as it is said to a person: figure by figure, side by side.

namespace truehang {

/// One line of it. Cut and finished sizes in the style's unit, cloth in metres, each with its unit.
struct DifferenceLine {
    std::string figure;         ///< its place
    std::string what;           ///< "Cut drop"
    std::string before, after;  ///< empty where it wasn't there, or isn't any more
    std::string more;           ///< "+20 mm", "−0.32 m"; empty where there is no difference to say
    bool flag = false;          ///< what must be minded, no figure
};

/// What differs of one layer.
struct LayerDifference {
    std::string room, window, layer;
    std::string title;
    bool came = false;  ///< it wasn't there before
    bool went = false;  ///< it isn't there any more
    std::vector<DifferenceLine> lines;

    /// Whether a figure differs, or a flag that stands in the way of cutting came or went: what the digests tell.
    bool figures_differ = false;
};

struct HouseDifference {
    std::vector<LayerDifference> layers;  ///< those of which anything differs
    std::vector<DifferenceLine> bought;

    [[nodiscard]] bool empty() const { return layers.empty() && bought.empty(); }
};

/// The differences of one layer in words. `survey` names the cloths.
[[nodiscard]] LayerDifference written_differences(const Survey& survey, const MadeLayer& before, const MadeLayer& after,
                                                  const SheetStyle& style);

/// From one revision to another, over the house. `survey` is the later one.
[[nodiscard]] HouseDifference written_differences(const Survey& survey, const MadeHouse& before, const MadeHouse& after,
                                                  const SheetStyle& style);

/// The same from the documents, each with the house rules that it holds.
[[nodiscard]] HouseDifference written_differences(const Survey& before, const Survey& after);

}  // namespace truehang
