// SPDX-License-Identifier: Apache-2.0
#include "store_fixture.h"

#include <rapidcheck.h>
#include <rapidcheck/gtest.h>

// Random edits, undo, redo and restarts against a model that keeps whole documents in lists.

namespace truehang::testing {
namespace {

struct State {
    Survey survey;
    bool removed = false;
};

bool same(const State& a, const State& b) {
    return a.removed == b.removed && document_of(a.survey) == document_of(b.survey);
}

struct Model {
    State now;
    std::vector<State> done;    ///< states before each edit that can be undone
    std::vector<State> undone;  ///< states that can be redone
    int names = 0;

    std::string name(const std::string& of) { return "new-" + of + std::to_string(++names); }
    void edited(State after) {
        if (!same(now, after)) {
            done.push_back(std::move(now));
            undone.clear();
            now = std::move(after);
        }
    }
    bool turn(std::vector<State>& from, std::vector<State>& to) {
        if (from.empty()) {
            return false;
        }
        to.push_back(std::move(now));
        now = std::move(from.back());
        from.pop_back();
        return true;
    }
};

template <class Item>
Item& one_of(std::vector<Item>& items) {
    return items[*rc::gen::inRange<std::size_t>(0, items.size())];
}

void change_window(Window& window, Model& model) {
    switch (*rc::gen::inRange(0, 6)) {
        case 0:
        case 1:
            window.readings.push_back(reading(model.name("m"), "opening.width.top", *rc::gen::inRange(1, 5000)));
            break;
        case 2:
            if (!window.readings.empty()) {
                one_of(window.readings).extra.emplace_back(model.name("key"), "[1.50,null]");
            }
            break;
        case 3:
            if (!window.readings.empty()) {
                window.readings.erase(window.readings.begin() +
                                      *rc::gen::inRange<std::ptrdiff_t>(0, std::ssize(window.readings)));
            }
            break;
        case 4:
            window.notes = model.name("note ");
            break;
        default:
            window.not_taken.push_back({"below.left", model.name("reason "), {}});
            break;
    }
}

void change_rooms(Survey& survey, Model& model) {
    Room& room = one_of(survey.rooms);
    switch (*rc::gen::inRange(0, 6)) {
        case 0:
            room.windows.push_back(window(model.name("w")));
            break;
        case 1:
            if (!room.windows.empty()) {
                room.windows.erase(room.windows.begin() +
                                   *rc::gen::inRange<std::ptrdiff_t>(0, std::ssize(room.windows)));
            }
            break;
        case 2:
            std::reverse(room.windows.begin(), room.windows.end());
            break;
        case 3:
            survey.rooms.emplace_back();
            survey.rooms.back().id = model.name("r");
            break;
        case 4:
            std::reverse(survey.rooms.begin(), survey.rooms.end());
            if (survey.rooms.size() > 1) {
                survey.rooms.pop_back();
            }
            break;
        default:
            survey.title = model.name("title ");
            break;
    }
}

void edit_window(Store& store, Model& model) {
    Room& room = one_of(model.now.survey.rooms);
    if (room.windows.empty()) {
        return;
    }
    State after = model.now;
    const std::size_t at_room = static_cast<std::size_t>(&room - model.now.survey.rooms.data());
    Window& changed = one_of(after.survey.rooms[at_room].windows);
    change_window(changed, model);
    const auto kept = store.keep_window(after.survey.id, room.id, changed, "window");
    RC_LOG() << (kept ? "" : kept.error().where + ": " + kept.error().text);
    RC_ASSERT(kept.ok());
    model.edited(std::move(after));
}

void edit_survey(Store& store, Model& model) {
    State after = model.now;
    change_rooms(after.survey, model);
    const auto kept = store.keep(after.survey, "survey");
    RC_LOG() << (kept ? "" : kept.error().where + ": " + kept.error().text);
    RC_ASSERT(kept.ok());
    model.edited(std::move(after));
}

void remove_or_bring_back(Store& store, Model& model) {
    State after = model.now;
    after.removed = *rc::gen::arbitrary<bool>();
    const auto answered = after.removed ? store.remove_visit(after.survey.id) : store.bring_back(after.survey.id);
    RC_ASSERT(answered.ok());
    model.edited(std::move(after));
}

void undo_or_redo(Store& store, Model& model) {
    const bool undoing = *rc::gen::inRange(0, 3) > 0;
    const auto answer = undoing ? store.undo(model.now.survey.id) : store.redo(model.now.survey.id);
    RC_ASSERT(answer.ok());
    const bool expected = undoing ? model.turn(model.done, model.undone) : model.turn(model.undone, model.done);
    RC_ASSERT(answer->has_value() == expected);
}

void check(Store& store, const Model& model, Revision& last) {
    const auto stored = store.visit(model.now.survey.id);
    RC_ASSERT(stored.ok());
    RC_ASSERT(document_of(stored.value()) == document_of(model.now.survey));
    const auto summary = store.summary(model.now.survey.id);
    RC_ASSERT(summary.ok());
    RC_ASSERT(summary->removed == model.now.removed);
    RC_ASSERT(summary->revision >= last);
    last = summary->revision;
    const auto offer = store.undo_offer(model.now.survey.id);
    RC_ASSERT(offer->undo.has_value() == !model.done.empty());
    RC_ASSERT(offer->redo.has_value() == !model.undone.empty());
    const auto items = store.items_of(model.now.survey.id);
    RC_ASSERT(items->at(0).revision == last);
}

RC_GTEST_PROP(StoreModel, random_edits_undo_redo_and_restarts_agree_with_whole_documents_in_lists, ()) {
    const Folder folder;
    StoreSurroundings throwaway = surroundings();
    throwaway.survives_power_cut = false;  // for speed: nothing here is about the disk
    auto store = open_store(folder.path(), throwaway);
    Model model;
    model.now.survey = pilot_house();
    RC_ASSERT(store->keep(model.now.survey, "Visit made").ok());
    Revision last = 1;
    const int steps = *rc::gen::inRange(1, 40);
    for (int step = 0; step < steps; ++step) {
        const int turn = *rc::gen::inRange(0, 12);
        if (turn == 0) {
            store.reset();
            store = open_store(folder.path(), throwaway);
        } else if (turn == 1) {
            remove_or_bring_back(*store, model);
        } else if (turn <= 4) {
            edit_survey(*store, model);
        } else if (turn <= 7) {
            undo_or_redo(*store, model);
        } else {
            edit_window(*store, model);
        }
        check(*store, model, last);
    }
    while (!model.done.empty()) {
        RC_ASSERT(store->undo(model.now.survey.id).ok());
        model.turn(model.done, model.undone);
        check(*store, model, last);
    }
    RC_ASSERT(document_of(store->visit(model.now.survey.id).value()) == document_of(pilot_house()));
}

}  // namespace
}  // namespace truehang::testing
