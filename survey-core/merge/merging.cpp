// SPDX-License-Identifier: Apache-2.0
#include "merge/merging.h"

#include "merge/tree.h"

#include <algorithm>
#include <array>
#include <iterator>
#include <utility>

namespace truehang::merging {
namespace {

constexpr std::array<std::string_view, 4> fabric_keys{"fabric", "lining", "interlining", "second_lining"};

Value text_or_none(const JsonValue* node) { return node != nullptr ? Value(json_text(*node)) : std::nullopt; }

Removal removal_of(const Side& side, const std::string& at) {
    const ChangedTwice* entry = side.node != nullptr ? side.entry(at) : nullptr;
    return entry != nullptr && entry->removed ? Removal{true, entry->again} : Removal{};
}

/// Where one took out what another changed, or two settled it in different ways: told from the base's own entry.
Removal asked(const Removal& base) { return {true, base.removed && !base.again}; }

/// Of two that have the item.
Removal removal_of_both(const Sides& sides, const std::string& at) {
    const Removal base = removal_of(sides.base, at);
    const Removal ours = removal_of(sides.ours, at);
    const Removal theirs = removal_of(sides.theirs, at);
    if (ours == theirs || theirs == base) {
        return ours;
    }
    return ours == base ? theirs : asked(base);
}

std::map<std::string, const JsonValue*> by_key(const Side& side, KnownBy known_by) {
    std::map<std::string, const JsonValue*> items;
    if (side.node != nullptr) {
        const auto keys = keys_of(*side.node, known_by);
        for (std::size_t i = 0; i < keys.size(); ++i) {
            items.emplace(keys[i], &side.node->items[i]);
        }
    }
    return items;
}

Keys keys_in(const Side& side, KnownBy known_by) {
    return side.node != nullptr ? keys_of(*side.node, known_by) : Keys{};
}

/// The windows of each room, by id, in their order.
std::map<std::string, Keys> windows_by_room(const Side& side) {
    std::map<std::string, Keys> rooms;
    if (side.node != nullptr) {
        for (const JsonValue& window : side.node->items) {
            rooms[text_at(window, "room")].push_back(text_at(window, "id"));
        }
    }
    return rooms;
}

void add_fabrics(const JsonValue& value, std::set<std::string, std::less<>>& named) {
    for (const auto& [name, member] : value.members) {
        if (member.kind == JsonKind::string && std::ranges::find(fabric_keys, name) != fabric_keys.end()) {
            named.insert(member.text);
        }
        add_fabrics(member, named);
    }
    for (const JsonValue& item : value.items) {
        add_fabrics(item, named);
    }
}

}  // namespace

std::string text_of_keys(const Keys& keys) {
    std::string text = "[";
    for (const std::string& key : keys) {
        text += (text.size() > 1 ? "," : "") + json_string(key);
    }
    return text + "]";
}

Keys keys_of_text(const std::string& text) {
    Keys keys;
    if (const auto read = read_json(text); read && read->root.kind == JsonKind::array) {
        for (const JsonValue& item : read->root.items) {
            keys.push_back(item.text);
        }
    }
    return keys;
}

void Merging::keep_removal(const std::string& at, const Removal& removal) {
    if (removal.removed) {
        entries_[at].at = at;
        entries_[at].removed = true;
        entries_[at].again = removal.again;
    }
}

void Merging::keep_values(const std::string& at, const State& state) {
    if (state.all.size() < 2) {
        return;
    }
    ChangedTwice& entry = entries_[at];
    entry.at = at;
    entry.values.assign(state.all.begin(), state.all.end());
    entry.again = entry.again || state.again;  // a removal’s stands already
}

std::optional<JsonValue> Merging::value(const Sides& sides, const std::string& at) {
    const Value ours = text_or_none(sides.ours.node);
    const State state =
        joined(state_of(text_or_none(sides.base.node), sides.base.entry(at)), state_of(ours, sides.ours.entry(at)),
               state_of(text_or_none(sides.theirs.node), sides.theirs.entry(at)));
    keep_values(at, state);
    const JsonValue* standing = state.standing == ours ? sides.ours.node : sides.theirs.node;
    return standing != nullptr ? std::optional(*standing) : std::nullopt;
}

bool Merging::present(Sides& sides, const std::string& at, bool moved_or_named) {
    const bool there = sides.ours.node != nullptr;
    const bool both = there && sides.theirs.node != nullptr;
    Removal removal;
    if (both) {
        removal = removal_of_both(sides, at);
    } else if (sides.ours.node == sides.theirs.node) {
        return false;
    } else if (sides.base.node == nullptr) {
        removal = removal_of(there ? sides.ours : sides.theirs, at);
    } else {
        if (!moved_or_named && same_below(there ? sides.ours : sides.theirs, sides.base, at)) {
            return false;
        }
        removal = asked(removal_of(sides.base, at));
        (there ? sides.theirs : sides.ours) = sides.base;
    }
    keep_removal(at, removal);
    return true;
}

std::optional<JsonValue> Merging::node(const Node& node, const Sides& sides, const std::string& at,
                                       bool whole_where_new) {
    if (node.form == Form::list) {
        return list(node, sides, at);
    }
    const auto has_values = [&](const Side& side) {
        const ChangedTwice* entry = side.entry(at);
        return entry != nullptr && !entry->values.empty();
    };
    const bool whole = whole_where_new && (sides.base.node == nullptr || has_values(sides.base) ||
                                           has_values(sides.ours) || has_values(sides.theirs));
    if (node.form == Form::value || whole) {
        if (sides.ours.node != nullptr && sides.theirs.node != nullptr) {
            keep_removal(at, removal_of_both(sides, at));
        }
        return value(sides, at);
    }
    Sides within = sides;
    return present(within, at, false) ? std::optional(members(node, within, at)) : std::nullopt;
}

JsonValue Merging::members(const Node& node, const Sides& sides, const std::string& at, const Names& but) {
    Names names;
    for (const JsonValue* object : {sides.base.node, sides.ours.node, sides.theirs.node}) {
        if (object != nullptr) {
            std::ranges::transform(object->members, std::inserter(names, names.end()),
                                   [](const auto& member) { return member.first; });
        }
    }
    JsonValue object = object_of({});
    for (const std::string& name : names) {
        if (but.contains(name)) {
            continue;
        }
        const Part part = part_named(node, name);
        if (auto member = this->node(*part.node, sides.member(name), pointer_to(at, name), part.whole_where_new)) {
            object.members.emplace_back(name, std::move(*member));
        }
    }
    return object;
}

Merging::Items Merging::items(const Node& node, const Sides& sides, const std::string& at, const Kept& kept) {
    const auto base = by_key(sides.base, node.known_by);
    const auto ours = by_key(sides.ours, node.known_by);
    const auto theirs = by_key(sides.theirs, node.known_by);
    Names keys;
    for (const auto* items : {&ours, &theirs}) {
        std::ranges::transform(*items, std::inserter(keys, keys.end()), [](const auto& item) { return item.first; });
    }
    const auto item_of = [](const auto& items, const std::string& key) {
        const auto found = items.find(key);
        return found != items.end() ? found->second : nullptr;
    };
    Items merged;
    for (const std::string& key : keys) {
        Sides item{{item_of(base, key), sides.base.entries},
                   {item_of(ours, key), sides.ours.entries},
                   {item_of(theirs, key), sides.theirs.entries}};
        const std::string there = pointer_to(at, key);
        if (!present(item, there, kept.moved.contains(key) || kept.named.contains(key))) {
            continue;
        }
        if (node.item->form == Form::object) {
            merged.emplace(key, members(*node.item, item, there));
        } else if (auto whole = value(item, there)) {
            merged.emplace(key, std::move(*whole));
        }
    }
    return merged;
}

State Merging::order_state(const Side& side, const std::string& at, const Keys& base, const Keys& order) const {
    const Keys core = core_of(base, order);
    return state_of(core.empty() ? Value() : text_of_keys(core), side.entry(at));
}

Merging::Names Merging::moved(const Sides& sides, const std::string& at, const Orders& orders) const {
    Names names;
    for (const auto& [side, order] : {std::pair(&sides.ours, &orders.ours), std::pair(&sides.theirs, &orders.theirs)}) {
        const State state = order_state(*side, at, orders.base, *order);
        if (std::ranges::any_of(state.all, [](const Value& core) { return core.has_value(); })) {
            names.insert(order->begin(), order->end());
        }
    }
    return names;
}

Keys Merging::ordered(const Sides& sides, const std::string& at, const Orders& orders, const Keys& there) {
    const State state = joined(order_state(sides.base, at, orders.base, orders.base),
                               order_state(sides.ours, at, orders.base, orders.ours),
                               order_state(sides.theirs, at, orders.base, orders.theirs));
    // Each as it is among the items that are there.
    const auto among_these = [&](const Value& core) -> Value {
        const Keys keys = core ? keys_of_text(*core) : Keys{};
        const Keys shortest = core_of(orders.base, in_order(orders.base, keys, there));
        return shortest.empty() ? Value() : text_of_keys(shortest);
    };
    State here{among_these(state.standing), {}, state.again};
    for (const Value& core : state.all) {
        here.all.insert(among_these(core));
    }
    keep_values(at, here);
    return in_order(orders.base, here.standing ? keys_of_text(*here.standing) : Keys{}, there);
}

std::optional<JsonValue> Merging::list(const Node& node, const Sides& sides, const std::string& at,
                                       const Names& named) {
    const Orders orders{keys_in(sides.base, node.known_by), keys_in(sides.ours, node.known_by),
                        keys_in(sides.theirs, node.known_by)};
    Items merged = items(node, sides, at, {moved(sides, at, orders), named});
    Keys there;
    std::ranges::transform(merged, std::back_inserter(there), [](const auto& item) { return item.first; });
    JsonValue list = list_of({});
    for (const std::string& key : ordered(sides, at, orders, there)) {
        list.items.push_back(std::move(merged.at(key)));
    }
    return list.items.empty() ? std::nullopt : std::optional(std::move(list));
}

JsonValue Merging::windows(const Sides& sides) {
    auto base = windows_by_room(sides.base);
    auto ours = windows_by_room(sides.ours);
    auto theirs = windows_by_room(sides.theirs);
    const auto order_at = [](const std::string& room) { return pointer_to(pointer_to("/rooms", room), "windows"); };
    Names rooms;
    Kept kept;
    for (const auto* of : {&ours, &theirs}) {
        std::ranges::transform(*of, std::inserter(rooms, rooms.end()), [](const auto& room) { return room.first; });
    }
    for (const std::string& room : rooms) {
        kept.moved.merge(moved(sides, order_at(room), {base[room], ours[room], theirs[room]}));
    }
    const Node& list = *part_named(survey_node(), "windows").node;
    Items merged = items(list, sides, "/windows", kept);
    std::map<std::string, Keys> there;
    for (const auto& [id, window] : merged) {
        there[text_at(window, "room")].push_back(id);
    }
    JsonValue all = list_of({});
    for (const auto& [room, ids] : there) {
        for (const std::string& id : ordered(sides, order_at(room), {base[room], ours[room], theirs[room]}, ids)) {
            all.items.push_back(std::move(merged.at(id)));
        }
    }
    return all;
}

Merging::Names Merging::fabrics_named(const JsonValue& windows) const {
    Names named;
    add_fabrics(windows, named);
    for (const auto& [at, entry] : entries_) {
        const std::string key = at.substr(at.rfind('/') + 1);
        for (const Value& text : entry.values) {
            if (const auto read = text ? read_json(*text) : Faults{}; read) {
                JsonValue one = object_of({});
                one.members.emplace_back(key, read->root);
                add_fabrics(one, named);
            }
        }
    }
    return named;
}

Merging::Names Merging::rooms_named(const JsonValue& windows) const {
    Names named;
    for (const JsonValue& window : windows.items) {
        named.insert(text_at(window, "room"));
        const auto entry = entries_.find(pointer_to(pointer_to("/windows", text_at(window, "id")), "room"));
        for (const Value& room : entry != entries_.end() ? entry->second.values : std::vector<Value>{}) {
            if (const auto read = room ? read_json(*room) : Faults{}; read) {
                named.insert(read->root.text);
            }
        }
    }
    return named;
}

JsonValue Merging::survey(const Sides& sides) {
    JsonValue all = windows(sides.member("windows"));
    const auto part = [&](std::string_view name, const Names& named) {
        return list(*part_named(survey_node(), name).node, sides.member(name), pointer_to("", name), named)
            .value_or(list_of({}));
    };
    JsonValue rooms = part("rooms", rooms_named(all));
    JsonValue fabrics = part("fabrics", fabrics_named(all));
    JsonValue merged = members(survey_node(), sides, "", {"windows", "rooms", "fabrics"});
    merged.members.emplace_back("fabrics", std::move(fabrics));
    merged.members.emplace_back("rooms", std::move(rooms));
    merged.members.emplace_back("windows", std::move(all));
    return merged;
}

}  // namespace truehang::merging
