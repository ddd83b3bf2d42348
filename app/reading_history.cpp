// SPDX-License-Identifier: Apache-2.0
#include "reading_history.h"

#include "adding_up.h"
#include "adjust/slips.h"
#include "sheet/words.h"
#include "survey/counted.h"
#include "survey/replaced.h"
#include "walk_rows.h"
#include "writing.h"

#include <QCoreApplication>
#include <QDateTime>
#include <algorithm>

namespace truehang {

namespace {

QString history_text(const char* source) { return QCoreApplication::translate("walk", source); }

QString how_of(const Reading& reading, const LengthStyle& style) {
    if (!reading.how || reading.how->is(How::measured)) {
        return history_text(QT_TRANSLATE_NOOP("walk", "measured"));
    }
    if (reading.how->is(How::proposed)) {
        return history_text(QT_TRANSLATE_NOOP("walk", "proposed"));
    }
    if (reading.how->is(How::estimated)) {
        return reading.u
                   ? history_text(QT_TRANSLATE_NOOP("walk", "estimated, ± %1")).arg(exactly(2.0 * *reading.u, style))
               : reading.angle_u ? history_text(QT_TRANSLATE_NOOP("walk", "estimated, ± %1"))
                                       .arg(exactly(Angle::degrees(2.0 * reading.angle_u->degrees())))
                                 : history_text(QT_TRANSLATE_NOOP("walk", "estimated"));
    }
    return reading.how->is(How::copied) ? history_text(QT_TRANSLATE_NOOP("walk", "copied"))
                                        : shown(reading.how->text());
}

const Reading* counting(const Window& window, std::string_view station) {
    if (!window.shape.known()) {
        return nullptr;
    }
    const auto counted = counted_readings(window, *window.shape.known());
    const CountedReading* found = find_counted(counted, station);
    return found != nullptr ? found->reading : nullptr;
}

/// Newest first; of one time, the later in the list.
std::vector<const Reading*> newest_first(const Window& window, const std::string& station) {
    std::vector<const Reading*> readings;
    for (auto reading = window.readings.rbegin(); reading != window.readings.rend(); ++reading) {
        if (reading->station == station) {
            readings.push_back(&*reading);
        }
    }
    const auto taken = [](const Reading* reading) {
        const QDateTime time = QDateTime::fromString(shown(reading->taken_at), Qt::ISODateWithMs);
        return time.isValid() ? time.toMSecsSinceEpoch() : std::numeric_limits<qint64>::min();
    };
    std::ranges::stable_sort(readings, std::ranges::greater{}, taken);
    return readings;
}

}  // namespace

bool is_proposed(const Reading& reading) { return reading.how && reading.how->is(How::proposed); }

QString time_shown(std::string_view rfc3339) {
    const QString time = shown(rfc3339);
    if (time.isEmpty()) {
        return history_text(QT_TRANSLATE_NOOP("walk", "at no known time"));
    }
    const QString day = shown(day_text(rfc3339));
    return time.size() >= 16 ? history_text(QT_TRANSLATE_NOOP("walk", "%1, %2")).arg(day, time.mid(11, 5)) : day;
}

QString reading_when(const Reading& reading) { return time_shown(reading.taken_at); }

QString reading_text(const Reading& reading, const LengthStyle& style) {
    if (reading.angle) {
        return exactly(*reading.angle);
    }
    return with_unit(shown(reading.typed), reading.value ? exactly(*reading.value, style) : QString(), style.unit);
}

QList<QByteArray> history_roles() { return {"reading", "figure", "when", "how", "standing", "counts", "spoken"}; }

QList<ShownRows::Row> history_rows(const Window& window, const std::string& station, const LengthStyle& style) {
    QList<ShownRows::Row> rows;
    const Reading* counts = counting(window, station);
    for (const Reading* reading : newest_first(window, station)) {
        const QString figure = reading_text(*reading, style);
        const QString how = how_of(*reading, style);
        const QString standing = reading == counts ? history_text(QT_TRANSLATE_NOOP("walk", "counts"))
                                 : is_replaced(window, *reading)
                                     ? history_text(QT_TRANSLATE_NOOP("walk", "replaced"))
                                     : history_text(QT_TRANSLATE_NOOP("walk", "stands beside the one that counts"));
        const QString key = reading->id.empty() ? QString::number(rows.size()) : shown(reading->id);
        rows.append({key, figure, reading_when(*reading), how, standing, reading == counts,
                     QStringLiteral("%1, %2, %3, %4").arg(figure, how, reading_when(*reading), standing)});
    }
    return rows;
}

std::vector<Reading> proposed_readings(const Window& window, const Suspect& suspect, const std::string& taken_at,
                                       const std::function<std::string()>& new_id) {
    std::vector<Reading> readings;
    const auto put = [&](const auto& corrected) {
        if (!corrected.proposed && !corrected.proposed_angle) {
            return;
        }
        const std::string& station = corrected.station;
        Reading reading;
        reading.id = new_id();
        reading.station = station;
        reading.value = corrected.proposed;
        reading.angle = corrected.proposed_angle;
        reading.taken_at = taken_at;
        reading.how = How::proposed;
        if (const Reading* stands = counting(window, station); stands != nullptr) {
            reading.replaces = stands->id;
            reading.stage = stands->stage;
        }
        readings.push_back(std::move(reading));
    };
    if (tells_value(suspect.slip) && (suspect.proposed || suspect.proposed_angle)) {
        put(suspect);
        for (const Correction& other : suspect.also) {
            put(other);
        }
    }
    return readings;
}

}  // namespace truehang
