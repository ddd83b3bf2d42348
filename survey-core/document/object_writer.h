// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "survey/survey.h"

#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace truehang {

/// JSON text as it is written, indented by two or on one line.
class JsonText {
public:
    explicit JsonText(bool pretty) : pretty_(pretty) {}

    void open(char bracket);
    void close(char bracket);
    /// The next value of the open list, or the next member of the open object.
    void item(std::string_view value);
    void member(std::string_view name, std::string_view value);
    /// A member or item whose value is opened next.
    void begin_member(std::string_view name);
    void begin_item();
    [[nodiscard]] std::string take() { return std::move(text_); }

private:
    void new_line();

    bool pretty_;
    std::string text_;
    std::vector<bool> filled_;  ///< for each open bracket, whether something stands in it
};

/// Writes one object's members in the order of the calls. A field at its default (an absent optional, an empty text or
/// list, zero) is written only where `extra` holds its key, as it stands there; `end` writes what else `extra` holds.
class ObjectWriter {
public:
    ObjectWriter(JsonText& out, const Extra& extra);

    void text(std::string_view key, const std::string& field);
    void text(std::string_view key, const std::optional<std::string>& field);
    /// A text that is written even where it is empty.
    void required_text(std::string_view key, std::string_view field);
    void number(std::string_view key, const std::optional<double>& field);
    void number(std::string_view key, double field);
    void whole(std::string_view key, const std::optional<long long>& field);
    void whole(std::string_view key, const std::optional<int>& field);
    void flag(std::string_view key, const std::optional<bool>& field);
    void length(std::string_view key, Length field);
    void length(std::string_view key, const std::optional<Length>& field);
    void angle(std::string_view key, const std::optional<Angle>& field);
    template <class E>
    void word(std::string_view key, const std::optional<Word<E>>& field) {
        field ? required_text(key, field->text()) : fall_back(key);
    }
    /// A list whose items `write_item(JsonText&, item)` writes after `begin_item`.
    template <class Items, class WriteItem>
    void list(std::string_view key, const Items& items, const WriteItem& write_item, bool always = false) {
        if (items.empty() && !always) {
            fall_back(key);
            return;
        }
        begin(key);
        out_.open('[');
        for (const auto& item : items) {
            write_item(out_, item);
        }
        out_.close(']');
    }
    /// A member that the caller opens next.
    void begin(std::string_view key);
    /// Writes the key as `extra` has it, if it has.
    void fall_back(std::string_view key);
    void end();

private:
    void raw(std::string_view key, std::string_view value);

    JsonText& out_;
    const Extra& extra_;
    std::vector<std::string> written_;
};

/// A cloth, and hardware, as an object of its own.
void write_fabric(JsonText& out, const Fabric& fabric);
void write_hardware(JsonText& out, const Hardware& hardware);

/// The house rules as members of an open object, `head_mm` last.
void write_rule_values(ObjectWriter& object, JsonText& out, const HouseRuleEntries& rules);
/// Their label and, below `rules`, their values.
void write_labelled_rules(ObjectWriter& object, JsonText& out, const HouseRuleEntries& rules);

}  // namespace truehang
