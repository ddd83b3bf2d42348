// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "adjust/network.h"
#include "adjust/tape.h"

#include <optional>
#include <string>
#include <vector>

namespace truehang {

/// What one reading has in a size: d size / d reading.
struct Share {
    std::string station;
    double share = 0.0;
};

/// Marks along a line and the readings between them: the heights of plumb lines, the widths along a wall. Marks that no
/// reading joins stay unrelated.
class LineNetwork {
public:
    /// A new mark's number.
    int add_mark();

    /// Takes a reading from one mark to another, upward or to the right. A reading that is no evidence of its own
    /// (proposed, copied) is taken only where the two marks aren't joined yet, so that it never makes a loop: observe
    /// the others first.
    void observe(int from, int to, const CountedReading& reading, const TapeRule& tape);

    /// Adjusts what was observed. False where nothing was.
    bool adjust_all();

    /// The adjusted distance from one mark to another; nothing where readings don't join them.
    [[nodiscard]] std::optional<Estimate> between(int from, int to) const;
    /// The stations that lead from one mark to the other by the fewest readings.
    [[nodiscard]] std::vector<std::string> way_between(int from, int to) const;
    /// How far that distance moves with each reading, by station, where it moves at all.
    [[nodiscard]] std::vector<Share> shares(int from, int to) const;
    /// The standard uncertainty (mm) that the distance from one mark to another would have with one more reading of
    /// `sigma` between two others; nothing where readings don't join all four.
    [[nodiscard]] std::optional<double> u_with(int from, int to, int reading_from, int reading_to, double sigma) const;
    [[nodiscard]] std::optional<Network> network(std::string name) const;

private:
    /// Between which marks an observation runs.
    struct Stretch {
        int from, to;
        bool measured;
    };
    [[nodiscard]] int root(int mark) const;
    [[nodiscard]] std::vector<double> difference(int from, int to) const;

    std::vector<int> parent_;   ///< by mark: towards the datum of what it is joined to
    std::vector<int> unknown_;  ///< by mark: its unknown, -1 for a datum
    std::vector<Observation> observations_;
    std::vector<Stretch> stretches_;  ///< by observation
    Adjustment adjustment_;
};

}  // namespace truehang
