// SPDX-License-Identifier: Apache-2.0
#include "taken_twice.h"

#include "document/document.h"
#include "figure_rows.h"
#include "figures/changed_twice.h"
#include "merge/merge.h"
#include "reading_history.h"
#include "survey/counted.h"
#include "survey/replaced.h"
#include "survey/stations.h"
#include "twice_words.h"
#include "writing.h"

#include <QCoreApplication>
#include <algorithm>

namespace truehang {

namespace {

QString taken_twice_text(const char* source) { return QCoreApplication::translate("twice", source); }

QString sent_says(const MetSurvey& met) {
    return met.sent_by.isEmpty()
               ? taken_twice_text(QT_TRANSLATE_NOOP("twice", "from somebody else, came %1")).arg(met.when)
               : taken_twice_text(QT_TRANSLATE_NOOP("twice", "from %1, came %2")).arg(met.sent_by, met.when);
}

QString here_says() { return taken_twice_text(QT_TRANSLATE_NOOP("twice", "from this phone")); }

const Window* window_in(const Survey& survey, const std::string& id) {
    for (const Room& room : survey.rooms) {
        const auto window = std::ranges::find(room.windows, id, &Window::id);
        if (window != room.windows.end()) {
            return &*window;
        }
    }
    return nullptr;
}

/// The stations of a window of which two readings stand, in the contract's order.
std::vector<Station> stations_twice(const Window& window) {
    std::vector<Station> twice;
    if (window.shape.known()) {
        for (const CountedReading& counted : counted_readings(window, *window.shape.known())) {
            if (counted.contested && contenders(window, counted.station.word).size() > 1) {
                twice.push_back(counted.station);
            }
        }
    }
    return twice;
}

TwiceThing readings_thing(const Survey& survey, const Window& window, const Station& station,
                          const std::optional<MetSurvey>& met) {
    TwiceThing thing;
    thing.window = shown(window.id);
    thing.station = shown(station.word);
    thing.key = QStringLiteral("%1/%2").arg(thing.window, thing.station);
    thing.says =
        taken_twice_text(QT_TRANSLATE_NOOP("twice", "%1 was read twice. Say which one counts, or take it again."))
            .arg(station_says(window, station.word));
    const auto counted = counted_readings(window, *window.shape.known());
    const CountedReading* counts = find_counted(counted, station.word);
    const Window* theirs = met ? window_in(met->survey, window.id) : nullptr;
    const auto in_theirs = [&](const Reading& one) {
        return theirs != nullptr && std::ranges::find(theirs->readings, one.id, &Reading::id) != theirs->readings.end();
    };
    const auto among = contenders(window, station.word);
    const bool tells = std::ranges::any_of(among, [&](const Reading* one) { return in_theirs(*one); }) &&
                       std::ranges::any_of(among, [&](const Reading* one) { return !in_theirs(*one); });
    for (const Reading* one : among) {
        const QString when = reading_when(*one);
        const QString who = !tells             ? QString()
                            : !in_theirs(*one) ? here_says()
                            : met->sent_by.isEmpty()
                                ? taken_twice_text(QT_TRANSLATE_NOOP("twice", "from somebody else"))
                                : taken_twice_text(QT_TRANSLATE_NOOP("twice", "from %1")).arg(met->sent_by);
        thing.choices.append({reading_text(*one, length_style(survey)),
                              who.isEmpty() ? when : QStringLiteral("%1, %2").arg(who, when),
                              counts != nullptr && counts->reading == one, one->id});
    }
    return thing;
}

/// Which of the values the other sent; none where they had them side by side already.
std::optional<std::size_t> sent_choice(const ChangedTwice& entry, const std::optional<MetSurvey>& met) {
    if (!met ||
        std::ranges::find(met->survey.changed_twice, entry.at, &ChangedTwice::at) != met->survey.changed_twice.end()) {
        return std::nullopt;
    }
    Survey theirs = met->survey;
    theirs.changed_twice.push_back(entry);
    const std::size_t sent = standing_value(theirs, entry.at);
    return sent < entry.values.size() ? std::optional(sent) : std::nullopt;
}

TwiceThing entry_thing(const Survey& survey, const ChangedTwice& entry, const std::optional<MetSurvey>& met) {
    TwiceThing thing;
    thing.key = shown(entry.at);
    thing.at = entry.at;
    thing.window = shown(place_of(entry).window);
    thing.says = shown(changed_twice_says(survey, entry));
    const auto sent = sent_choice(entry, met);
    const std::size_t stands = entry.values.empty() ? 0 : standing_value(survey, entry.at);
    for (std::size_t i = 0; i < ways_to_settle(entry); ++i) {
        const bool is_value = i < entry.values.size();
        const QString who = !is_value || !sent         ? QString()
                            : *sent == i               ? sent_says(*met)
                            : entry.values.size() == 2 ? here_says()
                                                       : QString();
        thing.choices.append({choice_says(survey, entry, i), who, i == stands, {}});
    }
    return thing;
}

}  // namespace

std::optional<MetSurvey> read_met(const std::optional<MetRevision>& met) {
    if (!met) {
        return std::nullopt;
    }
    auto survey = read_survey(met->bytes);
    return survey
               ? std::optional(MetSurvey{std::move(survey).value(), shown(met->sent_by), time_shown(met->received_at)})
               : std::nullopt;
}

QList<TwiceThing> taken_twice(const Survey& survey, const std::optional<MetSurvey>& met) {
    QList<TwiceThing> things;
    for (const Room& room : survey.rooms) {
        for (const Window& window : room.windows) {
            for (const Station& station : stations_twice(window)) {
                things.append(readings_thing(survey, window, station, met));
            }
            for (const ChangedTwice& entry : survey.changed_twice) {
                if (place_of(entry).window == window.id) {
                    things.append(entry_thing(survey, entry, met));
                }
            }
        }
    }
    for (const ChangedTwice& entry : survey.changed_twice) {
        if (window_in(survey, place_of(entry).window) == nullptr) {
            things.append(entry_thing(survey, entry, met));
            things.back().window.clear();
        }
    }
    return things;
}

int count_taken_twice(const Survey& survey) {
    auto count = static_cast<int>(survey.changed_twice.size());
    for (const Room& room : survey.rooms) {
        for (const Window& window : room.windows) {
            count += static_cast<int>(stations_twice(window).size());
        }
    }
    return count;
}

int count_taken_twice(const Survey& survey, const Window& window) {
    return static_cast<int>(stations_twice(window).size()) +
           static_cast<int>(std::ranges::count_if(
               survey.changed_twice, [&](const ChangedTwice& entry) { return place_of(entry).window == window.id; }));
}

}  // namespace truehang
