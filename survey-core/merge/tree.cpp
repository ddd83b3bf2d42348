// SPDX-License-Identifier: Apache-2.0
#include "merge/tree.h"

namespace truehang::merging {

JsonValue object_of(std::vector<std::pair<std::string, JsonValue>> members) {
    JsonValue value;
    value.kind = JsonKind::object;
    value.members = std::move(members);
    return value;
}

JsonValue list_of(std::vector<JsonValue> items) {
    JsonValue value;
    value.kind = JsonKind::array;
    value.items = std::move(items);
    return value;
}

JsonValue text_of(std::string text) {
    JsonValue value;
    value.kind = JsonKind::string;
    value.text = std::move(text);
    return value;
}

std::string text_at(const JsonValue& object, std::string_view name) {
    const JsonValue* member = object.find(name);
    return member != nullptr && member->kind == JsonKind::string ? member->text : std::string();
}

}  // namespace truehang::merging
