// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "sheet/differences.h"
#include "survey/survey.h"

#include <optional>
#include <string>

namespace truehang {

/// What a client signed as a house of layers, so that it is compared as two revisions are: what hangs there, finished
/// sizes, cloth and its cost. Of the layers no room is known.
[[nodiscard]] MadeHouse made_by(const Agreed& agreed);

/// How far a signature still covers what there is now.
struct SinceSigned {
    std::string by;                     ///< who signed; empty where no name stands there
    std::optional<long long> revision;  ///< that was signed
    HouseDifference difference;         ///< from what was signed to what there is now
    [[nodiscard]] bool differs() const { return !difference.empty(); }
};

/// Nothing where nothing was signed with its figures.
[[nodiscard]] std::optional<SinceSigned> since_signed(const Survey& survey);

/// "Agreed on revision 2 by R. Oduya, figures differ since."; where none differs "… and the figures are as agreed."
[[nodiscard]] std::string signed_sentence(const SinceSigned& since);

}  // namespace truehang
