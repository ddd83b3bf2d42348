// SPDX-License-Identifier: Apache-2.0
#include "sheet/sheets.h"

#include "figures/agreement.h"
#include "sheet/agreed_sheet.h"
#include "sheet/cutting_sheet.h"
#include "sheet/elevation.h"
#include "sheet/hanging_sheet.h"
#include "sheet/light_sheet.h"
#include "sheet/making_sheet.h"
#include "sheet/measure_sheet.h"
#include "sheet/paper.h"
#include "sheet/sheet_head.h"
#include "sheet/signed.h"
#include "units/saying.h"

#include <algorithm>
#include <iterator>

namespace truehang {

namespace {

constexpr double label_px = 14.0;

/// The drawing's room in mm of paper.
struct PictureSize {
    double width, height;
};
constexpr PictureSize beside_readings{97.0, 84.0};
constexpr PictureSize alone{180.0, 110.0};

ElevationOptions options_for(const Survey& survey, const SheetStyle& style, PictureSize size) {
    ElevationOptions options = elevation_options_for(survey);
    options.width = size.width;
    options.height = size.height;
    options.pixel = px_in_mm;
    options.label_size = label_px;
    options.active_size = label_px;
    options.length_style.decimal = style.decimal;
    return options;
}

/// The window with what hangs there, and what was measured beside it.
Elevation hung_drawing(const Survey& survey, const SheetPlace& place, const WindowFigures& figures,
                       const SheetStyle& style) {
    ElevationOptions options = options_for(survey, style, beside_readings);
    options.dimensions = false;
    options.drawn = Drawn::back;
    return elevation_of(survey, *place.room, *place.window, figures, options);
}

/// The window with its readings.
Elevation measured_drawing(const Survey& survey, const SheetPlace& place, const WindowFigures& figures,
                           const SheetStyle& style) {
    return elevation_of(survey, *place.room, *place.window, figures, options_for(survey, style, alone));
}

Sheet whole_measure_sheet(const Survey& survey, const Figures& figures, std::size_t window, std::size_t layer,
                          const SheetStyle& style) {
    MeasureSheet measure = measure_sheet(survey, figures, window, layer, style);
    Sheet sheet{.kind = SheetKind::measure, .title = measure.title, .corner = measure.corner};
    sheet.heading = heading_paragraphs(measure.heading, measure.description);
    sheet.provisional = measure.provisional_text;
    sheet.window = measure.window;
    sheet.layer = measure.layer;
    const SheetPlace place = sheet_place(survey, window);
    sheet.parts.emplace_back(SheetDrawing{hung_drawing(survey, place, figures.windows[window], style)});
    std::vector<SheetBlock> after;  // a whole house's cloths fill half a page
    for (SheetBlock& block : measure.blocks) {
        if (block.key == "order") {
            after.push_back(std::move(block));
        } else {
            sheet.parts.emplace_back(std::move(block));
        }
    }
    if (!measure.mind.empty()) {
        sheet.parts.emplace_back(SheetMinds{say("Mind"), std::move(measure.mind)});
    }
    std::ranges::move(after, std::back_inserter(sheet.parts));
    if (!measure.notes.empty()) {
        sheet.parts.emplace_back(SheetWords{say("Notes"), {measure.notes}});
    }
    sheet.parts.emplace_back(
        SheetDrawing{measured_drawing(survey, place, figures.windows[window], style), say("As measured")});
    if (!measure.workings.empty()) {
        sheet.parts.emplace_back(SheetWorkings{say("How each figure came about"), std::move(measure.workings)});
    }
    return sheet;
}

void add_layer(std::vector<Sheet>& sheets, const Survey& survey, const Figures& figures, SheetKind kind,
               std::size_t window, std::size_t layer, const SheetStyle& style) {
    if (kind == SheetKind::measure) {
        sheets.push_back(whole_measure_sheet(survey, figures, window, layer, style));
    } else if (kind == SheetKind::making) {
        std::ranges::move(making_sheets(survey, figures, window, layer, style), std::back_inserter(sheets));
    } else if (auto sheet = hanging_sheet(survey, figures, window, layer, style)) {
        sheets.push_back(std::move(*sheet));
    }
}

std::vector<Sheet> sheets_by_kind(const Survey& survey, const Figures& figures, const SheetsAsked& asked,
                                  const SheetStyle& style) {
    if (asked.kind == SheetKind::cutting) {
        return cutting_sheets(survey, figures, asked.rolls.empty() ? cuts_as_ordered(survey, figures) : asked.rolls,
                              style);
    }
    std::vector<Sheet> sheets;
    if (asked.kind == SheetKind::agreed) {
        if (auto sheet = agreed_sheet(survey, figures, style)) {
            sheets.push_back(std::move(*sheet));
        }
        return sheets;
    }
    for (std::size_t window = 0; window < figures.windows.size(); ++window) {
        const SheetPlace place = sheet_place(survey, window);
        const bool wanted = place.window != nullptr && (asked.window.empty() || place.window->id == asked.window) &&
                            (asked.room.empty() || place.room->id == asked.room);
        if (wanted && asked.kind == SheetKind::light) {
            sheets.push_back(light_sheet(survey, figures, window, style));
            continue;
        }
        const std::size_t layers = wanted ? std::max<std::size_t>(1, place.window->layers.size()) : 0;
        for (std::size_t layer = 0; layer < layers; ++layer) {
            const bool there = layer < place.window->layers.size();
            if (asked.layer.empty() || (there && place.window->layers[layer].id == asked.layer)) {
                add_layer(sheets, survey, figures, asked.kind, window, layer, style);
            }
        }
    }
    return sheets;
}

/// Where the figures of a sheet's window, or of a sheet of the whole house any, are no longer what a client signed, it
/// says so before anything else. The agreement itself shows what differs.
void say_what_was_agreed(const Survey& survey, std::vector<Sheet>& sheets) {
    const auto since = since_signed(survey);
    if (!since || !since->differs()) {
        return;
    }
    for (Sheet& sheet : sheets) {
        const bool concerned = sheet.window.empty() ||
                               std::ranges::find(since->difference.layers, sheet.window, &LayerDifference::window) !=
                                   since->difference.layers.end();
        if (concerned && sheet.kind != SheetKind::agreed) {
            sheet.first.insert(sheet.first.begin(), {.severity = Severity::decide,
                                                     .shape = shape_of(Severity::decide),
                                                     .word = worded(flag_word(Severity::decide)),
                                                     .text = signed_sentence(*since),
                                                     .code = std::string(agreement_outdated)});
        }
    }
}

}  // namespace

std::vector<Sheet> sheets_of(const Survey& survey, const Figures& figures, const SheetsAsked& asked,
                             const SheetStyle& style) {
    std::vector<Sheet> sheets = sheets_by_kind(survey, figures, asked, style);
    say_what_was_agreed(survey, sheets);
    return sheets;
}

}  // namespace truehang
