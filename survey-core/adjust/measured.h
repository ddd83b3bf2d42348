// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "adjust/photo_check.h"
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
    Estimate estimate;                     ///< of an angle only what it rests on
    std::optional<AngleEstimate> angle{};  ///< of an angle, in place of the length
};

/// A window's readings, adjusted, with what is to be said of them.
struct MeasuredWindow {
    Shape shape = Shape::recess;
    TapeRule tape;
    LengthUnit entry_unit = LengthUnit::mm;
    std::vector<CountedReading> readings;
    PlumbLines plumb;
    Spans spans;
    std::vector<Network> networks;                  ///< those with redundancy
    std::vector<Explanation> explanations;          ///< of the networks that don't add up, likeliest first
    std::optional<PhotosTogether> photos{};         ///< what the window’s photos say of its opening, as a rough tape
    std::optional<Network> photo_check{};           ///< the tape’s readings against them; none of `networks`
    std::vector<Explanation> photo_explanations{};  ///< where that alone, or that too, doesn't add up
    std::vector<Flag> flags;
    std::vector<PlanPoint>
        plan;  ///< of a bay or corner: its corners, outer edges included; empty where they aren't known
    std::optional<Estimate> track;  ///< of a bay or corner: round it at the leading hardware's projection
    int facets = 0;                 ///< of a bay or corner: the last facet that was read

    /// The largest and the least of the adjusted widths; none of a bay or corner, which has no one width.
    [[nodiscard]] std::optional<Estimate> largest_width() const;
    [[nodiscard]] std::optional<Estimate> least_width() const;
    /// The width at the wall, where the hardware hangs: the uppermost that is known.
    [[nodiscard]] std::optional<Estimate> wall_width() const;
};

/// Adjusts all networks of a window whose hardware runs parallel to `hang`, and flags two readings of one station,
/// readings that say another value than typed, spreads, squareness and what doesn't add up (trade rules, sections 3,
/// 10).
[[nodiscard]] MeasuredWindow measure(const Window& window, Shape shape, Hang hang, const TapeRule& tape,
                                     LengthUnit entry_unit);

/// The hardware that a window is measured for, where several things hang: the first that isn't a headrail, else the
/// first there is; null where nothing hangs.
[[nodiscard]] const Hardware* leading_hardware(const Window& window);

/// What the heights of a window are taken for, where several things hang: the first hardware that isn't a headrail,
/// else the first there is.
[[nodiscard]] Hang leading_hang(const Window& window);

/// The station of a plumb line's reading from sill (or floor) to head: `opening.height.left`, of a bay
/// `facet.1.height`; empty where the shape has none there.
[[nodiscard]] std::string height_station(const MeasuredWindow& measured, Line line);

/// The sizes as reported: stations of spans in the contract's order, what was derived from them (`bay.track`,
/// `arch.radius`), then each plumb line's marks over the floor.
[[nodiscard]] std::vector<MeasuredSize> sizes_of(const MeasuredWindow& measured);

}  // namespace truehang
