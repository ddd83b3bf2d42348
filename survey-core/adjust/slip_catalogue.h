// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "survey/counted.h"
#include "units/length_text.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace truehang {

/// A length as it was written down, for its digits.
struct Written {
    std::string text;  ///< as typed, or the value in whole or decimal mm where nothing was typed (or something else)
    LengthUnit unit = LengthUnit::mm;  ///< of a text that names none
    Length value;
};

/// A reading's text where it reads as its value, else the value in mm.
[[nodiscard]] Written written(const CountedReading& reading, LengthUnit entry_unit);

/// What may have been meant where `written` was put down.
struct Meant {
    std::string_view slip;  ///< a name of the catalogue
    Length value;
    double chance = 0.0;  ///< of this slip, and of it making what was written out of that value, given a slip
};

/// The slips of one reading by itself (trade rules, section 3): digits, units, fractions, the tape's case. Values from
/// 1 mm to 100 m that differ from what was written, each once (the chances of several ways to it added up, under the
/// name of the likeliest).
[[nodiscard]] std::vector<Meant> meant_by(const Written& written, std::optional<Length> case_length);

/// An angle as it was written down: as typed, or the value in degrees where nothing was typed (or something else).
struct WrittenAngle {
    std::string text;
    Angle value;
};
[[nodiscard]] WrittenAngle written_angle(const CountedReading& reading);

/// What may have been meant where an angle was put down.
struct MeantAngle {
    std::string_view slip;
    Angle value;
    double chance = 0.0;
};

/// The slips of one angle by itself: its digits; the supplement read for it (180 less it: the other side of the bevel),
/// the outside angle (360 less it), half of it or half of what the corner turns (the mitre that is set on the saw).
/// Values above 0 and below 360 degrees, as of lengths.
[[nodiscard]] std::vector<MeantAngle> meant_by(const WrittenAngle& written);

/// How slips divide, given that there is one. Digits: Verhoeff 1969, as shares of decimal errors (one digit wrong 60 to
/// 95 %, neighbours exchanged 10 to 20 %, a digit left out or added 10 to 20 %); the rest, and what is left to them:
/// common practice, no source. They needn't add up to 1: only their proportions count.
namespace slip_share {
inline constexpr double wrong_digit = 0.45;
inline constexpr double transposed = 0.15;
inline constexpr double missing_digit = 0.06;
inline constexpr double doubled_digit = 0.05;
inline constexpr double wrong_unit = 0.10;
inline constexpr double wrong_fraction = 0.15;
inline constexpr double tape_case = 0.08;
inline constexpr double case_for_all = 0.04;  ///< of a window, not of a reading
inline constexpr double supplement = 0.12;    ///< of an angle, as the two below
inline constexpr double outside_angle = 0.06;
inline constexpr double half_angle = 0.08;
inline constexpr double swapped = 0.05;
inline constexpr double copied = 0.015;
inline constexpr double unexplained = 0.15;
}  // namespace slip_share

}  // namespace truehang
