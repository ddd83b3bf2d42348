// SPDX-License-Identifier: Apache-2.0
#include "leaving_model.h"

#include "figures/agreement.h"
#include "figures/changed_twice.h"
#include "open_visit.h"
#include "sheet/words.h"
#include "store/sha256.h"
#include "survey/standing.h"
#include "survey/stations.h"
#include "survey_keeping.h"
#include "units/saying.h"
#include "writing.h"

#include <algorithm>

namespace truehang {

namespace {

/// A caution is to be looked at again when its words change.
SeenMark mark_of(const QString& window, const Flag& flag) {
    return {bytes(window), sha256_hex(flag.layer + '\n' + flag.text)};
}

/// A figure that can’t be worked only because of readings that are listed as not taken.
bool only_waits(const Flag& flag, const std::vector<Station>& left) {
    return flag.severity == Severity::stop && !flag.stations.empty() &&
           std::ranges::all_of(flag.stations, [&](const std::string& station) {
               return std::ranges::find(left, station, &Station::word) != left.end();
           });
}

/// Where it is mended: by tape, or by what is chosen.
QString screen_for(const Flag& flag) {
    if (!flag.obstruction.empty()) {
        return QStringLiteral("obstructions");
    }
    if (flag.code == agreement_outdated) {
        return QStringLiteral("sign");
    }
    if (flag.code == changed_twice_code || flag.code == "two-readings") {
        return QStringLiteral("twice");
    }
    const bool is_grave = flag.severity == Severity::stop || flag.severity == Severity::remeasure;
    if (is_grave && !flag.stations.empty()) {
        return QStringLiteral("walk");
    }
    const bool is_chosen = flag.severity == Severity::stop || flag.severity == Severity::decide;
    return is_chosen ? QStringLiteral("hanging") : QStringLiteral("figures");
}

}  // namespace

LeavingModel::LeavingModel(OpenVisit& open, QObject* parent)
    : QObject(parent), open_(open), items_({"item", "heading", "severity", "word", "says", "spoken"}) {
    connect(&open_, &OpenVisit::opened, this, &LeavingModel::readSeen);
    connect(&open_, &OpenVisit::changed, this, &LeavingModel::show);
    connect(&open_, &OpenVisit::standingChanged, this, &LeavingModel::show);
}

void LeavingModel::setShown(bool shown) {
    shown_ = shown;
    show();
}

void LeavingModel::readSeen() {
    seen_.clear();
    if (!open_.isOpen()) {
        return;
    }
    open_.keeping().post(
        this, [visit = open_.survey().id](Store& store) { return store.seen(visit); },
        [this, visit = open_.visitId()](const Result<std::vector<SeenMark>>& seen) {
            if (seen && visit == open_.visitId()) {
                seen_.insert(seen->begin(), seen->end());
                show();
            }
        });
}

QString LeavingModel::line() const {
    return all_.isEmpty()     ? tr("Nothing is missing, and everything adds up.")
           : all_.size() == 1 ? tr("One thing is left.")
                              : tr("%1 things are left.").arg(all_.size());
}

void LeavingModel::show() {
    all_.clear();
    if (shown_ && open_.isOpen()) {
        for (const Room& room : open_.survey().rooms) {
            for (const Window& window : room.windows) {
                addWindow(all_, truehang::shown(window.id));
            }
        }
        addVisit(all_);
    }
    QList<ShownRows::Row> rows;
    QString last = QStringLiteral("-");
    for (const Item& item : all_) {
        const QString title = item.window.isEmpty() ? tr("The visit") : open_.titleOf(item.window);
        rows.append({item.key, item.window == last ? QString() : title, truehang::shown(word_of(item.severity)),
                     item.word, item.says, QStringLiteral("%1. %2: %3").arg(title, item.word, item.says)});
        last = item.window;
    }
    items_.setRows(rows);
    emit changed();
}

void LeavingModel::addWindow(QList<Item>& items, const QString& windowId) const {
    const Window& window = *open_.window(windowId);
    const std::vector<Station> left = stations_left(window);
    if (!left.empty()) {
        const QString first = truehang::shown(left.front().says);
        const QString says = left.size() == 1
                                 ? tr("%1. Take it, or say why it can’t be taken.").arg(first)
                                 : tr("%1 stations, the first: %2. Take each, or say why it can’t be taken.")
                                       .arg(left.size())
                                       .arg(within_sentence(first));
        items.append({windowId + QStringLiteral("/stations"),
                      windowId,
                      truehang::shown(left.front().word),
                      QStringLiteral("walk"),
                      tr("To measure"),
                      says,
                      Severity::remeasure,
                      {}});
    }
    addFlags(items, windowId, left);
    if (window.photos.empty()) {
        items.append({windowId + QStringLiteral("/photos"),
                      windowId,
                      {},
                      QStringLiteral("photos"),
                      tr("No photo"),
                      tr("A photo shows what no reading says."),
                      Severity::note,
                      {}});
    }
}

void LeavingModel::addFlags(QList<Item>& items, const QString& windowId, const std::vector<Station>& left) const {
    int number = 0;
    for (const Severity severity : {Severity::stop, Severity::remeasure, Severity::decide, Severity::caution}) {
        for (const Flag& flag : open_.figuresOf(windowId).flags) {
            const bool is_caution = severity == Severity::caution;
            const SeenMark mark = is_caution ? mark_of(windowId, flag) : SeenMark();
            if (flag.severity != severity || only_waits(flag, left) || (is_caution && seen_.contains(mark))) {
                continue;
            }
            items.append({QStringLiteral("%1/flag/%2").arg(windowId).arg(number++), windowId,
                          flag.stations.empty() ? QString() : truehang::shown(flag.stations.front()), screen_for(flag),
                          truehang::shown(worded(flag_word(severity))), truehang::shown(flag.text), severity, mark});
        }
    }
}

void LeavingModel::addVisit(QList<Item>& items) const {
    if (std::ranges::all_of(open_.survey().rooms, [](const Room& room) { return room.windows.empty(); })) {
        items.append({QStringLiteral("windows"),
                      {},
                      {},
                      QStringLiteral("visit"),
                      tr("No window"),
                      tr("This visit has no window yet."),
                      Severity::remeasure,
                      {}});
    }
    addAgreement(items);
    int number = 0;
    for (const Flag& flag : changed_twice_flags(open_.survey())) {
        items.append({QStringLiteral("twice/%1").arg(number++),
                      {},
                      {},
                      QStringLiteral("twice"),
                      truehang::shown(worded(flag_word(flag.severity))),
                      truehang::shown(flag.text),
                      flag.severity,
                      {}});
    }
    const VisitSummary& summary = open_.summary();
    const bool there = summary.confirmed_revision > 0 && summary.confirmed_revision == summary.revision;
    if (!there || summary.photos_confirmed < summary.photos) {
        const QString says =
            there ? tr("%1 of %2 photos are at the workroom.").arg(summary.photos_confirmed).arg(summary.photos)
                  : tr("The workroom hasn’t confirmed this visit: it stands on this phone alone.");
        items.append(
            {QStringLiteral("send"), {}, {}, QStringLiteral("send"), tr("Not sent"), says, Severity::note, {}});
    }
}

/// What differs from what was signed is among the flags of its window.
void LeavingModel::addAgreement(QList<Item>& items) const {
    const auto add = [&](const QString& key, const QString& word, const QString& says) {
        items.append({key, {}, {}, QStringLiteral("sign"), word, says, Severity::decide, {}});
    };
    const Survey& survey = open_.survey();
    if (!survey.signed_off) {
        add(QStringLiteral("sign"), tr("Not signed"), tr("The client hasn’t agreed yet."));
        return;
    }
    for (const std::string& title : agreed_and_gone(survey)) {
        add(QStringLiteral("gone/") + truehang::shown(title), tr("Signed, and gone"),
            tr("%1 was taken out after the signing.").arg(truehang::shown(title)));
    }
}

void LeavingModel::open(const QString& item) {
    const auto found = std::ranges::find(all_, item, &Item::key);
    if (found == all_.end()) {
        return;
    }
    const Item chosen = *found;
    if (!chosen.caution.mark.empty()) {
        seen_.insert(chosen.caution);
        open_.keeping().post(
            this,
            [visit = open_.survey().id, mark = chosen.caution](Store& store) { return store.mark_seen(visit, mark); },
            [](const Result<Done>&) {});  // where it couldn’t be kept, the caution is shown once more
    }
    emit wanted(chosen.screen, chosen.window, chosen.station);
}

}  // namespace truehang
