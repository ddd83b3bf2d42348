// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "report.h"
#include "slip.h"
#include "verdict.h"

#include <map>
#include <string>
#include <vector>

namespace truehang::trial {

/// One window with one slip, and what came of it.
struct SlipCase {
    Built built = Built::recess;
    Slip slip = Slip::free;
    bool of_angle = false;
    bool recoverable = false;
    bool detectable = false;        ///< above the detectable size in some network
    double flag_probability = 0.0;  ///< by theory
    bool given_away = false;        ///< one slip of one reading explains it, and no other
    Verdict verdict;
    std::vector<bool> rightness;   ///< of the verdict's suspects
    int settled_after = 0;         ///< readings that `next` asked for; 0: not within four, or nothing to settle
    bool settled_wrongly = false;  ///< all adds up, and the slip is still there
    std::string asked_in_vain;     ///< a station that isn't there, and was asked for
    bool stuck = false;            ///< nothing was asked for, though it wasn't settled

    std::string in_full;  ///< the window, where examples are asked for and there is something bad

    [[nodiscard]] bool is_ambiguous() const { return verdict.flagged && detectable && !verdict.is_settled(); }
    /// The worst that is to be said of it; empty where nothing is.
    [[nodiscard]] std::string what_is_bad() const;
};

/// A few windows of each kind of failure, told in full.
class Examples {
public:
    explicit Examples(int of_each) : of_each_(of_each) {}

    void offer(const std::string& what, const std::string& in_full) {
        auto& told = told_[what];
        if (static_cast<int>(told.size()) < of_each_) {
            told.push_back(in_full);
        }
    }
    void put_into(Report& report) const;

private:
    int of_each_;
    std::map<std::string, std::vector<std::string>> told_;
};

void tell_slips(const std::vector<SlipCase>& cases, Report& report);
void tell_weights(const std::vector<SlipCase>& cases, Report& report);

}  // namespace truehang::trial
