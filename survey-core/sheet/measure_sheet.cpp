// SPDX-License-Identifier: Apache-2.0
#include "sheet/measure_sheet.h"

#include "sheet/cutting_list.h"
#include "sheet/working_words.h"
#include "survey/stations.h"
#include "units/rounding.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>

namespace truehang {

namespace {

SheetCell words(std::string text) { return {.text = std::move(text), .figure = {}, .number = false}; }
SheetCell figure(std::string text, std::string path) {
    return {.text = std::move(text), .figure = std::move(path), .number = true};
}

struct Place {
    const Room* room = nullptr;
    const Window* window = nullptr;
};

Place find_window(const Survey& survey, std::size_t index) {
    for (const Room& room : survey.rooms) {
        if (index < room.windows.size()) {
            return {&room, &room.windows[index]};
        }
        index -= room.windows.size();
    }
    return {};
}

/// Writes the blocks of one layer's sheet.
class SheetWriter {
public:
    SheetWriter(const Survey& survey, const Figures& figures, const WindowFigures& window, const LayerFigures& layer,
                const SheetStyle& style)
        : survey_(survey), figures_(figures), window_(window), layer_(layer), style_(style) {}

    [[nodiscard]] std::vector<SheetBlock> blocks() const {
        std::vector<SheetBlock> all{finished(), hang(), cut()};
        if (layer_.tabs && layer_.cloth) {
            all.push_back(positions("tabs", "Tabs, from the leading edge, on the flat", layer_.tabs->each,
                                    layer_.tabs->spacing, layer_.cloth->flat));
        }
        if (layer_.eyelets && layer_.cloth) {
            all.push_back(positions("eyelets", "Eyelets, from the leading edge, on the flat", layer_.eyelets->each,
                                    layer_.eyelets->spacing, layer_.cloth->flat));
        }
        if (layer_.blind) {
            all.push_back(rods());
        }
        all.push_back(order());
        std::erase_if(all, [](const SheetBlock& block) { return block.rows.empty(); });
        return all;
    }

private:
    [[nodiscard]] std::string said(Length length) const { return written(length, style_); }
    [[nodiscard]] std::string number(int value) const { return number_text(value, 0, style_); }
    [[nodiscard]] const Trace* trace(std::string_view path) const { return find_trace(window_, path, layer_.id); }
    [[nodiscard]] int curtains() const { return layer_.finished ? layer_.finished->curtains : 1; }
    [[nodiscard]] const Size* size(const std::string& name) const {
        const auto found = std::ranges::find(window_.sizes, name, &Size::name);
        return found == window_.sizes.end() ? nullptr : &*found;
    }
    [[nodiscard]] const Fabric* fabric(const std::string& id) const {
        const auto found = std::ranges::find(survey_.fabrics, id, &Fabric::id);
        return found == survey_.fabrics.end() ? nullptr : &*found;
    }
    [[nodiscard]] std::string fabric_name(const std::string& id) const {
        const Fabric* cloth = fabric(id);
        return cloth == nullptr ? id : short_name(*cloth);
    }

    [[nodiscard]] SheetBlock finished() const {
        SheetBlock block{.key = "finished", .title = "Finished", .columns = {}, .rows = {}, .note = {}};
        if (layer_.finished) {
            const Finished& done = *layer_.finished;
            const bool blind = layer_.blind.has_value();
            block.rows.push_back({{words(blind ? "Blinds" : "Curtains"),
                                   figure(number(done.curtains), "finished.curtains"), words("")}});
            block.rows.push_back(
                {{words(done.curtains > 1 ? "Width, each" : "Width"), figure(said(done.width), "finished.width_mm"),
                  words(plus_minus(done.width_u, style_))}});
            block.rows.push_back(
                {{words("Drop"), figure(said(done.drop), "finished.drop_mm"), words(plus_minus(done.drop_u, style_))}});
        }
        if (layer_.cloth && layer_.cloth->fullness) {
            block.rows.push_back(
                {{words("Fullness"), figure(number_text(*layer_.cloth->fullness, 2, style_) + " ×", "cloth.fullness"),
                  words("")}});
        }
        if (layer_.pelmet) {
            block.rows.push_back(
                {{words("Pelmet, depth"), figure(said(layer_.pelmet->depth), "pelmet.depth_mm"), words("")}});
            block.rows.push_back(
                {{words("Pelmet, face"), figure(said(layer_.pelmet->face), "pelmet.face_mm"), words("")}});
        }
        if (layer_.blind) {
            block.rows.push_back({{words("Fold"), figure(said(layer_.blind->fold), "blind.fold_mm"), words("")}});
            block.rows.push_back({{words("Depth drawn up"), figure(said(layer_.blind->up), "blind.up_mm"), words("")}});
        }
        return block;
    }

    void pole_rows(SheetBlock& block) const {
        std::vector<Line> lines;
        for (const Line line : all_lines) {
            if (size("pole." + std::string(word_of(line))) != nullptr) {
                lines.push_back(line);
            }
        }
        for (const Line line : lines) {
            const std::string at(word_of(line));
            const std::string where = lines.size() > 1 ? ", " + at : std::string();
            const Size* pole = size("pole." + at);
            block.rows.push_back({{words("Pole centre to floor" + where), figure(said(pole->value), "sizes.pole." + at),
                                   words(plus_minus(pole->u, style_))}});
            if (const Size* ceiling = size("ceiling." + at)) {
                block.rows.push_back(
                    {{words("Pole centre to ceiling" + where),
                      figure(said(ceiling->value - pole->value), fmt::format("sizes.ceiling.{0}-pole.{0}", at)),
                      words("")}});
            }
        }
    }

    [[nodiscard]] SheetBlock hang() const {
        SheetBlock block{.key = "hang", .title = "Hang", .columns = {}, .rows = {}, .note = {}};
        pole_rows(block);
        // From the two decimals that the figures report, so that every sheet rounds the same number.
        const auto mass = [&](Mass kg) { return mass_text(kg, style_); };
        if (layer_.mass) {
            block.rows.push_back({{words("In all"), figure(mass(*layer_.mass), "mass_kg"), words("")}});
        }
        if (layer_.bracket_mass) {
            block.rows.push_back(
                {{words("Most loaded bracket"), figure(mass(*layer_.bracket_mass), "bracket_kg"), words("")}});
        }
        return block;
    }

    void drops_row(SheetBlock& block, int widths, Length cut_drop, const std::string& cloth, const std::string& key,
                   const std::string& kind) const {
        const std::string path = key + ".cut_drop_mm";
        std::string how = cut_working(trace(path), style_);
        if (!kind.empty()) {
            how = kind + (how.empty() ? "" : ": ") + how;
        }
        block.rows.push_back({{figure(counted(widths, "drop", "drops"), key + ".widths"), figure(said(cut_drop), path),
                               words(fabric_name(cloth)), words(how)}});
        block.rows.back().cells.front().number = false;
    }

    [[nodiscard]] SheetBlock cut() const {
        SheetBlock block{
            .key = "cut", .title = "Cut", .columns = {"piece", "cut", "of", "how"}, .rows = {}, .note = {}};
        if (layer_.cloth) {
            drops_row(block, layer_.cloth->widths, layer_.cloth->cut_drop, layer_.cloth->fabric, "cloth", "");
        }
        if (layer_.lining) {
            drops_row(block, layer_.lining->widths, layer_.lining->cut_drop, layer_.lining->fabric, "lining", "");
        }
        if (const auto& second = layer_.making.second_lining) {
            drops_row(block, second->widths, second->cut_drop, second->fabric, "second_lining", "second lining");
        }
        if (layer_.interlining) {
            drops_row(block, layer_.interlining->widths, layer_.interlining->cut_drop, layer_.interlining->fabric,
                      "interlining", "interlining");
        }
        tabs_row(block);
        if (layer_.pelmet && layer_.cloth) {
            drops_row(block, layer_.pelmet->widths, layer_.pelmet->cut_drop, layer_.cloth->fabric, "pelmet",
                      "pelmet, " + said(layer_.pelmet->face) + " across the face");
        }
        other_rows(block);
        counted_rows(block);
        if (!block.rows.empty()) {
            block.note = "Shrinkage is taken along the length only; widths are figured unwashed.";
        }
        return block;
    }

    void tabs_row(SheetBlock& block) const {
        if (!layer_.tabs || !layer_.cloth) {
            return;
        }
        const Tabs& tabs = *layer_.tabs;
        const Trace* how = trace("tabs.length_mm");
        const auto row = how == nullptr ? std::nullopt : step_value(*how, "each row");
        const Length length = row ? Length::mm(*row) : tabs.cut_length;
        SheetRow cells{{figure(counted(curtains() * tabs.each, "tab", "tabs"), "tabs.each"),
                        figure(said(length) + " × " + said(tabs.cut_width), "tabs.cut_width_mm"),
                        words(fabric_name(layer_.cloth->fabric)), words(tab_working(how, tabs, style_))}};
        cells.cells.front().number = false;
        block.rows.push_back(std::move(cells));
    }

    /// Pieces that only the order knows: a facing, half a repeat.
    void other_rows(SheetBlock& block) const {
        constexpr std::array<std::string_view, 3> said_already{"drops", "tabs", "pelmet"};
        for (const Order& order : figures_.orders) {
            for (const Cut& piece : order.cuts) {
                const bool here = piece.window == window_.id && (piece.layer.empty() || piece.layer == layer_.id);
                if (here && std::ranges::find(said_already, piece.what) == said_already.end()) {
                    block.rows.push_back({{words(piece_text(piece.what, piece.count)),
                                           figure(said(piece.length), "orders." + order.fabric + "." + piece.what),
                                           words(fabric_name(order.fabric)), words("")}});
                }
            }
        }
    }

    void counted_rows(SheetBlock& block) const {
        const auto add = [&](int each, std::string_view one, std::string_view many, const std::string& path,
                             std::string how) {
            SheetCell piece = figure(counted(curtains() * each, one, many), path);
            piece.number = false;
            block.rows.push_back({{piece, words(""), words(""), words(std::move(how))}});
        };
        if (layer_.eyelets) {
            add(layer_.eyelets->each, "eyelet", "eyelets", "eyelets.each",
                count_word(layer_.eyelets->each) + " to a curtain");
        }
        if (layer_.blind) {
            add(layer_.blind->rods, "rod", "rods", "blind.rods", "in pockets on the lining");
        }
        if (layer_.weights) {
            const Trace* how = trace("weights.each");
            const double every = how == nullptr ? 0.5 : step_value(*how, "widths between weights").value_or(0.5);
            add(layer_.weights->each, "weight", "weights", "weights.each",
                every == 0.5 ? "corners and each half width"
                             : "corners and every " + number_text(every, 2, style_) + " of a width");
        }
    }

    /// Centres from one edge to the other; the last is as far from its edge as the first.
    [[nodiscard]] SheetBlock positions(std::string key, std::string title, int each, Length spacing,
                                       Length flat) const {
        SheetBlock block{
            .key = std::move(key), .title = std::move(title), .columns = {}, .rows = {{}}, .note = "centre of each"};
        const Length span = (each - 1) * spacing;
        const Length first = (flat - span) / 2.0;
        for (int i = 0; i < each; ++i) {
            const Length at = each > 1 ? first + span * i / (each - 1) : flat / 2.0;
            block.rows.front().cells.push_back(figure(said(at), block.key + ".centre." + std::to_string(i + 1)));
        }
        return block;
    }

    [[nodiscard]] SheetBlock rods() const {
        SheetBlock block{.key = "rods",
                         .title = "Rods, above the bottom edge",
                         .columns = {},
                         .rows = {{}},
                         .note = "centre of each"};
        for (int i = 0; i < layer_.blind->rods; ++i) {
            block.rows.front().cells.push_back(
                figure(said((2.0 * i + 1.0) * layer_.blind->fold), "rods.centre." + std::to_string(i + 1)));
        }
        return block;
    }

    [[nodiscard]] SheetBlock order() const {
        SheetBlock block{.key = "order", .title = "Order", .columns = {}, .rows = {}, .note = {}};
        for (const ClothCuts& cloth : cutting_list(survey_, figures_, style_).cloths) {
            block.rows.push_back({{words(cloth.name), figure(cloth.order, "orders." + cloth.fabric + ".order_m"),
                                   words(cloth.summary + (cloth.provisional ? "; provisional" : ""))}});
        }
        return block;
    }

    const Survey& survey_;
    const Figures& figures_;
    const WindowFigures& window_;
    const LayerFigures& layer_;
    const SheetStyle& style_;
};

std::vector<std::string> heading_lines(const Survey& survey, const SheetStyle& style) {
    std::vector<std::string> lines;
    std::string who = survey.client ? survey.client->name : std::string();
    if (survey.site && !survey.site->address.empty()) {
        who += (who.empty() ? "" : ", ") + survey.site->address;
    }
    if (!who.empty()) {
        lines.push_back(who + ".");
    }
    std::string measured;
    if (!survey.measured_at.empty()) {
        measured += " " + day_text(survey.measured_at);
    }
    if (!survey.measured_by.empty()) {
        measured += " by " + survey.measured_by;
    }
    if (!measured.empty()) {
        lines.push_back("Measured" + measured + (measured.ends_with('.') ? "" : "."));
    }
    lines.push_back(fmt::format("All in {} unless said; ± is twice the standard uncertainty.", word_of(style.unit)));
    return lines;
}

std::vector<SheetMind> minds_of(const WindowFigures& window, const std::string& layer) {
    std::vector<SheetMind> minds;
    for (const Flag& flag : window.flags) {
        if (flag.layer.empty() || flag.layer == layer) {
            minds.push_back({.severity = flag.severity,
                             .shape = shape_of(flag.severity),
                             .word = std::string(flag_word(flag.severity)),
                             .text = flag.text,
                             .code = flag.code});
        }
    }
    std::ranges::stable_sort(minds, {}, &SheetMind::severity);
    return minds;
}

std::vector<SheetWorking> workings_of(const WindowFigures& figures, const Window& window, const std::string& layer,
                                      const SheetStyle& style) {
    std::vector<SheetWorking> workings;
    for (const Trace& trace : figures.trace) {
        if (trace.layer.empty() || trace.layer == layer) {
            workings.push_back({.figure = trace.figure,
                                .title = figure_text(trace.figure),
                                .steps = steps_in_words(trace, window, style)});
        }
    }
    return workings;
}

void mark_provisional(MeasureSheet& sheet) {
    if (sheet.mind.empty() || sheet.mind.front().severity > Severity::remeasure) {
        return;
    }
    sheet.provisional = true;
    sheet.provisional_text = sheet.mind.front().severity == Severity::stop
                                 ? "Provisional: nothing can be cut from this sheet yet."
                                 : "Provisional: don’t cut from this sheet before the reading is taken again.";
}

std::string corner_of(const Survey& survey) {
    std::string corner = survey.title.substr(0, survey.title.find(','));
    if (survey.revision) {
        corner += (corner.empty() ? "Revision " : ", revision ") + std::to_string(*survey.revision);
    }
    return corner;
}

}  // namespace

MeasureSheet measure_sheet(const Survey& survey, const Figures& figures, std::size_t window_index,
                           std::size_t layer_index, const SheetStyle& style) {
    MeasureSheet sheet;
    const Place place = find_window(survey, window_index);
    if (place.window == nullptr || window_index >= figures.windows.size()) {
        return sheet;
    }
    const WindowFigures& window = figures.windows[window_index];
    const LayerFigures none;
    const LayerFigures& layer = layer_index < window.layers.size() ? window.layers[layer_index] : none;
    sheet.title = window_title(*place.room, *place.window);
    sheet.corner = corner_of(survey);
    sheet.heading = heading_lines(survey, style);
    if (layer_index < place.window->layers.size()) {
        sheet.description = treatment_text(place.window->layers[layer_index], style);
    }
    sheet.notes = place.window->notes;
    sheet.blocks = SheetWriter(survey, figures, window, layer, style).blocks();
    sheet.mind = minds_of(window, layer.id);
    sheet.workings = workings_of(window, *place.window, layer.id, style);
    sheet.window = window.id;
    sheet.layer = layer.id;
    sheet.revision = survey.revision.value_or(0);
    mark_provisional(sheet);
    return sheet;
}

const SheetCell* find_cell(const MeasureSheet& sheet, std::string_view figure) {
    for (const SheetBlock& block : sheet.blocks) {
        for (const SheetRow& row : block.rows) {
            for (const SheetCell& cell : row.cells) {
                if (cell.figure == figure) {
                    return &cell;
                }
            }
        }
    }
    return nullptr;
}

}  // namespace truehang
