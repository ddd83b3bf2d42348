// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "figures/figures.h"
#include "survey/survey.h"

#include <optional>
#include <string>
#include <vector>

// What a layer is made by: the figures of one revision as a flat list, so that two revisions are compared figure by
// figure and a digest tells whether any differs. Nothing of it depends on the language in force but `says`.

namespace truehang {

/// One figure. Of lengths the name ends in `_mm` or `_m`; other numbers count something.
struct MadeFigure {
    std::string figure;  ///< its place in the figures document, or `hardware.length_mm`, `flags.impossible`, `heading`
    std::string value;   ///< as it is compared: a number in its shortest form, else words
    std::optional<double> number{};  ///< where it is one
    std::string says{};              ///< words for a person, where `value` isn't the way to say it

    /// What is said for it alone doesn't make another figure.
    friend bool operator==(const MadeFigure& a, const MadeFigure& b) {
        return a.figure == b.figure && a.value == b.value;
    }
};

/// One layer of one window, by its ids; no layer's id where the window isn't layered.
struct MadeLayer {
    std::string room, window, layer;
    std::string title;  ///< "Parlour, south window"
    std::vector<MadeFigure> figures;
};

struct MadeHouse {
    std::vector<MadeLayer> layers;   ///< in the survey's order, one for each that hangs or is to hang
    std::vector<MadeFigure> bought;  ///< `orders.FABRIC.order_m`, `haberdashery.WHAT` …, over the house
};

/// What the layers are made by, lengths to a hundredth of a millimetre: sizes, cloths and linings, headings, hardware,
/// flags, and what is ordered. `figures` are the survey's own. Left out: uncertainties, masses, what follows from the
/// others (positions along a curtain), and what a fixed pole has changed of what was planned.
[[nodiscard]] MadeHouse made_by(const Survey& survey, const Figures& figures);

/// The layer of these ids, or null.
[[nodiscard]] const MadeLayer* find_layer(const MadeHouse& house, const std::string& room, const std::string& window,
                                          const std::string& layer);

/// Whether it is a flag's: of those only what stands in the way of cutting (`stop`, `remeasure`) is part of a digest.
[[nodiscard]] bool is_flag(const std::string& figure);

/// What a digest of the layer's figures is taken of: a line a figure, sorted.
[[nodiscard]] std::string digest_text(const MadeLayer& layer);

/// One figure in which two revisions differ; one that came has no `before`, one that went no `after`.
struct FigureDifference {
    std::string figure;
    std::optional<MadeFigure> before, after;
    std::optional<double> more;  ///< after less before, in the figure's unit; none for words and for what came or went
};

/// In the order of `after`, then what went.
[[nodiscard]] std::vector<FigureDifference> differences(const std::vector<MadeFigure>& before,
                                                        const std::vector<MadeFigure>& after);

}  // namespace truehang
