// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "visit.h"

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace truehang::trial {

/// What a person may do wrong, in this trial's own code. The contract's words where it has one.
enum class Slip {
    wrong_digit,
    transposed_digits,
    missing_digit,
    doubled_digit,
    wrong_unit,
    wrong_fraction,
    tape_case,
    case_for_all,  ///< the case left out of, or added twice to, every reading inside the opening
    swapped,
    copied,
    supplement,     ///< of an angle: read off the other side of the bevel
    outside_angle,  ///< of an angle: what is left of a full turn
    half_angle,     ///< of an angle: the mitre's
    free,           ///< an error of any size that no rule makes
};

struct SlipKind {
    Slip slip;
    std::string_view name;
    double share;
};

/// How often each is planted, of those that can happen on a visit. Of slips in digits: Verhoeff 1969 (Error Detecting
/// Decimal Codes), one digit wrong 60 to 95 %, neighbours exchanged 10 to 20 %, one left out or added 10 to 20 %. The
/// rest, and their share against those: common practice, no source. Fractions are written by inch visits only, angles
/// read in bays and corners.
inline constexpr std::array<SlipKind, 14> slip_kinds{{{Slip::wrong_digit, "wrong-digit", 0.44},
                                                      {Slip::transposed_digits, "transposed-digits", 0.10},
                                                      {Slip::missing_digit, "missing-digit", 0.05},
                                                      {Slip::doubled_digit, "doubled-digit", 0.04},
                                                      {Slip::wrong_unit, "wrong-unit", 0.05},
                                                      {Slip::wrong_fraction, "wrong-fraction", 0.15},
                                                      {Slip::tape_case, "tape-case", 0.08},
                                                      {Slip::case_for_all, "tape-case, all inside", 0.02},
                                                      {Slip::swapped, "swapped", 0.06},
                                                      {Slip::copied, "copied", 0.05},
                                                      {Slip::supplement, "supplement", 0.06},
                                                      {Slip::outside_angle, "outside-angle", 0.03},
                                                      {Slip::half_angle, "half-angle", 0.03},
                                                      {Slip::free, "no rule", 0.11}}};

/// One reading that says what it shouldn't.
struct Fault {
    std::string station;
    double clean = 0.0;  ///< mm, degrees of an angle
    double wrong = 0.0;
};

struct Planted {
    Slip slip = Slip::free;
    std::vector<Fault> faults;

    [[nodiscard]] const Fault* at(std::string_view station) const;
    /// Whether what was written still tells what was meant.
    [[nodiscard]] bool recoverable() const { return slip != Slip::copied && slip != Slip::free; }
    [[nodiscard]] bool of_angle() const { return is_angle(faults.front().station); }
};

/// Plants one slip into a window's readings. Nothing where this slip can't happen there or changes nothing.
[[nodiscard]] std::optional<Planted> plant(Slip slip, const Visit& visit, Window& window, Random& random);
/// A slip drawn by its share, planted.
[[nodiscard]] Planted plant_any(const Visit& visit, Window& window, Random& random);

/// Every value that one slip of digits, unit, fraction, case or bevel would have turned into this reading.
[[nodiscard]] std::vector<double> could_have_been(const Reading& reading, const Visit& visit);

}  // namespace truehang::trial
