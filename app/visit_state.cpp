// SPDX-License-Identifier: Apache-2.0
#include "visit_state.h"

#include "survey/standing.h"
#include "writing.h"

#include <QCoreApplication>
#include <QDateTime>

namespace truehang {

using Stitch = thread_mark::Mark;

namespace {

QString translated(const char* source, int n = -1) { return QCoreApplication::translate("state", source, nullptr, n); }

StandsAs arrived(const VisitSummary& summary) {
    if (summary.photos_confirmed < summary.photos) {
        return {translated(QT_TRANSLATE_NOOP("state", "at the workroom, %1 of %2 photos"))
                    .arg(summary.photos_confirmed)
                    .arg(summary.photos),
                Stitch::HalfThere};
    }
    return {translated(QT_TRANSLATE_NOOP("state", "at the workroom")), Stitch::There};
}

}  // namespace

bool is_measured(const Window& window) {
    const auto [taken, asked] = stations_taken(window);
    return asked > 0 && taken == asked;
}

StandsAs standing_of(const Window& window) {
    const auto [taken, asked] = stations_taken(window);
    if (asked == 0) {
        return {translated(QT_TRANSLATE_NOOP("state", "this shape comes later")), Stitch::ToDo};
    }
    if (taken == 0) {
        return {translated(QT_TRANSLATE_NOOP("state", "to measure")), Stitch::ToDo};
    }
    if (taken < asked) {
        return {translated(QT_TRANSLATE_NOOP("state", "%1 of %2 stations")).arg(taken).arg(asked), Stitch::UnderWay};
    }
    return {translated(QT_TRANSLATE_NOOP("state", "measured")), Stitch::Kept};
}

StandsAs standing_of(const VisitSummary& summary) {
    if (summary.questions > 0) {
        return {summary.questions == 1
                    ? translated(QT_TRANSLATE_NOOP("state", "the workroom asks something"))
                    : translated(QT_TRANSLATE_NOOP("state", "the workroom asks %1 things")).arg(summary.questions),
                Stitch::Asked};
    }
    if (summary.confirmed_revision > 0 && summary.confirmed_revision == summary.revision) {
        return arrived(summary);
    }
    if (summary.windows_begun == 0) {
        return {translated(QT_TRANSLATE_NOOP("state", "to measure")), Stitch::ToDo};
    }
    if (const int left = summary.windows - summary.windows_measured; left > 0) {
        return {left == 1 ? translated(QT_TRANSLATE_NOOP("state", "measuring, 1 window left"))
                          : translated(QT_TRANSLATE_NOOP("state", "measuring, %1 windows left")).arg(left),
                Stitch::UnderWay};
    }
    if (summary.confirmed_revision > 0) {
        return {translated(QT_TRANSLATE_NOOP("state", "measured, the workroom has an earlier state")), Stitch::Kept};
    }
    return {translated(QT_TRANSLATE_NOOP("state", "measured, on this phone only")), Stitch::Kept};
}

StandsAs standing_of(const Survey& survey, VisitSummary summary) {
    summary.windows = summary.windows_begun = summary.windows_measured = 0;
    for (const Room& room : survey.rooms) {
        for (const Window& window : room.windows) {
            const StationCount count = stations_taken(window);
            ++summary.windows;
            summary.windows_begun += count.taken > 0 ? 1 : 0;
            summary.windows_measured += count.asked > 0 && count.taken == count.asked ? 1 : 0;
        }
    }
    return standing_of(summary);
}

bool waits_for_a_day(const VisitSummary& summary, const std::string& now) {
    constexpr qint64 day_in_seconds = 24 * 60 * 60;
    const QDateTime since = QDateTime::fromString(shown(summary.unsent_since), Qt::ISODateWithMs);
    const QDateTime at = QDateTime::fromString(shown(now), Qt::ISODateWithMs);
    return !summary.removed && since.isValid() && at.isValid() && since.secsTo(at) >= day_in_seconds;
}

}  // namespace truehang
