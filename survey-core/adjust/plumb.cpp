// SPDX-License-Identifier: Apache-2.0
#include "adjust/plumb.h"

#include <algorithm>
#include <numeric>

namespace truehang {

namespace {

/// One height reading as it enters a line's network. An unsuffixed reading of hardware that runs parallel to the head
/// or the ceiling enters every line.
struct HeightObservation {
    const CountedReading* reading;
    Line line;
};

bool makes_its_line(const Station& station) {
    return station.line && (station.word.starts_with("facet.") || station.word.starts_with("opening.height") ||
                            station.word.starts_with("below.") || station.word.starts_with("above.") ||
                            station.word.starts_with("ceiling."));
}

Line first_line(const std::vector<CountedReading>& readings) {
    for (const Line line : all_lines) {
        const bool own = std::ranges::any_of(
            readings, [&](const CountedReading& r) { return makes_its_line(r.station) && r.station.line == line; });
        if (own) {
            return line;
        }
    }
    return Line::left;
}

bool holds_at_every_line(const Station& station, Hang hang) {
    return (hang == Hang::head && (station.word == "pole.above" || station.word == "pole.below")) ||
           (hang == Hang::ceiling && station.word == "pole.ceiling");
}

std::vector<HeightObservation> placed(const std::vector<CountedReading>& readings, Hang hang, Line pole_line) {
    std::vector<HeightObservation> observations;
    for (const CountedReading& reading : readings) {
        if (reading.station.kind != StationKind::height) {
            continue;
        }
        if (reading.station.line) {
            observations.push_back({&reading, *reading.station.line});
        } else if (holds_at_every_line(reading.station, hang)) {
            for (const Line line : all_lines) {
                observations.push_back({&reading, line});
            }
        } else {
            observations.push_back({&reading, pole_line});
        }
    }
    return observations;
}

std::array<bool, 3> tied_lines(const std::vector<CountedReading>& readings) {
    std::array<bool, 3> tied{};
    for (const CountedReading& reading : readings) {
        if (reading.station.line && reading.station.to == PlumbMark::level) {
            tied[static_cast<std::size_t>(*reading.station.line)] = true;
        }
    }
    return std::ranges::count(tied, true) >= 2 ? tied : std::array<bool, 3>{};
}

/// A level pole is one mark for all lines once a level line ties some: a line with a pole reading of its own is then
/// tied by it.
void tie_by_pole(const std::vector<HeightObservation>& observations, std::array<bool, 3>& tied) {
    if (std::ranges::count(tied, true) < 2) {
        return;
    }
    for (const HeightObservation& observation : observations) {
        const Station& station = observation.reading->station;
        if (station.from == PlumbMark::pole || station.to == PlumbMark::pole) {
            tied[static_cast<std::size_t>(observation.line)] = true;
        }
    }
}

}  // namespace

/// Puts the readings of some lines into one network.
class PlumbBuilder {
public:
    PlumbBuilder(PlumbLines& plumb, std::vector<Line> lines, Hang hang)
        : plumb_(plumb), lines_(std::move(lines)), tied_(lines_.size() > 1), one_pole_(tied_ && hang == Hang::level) {}

    void take(const std::vector<HeightObservation>& observations, bool independent, const TapeRule& tape) {
        for (const HeightObservation& observation : observations) {
            if (std::ranges::find(lines_, observation.line) != lines_.end() &&
                observation.reading->independent == independent) {
                const int from = mark(observation.line, observation.reading->station.from);
                const int to = mark(observation.line, observation.reading->station.to);
                network_.observe(from, to, *observation.reading, tape);
            }
        }
    }

    void finish() {
        if (!network_.adjust_all()) {
            return;
        }
        const std::string name = tied_ ? "plumb" : "plumb." + std::string(word_of(lines_.front()));
        if (auto network = network_.network(name)) {
            plumb_.redundant_.push_back(std::move(*network));
        }
        for (const Line line : lines_) {
            part(line).network = static_cast<int>(plumb_.networks_.size());
            part(line).tied = tied_;
        }
        plumb_.networks_.push_back(std::move(network_));
    }

private:
    PlumbLines::LinePart& part(Line line) { return plumb_.parts_[static_cast<std::size_t>(line)]; }

    int mark(Line line, PlumbMark mark) {
        int& own = part(line).mark[static_cast<std::size_t>(mark)];
        if (own >= 0) {
            return own;
        }
        const bool one_for_all = tied_ && (mark == PlumbMark::level || (mark == PlumbMark::pole && one_pole_));
        if (!one_for_all) {
            return own = network_.add_mark();
        }
        int& shared = shared_[static_cast<std::size_t>(mark)];
        if (shared < 0) {
            shared = network_.add_mark();
        }
        if (mark == PlumbMark::pole) {
            for (const Line each : lines_) {
                part(each).mark[static_cast<std::size_t>(mark)] = shared;
            }
        }
        return own = shared;
    }

    PlumbLines& plumb_;
    std::vector<Line> lines_;
    bool tied_;
    bool one_pole_;
    LineNetwork network_;
    std::array<int, 6> shared_{-1, -1, -1, -1, -1, -1};
};

PlumbLines PlumbLines::adjusted(const std::vector<CountedReading>& readings, Hang hang, const TapeRule& tape) {
    PlumbLines result;
    result.pole_line_ = first_line(readings);
    const auto observations = placed(readings, hang, result.pole_line_);
    auto tied = tied_lines(readings);
    if (hang == Hang::level) {
        tie_by_pole(observations, tied);
    }
    std::vector<std::vector<Line>> networks;
    std::vector<Line> together;
    for (const Line line : all_lines) {
        if (tied[static_cast<std::size_t>(line)]) {
            together.push_back(line);
        } else {
            networks.push_back({line});
        }
    }
    if (!together.empty()) {
        networks.insert(networks.begin(), together);
    }
    for (const auto& lines : networks) {
        PlumbBuilder builder(result, lines, hang);
        builder.take(observations, true, tape);
        builder.take(observations, false, tape);
        builder.finish();
    }
    return result;
}

bool PlumbLines::has(Line line, PlumbMark mark) const {
    return part(line).network >= 0 && part(line).mark[static_cast<std::size_t>(mark)] >= 0;
}

std::optional<Estimate> PlumbLines::between(Line line, PlumbMark lower, PlumbMark upper) const {
    if (!has(line, lower) || !has(line, upper)) {
        return std::nullopt;
    }
    const auto& own = part(line);
    return networks_[static_cast<std::size_t>(own.network)].between(own.mark[static_cast<std::size_t>(lower)],
                                                                    own.mark[static_cast<std::size_t>(upper)]);
}

std::vector<Share> PlumbLines::shares(const PlumbSpan& span) const {
    if (!has(span.line, span.from) || !has(span.line, span.to)) {
        return {};
    }
    const auto& own = part(span.line);
    return networks_[static_cast<std::size_t>(own.network)].shares(own.mark[static_cast<std::size_t>(span.from)],
                                                                   own.mark[static_cast<std::size_t>(span.to)]);
}

std::optional<Length> PlumbLines::u_with(const PlumbSpan& span, const PlumbSpan& reading, Length sigma) const {
    const auto& own = part(span.line);
    const auto& other = part(reading.line);
    if (!has(span.line, span.from) || !has(span.line, span.to) || !has(reading.line, reading.from) ||
        !has(reading.line, reading.to) || own.network != other.network) {
        return std::nullopt;
    }
    const auto u = networks_[static_cast<std::size_t>(own.network)].u_with(
        own.mark[static_cast<std::size_t>(span.from)], own.mark[static_cast<std::size_t>(span.to)],
        other.mark[static_cast<std::size_t>(reading.from)], other.mark[static_cast<std::size_t>(reading.to)],
        sigma.mm());
    return u ? std::optional(Length::mm(*u)) : std::nullopt;
}

std::vector<std::string> PlumbLines::way_between(Line line, PlumbMark lower, PlumbMark upper) const {
    if (!has(line, lower) || !has(line, upper)) {
        return {};
    }
    const auto& own = part(line);
    return networks_[static_cast<std::size_t>(own.network)].way_between(own.mark[static_cast<std::size_t>(lower)],
                                                                        own.mark[static_cast<std::size_t>(upper)]);
}

}  // namespace truehang
