// SPDX-License-Identifier: Apache-2.0
#include "store/rows.h"

#include "document/document.h"
#include "document/json_reader.h"
#include "store/failures.h"

#include <algorithm>
#include <array>

namespace truehang {
namespace {

using Json = nlohmann::ordered_json;  // for the changes of an edit, which are the store's own

constexpr std::array<std::pair<std::string_view, RowKind>, 5> kind_words{{{"visit", RowKind::visit},
                                                                          {"room", RowKind::room},
                                                                          {"window", RowKind::window},
                                                                          {"reading", RowKind::reading},
                                                                          {"removed", RowKind::removed}}};

// The document's own reader and not another: it keeps numbers in unknown keys as they were written.
JsonValue parsed(std::string_view text) {
    auto read = read_json(text);
    if (!read) {
        throw Failure{damaged("a row", read.error().empty() ? "not JSON" : read.error().front().text)};
    }
    return std::move(read).value().root;
}

/// Takes a member out of an object; null where it isn't there.
JsonValue taken(JsonValue& object, std::string_view name) {
    const auto found = std::ranges::find(object.members, name, &std::pair<std::string, JsonValue>::first);
    if (found == object.members.end()) {
        return {};
    }
    JsonValue value = std::move(found->second);
    object.members.erase(found);
    return value;
}

std::string id_of(const JsonValue& object) {
    const JsonValue* const id = object.find("id");
    return id != nullptr ? id->text : std::string();
}

void add_readings(Rows& rows, const std::string& room, const std::string& window, const JsonValue& readings) {
    int place = 0;
    for (const JsonValue& reading : readings.items) {
        rows[{RowKind::reading, room, window, place}] = {place, json_text(reading)};
        ++place;
    }
}

void add_windows(Rows& rows, const std::string& room, JsonValue windows) {
    int place = 0;
    for (JsonValue& window : windows.items) {
        const std::string id = id_of(window);
        add_readings(rows, room, id, taken(window, "readings"));
        rows[{RowKind::window, room, id, 0}] = {place++, json_text(window)};
    }
}

/// The rows of one kind below `room` and `window`, in their places.
std::vector<std::pair<RowKey, RowState>> in_place(const Rows& rows, RowKind kind, const std::string& room,
                                                  const std::string& window) {
    std::vector<std::pair<RowKey, RowState>> found;
    for (auto row = rows.lower_bound({kind, room, window, 0}); row != rows.end() && row->first.kind == kind; ++row) {
        const RowKey& key = row->first;
        if ((kind != RowKind::room && key.room != room) || (kind == RowKind::reading && key.window != window)) {
            break;
        }
        found.emplace_back(*row);
    }
    std::stable_sort(found.begin(), found.end(),
                     [](const auto& a, const auto& b) { return a.second.place < b.second.place; });
    return found;
}

JsonValue list_of(std::vector<JsonValue> items) {
    JsonValue list;
    list.kind = JsonKind::array;
    list.items = std::move(items);
    return list;
}

JsonValue readings_of(const Rows& rows, const std::string& room, const std::string& window) {
    std::vector<JsonValue> readings;
    for (const auto& [key, state] : in_place(rows, RowKind::reading, room, window)) {
        readings.push_back(parsed(state.body));
    }
    return list_of(std::move(readings));
}

JsonValue windows_of(const Rows& rows, const std::string& room) {
    std::vector<JsonValue> windows;
    for (const auto& [key, state] : in_place(rows, RowKind::window, room, "")) {
        windows.push_back(parsed(state.body));
        windows.back().members.emplace_back("readings", readings_of(rows, room, key.window));
    }
    return list_of(std::move(windows));
}

Json state_json(const std::optional<RowState>& state) {
    return state ? Json{{"place", state->place}, {"body", state->body}} : Json(nullptr);
}

std::optional<RowState> state_of(const Json& json) {
    if (json.is_null()) {
        return std::nullopt;
    }
    return RowState{json.at("place").get<int>(), json.at("body").get<std::string>()};
}

std::string_view word_of(RowKind kind) {
    return std::find_if(kind_words.begin(), kind_words.end(),
                        [kind](const auto& entry) { return entry.second == kind; })
        ->first;
}

RowKind kind_of(std::string_view word) {
    const auto* const found =
        std::find_if(kind_words.begin(), kind_words.end(), [word](const auto& entry) { return entry.first == word; });
    if (found == kind_words.end()) {
        throw Failure{damaged("edit", "a row of no known kind")};
    }
    return found->second;
}

}  // namespace

std::string checked_document(const Survey& survey) {
    std::string document = write_survey(survey, false);
    const auto read_back = read_survey(document);
    if (!read_back) {
        const Faults& faults = read_back.error();
        throw Failure{{ErrorCode::unreadable, faults.empty() ? "" : faults.front().pointer,
                       faults.empty() ? "The survey can’t be read back." : faults.front().text}};
    }
    return document;
}

Rows rows_of(std::string_view document) {
    JsonValue survey = parsed(document);
    Rows rows;
    int place = 0;
    JsonValue rooms = taken(survey, "rooms");
    for (JsonValue& room : rooms.items) {
        const std::string id = id_of(room);
        add_windows(rows, id, taken(room, "windows"));
        rows[{RowKind::room, id, "", 0}] = {place++, json_text(room)};
    }
    static_cast<void>(taken(survey, "revision"));
    static_cast<void>(taken(survey, "parents"));
    rows[{RowKind::visit, "", "", 0}] = {0, json_text(survey)};
    return rows;
}

Survey survey_of(const Rows& rows, Revision revision) {
    const auto visit = rows.find({RowKind::visit, "", "", 0});
    if (visit == rows.end()) {
        throw Failure{damaged("visit_body", "a visit without its survey")};
    }
    JsonValue survey = parsed(visit->second.body);
    std::vector<JsonValue> rooms;
    for (const auto& [key, state] : in_place(rows, RowKind::room, "", "")) {
        rooms.push_back(parsed(state.body));
        rooms.back().members.emplace_back("windows", windows_of(rows, key.room));
    }
    survey.members.emplace_back("rooms", list_of(std::move(rooms)));
    auto read = read_survey(json_text(survey));
    if (!read) {
        throw Failure{damaged("visit", read.error().empty()
                                           ? "unreadable"
                                           : read.error().front().pointer + ": " + read.error().front().text)};
    }
    Survey made = std::move(read).value();
    made.revision = revision;
    return made;
}

RowChanges changes_between(const Rows& before, const Rows& after) {
    RowChanges changes;
    for (const auto& [key, state] : before) {
        const auto found = after.find(key);
        if (found == after.end()) {
            changes.push_back({key, state, std::nullopt});
        } else if (found->second != state) {
            changes.push_back({key, state, found->second});
        }
    }
    for (const auto& [key, state] : after) {
        if (!before.contains(key)) {
            changes.push_back({key, std::nullopt, state});
        }
    }
    return changes;
}

RowChanges reversed(RowChanges changes) {
    for (RowChange& change : changes) {
        std::swap(change.before, change.after);
    }
    return changes;
}

long long growth_of(const RowChanges& changes) {
    long long growth = 0;
    for (const RowChange& change : changes) {
        growth += change.after ? static_cast<long long>(change.after->body.size()) : 0;
        growth -= change.before ? static_cast<long long>(change.before->body.size()) : 0;
    }
    return growth;
}

std::string text_of(const RowChanges& changes) {
    Json list = Json::array();
    for (const auto& [key, before, after] : changes) {
        list.push_back({{"row", word_of(key.kind)},
                        {"room", key.room},
                        {"window", key.window},
                        {"place", key.place},
                        {"before", state_json(before)},
                        {"after", state_json(after)}});
    }
    return list.dump();
}

RowChanges changes_of(std::string_view text) {
    RowChanges changes;
    for (const Json& change : Json::parse(text)) {
        changes.push_back({{kind_of(change.at("row").get<std::string>()), change.at("room").get<std::string>(),
                            change.at("window").get<std::string>(), change.at("place").get<int>()},
                           state_of(change.at("before")),
                           state_of(change.at("after"))});
    }
    return changes;
}

}  // namespace truehang
