// SPDX-License-Identifier: Apache-2.0
#include "sheet/measure_sheet.h"

#include "sheet/cutting_list.h"
#include "sheet/sheet_head.h"
#include "sheet/working_words.h"
#include "survey/stations.h"
#include "units/rounding.h"
#include "units/saying.h"

#include <algorithm>
#include <array>
#include <iterator>

namespace truehang {

namespace {

SheetCell words(std::string text) { return word_cell(std::move(text)); }
SheetCell figure(std::string text, std::string path) { return figure_cell(std::move(text), std::move(path)); }

/// Writes the blocks of one layer's sheet.
class SheetWriter {
public:
    SheetWriter(const Survey& survey, const Figures& figures, const WindowFigures& window, const LayerFigures& layer,
                const SheetStyle& style)
        : survey_(survey), figures_(figures), window_(window), layer_(layer), style_(style) {}

    [[nodiscard]] std::vector<SheetBlock> blocks() const {
        std::vector<SheetBlock> all{finished(), hang(), cut()};
        if (layer_.tabs) {
            all.push_back(positions("tabs", say("Tabs, from the leading edge, on the flat"), layer_.tabs->positions,
                                    say("centre of each")));
        }
        if (layer_.eyelets) {
            all.push_back(positions("eyelets", say("Eyelets, from the leading edge, on the flat"),
                                    layer_.eyelets->positions, say("centre of each")));
        }
        if (const auto& pleats = layer_.making.pleats) {
            all.push_back(
                positions("pleats", say("Pleats, from the leading edge, on the flat"), pleats->positions,
                          say("centre of each; {} in each, {} between", said(pleats->pleat), said(pleats->space))));
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
        SheetBlock block{
            .key = "finished", .title = say("Finished"), .columns = {}, .rows = {}, .note = {}, .beside = true};
        if (layer_.finished) {
            const Finished& done = *layer_.finished;
            const bool blind = layer_.blind.has_value();
            block.rows.push_back({{words(blind ? say("Blinds") : say("Curtains")),
                                   figure(number(done.curtains), "finished.curtains"), words("")}});
            block.rows.push_back(
                {{words(done.curtains > 1 ? say("Width, each") : say("Width")),
                  figure(said(done.width), "finished.width_mm"), words(plus_minus(done.width_u, style_))}});
            block.rows.push_back({{words(say("Drop")), figure(said(done.drop), "finished.drop_mm"),
                                   words(plus_minus(done.drop_u, style_))}});
        }
        if (layer_.cloth && layer_.cloth->fullness) {
            block.rows.push_back(
                {{words(say("Fullness")),
                  figure(number_text(*layer_.cloth->fullness, 2, style_) + " ×", "cloth.fullness"), words("")}});
        }
        if (layer_.pelmet) {
            block.rows.push_back(
                {{words(say("Pelmet, depth")), figure(said(layer_.pelmet->depth), "pelmet.depth_mm"), words("")}});
            block.rows.push_back(
                {{words(say("Pelmet, face")), figure(said(layer_.pelmet->face), "pelmet.face_mm"), words("")}});
        }
        if (layer_.blind) {
            block.rows.push_back({{words(say("Fold")), figure(said(layer_.blind->fold), "blind.fold_mm"), words("")}});
            block.rows.push_back(
                {{words(say("Depth drawn up")), figure(said(layer_.blind->up), "blind.up_mm"), words("")}});
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
            const std::string where = lines.size() > 1 ? ", " + worded(at) : std::string();
            const Size* pole = size("pole." + at);
            block.rows.push_back({{words(say("Pole centre to floor") + where),
                                   figure(said(pole->value), "sizes.pole." + at), words(plus_minus(pole->u, style_))}});
            if (const Size* ceiling = size("ceiling." + at)) {
                block.rows.push_back(
                    {{words(say("Pole centre to ceiling") + where),
                      figure(said(ceiling->value - pole->value), fmt::format("sizes.ceiling.{0}-pole.{0}", at)),
                      words("")}});
            }
        }
    }

    [[nodiscard]] SheetBlock hang() const {
        SheetBlock block{.key = "hang", .title = say("Hang"), .columns = {}, .rows = {}, .note = {}, .beside = true};
        pole_rows(block);
        // From the two decimals that the figures report, so that every sheet rounds the same number.
        const auto mass = [&](Mass kg) { return mass_text(kg, style_); };
        if (layer_.mass) {
            block.rows.push_back({{words(say("In all")), figure(mass(*layer_.mass), "mass_kg"), words("")}});
        }
        if (layer_.bracket_mass) {
            block.rows.push_back(
                {{words(say("Most loaded bracket")), figure(mass(*layer_.bracket_mass), "bracket_kg"), words("")}});
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
        block.rows.push_back({{figure(counted(widths, to_say("drop"), to_say("drops")), key + ".widths"),
                               figure(written_cut(cut_drop, style_), path), words(fabric_name(cloth)), words(how)}});
        block.rows.back().cells.front().number = false;
    }

    [[nodiscard]] SheetBlock cut() const {
        SheetBlock block{.key = "cut",
                         .title = say("Cut"),
                         .columns = {say("piece"), say("cut"), say("of"), say("how")},
                         .rows = {},
                         .note = {}};
        if (layer_.cloth) {
            drops_row(block, layer_.cloth->widths, layer_.cloth->cut_drop, layer_.cloth->fabric, "cloth", "");
        }
        if (layer_.lining) {
            drops_row(block, layer_.lining->widths, layer_.lining->cut_drop, layer_.lining->fabric, "lining", "");
        }
        if (const auto& second = layer_.making.second_lining) {
            drops_row(block, second->widths, second->cut_drop, second->fabric, "second_lining", say("second lining"));
        }
        if (layer_.interlining) {
            drops_row(block, layer_.interlining->widths, layer_.interlining->cut_drop, layer_.interlining->fabric,
                      "interlining", say("interlining"));
        }
        tabs_row(block);
        if (layer_.pelmet && layer_.cloth) {
            drops_row(block, layer_.pelmet->widths, layer_.pelmet->cut_drop, layer_.cloth->fabric, "pelmet",
                      say("pelmet, {} across the face", said(layer_.pelmet->face)));
        }
        other_rows(block);
        counted_rows(block);
        if (!block.rows.empty()) {
            block.note = say("Shrinkage is taken along the length only; widths are figured unwashed.");
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
        SheetRow cells{
            {figure(counted(curtains() * tabs.each, to_say("tab"), to_say("tabs")), "tabs.each"),
             figure(written_cut(length, style_) + " × " + written_cut(tabs.cut_width, style_), "tabs.cut_width_mm"),
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
                    block.rows.push_back(
                        {{words(piece_text(piece.what, piece.count)),
                          figure(written_cut(piece.length, style_), "orders." + order.fabric + "." + piece.what),
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
            add(layer_.eyelets->each, to_say("eyelet"), to_say("eyelets"), "eyelets.each",
                say("{} to a curtain", count_word(layer_.eyelets->each)));
        }
        if (layer_.making.hooks) {
            add(layer_.making.hooks->each, to_say("hook"), to_say("hooks"), "hooks.each",
                say("{} to a curtain", count_word(layer_.making.hooks->each)));
        }
        if (layer_.blind) {
            add(layer_.blind->rods, to_say("rod"), to_say("rods"), "blind.rods", say("in pockets on the lining"));
        }
        if (layer_.weights) {
            const Trace* how = trace("weights.each");
            const double every = how == nullptr ? 0.5 : step_value(*how, "widths between weights").value_or(0.5);
            add(layer_.weights->each, to_say("weight"), to_say("weights"), "weights.each",
                every == 0.5 ? say("corners and each half width")
                             : say("corners and every {} of a width", number_text(every, 2, style_)));
        }
    }

    /// Centres from the leading edge, each rounded for itself.
    [[nodiscard]] SheetBlock positions(std::string key, std::string title, const std::vector<Length>& centres,
                                       std::string note) const {
        SheetBlock block{
            .key = std::move(key), .title = std::move(title), .columns = {}, .rows = {}, .note = std::move(note)};
        SheetRow row;
        for (std::size_t i = 0; i < centres.size(); ++i) {
            row.cells.push_back(figure(said(centres[i]), fmt::format("{}.centre.{}", block.key, i + 1)));
        }
        if (!row.cells.empty()) {
            block.rows.push_back(std::move(row));
        }
        return block;
    }

    [[nodiscard]] SheetBlock rods() const {
        SheetBlock block{.key = "rods",
                         .title = say("Rods, above the bottom edge"),
                         .columns = {},
                         .rows = {{}},
                         .note = say("centre of each")};
        for (int i = 0; i < layer_.blind->rods; ++i) {
            block.rows.front().cells.push_back(
                figure(said((2.0 * i + 1.0) * layer_.blind->fold), "rods.centre." + std::to_string(i + 1)));
        }
        return block;
    }

    [[nodiscard]] SheetBlock order() const {
        SheetBlock block{.key = "order", .title = say("Order"), .columns = {}, .rows = {}, .note = {}};
        for (const ClothCuts& cloth : cutting_list(survey_, figures_, style_).cloths) {
            block.rows.push_back({{words(cloth.name), figure(cloth.order, "orders." + cloth.fabric + ".order_m"),
                                   words(cloth.summary + (cloth.provisional ? "; " + say("provisional") : ""))}});
        }
        return block;
    }

    const Survey& survey_;
    const Figures& figures_;
    const WindowFigures& window_;
    const LayerFigures& layer_;
    const SheetStyle& style_;
};

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

}  // namespace

MeasureSheet measure_sheet(const Survey& survey, const Figures& figures, std::size_t window_index,
                           std::size_t layer_index, const SheetStyle& style) {
    MeasureSheet sheet;
    const SheetPlace place = sheet_place(survey, window_index);
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
    std::ranges::move(one_way_minds(survey, layer), std::back_inserter(sheet.mind));
    sheet.workings = workings_of(window, *place.window, layer.id, style);
    sheet.window = window.id;
    sheet.layer = layer.id;
    sheet.revision = survey.revision.value_or(0);
    sheet.provisional_text = provisional_text(sheet.mind);
    sheet.provisional = !sheet.provisional_text.empty();
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
