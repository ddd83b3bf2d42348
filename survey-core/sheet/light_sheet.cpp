// SPDX-License-Identifier: Apache-2.0
#include "sheet/light_sheet.h"

#include "sheet/paper.h"
#include "sheet/sheet_head.h"
#include "sheet/sun_drawing.h"
#include "units/saying.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

namespace truehang {
namespace {

struct Quarter {
    std::string_view name;
    std::array<int, 3> months;
};
constexpr std::array quarters{Quarter{to_say("Mar to May"), {2, 3, 4}}, Quarter{to_say("Jun to Aug"), {5, 6, 7}},
                              Quarter{to_say("Sep to Nov"), {8, 9, 10}}, Quarter{to_say("Dec to Feb"), {11, 0, 1}}};

double of_quarter(const HourTable& table, const Quarter& quarter) {
    return sum(table, quarter.months[0]) + sum(table, quarter.months[1]) + sum(table, quarter.months[2]);
}

class PanelWriter {
public:
    PanelWriter(const Room& room, const WindowLight& light, const SheetStyle& style)
        : room_(room), light_(light), style_(style) {}

    [[nodiscard]] LightPanel written_out() const {
        LightPanel panel{.facing = light_.facing.says,
                         .minds = minds(),
                         .sun = sun_block(),
                         .daylight = daylight_block(),
                         .advice = light_.advice,
                         .assumed = light_.assumed,
                         .wanted = light_.wanted};
        return panel;
    }

private:
    [[nodiscard]] std::string hours(double value) const { return number_text(std::round(value), 0, style_); }
    [[nodiscard]] std::string percent(double value) const { return number_text(value, 1, style_) + " %"; }
    static SheetMind mind(Severity severity, std::string text) {
        return {severity, shape_of(severity), worded(flag_word(severity)), std::move(text), "light"};
    }

    [[nodiscard]] std::vector<SheetMind> minds() const {
        std::vector<SheetMind> all;
        if (light_.facing.mind) {
            all.push_back(mind(Severity::decide, *light_.facing.mind));
        }
        for (const FacingTold& told : light_.facing.told) {
            for (const std::string& one : told.minds) {
                all.push_back(mind(told.bearing ? Severity::note : Severity::remeasure, told.says + ". " + one));
            }
        }
        return all;
    }

    [[nodiscard]] SheetBlock sun_block() const {
        SheetBlock block{.key = "sun", .title = say("Hours of possible sun")};
        if (!light_.hours) {
            return block;
        }
        block.columns = {"", say("on the glass"), say("on the cloth")};
        const auto add = [&](const std::string& name, const std::string& key, double glass, double cloth) {
            block.rows.push_back({{word_cell(name), figure_cell(hours(glass), "light." + key + ".glass_h"),
                                   figure_cell(hours(cloth), "light." + key + ".cloth_h")}});
        };
        add(say("The year"), "year", sum(light_.hours->on_glass), sum(light_.hours->on_cloth));
        for (std::size_t i = 0; i < quarters.size(); ++i) {
            add(worded(quarters[i].name), fmt::format("quarter.{}", i + 1),
                of_quarter(light_.hours->on_glass, quarters[i]), of_quarter(light_.hours->on_cloth, quarters[i]));
        }
        add_facets(block);
        block.note = sun_note();
        return block;
    }

    void add_facets(SheetBlock& block) const {
        for (std::size_t i = 0; light_.panes.size() > 1 && i < light_.panes.size(); ++i) {
            const Pane& pane = light_.panes[i];
            block.rows.push_back(
                {{word_cell(say("Facet {}, {}", i + 1, compass_word(pane.opening.bearing))),
                  figure_cell(hours(pane.hours_on_glass), fmt::format("light.facet.{}.glass_h", i + 1)),
                  word_cell("")}});
        }
    }

    [[nodiscard]] std::string sun_note() const {
        std::string note = say("Possible sun is that of a sky without clouds; on a sunny face about half of it comes.");
        if (light_.sunlight) {
            const std::string best = number_text(light_.sunlight->hours, 1, style_);
            note +=
                " " + (light_.sunlight->hours >= least_sunlight_hours
                           ? say("EN 17037 asks for {} h on a day between 1 February and 21 March: the best has {} h.",
                                 number_text(least_sunlight_hours, 1, style_), best)
                           : say("EN 17037 asks for {} h on a day between 1 February and 21 March: the best has {} "
                                 "h, which is less.",
                                 number_text(least_sunlight_hours, 1, style_), best));
        }
        if (light_.strongest_w_m2) {
            note += " " + say("At its strongest a clear sky’s sun brings about {} W to a square metre of this glass.",
                              number_text(*light_.strongest_w_m2, 0, style_));
        }
        return note;
    }

    [[nodiscard]] SheetBlock daylight_block() const {
        SheetBlock block{.key = "daylight", .title = say("Average daylight factor")};
        if (!light_.daylight) {
            return block;
        }
        const Daylight& daylight = *light_.daylight;
        const auto add = [&](std::string name, const char* key, double value) {
            block.rows.push_back({{word_cell(std::move(name)), figure_cell(percent(value), key)}});
        };
        add(say("This window, nothing before it"), "light.open_pct", daylight.open);
        if (daylight.drawn_back) {
            add(say("With what hangs here drawn back"), "light.back_pct", *daylight.drawn_back);
        }
        if (daylight.longer && percent(*daylight.longer) != percent(daylight.drawn_back.value_or(daylight.open))) {
            add(say("On a pole {} long", written(*daylight.longer_length, style_)), "light.longer_pct",
                *daylight.longer);
        }
        add(daylight.room_whole ? say("The room, all its windows drawn back")
                                : say("The room, of the windows whose glass is known"),
            "light.room_pct", daylight.room);
        if (daylight.least) {
            add(say("What BS 8206-2 asks of a room for this use: {}", room_.use), "light.least_pct", *daylight.least);
        }
        return block;
    }

    const Room& room_;
    const WindowLight& light_;
    const SheetStyle& style_;
};

SunDrawingOptions on_paper(double width, double height) {
    return {.width = width, .height = height, .pixel = px_in_mm, .label_size = 14.0};
}

std::vector<std::string> advice_lines(const LightPanel& panel) {
    std::vector<std::string> lines;
    for (const LightAdvice& one : panel.advice) {
        lines.push_back(one.text + " " + one.reason);
    }
    return lines;
}

void add_words(Sheet& sheet, std::string title, std::vector<std::string> lines) {
    if (!lines.empty()) {
        sheet.parts.emplace_back(SheetWords{std::move(title), std::move(lines)});
    }
}

/// Both blocks, and the calendar with its legend.
void add_figures(Sheet& sheet, LightPanel& panel, const WindowLight& light) {
    panel.sun.beside = true;
    for (SheetBlock* block : {&panel.sun, &panel.daylight}) {
        if (!block->rows.empty()) {
            sheet.parts.emplace_back(std::move(*block));
        }
    }
    if (light.hours) {
        Elevation calendar = sun_calendar_of(light, on_paper(120.0, 75.0));
        std::string legend = calendar.description;
        sheet.parts.emplace_back(SheetDrawing{std::move(calendar), say("By month and hour of the clock")});
        add_words(sheet, {}, {std::move(legend)});
    }
}

}  // namespace

LightPanel light_panel(const Room& room, const WindowLight& light, const SheetStyle& style) {
    return PanelWriter(room, light, style).written_out();
}

Sheet light_sheet(const Survey& survey, const Figures& figures, std::size_t window_index, const SheetStyle& style) {
    const SheetPlace place = sheet_place(survey, window_index);
    const WindowLight light =
        light_of(survey, *place.room, *place.window, [&](const Window& window) -> const WindowFigures* {
            const auto found = std::ranges::find(figures.windows, window.id, &WindowFigures::id);
            return found == figures.windows.end() ? nullptr : &*found;
        });
    LightPanel panel = light_panel(*place.room, light, style);
    Sheet sheet{
        .kind = SheetKind::light, .title = window_title(*place.room, *place.window), .corner = corner_of(survey)};
    sheet.heading = heading_paragraphs(heading_lines(survey, style), panel.facing);
    sheet.window = place.window->id;
    add_words(sheet, say("What follows from it"), advice_lines(panel));
    if (light.clock) {
        sheet.parts.emplace_back(SheetDrawing{
            sun_drawing_of(*place.room, *place.window, figures.windows[window_index], light, on_paper(97.0, 90.0)),
            ""});
    }
    add_figures(sheet, panel, light);
    if (!panel.minds.empty()) {
        sheet.parts.emplace_back(SheetMinds{say("Mind"), std::move(panel.minds)});
    }
    add_words(sheet, say("Taken as"), std::move(panel.assumed));
    add_words(sheet, say("Would tell more"), std::move(panel.wanted));
    return sheet;
}

}  // namespace truehang
