// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "figures/figures.h"
#include "sheet/flat_drawing.h"
#include "survey/house_rules.h"
#include "survey/survey.h"

#include <optional>
#include <vector>

namespace truehang {

/// What is turned in of a curtain or a blind, in all.
struct TurnedIn {
    Length side, hem, head, seam;
};

/// What one curtain of a layer is made by.
struct MakingSetting {
    HouseRules rules;
    TurnedIn turned;
    std::vector<Length> joins;  ///< of the face cloth, from the leading edge; of a blind from the left
    Length tab_width;
    std::optional<Word<Layout>> layout;
};

/// Nothing where no heading was chosen or what is worked lacks.
[[nodiscard]] std::optional<MakingSetting> make_setting(const Survey& survey, const Layer& layer,
                                                        const LayerFigures& figures);

/// Curtain number `curtain` (0 the left one) flat on the table.
[[nodiscard]] FlatPiece flat_piece(const MakingSetting& setting, const LayerFigures& figures, int curtain);

}  // namespace truehang
