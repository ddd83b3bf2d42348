// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "adjust/network.h"
#include "adjust/tape.h"
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
    std::vector<Network> networks;     ///< those with redundancy
    std::optional<Network> unformed;   ///< the opening's, where its readings form no figure at all
    bool impossible_triangle = false;  ///< sides and a diagonal that close no triangle
    std::vector<std::string> triangle_stations;

    [[nodiscard]] const Estimate* find(std::string_view station) const;
};

/// Adjusts the wall (left + width + right = total) and the opening as a plane figure of four sides and two diagonals
/// (trade rules, section 3). Readings that close no network stand as they were read. A width is the opening's where
/// that network stands, else the wall's.
[[nodiscard]] Spans adjust_spans(const std::vector<CountedReading>& readings, const TapeRule& tape);

/// How far the corner that sides and one diagonal give departs from square, measured over the height, with its u.
struct Squareness {
    Length offset;
    Length u;
    bool closes = true;  ///< false: the three lengths close no triangle
};

/// The corner between sides `a` and `b` (the height) opposite `diagonal`, by the cosine rule.
[[nodiscard]] Squareness squareness_of(const Estimate& a, const Estimate& b, const Estimate& diagonal);

}  // namespace truehang
