// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "figures/figures.h"
#include "survey/survey.h"
#include "units/saying.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

// Ways to hang one window side by side: each is worked out like any survey, and said with what it takes.

namespace truehang {

/// What one choice changes of the window as it stands; what isn't set stays.
struct Variation {
    std::optional<Heading> heading;
    std::optional<double> fullness;
    std::optional<HemAt> length;
    std::optional<std::string> fabric;
    std::optional<std::string> lining;  ///< an empty text: unlined
    std::optional<Length> hardware_length;
    std::optional<Decided>
        decided;  ///< an answer taken where two lay near one another; the rest of what was decided stays

    friend bool operator==(const Variation&, const Variation&) = default;
};

/// The layer as the variation has it. A heading that is changed without a fullness takes its own.
[[nodiscard]] Layer varied(Layer layer, const Variation& variation);

/// What is worth comparing where nobody asks for anything: a little less and more fullness, without a lining or with
/// the first, each other face cloth (three at most), hardware long enough to clear the glass.
[[nodiscard]] std::vector<Variation> usual_variations(const Survey& survey, const Layer& layer,
                                                      const LayerFigures& figures);

struct Money {
    std::string currency;  ///< ISO 4217; empty where the fabric doesn't say
    double amount = 0.0;
};

/// What one cloth is cut from for the layer, tabs, facing and pelmet included.
struct ClothTaken {
    std::string fabric;
    Length length;
    std::optional<Money> cost;  ///< length × price, where a price is given
};

struct Choice {
    std::string says;          ///< "As it stands", "Tab headed, 1.75 ×", "If the width is 12 mm more"
    bool on_the_edge = false;  ///< the other answer where the cloth of the first choice lies on an edge
    Variation variation;  ///< what makes it so; of the first what would settle its edges; nothing where there is none
    LayerFigures figures;
    std::vector<ClothTaken> cloths;
    std::vector<Money> cost;      ///< a sum for each currency: they are never added together
    std::optional<Money> making;  ///< widths × the house rule `making_per_width`, where it is set
    std::vector<Flag> flags;      ///< of the first choice all that the layer has, of the others what is new
};

/// What has to stand beside every sum.
inline constexpr std::string_view not_a_quotation =
    to_say("Cloth at its price by the metre, and making by the width. It is no quotation.");

struct Choices {
    std::string window, layer;
    std::vector<Choice> choices;  ///< first as it stands, then the other answers on its edge, then the variations
};

/// Works a window's layer as it stands and in each variation through `work_out`. Nothing where the survey has no such
/// window or layer (an empty layer is the first) or a fabric that a variation names isn't there.
[[nodiscard]] std::optional<Choices> compare(const Survey& survey, std::string_view room, std::string_view window,
                                             std::string_view layer, const std::vector<Variation>& variations);

}  // namespace truehang
