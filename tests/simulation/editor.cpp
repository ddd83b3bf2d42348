// SPDX-License-Identifier: Apache-2.0
#include "editor.h"

#include "merge/merge.h"
#include "protocol/digest.h"

#include <nlohmann/json.hpp>

namespace truehang::sync::simulation {
namespace {

struct Chosen {
    Room* room;
    std::size_t window;

    [[nodiscard]] Window& at() const { return room->windows[window]; }
};

std::optional<Chosen> choose_window(Survey& survey, const Below& below) {
    std::size_t all = 0;
    for (const auto& room : survey.rooms) {
        all += room.windows.size();
    }
    if (all == 0) {
        return std::nullopt;
    }
    auto at = below(all);
    for (auto& room : survey.rooms) {
        if (at < room.windows.size()) {
            return Chosen{&room, at};
        }
        at -= room.windows.size();
    }
    return std::nullopt;
}

Window window_of(const std::string& id) {
    Window window;
    window.id = id;
    window.shape = Word<Shape>(std::string("recess"));
    return window;
}

Edited add_window(Edited edited, const std::string& name, const Below& below) {
    edited.what = "window " + name;
    edited.visit.rooms[below(edited.visit.rooms.size())].windows.push_back(window_of(name));
    edited.happened = [name](Truth& truth) { truth.window(name); };
    return edited;
}

Edited read(Edited edited, const Chosen& chosen, const std::string& name) {
    Reading reading;
    reading.id = name;
    reading.station = "opening.width.top";
    reading.value = value_of(name);
    chosen.at().readings.push_back(reading);
    edited.what = "reading " + name + " in " + chosen.at().id;
    edited.happened = [name, window = chosen.at().id](Truth& truth) { truth.reading(window, name); };
    return edited;
}

Edited note(Edited edited, const Chosen& chosen, const std::string& name, const Survey& before) {
    const auto window = chosen.at().id;
    chosen.at().notes = name;
    edited.what = "note " + name + " in " + window;
    const auto seen = note_written_over(before, window);
    edited.happened = [window, name, seen](Truth& truth) { truth.note(window, name, seen); };
    return edited;
}

Edited photograph(Edited edited, const Chosen& chosen, const std::string& name, const Below& below) {
    std::string bytes = name;
    bytes.resize(std::array<std::size_t, 3>{200, 1500, 2300}[below(3)], 'x');
    Photo photo;
    photo.sha256 = hex(sha256(bytes));
    photo.media_type = "image/jpeg";
    photo.bytes = static_cast<long long>(bytes.size());
    chosen.at().photos.push_back(photo);
    edited.photos[photo.sha256] = bytes;
    edited.what = "photo " + name + " in " + chosen.at().id;
    edited.happened = [window = chosen.at().id, sha256 = photo.sha256](Truth& truth) { truth.photo(window, sha256); };
    return edited;
}

std::optional<Edited> take_out_reading(Edited edited, const Chosen& chosen, const Below& below) {
    auto& readings = chosen.at().readings;
    if (readings.empty()) {
        return std::nullopt;
    }
    const auto at = readings.begin() + static_cast<std::ptrdiff_t>(below(readings.size()));
    edited.what = "take out " + at->id;
    edited.happened = [id = at->id](Truth& truth) { truth.reading_taken_out(id); };
    readings.erase(at);
    return edited;
}

Edited take_out_window(Edited edited, const Chosen& chosen, const Survey& before) {
    const Window window = chosen.at();
    chosen.room->windows.erase(chosen.room->windows.begin() + static_cast<std::ptrdiff_t>(chosen.window));
    edited.what = "take out window " + window.id;
    edited.happened = [before, window](Truth& truth) { truth.window_taken_out(before, window); };
    return edited;
}

Edited move_window(Edited edited, const Chosen& chosen, const Below& below) {
    const Window window = chosen.at();
    chosen.room->windows.erase(chosen.room->windows.begin() + static_cast<std::ptrdiff_t>(chosen.window));
    edited.visit.rooms[below(edited.visit.rooms.size())].windows.push_back(window);
    edited.what = "move " + window.id;
    return edited;
}

std::optional<Edited> settle_one(Edited edited, const Survey& before, const Below& below, std::string& fault) {
    if (before.changed_twice.empty()) {
        return std::nullopt;
    }
    const auto& entry = before.changed_twice[below(before.changed_twice.size())];
    const auto choice = below(entry.removed ? 2 : entry.values.size());
    auto settled = settle(before, {entry.at, choice});
    if (!settled) {
        fault = "can’t settle " + entry.at + ": " + settled.error().front().text;
        return std::nullopt;
    }
    edited.visit = std::move(settled).value();
    edited.what = "settle " + entry.at + " to " + std::to_string(choice);
    constexpr std::string_view windows = "/windows/";
    const auto id = entry.at.substr(windows.size(), entry.at.find('/', windows.size()) - windows.size());
    if (entry.at == "/windows/" + id + "/notes") {
        const auto chosen = entry.values[choice] ? nlohmann::json::parse(*entry.values[choice]).get<std::string>() : "";
        edited.happened = [id, chosen, seen = notes_of(before, id)](Truth& truth) {
            truth.note_chosen(id, chosen, seen);
        };
    } else if (const auto reading = entry.at.find("/readings/"); reading != std::string::npos && entry.removed) {
        const auto name = entry.at.substr(reading + std::string_view("/readings/").size());
        edited.happened = [name, choice](Truth& truth) {
            choice == 0 ? truth.reading_kept(name) : truth.reading_taken_out(name);
        };
    } else if (entry.removed && choice == 1) {
        edited.happened = [before, id](Truth& truth) {
            for (const auto& room : before.rooms) {
                for (const auto& window : room.windows) {
                    if (window.id == id) {
                        truth.window_taken_out(before, window);
                    }
                }
            }
        };
    }
    return edited;
}

std::optional<Edited> any_edit(const Survey& visit, const std::string& name, const Below& below, std::string& fault) {
    Edited edited{visit, {}, [](Truth&) {}, ""};
    const auto kind = below(100);
    if (kind < 10) {
        if (auto settled = settle_one(edited, visit, below, fault); settled || !fault.empty()) {
            return settled;
        }
    }
    const auto chosen = choose_window(edited.visit, below);
    if (!chosen || kind >= 96) {
        return add_window(std::move(edited), name, below);
    }
    // `chosen` points into the visit that is edited, which moves with it: a vector’s elements stay where they are.
    if (kind >= 94) {
        return take_out_window(std::move(edited), *chosen, visit);
    }
    if (kind >= 90) {
        return move_window(std::move(edited), *chosen, below);
    }
    if (kind >= 80) {
        return photograph(std::move(edited), *chosen, name, below);
    }
    if (kind >= 72) {
        return take_out_reading(std::move(edited), *chosen, below);
    }
    return kind >= 50 ? note(std::move(edited), *chosen, name, visit) : read(std::move(edited), *chosen, name);
}

}  // namespace

Survey begun_visit() {
    Survey survey;
    survey.id = "01924f6a-7c00-7000-8000-0000000000b7";
    survey.title = "Net loft";
    survey.measured_at = "2026-03-14T10:00:00Z";
    for (const char* id : {"r1", "r2"}) {
        auto& room = survey.rooms.emplace_back();
        room.id = id;
        room.windows.push_back(window_of(std::string("w-") + id));
    }
    return survey;
}

Survey with_last_word(Survey visit, const std::string& word) {
    visit.rooms.front().name = word;
    return visit;
}

std::optional<Edited> edit_by_chance(const Survey& visit, const std::string& name, const Below& below,
                                     std::string& fault) {
    auto edited = any_edit(visit, name, below, fault);
    if (edited) {
        settle_what_went(visit, edited->visit);
    }
    return edited;
}

}  // namespace truehang::sync::simulation
