// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "units/length.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace truehang {

/// What a flag asks of a person, gravest first.
enum class Severity {
    stop,       ///< nothing can be cut
    remeasure,  ///< take a reading again
    decide,     ///< a choice for the surveyor
    caution,    ///< someone could be hurt
    note,
};
[[nodiscard]] std::string_view word_of(Severity severity);

/// What a reading says, and what it may have been meant to say.
struct Correction {
    std::string station;
    Length was;
    std::optional<Length> proposed;         ///< none: nothing says what it should read
    std::optional<Angle> angle{};           ///< what an angle says, in place of `was`
    std::optional<Angle> proposed_angle{};  ///< of an angle, in place of `proposed`
};

/// A reading that may be at fault, and what it may have been.
struct Suspect {
    std::string station;
    std::string slip;  ///< a name of the catalogue, or `unexplained`
    Length was;
    std::optional<Length> proposed;
    double weight = 0.0;  ///< probability, given the readings; those of one flag add up to at most 1
    std::vector<Correction>
        also{};                    ///< other readings that the same explanation corrects: swapped, all by a tape's case
    std::optional<Angle> angle{};  ///< what an angle says, in place of `was`
    std::optional<Angle> proposed_angle{};  ///< of an angle, in place of `proposed`
};

/// One thing to be said about a window. `text` is a whole sentence for a person.
struct Flag {
    std::string code;
    Severity severity = Severity::note;
    std::vector<std::string> stations;
    std::string text;
    std::string obstruction;  ///< id, where it concerns one
    std::string layer;        ///< id, where it concerns one of several
    std::vector<Suspect> suspects;
    std::string check{};  ///< `photo` where it tells of that check; not written
};

/// One step of how a figure came about; exactly one of the values is set.
struct TraceStep {
    std::string what;
    std::optional<double> mm;
    std::optional<double> count;
    std::optional<double> ratio;
    std::vector<std::string> from;  ///< stations, rules, choices it came from
};

/// How one figure of a window came about, from the readings to it.
struct Trace {
    std::string figure;  ///< its place in the figures document, as `finished.drop_mm`
    std::string layer;
    std::vector<TraceStep> steps;
};

}  // namespace truehang
