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
    return station.line && (station.word.starts_with("opening.height") || station.word.starts_with("below.") ||
                            station.word.starts_with("above.") || station.word.starts_with("ceiling."));
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

/// Which marks are joined by readings.
class Groups {
public:
    int add() {
        parent_.push_back(static_cast<int>(parent_.size()));
        return parent_.back();
    }
    int root(int mark) const {
        while (parent_[static_cast<std::size_t>(mark)] != mark) {
            mark = parent_[static_cast<std::size_t>(mark)];
        }
        return mark;
    }
    /// False where the two were joined already. The lower number stays the root: floors come first.
    bool join(int a, int b) {
        const int ra = root(a);
        const int rb = root(b);
        parent_[static_cast<std::size_t>(std::max(ra, rb))] = std::min(ra, rb);
        return ra != rb;
    }
    std::size_t size() const { return parent_.size(); }

private:
    std::vector<int> parent_;
};

}  // namespace

/// Builds and adjusts one part: the marks of the lines in it, their readings, a datum for each group of joined marks.
class PlumbBuilder {
public:
    PlumbBuilder(std::vector<Line> lines, bool tied, Hang hang, const TapeRule& tape)
        : lines_(std::move(lines)), tied_(tied), one_pole_(tied && hang == Hang::level), tape_(tape) {
        for (auto& line : part_.mark) {
            line.fill(-1);
        }
    }

    void take(const std::vector<HeightObservation>& observations, bool independent) {
        for (const HeightObservation& observation : observations) {
            if (std::ranges::find(lines_, observation.line) == lines_.end() ||
                observation.reading->independent != independent) {
                continue;
            }
            const int from = mark(observation.line, observation.reading->station.from);
            const int to = mark(observation.line, observation.reading->station.to);
            const bool joins = groups_.join(from, to);
            if (joins || independent) {
                edges_.push_back({from, to, observation.reading});
            }
        }
    }

    /// The adjusted part, or nothing where no reading stands in it.
    std::optional<PlumbLines::Part> adjusted() {
        if (edges_.empty()) {
            return std::nullopt;
        }
        const std::size_t unknowns = number_unknowns();
        std::vector<ObservationEquation> equations;
        for (const Edge& edge : edges_) {
            ObservationEquation equation{std::vector<double>(unknowns, 0.0), edge.reading->value.mm(),
                                         reading_u(*edge.reading, tape_).mm()};
            add(equation, edge.to, 1.0);
            add(equation, edge.from, -1.0);
            equations.push_back(std::move(equation));
            part_.stations.emplace_back(edge.reading->station.word);
            part_.measured.push_back(edge.reading->measured);
            part_.ends.push_back({edge.from, edge.to});
        }
        auto solved = adjust(equations, unknowns);
        if (!solved) {
            return std::nullopt;
        }
        part_.adjustment = std::move(solved).value();
        return part_;
    }

private:
    struct Edge {
        int from, to;
        const CountedReading* reading;
    };

    int mark(Line line, PlumbMark mark) {
        int& own = part_.mark[static_cast<std::size_t>(line)][static_cast<std::size_t>(mark)];
        if (own >= 0) {
            return own;
        }
        const bool shared = (mark == PlumbMark::level && tied_) || (mark == PlumbMark::pole && one_pole_);
        own = shared ? shared_mark(mark) : groups_.add();
        return own;
    }

    int shared_mark(PlumbMark mark) {
        int& number = shared_[static_cast<std::size_t>(mark)];
        if (number < 0) {
            number = groups_.add();
            for (const Line line : lines_) {
                part_.mark[static_cast<std::size_t>(line)][static_cast<std::size_t>(mark)] = number;
            }
        }
        return number;
    }

    std::size_t number_unknowns() {
        int next = 0;
        for (int i = 0; i < static_cast<int>(groups_.size()); ++i) {
            part_.group.push_back(groups_.root(i));
            part_.unknown.push_back(part_.group.back() == i ? -1 : next++);
        }
        return static_cast<std::size_t>(next);
    }

    void add(ObservationEquation& equation, int mark, double sign) const {
        const int unknown = part_.unknown[static_cast<std::size_t>(mark)];
        if (unknown >= 0) {
            equation.coefficients[static_cast<std::size_t>(unknown)] += sign;
        }
    }

    std::vector<Line> lines_;
    bool tied_;
    bool one_pole_;
    const TapeRule& tape_;
    PlumbLines::Part part_;
    Groups groups_;
    std::vector<Edge> edges_;
    std::array<int, 6> shared_{-1, -1, -1, -1, -1, -1};
};

PlumbLines PlumbLines::adjusted(const std::vector<CountedReading>& readings, Hang hang, const TapeRule& tape) {
    PlumbLines result;
    result.pole_line_ = first_line(readings);
    result.tied_ = tied_lines(readings);
    result.part_of_line_.fill(-1);
    const auto observations = placed(readings, hang, result.pole_line_);
    std::vector<std::vector<Line>> networks;
    std::vector<Line> together;
    for (const Line line : all_lines) {
        if (result.is_tied(line)) {
            together.push_back(line);
        } else {
            networks.push_back({line});
        }
    }
    if (!together.empty()) {
        networks.insert(networks.begin(), together);
    }
    for (const auto& lines : networks) {
        PlumbBuilder builder(lines, lines.size() > 1, hang, tape);
        builder.take(observations, true);
        builder.take(observations, false);
        auto part = builder.adjusted();
        if (!part) {
            continue;
        }
        const std::string name = lines.size() > 1 ? "plumb" : "plumb." + std::string(word_of(lines.front()));
        if (auto check = check_of(part->adjustment, name, part->stations)) {
            result.checks_.push_back(std::move(*check));
        }
        for (const Line line : lines) {
            result.part_of_line_[index_of(line)] = static_cast<int>(result.parts_.size());
        }
        result.parts_.push_back(std::move(*part));
    }
    return result;
}

bool PlumbLines::has(Line line, PlumbMark mark) const {
    const int part = part_of_line_[index_of(line)];
    return part >= 0 &&
           parts_[static_cast<std::size_t>(part)].mark[index_of(line)][static_cast<std::size_t>(mark)] >= 0;
}

std::vector<std::string> PlumbLines::way_between(Line line, PlumbMark lower, PlumbMark upper) const {
    if (!has(line, lower) || !has(line, upper)) {
        return {};
    }
    const Part& part = parts_[static_cast<std::size_t>(part_of_line_[index_of(line)])];
    const int from = part.mark[index_of(line)][static_cast<std::size_t>(lower)];
    const int to = part.mark[index_of(line)][static_cast<std::size_t>(upper)];
    // Breadth first, the readings in the order of the contract's stations.
    std::vector<int> reached{from};
    std::vector<std::vector<std::string>> ways{{}};
    for (std::size_t i = 0; i < reached.size(); ++i) {
        if (reached[i] == to) {
            return ways[i];
        }
        for (std::size_t k = 0; k < part.ends.size(); ++k) {
            const auto [a, b] = part.ends[k];
            const int next = a == reached[i] ? b : b == reached[i] ? a : -1;
            if (next >= 0 && std::ranges::find(reached, next) == reached.end()) {
                reached.push_back(next);
                ways.push_back(ways[i]);
                ways.back().push_back(part.stations[k]);
            }
        }
    }
    return {};
}

std::optional<Estimate> PlumbLines::between(Line line, PlumbMark lower, PlumbMark upper) const {
    if (!has(line, lower) || !has(line, upper)) {
        return std::nullopt;
    }
    const Part& part = parts_[static_cast<std::size_t>(part_of_line_[index_of(line)])];
    const auto from = static_cast<std::size_t>(part.mark[index_of(line)][static_cast<std::size_t>(lower)]);
    const auto to = static_cast<std::size_t>(part.mark[index_of(line)][static_cast<std::size_t>(upper)]);
    if (part.group[from] != part.group[to]) {
        return std::nullopt;
    }
    std::vector<double> f(part.adjustment.unknowns.size(), 0.0);
    if (part.unknown[to] >= 0) {
        f[static_cast<std::size_t>(part.unknown[to])] += 1.0;
    }
    if (part.unknown[from] >= 0) {
        f[static_cast<std::size_t>(part.unknown[from])] -= 1.0;
    }
    const auto& x = part.adjustment.unknowns;
    Estimate estimate{Length::mm(std::inner_product(f.begin(), f.end(), x.begin(), 0.0)),
                      Length::mm(part.adjustment.sigma_of(f)),
                      {}};
    const auto leverage = part.adjustment.leverage_of(f);
    for (std::size_t i = 0; i < leverage.size(); ++i) {
        const bool counts = std::abs(leverage[i]) > 1e-9 && !part.measured[i];
        if (counts && std::ranges::find(estimate.rests_on, part.stations[i]) == estimate.rests_on.end()) {
            estimate.rests_on.push_back(part.stations[i]);
        }
    }
    return estimate;
}

}  // namespace truehang
