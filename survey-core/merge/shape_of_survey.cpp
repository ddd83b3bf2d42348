// SPDX-License-Identifier: Apache-2.0
#include "merge/shape_of_survey.h"

#include "merge/tree.h"
#include "units/pointer.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <map>

namespace truehang::merging {
namespace {

constexpr Node value_node{};
constexpr Node contents_node{Form::list, KnownBy::content, &value_node, {}, {}};

constexpr std::array photo_parts{Part{"marks", &contents_node}};
constexpr Node photo_node{Form::object, KnownBy::content, nullptr, photo_parts, {}};
constexpr Node photos_node{Form::list, KnownBy::sha256, &photo_node, {}, {}};

constexpr std::array<std::string_view, 3> fabric_groups{"width_mm+selvedge_mm", "repeat_mm+match+repeat_across_mm",
                                                        "price_per_m+currency"};
constexpr Node fabric_node{Form::object, KnownBy::content, nullptr, {}, fabric_groups};
constexpr Node fabrics_node{Form::list, KnownBy::id, &fabric_node, {}, {}};

constexpr std::array<std::string_view, 1> obstruction_groups{"left_mm+width_mm+bottom_mm+height_mm+depth_mm"};
constexpr Node obstruction_node{Form::object, KnownBy::content, nullptr, {}, obstruction_groups};
constexpr Node obstructions_node{Form::list, KnownBy::id, &obstruction_node, {}, {}};

constexpr Node readings_node{Form::list, KnownBy::id, &value_node, {}, {}};
constexpr Node not_taken_item{Form::object, KnownBy::content, nullptr, {}, {}};
constexpr Node not_taken_node{Form::list, KnownBy::station, &not_taken_item, {}, {}};

constexpr std::array<std::string_view, 2> hardware_groups{"length_mm+left_mm", "brackets+bracket_at_mm"};
constexpr Node hardware_node{Form::object, KnownBy::content, nullptr, {}, hardware_groups};
constexpr std::array<std::string_view, 1> treatment_groups{"length+bottom_mm"};
constexpr Node treatment_node{Form::object, KnownBy::content, nullptr, {}, treatment_groups};
constexpr std::array layer_parts{Part{"hardware", &hardware_node, true}, Part{"treatment", &treatment_node, true}};
constexpr Node layer_node{Form::object, KnownBy::content, nullptr, layer_parts, {}};
constexpr Node layers_node{Form::list, KnownBy::place, &layer_node, {}, {}};

constexpr std::array<std::string_view, 1> outlook_groups{"glass_width_mm+glass_height_mm"};
constexpr Node taken_node{Form::list, KnownBy::id, &value_node, {}, {}};
constexpr std::array outlook_parts{Part{"bearings", &taken_node}, Part{"skyline", &taken_node}};
constexpr Node outlook_node{Form::object, KnownBy::content, nullptr, outlook_parts, outlook_groups};

constexpr std::array<std::string_view, 1> window_groups{"bearing_deg+bearing_from"};
constexpr std::array window_parts{
    Part{"readings", &readings_node}, Part{"not_taken", &not_taken_node}, Part{"obstructions", &obstructions_node},
    Part{"photos", &photos_node},     Part{"layers", &layers_node},       Part{"outlook", &outlook_node}};
constexpr Node whole_window{Form::object, KnownBy::content, nullptr, window_parts, window_groups};

constexpr std::array<std::string_view, 1> interior_groups{"width_mm+depth_mm+height_mm"};
constexpr Node interior_node{Form::object, KnownBy::content, nullptr, {}, interior_groups};
constexpr std::array room_parts{Part{"heat", &contents_node}, Part{"photos", &photos_node},
                                Part{"interior", &interior_node}};
constexpr Node whole_room{Form::object, KnownBy::content, nullptr, room_parts, {}};

constexpr Node client_node{Form::object, KnownBy::content, nullptr, {}, {}};
constexpr std::array<std::string_view, 1> site_groups{"latitude+longitude+accuracy_m+elevation_m"};
constexpr Node site_node{Form::object, KnownBy::content, nullptr, {}, site_groups};
constexpr Node rooms_node{Form::list, KnownBy::id, &whole_room, {}, {}};
constexpr Node windows_node{Form::list, KnownBy::id, &whole_window, {}, {}};
constexpr std::array survey_parts{Part{"client", &client_node}, Part{"site", &site_node},
                                  Part{"fabrics", &fabrics_node}, Part{"rooms", &rooms_node},
                                  Part{"windows", &windows_node}};
constexpr Node whole_survey{Form::object, KnownBy::content, nullptr, survey_parts, {}};

using Members = std::vector<std::pair<std::string, JsonValue>>;

std::optional<JsonValue> take_out(JsonValue& object, std::string_view name) {
    const auto found =
        std::ranges::find(object.members, name, [](const auto& member) -> const std::string& { return member.first; });
    if (found == object.members.end()) {
        return std::nullopt;
    }
    JsonValue value = std::move(found->second);
    object.members.erase(found);
    return value;
}

void sort_members(JsonValue& value) {
    std::ranges::sort(value.members, {}, [](const auto& member) -> const std::string& { return member.first; });
    for (auto& member : value.members) {
        sort_members(member.second);
    }
    for (JsonValue& item : value.items) {
        sort_members(item);
    }
}

/// The keys of `a+b+c`.
std::vector<std::string> keys_together(std::string_view group) {
    std::vector<std::string> keys;
    for (std::size_t from = 0; from <= group.size();) {
        const std::size_t to = std::min(group.find('+', from), group.size());
        keys.emplace_back(group.substr(from, to - from));
        from = to + 1;
    }
    return keys;
}

/// Puts keys that are changed together into one member each, in the node and below it.
void put_together(JsonValue& value, const Node& node) {
    for (JsonValue& item : value.items) {
        if (node.form == Form::list) {
            put_together(item, *node.item);
        }
    }
    for (const std::string_view group : node.together) {
        Members members;
        for (const std::string& key : keys_together(group)) {
            if (auto member = take_out(value, key)) {
                members.emplace_back(key, std::move(*member));
            }
        }
        if (!members.empty()) {
            value.members.emplace_back(group, object_of(std::move(members)));
        }
    }
    for (auto& [name, member] : value.members) {
        put_together(member, *part_named(node, name).node);
    }
    // An empty list says what no list says.
    std::erase_if(value.members, [&](const auto& member) {
        return member.second.items.empty() && part_named(node, member.first).node->form == Form::list;
    });
}

void take_apart(JsonValue& value, const Node& node) {
    for (JsonValue& item : value.items) {
        if (node.form == Form::list) {
            take_apart(item, *node.item);
        }
    }
    for (const std::string_view group : node.together) {
        if (auto member = take_out(value, group)) {
            std::ranges::move(member->members, std::back_inserter(value.members));
        }
    }
    for (auto& [name, member] : value.members) {
        take_apart(member, *part_named(node, name).node);
    }
}

bool is_null(const std::optional<JsonValue>& value) { return !value || value->kind == JsonKind::null; }

/// What hangs there as layers, `layered` beside them where the document has it so.
void hang_in_layers(JsonValue& window) {
    auto hardware = take_out(window, "hardware");
    auto treatment = take_out(window, "treatment");
    auto layers = take_out(window, "layers");
    if (layers) {
        for (JsonValue& layer : layers->items) {
            for (const char* key : {"hardware", "treatment"}) {
                auto part = take_out(layer, key);
                if (!is_null(part)) {
                    layer.members.emplace_back(key, std::move(*part));
                }
            }
        }
        JsonValue yes;
        yes.kind = JsonKind::boolean;
        yes.truth = true;
        window.members.emplace_back("layered", yes);
        window.members.emplace_back("layers", std::move(*layers));
        return;
    }
    Members single;
    if (!is_null(hardware)) {
        single.emplace_back("hardware", std::move(*hardware));
    }
    if (!is_null(treatment)) {
        single.emplace_back("treatment", std::move(*treatment));
    }
    if (!single.empty()) {
        window.members.emplace_back("layers", list_of({object_of(std::move(single))}));
    }
}

/// `layers`, or `hardware` and `treatment`; and the list that a window can't lack.
void as_written(JsonValue& window) {
    if (window.find("readings") == nullptr) {
        window.members.emplace_back("readings", list_of({}));
    }
    const bool asked = take_out(window, "layered").has_value();
    auto layers = take_out(window, "layers");
    const bool several =
        layers && (layers->items.size() > 1 || std::ranges::any_of(layers->items, [](const JsonValue& layer) {
                       return layer.find("id") != nullptr;
                   }));
    if (asked || several) {
        window.members.emplace_back("layers", layers ? std::move(*layers) : list_of({}));
    } else if (layers && !layers->items.empty()) {
        std::ranges::move(layers->items.front().members, std::back_inserter(window.members));
    }
}

/// The windows of all rooms, in their order, each with its `room`.
JsonValue windows_out_of(JsonValue& rooms) {
    std::vector<JsonValue> windows;
    for (JsonValue& room : rooms.items) {
        auto within = take_out(room, "windows");
        if (!within) {
            continue;
        }
        for (JsonValue& window : within->items) {
            hang_in_layers(window);
            window.members.emplace_back("room", text_of(text_at(room, "id")));
            windows.push_back(std::move(window));
        }
    }
    return list_of(std::move(windows));
}

/// A fault for each window whose room isn’t there.
Faults windows_into(JsonValue& rooms, JsonValue windows) {
    std::map<std::string, std::vector<JsonValue>> by_room;
    for (JsonValue& window : windows.items) {
        const auto room = take_out(window, "room");
        as_written(window);
        by_room[room ? room->text : ""].push_back(std::move(window));
    }
    for (JsonValue& room : rooms.items) {
        auto within = by_room.extract(text_at(room, "id"));
        room.members.emplace_back("windows", list_of(within ? std::move(within.mapped()) : std::vector<JsonValue>{}));
    }
    Faults faults;
    for (const auto& [room, homeless] : by_room) {
        for (const JsonValue& window : homeless) {
            faults.push_back({pointer_to(pointer_to("/windows", text_at(window, "id")), "room"),
                              "The room that this window would stand in is there no more. Choose another."});
        }
    }
    return faults;
}

}  // namespace

const Node& survey_node() { return whole_survey; }
const Node& room_node() { return whole_room; }
const Node& window_node() { return whole_window; }

Part part_named(const Node& object, std::string_view name) {
    const auto found = std::ranges::find(object.parts, name, &Part::name);
    return found != object.parts.end() ? *found : Part{name, &value_node, false};
}

Result<JsonValue, Faults> tree_of(const Survey& survey) {
    const std::string bytes = write_survey(survey, false);
    if (auto read = read_survey(bytes); !read) {
        return std::move(read).error();
    }
    auto read = read_json(bytes);
    JsonValue root = std::move(read.value().root);
    for (const char* apart : {"revision", "parents", "changed_twice"}) {
        take_out(root, apart);
    }
    auto rooms = take_out(root, "rooms").value_or(list_of({}));
    JsonValue windows = windows_out_of(rooms);
    root.members.emplace_back("rooms", std::move(rooms));
    root.members.emplace_back("windows", std::move(windows));
    put_together(root, whole_survey);
    sort_members(root);
    return root;
}

Result<Survey, Faults> survey_of_tree(const JsonValue& tree) {
    JsonValue root = tree;
    take_apart(root, whole_survey);
    auto windows = take_out(root, "windows").value_or(list_of({}));
    auto rooms = take_out(root, "rooms").value_or(list_of({}));
    if (Faults homeless = windows_into(rooms, std::move(windows)); !homeless.empty()) {
        return homeless;
    }
    root.members.emplace_back("rooms", std::move(rooms));
    if (root.find("fabrics") == nullptr) {
        root.members.emplace_back("fabrics", list_of({}));
    }
    return read_survey(json_text(root));
}

std::vector<std::string> keys_of(const JsonValue& list, KnownBy known_by) {
    std::vector<std::string> keys;
    std::map<std::string, int> met;
    for (const JsonValue& item : list.items) {
        const std::string_view name = known_by == KnownBy::sha256    ? "sha256"
                                      : known_by == KnownBy::station ? "station"
                                                                     : "id";
        std::string key = known_by == KnownBy::content ? json_text(item) : text_at(item, name);
        if (key.empty()) {
            key = known_by == KnownBy::place ? "" : json_text(item);
        }
        const int before = met[key]++;
        if (before > 0 || key.empty()) {
            key += fmt::format("#{}", before + 1);
        }
        keys.push_back(std::move(key));
    }
    return keys;
}

}  // namespace truehang::merging
