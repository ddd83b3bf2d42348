// SPDX-License-Identifier: Apache-2.0
#include "walk_model.h"

#include "adding_up.h"
#include "figure_rows.h"
#include "more_stations.h"
#include "open_visit.h"
#include "pole_up.h"
#include "reading_history.h"
#include "settings.h"
#include "survey/counted.h"
#include "survey/replaced.h"
#include "thread_mark.h"
#include "trade_words.h"
#include "units/angle_text.h"
#include "walk_rows.h"
#include "whereabouts.h"
#include "writing.h"

#include <algorithm>
#include <array>

namespace truehang {

using Stitch = thread_mark::Mark;

WalkModel::WalkModel(OpenVisit& open, const Settings& settings, QObject* parent)
    : QObject(parent),
      open_(open),
      settings_(settings),
      fractions_({"key", "says"}),
      stations_({"station", "says", "mark", "figure", "reason", "current", "asks", "isProposed", "spoken"}),
      reasons_({"word", "says"}),
      suspects_(suspect_roles()),
      history_(history_roles()) {
    reasons_.setRows(reason_rows());
    fractions_.setRows(fraction_rows(settings_.inchDenominator()));
    connect(&settings_, &Settings::changed, this,
            [this] { fractions_.setRows(fraction_rows(settings_.inchDenominator())); });
    connect(&open_, &OpenVisit::changed, this, &WalkModel::show);
    connect(&open_, &OpenVisit::standingChanged, this, &WalkModel::changed);
    connect(&open_, &OpenVisit::windowChanged, this, [this] {
        if (open_.windowId().isEmpty()) {
            openWindow({});
        }
    });
}

const Window* WalkModel::window() const { return open_.window(window_id_); }
QString WalkModel::windowId() const { return window_id_; }
QString WalkModel::title() const { return open_.titleOf(window_id_); }

const Station* WalkModel::here() const {
    return index_ >= 0 && index_ < count() ? &walk_[static_cast<std::size_t>(index_)] : nullptr;
}

QString WalkModel::station() const { return here() ? shown(here()->word) : QString(); }
QString WalkModel::says() const { return here() ? shown(station_words(*here())) : tr("Every station is done"); }
int WalkModel::index() const { return index_; }
int WalkModel::count() const { return static_cast<int>(walk_.size()); }
QString WalkModel::position() const { return here() ? tr("%1 of %2").arg(index_ + 1).arg(count()) : QString(); }
bool WalkModel::atEnd() const { return !here(); }
QString WalkModel::typed() const { return typed_; }
QString WalkModel::shownText() const { return without_unit(keys_on_their_way_ > 0 ? shown_text_ : typed_); }
bool WalkModel::shownIsKept() const { return shown_is_kept_; }
bool WalkModel::atAngle() const { return here() && here()->is_angle(); }
QString WalkModel::unit() const {
    if (atAngle()) {
        return degree_sign;
    }
    const auto read = read_length(bytes(typed_), unit_);  // a unit that was typed with the number counts
    return shown(word_of(read && read->unit_written ? read->unit : unit_));
}
QString WalkModel::decimalMark() const { return settings_.decimalMark(); }
QString WalkModel::between() const {
    const Window* there = window();
    return there && here() && there->shape.known() ? runs_between(*there->shape.known(), *here()) : QString();
}

QString WalkModel::line() const { return line_; }
QString WalkModel::lineKind() const { return line_kind_; }
QString WalkModel::notKept() const { return not_kept_; }
bool WalkModel::canBack() const { return index_ > 0; }
bool WalkModel::canUndo() const { return open_.canUndo(); }
bool WalkModel::canRedo() const { return open_.canRedo(); }
void WalkModel::undo() { open_.undo(); }
void WalkModel::redo() { open_.redo(); }

QString WalkModel::reason() const {
    const Window* there = window();
    return there ? reason_shown(*there, station()) : QString();
}

QString WalkModel::caution() const {
    if (window()) {
        for (const Flag& flag : open_.figuresOf(window_id_).flags) {
            if (flag.severity == Severity::caution && std::ranges::count(flag.stations, bytes(station())) > 0) {
                return shown(flag.text);
            }
        }
    }
    return {};
}

const Reading* WalkModel::keptReading(std::string_view station) const {
    const Window* there = window();
    if (!there || !there->shape.known()) {
        return nullptr;
    }
    const auto counted = counted_readings(*there, *there->shape.known());
    const auto* found = find_counted(counted, station);
    return found ? found->reading : nullptr;
}

bool WalkModel::isTaken(const Station& station) const {
    const Window* there = window();
    const Reading* kept = keptReading(station.word);
    return (kept && !is_proposed(*kept) && !isStillPlanned(station.word)) ||
           (there && !reason_shown(*there, shown(station.word)).isEmpty());
}

bool WalkModel::isStillPlanned(std::string_view station) const {
    const Window* there = window();
    return there && waits_to_be_taken_up(*there, station, keptReading(station));
}

QString WalkModel::saysOf(const QString& station) const {
    const Window* there = window();
    return there ? station_says(*there, bytes(station)) : station;
}

QString WalkModel::placeOf(const QString& station) const {
    return QStringLiteral("walk/%1/%2").arg(window_id_, station);
}

QString WalkModel::fieldTextOf(const Reading& reading) const {
    if (!reading.typed.empty() || (!reading.value && !reading.angle)) {
        return without_unit(shown(reading.typed));
    }
    return reading.angle ? shown(std::optional(reading.angle->degrees()))
                         : exactly(*reading.value, length_style(open_.survey()));
}

// ---- Opening and standing

void WalkModel::openWindow(const QString& windowId, const QString& station) {
    window_id_ = windowId;
    not_kept_.clear();
    put_off_.clear();
    differ_.reset();
    joined_.clear();
    closed_.clear();
    walkAnew();
    if (!station.isEmpty()) {
        joinWalk(station);
    }
    unit_ = length_unit(bytes(open_.place().unit())).value_or(entry_unit(open_.survey()));
    emit windowChanged();
    auto place = std::ranges::find(walk_, bytes(station), &Station::word);
    if (place == walk_.end()) {
        place = std::ranges::find_if(walk_, [this](const Station& s) { return !isTaken(s); });
    }
    standAt(static_cast<int>(place - walk_.begin()));
    show();
}

void WalkModel::standAt(int index) {
    index_ = std::clamp(index, 0, count());
    closed_.clear();
    take_again_ = false;
    const Station* at = here();
    const Reading* kept = at ? keptReading(at->word) : nullptr;
    const bool fills = kept && !isStillPlanned(at->word);
    unit_ = length_unit(bytes(open_.place().unit())).value_or(entry_unit(open_.survey()));
    const QString place = placeOf(station());
    fill(at && open_.place().has(place) ? open_.place().text(place) : fills ? fieldTextOf(*kept) : QString());
    shown_is_kept_ = fills && typed_ == fieldTextOf(*kept);
    if (shown_is_kept_) {
        if (const auto read = read_length(kept->typed, entry_unit(open_.survey())); read) {
            unit_ = read->unit;
        }
    } else if (at) {
        take_again_ = fills && typed_.isEmpty();
    }
    showLine();
    showHistory();
    showWithoutTape();
    open_.place().standAt(station());
    showStations();
    emit moved();
    emit changed();
}

void WalkModel::show() {
    const Window* there = window();
    if (!there) {
        if (!window_id_.isEmpty()) {
            openWindow({});  // taken out of the visit
        }
        return;
    }
    const QString stood = station();
    walkAnew();
    const auto place = std::ranges::find(walk_, bytes(stood), &Station::word);
    index_ = stood.isEmpty() ? count() : static_cast<int>(place - walk_.begin());
    const Reading* kept = here() ? keptReading(here()->word) : nullptr;
    if (shown_is_kept_ || (typed_.isEmpty() && !take_again_)) {  // nothing new is typed: show what is stored
        const bool fills = kept && !isStillPlanned(here()->word);
        fill(fills ? fieldTextOf(*kept) : QString());
        shown_is_kept_ = fills;
    }
    if (line_kind_ != QStringLiteral("fault")) {
        showLine();
    }
    showFlags();
    showStations();
    showHistory();
    showWithoutTape();
    emit changed();
}

void WalkModel::showStations() {
    const Window* there = window();
    QList<ShownRows::Row> rows;
    for (const Station& one : walk_) {
        const QString word = shown(one.word);
        const Reading* kept = keptReading(one.word);
        const QString why = there ? reason_shown(*there, word) : QString();
        const bool current = here() && here()->word == one.word;
        const bool proposed = kept && is_proposed(*kept);
        const bool planned = isStillPlanned(one.word);
        const bool done = (kept && !proposed && !planned && !being_kept_.contains(word)) || !why.isEmpty();
        const Stitch mark = done                                                ? Stitch::Kept
                            : current || proposed || being_kept_.contains(word) ? Stitch::UnderWay
                                                                                : Stitch::ToDo;
        QString figure = kept ? reading_text(*kept, length_style(open_.survey())) : QString();
        if (proposed) {
            figure = tr("%1, proposed").arg(figure);
        } else if (kept && kept->how && kept->how->is(How::estimated)) {
            figure = tr("about %1").arg(figure);
        } else if (kept && kept->how && kept->how->is(How::copied)) {
            figure = tr("%1, copied").arg(figure);
        } else if (planned) {
            figure = tr("%1, planned").arg(figure);
        }
        const QString state = kept ? figure : !why.isEmpty() ? tr("not taken: %1").arg(why) : tr("to measure");
        rows.append({word, shown(station_words(one)), QVariant::fromValue(mark), figure, why, current,
                     flagged_.contains(word), proposed,
                     QStringLiteral("%1: %2").arg(shown(station_words(one)), state)});
    }
    stations_.setRows(rows);
    more_.setRows(there ? more_rows(*there, walk_) : QList<ShownRows::Row>());
}

// ---- Typing

void WalkModel::pressKey(const QString& key) {
    if (!here()) {
        return;
    }
    QString text = shown_is_kept_ ? QString() : typed_;
    const bool fraction = key.size() > 1;
    if (fraction && !text.isEmpty() && !text.endsWith(QLatin1Char(' '))) {
        text += QLatin1Char(' ');
    }
    typeOver(text + key);
}

void WalkModel::rubOut() {
    if (here() && !typed_.isEmpty()) {
        typeOver(typed_.left(typed_.size() - 1).trimmed());
    }
}

void WalkModel::clearField() {
    if (here() && !typed_.isEmpty()) {
        typeOver({});
    }
}

void WalkModel::typeOver(const QString& text) {
    if (text.size() > 24) {  // no reading is longer; a key that is stuck ends here
        return;
    }
    const QString before = typed_;
    typed_ = text;
    const Reading* kept = keptReading(here()->word);
    if (shown_is_kept_) {
        unit_ = length_unit(bytes(open_.place().unit())).value_or(unit_);
    }
    shown_is_kept_ = false;
    take_again_ = kept && text.isEmpty();
    open_.place().setText(placeOf(station()), typed_, kept != nullptr);
    showOnceKept(before);
    weigh();
    emit changed();
}

void WalkModel::fill(const QString& text) {
    typed_ = text;
    keys_on_their_way_ = 0;
    ++field_;
}

void WalkModel::showOnceKept(const QString& before) {
    if (keys_on_their_way_++ == 0) {
        shown_text_ = before;
    }
    open_.place().onceKept([this, text = typed_, field = field_] {
        if (field == field_) {
            shown_text_ = text;
            --keys_on_their_way_;
            emit changed();
        }
    });
}

void WalkModel::cycleUnit() {
    if (atAngle()) {
        return;  // degrees are all there is
    }
    static constexpr std::array units{LengthUnit::mm, LengthUnit::cm, LengthUnit::m, LengthUnit::in};
    const auto at = std::ranges::find(units, unit_);
    unit_ = at + 1 == units.end() ? units.front() : *(at + 1);
    shown_is_kept_ = false;
    open_.place().setUnit(shown(word_of(unit_)));
    if (here()) {
        open_.place().setText(placeOf(station()), typed_);
        weigh();
    }
    emit changed();
}

Result<Reading> WalkModel::typedReading() const {
    Reading reading;
    reading.station = bytes(station());
    reading.typed = bytes(typed_.trimmed());
    if (atAngle()) {
        const auto read = read_angle(reading.typed);
        if (!read) {
            return read.error();
        }
        reading.angle = *read;
        reading.typed = bytes(without_unit(typed_.trimmed()) + degree_sign);
    } else {
        const auto read = read_length(bytes(typed_), unit_);
        if (!read) {
            return read.error();
        }
        reading.value = read->length;
        if (!read->unit_written) {
            reading.typed += ' ';
            reading.typed += word_of(read->unit);
        }
    }
    if (const Window* there = window()) {
        place_reading(*there, keptReading(here()->word), reading);
    }
    reading.taken_at = open_.now();
    return reading;
}

void WalkModel::weigh() {
    showWithoutTape();
    line_.clear();
    line_kind_ = QStringLiteral("quiet");
    if (typed_.isEmpty()) {
        return;
    }
    const auto read = typedReading();
    if (!read) {
        return;  // half a number is no fault; Next tells
    }
    Reading tried = *read;
    tried.id = "tried";
    const WindowFigures worked = open_.figuresWith(window_id_, tried);
    if (!read->value || !may_be_half_typed(worked, *here(), *read->value)) {
        const LineUnderNumber said = line_under_number(worked, *window(), *here(), length_style(open_.survey()));
        line_ = said.text;
        line_kind_ = said.kind;
    }
}

// ---- Keeping

bool WalkModel::next() {
    if (!here()) {
        return true;
    }
    if (typed_.trimmed().isEmpty() || shown_is_kept_) {
        open_.place().forget(placeOf(station()));
        standAt(index_ + 1);
        return true;
    }
    const auto read = typedReading();
    if (!read) {
        line_ = shown(read.error().text);
        line_kind_ = QStringLiteral("fault");
        emit changed();
        return false;
    }
    const QString closed =
        line_kind_ == QStringLiteral("adds-up") ? tr("%1: %2").arg(says(), within_sentence(line_)) : QString();
    emit taken(shown(read->typed));
    keepReading(*read);
    moveOn();
    closed_ = closed;
    showLine();
    emit changed();
    return true;
}

void WalkModel::keepReading(Reading reading) {
    reading.id = open_.newId();
    const QString at = station();
    const QString typed = typed_;
    const QString window_id = window_id_;
    being_kept_.insert(at);
    if (flagged_.contains(at)) {  // taken again: what it is part of is looked at anew
        put_off_.clear();
    }
    not_kept_.clear();
    open_.editWindow(
        QStringLiteral("%1: %2").arg(says(), shown(reading.typed)), window_id,
        [reading](Window& window) {
            std::erase_if(window.not_taken, [&](const NotTaken& n) { return n.station == reading.station; });
            window.readings.push_back(reading);
            static_cast<void>(choose_reading(window, reading.id));  // of two that stood, neither does now
            return true;
        },
        [this, window_id, at, typed](const QString& fault) { readingKept(window_id, at, typed, fault); });
}

void WalkModel::readingKept(const QString& windowId, const QString& station, const QString& typed,
                            const QString& fault) {
    const QString place = QStringLiteral("walk/%1/%2").arg(windowId, station);
    if (windowId != window_id_) {
        if (fault.isEmpty() && open_.place().text(place) == typed) {
            open_.place().forget(place);
        }
        return;
    }
    being_kept_.remove(station);
    if (fault.isEmpty()) {
        const bool types_again = this->station() == station && !shown_is_kept_;
        if (!types_again && open_.place().text(place) == typed) {
            open_.place().forget(place);
        }
        emit kept(station);
        showStations();
        emit changed();
        return;
    }
    open_.place().setText(place, typed, true);
    const auto failed = std::ranges::find(walk_, bytes(station), &Station::word);
    standAt(static_cast<int>(failed - walk_.begin()));
    not_kept_ = tr("%1 isn’t kept. %2").arg(saysOf(station), fault);
    line_ = not_kept_;
    line_kind_ = QStringLiteral("fault");
    emit changed();
}

void WalkModel::moveOn() {
    const auto from = static_cast<std::ptrdiff_t>(std::min(index_ + 1, count()));
    const auto open_station = [this](const Station& s) { return !isTaken(s); };
    auto next = std::find_if(walk_.begin() + from, walk_.end(), open_station);
    if (next == walk_.end()) {
        next = std::ranges::find_if(walk_, open_station);
    }
    standAt(static_cast<int>(next - walk_.begin()));
}

void WalkModel::back() { standAt(index_ - 1); }

void WalkModel::jumpTo(const QString& station) {
    const auto place = std::ranges::find(walk_, bytes(station), &Station::word);
    if (place != walk_.end()) {
        standAt(static_cast<int>(place - walk_.begin()));
        return;
    }
    joinWalk(station);
    const auto joined = std::ranges::find(walk_, bytes(station), &Station::word);
    if (joined != walk_.end()) {
        standAt(static_cast<int>(joined - walk_.begin()));
    }
}

void WalkModel::cantReach(const QString& reason) {
    if (!here() || reason.trimmed().isEmpty()) {
        return;
    }
    const NotTaken not_taken{bytes(station()), bytes(reason.trimmed()), {}};
    open_.place().forget(placeOf(station()));
    fill({});
    open_.editWindow(tr("%1: not taken").arg(says()), window_id_, [not_taken](Window& window) {
        std::erase_if(window.not_taken, [&](const NotTaken& n) { return n.station == not_taken.station; });
        window.not_taken.push_back(not_taken);
        return true;
    });
    moveOn();
}

}  // namespace truehang
