// SPDX-License-Identifier: Apache-2.0
#include "visit_list.h"

#include "survey_keeping.h"
#include "writing.h"

#include <algorithm>
#include <array>
#include <chrono>
#include <utility>

namespace truehang {

namespace {

constexpr int page_length = 60;
constexpr int whole_bin = 1'000'000;  // emptying it asks about all that is in it
constexpr int counted_at_once = 20;
constexpr int looked_through_at_once = 5;
constexpr std::chrono::seconds before_looking_through{1};

struct StateWord {
    VisitState state;
    const char* word;
    const char* says;
};
constexpr std::array<StateWord, 5> state_words{
    {{VisitState::to_measure, "toMeasure", QT_TRANSLATE_NOOP("truehang::VisitList", "to measure")},
     {VisitState::measuring, "measuring", QT_TRANSLATE_NOOP("truehang::VisitList", "measuring")},
     {VisitState::to_send, "toSend", QT_TRANSLATE_NOOP("truehang::VisitList", "to send")},
     {VisitState::there, "there", QT_TRANSLATE_NOOP("truehang::VisitList", "at the workroom")},
     {VisitState::asked, "asked", QT_TRANSLATE_NOOP("truehang::VisitList", "the workroom asks")}}};

}  // namespace

VisitList::VisitList(SurveyKeeping& keeping, QObject* parent)
    : QObject(parent), keeping_(keeping), states_({"word", "says", "chosen"}) {
    shown_.on_wants_more = [this] { readMore(shown_); };
    removed_.on_wants_more = [this] { readMore(removed_); };
    rest_.setSingleShot(true);
    rest_.setInterval(before_looking_through);
    connect(&rest_, &QTimer::timeout, this, &VisitList::lookOn);
    showStates();
}

VisitsAsked VisitList::asked(const VisitRows& rows) const {
    VisitsAsked asked;
    asked.removed = &rows == &removed_;
    asked.most = asked.removed ? whole_bin : page_length;
    if (!asked.removed) {
        asked.words = bytes(search_);
        asked.state = state_;
    }
    return asked;
}

void VisitList::lookAtClock() {
    const std::string now = keeping_.now();
    shown_.setNow(now);
    removed_.setNow(now);
}

void VisitList::read() {
    lookAtClock();
    readInto(shown_, false);
    readInto(removed_, false);
    countOn();
    keeping_.post(
        this, [](Store& store) { return store.visits(VisitsAsked{.state = VisitState::asked, .most = 1}); },
        [this](const Result<VisitsPage>& page) {
            questions_ = page && !page->visits.empty();
            showStates();
        });
}

/// The list from its beginning; `anew`: the first page only, as something else is asked for.
void VisitList::readInto(VisitRows& rows, bool anew) {
    asking_ += &rows == &shown_ ? 1 : 0;
    VisitsAsked wanted = asked(rows);
    wanted.most = anew ? wanted.most : std::max(wanted.most, rows.count());
    keeping_.post(
        this, [wanted](Store& store) { return store.visits(wanted); },
        [this, &rows, asking = asking_](Result<VisitsPage> page) {
            if (!page) {
                emit faulty(fault_of(page));
            } else if (&rows == &removed_ || asking == asking_) {
                lookThrough(*page);
                rows.begin(std::move(page).value());
            }
        });
}

void VisitList::readMore(VisitRows& rows) {
    VisitsAsked wanted = asked(rows);
    wanted.from = rows.count();
    keeping_.post(
        this, [wanted](Store& store) { return store.visits(wanted); },
        [this, &rows, from = wanted.from, asking = asking_](Result<VisitsPage> page) {
            if (!page) {
                rows.fetchAgain();
                emit faulty(fault_of(page));
            } else if (asking == asking_ && from == rows.count()) {
                lookThrough(*page);
                rows.append(std::move(page).value());
            } else {
                rows.fetchAgain();
            }
        });
}

void VisitList::renew(const QString& visitId) {
    if (visitId.isEmpty()) {
        return;
    }
    for (VisitRows* rows : {&shown_, &removed_}) {
        VisitsAsked wanted = asked(*rows);
        wanted.id = bytes(visitId);
        keeping_.post(
            this, [wanted](Store& store) { return store.visits(wanted); },
            [rows, id = wanted.id, asking = asking_, this](const Result<VisitsPage>& page) {
                if (page && asking == asking_) {
                    rows->renew(id, page->visits);
                }
            });
    }
}

/// Visits of an earlier version of the program, a few at a time, so that edits go between.
void VisitList::countOn() {
    if (counting_) {
        return;
    }
    counting_ = true;
    keeping_.post(
        this, [](Store& store) { return store.count_windows(counted_at_once); },
        [this](const Result<int>& left) {
            counting_ = false;
            if (left && *left > 0) {
                counted_some_ = true;
                countOn();
            } else if (std::exchange(counted_some_, false) && state_) {
                readInto(shown_, true);
            }
        });
}

/// What is listed is read once, so that a visit that is damaged is told of before it is wanted; a while after it was
/// listed, so that it is seen first.
void VisitList::lookThrough(const VisitsPage& page) {
    for (const VisitSummary& visit : page.visits) {
        if (looked_through_.insert(visit.id).second) {
            to_look_through_.push_back(visit.id);
        }
    }
    rest_.start();
}

/// A few at a time, so that edits go between.
void VisitList::lookOn() {
    if (looking_ || to_look_through_.empty()) {
        return;
    }
    looking_ = true;
    std::vector<std::string> some;
    while (!to_look_through_.empty() && std::ssize(some) < looked_through_at_once) {
        some.push_back(std::move(to_look_through_.front()));
        to_look_through_.pop_front();
    }
    keeping_.post(
        this, [some](Store& store) { return store.unreadable(some); },
        [this](const Result<std::vector<std::string>>& unreadable) {
            looking_ = false;
            if (unreadable && !unreadable->empty()) {
                shown_.setUnreadable(*unreadable);
                removed_.setUnreadable(*unreadable);
            }
            lookOn();
        });
}

QString VisitList::binQuestion() const {
    const int count = removed_.count();
    if (count == 0) {
        return {};
    }
    QStringList unsent;
    for (int row = 0; row < count; ++row) {
        if (removed_.value(row, QStringLiteral("unsent")).toBool()) {
            unsent.append(removed_.value(row, QStringLiteral("title")).toString());
        }
    }
    const QString asked =
        count == 1 ? tr("Erase this visit for good? Its readings, photos and history leave this phone, and nothing "
                        "brings them back.")
                   : tr("Erase %1 visits for good? Their readings, photos and history leave this phone, and nothing "
                        "brings them back.")
                         .arg(count);
    return unsent.isEmpty() ? asked
                            : asked + QLatin1Char('\n') +
                                  tr("The workroom hasn’t confirmed: %1. This phone has the only copy.")
                                      .arg(unsent.join(QStringLiteral("; ")));
}

void VisitList::emptyBin(std::function<void(const QString&, const QStringList&)> then) {
    QStringList gone;
    for (int row = 0; row < removed_.count(); ++row) {
        gone.append(removed_.value(row, QStringLiteral("visitId")).toString());
    }
    keeping_.post(
        this,
        [gone](Store& store) -> Result<QStringList> {
            QStringList ids = gone;
            std::vector<std::string> visits;
            for (const QString& id : gone) {
                visits.push_back(bytes(id));
                if (const auto survey = store.visit(bytes(id)); survey) {
                    for (const Room& room : survey->rooms) {
                        for (const Window& window : room.windows) {
                            ids.append(truehang::shown(window.id));
                        }
                    }
                }
            }
            const auto erased = store.erase_visits(visits);
            return erased ? Result<QStringList>(ids) : Result<QStringList>(erased.error());
        },
        [this, then = std::move(then)](const Result<QStringList>& erased) {
            readInto(removed_, true);
            then(fault_of(erased), erased ? *erased : QStringList());
        });
}

void VisitList::setSearch(const QString& words) {
    search_ = words;
    readInto(shown_, true);
}

QString VisitList::narrowed() const {
    const auto* const found = std::ranges::find_if(state_words, [&](const StateWord& w) { return state_ == w.state; });
    return found == state_words.end() ? QString() : QString::fromLatin1(found->word);
}

void VisitList::setNarrowed(const QString& word) {
    const auto* const found =
        std::ranges::find_if(state_words, [&](const StateWord& w) { return word == QLatin1String(w.word); });
    state_ = found == state_words.end() ? std::nullopt : std::optional(found->state);
    showStates();
    readInto(shown_, true);
}

void VisitList::showStates() {
    QList<ShownRows::Row> rows;
    for (const auto& [state, word, says] : state_words) {
        if (state != VisitState::asked || questions_) {
            rows.append({QLatin1String(word), tr(says), state_ == state});
        }
    }
    states_.setRows(rows);
}

}  // namespace truehang
