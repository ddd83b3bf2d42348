// SPDX-License-Identifier: Apache-2.0
#include "visit_state.h"

#include "reading_history.h"
#include "survey/stations.h"
#include "writing.h"

#include <QCoreApplication>
#include <algorithm>

namespace truehang {

using Stitch = thread_mark::Mark;

namespace {

QString translated(const char* source, int n = -1) { return QCoreApplication::translate("state", source, nullptr, n); }

/// A reading of the station stands that is more than a proposal.
bool is_read(const Window& window, std::string_view station) {
    return std::ranges::any_of(window.readings, [&](const Reading& reading) {
        const bool replaced = !reading.id.empty() && std::ranges::any_of(window.readings, [&](const Reading& other) {
            return other.replaces == reading.id && other.id != reading.id;
        });
        return reading.station == station && !replaced && !is_proposed(reading);
    });
}

/// How many stations of the walk have a reading or a reason, and how many there are.
std::pair<int, int> taken_of(const Window& window) {
    int taken = 0;
    int asked = 0;
    for (const Station& station : walk_of(window)) {
        ++asked;
        const bool read = is_read(window, station.word);
        const bool excused =
            std::ranges::any_of(window.not_taken, [&](const NotTaken& n) { return n.station == station.word; });
        taken += read || excused ? 1 : 0;
    }
    return {taken, asked};
}

StandsAs arrived(const VisitSummary& summary) {
    if (summary.photos_confirmed < summary.photos) {
        return {translated("there, %1 of %2 photos").arg(summary.photos_confirmed).arg(summary.photos),
                Stitch::HalfThere};
    }
    return {translated("there"), Stitch::There};
}

}  // namespace

bool is_measured(const Window& window) {
    const auto [taken, asked] = taken_of(window);
    return asked > 0 && taken == asked;
}

StandsAs standing_of(const Window& window) {
    const auto [taken, asked] = taken_of(window);
    if (asked == 0) {
        return {translated("this shape comes later"), Stitch::ToDo};
    }
    if (taken == 0) {
        return {translated("to measure"), Stitch::ToDo};
    }
    if (taken < asked) {
        return {translated("%1 of %2 stations").arg(taken).arg(asked), Stitch::UnderWay};
    }
    return {translated("measured"), Stitch::Kept};
}

StandsAs standing_of(const Survey& survey, const VisitSummary& summary) {
    int windows = 0;
    int left = 0;
    bool begun = false;
    for (const Room& room : survey.rooms) {
        for (const Window& window : room.windows) {
            ++windows;
            left += is_measured(window) ? 0 : 1;
            begun = begun || taken_of(window).first > 0;
        }
    }
    if (summary.confirmed_revision > 0 && summary.confirmed_revision == summary.revision) {
        return arrived(summary);
    }
    if (!begun) {
        return {translated("to measure"), Stitch::ToDo};
    }
    if (left > 0) {
        return {left == 1 ? translated("measuring, 1 window left") : translated("measuring, %1 windows left").arg(left),
                Stitch::UnderWay};
    }
    if (summary.confirmed_revision > 0) {
        return {translated("measured, the workroom has an earlier state"), Stitch::Kept};
    }
    return {translated("measured, on this phone only"), Stitch::Kept};
}

}  // namespace truehang
