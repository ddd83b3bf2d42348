// SPDX-License-Identifier: Apache-2.0
#include "adjust/reading_flags.h"

#include "adjust/chi_square.h"
#include "adjust/measured.h"
#include "units/angle_text.h"
#include "units/length_text.h"
#include "units/rounding.h"
#include "units/saying.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace truehang {

namespace {

/// A conversion written with two decimals of a millimetre still reads the same.
constexpr double same_reading_mm = 0.05;
constexpr double same_reading_deg = 0.05;
constexpr double told_from_mm = 10.0;

std::string said(const MeasuredWindow& measured, double mm) { return said_length(Length::mm(mm), measured.entry_unit); }

/// A reading as exactly as it was taken: to a tenth of a millimetre where the unit is metric.
std::string as_read(const MeasuredWindow& measured, Length length) {
    return write_length(length, {.unit = measured.entry_unit, .inch_denominator = 16, .with_unit = true});
}

bool reads_as_typed(const CountedReading& counted, LengthUnit entry_unit) {
    if (counted.angle) {
        const auto typed = read_angle(counted.reading->typed);
        return typed && std::abs(typed->degrees() - counted.angle->degrees()) <= same_reading_deg;
    }
    const auto typed = read_length(counted.reading->typed, entry_unit);
    return typed && std::abs((typed->length - counted.value).mm()) <= same_reading_mm;
}

void flag_each_reading(const MeasuredWindow& measured, std::vector<Flag>& flags) {
    for (const CountedReading& counted : measured.readings) {
        const Station& station = counted.station;
        const std::vector<std::string> stations{std::string(station.word)};
        if (counted.contested) {
            flags.push_back({"two-readings",
                             Severity::decide,
                             stations,
                             say("{} was read twice, and neither reading replaces the other. Say which one "
                                 "counts; meanwhile the later one does.",
                                 station_words(station)),
                             "",
                             "",
                             {}});
        }
        if (!counted.reading->typed.empty()) {
            if (!reads_as_typed(counted, measured.entry_unit)) {
                flags.push_back(
                    {"typed-differs",
                     Severity::remeasure,
                     stations,
                     say("{} was typed as “{}” but stands as {}. Measure it again.", station_words(station),
                         counted.reading->typed,
                         counted.angle ? write_angle(*counted.angle, said_decimal(), true)
                                       : write_length(counted.value, {.decimal = said_decimal(), .with_unit = true})),
                     "",
                     "",
                     {}});
            }
        }
    }
}

/// A proposed value is told of where a size leans on it; one that nothing needs is harmless.
void flag_proposals(const MeasuredWindow& measured, std::vector<Flag>& flags) {
    for (const CountedReading& counted : measured.readings) {
        const std::string word(counted.station.word);
        if (!counted.reading->how || !counted.reading->how->is(How::proposed)) {
            continue;
        }
        const auto sizes = sizes_of(measured);
        const bool leaned_on = std::ranges::any_of(sizes, [&](const MeasuredSize& size) {
            return std::ranges::find(size.estimate.rests_on, word) != size.estimate.rests_on.end();
        });
        if (leaned_on) {
            flags.push_back(
                {"rests-on-proposal",
                 Severity::remeasure,
                 {word},
                 say("{} is a proposed value that no tape has confirmed. Measure it.", station_words(counted.station)),
                 "",
                 "",
                 {}});
        }
    }
}

std::string says(const MeasuredWindow& measured, std::string_view station) {
    const auto* reading = find_counted(measured.readings, station);
    return reading != nullptr ? station_words(reading->station) : std::string(station);
}

/// Who may be at fault: one reading by name only where it stands out.
std::string advice_on(const MeasuredWindow& measured, const std::vector<Suspect>& suspects) {
    const std::string station = standing_out(suspects);
    if (station.empty()) {
        return say("Measure one of them again.");
    }
    const Suspect& first = suspects.front();
    if (first.also.size() > 1) {
        return say("Most likely the tape’s case was reckoned wrongly in {} of them. Measure {} again.",
                   first.also.size() + 1, says(measured, station));
    }
    if (first.slip == "swapped") {
        return say("Most likely {} and {} are exchanged. Measure them again.", says(measured, station),
                   says(measured, first.also.front().station));
    }
    constexpr double one_value = 0.5;
    if (first.weight < one_value) {
        return say("Most likely {} is off. Measure it again.", says(measured, station));
    }
    return say(
        "Most likely {}: {}, perhaps {}. Measure it again.", says(measured, station),
        first.angle ? write_angle(*first.angle, said_decimal(), true) : as_read(measured, first.was),
        first.angle ? write_angle(*first.proposed_angle, said_decimal(), true) : as_read(measured, *first.proposed));
}

std::string unformed_text(Shape shape) {
    switch (shape) {
        case Shape::bay:
            return say("These widths, angles and depths can’t form a bay.");
        case Shape::corner:
            return say("These widths and this angle can’t form a corner.");
        case Shape::arch:
            return say("These heights can’t form an arch.");
        case Shape::gable:
            return say("These heights and slopes can’t form a gable.");
        default:
            break;
    }
    return say("These sides and diagonals can’t form an opening.");
}

/// What the photos say against the tape. `bit` is the check's place among the failing networks.
void flag_photo_check(const MeasuredWindow& measured, unsigned bit, std::vector<Flag>& flags) {
    if (!measured.photo_check || measured.photo_check->adds_up()) {
        return;
    }
    const Network& network = *measured.photo_check;
    const auto& w = network.adjustment.normalised;
    const auto at = static_cast<std::size_t>(
        std::ranges::max_element(w, {}, [](double each) { return std::abs(each); }) - w.begin());
    const Observation& worst = network.observations[at];
    const auto [off_by, allowed, is_angle] = network.misclosure();
    const double by_photo = worst.value + std::copysign(off_by, network.adjustment.residuals[at]);
    auto suspects = suspects_of(network, bit, measured.photo_explanations);
    const std::string advice =
        standing_out(suspects).empty() ? say("Measure it again.") : advice_on(measured, suspects);
    flags.push_back({"does-not-add-up", Severity::remeasure, network.stations(),
                     say("The photo says otherwise. {} was read as {}, and by the photo it is about {}; {} apart is "
                         "allowed for. A photo is only rough and changes no size. {} If the tape says the same again, "
                         "tap the photo’s corners again.",
                         says(measured, worst.station), as_read(measured, Length::mm(worst.value)),
                         said(measured, by_photo), said(measured, allowed), advice),
                     "", "", std::move(suspects), std::string(photo_network_name)});
}

void flag_checks(const MeasuredWindow& measured, std::vector<Flag>& flags) {
    unsigned bit = 0;
    for (const Network& network : measured.networks) {
        if (!network.adds_up()) {
            const auto [off_by, explained, is_angle] = network.misclosure();
            auto suspects = suspects_of(network, bit++, measured.explanations);
            flags.push_back(
                {"does-not-add-up", Severity::remeasure, network.stations(),
                 is_angle ? say("These readings don’t add up: they differ by {:.1f}°, and what angles and "
                                "lengths are known to explains {:.1f}°. {}",
                                off_by, explained, advice_on(measured, suspects))
                          : say("These readings don’t add up: they differ by {}, and tape and edges allow "
                                "{}. {}",
                                said(measured, off_by), said(measured, explained), advice_on(measured, suspects)),
                 "", "", std::move(suspects)});
        }
    }
    if (measured.spans.unformed) {
        auto suspects = suspects_of(*measured.spans.unformed, bit, measured.explanations);
        flags.push_back({"does-not-add-up", Severity::remeasure, measured.spans.unformed->stations(),
                         unformed_text(measured.shape) + " " + advice_on(measured, suspects), "", "",
                         std::move(suspects)});
        ++bit;
    } else if (measured.spans.impossible_triangle &&
               std::ranges::find(measured.networks, "opening", &Network::name) == measured.networks.end()) {
        flags.push_back({"does-not-add-up",
                         Severity::remeasure,
                         measured.spans.triangle_stations,
                         say("Two sides and this diagonal can’t form a triangle. Measure one of them again."),
                         "",
                         "",
                         {}});
    }
    flag_photo_check(measured, bit, flags);
}

void flag_spread(const MeasuredWindow& measured, const std::vector<std::string>& stations, std::string_view what,
                 std::vector<Flag>& flags) {
    const CountedReading* least = nullptr;
    const CountedReading* most = nullptr;
    Length u;  // the largest of theirs
    std::vector<std::string> words;
    for (const auto& station : stations) {
        if (const auto* reading = find_counted(measured.readings, station)) {
            words.emplace_back(station);
            u = std::max(u, reading_u(*reading, measured.tape));
            least = least == nullptr || reading->value < least->value ? reading : least;
            most = most == nullptr || reading->value > most->value ? reading : most;
        }
    }
    if (words.size() < 2) {
        return;
    }
    const Length spread = most->value - least->value;
    const double noise = spread_factor * std::numbers::sqrt2 * u.mm();
    const bool decide = spread.mm() > told_from_mm + whole_tolerance;
    if (!decide && (spread.mm() < noise - whole_tolerance || noise >= told_from_mm)) {
        return;
    }
    flags.push_back({"reading-spread",
                     decide ? Severity::decide : Severity::note,
                     words,
                     say("The {} differ by {}: from {} to {}.", what, as_read(measured, spread),
                         as_read(measured, least->value), as_read(measured, most->value)),
                     "",
                     "",
                     {}});
}

void flag_diagonals(const MeasuredWindow& measured, const CountedReading& rising, const CountedReading& falling,
                    std::vector<Flag>& flags) {
    const Length difference = rising.value - falling.value;
    if (std::abs(difference.mm()) > told_from_mm + whole_tolerance) {
        flags.push_back({"out-of-square",
                         Severity::decide,
                         {"opening.diagonal.rising", "opening.diagonal.falling"},
                         say("The diagonals differ by {}: the opening isn’t square. Say what follows it and "
                             "what hangs true.",
                             said(measured, std::abs(difference.mm()))),
                         "",
                         "",
                         {}});
    }
}

/// With one diagonal, the corners that it makes with the sides.
void flag_corners(const MeasuredWindow& measured, const CountedReading& diagonal, bool is_rising,
                  std::vector<Flag>& flags) {
    const auto* top = find_counted(measured.readings, "opening.width.top");
    const auto* bottom = find_counted(measured.readings, "opening.width.bottom");
    const auto* left = find_counted(measured.readings, "opening.height.left");
    const auto* right = find_counted(measured.readings, "opening.height.right");
    if (top == nullptr || bottom == nullptr || left == nullptr || right == nullptr ||
        measured.spans.impossible_triangle) {
        return;
    }
    const auto estimate = [&](const CountedReading& reading) {
        return Estimate{reading.value, reading_u(reading, measured.tape), {}};
    };
    const std::array corners{squareness_of(estimate(*bottom), estimate(is_rising ? *right : *left), estimate(diagonal)),
                             squareness_of(estimate(*top), estimate(is_rising ? *left : *right), estimate(diagonal))};
    for (const Squareness& corner : corners) {
        const double offset = std::abs(corner.offset.mm());
        if (offset > told_from_mm + whole_tolerance && offset > spread_factor * corner.u.mm()) {
            flags.push_back({"out-of-square",
                             Severity::decide,
                             {std::string(diagonal.station.word)},
                             say("A corner is {} out of square over the height. Say what follows it and what "
                                 "hangs true.",
                                 said(measured, offset)),
                             "",
                             "",
                             {}});
            return;
        }
    }
}

void flag_squareness(const MeasuredWindow& measured, std::vector<Flag>& flags) {
    const auto* rising = find_counted(measured.readings, "opening.diagonal.rising");
    const auto* falling = find_counted(measured.readings, "opening.diagonal.falling");
    if (rising != nullptr && falling != nullptr) {
        flag_diagonals(measured, *rising, *falling, flags);
    } else if (rising != nullptr || falling != nullptr) {
        flag_corners(measured, rising != nullptr ? *rising : *falling, rising != nullptr, flags);
    }
}

/// What should be alike: the widths, and the heights that a level head and sill make alike; of an arch only those to
/// the springings, of a gable none.
void flag_spreads(const MeasuredWindow& measured, std::vector<Flag>& flags) {
    flag_spread(measured, {"opening.width.top", "opening.width.middle", "opening.width.bottom"}, say("widths"), flags);
    switch (measured.shape) {
        case Shape::bay:
        case Shape::corner: {
            std::vector<std::string> heights;
            for (int facet = 1; facet <= measured.facets; ++facet) {
                heights.push_back("facet." + std::to_string(facet) + ".height");
            }
            flag_spread(measured, heights, say("heights"), flags);
            return;
        }
        case Shape::arch:
            flag_spread(measured, {"opening.height.left", "opening.height.right"}, say("heights to the springing"),
                        flags);
            return;
        case Shape::gable:
            return;
        default:
            break;
    }
    flag_spread(measured, {"opening.height.left", "opening.height.centre", "opening.height.right"}, say("heights"),
                flags);
}

void flag_arch_form(const MeasuredWindow& measured, std::vector<Flag>& flags) {
    if (measured.spans.arch_form != ArchForm::ordinates) {
        return;
    }
    std::vector<std::string> stations;
    for (const CountedReading& reading : measured.readings) {
        if (reading.station.kind == StationKind::ordinate) {
            stations.emplace_back(reading.station.word);
        }
    }
    flags.push_back(
        {"not-checked",
         Severity::note,
         std::move(stations),
         say("These heights follow no circle and no curve of three centres, or are too few to tell: the arch is "
             "taken by them alone, and a slip in one of them wouldn’t show."),
         "",
         "",
         {}});
}

}  // namespace

std::vector<Flag> reading_flags(const MeasuredWindow& measured) {
    std::vector<Flag> flags;
    flag_checks(measured, flags);
    flag_each_reading(measured, flags);
    flag_proposals(measured, flags);
    flag_spreads(measured, flags);
    flag_squareness(measured, flags);
    flag_arch_form(measured, flags);
    return flags;
}

}  // namespace truehang
