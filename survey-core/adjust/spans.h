// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "adjust/arch.h"
#include "adjust/network.h"
#include "adjust/tape.h"
#include "adjust/traverse.h"
#include "survey/counted.h"

#include <map>
#include <optional>
#include <span>
#include <string>
#include <vector>

namespace truehang {

/// What the readings that aren't heights come to, by station, and their networks.
struct Spans {
    std::map<std::string, Estimate, std::less<>> by_station;
    std::map<std::string, AngleEstimate, std::less<>> angles;  ///< by station
    std::vector<Network> networks;                             ///< those with redundancy
    std::optional<Network> unformed;    ///< of the opening, bay, arch or gable: its readings form no figure at all
    std::optional<Traverse> traverse;   ///< of a bay or corner with two facets or more
    std::optional<ArchForm> arch_form;  ///< where an arch has ordinates
    bool impossible_triangle = false;   ///< sides and a diagonal that close no triangle
    std::vector<std::string> triangle_stations;

    [[nodiscard]] const Estimate* find(std::string_view station) const;
};

/// Adjusts the wall (left + width + right = total) and the opening as a plane figure of four sides and two diagonals
/// (trade rules, section 3); of a bay or corner its traverse, of an arch and a gable their figure. Readings that close
/// no network stand as they were read. A width is the opening's (the traverse's, the arch's, the gable's) where that
/// network stands, else the wall's.
[[nodiscard]] Spans adjust_spans(const std::vector<CountedReading>& readings, Shape shape, const TapeRule& tape);

/// How far the corner that sides and one diagonal give departs from square, measured over the height, with its u.
struct Squareness {
    Length offset;
    Length u;
    bool closes = true;  ///< false: the three lengths close no triangle
};

/// The corner between sides `a` and `b` (the height) opposite `diagonal`, by the cosine rule.
[[nodiscard]] Squareness squareness_of(const Estimate& a, const Estimate& b, const Estimate& diagonal);

}  // namespace truehang
