// SPDX-License-Identifier: Apache-2.0
#include "document/object_reader.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace truehang {

void FaultList::add(std::string pointer, std::string text) {
    if (faults_.size() < most_faults) {
        faults_.push_back({std::move(pointer), std::move(text)});
    } else if (faults_.size() == most_faults) {
        faults_.push_back({"", fmt::format("There are more than {} faults; the rest isn’t listed.", most_faults)});
    }
}

std::string_view name_of(JsonKind kind) {
    switch (kind) {
        case JsonKind::null:
            return "null";
        case JsonKind::boolean:
            return "true or false";
        case JsonKind::number:
            return "a number";
        case JsonKind::string:
            return "a text";
        case JsonKind::object:
            return "an object";
        case JsonKind::array:
            return "a list";
    }
    return "";
}

Faults read_whole_document(std::string_view bytes, std::string_view what,
                           const std::function<void(ObjectReader&)>& read) {
    const auto tree = read_json(bytes);
    if (!tree) {
        return tree.error();
    }
    FaultList faults;
    for (const std::string& pointer : tree->repeated_keys) {
        faults.add(pointer, "This key stands twice in its object. Keep one of them.");
    }
    if (tree->root.kind != JsonKind::object) {
        faults.add("", fmt::format("{} must be an object, not {}.", what, name_of(tree->root.kind)));
        return faults.take();
    }
    ObjectReader reader(tree->root, "", faults);
    read(reader);
    return faults.take();
}

bool is_format(std::string_view format, std::string_view name) {
    if (!format.starts_with(name)) {
        return false;
    }
    const std::string_view minor = format.substr(name.size());
    return minor.empty() || (minor.size() > 1 && minor.front() == '.' &&
                             std::ranges::all_of(minor.substr(1), [](char c) { return c >= '0' && c <= '9'; }));
}

bool lies_within(double number, const NumberRange& range) {
    return (range.low_open ? number > range.low : number >= range.low) &&
           (range.high_open ? number < range.high : number <= range.high);
}

std::string says_range(double number, const NumberRange& range) {
    return fmt::format("{} lies outside its range: {} {}, {} {}.", json_number(number),
                       range.low_open ? "above" : "from", json_number(range.low), range.high_open ? "below" : "up to",
                       json_number(range.high));
}

ObjectReader::ObjectReader(const JsonValue& value, std::string pointer, FaultList& faults)
    : value_(value), pointer_(std::move(pointer)), faults_(faults) {}

const JsonValue* ObjectReader::take(std::string_view key, Presence presence) {
    taken_.emplace(key);
    const JsonValue* member = value_.find(key);
    if (member == nullptr && presence == Presence::required) {
        fault(key, fmt::format("The key {} is missing here; it is required.", json_string(key)));
    }
    return member;
}

const JsonValue* ObjectReader::take_kind(std::string_view key, JsonKind kind, Presence presence) {
    const JsonValue* member = take(key, presence);
    if (member != nullptr && member->kind != kind) {
        fault(key, fmt::format("{} must be {}, not {}.", json_string(key), name_of(kind), name_of(member->kind)));
        return nullptr;
    }
    return member;
}

std::optional<double> ObjectReader::take_number(std::string_view key, const NumberRange& range, Presence presence) {
    const JsonValue* member = take_kind(key, JsonKind::number, presence);
    if (member == nullptr) {
        return std::nullopt;
    }
    if (!lies_within(member->number, range)) {
        fault(key, says_range(member->number, range));
        return std::nullopt;
    }
    return member->number;
}

std::optional<double> ObjectReader::take_whole(std::string_view key, const NumberRange& range) {
    const auto number = take_number(key, range, Presence::optional);
    if (number && *number != std::trunc(*number)) {
        fault(key, fmt::format("{} must be a whole number, not {}.", json_string(key), json_number(*number)));
        return std::nullopt;
    }
    return number;
}

void ObjectReader::text(std::string_view key, std::string& field, Presence presence) {
    if (const JsonValue* member = take_kind(key, JsonKind::string, presence)) {
        field = member->text;
        if (field.empty()) {
            keep(key);
        }
    }
}

void ObjectReader::text(std::string_view key, std::optional<std::string>& field) {
    if (const JsonValue* member = take_kind(key, JsonKind::string, Presence::optional)) {
        field = member->text;
    }
}

void ObjectReader::id(std::string_view key, std::string& field, Presence presence) {
    const JsonValue* member = take_kind(key, JsonKind::string, presence);
    if (member == nullptr) {
        return;
    }
    field = member->text;
    if (field.empty()) {
        fault(key, fmt::format("{} must not be empty.", json_string(key)));
    }
}

void ObjectReader::time(std::string_view key, std::string& field) {
    const JsonValue* member = take_kind(key, JsonKind::string, Presence::optional);
    if (member == nullptr) {
        return;
    }
    if (!is_rfc3339(member->text)) {
        fault(key, "This time can’t be read. Write it as 2026-03-14T10:20:00+00:00 (RFC 3339, with its offset).");
        return;
    }
    field = member->text;
}

void ObjectReader::nullable_text(std::string_view key, std::optional<std::string>& field) {
    const JsonValue* member = value_.find(key);
    if (member != nullptr && member->kind == JsonKind::null) {
        taken_.emplace(key);
        keep(key);
        return;
    }
    text(key, field);
}

void ObjectReader::flag(std::string_view key, bool& field) {
    if (const JsonValue* member = take_kind(key, JsonKind::boolean, Presence::optional)) {
        field = member->truth;
        if (!field) {
            keep(key);
        }
    }
}

void ObjectReader::flag(std::string_view key, std::optional<bool>& field) {
    if (const JsonValue* member = take_kind(key, JsonKind::boolean, Presence::optional)) {
        field = member->truth;
    }
}

void ObjectReader::number(std::string_view key, double& field, const NumberRange& range) {
    if (const auto number = take_number(key, range, Presence::optional)) {
        field = *number;
        if (field == 0.0) {
            keep(key);
        }
    }
}

void ObjectReader::number(std::string_view key, std::optional<double>& field, const NumberRange& range) {
    if (const auto number = take_number(key, range, Presence::optional)) {
        field = *number;
    }
}

void ObjectReader::whole(std::string_view key, int& field, const NumberRange& range) {
    long long whole_number = field;
    whole(key, whole_number, range);
    field = static_cast<int>(whole_number);
}

void ObjectReader::whole(std::string_view key, long long& field, const NumberRange& range) {
    if (const auto number = take_whole(key, range)) {
        field = static_cast<long long>(*number);
        if (field == 0) {
            keep(key);
        }
    }
}

void ObjectReader::whole(std::string_view key, std::optional<long long>& field, const NumberRange& range) {
    if (const auto number = take_whole(key, range)) {
        field = static_cast<long long>(*number);
    }
}

void ObjectReader::whole(std::string_view key, std::optional<int>& field, const NumberRange& range) {
    if (const auto number = take_whole(key, range)) {
        field = static_cast<int>(*number);
    }
}

void ObjectReader::length(std::string_view key, Length& field, const NumberRange& range, Presence presence) {
    if (const auto number = take_number(key, range, presence)) {
        field = Length::mm(*number);
        if (*number == 0.0) {
            keep(key);
        }
    }
}

void ObjectReader::length(std::string_view key, std::optional<Length>& field, const NumberRange& range) {
    if (const auto number = take_number(key, range, Presence::optional)) {
        field = Length::mm(*number);
    }
}

void ObjectReader::angle(std::string_view key, std::optional<Angle>& field, const NumberRange& range) {
    if (const auto number = take_number(key, range, Presence::optional)) {
        field = Angle::degrees(*number);
    }
}

void ObjectReader::list(std::string_view key, std::size_t most, const ReadItem& read_item, Presence presence) {
    const JsonValue* member = take_kind(key, JsonKind::array, presence);
    if (member == nullptr) {
        return;
    }
    if (member->items.empty()) {
        keep(key);
    }
    if (member->items.size() > most) {
        fault(key, fmt::format("{} stand in this list; at most {} are read.", member->items.size(), most));
        return;
    }
    for (std::size_t i = 0; i < member->items.size(); ++i) {
        read_item(member->items[i], pointer_to(pointer(key), i));
    }
}

void ObjectReader::objects(std::string_view key, std::size_t most, const ReadObject& read_object, Presence presence) {
    const auto read_item = [&](const JsonValue& item, const std::string& where) {
        if (item.kind != JsonKind::object) {
            faults_.add(where, fmt::format("Here must stand an object, not {}.", name_of(item.kind)));
            return;
        }
        ObjectReader reader(item, where, faults_);
        read_object(reader);
    };
    list(key, most, read_item, presence);
}

bool ObjectReader::object(std::string_view key, const ReadObject& read_object) {
    const JsonValue* member = take_kind(key, JsonKind::object, Presence::optional);
    if (member == nullptr) {
        return false;
    }
    ObjectReader reader(*member, pointer(key), faults_);
    read_object(reader);
    return true;
}

bool ObjectReader::nullable_object(std::string_view key, const ReadObject& read_object) {
    const JsonValue* member = value_.find(key);
    if (member != nullptr && member->kind == JsonKind::null) {
        taken_.emplace(key);
        keep(key);
        return false;
    }
    return object(key, read_object);
}

void ObjectReader::keep(std::string_view key) { kept_.emplace(key); }

Extra ObjectReader::rest() const {
    Extra extra;
    for (const auto& [name, member] : value_.members) {
        if (!taken_.contains(name) || kept_.contains(name)) {
            extra.emplace_back(name, json_text(member));
        }
    }
    return extra;
}

}  // namespace truehang
