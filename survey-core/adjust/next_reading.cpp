// SPDX-License-Identifier: Apache-2.0
#include "adjust/next_reading.h"

#include "adjust/slip_priors.h"
#include "units/angle_text.h"
#include "units/length_text.h"
#include "units/saying.h"

#include <algorithm>
#include <cmath>

namespace truehang {

namespace {

/// What a reading would say (mm, degrees) if an explanation is the true one.
struct Outcome {
    double weight = 0.0;
    double value = 0.0;
};

/// How much is learnt, in bits, from a reading whose outcomes are told apart by `tolerance`.
double information(std::vector<Outcome> outcomes, double tolerance) {
    std::ranges::sort(outcomes, {}, &Outcome::value);
    double bits = 0.0;
    double together = 0.0;
    double from = outcomes.empty() ? 0.0 : outcomes.front().value;
    for (std::size_t i = 0; i < outcomes.size(); ++i) {
        together += outcomes[i].weight;
        if (i + 1 == outcomes.size() || outcomes[i + 1].value - from > tolerance) {
            bits -= together > 0.0 ? together * std::log2(together) : 0.0;
            together = 0.0;
            from = i + 1 < outcomes.size() ? outcomes[i + 1].value : from;
        }
    }
    return bits;
}

/// The pole is read from one side of the head only.
bool is_other_side(const Window& window, std::string_view station) {
    const auto has = [&](std::string_view word) {
        return std::ranges::any_of(window.readings,
                                   [&](const Reading& reading) { return reading.station.starts_with(word); });
    };
    return (station.starts_with("pole.below") && has("pole.above")) ||
           (station.starts_with("pole.above") && has("pole.below"));
}

/// Where along the opening a reading is taken, from its left edge; nothing where it isn't at one place.
std::optional<double> place_across(const MeasuredWindow& measured, const Station& station) {
    const auto width = measured.largest_width();
    if (!station.line || !width) {
        return std::nullopt;
    }
    return *station.line == Line::left     ? 0.0
           : *station.line == Line::centre ? width->value.mm() / 2.0
                                           : width->value.mm();
}

bool has_something_in_front(const Window& window, const MeasuredWindow& measured, const Station& station) {
    const auto at = place_across(measured, station);
    if (!at) {
        return false;
    }
    return std::ranges::any_of(window.obstructions, [&](const Obstruction& obstruction) {
        const bool in_the_way =
            obstruction.kind &&
            (obstruction.kind->is(ObstructionKind::furniture) || obstruction.kind->is(ObstructionKind::radiator) ||
             obstruction.kind->is(ObstructionKind::heater) || obstruction.kind->is(ObstructionKind::fire));
        constexpr double reach = 150.0;
        const double left = obstruction.left.value_or(Length()).mm();
        return in_the_way && obstruction.left && *at > left - reach &&
               *at < left + obstruction.width.value_or(Length()).mm() + reach;
    });
}

/// What a reading costs, the plainest being 1.
double cost_of(const Window& window, const MeasuredWindow& measured, const Station& station) {
    constexpr double by_hand_mm = 2000.0;
    double cost = 1.0;
    if (station.kind == StationKind::height) {
        const Line line = station.line.value_or(measured.plumb.pole_line());
        const auto top = measured.plumb.height(line, station.to);
        cost += top && top->value.mm() > by_hand_mm ? 0.5 : 0.0;
    }
    // Two hands: a diagonal's far end, a bevel held into the corner and read.
    cost += station.kind == StationKind::diagonal || station.is_angle() ? 0.5 : 0.0;
    cost += station.kind == StationKind::wall ? 0.25 : 0.0;
    cost += has_something_in_front(window, measured, station) ? 0.5 : 0.0;
    cost += is_settled(window, station.word) ? 0.0 : 0.25;
    return cost;
}

/// The explanations of the first network that doesn't add up, and what of the window would stand if each were true.
class Alternatives {
public:
    Alternatives(const Window& window, const MeasuredWindow& measured) : window_(window), measured_(measured) {
        constexpr unsigned first_failing = 1U;
        constexpr double worth_telling = 0.01;
        // Where only the photos disagree, theirs.
        const auto& explanations = measured.explanations.empty() ? measured.photo_explanations : measured.explanations;
        for (const Explanation& explanation : explanations) {
            if ((explanation.clears & first_failing) != 0U && explanation.weight >= worth_telling) {
                explanations_.push_back(&explanation);
                rest_ -= explanation.weight;
            }
        }
    }

    [[nodiscard]] bool empty() const { return explanations_.empty(); }

    /// What taking a reading again would say.
    [[nodiscard]] std::vector<Outcome> again(const CountedReading& reading) const {
        const double as_read = reading.angle ? reading.angle->degrees() : reading.value.mm();
        std::vector<Outcome> outcomes{{rest_, as_read}};
        for (const Explanation* explanation : explanations_) {
            outcomes.push_back({explanation->weight, expected(*explanation, reading.station.word).value_or(as_read)});
        }
        return outcomes;
    }

    /// How likely it is that the reading is the one at fault.
    [[nodiscard]] double at_fault(std::string_view station) const {
        double weight = 0.0;
        for (const Explanation* explanation : explanations_) {
            weight += expected(*explanation, station) ? explanation->weight : 0.0;
        }
        return weight;
    }

    /// What a reading that wasn't taken yet would say; empty where an explanation doesn't tell.
    [[nodiscard]] std::vector<Outcome> anew(const Station& station) {
        std::vector<Outcome> outcomes;
        for (std::size_t i = 0; i < explanations_.size(); ++i) {
            const auto value = station.kind == StationKind::height ? predicted_height(i, station)
                               : may_be_predicted(station)         ? predicted(i, station)
                                                                   : std::nullopt;
            if (!value) {
                return {};
            }
            outcomes.push_back({explanations_[i]->weight, *value});
        }
        return outcomes;
    }

private:
    static std::optional<double> expected(const Explanation& explanation, std::string_view station) {
        for (std::size_t i = 0; i < explanation.corrections.size(); ++i) {
            if (explanation.corrections[i].station == station) {
                return explanation.expected[i];
            }
        }
        return std::nullopt;
    }

    /// The readings as they would be if an explanation is the true one.
    [[nodiscard]] std::vector<CountedReading> readings_with(const Explanation& explanation) const {
        std::vector<CountedReading> readings = measured_.readings;
        for (CountedReading& reading : readings) {
            const auto value = expected(explanation, reading.station.word);
            if (value && reading.angle) {
                reading.angle = Angle::degrees(*value);
            } else if (value) {
                reading.value = Length::mm(*value);
            }
        }
        return readings;
    }

    std::optional<double> predicted_height(std::size_t explanation, const Station& station) {
        for (std::size_t i = plumb_.size(); i < explanations_.size(); ++i) {
            plumb_.push_back(
                PlumbLines::adjusted(readings_with(*explanations_[i]), leading_hang(window_), measured_.tape));
        }
        const PlumbLines& plumb = plumb_[explanation];
        const auto height = plumb.between(station.line.value_or(plumb.pole_line()), station.from, station.to);
        return height ? std::optional(height->value.mm()) : std::nullopt;
    }

    /// Of an upright opening the middle width alone; of the other shapes all that their figure gives.
    [[nodiscard]] bool may_be_predicted(const Station& station) const {
        const bool has_figure =
            measured_.shape != Shape::recess && measured_.shape != Shape::frame && measured_.shape != Shape::door;
        return has_figure || station.word == "opening.width.middle";
    }

    std::optional<double> predicted(std::size_t explanation, const Station& station) {
        for (std::size_t i = spans_.size(); i < explanations_.size(); ++i) {
            spans_.push_back(adjust_spans(readings_with(*explanations_[i]), measured_.shape, measured_.tape));
        }
        const Spans& spans = spans_[explanation];
        if (station.word == "opening.width.middle") {
            const auto* top = spans.find("opening.width.top");
            const auto* bottom = spans.find("opening.width.bottom");
            return top != nullptr && bottom != nullptr ? std::optional((top->value.mm() + bottom->value.mm()) / 2.0)
                                                       : std::nullopt;
        }
        if (spans.traverse && station.kind == StationKind::corner_depth) {
            const auto plan = spans.traverse->plan();
            const auto corner = static_cast<std::size_t>(station.number);
            return corner + 1 < plan.size() ? std::optional(std::abs(plan[corner].y.mm())) : std::nullopt;
        }
        if (const auto angle = spans.angles.find(station.word); angle != spans.angles.end()) {
            return angle->second.value.degrees();
        }
        const auto* length = spans.find(station.word);
        return length != nullptr ? std::optional(length->value.mm()) : std::nullopt;
    }

    const Window& window_;
    const MeasuredWindow& measured_;
    std::vector<const Explanation*> explanations_;
    std::vector<PlumbLines> plumb_;  ///< by explanation, once they are asked for
    std::vector<Spans> spans_;       ///< likewise
    double rest_ = 1.0;
};

/// How far two readings of a station must lie apart to be told apart; a middle width wanders with the house.
double tolerance_of(const MeasuredWindow& measured, const Station& station, double value) {
    // DIN 18202:2013, finished reveals up to 3 m: 10 mm.
    constexpr double middle = 10.0;
    constexpr double apart = 2.0;
    if (station.is_angle()) {
        return apart * std::sqrt(2.0) * measured.tape.angle_u.degrees();
    }
    const double u = reading_u(Length::mm(std::max(1.0, value)), measured.tape).mm();
    return station.word == "opening.width.middle" ? apart * std::hypot(u, middle) : apart * std::sqrt(2.0) * u;
}

std::string why(const MeasuredWindow& measured, const Station& station, bool again) {
    for (const Flag& flag : measured.flags) {
        if (flag.code == "does-not-add-up" && standing_out(flag.suspects) == station.word &&
            flag.suspects.front().weight >= 0.5) {
            const Suspect& first = flag.suspects.front();
            return first.proposed_angle ? say("{}: the bevel says whether it reads {}.", station_words(station),
                                              write_angle(*first.proposed_angle, said_decimal(), true))
                                        : say("{}: the tape says whether it reads {}.", station_words(station),
                                              said_length(*first.proposed, measured.entry_unit));
        }
    }
    return again ? say("{}, again: it tells best which of these readings is off.", station_words(station))
                 : say("{}: it tells best which of these readings is off.", station_words(station));
}

}  // namespace

std::optional<WorthTaking> settling_reading(const Window& window, const MeasuredWindow& measured) {
    const auto failing = std::ranges::find(measured.flags, "does-not-add-up", &Flag::code);
    if (failing == measured.flags.end()) {
        return std::nullopt;
    }
    Alternatives alternatives(window, measured);
    const Station* best = nullptr;
    double best_score = 0.0;
    // What has to be taken again anyway is half settled by doing so.
    constexpr double for_the_fault = 0.5;
    for (const Station& station : stations_of(measured.shape)) {
        const auto* reading = find_counted(measured.readings, station.word);
        if (alternatives.empty() ||
            (reading == nullptr && (is_settled(window, station.word) || is_other_side(window, station.word)))) {
            continue;
        }
        const auto outcomes = reading != nullptr ? alternatives.again(*reading) : alternatives.anew(station);
        if (outcomes.empty()) {
            continue;
        }
        const double bits = information(outcomes, tolerance_of(measured, station, outcomes.front().value)) +
                            (reading != nullptr ? for_the_fault * alternatives.at_fault(station.word) : 0.0);
        const double score = bits / cost_of(window, measured, station);
        if (score > best_score + 1e-9) {
            best_score = score;
            best = &station;
        }
    }
    if (best == nullptr) {
        const std::string& station =
            failing->suspects.empty() ? failing->stations.back() : failing->suspects.front().station;
        return WorthTaking{station, failing->text};
    }
    return WorthTaking{std::string(best->word), why(measured, *best, find_counted(measured.readings, best->word))};
}

std::optional<WorthTaking> exchanged_reading(const Window& window, const MeasuredWindow& measured) {
    const auto is_checked = [&](const CountedReading& reading) {
        return std::ranges::any_of(measured.networks, [&](const Network& network) {
            const auto judged = network.stations();
            return std::ranges::find(judged, reading.station.word) != judged.end();
        });
    };
    constexpr double apart = 2.0;
    for (const CountedReading& again : measured.readings) {
        const auto earlier = earlier_value(window, again);
        const double near = apart * std::sqrt(2.0) * reading_u(again, measured.tape).mm();
        if (!earlier || std::abs(*earlier - again.value.mm()) < near) {
            continue;
        }
        for (const CountedReading& other : measured.readings) {
            if (other.station.word != again.station.word && other.measured && !earlier_value(window, other) &&
                std::abs((other.value - again.value).mm()) < near && !is_checked(other) &&
                !are_kin(again.station, other.station, measured.shape)) {
                return WorthTaking{std::string(other.station.word),
                                   say("{}, again: it may have been exchanged with {}.", station_words(other.station),
                                       station_words(again.station))};
            }
        }
    }
    return std::nullopt;
}

std::optional<SurerHeight> surer_height(const Window& window, const MeasuredWindow& measured, const PlumbSpan& span) {
    const auto now = measured.plumb.between(span.line, span.from, span.to);
    if (!now) {
        return std::nullopt;
    }
    constexpr double worth_it = 0.9;
    std::optional<SurerHeight> best;
    double best_score = 0.0;
    for (const Station& station : stations_of(measured.shape)) {
        if (station.kind != StationKind::height || is_settled(window, station.word) ||
            is_other_side(window, station.word)) {
            continue;
        }
        const PlumbSpan reading{station.line.value_or(measured.plumb.pole_line()), station.from, station.to};
        const auto value = measured.plumb.between(reading.line, reading.from, reading.to);
        if (!value || value->value.mm() <= 0.0) {
            continue;
        }
        const auto u = measured.plumb.u_with(span, reading, reading_u(value->value, measured.tape));
        const double score = u ? (now->u - *u).mm() / cost_of(window, measured, station) : 0.0;
        if (u && *u < worth_it * now->u && score > best_score + 1e-9) {
            best_score = score;
            best = SurerHeight{std::string(station.word), *u};
        }
    }
    return best;
}

}  // namespace truehang
