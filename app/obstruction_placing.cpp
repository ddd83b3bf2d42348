// SPDX-License-Identifier: Apache-2.0
#include "obstruction_placing.h"

#include "open_visit.h"
#include "trade_words.h"
#include "writing.h"

#include <algorithm>

namespace truehang {

namespace {

Obstruction* find(Window& window, const std::string& id) {
    const auto found = std::ranges::find(window.obstructions, id, &Obstruction::id);
    return found == window.obstructions.end() ? nullptr : &*found;
}

/// A length as the form shows it: what is kept is what can be read there.
Length as_shown(const Survey& survey, double mm) {
    const auto read = read_field_length(survey, shown(survey, Length::mm(mm)), true);
    return read && *read ? **read : Length::mm(mm);
}

}  // namespace

bool meets_something(const Flag& flag) { return !flag.obstruction.empty() && flag.code != "not-understood"; }

ObstructionPlacing::ObstructionPlacing(OpenVisit& open, QObject* parent) : QObject(parent), open_(open) {
    connect(&open_, &OpenVisit::windowChanged, this, &ObstructionPlacing::giveUp);
    connect(&open_, &OpenVisit::changed, this, &ObstructionPlacing::giveUp);
}

bool ObstructionPlacing::take(const QString& id) {
    giveUp();
    const Window* window = open_.window();
    if (!window) {
        return false;
    }
    Window trial = *window;
    const Obstruction* one = find(trial, bytes(id));
    if (!one) {
        return false;
    }
    id_ = one->id;
    start_ = now_ = box_of(*one);
    trial_ = std::move(trial);
    figures_ = open_.figuresOf(open_.windowId());
    return true;
}

void ObstructionPlacing::moveBy(double right_mm, double up_mm, double reach_mm) {
    if (!trial_) {
        return;
    }
    ObstructionBox wanted = start_;
    wanted.left += right_mm;
    wanted.bottom += up_mm;
    const SnapLines lines = snap_lines(*trial_, outline_of(*trial_, figures_), wanted, id_);
    const Placed placed = snapped(wanted, lines, reach_mm, entry_unit(open_.survey()));
    across_ = placed.across;
    level_ = placed.up;
    place(placed.left, placed.bottom);
}

void ObstructionPlacing::step(int right, int up) {
    if (!trial_) {
        return;
    }
    const double step = drag_step(entry_unit(open_.survey()));
    across_.reset();
    level_.reset();
    place(now_.left + right * step, std::max(0.0, now_.bottom + up * step));
}

void ObstructionPlacing::place(double left, double bottom) {
    Obstruction* one = find(*trial_, id_);
    one->left = as_shown(open_.survey(), left);
    one->bottom = as_shown(open_.survey(), bottom);
    now_ = box_of(*one);
    figures_ = open_.figuresWith(*trial_);
    emit moved();
}

void ObstructionPlacing::letGo() {
    if (!trial_) {
        return;
    }
    const Obstruction one = *find(*trial_, id_);
    trial_.reset();
    const QString what = one.kind ? says(*one.kind) : tr("Something");
    open_.editWindow(tr("%1 moved").arg(what), open_.windowId(), [one](Window& window) {
        Obstruction* there = find(window, one.id);
        if (!there || (there->left == one.left && there->bottom == one.bottom)) {
            return false;
        }
        there->left = one.left;
        there->bottom = one.bottom;
        return true;
    });
    giveUp();
}

void ObstructionPlacing::giveUp() {
    trial_.reset();
    across_.reset();
    level_.reset();
    emit moved();
}

const Obstruction* ObstructionPlacing::held(const QString& id) const {
    if (!trial_ || bytes(id) != id_) {
        return nullptr;
    }
    const auto found = std::ranges::find(trial_->obstructions, id_, &Obstruction::id);
    return found == trial_->obstructions.end() ? nullptr : &*found;
}

double ObstructionPlacing::right() const { return trial_ ? now_.left - start_.left : 0.0; }
double ObstructionPlacing::up() const { return trial_ ? now_.bottom - start_.bottom : 0.0; }

QString ObstructionPlacing::lies() const {
    QStringList on;
    for (const auto* line : {&level_, &across_}) {
        if (*line) {
            on.append(shown((*line)->what));
        }
    }
    return on.join(QStringLiteral(", "));
}

QStringList ObstructionPlacing::meeting() const {
    QStringList ids;
    if (!trial_ && !open_.window()) {
        return ids;
    }
    for (const Flag& flag : trial_ ? figures_.flags : open_.figuresOf(open_.windowId()).flags) {
        if (meets_something(flag)) {
            ids.append(shown(flag.obstruction));
        }
    }
    return ids;
}

}  // namespace truehang
