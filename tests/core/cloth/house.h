// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "figures/figures.h"

#include <map>
#include <string>

namespace truehang {

/// A house of one window for tests: every allowance that a published example doesn't name is put to nothing.
struct House {
    Survey survey;

    House() {
        survey.id = "test";
        survey.rooms.emplace_back();
        survey.rooms.front().id = "room";
        survey.rooms.front().young_children = false;
        survey.rooms.front().windows.emplace_back();
        window().id = "window";
        window().shape = Word<Shape>(Shape::recess);
        window().layers.emplace_back();
        window().layers.front().hardware.emplace();
        window().layers.front().treatment.emplace();
        treatment().length = Word<HemAt>(HemAt::given);
        treatment().bottom = Length();
    }

    Window& window() { return survey.rooms.front().windows.front(); }
    Hardware& hardware() { return *window().layers.front().hardware; }
    Treatment& treatment() { return *window().layers.front().treatment; }

    Fabric& fabric(const std::string& id, Length width) {
        survey.fabrics.emplace_back();
        survey.fabrics.back().id = id;
        survey.fabrics.back().width = width;
        return survey.fabrics.back();
    }

    House& rules(const std::map<std::string, double>& values) {
        for (const auto& [key, value] : values) {
            survey.rules.numbers[key] = value;
        }
        return *this;
    }

    /// No allowance at all but what the example then names.
    House& bare() {
        survey.rules.head_mm["pencil-pleat"] = 0;
        survey.rules.head_mm["eyelet"] = 0;
        return rules({{"side_turn_mm", 0},
                      {"seam_mm", 0},
                      {"hem_mm", 0},
                      {"fullness_slack", 0},
                      {"lining_hem_mm", 0},
                      {"lining_rise_mm", 0},
                      {"lining_head_mm", 0},
                      {"lining_inset_mm", 0},
                      {"lining_side_mm", 0},
                      {"hook_mm", 0},
                      {"ring_drop_mm", 0}});
    }

    House& read(const std::string& station, Length value) {
        Reading reading;
        reading.id = station;
        reading.station = station;
        reading.value = value;
        window().readings.push_back(reading);
        return *this;
    }

    /// A curtain of `heading` on a track `length` long, whose finished drop comes to `drop`.
    House& on_track(Heading heading, Length length, Length drop) {
        treatment().heading = Word<Heading>(heading);
        hardware().kind = Word<HardwareKind>(HardwareKind::track);
        hardware().length = length;
        return read("pole.floor", drop);
    }

    [[nodiscard]] WindowFigures figures() const { return work_out(survey).windows.front(); }
    [[nodiscard]] LayerFigures layer() const { return figures().layers.front(); }
    [[nodiscard]] std::vector<Order> orders() const { return work_out(survey).orders; }
};

inline bool has_flag(const WindowFigures& figures, std::string_view code) {
    for (const Flag& flag : figures.flags) {
        if (flag.code == code) {
            return true;
        }
    }
    return false;
}

constexpr double yard_mm = 914.4;

}  // namespace truehang
