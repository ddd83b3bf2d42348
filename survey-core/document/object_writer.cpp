// SPDX-License-Identifier: Apache-2.0
#include "document/object_writer.h"

#include "document/json_reader.h"

#include <algorithm>

namespace truehang {

void JsonText::new_line() {
    if (pretty_) {
        text_ += '\n';
        text_.append(2 * filled_.size(), ' ');
    }
}

void JsonText::begin_item() {
    if (filled_.empty()) {
        return;
    }
    if (filled_.back()) {
        text_ += ',';
    }
    filled_.back() = true;
    new_line();
}

void JsonText::begin_member(std::string_view name) {
    begin_item();
    text_ += json_string(name);
    text_ += pretty_ ? ": " : ":";
}

void JsonText::open(char bracket) {
    text_ += bracket;
    filled_.push_back(false);
}

void JsonText::close(char bracket) {
    const bool filled = filled_.back();
    filled_.pop_back();
    if (filled) {
        new_line();
    }
    text_ += bracket;
}

void JsonText::item(std::string_view value) {
    begin_item();
    text_ += value;
}

void JsonText::member(std::string_view name, std::string_view value) {
    begin_member(name);
    text_ += value;
}

ObjectWriter::ObjectWriter(JsonText& out, const Extra& extra) : out_(out), extra_(extra) { out_.open('{'); }

void ObjectWriter::raw(std::string_view key, std::string_view value) {
    out_.member(key, value);
    written_.emplace_back(key);
}

void ObjectWriter::begin(std::string_view key) {
    out_.begin_member(key);
    written_.emplace_back(key);
}

void ObjectWriter::fall_back(std::string_view key) {
    const auto found = std::ranges::find(extra_, key, &Extra::value_type::first);
    if (found != extra_.end()) {
        raw(key, found->second);
    }
}

void ObjectWriter::text(std::string_view key, const std::string& field) {
    field.empty() ? fall_back(key) : raw(key, json_string(field));
}

void ObjectWriter::text(std::string_view key, const std::optional<std::string>& field) {
    field ? raw(key, json_string(*field)) : fall_back(key);
}

void ObjectWriter::required_text(std::string_view key, std::string_view field) { raw(key, json_string(field)); }

void ObjectWriter::number(std::string_view key, const std::optional<double>& field) {
    field ? raw(key, json_number(*field)) : fall_back(key);
}

void ObjectWriter::number(std::string_view key, double field) {
    field == 0.0 ? fall_back(key) : raw(key, json_number(field));
}

void ObjectWriter::whole(std::string_view key, const std::optional<long long>& field) {
    field ? raw(key, std::to_string(*field)) : fall_back(key);
}

void ObjectWriter::whole(std::string_view key, const std::optional<int>& field) {
    field ? raw(key, std::to_string(*field)) : fall_back(key);
}

void ObjectWriter::flag(std::string_view key, const std::optional<bool>& field) {
    field ? raw(key, *field ? "true" : "false") : fall_back(key);
}

void ObjectWriter::length(std::string_view key, Length field) { number(key, field.mm()); }

void ObjectWriter::length(std::string_view key, const std::optional<Length>& field) {
    field ? raw(key, json_number(field->mm())) : fall_back(key);
}

void ObjectWriter::angle(std::string_view key, const std::optional<Angle>& field) {
    field ? raw(key, json_number(field->degrees())) : fall_back(key);
}

void ObjectWriter::end() {
    for (const auto& [key, value] : extra_) {
        if (std::ranges::find(written_, key) == written_.end()) {
            out_.member(key, value);
        }
    }
    out_.close('}');
}

}  // namespace truehang
