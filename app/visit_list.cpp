// SPDX-License-Identifier: Apache-2.0
#include "visit_list.h"

#include "survey_keeping.h"
#include "writing.h"

#include <algorithm>

namespace truehang {

namespace {

bool same_state(const VisitSummary& a, const VisitSummary& b) {
    return a.id == b.id && a.revision == b.revision && a.confirmed_revision == b.confirmed_revision &&
           a.photos_confirmed == b.photos_confirmed && a.photos == b.photos;
}

/// On the store's thread: the list, with the documents read that changed since `known`.
Result<std::vector<VisitLine>> read_lines(Store& store, const std::vector<VisitLine>& known) {
    const auto summaries = store.visits();
    if (!summaries) {
        return summaries.error();
    }
    std::vector<VisitLine> lines;
    for (const VisitSummary& summary : *summaries) {
        const auto was =
            std::ranges::find_if(known, [&](const VisitLine& l) { return same_state(l.summary, summary); });
        VisitLine line;
        if (was != known.end()) {
            line = *was;
        } else if (const auto survey = store.visit(summary.id); survey) {
            line.stands = standing_of(*survey, summary);
            line.client = survey->client ? shown(survey->client->name) : QString();
        } else {
            line.stands = {shown(survey.error().text), thread_mark::Mark::ToDo};
            line.asks = true;
        }
        line.summary = summary;
        lines.push_back(std::move(line));
    }
    return lines;
}

}  // namespace

VisitList::VisitList(SurveyKeeping& keeping, QObject* parent)
    : QObject(parent),
      keeping_(keeping),
      shown_({"visitId", "title", "line", "state", "mark", "asks", "spoken"}),
      removed_({"visitId", "title", "line", "state", "mark", "asks", "spoken"}) {}

void VisitList::read() {
    keeping_.post(
        this, [known = lines_](Store& store) { return read_lines(store, known); },
        [this](Result<std::vector<VisitLine>> lines) {
            if (!lines) {
                emit faulty(fault_of(lines));
                return;
            }
            lines_ = std::move(lines).value();
            show();
        });
}

void VisitList::setSearch(const QString& words) {
    search_ = words;
    show();
}

void VisitList::show() {
    QList<ShownRows::Row> here;
    QList<ShownRows::Row> gone;
    const QStringList words = search_.split(QLatin1Char(' '), Qt::SkipEmptyParts);
    for (auto line = lines_.rbegin(); line != lines_.rend(); ++line) {  // the newest edit last, nearest the thumb
        const VisitSummary& summary = line->summary;
        const QString title = summary.title.empty() ? tr("New visit") : truehang::shown(summary.title);
        const QString address = truehang::shown(summary.address);
        const QString windows = summary.windows == 1 ? tr("1 window") : tr("%1 windows").arg(summary.windows);
        const QString about = address.isEmpty() ? windows : address;
        const QString all = QStringLiteral("%1 %2 %3").arg(title, address, line->client);
        const bool found =
            std::ranges::all_of(words, [&](const QString& word) { return all.contains(word, Qt::CaseInsensitive); });
        if (!found) {
            continue;
        }
        (summary.removed ? gone : here)
            .append({truehang::shown(summary.id), title, about, line->stands.words,
                     QVariant::fromValue(line->stands.mark), line->asks,
                     QStringLiteral("%1, %2, %3").arg(title, about, line->stands.words)});
    }
    shown_.setRows(here);
    removed_.setRows(gone);
}

}  // namespace truehang
