// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "adjust/network.h"
#include "adjust/tape.h"
#include "survey/counted.h"

#include <array>
#include <optional>
#include <vector>

namespace truehang {

/// The heights of a window: floor, sill, head, pole, ceiling and level line on each plumb line, adjusted together where
/// a level line ties the lines (trade rules, section 3; the contract's table of stations).
class PlumbLines {
public:
    /// Adjusts the height readings. `hang` is what the hardware runs parallel to.
    [[nodiscard]] static PlumbLines adjusted(const std::vector<CountedReading>& readings, Hang hang,
                                             const TapeRule& tape);

    /// The height of `upper` over `lower` on a line; nothing where no readings join the two.
    [[nodiscard]] std::optional<Estimate> between(Line line, PlumbMark lower, PlumbMark upper) const;
    /// A mark's height above the floor there.
    [[nodiscard]] std::optional<Estimate> height(Line line, PlumbMark mark) const {
        return between(line, PlumbMark::floor, mark);
    }
    /// The stations of the readings that lead from one mark to the other by the fewest steps; empty where none do.
    [[nodiscard]] std::vector<std::string> way_between(Line line, PlumbMark lower, PlumbMark upper) const;
    /// The marks that a line has at all, in the order floor to level.
    [[nodiscard]] bool has(Line line, PlumbMark mark) const;
    /// Two or more lines are tied by a level line, this one among them.
    [[nodiscard]] bool is_tied(Line line) const { return tied_[index_of(line)]; }
    /// The line that unsuffixed `pole.*` readings belong to.
    [[nodiscard]] Line pole_line() const { return pole_line_; }
    [[nodiscard]] const std::vector<NetworkCheck>& checks() const { return checks_; }

private:
    struct Part {                                  ///< one network that was adjusted by itself
        std::array<std::array<int, 6>, 3> mark{};  ///< number of each mark in it, -1 where it isn't
        std::vector<int> unknown;                  ///< by mark: its unknown, -1 for a datum
        std::vector<int> group;                    ///< by mark: what is joined has the same
        Adjustment adjustment;
        std::vector<std::string> stations;
        std::vector<bool> measured;
        std::vector<std::array<int, 2>> ends;  ///< by reading: the marks it runs between
    };
    friend class PlumbBuilder;

    [[nodiscard]] static std::size_t index_of(Line line) { return static_cast<std::size_t>(line); }
    std::array<bool, 3> tied_{};
    Line pole_line_ = Line::left;
    std::array<int, 3> part_of_line_{};
    std::vector<Part> parts_;
    std::vector<NetworkCheck> checks_;
};

}  // namespace truehang
