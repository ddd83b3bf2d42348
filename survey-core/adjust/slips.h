// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "adjust/network.h"
#include "adjust/tape.h"
#include "survey/counted.h"
#include "units/length_text.h"

#include <string>
#include <string_view>
#include <vector>

namespace truehang {

/// Why networks don't add up: readings that would say something else, and how likely that is.
struct Explanation {
    std::string slip;                     ///< a name of the catalogue, or `unexplained`
    std::vector<Correction> corrections;  ///< the reading it is named for first; more where one slip moved several
    std::vector<double> expected;         ///< by correction: what it would then read (mm, degrees)
    unsigned clears = 0;                  ///< the failing networks that add up with it, a bit each, in their order
    double weight = 0.0;                  ///< probability, given the readings
};

/// What to judge slips from.
struct SlipEvidence {
    const Window& window;  ///< for the history of its readings
    const std::vector<CountedReading>& readings;
    const std::vector<Network>& networks;
    const TapeRule& tape;
    LengthUnit entry_unit = LengthUnit::mm;
};

/// The explanations of the networks that don't add up, likeliest first; none where all do.
///
/// Each slip of the catalogue, tried on each suspect reading, counts when every network that the reading takes part in
/// then passes and the reading's own normalised residual is below 3.2905. Its weight is its prior times the likelihood
/// of all the readings with it (Bayes), with slips that nothing explains (an error of any size, log-uniform), pairs of
/// slips, and no slip at all (chance) in the sum: what the weights lack of 1 is none of these. A reading that was taken
/// again and said the same is hardly suspect. Readings of the same stretch elsewhere (the other jamb, the other end)
/// lie near each other: within some 12 mm (Student's t with three degrees of freedom, with a floor for what is really
/// crooked; common practice, no source); so do the angles of one bay, within some 2 degrees.
[[nodiscard]] std::vector<Explanation> explain(const SlipEvidence& evidence);

/// The explanations of one network as suspects, likeliest first: at most six, and where nothing else is likely the
/// reading with the largest normalised residual. `bit` is the network's place among the failing ones.
[[nodiscard]] std::vector<Suspect> suspects_of(const Network& network, unsigned bit,
                                               const std::vector<Explanation>& explanations);

/// Whether a slip of this name says by itself what was meant. A value that was copied and an error of no known kind
/// don't: what is expected there comes from the other readings alone.
[[nodiscard]] bool tells_value(std::string_view slip);

/// The station that stands out and may be named alone, or an empty word: slips of the catalogue explain it with a
/// weight of 0.5 or more in all, and those of no other station with more than a third of that.
[[nodiscard]] std::string standing_out(const std::vector<Suspect>& suspects);

}  // namespace truehang
