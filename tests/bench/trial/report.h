// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstdio>
#include <string>
#include <vector>

namespace truehang::trial {

/// Columns of text under headings; the first column is set left, the others right.
struct Table {
    std::string title;
    std::string note;
    std::vector<std::string> headings;
    std::vector<std::vector<std::string>> rows;
};

/// One thing that must hold, and what came out.
struct Criterion {
    std::string what;
    std::string found;
    bool holds = false;
};

/// What a trial found.
struct Report {
    std::vector<Table> tables;
    std::vector<Criterion> criteria;
    std::vector<std::string> examples;  ///< single windows in full, where asked for

    /// What another trial found, after this.
    void add(Report more);
    [[nodiscard]] bool all_hold() const;
    [[nodiscard]] std::string as_text() const;
    [[nodiscard]] std::string as_markdown() const;
};

/// A count of a count, with the bounds that a binomial of `n` at `p` keeps within in all but one of a thousand trials
/// (one side each): summed up term by term, where more than a thousand stray by the normal approximation with
/// continuity.
struct Share {
    long long count = 0;
    long long of = 0;

    void add(bool counted) {
        count += counted ? 1 : 0;
        ++of;
    }
    [[nodiscard]] double value() const { return of == 0 ? 0.0 : static_cast<double>(count) / static_cast<double>(of); }
    /// The most and the least share that chance alone brings about where `p` is true.
    [[nodiscard]] double most(double p) const;
    [[nodiscard]] double least(double p) const;
};

[[nodiscard]] std::string percent(double share, int decimals = 1);
[[nodiscard]] std::string percent(const Share& share, int decimals = 1);

}  // namespace truehang::trial
