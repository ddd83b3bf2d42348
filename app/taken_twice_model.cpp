// SPDX-License-Identifier: Apache-2.0
#include "taken_twice_model.h"

#include "merge/merge.h"
#include "open_visit.h"
#include "survey/replaced.h"
#include "survey_keeping.h"
#include "writing.h"

#include <algorithm>

namespace truehang {

namespace {

/// The longest that stands beside another on a phone, in letters.
constexpr int short_enough = 12;

QString key_of(const TwiceThing& thing, qsizetype choice) { return QStringLiteral("%1#%2").arg(thing.key).arg(choice); }

}  // namespace

TakenTwiceModel::TakenTwiceModel(OpenVisit& open, QObject* parent)
    : QObject(parent), open_(open), rows_({"row", "kind", "says", "who", "stands", "broad", "spoken"}) {
    connect(&open_, &OpenVisit::opened, this, [this] {
        met_.reset();
        fault_.clear();
        readMet();
    });
    connect(&open_, &OpenVisit::changed, this, &TakenTwiceModel::show);
    connect(&open_, &OpenVisit::windowChanged, this, &TakenTwiceModel::show);
}

void TakenTwiceModel::setShown(bool shown, const QString& first) {
    if (shown && !shown_) {
        first_ = first;
        fault_.clear();
        readMet();
    }
    shown_ = shown;
    show();
}

/// What came last from others says from whom a value is.
void TakenTwiceModel::readMet() {
    if (!open_.isOpen()) {
        return;
    }
    open_.keeping().post(
        this, [visit = open_.survey().id](Store& store) { return store.last_met(visit); },
        [this, visit = open_.visitId()](const Result<std::optional<MetRevision>>& met) {
            if (met && visit == open_.visitId()) {
                met_ = read_met(*met);
                show();
            }
        });
}

void TakenTwiceModel::lookAt(const QString& visit) {
    if (visit.isEmpty() || visit == open_.visitId()) {
        readMet();
    }
}

QString TakenTwiceModel::cameLine() const {
    return !met_ ? QString()
           : met_->sent_by.isEmpty()
               ? tr("Somebody else worked on this visit too. What came on %1 is in it.").arg(met_->when)
               : tr("%1 worked on this visit too. What came on %2 is in it.").arg(met_->sent_by, met_->when);
}

QString TakenTwiceModel::line() const {
    return count_ == 0   ? QString()
           : count_ == 1 ? tr("One thing was taken twice. Say which one counts.")
                         : tr("%1 things were taken twice. Say which ones count.").arg(count_);
}

QString TakenTwiceModel::lineHere() const {
    return count_here_ == 0   ? QString()
           : count_here_ == 1 ? tr("One thing here was taken twice.")
                              : tr("%1 things here were taken twice.").arg(count_here_);
}

void TakenTwiceModel::show() {
    const Window* window = open_.isOpen() ? open_.window() : nullptr;
    count_ = open_.isOpen() ? count_taken_twice(open_.survey()) : 0;
    count_here_ = window != nullptr ? count_taken_twice(open_.survey(), *window) : 0;
    things_ = shown_ && open_.isOpen() ? taken_twice(open_.survey(), met_) : QList<TwiceThing>();
    if (!first_.isEmpty()) {
        std::ranges::stable_partition(things_, [this](const TwiceThing& one) { return one.window == first_; });
    }
    showRows();
    emit changed();
}

void TakenTwiceModel::showRows() {
    QList<ShownRows::Row> rows;
    QString last = QStringLiteral("-");
    for (const TwiceThing& thing : things_) {
        const QString place = thing.window.isEmpty() ? tr("The visit") : open_.titleOf(thing.window);
        if (thing.window != last) {
            rows.append({QStringLiteral("place/") + thing.window, QStringLiteral("place"), place, QString(), false,
                         true, place});
        }
        last = thing.window;
        rows.append({thing.key, QStringLiteral("thing"), thing.says, QString(), false, true, thing.says});
        const bool broad = thing.choices.size() != 2 || std::ranges::any_of(thing.choices, [](const TwiceChoice& one) {
                               return one.says.size() > short_enough;
                           });
        for (qsizetype i = 0; i < thing.choices.size(); ++i) {
            const TwiceChoice& choice = thing.choices[i];
            const QString standing = choice.stands ? tr("holds meanwhile") : QString();
            QStringList parts{tr("Take %1").arg(choice.says), choice.who, standing};
            parts.removeAll(QString());
            rows.append({key_of(thing, i), QStringLiteral("choice"), choice.says, choice.who, choice.stands, broad,
                         parts.join(QStringLiteral(", "))});
        }
        if (!thing.station.isEmpty()) {
            rows.append({thing.key + QStringLiteral("#again"), QStringLiteral("again"), tr("measure it again"),
                         QString(), false, true, tr("Measure it again: %1").arg(thing.says)});
        }
    }
    rows_.setRows(rows);
}

void TakenTwiceModel::choose(const QString& row) {
    fault_.clear();
    for (const TwiceThing& one : QList<TwiceThing>(things_)) {
        if (row == one.key + QStringLiteral("#again")) {
            emit wanted(one.window, one.station);
            return;
        }
        for (qsizetype i = 0; i < one.choices.size(); ++i) {
            if (row == key_of(one, i)) {
                one.at.empty() ? settleReading(one, one.choices[i]) : settleEntry(one, i);
                return;
            }
        }
    }
}

void TakenTwiceModel::settleReading(const TwiceThing& thing, const TwiceChoice& choice) {
    open_.editWindow(
        tr("Counts: %1").arg(choice.says), thing.window,
        [id = choice.reading](Window& window) { return choose_reading(window, id); },
        [this](const QString& fault) { settled(fault); });
}

void TakenTwiceModel::settleEntry(const TwiceThing& thing, qsizetype choice) {
    const auto change = [this, settling = Settling{thing.at, static_cast<std::size_t>(choice)}](Survey& survey) {
        auto done = settle(survey, settling);
        if (!done) {
            settled(truehang::shown(done.error().front().text));
            return false;
        }
        survey = std::move(done).value();
        return true;
    };
    open_.edit(tr("Settled: %1").arg(thing.choices[choice].says), change,
               [this](const QString& fault) { settled(fault); });
}

void TakenTwiceModel::settled(const QString& fault) {
    fault_ = fault;
    emit changed();
}

}  // namespace truehang
