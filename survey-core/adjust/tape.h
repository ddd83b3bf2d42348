// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "adjust/network.h"
#include "survey/counted.h"
#include "survey/house_rules.h"

#include <optional>

namespace truehang {

/// What decides how well one reading is known: the tape's class, its graduation, and how sharply edges are defined.
struct TapeRule {
    TapeClass accuracy = TapeClass::II;
    Length graduation = Length::mm(1.0);
    Length edge_u = Length::mm(2.0);
    Angle angle_u = Angle::degrees(0.5);  ///< of one angle read between facets
    std::optional<Length> case_length{};  ///< what an inside reading adds; none: not known
};

/// The tape rule of a survey: its tape (class II and 1 mm where it says nothing), the house's `edge_u_mm` and
/// `angle_u_deg`.
[[nodiscard]] TapeRule tape_rule(const Survey& survey, const HouseRules& rules);

/// Maximum permissible error of a tape over a length: a + b * (length in whole metres, rounded up), mm.
/// OIML R 35-1 and EU 2014/32 Annex X, classes I, II, III.
[[nodiscard]] Length permissible_error(TapeClass accuracy, Length length);

/// Standard uncertainty of one reading: u^2 = (mpe/sqrt 3)^2 + (graduation/sqrt 12)^2 + edge_u^2 (GUM, rectangular
/// distributions).
[[nodiscard]] Length reading_u(Length reading, const TapeRule& rule);

/// The same for a counted reading; an estimate carries its own.
[[nodiscard]] Length reading_u(const CountedReading& reading, const TapeRule& rule);

/// Standard uncertainty of a counted angle: the house's, never below a hundredth of a degree; an estimate carries its
/// own.
[[nodiscard]] Angle angle_u(const CountedReading& reading, const TapeRule& rule);

/// A counted reading as it enters a network: mm, or degrees of an angle.
[[nodiscard]] Observation observation_of(const CountedReading& reading, const TapeRule& rule);

}  // namespace truehang
