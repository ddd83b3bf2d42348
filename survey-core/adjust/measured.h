// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "adjust/plumb.h"
#include "adjust/slips.h"
#include "adjust/spans.h"
#include "survey/findings.h"

#include <optional>
#include <vector>

namespace truehang {

/// A size as the figures name it: a station, or a mark with its plumb line.
struct MeasuredSize {
    std::string name;
    Estimate estimate;
};

/// A window's readings, adjusted, with what is to be said of them.
struct MeasuredWindow {
    Shape shape = Shape::recess;
    TapeRule tape;
    LengthUnit entry_unit = LengthUnit::mm;
    std::vector<CountedReading> readings;
    PlumbLines plumb;
    Spans spans;
    std::vector<Network> networks;          ///< those with redundancy
    std::vector<Explanation> explanations;  ///< of the networks that don't add up, likeliest first
    std::vector<Flag> flags;

    /// The largest and the least of the adjusted widths.
    [[nodiscard]] std::optional<Estimate> largest_width() const;
    [[nodiscard]] std::optional<Estimate> least_width() const;
};

/// Adjusts all networks of a window whose hardware runs parallel to `hang`, and flags two readings of one station,
/// readings that say another value than typed, spreads, squareness and what doesn't add up (trade rules, sections 3,
/// 10).
[[nodiscard]] MeasuredWindow measure(const Window& window, Shape shape, Hang hang, const TapeRule& tape,
                                     LengthUnit entry_unit);

/// What the heights of a window are taken for, where several things hang: the first hardware that isn't a headrail,
/// else the first there is.
[[nodiscard]] Hang leading_hang(const Window& window);

/// The sizes as reported: stations of spans in the contract's order, then each plumb line's marks over the floor.
[[nodiscard]] std::vector<MeasuredSize> sizes_of(const MeasuredWindow& measured);

}  // namespace truehang
