// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "adjust/line_network.h"
#include "adjust/tape.h"
#include "survey/counted.h"

#include <array>
#include <optional>
#include <vector>

namespace truehang {

/// From one mark of a plumb line up to another.
struct PlumbSpan {
    Line line = Line::left;
    PlumbMark from = PlumbMark::floor;
    PlumbMark to = PlumbMark::floor;
};

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
    /// How far the height of a span moves with each reading.
    [[nodiscard]] std::vector<Share> shares(const PlumbSpan& span) const;
    /// The standard uncertainty of a span with one more reading of `sigma` along another; nothing where readings don't
    /// join the two.
    [[nodiscard]] std::optional<Length> u_with(const PlumbSpan& span, const PlumbSpan& reading, Length sigma) const;
    /// The marks that a line has at all, in the order floor to level.
    [[nodiscard]] bool has(Line line, PlumbMark mark) const;
    /// Two or more lines are tied by a level line, this one among them.
    [[nodiscard]] bool is_tied(Line line) const { return part(line).tied; }
    /// The line that unsuffixed `pole.*` readings belong to.
    [[nodiscard]] Line pole_line() const { return pole_line_; }
    [[nodiscard]] const std::vector<Network>& networks() const { return redundant_; }

private:
    /// The network that holds a line, and its marks there; -1 where no reading reaches one.
    struct LinePart {
        int network = -1;
        std::array<int, 6> mark{-1, -1, -1, -1, -1, -1};
        bool tied = false;
    };
    friend class PlumbBuilder;

    [[nodiscard]] const LinePart& part(Line line) const { return parts_[static_cast<std::size_t>(line)]; }
    std::array<LinePart, 3> parts_;
    Line pole_line_ = Line::left;
    std::vector<LineNetwork> networks_;
    std::vector<Network> redundant_;
};

}  // namespace truehang
