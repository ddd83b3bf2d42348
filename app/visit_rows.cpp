// SPDX-License-Identifier: Apache-2.0
#include "visit_rows.h"

#include "writing.h"

#include <QDate>
#include <QLocale>
#include <algorithm>
#include <tuple>

namespace truehang {

namespace {

constexpr int role_of_heading = Qt::UserRole + 7;

/// The order of the list: newest day first, within a day the newest edit.
bool comes_before(const VisitSummary& a, const VisitSummary& b) {
    return std::tie(a.day, a.last_edit) > std::tie(b.day, b.last_edit);
}

bool same_ids(const std::vector<VisitSummary>& a, const std::vector<VisitSummary>& b) {
    return std::equal(a.begin(), a.end(), b.begin(), b.end(),
                      [](const VisitSummary& x, const VisitSummary& y) { return x.id == y.id; });
}

QString named(const VisitSummary& visit) {
    return visit.title.empty() ? VisitRows::tr("New visit") : shown(visit.title);
}

QString about(const VisitSummary& visit) {
    const QString windows =
        visit.windows == 1 ? VisitRows::tr("1 window") : VisitRows::tr("%1 windows").arg(visit.windows);
    return visit.address.empty() ? windows : shown(visit.address);
}

}  // namespace

VisitRows::VisitRows(QObject* parent)
    : ShownRows(
          {"visitId", "title", "line", "state", "mark", "asks", "spoken", "heading", "unsent", "waits", "damaged"},
          parent) {}

int VisitRows::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(visits_.size());
}

QVariant VisitRows::data(const QModelIndex& index, int role) const {
    const int column = role == Qt::DisplayRole ? 0 : role - Qt::UserRole;
    if (!index.isValid() || index.row() >= rowCount({}) || column < 0) {
        return {};
    }
    return valueOf(static_cast<std::size_t>(index.row()), column);
}

QVariant VisitRows::valueOf(std::size_t row, int column) const {
    const VisitSummary& visit = visits_.at(row);
    switch (column) {
        case visit_id:
            return shown(visit.id);
        case title:
            return named(visit);
        case line:
            return about(visit);
        case state:
            return standingOf(visit).words;
        case mark:
            return QVariant::fromValue(standingOf(visit).mark);
        case asks:
            return visit.questions > 0 || unreadable_.contains(visit.id);
        case spoken:
            return spokenOf(visit);
        case heading:
            return headingOf(row);
        case unsent:
            return visit.confirmed_revision < visit.revision || visit.photos_confirmed < visit.photos;
        case waits:
            return waitingOf(visit);
        case damaged:
            return unreadable_.contains(visit.id);
        default:
            return {};
    }
}

StandsAs VisitRows::standingOf(const VisitSummary& visit) const {
    return unreadable_.contains(visit.id)
               ? StandsAs{tr("damaged: it can’t be read. It was left as it is: take it in from a file."),
                          thread_mark::Mark::Asked}
               : standing_of(visit);
}

void VisitRows::setUnreadable(const std::vector<std::string>& ids) {
    unreadable_.insert(ids.begin(), ids.end());
    for (int row = 0; row < count(); ++row) {
        if (unreadable_.contains(visits_[static_cast<std::size_t>(row)].id)) {
            emit dataChanged(index(row), index(row));
        }
    }
}

QString VisitRows::waitingOf(const VisitSummary& visit) const {
    return waits_for_a_day(visit, now_) ? tr("not sent for a day: keep it as a file") : QString();
}

QString VisitRows::spokenOf(const VisitSummary& visit) const {
    QStringList words{named(visit), about(visit), standingOf(visit).words};
    if (const QString waiting = waitingOf(visit); !waiting.isEmpty()) {
        words << waiting;
    }
    return words.join(QStringLiteral(", "));
}

QString VisitRows::headingOf(std::size_t row) const {
    const std::string& day = visits_.at(row).day;
    if (row + 1 < visits_.size() ? visits_[row + 1].day == day : has_more_) {
        return {};
    }
    const QDate date = QDate::fromString(shown(day), Qt::ISODate);
    return day == today_ ? tr("Today") : date.isValid() ? QLocale().toString(date, QLocale::LongFormat) : shown(day);
}

bool VisitRows::canFetchMore(const QModelIndex& parent) const { return !parent.isValid() && has_more_ && !fetching_; }

void VisitRows::fetchMore(const QModelIndex& parent) {
    if (canFetchMore(parent) && on_wants_more) {
        fetching_ = true;
        on_wants_more();
    }
}

void VisitRows::setNow(const std::string& now) {
    constexpr std::size_t day_text = 10;
    constexpr std::size_t hour_text = 13;
    const bool another_hour = now.substr(0, hour_text) != now_.substr(0, hour_text);
    now_ = now;
    today_ = now.substr(0, day_text);
    if (another_hour && !visits_.empty()) {
        emit dataChanged(index(0), index(count() - 1));
    }
}

void VisitRows::begin(VisitsPage page) {
    fetching_ = false;
    has_more_ = page.more;
    if (same_ids(visits_, page.visits)) {
        visits_ = std::move(page.visits);
        if (!visits_.empty()) {
            emit dataChanged(index(0), index(count() - 1));
        }
        return;
    }
    beginResetModel();
    visits_ = std::move(page.visits);
    endResetModel();
    emit countChanged();
}

void VisitRows::append(VisitsPage page) {
    fetching_ = false;
    has_more_ = page.more;
    const int first = count();
    if (!page.visits.empty()) {
        beginInsertRows({}, first, first + static_cast<int>(page.visits.size()) - 1);
        std::move(page.visits.begin(), page.visits.end(), std::back_inserter(visits_));
        endInsertRows();
        emit countChanged();
    }
    headingChanged(first - 1);
}

/// The heading of a row rests on the row after it.
void VisitRows::headingChanged(int row) {
    if (row >= 0 && row < count()) {
        emit dataChanged(index(row), index(row), {role_of_heading});
    }
}

void VisitRows::renew(const std::string& id, const std::vector<VisitSummary>& found) {
    const auto stands = std::ranges::find(visits_, id, &VisitSummary::id);
    if (stands != visits_.end()) {
        const auto row = static_cast<int>(stands - visits_.begin());
        const bool stays =
            !found.empty() && (row == 0 || comes_before(visits_[stands - visits_.begin() - 1], found[0])) &&
            (stands + 1 == visits_.end() || comes_before(found[0], *(stands + 1))) && stands->day == found[0].day;
        if (stays) {
            *stands = found[0];
            emit dataChanged(index(row), index(row));
            return;
        }
        take(row);
    }
    if (!found.empty()) {
        put(found[0]);
    }
}

void VisitRows::take(int row) {
    beginRemoveRows({}, row, row);
    visits_.erase(visits_.begin() + row);
    endRemoveRows();
    headingChanged(row - 1);
    emit countChanged();
}

/// After the last row that is here it belongs to a page that hasn't come, if there is one.
void VisitRows::put(VisitSummary visit) {
    const auto place =
        std::ranges::find_if(visits_, [&](const VisitSummary& other) { return comes_before(visit, other); });
    if (place == visits_.end() && has_more_) {
        return;
    }
    const auto row = static_cast<int>(place - visits_.begin());
    beginInsertRows({}, row, row);
    visits_.insert(place, std::move(visit));
    endInsertRows();
    headingChanged(row - 1);
    emit countChanged();
}

}  // namespace truehang
