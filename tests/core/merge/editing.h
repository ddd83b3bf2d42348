// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "document/document.h"
#include "survey/survey.h"

#include <rapidcheck.h>

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <string>
#include <utility>
#include <vector>

// People who edit one visit by chance: a house of two rooms, and edits as an app makes them.

namespace truehang::editing {

/// One edit: which kind, and two numbers that it takes its places and values from.
struct Edit {
    int kind = 0, where = 0, what = 0;
};
inline std::ostream& operator<<(std::ostream& out, const Edit& edit) {
    return out << edit.kind << '/' << edit.where << '/' << edit.what;
}

inline Reading reading(std::string id, std::string station, double mm) {
    Reading one;
    one.id = std::move(id);
    one.station = std::move(station);
    one.value = Length::mm(mm);
    one.typed = fmt::format("{}", mm);
    return one;
}

inline Fabric fabric(std::string id) {
    Fabric one;
    one.id = std::move(id);
    one.width = Length::mm(1400.0);
    return one;
}

inline Obstruction obstruction(std::string id, double left) {
    Obstruction one;
    one.id = std::move(id);
    one.left = Length::mm(left);
    one.width = Length::mm(100.0);
    return one;
}

inline Layer layer(std::string id, std::string fabric) {
    Layer one;
    one.id = std::move(id);
    one.hardware.emplace().diameter = Length::mm(28.0);
    Treatment& treatment = one.treatment.emplace();
    treatment.heading = Word<Heading>(std::string("tab"));
    treatment.fabric = std::move(fabric);
    return one;
}

inline Window window(std::string id, bool layered) {
    Window one;
    one.id = std::move(id);
    one.shape = Word<Shape>(std::string("recess"));
    one.readings = {reading(one.id + "-r1", "opening.width.top", 1200.0), reading(one.id + "-r2", "below.left", 900.0)};
    one.not_taken = {{"opening.depth", "covered", {}}};
    one.obstructions = {obstruction(one.id + "-o1", 10.0), obstruction(one.id + "-o2", 20.0)};
    one.layered = layered;
    one.layers = {layer(layered ? "inner" : "", "f1")};
    if (layered) {
        one.layers.push_back(layer("outer", "f2"));
    }
    Photo photo;
    photo.sha256 = std::string(64, 'a');
    one.photos = {photo};
    return one;
}

inline Survey house() {
    Survey survey;
    survey.id = "house";
    survey.revision = 4;
    survey.title = "House";
    survey.client.emplace().name = "R. Oduya";
    survey.fabrics = {fabric("f1"), fabric("f2"), fabric("f3")};
    Room room;
    room.id = "hall";
    room.windows = {window("w1", false), window("w2", true), window("w3", false)};
    survey.rooms.push_back(room);
    room.id = "loft";
    room.windows = {window("w4", true)};
    survey.rooms.push_back(room);
    room.id = "stair";
    room.windows = {};
    survey.rooms.push_back(room);
    return survey;
}

template <class List>
auto& pick(List& list, int number) {
    return list[static_cast<std::size_t>(number) % list.size()];
}

/// Makes edits as one person; ids made by two persons are never the same, as UUIDs aren't.
class Person {
public:
    Person(Survey& survey, std::string name) : survey_(survey), name_(std::move(name)) {}

    void make(const Edit& edit) {
        edit_ = edit;
        const bool any_window =
            std::ranges::any_of(survey_.rooms, [](const Room& room) { return !room.windows.empty(); });
        const int kind = edit.kind % kinds;
        if (kind >= of_windows || survey_.rooms.empty() || !any_window) {
            of_visit(kind % (kinds - of_windows));
            return;
        }
        Room* room = &pick(survey_.rooms, edit.where);
        while (room->windows.empty()) {
            room = room == &survey_.rooms.back() ? &survey_.rooms.front() : room + 1;
        }
        of_window(kind, *room, pick(room->windows, edit.where / 3));
    }

    static constexpr int of_windows = 20;
    static constexpr int kinds = of_windows + 9;

private:
    std::string new_id(const char* what) { return fmt::format("{}-{}{:04}", name_, what, ++made_); }
    double mm() const { return 100.0 + 10.0 * (edit_.what % 5); }
    std::string word() const { return std::string(1, static_cast<char>('p' + edit_.what % 3)); }

    void of_window(int kind, Room& room, Window& window) {
        if (kind >= 9) {
            kind >= 18 ? of_reading(kind, window) : hang(kind, room, window);
            return;
        }
        switch (kind) {
            case 0:
            case 1:
            case 2:
                window.readings.push_back(reading(new_id("r"), "below.left", mm()));
                if (edit_.what % 2 == 0) {
                    window.readings.back().replaces = window.readings.front().id;
                }
                break;
            case 3:
                window.notes = edit_.what % 4 == 0 ? "" : word();
                break;
            case 4:
                window.not_taken = {{"opening.depth", word(), {}}};
                break;
            case 5:
                window.obstructions.push_back(obstruction(new_id("o"), mm()));
                break;
            case 6:
                if (!window.obstructions.empty()) {
                    pick(window.obstructions, edit_.where / 7).left = Length::mm(mm());
                }
                break;
            case 7:
                if (!window.obstructions.empty()) {
                    window.obstructions.erase(window.obstructions.begin());
                }
                break;
            case 8:
                say_of_photo(window);
                break;
            default:
                break;
        }
    }

    /// Another client may change a reading in place, or take it out, as this app never does.
    void of_reading(int kind, Window& window) {
        if (!window.readings.empty() && kind == 18) {
            pick(window.readings, edit_.where / 7).typed = word();
        } else if (!window.readings.empty()) {
            window.readings.erase(window.readings.begin() + edit_.where / 7 % std::ssize(window.readings));
        }
    }

    void hang(int kind, Room& room, Window& window) {
        Layer* layer = window.layers.empty() ? nullptr : &pick(window.layers, edit_.where / 7);
        switch (kind) {
            case 9:
                if (layer != nullptr && layer->treatment) {
                    layer->treatment->fullness = 1.0 + edit_.what % 3;
                    layer->treatment->lining = "f3";
                    fabric_there("f3");
                }
                break;
            case 10:
                if (layer != nullptr && layer->treatment) {
                    layer->treatment->length = Word<HemAt>(std::string(edit_.what % 2 == 0 ? "given" : "sill"));
                    layer->treatment->bottom = edit_.what % 2 == 0 ? std::optional(Length::mm(mm())) : std::nullopt;
                }
                break;
            case 11:
                if (layer != nullptr) {
                    layer->hardware.reset();
                }
                break;
            case 12:
                change_hardware(layer);
                break;
            case 13:
                in_layers(window);
                break;
            case 14:
                std::ranges::reverse(window.layers);
                break;
            case 15:
                move_window(room, window);
                break;
            case 16:
                room.windows.erase(room.windows.begin() + (&window - room.windows.data()));
                break;
            default:
                std::swap(room.windows.front(), window);
                break;
        }
    }

    void say_of_photo(Window& window) {
        if (!window.photos.empty()) {
            window.photos.front().caption = word();
            window.photos.front().marks.emplace_back().text = word();
        }
    }

    void change_hardware(Layer* layer) {
        if (layer != nullptr && layer->hardware) {
            layer->hardware->diameter = Length::mm(mm());
        } else if (layer != nullptr) {
            layer->hardware.emplace().projection = Length::mm(mm());
        }
    }

    void in_layers(Window& window) {
        if (!window.layered) {
            window.layered = true;
            for (Layer& one : window.layers) {
                one.id = new_id("l");
            }
        }
        if (window.layers.size() < 4) {
            fabric_there("f2");
            window.layers.insert(window.layers.begin(), layer(new_id("l"), "f2"));
        }
    }

    void move_window(Room& room, Window& window) {
        Room& to = pick(survey_.rooms, edit_.what);
        if (&to != &room) {
            to.windows.push_back(window);
            room.windows.erase(room.windows.begin() + (&window - room.windows.data()));
        }
    }

    void fabric_there(const std::string& id) {
        if (std::ranges::find(survey_.fabrics, id, &Fabric::id) == survey_.fabrics.end()) {
            survey_.fabrics.push_back(fabric(id));
        }
    }

    bool is_named(const std::string& id) const {
        return write_survey(survey_, false).find("\"fabric\":\"" + id) != std::string::npos ||
               write_survey(survey_, false).find("\"lining\":\"" + id) != std::string::npos;
    }

    void of_visit(int kind) {
        switch (kind) {
            case 0:
                survey_.title = word();
                break;
            case 1:
                survey_.site.emplace().latitude = 50.0 + edit_.what % 3;
                survey_.site->longitude = 1.0 + edit_.what % 3;
                break;
            case 2:
                survey_.rooms.emplace_back().id = new_id("room");
                survey_.rooms.back().windows.push_back(window(new_id("w"), false));
                fabric_there("f1");
                break;
            case 3:
                if (!survey_.rooms.empty()) {
                    survey_.rooms.erase(survey_.rooms.begin() + edit_.where % static_cast<int>(survey_.rooms.size()));
                }
                break;
            case 4:
                std::ranges::reverse(survey_.rooms);
                break;
            case 5:
                std::erase_if(survey_.fabrics, [&](const Fabric& one) { return !is_named(one.id) && edit_.what % 2; });
                break;
            case 6:
                if (!survey_.fabrics.empty()) {
                    pick(survey_.fabrics, edit_.where).width = Length::mm(1000.0 + mm());
                }
                break;
            case 7:
                survey_.extra = {{"later_key", fmt::format("{}", edit_.what)}};
                break;
            default:
                survey_.signed_off.emplace().by = word();
                break;
        }
    }

    Survey& survey_;
    std::string name_;
    Edit edit_;
    int made_ = 0;
};

inline std::vector<Edit> some_edits(int most) {
    // At full size from the first case on: small numbers would only ever make the first kinds of edit.
    const auto number = [](int below) { return rc::gen::resize(100, rc::gen::inRange(0, below)); };
    const auto edit = rc::gen::map(rc::gen::tuple(number(Person::kinds), number(1000), number(1000)),
                                   [](const std::tuple<int, int, int>& numbers) {
                                       const auto [kind, where, what] = numbers;
                                       return Edit{kind, where, what};
                                   });
    const int count = *number(most + 1);
    return *rc::gen::container<std::vector<Edit>>(static_cast<std::size_t>(count), edit);
}

/// What a person made of a survey by some edits.
inline Survey edited(const Survey& from, const std::string& name, int most = 6) {
    Survey survey = from;
    Person person(survey, name);
    for (const Edit& edit : some_edits(most)) {
        person.make(edit);
    }
    survey.revision = from.revision.value_or(0) + 1;
    return survey;
}

}  // namespace truehang::editing
