// SPDX-License-Identifier: Apache-2.0
#include "open_visit.h"

#include "document/document.h"
#include "merge/merge.h"
#include "sheet/words.h"
#include "survey_keeping.h"
#include "whereabouts.h"
#include "writing.h"

#include <map>
#include <string>
#include <utility>
#include <vector>

namespace truehang {

namespace {

template <class Visit>
void for_each_window(Survey& survey, const Visit& visit) {
    for (Room& room : survey.rooms) {
        for (Window& window : room.windows) {
            visit(room, window);
        }
    }
}

}  // namespace

/// What is shown, what is on its way to the disk, and what was worked from it.
struct OpenVisit::Edit {
    QString says;
    std::function<bool(Survey&)> change;
    QString window;  // the only one that it changes; empty: it may change all
    AfterKeeping after;
    std::optional<MetRevision> met;  // somebody else's that comes into it
};

class OpenVisit::Parts {
public:
    Parts(OpenVisit& owner, SurveyKeeping& keeping) : place(owner, keeping) {}

    struct Failed {
        AfterKeeping after;
        QString fault;
    };
    Whereabouts place;
    Survey survey;
    bool open = false;
    QString window_id;
    UndoOffer offer;
    VisitSummary summary;

    int on_the_way = 0;          // edits posted whose answer hasn't come
    bool keep_whole = false;     // an edit failed: the next one writes all that differs, whatever window it is of
    std::vector<Failed> failed;  // to be reported once what is stored was read again
    bool turning_back = false;   // an undo or redo is under way: edits wait for what it gives
    std::vector<Edit> waiting;
    QString to_open;     // the visit that is being read
    bool stale = false;  // the store changed it by itself while edits were on the way
    int opening = 0;     // counts openings, so that answers of an earlier survey are known

    mutable std::map<QString, WindowFigures> worked;
    mutable std::optional<Figures> all_worked;

    /// Figures of a window rest on it, its room, the cloths and the rules: another window's edit leaves them.
    void forget_worked(const QString& window = {}) {
        if (window.isEmpty()) {
            worked.clear();
        } else {
            worked.erase(window);
        }
        all_worked.reset();
    }
};

OpenVisit::OpenVisit(SurveyKeeping& keeping, QObject* parent)
    : QObject(parent), keeping_(keeping), parts_(std::make_unique<Parts>(*this, keeping)) {}

OpenVisit::~OpenVisit() = default;

QString OpenVisit::visitId() const { return parts_->open ? shown(parts_->survey.id) : QString(); }
QString OpenVisit::windowId() const { return parts_->window_id; }
bool OpenVisit::holds(const QString& id) const { return id == visitId() || id == parts_->to_open; }
bool OpenVisit::isOpen() const { return parts_->open; }
const VisitSummary& OpenVisit::summary() const { return parts_->summary; }
const Survey& OpenVisit::survey() const { return parts_->survey; }
Whereabouts& OpenVisit::place() { return parts_->place; }
const Whereabouts& OpenVisit::place() const { return parts_->place; }
std::string OpenVisit::newId() const { return keeping_.newId(); }
std::string OpenVisit::now() const { return keeping_.now(); }

const Window* OpenVisit::window(const QString& id) const {
    const Window* found = nullptr;
    for_each_window(parts_->survey, [&](const Room&, const Window& window) {
        if (shown(window.id) == id) {
            found = &window;
        }
    });
    return found;
}

const Window* OpenVisit::window() const { return window(parts_->window_id); }

const Room* OpenVisit::roomOf(const QString& windowId) const {
    const Room* found = nullptr;
    for_each_window(parts_->survey, [&](const Room& room, const Window& window) {
        if (shown(window.id) == windowId) {
            found = &room;
        }
    });
    return found;
}

QString OpenVisit::titleOf(const QString& windowId) const {
    const Window* there = window(windowId);
    const Room* room = roomOf(windowId);
    return there && room ? shown(window_title(*room, *there)) : QString();
}

const WindowFigures& OpenVisit::figuresOf(const QString& windowId) const {
    const auto kept = parts_->worked.find(windowId);
    if (kept != parts_->worked.end()) {
        return kept->second;
    }
    const Window* there = window(windowId);
    const Room* room = roomOf(windowId);
    WindowFigures figures = there && room ? work_out_window(parts_->survey, *room, *there) : WindowFigures();
    return parts_->worked.insert_or_assign(windowId, std::move(figures)).first->second;
}

const Figures& OpenVisit::figures() const {
    if (!parts_->all_worked) {
        parts_->all_worked = work_out(parts_->survey);
    }
    return *parts_->all_worked;
}

WindowFigures OpenVisit::figuresWith(const QString& windowId, const Reading& reading) const {
    const Window* there = window(windowId);
    if (!there) {
        return {};
    }
    Window tried = *there;
    tried.readings.push_back(reading);
    return figuresWith(tried);
}

WindowFigures OpenVisit::figuresWith(const Window& tried) const {
    const Room* room = roomOf(shown(tried.id));
    return room ? work_out_window(parts_->survey, *room, tried) : WindowFigures{};
}

bool OpenVisit::edit(const QString& says, const std::function<bool(Survey&)>& change, AfterKeeping after) {
    return take({says, change, {}, std::move(after), {}});
}

bool OpenVisit::editWindow(const QString& says, const QString& windowId, const std::function<bool(Window&)>& change,
                           AfterKeeping after) {
    const auto change_one = [windowId, change](Survey& survey) {
        bool changed = false;
        for_each_window(survey, [&](Room&, Window& window) {
            if (shown(window.id) == windowId) {
                changed = change(window);
            }
        });
        return changed;
    };
    return take({says, change_one, windowId, std::move(after), {}});
}

bool OpenVisit::take(Edit edit) {
    if (!parts_->open) {
        return false;
    }
    if (parts_->turning_back) {
        parts_->waiting.push_back(std::move(edit));
        return true;
    }
    Survey changed_survey = parts_->survey;
    if (!edit.change(changed_survey)) {
        return false;
    }
    if (!edit.met) {
        settle_what_went(parts_->survey, changed_survey);
        if (changed_survey.changed_twice.size() != parts_->survey.changed_twice.size()) {
            edit.window.clear();  // it changed more than a window
        }
    }
    parts_->survey = std::move(changed_survey);
    parts_->forget_worked(edit.window);
    keep(edit);
    emit changed();
    return true;
}

void OpenVisit::keep(const Edit& edit) {
    const int opening = parts_->opening;
    ++parts_->on_the_way;
    const auto answer = [this, opening, says = edit.says, after = edit.after](const Result<Revision>& kept) {
        if (opening != parts_->opening) {
            if (after) {
                after(fault_of(kept));
            }
            return;
        }
        --parts_->on_the_way;
        if (kept) {
            emit wasKept(says);
        }
        settle(kept, after);
    };
    const Window* there = edit.window.isEmpty() ? nullptr : window(edit.window);
    if (there && !parts_->keep_whole) {
        keeping_.post(
            this,
            [visit = parts_->survey.id, room = roomOf(edit.window)->id, kept = *there,
             what = bytes(edit.says)](Store& store) { return store.keep_window(visit, room, kept, what); },
            answer);
    } else {
        keeping_.post(
            this,
            [survey = parts_->survey, what = bytes(edit.says), met = edit.met](Store& store) {
                return met ? store.keep_met(survey, what, *met) : store.keep(survey, what);
            },
            answer);
    }
}

void OpenVisit::bringTogether(const QString& says, const Survey& base, const MetRevision& met, AfterMeeting after) {
    const auto theirs = read_survey(met.bytes);
    if (!theirs) {
        after(tr("What the workroom has of this visit can’t be read."), true);
        return;
    }
    const auto answered = std::make_shared<bool>(false);
    const auto change = [base, theirs = *theirs, after, answered](Survey& survey) {
        auto merged = merge(base, survey, theirs);
        if (!merged) {
            *answered = true;
            after(tr("The two can’t be put together: %1").arg(shown(merged.error().front().text)), true);
            return false;
        }
        survey = std::move(merged).value();
        return true;
    };
    if (!take({says, change, {}, [after](const QString& fault) { after(fault, false); }, met}) && !*answered) {
        after(tr("The visit was closed meanwhile."), false);
    }
}

void OpenVisit::settle(const Result<Revision>& kept, const AfterKeeping& after) {
    if (kept) {
        parts_->survey.revision = *kept;
        if (after) {
            after({});
        }
        if (parts_->on_the_way == 0) {
            parts_->keep_whole = false;
        }
    } else {
        parts_->keep_whole = true;
        parts_->failed.push_back({after, fault_of(kept)});
    }
    if (parts_->on_the_way == 0) {
        if (!parts_->failed.empty() || std::exchange(parts_->stale, false)) {
            readAgain();
        } else {
            emit keptAll();
            askStanding();
        }
    }
}

void OpenVisit::readAgain() {
    const int opening = parts_->opening;
    keeping_.post(
        this, [visit = parts_->survey.id](Store& store) { return store.visit(visit); },
        [this, opening](Result<Survey> stored) {
            if (opening != parts_->opening) {
                return;
            }
            if (parts_->on_the_way > 0) {  // another edit is under way: its answer asks again
                parts_->stale = true;
                return;
            }
            if (stored) {
                parts_->survey = std::move(stored).value();
                parts_->forget_worked();
                parts_->keep_whole = false;
            }
            const auto failed = std::exchange(parts_->failed, {});
            emit changed();
            for (const auto& one : failed) {
                if (one.after) {
                    one.after(one.fault);
                }
                emit notKept(one.fault);
            }
            askStanding();
        });
}

void OpenVisit::askStanding() {
    using Answer = std::pair<UndoOffer, VisitSummary>;
    const int opening = parts_->opening;
    keeping_.post(
        this,
        [visit = parts_->survey.id](Store& store) -> Result<Answer> {
            const auto offer = store.undo_offer(visit);
            const auto summary = store.summary(visit);
            if (!offer || !summary) {
                return offer ? summary.error() : offer.error();
            }
            return Answer(*offer, *summary);
        },
        [this, opening](const Result<Answer>& answer) {
            if (opening == parts_->opening && answer) {
                parts_->offer = answer->first;
                parts_->summary = answer->second;
                emit standingChanged();
            }
        });
}

bool OpenVisit::canUndo() const { return parts_->open && parts_->offer.undo.has_value(); }
bool OpenVisit::canRedo() const { return parts_->open && parts_->offer.redo.has_value(); }
QString OpenVisit::undoSays() const { return shown(parts_->offer.undo.value_or("")); }
QString OpenVisit::redoSays() const { return shown(parts_->offer.redo.value_or("")); }

void OpenVisit::undo() { turnBack(&Store::undo); }
void OpenVisit::redo() { turnBack(&Store::redo); }

void OpenVisit::turnBack(Turn turn) {
    if (!parts_->open || parts_->turning_back) {
        return;
    }
    parts_->turning_back = true;
    const int opening = parts_->opening;
    using Turned = std::pair<Survey, std::optional<std::string>>;
    keeping_.post(
        this,
        [turn, visit = parts_->survey.id](Store& store) -> Result<Turned> {
            const auto what = (store.*turn)(visit);
            auto stored = what ? store.visit(visit) : Result<Survey>(what.error());
            return stored ? Result<Turned>(Turned(std::move(stored).value(), *what)) : Result<Turned>(stored.error());
        },
        [this, opening, turn](Result<Turned> stored) {
            if (opening != parts_->opening) {
                return;
            }
            parts_->turning_back = false;
            if (stored) {
                auto [survey, what] = std::move(stored).value();
                parts_->survey = std::move(survey);
                parts_->forget_worked();
                emit changed();
                if (what && turn == &Store::undo) {
                    emit wasUndone(shown(*what));
                } else if (what) {
                    emit wasDoneAgain(shown(*what));
                }
            } else {
                emit notKept(fault_of(stored));
            }
            const auto waiting = std::exchange(parts_->waiting, {});
            for (const auto& edit : waiting) {
                take(edit);
            }
            askStanding();
        });
}

void OpenVisit::openSurvey(const QString& id, std::function<void(const QString&)> after) {
    const int opening = ++parts_->opening;
    parts_->to_open = id;
    keeping_.post(
        this, [visit = bytes(id)](Store& store) { return store.visit(visit); },
        [this, opening, after = std::move(after)](Result<Survey> stored) {
            if (opening != parts_->opening) {
                return;
            }
            parts_->to_open.clear();
            if (stored) {
                show(std::move(stored).value());
                askStanding();
            }
            if (after) {
                after(fault_of(stored));
            }
        });
}

void OpenVisit::openNew(const Survey& survey, const QString& says, AfterKeeping after) {
    ++parts_->opening;
    show(survey);
    keep({says, {}, {}, std::move(after), {}});
}

void OpenVisit::show(std::optional<Survey> survey) {
    parts_->open = survey.has_value();
    parts_->survey = std::move(survey).value_or(Survey());
    parts_->window_id.clear();
    parts_->on_the_way = 0;
    parts_->keep_whole = parts_->turning_back = parts_->stale = false;
    parts_->to_open.clear();
    const auto failed = std::exchange(parts_->failed, {});
    const auto waiting = std::exchange(parts_->waiting, {});
    parts_->offer = {};
    parts_->summary = {};
    parts_->forget_worked();
    emit opened();
    emit windowChanged();
    emit changed();
    emit standingChanged();
    for (const auto& one : failed) {
        if (one.after) {
            one.after(one.fault);
        }
        emit notKept(one.fault);
    }
    for (const auto& edit : waiting) {
        const QString fault =
            tr("“%1” wasn’t kept: the visit was closed while an undo was on its way. Do it again.").arg(edit.says);
        if (edit.after) {
            edit.after(fault);
        }
        if (!edit.met) {  // what somebody else sent is met again by itself
            emit notKept(fault);
        }
    }
}

void OpenVisit::close() {
    ++parts_->opening;
    show(std::nullopt);
}

void OpenVisit::openWindow(const QString& id) {
    if (parts_->window_id != id) {
        parts_->window_id = id;
        emit windowChanged();
    }
}

}  // namespace truehang
