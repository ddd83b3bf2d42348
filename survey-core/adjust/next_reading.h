// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "adjust/measured.h"

#include <optional>
#include <string>

namespace truehang {

/// A reading worth taking, and why: a whole sentence for a person.
struct WorthTaking {
    std::string station;
    std::string why;
};

/// Where readings don't add up: the one reading, taken again or new, that tells the explanations apart best, by
/// expected information over what it costs to take (a ladder, a long reach, something in front; common practice, no
/// source). Nothing where all adds up.
[[nodiscard]] std::optional<WorthTaking> settling_reading(const Window& window, const MeasuredWindow& measured);

/// Where a reading that was taken again now says what another station was put down with, and nothing checks that other
/// one: it, since the two may have been exchanged.
[[nodiscard]] std::optional<WorthTaking> exchanged_reading(const Window& window, const MeasuredWindow& measured);

/// Of the readings not yet taken, the one that makes a height surest: what it is, and the standard uncertainty the
/// height would have. Nothing where none takes a tenth off.
struct SurerHeight {
    std::string station;
    Length u;
};
[[nodiscard]] std::optional<SurerHeight> surer_height(const Window& window, const MeasuredWindow& measured,
                                                      const PlumbSpan& span);

}  // namespace truehang
