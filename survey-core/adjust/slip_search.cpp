// SPDX-License-Identifier: Apache-2.0
#include "adjust/slip_search.h"

#include "adjust/chi_square.h"
#include "adjust/slip_priors.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace truehang {

namespace {

/// More failing networks than this are taken one by one for what they are: something is wrong altogether.
constexpr std::size_t most_failing = 8;

bool takes_part(const Network& network, std::string_view station) {
    return std::ranges::find(network.observations, station, &Observation::station) != network.observations.end();
}

/// Between two faces, so that the tape's case lies within the reading.
bool is_side(const Station& station) {
    return station.word.starts_with("opening.width") || station.word.starts_with("opening.height");
}

bool is_inside(const Station& station) { return is_side(station) || station.word.starts_with("opening.diagonal"); }

bool may_be_inside(const Station& station) {
    return is_inside(station) || station.word.starts_with("ceiling.") || station.word == "wall.total";
}

/// The largest normalised residual among some stations of an adjustment.
double largest_w(const Network& network, const Residuals& adjusted, std::string_view station) {
    double largest = 0.0;
    for (std::size_t i = 0; i < network.observations.size(); ++i) {
        if (network.observations[i].station == station) {
            largest = std::max(largest, std::abs(adjusted.normalised[i]));
        }
    }
    return largest;
}

}  // namespace

double log_unfound_pair(const Network& network) {
    // The share of its range that a reading without explanation has, about: a standard error in the size of a slip.
    constexpr double volume = 0.01;
    const double each = slip_rate * slip_share::unexplained * static_cast<double>(network.observations.size()) * volume;
    const double left = std::max(0, network.adjustment.redundancy - 2);
    return std::log(each * each / 2.0) + std::max(0.0, network.adjustment.chi2 - left) / 2.0;
}

SlipSearch::SlipSearch(const SlipEvidence& evidence) : evidence_(evidence) {
    for (const Network& network : evidence.networks) {
        if (!network.adds_up() && failing_.size() < most_failing) {
            failing_.push_back(&network);
        }
    }
}

std::vector<Hypothesis> SlipSearch::run() {
    for (const CountedReading& reading : evidence_.readings) {
        if (reading.independent) {
            judge(reading);
        }
    }
    for (Judged& judged : judged_) {
        if (judged.is_suspect) {
            find_candidates(judged);
            try_catalogue(judged);
            try_unexplained(judged);
        }
    }
    try_swaps();
    try_case_for_all();
    try_pairs();
    return std::move(found_);
}

bool SlipSearch::is_suspected(const Network& network, std::string_view station) const {
    const auto& w = network.adjustment.normalised;
    const double largest = std::abs(*std::ranges::max_element(w, {}, [](double each) { return std::abs(each); }));
    const double own = largest_w(network, network.adjustment, station);
    return own > 0.0 && (own >= critical_w || own >= largest - 1e-9);
}

double SlipSearch::Judged::apart(double one, double other) const {
    return is_angle ? std::remainder(one - other, 360.0) : one - other;
}

void SlipSearch::find_candidates(Judged& judged) const {
    std::vector<Candidate>& candidates = judged.candidates;
    const CountedReading& reading = *judged.reading;
    if (!candidates.empty()) {
        return;
    }
    if (reading.angle) {
        for (const MeantAngle& meant : meant_by(written_angle(reading))) {
            candidates.push_back({meant.slip, meant.value.degrees(), meant.chance});
        }
    } else {
        for (const Meant& meant : meant_by(written(reading, evidence_.entry_unit), evidence_.tape.case_length)) {
            candidates.push_back({meant.slip, meant.value.mm(), meant.chance});
        }
    }
}

void SlipSearch::judge(const CountedReading& reading) {
    Judged judged{&reading, {}, false, 0.0, reading.value.mm(), reading.station.is_angle()};
    for (const Network& network : evidence_.networks) {
        const auto own = std::ranges::find(network.observations, reading.station.word, &Observation::station);
        if (own == network.observations.end()) {
            continue;
        }
        judged.value = own->value;
        judged.is_angle = own->is_angle;
        if (const auto left = leave_out(network, reading.station.word, evidence_.tape)) {
            judged.places.push_back({&network, *left});
            judged.is_suspect =
                judged.is_suspect || (!network.adds_up() && is_suspected(network, reading.station.word));
        }
    }
    constexpr double of_confirmed = 0.03;
    const bool confirmed = was_confirmed(evidence_.window, reading, evidence_.tape);
    judged.log_prior = std::log(slip_rate * (confirmed ? of_confirmed : 1.0));
    judged_.push_back(std::move(judged));
}

unsigned SlipSearch::bit_of(const Network* network) const {
    const auto found = std::ranges::find(failing_, network);
    return found == failing_.end() ? 0U : 1U << static_cast<unsigned>(found - failing_.begin());
}

/// How much likelier the readings are with one of them at another value, as a logarithm; nothing where a network that
/// it takes part in then fails, or doesn't agree with it.
std::optional<double> SlipSearch::gain(const Judged& judged, double value) const {
    double sum = 0.0;
    for (const Place& place : judged.places) {
        const double chi2 = place.left.chi2_at(value);
        if (!place.left.agrees(value) || chi2 >= place.network->limit) {
            return std::nullopt;
        }
        sum += (place.network->adjustment.chi2 - chi2) / 2.0;
    }
    return sum + log_kinship(evidence_, *judged.reading, value);
}

/// Whether a linear network could add up with the changes; any other might.
bool SlipSearch::could_add_up(const Network& network, const std::vector<Change>& changes) const {
    if (!network.is_linear) {
        return true;
    }
    std::vector<double> sigmas;
    std::vector<Adjustment::Change> moved;
    for (std::size_t i = 0; i < network.observations.size(); ++i) {
        const Observation& observation = network.observations[i];
        sigmas.push_back(observation.sigma);
        for (const Change& change : changes) {
            if (change.judged->reading->station.word == observation.station) {
                moved.push_back({i, change.value - observation.value});
            }
        }
    }
    // Another value may be a little less sure.
    constexpr double slack = 1.5;
    return network.adjustment.chi2_with(moved, sigmas) < slack * network.limit;
}

std::optional<double> SlipSearch::gain(const Network& network, const std::vector<Change>& changes) const {
    if (!could_add_up(network, changes)) {
        return std::nullopt;
    }
    auto observations = network.observations;
    for (const Change& change : changes) {
        set_reading(observations, change.judged->reading->station.word, change.value, evidence_.tape);
    }
    const auto adjusted = network.tried(observations);
    if (!adjusted || adjusted->chi2 >= network.limit) {
        return std::nullopt;
    }
    for (const Change& change : changes) {
        if (largest_w(network, *adjusted, change.judged->reading->station.word) >= critical_w) {
            return std::nullopt;
        }
    }
    return (network.adjustment.chi2 - adjusted->chi2) / 2.0;
}

/// The same for several readings, over every network that any of them takes part in.
std::optional<double> SlipSearch::gain(const std::vector<Change>& changes) const {
    if (changes.size() == 1) {
        return gain(*changes.front().judged, changes.front().value);
    }
    double sum = 0.0;
    for (const Network& network : evidence_.networks) {
        std::vector<Change> own;
        std::ranges::copy_if(changes, std::back_inserter(own), [&](const Change& change) {
            return takes_part(network, change.judged->reading->station.word);
        });
        if (own.empty()) {
            continue;
        }
        const auto one = gain(network, own);
        if (!one) {
            return std::nullopt;
        }
        sum += *one;
    }
    return sum;
}

unsigned SlipSearch::clears(const std::vector<Change>& changes) const {
    unsigned bits = 0;
    for (const Network* network : failing_) {
        const bool touched = std::ranges::any_of(
            changes, [&](const Change& change) { return takes_part(*network, change.judged->reading->station.word); });
        bits |= touched ? bit_of(network) : 0U;
    }
    return bits;
}

void SlipSearch::add(std::string slip, const std::vector<Change>& changes, double log_weight, bool has_value) {
    Hypothesis hypothesis;
    hypothesis.log_weight = log_weight;
    Explanation& explanation = hypothesis.explanation;
    explanation.slip = std::move(slip);
    explanation.clears = clears(changes);
    for (const Change& change : changes) {
        const Judged& judged = *change.judged;
        Correction correction{std::string(judged.reading->station.word), judged.reading->value, {}};
        if (judged.is_angle) {
            correction.angle = judged.reading->angle;
            correction.proposed_angle = has_value ? std::optional(Angle::degrees(change.value)) : std::nullopt;
        } else {
            correction.proposed = has_value ? std::optional(Length::mm(change.value)) : std::nullopt;
        }
        explanation.corrections.push_back(std::move(correction));
        explanation.expected.push_back(change.value);
    }
    if (explanation.clears != 0U) {
        found_.push_back(std::move(hypothesis));
    }
}

void SlipSearch::try_catalogue(const Judged& judged) {
    for (const Candidate& meant : judged.candidates) {
        if (const auto more = gain(judged, meant.value)) {
            add(std::string(meant.slip), {{&judged, meant.value}}, judged.log_prior + std::log(meant.chance) + *more);
        }
    }
}

/// The logarithm of the chance that a reading was copied from one that says the same, an angle from another angle;
/// minus infinity where none does. The facets of a bay are alike anyway.
double SlipSearch::log_chance_of_copy(const Judged& judged) const {
    std::size_t same = 0;
    std::size_t others = 0;
    for (const CountedReading& other : evidence_.readings) {
        const bool are_facets =
            other.station.kind == StationKind::facet && judged.reading->station.kind == StationKind::facet;
        if (other.station.word != judged.reading->station.word && other.station.is_angle() == judged.is_angle &&
            !are_facets) {
            ++others;
            const double value = other.angle ? other.angle->degrees() : other.value.mm();
            same += std::abs(value - judged.value) < 0.05 ? 1U : 0U;
        }
    }
    return std::log(slip_share::copied * static_cast<double>(same) /
                    static_cast<double>(std::max<std::size_t>(others, 1)));
}

/// An error of any size: the reading is where the others expect it. One that says the same as another of its kind may
/// have been copied from there.
void SlipSearch::try_unexplained(const Judged& judged) {
    double curvature = 0.0;
    double weighted = 0.0;
    for (const Place& place : judged.places) {
        curvature += place.left.curvature;
        weighted += place.left.curvature * place.left.expected;
    }
    const double expected = weighted / curvature;
    const auto more = gain(judged, expected);
    constexpr double least_mm = 1.0;
    if (!more || (!judged.is_angle && expected < least_mm)) {
        return;
    }
    const double volume = std::sqrt(2.0 * std::numbers::pi / curvature);
    const double prior = judged.log_prior + *more + std::log(volume);
    add("unexplained", {{&judged, expected}},
        prior + std::log(slip_share::unexplained *
                         unexplained_density(judged.apart(judged.value, expected), judged.is_angle)),
        false);
    if (const double copied = log_chance_of_copy(judged); std::isfinite(copied)) {
        add("copied", {{&judged, std::round(expected)}}, prior + copied);
    }
}

/// The logarithm of the chance that two readings are exchanged: an angle only with another angle.
double SlipSearch::log_chance_of_swap(const Judged& judged) const {
    const auto alike = std::ranges::count_if(
        evidence_.readings, [&](const CountedReading& each) { return each.station.is_angle() == judged.is_angle; });
    return std::log(2.0 * slip_share::swapped * slip_rate /
                    static_cast<double>(std::max<std::ptrdiff_t>(alike - 1, 1)));
}

void SlipSearch::try_swaps() {
    if (judged_.size() < 2) {
        return;
    }
    for (std::size_t i = 0; i < judged_.size(); ++i) {
        for (std::size_t j = i + 1; j < judged_.size(); ++j) {
            const Judged& a = judged_[i];
            const Judged& b = judged_[j];
            if (a.is_angle != b.is_angle || !(a.is_suspect || b.is_suspect) || std::abs(a.value - b.value) < 1.0) {
                continue;
            }
            const std::vector<Change> changes{{&a, b.value}, {&b, a.value}};
            if (const auto more = gain(changes)) {
                // Exchanged within a stretch, its readings lie no nearer to each other than before.
                const bool alike = are_kin(a.reading->station, b.reading->station,
                                           evidence_.window.shape.known().value_or(Shape::recess));
                const double kin =
                    alike ? 0.0
                          : log_kinship(evidence_, *a.reading, b.value) + log_kinship(evidence_, *b.reading, a.value);
                const bool a_first = a.is_suspect;
                add("swapped", a_first ? changes : std::vector<Change>{changes[1], changes[0]},
                    log_chance_of_swap(a) + *more + kin);
            }
        }
    }
}

/// The case left out of, or added twice to, all that lies between two faces, but for what was taken again since.
void SlipSearch::try_case_for_all() {
    if (!evidence_.tape.case_length || evidence_.tape.case_length->mm() < 1.0) {
        return;
    }
    const double prior = std::log(slip_share::case_for_all * slip_rate / 2.0);
    for (const auto belongs : {is_side, is_inside, may_be_inside}) {
        for (const double sign : {1.0, -1.0}) {
            const double amount = sign * evidence_.tape.case_length->mm();
            std::vector<Change> changes;
            std::size_t confirming = 0;
            for (const Judged& judged : judged_) {
                if (!belongs(judged.reading->station)) {
                    continue;
                }
                const auto earlier = earlier_value(evidence_.window, *judged.reading);
                if (!earlier) {
                    changes.push_back({&judged, judged.value + amount});
                } else if (std::abs(judged.value - *earlier - amount) < retaken_apart(judged)) {
                    ++confirming;
                }
            }
            if (changes.size() < 2) {
                continue;
            }
            if (const auto more = gain(changes)) {
                // A reading that was taken again and came out by a case apart is hardly chance.
                constexpr double log_confirmed = 4.0;
                add("tape-case", changes, prior + *more + log_confirmed * static_cast<double>(confirming));
            }
        }
    }
}

/// How far two readings of one station may differ.
double SlipSearch::retaken_apart(const Judged& judged) const {
    return critical_w * std::sqrt(2.0) * reading_u(*judged.reading, evidence_.tape).mm();
}

/// The readings of a network with the largest normalised residuals: two slips are sought among these.
std::vector<SlipSearch::Judged*> SlipSearch::most_suspect(const Network& network) {
    constexpr std::size_t most = 8;
    std::vector<Judged*> list;
    for (Judged& judged : judged_) {
        if (takes_part(network, judged.reading->station.word)) {
            list.push_back(&judged);
        }
    }
    std::ranges::stable_sort(list, std::ranges::greater{}, [&](const Judged* judged) {
        return largest_w(network, network.adjustment, judged->reading->station.word);
    });
    list.resize(std::min(most, list.size()));
    return list;
}

/// Two slips at once, where no single reading clears a network that could tell.
void SlipSearch::try_pairs() {
    for (const Network* network : failing_) {
        const unsigned bit = bit_of(network);
        const bool cleared =
            std::ranges::any_of(found_, [&](const Hypothesis& each) { return (each.explanation.clears & bit) != 0U; });
        if (cleared || network->adjustment.redundancy < 2) {
            continue;
        }
        const auto suspects = most_suspect(*network);
        std::ranges::for_each(suspects, [this](Judged* judged) { find_candidates(*judged); });
        for (std::size_t i = 0; i < suspects.size(); ++i) {
            for (std::size_t j = i + 1; j < suspects.size(); ++j) {
                try_pair(*network, *suspects[i], *suspects[j]);
            }
        }
    }
}

/// What a reading may have meant that lies near what the others expect, where two are left out at once.
std::vector<SlipSearch::Candidate> SlipSearch::near_expected(const Judged& judged, double expected, double variance,
                                                             const Observation& own) const {
    std::vector<Candidate> near;
    std::ranges::copy_if(judged.candidates, std::back_inserter(near), [&](const Candidate& each) {
        const double reach = critical_w * std::hypot(std::sqrt(variance), sigma_at(own, each.value, evidence_.tape));
        return std::abs(judged.apart(each.value, expected)) < reach;
    });
    return near;
}

void SlipSearch::try_pair(const Network& network, const Judged& one, const Judged& other) {
    const auto left = leave_out(network, one.reading->station.word, other.reading->station.word);
    if (!left || left->chi2 >= network.limit) {
        return;
    }
    const std::array<const Judged*, 2> both{&one, &other};
    std::array<const Observation*, 2> own{};
    std::array<std::vector<Candidate>, 2> near;
    for (std::size_t i = 0; i < 2; ++i) {
        own[i] = &*std::ranges::find(network.observations, both[i]->reading->station.word, &Observation::station);
        near[i] = near_expected(*both[i], left->expected[i], left->variances[i], *own[i]);
    }
    // Beyond this the figure bends, and is adjusted anew to see.
    constexpr double straight_mm = 150.0;
    constexpr double straight_deg = 10.0;
    const auto is_straight = [&](std::size_t i) {
        return std::sqrt(left->variances[i]) < (both[i]->is_angle ? straight_deg : straight_mm);
    };
    const bool foreseen = left->holds_widely || (is_straight(0) && is_straight(1));
    constexpr double slack = 2.0;
    for (const Candidate& a : near[0]) {
        for (const Candidate& b : near[1]) {
            const double chi2 =
                left->chi2_at({both[0]->apart(a.value, left->expected[0]), both[1]->apart(b.value, left->expected[1])},
                              {sigma_at(*own[0], a.value, evidence_.tape), sigma_at(*own[1], b.value, evidence_.tape)});
            if (foreseen && chi2 > slack * network.limit) {
                continue;
            }
            try_both(one, a, other, b);
        }
    }
}

void SlipSearch::try_both(const Judged& one, const Candidate& a, const Judged& other, const Candidate& b) {
    const std::vector<Change> changes{{&one, a.value}, {&other, b.value}};
    if (const auto more = gain(changes)) {
        const double kin =
            log_kinship(evidence_, *one.reading, a.value) + log_kinship(evidence_, *other.reading, b.value);
        add(std::string(a.slip), changes,
            one.log_prior + other.log_prior + std::log(a.chance * b.chance) + *more + kin);
    }
}

}  // namespace truehang
