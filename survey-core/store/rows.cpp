// SPDX-License-Identifier: Apache-2.0
#include "store/rows.h"

#include "document/document.h"
#include "store/failures.h"

#include <algorithm>
#include <array>

namespace truehang {
namespace {

using Json = nlohmann::ordered_json;

constexpr std::array<std::pair<std::string_view, RowKind>, 5> kind_words{{{"visit", RowKind::visit},
                                                                          {"room", RowKind::room},
                                                                          {"window", RowKind::window},
                                                                          {"reading", RowKind::reading},
                                                                          {"removed", RowKind::removed}}};

/// Takes a list out of an object.
Json taken(Json& object, const char* list) {
    Json found = object.contains(list) ? std::move(object[list]) : Json::array();
    object.erase(list);
    return found;
}

void add_readings(Rows& rows, const std::string& room, const std::string& window, const Json& readings) {
    int place = 0;
    for (const Json& reading : readings) {
        rows[{RowKind::reading, room, window, place}] = {place, reading.dump()};
        ++place;
    }
}

void add_windows(Rows& rows, const std::string& room, Json windows) {
    int place = 0;
    for (Json& window : windows) {
        const auto id = window.at("id").get<std::string>();
        add_readings(rows, room, id, taken(window, "readings"));
        rows[{RowKind::window, room, id, 0}] = {place++, window.dump()};
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

Json readings_of(const Rows& rows, const std::string& room, const std::string& window) {
    Json readings = Json::array();
    for (const auto& [key, state] : in_place(rows, RowKind::reading, room, window)) {
        readings.push_back(Json::parse(state.body));
    }
    return readings;
}

Json windows_of(const Rows& rows, const std::string& room) {
    Json windows = Json::array();
    for (const auto& [key, state] : in_place(rows, RowKind::window, room, "")) {
        Json window = Json::parse(state.body);
        window["readings"] = readings_of(rows, room, key.window);
        windows.push_back(std::move(window));
    }
    return windows;
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
    std::string document;
    try {
        document = write_survey(survey, false);
    } catch (const nlohmann::json::exception& thrown) {
        throw Failure{{ErrorCode::unreadable, "", std::string("The survey can't be written: ") + thrown.what()}};
    }
    const auto read_back = read_survey(document);
    if (!read_back) {
        const Faults& faults = read_back.error();
        throw Failure{{ErrorCode::unreadable, faults.empty() ? "" : faults.front().pointer,
                       faults.empty() ? "The survey can't be read back." : faults.front().text}};
    }
    return document;
}

Rows rows_of(std::string_view document) {
    Json survey = Json::parse(document);
    Rows rows;
    int place = 0;
    for (Json& room : taken(survey, "rooms")) {
        const auto id = room.at("id").get<std::string>();
        add_windows(rows, id, taken(room, "windows"));
        rows[{RowKind::room, id, "", 0}] = {place++, room.dump()};
    }
    survey.erase("revision");
    rows[{RowKind::visit, "", "", 0}] = {0, survey.dump()};
    return rows;
}

Survey survey_of(const Rows& rows, Revision revision) {
    const auto visit = rows.find({RowKind::visit, "", "", 0});
    if (visit == rows.end()) {
        throw Failure{damaged("visit_body", "a visit without its survey")};
    }
    Json survey = Json::parse(visit->second.body);
    survey["revision"] = revision;
    Json rooms = Json::array();
    for (const auto& [key, state] : in_place(rows, RowKind::room, "", "")) {
        Json room = Json::parse(state.body);
        room["windows"] = windows_of(rows, key.room);
        rooms.push_back(std::move(room));
    }
    survey["rooms"] = std::move(rooms);
    auto read = read_survey(survey.dump());
    if (!read) {
        throw Failure{damaged("visit", read.error().empty()
                                           ? "unreadable"
                                           : read.error().front().pointer + ": " + read.error().front().text)};
    }
    return std::move(read).value();
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
