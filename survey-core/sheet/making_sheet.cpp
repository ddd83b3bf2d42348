// SPDX-License-Identifier: Apache-2.0
#include "sheet/making_sheet.h"

#include "cautions/cautions.h"
#include "sheet/flat_drawing.h"
#include "sheet/flat_piece.h"
#include "sheet/measure_sheet.h"
#include "sheet/sheet_head.h"
#include "sheet/working_words.h"
#include "units/rounding.h"
#include "units/saying.h"

#include <algorithm>
#include <array>

namespace truehang {

namespace {

/// What must be read before the cloth is touched.
constexpr std::array<std::string_view, 3> first_codes{"on-the-edge", "pole-moved", one_way_code};
/// Blocks of the measure sheet that are about other things than making.
constexpr std::array<std::string_view, 4> other_blocks{"finished", "hang", "cut", "order"};

std::string unwashed() { return say("Widths are figured unwashed; shrinkage is taken along the length only."); }

template <class List>
bool is_in(const List& list, std::string_view word) {
    return std::ranges::find(list, word) != list.end();
}

std::string widths_text(double widths) {
    const double whole = floor_whole(widths);
    const bool half = widths > whole + whole_tolerance;
    std::string text = whole > 0.0 ? std::to_string(static_cast<int>(whole)) : std::string();
    text += half ? "½" : "";
    return widths > 1.0 + whole_tolerance ? say("{} widths", text) : say("{} width", text);
}

/// Writes the sheet of one curtain of a layer.
class MakingWriter {
public:
    MakingWriter(const Survey& survey, const Figures& figures, std::size_t window_index, std::size_t layer_index,
                 const SheetStyle& style)
        : survey_(survey),
          window_(figures.windows[window_index]),
          figures_(window_.layers[layer_index]),
          place_(sheet_place(survey, window_index)),
          layer_(place_.window->layers[layer_index]),
          style_(style),
          measure_(measure_sheet(survey, figures, window_index, layer_index, style)),
          setting_(make_setting(survey, layer_, figures_)) {}

    [[nodiscard]] int curtains() const { return figures_.finished ? std::max(1, figures_.finished->curtains) : 1; }

    [[nodiscard]] Sheet sheet(int curtain) const {
        Sheet sheet{.kind = SheetKind::making, .corner = measure_.corner};
        sheet.title = measure_.title + name_of(curtain);
        sheet.heading = heading_paragraphs(measure_.heading, measure_.description);
        sheet.provisional = measure_.provisional_text;
        sheet.window = window_.id;
        sheet.layer = figures_.id;
        for (const SheetMind& mind : measure_.mind) {
            if (is_in(first_codes, mind.code) || mind.severity <= Severity::remeasure) {
                sheet.first.push_back(mind);
            }
        }
        if (figures_.finished && figures_.cloth && setting_) {
            add_parts(sheet, curtain);
        }
        return sheet;
    }

private:
    [[nodiscard]] std::string said(Length length) const { return written(length, style_); }
    [[nodiscard]] bool blind() const { return figures_.blind.has_value(); }
    [[nodiscard]] std::string name_of(int curtain) const {
        const std::string layer = figures_.id.empty() ? std::string() : ", " + figures_.id;
        if (blind() || curtains() < 2) {
            return !layer.empty() ? layer : ", " + (blind() ? say("the blind") : say("the curtain"));
        }
        return layer + ", " + (curtain == 0 ? say("left curtain") : say("right curtain"));
    }
    [[nodiscard]] std::string cloth_name(const std::string& id) const {
        const auto found = std::ranges::find(survey_.fabrics, id, &Fabric::id);
        return found == survey_.fabrics.end() ? id : short_name(*found);
    }

    void add_parts(Sheet& sheet, int curtain) const {
        const FlatPiece piece = flat_piece(*setting_, figures_, curtain);
        Elevation drawing = flat_drawing(piece, style_);
        if (!blind()) {
            drawing = stacked(std::move(drawing), corner_drawing(piece, style_));
        }
        sheet.parts.emplace_back(SheetDrawing{std::move(drawing), {}});
        sheet.parts.emplace_back(finished());
        sheet.parts.emplace_back(turnings());
        if (auto block = lining(); !block.rows.empty()) {
            sheet.parts.emplace_back(std::move(block));
        }
        sheet.parts.emplace_back(cut());
        add_positions(sheet);
        if (auto minds = cautions(); !minds.minds.empty()) {
            sheet.parts.emplace_back(std::move(minds));
        }
        if (auto words = notes(); !words.lines.empty()) {
            sheet.parts.emplace_back(std::move(words));
        }
    }

    void add_positions(Sheet& sheet) const {
        for (const SheetBlock& block : measure_.blocks) {
            if (!is_in(other_blocks, block.key)) {
                sheet.parts.emplace_back(block);
            }
        }
    }

    [[nodiscard]] SheetBlock finished() const {
        SheetBlock block{
            .key = "finished", .title = say("Finished"), .columns = {}, .rows = {}, .note = {}, .beside = true};
        const Finished& done = *figures_.finished;
        block.rows.push_back({{word_cell(say("Width")), figure_cell(said(done.width), "finished.width_mm"),
                               word_cell(plus_minus(done.width_u, style_))}});
        block.rows.push_back({{word_cell(say("Drop")), figure_cell(said(done.drop), "finished.drop_mm"),
                               word_cell(plus_minus(done.drop_u, style_))}});
        block.rows.push_back({{word_cell(blind() ? say("Cut across") : say("Flat width")),
                               figure_cell(said(figures_.cloth->flat), "cloth.flat_mm"), word_cell("")}});
        if (figures_.cloth->fullness) {
            block.rows.push_back(
                {{word_cell(say("Fullness")),
                  figure_cell(number_text(*figures_.cloth->fullness, 2, style_) + " ×", "cloth.fullness"),
                  word_cell("")}});
        }
        return block;
    }

    [[nodiscard]] SheetBlock turnings() const {
        SheetBlock block{.key = "turnings",
                         .title = say("Turned in, in all"),
                         .columns = {},
                         .rows = {},
                         .note = {},
                         .beside = true};
        const auto add = [&](const std::string& what, Length length, const char* key, std::string how) {
            block.rows.push_back(
                {{word_cell(what), figure_cell(said(length), std::string("rules.") + key), word_cell(std::move(how))}});
        };
        const TurnedIn& turned = setting_->turned;
        add(say("Each side"), turned.side, blind() ? "blind_side_mm" : "side_turn_mm", "");
        add(say("Hem"), turned.hem, blind() ? "blind_hem_mm" : "hem_mm",
            blind() ? std::string() : say("double {}", said(turned.hem / 2.0)));
        add(say("Head"), turned.head, "head_mm", "");
        if (figures_.cloth->widths_each > 1.0 + whole_tolerance) {
            add(say("Joins"), turned.seam, "seam_mm", say("on each width"));
        }
        return block;
    }

    void cut_row(SheetBlock& block, double each, Length cut_drop, const std::string& cloth, const std::string& key,
                 const std::string& kind) const {
        const std::string path = key + ".cut_drop_mm";
        std::string how = cut_working(find_trace(window_, path, figures_.id), style_);
        if (!kind.empty()) {
            how = kind + (how.empty() ? "" : ": ") + how;
        }
        SheetCell piece = figure_cell(widths_text(each), key + ".widths_each");
        piece.number = false;
        block.rows.push_back({{std::move(piece), figure_cell(written_cut(cut_drop, style_), path),
                               word_cell(cloth_name(cloth)), word_cell(std::move(how))}});
    }

    [[nodiscard]] SheetBlock cut() const {
        SheetBlock block{.key = "made-of",
                         .title = say("Made of"),
                         .columns = {say("widths"), say("cut"), say("of"), say("how")},
                         .rows = {},
                         .note = joins_text()};
        const Cloth& cloth = *figures_.cloth;
        cut_row(block, cloth.widths_each, cloth.cut_drop, cloth.fabric, "cloth", "");
        if (figures_.lining) {
            cut_row(block, figures_.lining->widths_each, figures_.lining->cut_drop, figures_.lining->fabric, "lining",
                    say("lining"));
        }
        if (const auto& second = figures_.making.second_lining) {
            cut_row(block, second->widths_each, second->cut_drop, second->fabric, "second_lining",
                    say("second lining"));
        }
        if (figures_.interlining) {
            cut_row(block, figures_.interlining->widths_each, figures_.interlining->cut_drop,
                    figures_.interlining->fabric, "interlining", say("interlining"));
        }
        counted_rows(block);
        return block;
    }

    void counted_rows(SheetBlock& block) const {
        const auto add = [&](int each, std::string_view one, std::string_view many, const char* path, std::string how) {
            SheetCell piece = figure_cell(counted(each, one, many), path);
            piece.number = false;
            block.rows.push_back({{std::move(piece), word_cell(""), word_cell(""), word_cell(std::move(how))}});
        };
        if (figures_.making.hooks) {
            add(figures_.making.hooks->each, to_say("hook"), to_say("hooks"), "hooks.each",
                say("when hung {} apart", said(figures_.making.hooks->spacing)));
        }
        if (figures_.weights) {
            add(figures_.weights->each, to_say("weight"), to_say("weights"), "weights.each",
                say("in the hem: at each end and evenly between, as drawn"));
        }
        if (const auto& tie = figures_.making.tie_back; tie && tie->cut_length && tie->cut_width) {
            block.rows.push_back(
                {{word_cell(say("tie-back")),
                  figure_cell(written_cut(*tie->cut_length, style_) + " × " + written_cut(*tie->cut_width, style_),
                              "tie_back.cut_length_mm"),
                  word_cell(cloth_name(figures_.cloth->fabric)), word_cell(say("two pieces to each"))}});
        }
    }

    [[nodiscard]] std::string joins_text() const {
        const auto joins = setting_->joins;
        if (joins.empty()) {
            return say("One width: no join.") + " " + unwashed();
        }
        std::string at;
        for (const Length join : joins) {
            at += (at.empty() ? "" : ", ") + said(join);
        }
        const std::string from = blind() ? say("{} from the left edge, a whole width in the middle.", at)
                                         : say("{} from the leading edge, whole widths on the inside.", at);
        return (joins.size() == 1 ? say("The join is at {}", from) : say("The joins are at {}", from)) + " " +
               unwashed();
    }

    [[nodiscard]] SheetBlock lining() const {
        SheetBlock block{
            .key = "lining-set", .title = say("Lining set-up"), .columns = {}, .rows = {}, .note = {}, .beside = true};
        if (!figures_.lining) {
            return block;
        }
        const HouseRules& rules = setting_->rules;
        const auto add = [&](const std::string& what, double mm, std::string key) {
            block.rows.push_back({{word_cell(what), figure_cell(said(Length::mm(mm)), std::move(key))}});
        };
        add(blind() ? say("Cut width") : say("Finished width"), figures_.lining->flat.mm(), "lining.flat_mm");
        if (blind()) {
            return block;
        }
        if (figures_.lining->separate) {
            add(say("Above the curtain’s hem"), rules.lining_rise, "rules.lining_rise_mm");
            add(say("Each side"), rules.separate_side, "rules.separate_side_mm");
            add(say("Its hem, in all"), rules.separate_hem, "rules.separate_hem_mm");
            add(say("Its head"), rules.separate_head, "rules.separate_head_mm");
            return block;
        }
        add(say("In from each side"), rules.lining_inset, "rules.lining_inset_mm");
        add(say("Above the curtain’s hem"), rules.lining_rise, "rules.lining_rise_mm");
        add(say("Its hem, in all"), rules.lining_hem, "rules.lining_hem_mm");
        add(say("Turned down at the head"), rules.lining_head, "rules.lining_head_mm");
        return block;
    }

    [[nodiscard]] SheetWords notes() const {
        SheetWords words{.title = say("Notes"), .lines = {}};
        if (figures_.interlining) {
            words.lines.emplace_back(say("Interlining: seams lapped, cut to the flat width and the finished drop."));
        }
        if (!measure_.notes.empty()) {
            words.lines.push_back(measure_.notes);
        }
        return words;
    }

    [[nodiscard]] SheetMinds cautions() const {
        SheetMinds all{.title = say("Mind"), .minds = {}};
        const bool children = place_.room->young_children.value_or(true);
        if (figures_.weights && children) {
            all.minds.push_back(caution_mind(cautions_at(Hazard::weights).front()));
        }
        if (blind() && children) {
            all.minds.push_back(caution_mind(cautions_at(Hazard::cord).front()));
        }
        return all;
    }

    const Survey& survey_;
    const WindowFigures& window_;
    const LayerFigures& figures_;
    SheetPlace place_;
    const Layer& layer_;
    const SheetStyle& style_;
    MeasureSheet measure_;
    std::optional<MakingSetting> setting_;
};

}  // namespace

std::vector<Sheet> making_sheets(const Survey& survey, const Figures& figures, std::size_t window_index,
                                 std::size_t layer_index, const SheetStyle& style) {
    const SheetPlace place = sheet_place(survey, window_index);
    if (place.window == nullptr || window_index >= figures.windows.size() ||
        layer_index >= std::min(place.window->layers.size(), figures.windows[window_index].layers.size())) {
        return {};
    }
    const MakingWriter writer(survey, figures, window_index, layer_index, style);
    std::vector<Sheet> sheets;
    for (int curtain = 0; curtain < writer.curtains(); ++curtain) {
        sheets.push_back(writer.sheet(curtain));
    }
    return sheets;
}

}  // namespace truehang
