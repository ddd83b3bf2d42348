// SPDX-License-Identifier: Apache-2.0
#include "without_tape.h"

#include "adding_up.h"
#include "adjust/slip_priors.h"
#include "reading_history.h"
#include "survey/counted.h"
#include "walk_rows.h"
#include "writing.h"

#include <QCoreApplication>
#include <algorithm>
#include <array>
#include <vector>

namespace truehang {

namespace {

QString without_tape_text(const char* source) { return QCoreApplication::translate("walk", source); }

// How far an estimate may be off either way, twice its standard uncertainty (common practice, no source).
constexpr std::array<double, 4> off_mm{10.0, 25.0, 50.0, 100.0};
constexpr std::array<double, 4> off_inches{0.5, 1.0, 2.0, 4.0};
constexpr std::array<double, 3> off_degrees{1.0, 2.0, 5.0};

const QString same_as = QStringLiteral("same/");
const QString about = QStringLiteral("about/");

/// The measured readings of the same stretch, as they are asked for.
std::vector<CountedReading> measured_kin(const Window& window, const Station& at) {
    std::vector<CountedReading> kin;
    if (const auto shape = window.shape.known()) {
        for (const CountedReading& each : counted_readings(window, *shape)) {
            if (each.measured && each.independent && each.station.word != at.word &&
                each.station.is_angle() == at.is_angle() && are_kin(each.station, at, *shape)) {
                kin.push_back(each);
            }
        }
    }
    return kin;
}

/// An estimate of what was typed that may be so far off: the place in the list of its kind.
Reading estimate_of(Reading typed, std::size_t place, bool inches) {
    typed.how = How::estimated;
    if (typed.angle) {
        typed.angle_u = Angle::degrees(off_degrees.at(place) / 2.0);
    } else {
        typed.u = (inches ? Length::inches(off_inches.at(place)) : Length::mm(off_mm.at(place))) / 2.0;
    }
    return typed;
}

bool is_inches(const Reading& typed) {
    const auto read = read_length(typed.typed, LengthUnit::mm);
    return read && read->unit == LengthUnit::in;
}

}  // namespace

QList<ShownRows::Row> without_tape_rows(const Window& window, const Station& at, const std::optional<Reading>& typed,
                                        const LengthStyle& style) {
    QList<ShownRows::Row> rows;
    for (const CountedReading& each : measured_kin(window, at)) {
        rows.append({same_as + shown(each.station.word), without_tape_text(QT_TRANSLATE_NOOP("walk", "Same as %1: %2"))
                                                             .arg(within_sentence(shown(station_words(each.station))),
                                                                  reading_text(*each.reading, style))});
    }
    if (typed) {
        const std::size_t ways = typed->angle ? off_degrees.size() : off_mm.size();
        const bool inches = is_inches(*typed);
        for (std::size_t i = 0; i < ways; ++i) {
            const Reading estimate = estimate_of(*typed, i, inches);
            const QString off = estimate.angle
                                    ? exactly(Angle::degrees(2.0 * estimate.angle_u->degrees()))
                                    : shown(said_length(2.0 * *estimate.u, inches ? LengthUnit::in : style.unit));
            rows.append(
                {about + QString::number(i), without_tape_text(QT_TRANSLATE_NOOP("walk", "About %1, give or take %2"))
                                                 .arg(reading_text(estimate, style), off)});
        }
    }
    return rows;
}

std::optional<Reading> without_tape_reading(const Window& window, const Station& at,
                                            const std::optional<Reading>& typed, const QString& word) {
    if (word.startsWith(same_as)) {
        const auto kin = measured_kin(window, at);
        const auto twin = std::ranges::find(kin, bytes(word.mid(same_as.size())),
                                            [](const CountedReading& each) { return std::string(each.station.word); });
        if (twin == kin.end()) {
            return std::nullopt;
        }
        Reading copy;
        copy.station = at.word;
        copy.value = twin->reading->value;
        copy.angle = twin->reading->angle;
        copy.typed = twin->reading->typed;
        copy.how = How::copied;
        return copy;
    }
    bool is_place = false;
    const auto place = word.mid(about.size()).toUInt(&is_place);
    const std::size_t ways = typed && typed->angle ? off_degrees.size() : off_mm.size();
    if (!typed || !word.startsWith(about) || !is_place || place >= ways) {
        return std::nullopt;
    }
    return estimate_of(*typed, place, is_inches(*typed));
}

}  // namespace truehang
