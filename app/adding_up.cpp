// SPDX-License-Identifier: Apache-2.0
#include "adding_up.h"

#include "adjust/slips.h"
#include "figure_rows.h"
#include "survey/counted.h"
#include "units/rounding.h"
#include "writing.h"

#include <QCoreApplication>
#include <QLatin1String>
#include <algorithm>
#include <array>
#include <cmath>

namespace truehang {

namespace {

QString walk_words(const char* source) { return QCoreApplication::translate("walk", source); }

constexpr double same_length_mm = 0.05;
constexpr double same_angle_deg = 0.05;
constexpr double likely_from = 0.5;
constexpr double likely_times_the_next = 3.0;
constexpr double tie_share = 0.9;
constexpr double rounding = 1e-12;  // of weights that are shares of a sum

/// A difference of readings: whole millimetres, or inches to the sixteenth; finer would say more than is known.
QString difference(Length length, LengthStyle style, bool with_unit) {
    style.with_unit = with_unit;
    style.inch_denominator = 16;
    const Length said = style.unit == LengthUnit::in ? length : Length::mm(round_whole(length.mm()));
    return shown(write_length(said, style));
}

const CheckedReading* reading_in(const Check& check, std::string_view station) {
    const auto found = std::ranges::find(check.readings, station, &CheckedReading::station);
    return found == check.readings.end() ? nullptr : &*found;
}

bool is_by_photo(const Check& check) { return check.network == photo_network_name; }

/// The loop to speak of at a station; what the photo says of it where no loop of the tape does, or it alone disagrees.
const Check* telling_check(const WindowFigures& worked, std::string_view station) {
    const Check* telling = nullptr;
    for (const Check& check : worked.checks) {
        const CheckedReading* own = reading_in(check, station);
        if (check.redundancy < 1 || own == nullptr || own->redundancy <= 1e-6) {
            continue;
        }
        if (telling != nullptr && check.adds_up && is_by_photo(check)) {
            continue;
        }
        const bool worse =
            telling == nullptr || (telling->adds_up && !check.adds_up) ||
            (telling->adds_up == check.adds_up && check.chi2 * telling->limit > telling->chi2 * check.limit);
        telling = worse ? &check : telling;
    }
    return telling;
}

/// True where angles stand among the readings: the misclosure may be one.
bool has_angles(const Check& check, const Window& window) {
    return std::ranges::any_of(check.readings, [&](const CheckedReading& reading) {
        const auto station = window.shape.known() ? find_station(*window.shape.known(), reading.station) : std::nullopt;
        return station && station->kind == StationKind::angle;
    });
}

const Check* check_of(const WindowFigures& worked, const Flag& flag) {
    const auto holds_all = [&](const Check& check) {
        return !check.adds_up && is_by_photo(check) == (flag.check == photo_network_name) &&
               std::ranges::all_of(flag.stations,
                                   [&](const std::string& station) { return reading_in(check, station) != nullptr; });
    };
    const auto found = std::ranges::find_if(worked.checks, holds_all);
    return found == worked.checks.end() || flag.stations.empty() ? nullptr : &*found;
}

std::vector<CountedReading> counted(const Window& window) {
    return window.shape.known() ? counted_readings(window, *window.shape.known()) : std::vector<CountedReading>();
}

/// "In one go 2183, in 3 parts 2138.", where one reading runs along all the others; else empty.
QString whole_and_parts(const Check& check, const Window& window, const LengthStyle& style) {
    if (check.redundancy != 1 || check.readings.size() < 3) {
        return {};
    }
    const auto readings = counted(window);
    double sum = 0.0;
    double whole = 0.0;
    for (const CheckedReading& one : check.readings) {
        const CountedReading* reading = find_counted(readings, one.station);
        if (reading == nullptr) {
            return {};
        }
        sum += reading->value.mm();
        whole = std::max(whole, reading->value.mm());
    }
    const double parts = sum - whole;
    if (std::abs(std::abs(whole - parts) - check.off_by.mm()) > same_length_mm) {
        return {};
    }
    return walk_words(QT_TRANSLATE_NOOP("walk", "In one go %1, in %2 parts %3."))
        .arg(exactly(Length::mm(whole), style))
        .arg(check.readings.size() - 1)
        .arg(exactly(Length::mm(parts), style));
}

/// Where the value of `suspect` stands too.
QString twin_of(const Suspect& suspect, const Window& window) {
    const auto readings = counted(window);
    const auto says_the_same = [&](const CountedReading& reading) {
        if (reading.angle.has_value() != suspect.angle.has_value()) {
            return false;
        }
        return reading.angle ? std::abs(reading.angle->degrees() - suspect.angle->degrees()) < same_angle_deg
                             : std::abs((reading.value - suspect.was).mm()) < same_length_mm;
    };
    const auto twin = std::ranges::find_if(readings, [&](const CountedReading& reading) {
        return reading.station.word != suspect.station && says_the_same(reading);
    });
    return twin == readings.end() ? QString() : shown(station_words(twin->station));
}

struct SlipWords {
    const char* slip;
    const char* says;
};
constexpr std::array<SlipWords, 10> slip_words{{
    {"transposed-digits", QT_TRANSLATE_NOOP("walk", "two digits exchanged")},
    {"wrong-digit", QT_TRANSLATE_NOOP("walk", "one digit wrong")},
    {"missing-digit", QT_TRANSLATE_NOOP("walk", "a digit left out")},
    {"doubled-digit", QT_TRANSLATE_NOOP("walk", "a digit typed twice")},
    {"wrong-unit", QT_TRANSLATE_NOOP("walk", "another unit")},
    {"wrong-fraction", QT_TRANSLATE_NOOP("walk", "another fraction")},
    {"tape-case", QT_TRANSLATE_NOOP("walk", "the tape’s case")},
    {"supplement", QT_TRANSLATE_NOOP("walk", "read off the other side of the bevel")},
    {"outside-angle", QT_TRANSLATE_NOOP("walk", "the outside angle")},
    {"half-angle", QT_TRANSLATE_NOOP("walk", "half of it, as a saw is set")},
}};

/// What a reading should say, where the slip itself tells; else empty.
template <class Corrected>
QString meant(const Corrected& corrected, const LengthStyle& style) {
    return corrected.proposed_angle ? exactly(*corrected.proposed_angle)
           : corrected.proposed     ? exactly(*corrected.proposed, style)
                                    : QString();
}

QString meant_by(const Suspect& suspect, const LengthStyle& style) {
    return tells_value(suspect.slip) ? meant(suspect, style) : QString();
}

/// What one explanation corrects besides: "and Sill to head, left, perhaps 1130".
QString with_it(const Suspect& suspect, const Window& window, const LengthStyle& style) {
    QString text;
    for (const Correction& other : suspect.also) {
        const QString value = meant(other, style);
        text += value.isEmpty() ? QString()
                                : walk_words(QT_TRANSLATE_NOOP("walk", ", and %1, perhaps %2"))
                                      .arg(within_sentence(station_says(window, other.station)), value);
    }
    return text;
}

QString key_of(const Suspect& suspect, std::size_t place) {
    return QStringLiteral("%1/%2/%3").arg(shown(suspect.station), shown(suspect.slip)).arg(place);
}

QString figure_of(const Suspect& suspect, const LengthStyle& style) {
    const QString was = suspect.angle ? exactly(*suspect.angle) : exactly(suspect.was, style);
    const QString value = meant_by(suspect, style);
    return value.isEmpty() ? was : walk_words(QT_TRANSLATE_NOOP("walk", "%1, perhaps %2")).arg(was, value);
}

/// A reading that a flag names without suspecting it.
ShownRows::Row named_row(const std::string& station, const Window& window, const LengthStyle& style) {
    const auto readings = counted(window);
    const CountedReading* reading = find_counted(readings, station);
    const QString says = station_says(window, station);
    const QString figure = reading == nullptr ? QString()
                           : reading->angle   ? exactly(*reading->angle)
                                              : exactly(reading->value, style);
    return {shown(station), shown(station), says,      figure,    QString(),
            QString(),      false,          QString(), QString(), QStringLiteral("%1: %2").arg(says, figure)};
}

}  // namespace

QString exactly(Length length, LengthStyle style) {
    const double eighths = length.mm() / 25.4 * 8.0;
    if (style.unit == LengthUnit::in && std::abs(eighths - std::round(eighths)) > 1e-3) {
        style.inch_denominator = 16;
    }
    return shown(write_length(length, style));
}

QString exactly(Angle angle) { return shown(std::optional(angle.degrees())) + QStringLiteral("°"); }

LineUnderNumber line_under_number(const WindowFigures& worked, const Window& window, const Station& station,
                                  const LengthStyle& style) {
    const Check* check = telling_check(worked, station.word);
    if (check == nullptr) {
        return {};
    }
    const QString kind = check->adds_up ? QStringLiteral("adds-up") : QStringLiteral("differs");
    if (has_angles(*check, window)) {
        return {check->adds_up ? walk_words(QT_TRANSLATE_NOOP("walk", "Adds up"))
                               : walk_words(QT_TRANSLATE_NOOP("walk", "Doesn’t add up")),
                kind};
    }
    if (is_by_photo(*check)) {
        return {(check->adds_up ? walk_words(QT_TRANSLATE_NOOP("walk", "The photo agrees, to %1 (allowed %2)"))
                                : walk_words(QT_TRANSLATE_NOOP("walk", "The photo is %1 apart, allowed %2")))
                    .arg(difference(check->off_by, style, true), difference(check->explained, style, false)),
                kind};
    }
    const QString words =
        check->adds_up ? walk_words(QT_TRANSLATE_NOOP("walk", "Adds up, to %1 (tape and edges allow %2)"))
                       : walk_words(QT_TRANSLATE_NOOP("walk", "Doesn’t add up: off by %1, tape and edges allow %2"));
    return {words.arg(difference(check->off_by, style, true), difference(check->explained, style, false)), kind};
}

bool may_be_half_typed(const WindowFigures& worked, const Station& station, Length value) {
    const Check* check = telling_check(worked, station.word);
    const CheckedReading* own = check != nullptr ? reading_in(*check, station.word) : nullptr;
    return own != nullptr && !check->adds_up && own->residual / own->redundancy > value.mm();
}

DifferWords differ_words(const WindowFigures& worked, const Window& window, const Flag& flag,
                         const LengthStyle& style) {
    const Check* check = check_of(worked, flag);
    if (check == nullptr || is_by_photo(*check) || has_angles(*check, window) || check->off_by.mm() <= 0.0) {
        const QString text = shown(flag.text);
        const auto stop = text.indexOf(QStringLiteral(". "));
        if (stop < 0) {
            return {text.endsWith(QLatin1Char('.')) ? text.chopped(1) : text, {}};
        }
        return {text.left(stop), text.mid(stop + 2)};
    }
    const QString parts = whole_and_parts(*check, window, style);
    return {walk_words(QT_TRANSLATE_NOOP("walk", "These differ by %1")).arg(difference(check->off_by, style, true)),
            (parts.isEmpty() ? QString() : parts + QLatin1Char(' ')) +
                walk_words(QT_TRANSLATE_NOOP("walk", "Tape and edges allow %1."))
                    .arg(difference(check->explained, style, false))};
}

QString slip_in_words(const Suspect& suspect, const Window& window, const LengthStyle& style) {
    if (suspect.slip == "swapped") {
        return suspect.also.empty() ? walk_words(QT_TRANSLATE_NOOP("walk", "exchanged with another"))
                                    : walk_words(QT_TRANSLATE_NOOP("walk", "exchanged with %1"))
                                          .arg(station_says(window, suspect.also.front().station));
    }
    if (suspect.slip == "copied") {
        const QString twin = twin_of(suspect, window);
        return twin.isEmpty() ? walk_words(QT_TRANSLATE_NOOP("walk", "same as another"))
                              : walk_words(QT_TRANSLATE_NOOP("walk", "same as %1")).arg(twin);
    }
    const auto known =
        std::ranges::find_if(slip_words, [&](const SlipWords& words) { return suspect.slip == words.slip; });
    if (known == slip_words.end()) {
        return suspect.slip == "unexplained" ? walk_words(QT_TRANSLATE_NOOP("walk", "no slip explains it"))
                                             : shown(suspect.slip).replace(QLatin1Char('-'), QLatin1Char(' '));
    }
    return walk_words(known->says) + with_it(suspect, window, style);
}

QStringList likelihoods(const std::vector<Suspect>& suspects) {
    const auto tied = [&](std::size_t one, std::size_t next) {
        return next < suspects.size() && suspects[one].weight > 0.0 &&
               suspects[next].weight >= tie_share * suspects[one].weight - rounding;
    };
    QStringList words;
    for (std::size_t i = 0; i < suspects.size(); ++i) {
        const double weight = suspects[i].weight;
        const double next = i + 1 < suspects.size() ? suspects[i + 1].weight : 0.0;
        if (weight <= 0.0) {
            words.append(QString());
        } else if (tied(i, i + 1)) {
            words.append(walk_words(QT_TRANSLATE_NOOP("walk", "as likely as the next")));
        } else if (i > 0 && tied(i - 1, i)) {
            words.append(walk_words(QT_TRANSLATE_NOOP("walk", "just as likely")));
        } else if (weight >= likely_from && weight >= likely_times_the_next * next - rounding) {
            words.append(walk_words(QT_TRANSLATE_NOOP("walk", "likely")));
        } else {
            words.append(walk_words(QT_TRANSLATE_NOOP("walk", "possible")));
        }
    }
    return words;
}

QList<QByteArray> suspect_roles() {
    return {"suspect", "station", "says", "figure", "slip", "likely", "isLikely", "offer", "offerSpoken", "spoken"};
}

QList<ShownRows::Row> suspect_rows(const Flag& flag, const Window& window, const LengthStyle& style) {
    QList<ShownRows::Row> rows;
    const QStringList likely = likelihoods(flag.suspects);
    for (std::size_t place = 0; place < flag.suspects.size(); ++place) {
        const Suspect& suspect = flag.suspects[place];
        const QString says = station_says(window, suspect.station);
        const QString slip = slip_in_words(suspect, window, style);
        const QString how_likely = likely.at(static_cast<qsizetype>(place));
        const QString value = meant_by(suspect, style);
        const QString offer =
            value.isEmpty() ? QString() : walk_words(QT_TRANSLATE_NOOP("walk", "It should read %1")).arg(value);
        const QString offer_spoken =
            value.isEmpty() ? QString() : walk_words(QT_TRANSLATE_NOOP("walk", "%1 should read %2")).arg(says, value);
        QStringList spoken{QStringLiteral("%1: %2").arg(says, figure_of(suspect, style)), slip, how_likely};
        spoken.removeAll(QString());
        rows.append({key_of(suspect, place), shown(suspect.station), says, figure_of(suspect, style), slip, how_likely,
                     how_likely == walk_words(QT_TRANSLATE_NOOP("walk", "likely")), offer, offer_spoken,
                     spoken.join(QStringLiteral(", "))});
    }
    if (flag.suspects.empty()) {
        for (const auto& station : flag.stations) {
            rows.append(named_row(station, window, style));
        }
    }
    return rows;
}

const Suspect* find_suspect(const Flag& flag, const QString& key) {
    for (std::size_t place = 0; place < flag.suspects.size(); ++place) {
        if (key_of(flag.suspects[place], place) == key) {
            return &flag.suspects[place];
        }
    }
    return nullptr;
}

QString none_of_these(const Flag& flag) {
    double together = 0.0;
    double most = 0.0;
    for (const Suspect& suspect : flag.suspects) {
        together += suspect.weight;
        most = std::max(most, suspect.weight);
    }
    if (together <= 0.0) {
        return {};
    }
    const double rest = 1.0 - together;
    const bool likely = rest >= likely_from && rest >= likely_times_the_next * most;
    return likely        ? walk_words(QT_TRANSLATE_NOOP("walk", "None of these, or two slips at once: likely"))
           : rest > most ? walk_words(QT_TRANSLATE_NOOP("walk", "None of these, or two slips at once: possible"))
                         : walk_words(QT_TRANSLATE_NOOP("walk", "None of these, or two slips at once: less likely"));
}

}  // namespace truehang
