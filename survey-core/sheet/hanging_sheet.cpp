// SPDX-License-Identifier: Apache-2.0
#include "sheet/hanging_sheet.h"

#include "cautions/cautions.h"
#include "sheet/bracket_places.h"
#include "sheet/dimension_lines.h"
#include "sheet/elevation.h"
#include "sheet/hardware_drawing.h"
#include "sheet/measure_sheet.h"
#include "sheet/paper.h"
#include "sheet/sheet_head.h"
#include "units/saying.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>

namespace truehang {

namespace {

constexpr double picture_height = 88.0;
constexpr double below_floor = 13.0;  ///< room under the floor for what runs across
/// Flags about the cloth: nothing that who hangs it can do about.
constexpr std::array<std::string_view, 3> about_cloth{"on-the-edge", "fullness-range", "stack-covers-glass"};

/// Writes the hanging sheet of one layer.
class HangingWriter {
public:
    HangingWriter(const Survey& survey, const Figures& figures, std::size_t window_index, std::size_t layer_index,
                  const SheetStyle& style)
        : survey_(survey),
          window_(figures.windows[window_index]),
          figures_(window_.layers[layer_index]),
          place_(sheet_place(survey, window_index)),
          layer_(place_.window->layers[layer_index]),
          style_(style),
          measure_(measure_sheet(survey, figures, window_index, layer_index, style)),
          outline_(outline_of(*place_.window, window_)),
          row_(bracket_row(layer_, window_, outline_)),
          left_(Length::mm(outline_.left_x[2])),
          right_(Length::mm(outline_.right_x[2])) {}

    [[nodiscard]] Sheet sheet() const {
        Sheet sheet{.kind = SheetKind::hanging, .corner = measure_.corner};
        sheet.title = measure_.title + (figures_.id.empty() ? "" : ", " + figures_.id);
        sheet.heading = heading_paragraphs(measure_.heading, measure_.description);
        sheet.provisional =
            measure_.provisional_text.empty()
                ? std::string()
                : say("Provisional: heights may still change. Don’t drill before the reading is settled.");
        sheet.window = window_.id;
        sheet.layer = figures_.id;
        sheet.parts.emplace_back(SheetDrawing{drawing()});
        add_block(sheet, load());
        add_block(sheet, clear());
        add_block(sheet, brackets());
        sheet.parts.emplace_back(SheetMinds{say("Before drilling and climbing"), before()});
        sheet.parts.emplace_back(not_known());
        if (auto minds = minds_here(); !minds.empty()) {
            sheet.parts.emplace_back(SheetMinds{say("Mind"), std::move(minds)});
        }
        return sheet;
    }

private:
    static void add_block(Sheet& sheet, SheetBlock block) {
        if (!block.rows.empty()) {
            sheet.parts.emplace_back(std::move(block));
        }
    }
    [[nodiscard]] std::string said(Length length) const { return written(length, style_); }
    [[nodiscard]] std::optional<Length> size(std::string_view name) const {
        const auto mm = size_mm(window_, name);
        return mm ? std::optional(Length::mm(*mm)) : std::nullopt;
    }
    [[nodiscard]] std::string hardware_word() const {
        const auto kind = layer_.hardware && layer_.hardware->kind ? layer_.hardware->kind->known()
                                                                   : std::optional(HardwareKind::pole);
        return kind == HardwareKind::track ? say("Glider’s eye") : say("Pole’s centre");
    }

    [[nodiscard]] std::string from_opening(Length x) const {
        if (x < left_) {
            return say("{} out from the left edge", said(left_ - x));
        }
        return x > right_ ? say("{} out from the right edge", said(x - right_))
                          : say("{} in from the left edge", said(x - left_));
    }

    [[nodiscard]] SheetBlock brackets() const {
        SheetBlock block{.key = "brackets",
                         .title = row_.chosen ? say("Brackets, from the left") : say("Where it goes")};
        block.columns = {"",
                         say("along it"),
                         say("from the opening"),
                         say("{} to floor", hardware_word()),
                         say("to ceiling"),
                         say("as hung")};
        for (std::size_t i = 0; i < row_.places.size(); ++i) {
            const BracketPlace& place = row_.places[i];
            const std::string path = fmt::format("brackets.{}.", i + 1);
            const auto height = [&](const std::optional<Length>& at, const char* what) {
                return at ? figure_cell(said(*at), path + what) : word_cell(say("not known"));
            };
            block.rows.push_back({{word_cell(place.name), figure_cell(said(place.along), path + "along"),
                                   word_cell(from_opening(place.x)), height(place.floor, "floor"),
                                   height(place.ceiling, "ceiling"), word_cell("")}});
        }
        block.note = brackets_note();
        return block;
    }

    [[nodiscard]] std::string brackets_note() const {
        std::string note;
        if (!row_.chosen) {
            note = say("Where the brackets go wasn’t chosen: place them as the maker of the hardware says.") + " ";
        }
        const bool known = std::ranges::all_of(row_.places, [](const BracketPlace& place) { return !!place.floor; });
        if (!known) {
            note += known_where();
        } else if (row_.u.mm() > 0.0) {
            note += say("Heights {}, on straight lines between the plumb lines and on beyond.",
                        plus_minus(row_.u, style_)) +
                    " ";
        }
        return note + say("With the hardware up, take its height again at each place: the hem is figured from that.");
    }

    /// Where the pole's height is known, where it isn't known everywhere.
    [[nodiscard]] std::string known_where() const {
        for (const Line line : all_lines) {
            const std::string at(word_of(line));
            if (const auto pole = size("pole." + at)) {
                return say("The height is known at the {} of the opening alone, {} to the floor: set it there, "
                           "and level from there.",
                           line == Line::left    ? say("left edge")
                           : line == Line::right ? say("right edge")
                                                 : say("middle"),
                           said(*pole)) +
                       " ";
            }
        }
        return say("How high it goes isn’t known: measure it first.") + " ";
    }

    [[nodiscard]] Elevation drawing() const {
        ElevationOptions options = elevation_options_for(survey_);
        options.width = column_width;
        options.height = picture_height;
        options.pixel = px_in_mm;
        options.dimensions = false;
        Elevation picture = elevation_of(survey_, *place_.room, *place_.window, window_, options);
        if (row_.places.empty() || outline_.is_folded()) {
            return picture;
        }
        picture.height = picture_height + below_floor;
        const auto x_of = [&](Length x) { return picture.origin.x + picture.scale * x.mm(); };
        const auto y_of = [&](double y) { return picture.origin.y - picture.scale * y; };
        DimensionLines lines(picture, 4.0);
        double under = 0.0;
        for (const BracketPlace& place : row_.places) {
            under = std::max(under, y_of(outline_.at(outline_.floor, place.x.mm())));
        }
        for (const auto& [x, height] : shown_heights()) {
            lines.up(y_of(hardware_height(outline_, layer_, x.mm())), y_of(outline_.at(outline_.floor, x.mm())),
                     x_of(x), x_of(x), said(height));
        }
        across(lines, x_of, under + 8.0);
        return picture;
    }

    /// The heights at the places; where none is known there, at the plumb lines where it is.
    [[nodiscard]] std::vector<std::pair<Length, Length>> shown_heights() const {
        std::vector<std::pair<Length, Length>> heights;
        for (const BracketPlace& place : row_.places) {
            if (place.floor) {
                heights.emplace_back(place.x, *place.floor);
            }
        }
        for (const Line line : all_lines) {
            const auto pole = size("pole." + std::string(word_of(line)));
            if (heights.empty() && pole) {
                heights.emplace_back(Length::mm(outline_.x_of(line)), *pole);
            }
        }
        return heights;
    }

    /// How far the outermost places stand from the opening's edges, under the floor.
    template <class XOf>
    void across(DimensionLines& lines, const XOf& x_of, double y) const {
        const Length first = row_.places.front().x;
        const Length last = row_.places.back().x;
        const double edge = y - 4.0;
        if (first < left_) {
            lines.across(x_of(first), x_of(left_), y, edge, said(left_ - first));
        }
        lines.across(x_of(left_), x_of(right_), y, edge, said(right_ - left_));
        if (last > right_) {
            lines.across(x_of(right_), x_of(last), y, edge, said(last - right_));
        }
    }

    [[nodiscard]] static std::vector<SheetMind> before() {
        std::vector<SheetMind> minds;
        for (const Hazard hazard : {Hazard::drilling, Hazard::ladder, Hazard::load}) {
            minds.push_back(caution_mind(cautions_at(hazard).front()));
        }
        return minds;
    }

    [[nodiscard]] SheetBlock load() const {
        SheetBlock block{.key = "load", .title = say("What it carries"), .beside = true};
        const auto add = [&](const std::string& what, Mass mass, const char* figure) {
            block.rows.push_back({{word_cell(what), figure_cell(mass_text(mass, style_), figure), word_cell("")}});
        };
        const bool weighed = layer_.hardware && layer_.hardware->mass;
        if (figures_.mass) {
            add(say("Cloth in all"), *figures_.mass, "mass_kg");
        }
        if (weighed) {
            add(say("Hardware"), *layer_.hardware->mass, "hardware.mass_kg");
        }
        if (figures_.bracket_mass) {
            add(weighed ? say("Most loaded bracket, of both") : say("Most loaded bracket, of the cloth"),
                *figures_.bracket_mass, "bracket_kg");
        }
        return block;
    }

    [[nodiscard]] SheetBlock clear() const {
        SheetBlock block{.key = "clear", .title = say("What stays clear"), .beside = true};
        const auto add = [&](const std::string& what, Length gap, const char* figure, const std::string& fouls) {
            block.rows.push_back(
                {{word_cell(what), figure_cell(said(gap), figure), word_cell(gap.mm() < 0.0 ? fouls : std::string())}});
        };
        if (row_.places.empty()) {
            return block;
        }
        const Hardware& hardware = *layer_.hardware;
        const Length finial = hardware.finial.value_or(Length());
        std::optional<Length> ceiling;
        for (const BracketPlace& place : row_.places) {
            if (place.ceiling && (!ceiling || *place.ceiling < *ceiling)) {
                ceiling = place.ceiling;
            }
        }
        if (ceiling) {
            add(say("Top to the ceiling, least"), *ceiling - hardware.diameter.value_or(Length()) / 2.0,
                "clear.ceiling", say("it fouls the ceiling"));
        }
        if (const auto wall = size("wall.left")) {
            add(say("Left finial to the stop"), *wall + row_.left - left_ - finial, "clear.left", say("it fouls"));
        }
        if (const auto wall = size("wall.right")) {
            add(say("Right finial to the stop"), right_ + *wall - row_.right - finial, "clear.right", say("it fouls"));
        }
        if (const auto& tie = figures_.making.tie_back; tie && tie->height) {
            add(say("Tie-back above the floor"), *tie->height, "tie_back.height_mm", "");
        }
        if (const auto sill = size("sill.projection"); sill && hardware.projection) {
            add(say("Sill to the cloth’s middle"), *hardware.projection - *sill, "clear.sill",
                say("the cloth lies on it"));
        }
        return block;
    }

    [[nodiscard]] SheetWords not_known() const {
        SheetWords words{.title = say("Not known"), .lines = {}};
        const std::string& wall = place_.room->wall;
        words.lines.push_back(
            (wall.empty() ? say("What the wall is made of wasn’t noted") : say("The wall was noted as {}", wall)) +
            "; " + say("what a fixing holds in it isn’t known until one has been tried."));
        std::string lacking;
        if (figures_.making.load) {
            for (const std::string& what : figures_.making.load->not_known) {
                lacking += (lacking.empty() ? say("Of the load:") + " " : "; ") + worded(what);
            }
        }
        words.lines.push_back((lacking.empty() ? "" : lacking + ". ") +
                              say("The load is of cloth hanging still; a pull adds to it."));
        if (!row_.places.empty() && !size("wall.left")) {
            words.lines.push_back(say("How much room there is to the left of the opening."));
        }
        if (!row_.places.empty() && !size("wall.right")) {
            words.lines.push_back(say("How much room there is to the right of the opening."));
        }
        return words;
    }

    [[nodiscard]] std::vector<SheetMind> minds_here() const {
        std::vector<SheetMind> minds = measure_.mind;
        std::erase_if(minds, [](const SheetMind& mind) {
            return mind.severity == Severity::note || std::ranges::find(about_cloth, mind.code) != about_cloth.end();
        });
        return minds;
    }

    const Survey& survey_;
    const WindowFigures& window_;
    const LayerFigures& figures_;
    SheetPlace place_;
    const Layer& layer_;
    const SheetStyle& style_;
    MeasureSheet measure_;
    WindowOutline outline_;
    BracketRow row_;
    Length left_, right_;  ///< the opening's edges at its head
};

}  // namespace

std::optional<Sheet> hanging_sheet(const Survey& survey, const Figures& figures, std::size_t window_index,
                                   std::size_t layer_index, const SheetStyle& style) {
    const SheetPlace place = sheet_place(survey, window_index);
    if (place.window == nullptr || window_index >= figures.windows.size() ||
        layer_index >= std::min(place.window->layers.size(), figures.windows[window_index].layers.size())) {
        return std::nullopt;
    }
    return HangingWriter(survey, figures, window_index, layer_index, style).sheet();
}

}  // namespace truehang
