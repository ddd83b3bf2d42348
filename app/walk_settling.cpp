// SPDX-License-Identifier: Apache-2.0
#include "adding_up.h"
#include "open_visit.h"
#include "pole_up.h"
#include "reading_history.h"
#include "survey/counted.h"
#include "survey/replaced.h"
#include "walk_model.h"
#include "walk_rows.h"
#include "without_tape.h"
#include "writing.h"

#include <algorithm>
#include <array>

// The walk's part that settles what was read: what differs and what it should read, the station's history, the reading
// worth taking next, the level line; and the ways to go on without a tape.

namespace truehang {

namespace {

constexpr std::array<std::string_view, 3> level_stations{"level.left", "level.centre", "level.right"};

/// The next reading, where it is asked for because readings differ and not because one is missing.
const NextReading* settling(const WindowFigures& worked) {
    const bool missing =
        worked.next && std::ranges::any_of(worked.flags, [&](const Flag& flag) {
            return flag.code == "missing-reading" && std::ranges::count(flag.stations, worked.next->station) > 0;
        });
    return worked.next && !missing ? &*worked.next : nullptr;
}

bool is_level(std::string_view station) { return station.starts_with("level."); }

}  // namespace

// ---- Without a tape

std::optional<Reading> WalkModel::typedAnew() const {
    if (!here() || shown_is_kept_ || typed_.trimmed().isEmpty()) {
        return std::nullopt;
    }
    const auto read = typedReading();
    return read ? std::optional(*read) : std::nullopt;
}

void WalkModel::showWithoutTape() {
    const Window* there = window();
    without_tape_.setRows(here() && there
                              ? without_tape_rows(*there, *here(), typedAnew(), length_style(open_.survey()))
                              : QList<ShownRows::Row>());
}

void WalkModel::goOnWithout(const QString& way) {
    const Window* there = window();
    auto reading = here() && there ? without_tape_reading(*there, *here(), typedAnew(), way) : std::nullopt;
    if (!reading) {
        return;
    }
    place_reading(*there, keptReading(here()->word), *reading);
    reading->taken_at = open_.now();
    keepReading(std::move(*reading));
    moveOn();
}

// ---- Readings that differ

void WalkModel::showFlags() {
    const WindowFigures& worked = open_.figuresOf(window_id_);
    differ_.reset();
    flagged_.clear();
    for (const Flag& flag : worked.flags) {
        if (flag.severity == Severity::remeasure) {
            for (const auto& named : flag.stations) {
                flagged_.insert(shown(named));
            }
        }
        if (!differ_ && flag.code == "does-not-add-up" && !put_off_.contains(shown(flag.text))) {
            differ_ = flag;
        }
    }
    const NextReading* settles = settling(worked);
    again_station_ = differ_ && settles ? shown(settles->station) : QString();
    if (again_station_.isEmpty() && differ_) {
        again_station_ = !differ_->suspects.empty()   ? shown(differ_->suspects.front().station)
                         : !differ_->stations.empty() ? shown(differ_->stations.back())
                                                      : QString();
    }
    suspects_.setRows(differ_ ? suspect_rows(*differ_, *window(), length_style(open_.survey()))
                              : QList<ShownRows::Row>());
}

bool WalkModel::differs() const { return differ_.has_value(); }

QString WalkModel::differsTitle() const {
    const Window* there = window();
    return differ_ && there
               ? differ_words(open_.figuresOf(window_id_), *there, *differ_, length_style(open_.survey())).title
               : QString();
}

QString WalkModel::differsText() const {
    const Window* there = window();
    return differ_ && there
               ? differ_words(open_.figuresOf(window_id_), *there, *differ_, length_style(open_.survey())).text
               : QString();
}

QString WalkModel::noneOfThese() const { return differ_ ? none_of_these(*differ_) : QString(); }
QString WalkModel::againStation() const { return again_station_; }
QString WalkModel::againSays() const { return measureWords(again_station_); }

QString WalkModel::againWhy() const {
    const NextReading* settles = settling(open_.figuresOf(window_id_));
    return differ_ && settles && settles->why != differ_->text ? shown(settles->why) : QString();
}

QString WalkModel::measureWords(const QString& station) const {
    if (station.isEmpty()) {
        return {};
    }
    const Reading* kept = keptReading(bytes(station));
    const QString words = kept && !is_proposed(*kept) ? tr("Measure again: %1") : tr("Measure %1");
    return words.arg(within_sentence(saysOf(station)));
}

void WalkModel::goTakeAgain(const QString& station) {
    later();
    jumpTo(station);
    if (here() && !typed_.isEmpty()) {
        typeOver({});
    }
}

void WalkModel::takeHereAgain() { goTakeAgain(station()); }
void WalkModel::takeAgain() { goTakeAgain(again_station_.isEmpty() ? station() : again_station_); }

void WalkModel::later() {
    if (differ_) {
        put_off_.insert(shown(differ_->text));
        showFlags();
        emit changed();
    }
}

bool WalkModel::hasPutOff() const {
    return window() && std::ranges::any_of(open_.figuresOf(window_id_).flags, [this](const Flag& flag) {
               return flag.code == "does-not-add-up" && put_off_.contains(shown(flag.text));
           });
}

void WalkModel::lookAgain() {
    put_off_.clear();
    showFlags();
    emit changed();
}

void WalkModel::propose(const QString& suspect) {
    const Window* there = window();
    const Suspect* found = differ_ ? find_suspect(*differ_, suspect) : nullptr;
    const auto readings = there && found
                              ? proposed_readings(*there, *found, open_.now(), [this] { return open_.newId(); })
                              : std::vector<Reading>();
    if (readings.empty()) {
        return;
    }
    const QString says = saysOf(shown(readings.front().station));
    const Reading& first = readings.front();
    const QString value = first.angle ? exactly(*first.angle) : exactly(*first.value, length_style(open_.survey()));
    const QString window_id = window_id_;
    closed_ = tr("%1 stands as %2, proposed, until it is measured").arg(says, value);
    open_.editWindow(
        tr("%1: %2, proposed").arg(says, value), window_id,
        [readings](Window& window) {
            std::ranges::copy(readings, std::back_inserter(window.readings));
            return true;
        },
        [this, window_id, says](const QString& fault) {
            if (!fault.isEmpty() && window_id == window_id_) {
                closed_.clear();
                not_kept_ = tr("%1 isn’t kept. %2").arg(says, fault);
                emit changed();
            }
        });
}

// ---- What comes next

QString WalkModel::nextStation() const {
    const auto& next = open_.figuresOf(window_id_).next;
    return next ? shown(next->station) : QString();
}

QString WalkModel::nextSays() const { return measureWords(nextStation()); }

QString WalkModel::nextWhy() const {
    const auto& next = open_.figuresOf(window_id_).next;
    return next ? shown(next->why) : QString();
}

QString WalkModel::nothingMore() const {
    const bool has_gap = std::ranges::any_of(walk_, [this](const Station& one) { return !keptReading(one.word); });
    const QString why = shown(open_.figuresOf(window_id_).nothing_more);
    return has_gap && !why.isEmpty() ? tr("No figure needs another reading. These stand without one:") : why;
}

void WalkModel::takeNext() {
    if (const QString next = nextStation(); !next.isEmpty()) {
        goTakeAgain(next);
    }
}

// ---- A station's readings

void WalkModel::showHistory() {
    const Window* there = window();
    history_.setRows(there && here() ? history_rows(*there, std::string(here()->word), length_style(open_.survey()))
                                     : QList<ShownRows::Row>());
}

QString WalkModel::hereAgainSays() const { return measureWords(station()); }

bool WalkModel::hereTwice() const {
    const Window* there = window();
    return there != nullptr && !contenders(*there, bytes(station())).empty();
}
bool WalkModel::hasEarlier() const { return history_.count() > 1; }

void WalkModel::showLine() {
    line_.clear();
    line_kind_ = QStringLiteral("quiet");
    const Reading* kept = here() ? keptReading(here()->word) : nullptr;
    if (shown_is_kept_ && kept) {
        const bool proposed = is_proposed(*kept);
        const LineUnderNumber said =
            proposed ? LineUnderNumber{tr("Proposed: no tape has confirmed it yet"), QStringLiteral("proposed")}
                     : line_under_number(open_.figuresOf(window_id_), *window(), *here(), length_style(open_.survey()));
        line_ = said.text;
        line_kind_ = said.kind;
    } else if (typed_.isEmpty() && closed_.isEmpty() && kept && isStillPlanned(here()->word)) {
        line_ =
            tr("It is up: measure it as it hangs. Planned: %1").arg(reading_text(*kept, length_style(open_.survey())));
    } else if (typed_.isEmpty()) {
        line_ = closed_;
        line_kind_ = closed_.isEmpty() ? QStringLiteral("quiet") : QStringLiteral("adds-up");
    } else {
        weigh();
    }
}

// ---- Stations beyond those that the walk asks for

void WalkModel::walkAnew() {
    const Window* there = window();
    walk_ = there ? walk_of(*there) : std::vector<Station>();
    if (!there || !there->shape.known()) {
        return;
    }
    for (const Station& one : stations_of(*there->shape.known())) {
        if (joined_.contains(shown(one.word)) && std::ranges::find(walk_, one.word, &Station::word) == walk_.end()) {
            walk_.push_back(one);
        }
    }
}

void WalkModel::joinWalk(const QString& station) {
    if (std::ranges::find(walk_, bytes(station), &Station::word) != walk_.end()) {
        return;
    }
    joined_.insert(station);
    if (is_level(bytes(station))) {
        for (const auto level : level_stations) {
            joined_.insert(shown(level));
        }
    }
    walkAnew();
}

QString WalkModel::levelWhy() const {
    if (!canTakeLevel()) {
        return {};
    }
    const WindowFigures& worked = open_.figuresOf(window_id_);
    if (worked.next && is_level(worked.next->station)) {
        return shown(worked.next->why);
    }
    const auto flag = std::ranges::find_if(worked.flags, [](const Flag& one) {
        return (one.code == "floor-not-level" || one.code == "sill-not-level") &&
               std::ranges::none_of(one.stations, is_level);
    });
    return flag == worked.flags.end() ? QString() : shown(flag->text);
}

bool WalkModel::canTakeLevel() const {
    const Window* there = window();
    return there && there->shape.known() && std::ranges::any_of(level_stations, [&](std::string_view level) {
               return find_station(*there->shape.known(), level) && !keptReading(level);
           });
}

void WalkModel::takeLevel() {
    for (const auto level : level_stations) {
        if (!keptReading(level)) {
            goTakeAgain(shown(level));
            return;
        }
    }
}

}  // namespace truehang
