// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "adjust/leave_one_out.h"
#include "adjust/slip_catalogue.h"
#include "adjust/slips.h"

#include <map>
#include <optional>
#include <string>
#include <vector>

namespace truehang {

/// An explanation with its weight against "no slip at all", before it is held against the others.
struct Hypothesis {
    Explanation explanation;
    double log_weight = 0.0;
};

/// The logarithm of the weight of two slips in a network that the search didn't find, against no slip at all.
[[nodiscard]] double log_unfound_pair(const Network& network);

/// Tries the catalogue on the networks that don't add up.
class SlipSearch {
public:
    explicit SlipSearch(const SlipEvidence& evidence);

    [[nodiscard]] const std::vector<const Network*>& failing() const { return failing_; }
    [[nodiscard]] std::vector<Hypothesis> run();

private:
    /// A network that a reading takes part in, and what it expects without it.
    struct Place {
        const Network* network;
        LeftOut left;
    };
    /// What a reading may have meant, by a slip of the catalogue: mm, or degrees of an angle.
    struct Candidate {
        std::string_view slip;
        double value;
        double chance;
    };
    /// A reading that is evidence, with all that judges it, if anything does.
    struct Judged {
        const CountedReading* reading;
        std::vector<Place> places;
        bool is_suspect = false;
        double log_prior = 0.0;  ///< of a slip in it
        double value = 0.0;      ///< as read, mm or degrees
        bool is_angle = false;
        std::vector<Candidate> candidates{};  ///< of one that is suspect; of others once they are asked for

        /// How far one value lies above another; of angles a full turn is none.
        [[nodiscard]] double apart(double one, double other) const;
    };
    /// Readings at other values.
    struct Change {
        const Judged* judged;
        double value;
    };

    void judge(const CountedReading& reading);
    void find_candidates(Judged& judged) const;
    [[nodiscard]] double log_chance_of_copy(const Judged& judged) const;
    [[nodiscard]] double log_chance_of_swap(const Judged& judged) const;
    [[nodiscard]] bool is_suspected(const Network& network, std::string_view station) const;
    [[nodiscard]] unsigned bit_of(const Network* network) const;
    [[nodiscard]] std::optional<double> gain(const Judged& judged, double value) const;
    [[nodiscard]] std::optional<double> gain(const std::vector<Change>& changes) const;
    [[nodiscard]] std::optional<double> gain(const Network& network, const std::vector<Change>& changes) const;
    [[nodiscard]] bool could_add_up(const Network& network, const std::vector<Change>& changes) const;
    [[nodiscard]] std::vector<Judged*> most_suspect(const Network& network);
    [[nodiscard]] double retaken_apart(const Judged& judged) const;
    [[nodiscard]] unsigned clears(const std::vector<Change>& changes) const;
    void add(std::string slip, const std::vector<Change>& changes, double log_weight, bool has_value = true);

    void try_catalogue(const Judged& judged);
    void try_unexplained(const Judged& judged);
    void try_swaps();
    void try_case_for_all();
    void try_pairs();
    [[nodiscard]] std::vector<Candidate> near_expected(const Judged& judged, double expected, double variance,
                                                       const Observation& own) const;
    void try_pair(const Network& network, const Judged& one, const Judged& other);
    void try_both(const Judged& one, const Candidate& a, const Judged& other, const Candidate& b);

    const SlipEvidence& evidence_;
    std::vector<const Network*> failing_;
    std::vector<Judged> judged_;
    std::vector<Hypothesis> found_;
};

}  // namespace truehang
