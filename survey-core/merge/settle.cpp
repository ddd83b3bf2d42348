// SPDX-License-Identifier: Apache-2.0
#include "merge/merge.h"

#include "merge/merging.h"
#include "merge/tree.h"
#include "units/pointer.h"

#include <algorithm>

namespace truehang {
namespace {

using namespace merging;

/// A place of the tree: the object or list that holds it, and its name or key there.
struct Place {
    JsonValue* holder = nullptr;  ///< null: there is no such place
    const Node* node = nullptr;   ///< of the holder
    std::string key;
};

JsonValue* child_of(JsonValue& holder, const Node& node, const std::string& key) {
    if (node.form == Form::list) {
        const auto keys = keys_of(holder, node.known_by);
        const auto found = std::ranges::find(keys, key);
        return found != keys.end() ? &holder.items[static_cast<std::size_t>(found - keys.begin())] : nullptr;
    }
    for (auto& [name, member] : holder.members) {
        if (name == key) {
            return &member;
        }
    }
    return nullptr;
}

Place place_of(JsonValue& tree, std::string_view at) {
    Place place{&tree, &survey_node(), ""};
    const auto steps = pointer_steps(at);
    for (std::size_t i = 0; i < steps.size(); ++i) {
        if (i > 0) {
            JsonValue* next = child_of(*place.holder, *place.node, place.key);
            if (next == nullptr) {
                return {};
            }
            place.node = place.node->form == Form::list ? place.node->item : part_named(*place.node, place.key).node;
            place.holder = next;
        }
        place.key = steps[i];
    }
    return place;
}

/// The room whose windows' order an entry is about; empty: another entry.
std::string room_of_order(std::string_view at) {
    const auto steps = pointer_steps(at);
    return steps.size() == 3 && steps[0] == "rooms" && steps[2] == "windows" ? steps[1] : "";
}

/// The list that an entry's order is about, the items of it, and what those are known by.
struct ListInOrder {
    JsonValue* list = nullptr;
    std::vector<std::size_t> places;
    Keys keys;
};

ListInOrder list_at(JsonValue& tree, std::string_view at) {
    ListInOrder found;
    const std::string room = room_of_order(at);
    const Place place = place_of(tree, room.empty() ? at : "/windows");
    JsonValue* list = place.holder != nullptr ? child_of(*place.holder, *place.node, place.key) : nullptr;
    const Node* node = list != nullptr ? part_named(*place.node, place.key).node : nullptr;
    if (node == nullptr || node->form != Form::list || place.node->form == Form::list) {
        return found;
    }
    found.list = list;
    const auto keys = keys_of(*list, node->known_by);
    for (std::size_t i = 0; i < keys.size(); ++i) {
        if (room.empty() || text_at(list->items[i], "room") == room) {
            found.places.push_back(i);
            found.keys.push_back(keys[i]);
        }
    }
    return found;
}

void put_in_order(const ListInOrder& found, const Keys& core) {
    // What the chosen order doesn't name stays as it stands.
    const Keys order = in_order(found.keys, core, found.keys);
    std::vector<JsonValue> items;
    for (const std::string& key : order) {
        const auto from = std::ranges::find(found.keys, key) - found.keys.begin();
        items.push_back(found.list->items[found.places[static_cast<std::size_t>(from)]]);
    }
    for (std::size_t i = 0; i < items.size(); ++i) {
        found.list->items[found.places[i]] = std::move(items[i]);
    }
}

void take_away(const Place& place) {
    if (place.node->form == Form::list) {
        const auto keys = keys_of(*place.holder, place.node->known_by);
        const auto found = std::ranges::find(keys, place.key);
        if (found != keys.end()) {
            place.holder->items.erase(place.holder->items.begin() + (found - keys.begin()));
        }
        return;
    }
    std::erase_if(place.holder->members, [&](const auto& member) { return member.first == place.key; });
}

/// The places that go with an item: its own, and of a room its windows’.
std::vector<std::string> going_with(const JsonValue& tree, const std::string& at) {
    std::vector<std::string> going{at};
    const auto steps = pointer_steps(at);
    const JsonValue* windows = steps.size() == 2 && steps[0] == "rooms" ? tree.find("windows") : nullptr;
    for (const JsonValue& window : windows != nullptr ? windows->items : std::vector<JsonValue>{}) {
        if (text_at(window, "room") == steps[1]) {
            going.push_back(pointer_to("/windows", text_at(window, "id")));
        }
    }
    return going;
}

bool lies_in(std::string_view at, const std::vector<std::string>& places) {
    return std::ranges::any_of(places, [&](const std::string& place) {
        return at.starts_with(place) && (at.size() == place.size() || at[place.size()] == '/');
    });
}

void put(const Place& place, JsonValue value) {
    if (JsonValue* there = child_of(*place.holder, *place.node, place.key)) {
        *there = std::move(value);
    } else if (place.node->form == Form::object) {
        place.holder->members.emplace_back(place.key, std::move(value));
    }
}

/// The items that a place lies in, itself among them: `/windows/w1` and `/windows/w1/readings/r1` of the latter.
std::vector<std::string> items_on_the_way(JsonValue& tree, const std::string& at) {
    std::vector<std::string> items;
    for (std::size_t end = at.find('/', 1);; end = at.find('/', end + 1)) {
        const std::string part = at.substr(0, end);
        const Place place = place_of(tree, part);
        if (place.holder == nullptr || child_of(*place.holder, *place.node, place.key) == nullptr) {
            return items;
        }
        if (place.node->form == Form::list) {
            items.push_back(part);
        }
        if (end == std::string::npos) {
            return items;
        }
    }
}

/// How many things a survey holds that can be taken out one by one.
std::size_t things_in(const Survey& survey) {
    std::size_t things = survey.fabrics.size() + survey.rooms.size();
    for (const Room& room : survey.rooms) {
        things += room.photos.size() + room.windows.size();
        for (const Window& window : room.windows) {
            things += window.readings.size() + window.not_taken.size() + window.obstructions.size() +
                      window.photos.size() + window.layers.size();
        }
    }
    return things;
}

const ChangedTwice* entry_at(const Survey& survey, std::string_view at) {
    const auto found = std::ranges::find(survey.changed_twice, at, &ChangedTwice::at);
    return found != survey.changed_twice.end() ? &*found : nullptr;
}

bool takes_out(const ChangedTwice& entry, std::size_t choice) {
    return entry.removed && choice + 1 == ways_to_settle(entry);
}

/// Does what was chosen to the tree; the places that are there no more.
std::vector<std::string> choose(JsonValue& tree, const ChangedTwice& entry, std::size_t choice) {
    const Place place = place_of(tree, entry.at);
    if (place.holder == nullptr) {
        return {};
    }
    if (takes_out(entry, choice)) {
        const auto going = going_with(tree, entry.at);
        for (const std::string& gone : going) {
            if (const Place one = place_of(tree, gone); one.holder != nullptr) {
                take_away(one);
            }
        }
        return going;
    }
    if (entry.values.empty()) {
        return {};
    }
    const Value& value = entry.values[choice];
    if (const ListInOrder list = list_at(tree, entry.at); list.list != nullptr) {
        put_in_order(list, value ? keys_of_text(*value) : Keys{});
    } else if (!value) {
        take_away(place);
    } else if (auto read = read_json(*value); read) {
        put(place, std::move(read).value().root);
    }
    return {};
}

}  // namespace

std::size_t ways_to_settle(const ChangedTwice& entry) {
    return std::max(entry.values.size(), std::size_t{entry.removed ? 1U : 0U}) + (entry.removed ? 1 : 0);
}

Result<Survey, Faults> settle(const Survey& survey, const Settling& settling) {
    const ChangedTwice* entry = entry_at(survey, settling.at);
    if (entry == nullptr || settling.choice >= ways_to_settle(*entry)) {
        return Faults{{settling.at, "Nothing is to be settled here, or not by this. Look at it again."}};
    }
    auto tree = tree_of(survey);
    if (!tree) {
        return std::move(tree).error();
    }
    const auto gone = choose(tree.value(), *entry, settling.choice);
    auto settled = survey_of_tree(*tree);
    if (!settled) {
        return settled;
    }
    settled.value().revision = survey.revision;
    settled.value().parents = survey.parents;
    settled.value().changed_twice = survey.changed_twice;
    std::erase_if(settled.value().changed_twice,
                  [&](const ChangedTwice& one) { return one.at == settling.at || lies_in(one.at, gone); });
    return settled;
}

void settle_what_went(const Survey& before, Survey& after) {
    if (after.changed_twice.empty() || things_in(after) >= things_in(before)) {
        return;  // most edits take nothing out, and a tree of each survey takes its time
    }
    auto tree_before = tree_of(before);
    auto tree_after = tree_of(after);
    if (!tree_before || !tree_after) {
        return;
    }
    std::erase_if(after.changed_twice, [&](const ChangedTwice& entry) {
        return items_on_the_way(tree_before.value(), entry.at).size() >
               items_on_the_way(tree_after.value(), entry.at).size();
    });
}

std::size_t standing_value(const Survey& survey, std::string_view at) {
    const ChangedTwice* entry = entry_at(survey, at);
    auto tree = tree_of(survey);
    if (entry == nullptr || !tree) {
        return 0;
    }
    const Place place = place_of(tree.value(), at);
    const ListInOrder list = list_at(tree.value(), at);
    const auto stands = [&](const Value& value) {
        if (list.list != nullptr) {
            const Keys core = value ? keys_of_text(*value) : Keys{};
            return !core.empty() && core.size() <= list.keys.size() &&
                   std::equal(core.begin(), core.end(), list.keys.begin());
        }
        const JsonValue* there = place.holder != nullptr ? child_of(*place.holder, *place.node, place.key) : nullptr;
        return value == (there != nullptr ? Value(json_text(*there)) : Value());
    };
    return static_cast<std::size_t>(std::ranges::find_if(entry->values, stands) - entry->values.begin());
}

}  // namespace truehang
