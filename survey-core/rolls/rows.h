// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "rolls/lots.h"

#include <vector>

// What lies along a roll as runs in a row, each as early as it can; used by the files of this folder alone.

namespace truehang::laying {

struct InRow {
    int run = 0;
    int skips = 0;  ///< so many stretches are passed over before it
    int early = 0;  ///< behind so many of its slots the rest of the stretch is left; 0: where no more fit
    friend bool operator==(const InRow&, const InRow&) = default;
};
using Row = std::vector<InRow>;

struct Reckoned {
    bool lies = false;
    Um used = 0;
    Um longest = 0;  ///< useful remnant
};

/// The runs of all windows, and what rows of them use of the rolls.
class Rows {
public:
    explicit Rows(const LotsProblem& problem);

    [[nodiscard]] const std::vector<Run>& runs() const { return runs_; }
    [[nodiscard]] int window_of(int run) const { return window_[static_cast<std::size_t>(run)]; }
    /// A window's runs are numbered on from this one up to that of the next window.
    [[nodiscard]] int first_of(std::size_t window) const { return first_[window]; }

    /// What the row uses, as `use_of` says for what `laid` lays; every piece tried is a step.
    [[nodiscard]] Reckoned reckon(std::size_t roll, const Row& row, long& steps) const;
    [[nodiscard]] std::vector<Placed> laid(std::size_t roll, const Row& row) const;
    /// The row that is laid like this; slots of no run, the loose ones, are left out.
    [[nodiscard]] Row read(std::size_t roll, const std::vector<Placed>& placed) const;

private:
    template <typename OnSlot>
    Reckoned walk(std::size_t roll, const Row& row, OnSlot on_slot) const;

    const LotsProblem& problem_;
    std::vector<Run> runs_;
    std::vector<int> window_, first_;
    std::vector<int> run_of_slot_;          ///< -1: loose
    std::vector<std::vector<Um>> longest_;  ///< by roll and stretch: the longest from it on
};

}  // namespace truehang::laying
