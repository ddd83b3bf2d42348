// SPDX-License-Identifier: Apache-2.0
#include "survey/counted.h"

#include "survey/replaced.h"

#include <algorithm>
#include <charconv>
#include <chrono>
#include <limits>

namespace truehang {

namespace {

bool is_fixed(const Reading& reading) { return reading.stage && reading.stage->is(Stage::fixed); }

int number_at(std::string_view text, std::size_t from, std::size_t digits) {
    int value = 0;
    if (from + digits <= text.size()) {
        std::from_chars(text.data() + from, text.data() + from + digits, value);
    }
    return value;
}

/// Seconds since 1970 of an RFC 3339 time, to compare times written with different offsets; a reading without a time
/// is older than any other. The document's reader has refused what isn't such a time.
double instant_of(const std::string& time) {
    if (time.size() < 20) {
        return -std::numeric_limits<double>::infinity();
    }
    using namespace std::chrono;
    const sys_days day = year(number_at(time, 0, 4)) / number_at(time, 5, 2) / number_at(time, 8, 2);
    double seconds = duration<double>(day.time_since_epoch()).count() + 3600.0 * number_at(time, 11, 2) +
                     60.0 * number_at(time, 14, 2) + number_at(time, 17, 2);
    std::size_t at = 19;
    if (time[at] == '.') {
        double scale = 0.1;
        for (++at; at < time.size() && time[at] >= '0' && time[at] <= '9'; ++at, scale /= 10.0) {
            seconds += scale * (time[at] - '0');
        }
    }
    if (at + 6 <= time.size() && (time[at] == '+' || time[at] == '-')) {
        const double offset = 3600.0 * number_at(time, at + 1, 2) + 60.0 * number_at(time, at + 4, 2);
        seconds -= time[at] == '+' ? offset : -offset;
    }
    return seconds;
}

/// The stage wins (a station taken again with the pole up), then the later time; equal or no times: the later in the
/// list.
bool is_superseded_by(const Reading& older, const Reading& newer) {
    if (is_fixed(older) != is_fixed(newer)) {
        return is_fixed(newer);
    }
    return instant_of(older.taken_at) <= instant_of(newer.taken_at);
}

How how_of(const Reading& reading) {
    return reading.how ? reading.how->known().value_or(How::measured) : How::measured;
}

bool has_value_for(const Station& station, const Reading& reading) {
    return station.is_angle() ? reading.angle.has_value() : reading.value.has_value();
}

/// A pole that is up is where it is: what was planned for it no longer counts.
void leave_planned_pole(std::vector<CountedReading>& counted) {
    const auto of_pole = [](const CountedReading& r) { return r.station.word.starts_with("pole."); };
    if (std::ranges::any_of(counted, [&](const CountedReading& r) { return of_pole(r) && is_fixed(*r.reading); })) {
        std::erase_if(counted, [&](const CountedReading& r) { return of_pole(r) && !is_fixed(*r.reading); });
    }
}

}  // namespace

std::vector<CountedReading> counted_readings(const Window& window, Shape shape) {
    std::vector<CountedReading> counted;
    const int facets = facets_taken(window);
    const auto replaced = replaced_in(window);
    for (Station station : stations_of(shape)) {
        const Reading* best = nullptr;
        bool contested = false;
        for (std::size_t i = 0; i < replaced.size(); ++i) {
            const Reading& reading = window.readings[i];
            if (reading.station != station.word || !has_value_for(station, reading) || replaced[i]) {
                continue;
            }
            if (best != nullptr && is_fixed(*best) == is_fixed(reading)) {
                contested = contested || (!best->id.empty() && !reading.id.empty());
            } else if (best != nullptr && is_fixed(reading)) {
                contested = false;
            }
            if (best == nullptr || is_superseded_by(*best, reading)) {
                best = &reading;
            }
        }
        if (best != nullptr) {
            const How how = how_of(*best);
            place_on_lines(station, facets);
            counted.push_back({station, best, station.is_angle() ? Length() : *best->value,
                               station.is_angle() ? best->angle : std::nullopt, how == How::measured,
                               how == How::measured || how == How::estimated, contested});
        }
    }
    leave_planned_pole(counted);
    return counted;
}

const CountedReading* find_counted(const std::vector<CountedReading>& readings, std::string_view station) {
    const auto found =
        std::ranges::find_if(readings, [&](const CountedReading& r) { return r.station.word == station; });
    return found == readings.end() ? nullptr : &*found;
}

}  // namespace truehang
