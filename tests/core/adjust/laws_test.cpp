// SPDX-License-Identifier: Apache-2.0
#include "adjust/measured.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>
#include <memory>

// Laws that hold for any readings, whatever the window (derived).

namespace truehang {
namespace {

struct Measured {
    std::unique_ptr<Window> window = std::make_unique<Window>();  // counted readings point into it
    MeasuredWindow measured;
};

Measured measured(std::vector<Reading> readings) {
    Measured result;
    result.window->shape = Word<Shape>(Shape::recess);
    result.window->readings = std::move(readings);
    result.measured = measure(*result.window, Shape::recess, Hang::level, TapeRule{}, LengthUnit::mm);
    return result;
}

/// True heights and corners of a crooked window; every length between two of its points.
struct Truth {
    std::map<std::string, double> floor, sill, head, ceiling;  ///< by line, over the level line
    double pole = 0.0;
    double width = 0.0, lean = 0.0;

    [[nodiscard]] double of(const std::string& station) const {
        const auto line = station.substr(station.rfind('.') + 1);
        if (station.starts_with("below")) {
            return sill.at(line) - floor.at(line);
        }
        if (station.starts_with("opening.height")) {
            return head.at(line) - sill.at(line);
        }
        if (station.starts_with("above")) {
            return ceiling.at(line) - head.at(line);
        }
        if (station.starts_with("ceiling")) {
            return ceiling.at(line) - floor.at(line);
        }
        if (station.starts_with("level")) {
            return -floor.at(line);
        }
        if (station.starts_with("pole.floor")) {
            return pole - floor.at(line);
        }
        return across(station);
    }

private:
    [[nodiscard]] double across(const std::string& station) const {
        const double left_bottom = sill.at("left");
        const double right_bottom = sill.at("right");
        const double left_top = head.at("left");
        const double right_top = head.at("right");
        if (station == "opening.width.bottom") {
            return std::hypot(width, right_bottom - left_bottom);
        }
        if (station == "opening.width.top") {
            return std::hypot(width, right_top - left_top);
        }
        return station == "opening.diagonal.rising" ? std::hypot(width, right_top - left_bottom)
                                                    : std::hypot(width, right_bottom - left_top);
    }
};

const std::vector<std::string> lines{"left", "centre", "right"};

Truth any_truth() {
    Truth truth;
    truth.width = *rc::gen::inRange(500, 3000);
    truth.pole = *rc::gen::inRange(900, 1200);
    for (const auto& line : lines) {
        truth.floor[line] = -1000.0 - *rc::gen::inRange(0, 40);
        truth.sill[line] = -200.0 + *rc::gen::inRange(0, 20);
        truth.head[line] = 800.0 + *rc::gen::inRange(0, 20);
        truth.ceiling[line] = 1300.0 + *rc::gen::inRange(0, 60);
    }
    return truth;
}

std::vector<std::string> all_stations() {
    std::vector<std::string> list{"opening.width.bottom", "opening.width.top", "opening.diagonal.rising",
                                  "opening.diagonal.falling"};
    for (const auto& line : lines) {
        for (const auto* stretch : {"below.", "opening.height.", "above.", "ceiling.", "level.", "pole.floor."}) {
            list.push_back(stretch + line);
        }
    }
    return list;
}

Reading reading_of(const std::string& station, double mm) {
    Reading reading;
    reading.id = station;
    reading.station = station;
    reading.value = Length::mm(mm);
    return reading;
}

std::vector<Reading> some_readings(const Truth& truth) {
    std::vector<Reading> readings;
    for (const auto& station : all_stations()) {
        if (*rc::gen::weightedElement<bool>({{3, true}, {1, false}})) {
            readings.push_back(reading_of(station, truth.of(station)));
        }
    }
    return readings;
}

std::map<std::string, MeasuredSize> sizes(const Measured& window) {
    std::map<std::string, MeasuredSize> by_name;
    for (const MeasuredSize& size : sizes_of(window.measured)) {
        by_name.insert({size.name, size});
    }
    return by_name;
}

TEST(Laws, AConsistentReadingNeverWidensASize) {
    EXPECT_TRUE(rc::check("one more reading of the truth", [] {
        const Truth truth = any_truth();
        auto readings = some_readings(truth);
        const auto before = sizes(measured(readings));
        std::vector<std::string> missing;
        for (const auto& station : all_stations()) {
            if (std::ranges::find(readings, station, &Reading::station) == readings.end()) {
                missing.push_back(station);
            }
        }
        RC_PRE(!missing.empty());
        const auto added = *rc::gen::elementOf(missing);
        readings.push_back(reading_of(added, truth.of(added)));
        const auto after = sizes(measured(readings));
        for (const auto& [name, size] : before) {
            RC_ASSERT(after.contains(name));
            RC_ASSERT(after.at(name).estimate.u.mm() <= size.estimate.u.mm() + 1e-6);
        }
    }));
}

TEST(Laws, TrueReadingsAddUpWhicheverAreTaken) {
    EXPECT_TRUE(rc::check("any readings of one truth", [] {
        const auto window = measured(some_readings(any_truth()));
        for (const Network& network : window.measured.networks) {
            RC_ASSERT(network.adds_up());
            RC_ASSERT(network.adjustment.chi2 < 1e-6);
        }
        RC_ASSERT(window.measured.explanations.empty());
    }));
}

/// Readings of a truth with noise and one slip of up to half a metre, so that something is there to be judged.
std::vector<Reading> slipped_readings() {
    auto readings = some_readings(any_truth());
    for (Reading& reading : readings) {
        reading.value = Length::mm(std::round(reading.value->mm()) + *rc::gen::inRange(-2, 3));
    }
    RC_PRE(!readings.empty());
    Reading& wrong = readings[*rc::gen::inRange<std::size_t>(0, readings.size())];
    wrong.value = Length::mm(std::max(1.0, wrong.value->mm() + *rc::gen::inRange(-500, 500)));
    return readings;
}

using Judgement = std::map<std::string, double>;

Judgement judgement_of(const Measured& window) {
    Judgement judgement;
    for (const Network& network : window.measured.networks) {
        judgement["chi2 " + network.name] = network.adjustment.chi2;
    }
    for (const Explanation& explanation : window.measured.explanations) {
        const Correction& first = explanation.corrections.front();
        const double proposed = first.proposed ? first.proposed->mm() : -1.0;
        judgement[first.station + " " + explanation.slip + " " + std::to_string(std::lround(proposed))] =
            explanation.weight;
    }
    return judgement;
}

void assert_alike(const Judgement& a, const Judgement& b) {
    RC_ASSERT(a.size() == b.size());
    for (const auto& [name, number] : a) {
        RC_ASSERT(b.contains(name));
        RC_ASSERT(std::abs(b.at(name) - number) <= 1e-4 * std::max(1.0, std::abs(number)));
    }
}

TEST(Laws, TheOrderOfReadingsDoesntMatter) {
    EXPECT_TRUE(rc::check("shuffled", [] {
        auto readings = slipped_readings();
        const auto before = judgement_of(measured(readings));
        for (std::size_t i = readings.size(); i > 1; --i) {
            std::swap(readings[i - 1], readings[*rc::gen::inRange<std::size_t>(0, i)]);
        }
        assert_alike(before, judgement_of(measured(readings)));
    }));
}

std::string mirrored(std::string station) {
    const auto exchange = [&](const std::string& one, const std::string& other) {
        if (station.ends_with(one)) {
            station.replace(station.size() - one.size(), one.size(), other);
            return true;
        }
        return false;
    };
    exchange(".left", ".right") || exchange(".right", ".left") || exchange(".rising", ".falling") ||
        exchange(".falling", ".rising");
    return station;
}

TEST(Laws, AMirrorImageIsJudgedTheSame) {
    EXPECT_TRUE(rc::check("left for right", [] {
        auto readings = slipped_readings();
        const auto window = measured(readings);
        for (Reading& reading : readings) {
            reading.station = mirrored(reading.station);
            reading.id = reading.station;
        }
        const auto mirror = measured(readings);
        std::map<std::string, double> chi2;
        for (const Network& network : mirror.measured.networks) {
            chi2[network.name] = network.adjustment.chi2;
        }
        for (const Network& network : window.measured.networks) {
            const auto name = mirrored(network.name);
            RC_ASSERT(chi2.contains(name));
            RC_ASSERT(std::abs(chi2.at(name) - network.adjustment.chi2) <=
                      1e-4 * std::max(1.0, network.adjustment.chi2));
        }
        std::map<std::string, double> there;
        std::map<std::string, double> here;
        for (const Explanation& explanation : window.measured.explanations) {
            here[mirrored(explanation.corrections.front().station)] += explanation.weight;
        }
        for (const Explanation& explanation : mirror.measured.explanations) {
            there[explanation.corrections.front().station] += explanation.weight;
        }
        for (const auto& [station, weight] : here) {
            RC_ASSERT(std::abs(there[station] - weight) < 0.01);  // what nobody is told of is left out
        }
    }));
}

TEST(Laws, ScalingValuesAndSigmasTogetherChangesNothing) {
    EXPECT_TRUE(rc::check("inches for millimetres, and any other unit", [] {
        const auto window = measured(slipped_readings());
        const double scale = *rc::gen::elementOf(std::vector<double>{1.0 / 25.4, 0.1, 10.0, 3.0});
        for (const Network& network : window.measured.networks) {
            auto observations = network.observations;
            for (Observation& observation : observations) {
                observation.value *= scale;
                observation.sigma *= scale;
            }
            const auto adjusted = network.solve(observations, std::numeric_limits<double>::infinity());
            RC_ASSERT(adjusted.has_value());
            RC_ASSERT(std::abs(adjusted->chi2 - network.adjustment.chi2) <=
                      1e-5 * std::max(1.0, network.adjustment.chi2));
            for (std::size_t i = 0; i < observations.size(); ++i) {
                RC_ASSERT(std::abs(adjusted->normalised[i] - network.adjustment.normalised[i]) <=
                          1e-4 * std::max(1.0, std::abs(network.adjustment.normalised[i])));
                RC_ASSERT(std::abs(adjusted->redundancy_numbers[i] - network.adjustment.redundancy_numbers[i]) < 1e-5);
            }
        }
    }));
}

}  // namespace
}  // namespace truehang
