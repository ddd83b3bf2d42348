// SPDX-License-Identifier: Apache-2.0
#include "sheet/cutting_sheet.h"

#include "sheet/cutting_list.h"
#include "sheet/roll_drawing.h"
#include "sheet/sheet_head.h"
#include "survey/house_rules.h"
#include "units/rounding.h"
#include "units/saying.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace truehang {

namespace {

struct WindowPlace {
    const Room* room = nullptr;
    const Window* window = nullptr;
    const WindowFigures* figures = nullptr;
};

WindowPlace find_place(const Survey& survey, const Figures& figures, const std::string& id) {
    for (std::size_t i = 0; i < figures.windows.size(); ++i) {
        if (figures.windows[i].id == id) {
            const SheetPlace place = sheet_place(survey, i);
            return {place.room, place.window, &figures.windows[i]};
        }
    }
    return {};
}

std::string one_piece(const RollCut& cut) {
    const auto counted_one = [&](std::string_view one) { return say("{} {} of {}", worded(one), cut.number, cut.of); };
    if (cut.what == "drops") {
        return counted_one("drop");
    }
    if (cut.what == "tabs") {
        return counted_one("row of tabs");
    }
    if (cut.what == "facing") {
        return counted_one("facing");
    }
    if (cut.what == "pelmet") {
        return counted_one("pelmet width");
    }
    if (cut.what == "left over") {
        return say("cut off and keep: left over");
    }
    if (cut.left_out) {
        return say("leave: {}", cut.what == "half repeat" ? say("half a repeat") : worded(cut.what));
    }
    return cut.of > 1 ? counted_one(cut.what) : worded(cut.what);
}

/// The sheet of one roll.
class CuttingWriter {
public:
    CuttingWriter(const Survey& survey, const Figures& figures, const RollCuts& roll, const SheetStyle& style)
        : survey_(survey), figures_(figures), roll_(roll), style_(style) {
        const auto fabric = std::ranges::find(survey.fabrics, roll.fabric, &Fabric::id);
        fabric_ = fabric == survey.fabrics.end() ? nullptr : &*fabric;
        const auto order = std::ranges::find(figures.orders, roll.fabric, &Order::fabric);
        order_ = order == figures.orders.end() ? nullptr : &*order;
        const CuttingList list = cutting_list(survey, figures, style);
        const auto cloth = std::ranges::find(list.cloths, roll.fabric, &ClothCuts::fabric);
        cloth_ = cloth == list.cloths.end() ? ClothCuts{} : *cloth;
    }

    [[nodiscard]] Sheet sheet() {
        Sheet sheet{.kind = SheetKind::cutting, .corner = corner_of(survey_)};
        sheet.title = name() + (roll_.roll.empty() ? "" : ", " + roll_.roll);
        sheet.heading = heading_paragraphs(heading_lines(survey_, style_), cloth_words());
        if (cloth_.provisional) {
            sheet.provisional = say("Provisional: don’t cut what is marked “not yet”.");
        }
        if (!roll_.short_windows.empty()) {
            sheet.parts.emplace_back(not_enough());
        }
        if (!roll_.cuts.empty()) {
            const SheetBlock cuts = in_order();
            sheet.parts.emplace_back(SheetDrawing{roll_drawing(roll_, roll_length(), is_one_way())});
            sheet.parts.emplace_back(before_cutting());
            sheet.parts.emplace_back(cuts);
            sheet.parts.emplace_back(roll_.measured ? of_this_roll() : totals());
        }
        if (auto minds = not_yet(); !minds.minds.empty()) {
            sheet.parts.emplace_back(std::move(minds));
        }
        return sheet;
    }

    /// Whether the roll is to be counted, or all of its cloth where it is as ordered.
    [[nodiscard]] bool is_long() const { return roll_.measured ? roll_.counted_first : cloth_.measure_roll; }

    /// Rows to be filled in by hand, one for each metre.
    [[nodiscard]] Sheet count_sheet() const {
        Sheet sheet{.kind = SheetKind::cutting, .corner = corner_of(survey_)};
        sheet.title = say("Count of {}", name()) + (roll_.roll.empty() ? "" : ", " + roll_.roll);
        sheet.heading = heading_paragraphs(
            heading_lines(survey_, style_),
            say("Lay the roll out and measure it metre by metre before the first cut. Write at each "
                "metre what lies there: a flaw, a join, a change of shade, where the pattern starts."));
        sheet.parts.emplace_back(metres());
        SheetBlock sums{.key = "counted",
                        .title = say("Counted"),
                        .columns = {},
                        .rows = {},
                        .note = say("Lot or dye batch, date, by whom")};
        if (roll_.measured) {
            sums.rows.push_back({{word_cell(say("Length written down")), word_cell(written(*roll_.measured, style_)),
                                  word_cell(say("what the cutting list goes by"))}});
        } else {
            sums.rows.push_back(
                {{word_cell(say("Ordered")), figure_cell(cloth_.order, "orders." + roll_.fabric + ".order_m"),
                  word_cell(say("what was bought"))}});
        }
        sums.rows.push_back({{word_cell(say("Length found")), word_cell(""), word_cell(say("metres and the rest"))}});
        sums.rows.push_back(
            {{word_cell(say("Width found")), word_cell(""), word_cell(say("between the selvedges, three places"))}});
        sums.rows.push_back(
            {{word_cell(say("Repeat found")), word_cell(""), word_cell(say("over ten repeats, if it has one"))}});
        sheet.parts.emplace_back(std::move(sums));
        return sheet;
    }

private:
    [[nodiscard]] std::string name() const {
        return fabric_ == nullptr || fabric_->name.empty() ? roll_.fabric : fabric_->name;
    }
    [[nodiscard]] Length roll_length() const {
        const Length ordered = order_ == nullptr ? Length() : Length::metres(order_->order_m);
        const Length cut = roll_.cuts.empty() ? Length() : roll_.cuts.back().end;
        return roll_.measured.value_or(std::max(ordered, cut));
    }
    [[nodiscard]] bool has_repeat() const {
        return fabric_ != nullptr && fabric_->repeat.mm() > 0.0 && !(fabric_->match && fabric_->match->is(Match::none));
    }

    /// On a roll that came each piece is as long as it must be; the pattern says only where it begins.
    [[nodiscard]] bool counts_repeats() const { return has_repeat() && !roll_.measured; }

    [[nodiscard]] bool is_one_way() const { return fabric_ != nullptr && fabric_->one_way.value_or(false); }

    [[nodiscard]] std::string cloth_words() const {
        if (fabric_ == nullptr) {
            return {};
        }
        std::string text = say("{} wide, {} between the selvedges", written(fabric_->width, style_),
                               written(fabric_->width - 2.0 * fabric_->selvedge, style_));
        if (has_repeat()) {
            const bool half = fabric_->match && fabric_->match->is(Match::half_drop);
            const std::string repeat = written(fabric_->repeat, style_);
            text +=
                "; " + (half ? say("repeat {}, half-drop match", repeat) : say("repeat {}, straight match", repeat));
        }
        if (fabric_->shrinkage_pct > 0.0) {
            const int decimals = snapped(fabric_->shrinkage_pct) == std::round(fabric_->shrinkage_pct) ? 0 : 1;
            text += "; " + say("shrinks {} % along its length", number_text(fabric_->shrinkage_pct, decimals, style_));
        }
        return text + (is_one_way() ? "; " + say("one way up") + "." : ".");
    }

    [[nodiscard]] SheetRow row_of(const RollCut& cut, const ShownCut& shown, std::size_t line) {
        shown_end_ = shown.number > 0 ? shown.to : shown_end_;
        const std::string path = fmt::format("rolls.{}.cuts.{}.", roll_.fabric, line);
        const auto mm = [&](Length at, const char* what) { return figure_cell(written(at, style_), path + what); };
        const WindowPlace place = find_place(survey_, figures_, cut.window);
        std::string where = place.window == nullptr ? std::string() : window_title(*place.room, *place.window);
        if (place.window != nullptr && place.window->layered) {
            where += ", " + cut.layer;
        }
        const std::string whose = whose_text(cut, curtains_of(figures_, cut));
        where += whose.empty() ? "" : (where.empty() ? "" : "; ") + whose;
        if (place.figures != nullptr && !provisional_text(minds_of(*place.figures, cut.layer)).empty()) {
            where += ". " + say("Not yet");
        }
        SheetRow row{{word_cell(shown.number > 0 ? std::to_string(shown.number) : "–"), mm(shown.from, "from"),
                      mm(shown.to, "to"), mm(shown.length, "length"),
                      word_cell(one_piece(cut) + (cut.beside ? ", " + say("beside the one before") : ""))}};
        if (counts_repeats()) {
            row.cells.push_back(word_cell(repeats_text(cut)));
        }
        row.cells.push_back(word_cell(std::move(where)));
        return row;
    }

    [[nodiscard]] std::string repeats_text(const RollCut& cut) const {
        if (cut.repeats <= 0.0) {
            return {};
        }
        const double whole = floor_whole(cut.repeats);
        const bool half = cut.repeats > whole + whole_tolerance;
        return (whole > 0.0 || !half ? std::to_string(static_cast<int>(whole)) : std::string()) + (half ? "½" : "");
    }

    [[nodiscard]] SheetBlock in_order() {
        SheetBlock block{.key = "order-of-cutting", .title = say("In the order of cutting")};
        block.columns = {say("no."), say("from"), say("to"), say("cut"), say("piece")};
        if (counts_repeats()) {
            block.columns.emplace_back(say("repeats"));
        }
        block.columns.emplace_back(say("for"));
        const auto shown = shown_cuts(roll_, style_);
        for (std::size_t i = 0; i < roll_.cuts.size(); ++i) {
            block.rows.push_back(row_of(roll_.cuts[i], shown[i], i + 1));
        }
        return block;
    }

    [[nodiscard]] SheetBlock totals() const {
        SheetBlock block{.key = "totals", .title = say("In all")};
        const std::string path = "orders." + roll_.fabric;
        block.rows.push_back(
            {{word_cell(say("Pieces")), figure_cell(cloth_.length, path + ".length_mm"), word_cell(cloth_.summary)}});
        if (order_ != nullptr) {
            const double step = house_rules(survey_.rules).order_step_m;
            block.rows.push_back({{word_cell(say("Order")), figure_cell(cloth_.order, path + ".order_m"),
                                   word_cell(say("sold by the {}", order_text(step, {.decimal = style_.decimal})))}});
        }
        if (order_ != nullptr && shown_end_ > Length::metres(order_->order_m)) {
            block.note =
                say("The marks end at {}, past what is ordered, since each piece is rounded up: order that much.",
                    written(shown_end_, style_));
        }
        return block;
    }

    /// What is used of a roll that came, and what is left of it.
    [[nodiscard]] SheetBlock of_this_roll() const {
        SheetBlock block{.key = "totals", .title = say("Of this roll")};
        block.rows.push_back(
            {{word_cell(say("Measured")), word_cell(written(*roll_.measured, style_)), word_cell("")}});
        block.rows.push_back({{word_cell(say("Last mark")), word_cell(written(shown_end_, style_)),
                               word_cell(say("where the last piece ends"))}});
        for (const Remnant& left : roll_.left_over) {
            block.rows.push_back({{word_cell(say("Left over")), word_cell(written(left.to - left.from, style_)),
                                   word_cell(say("{} to {}", written(left.from, style_), written(left.to, style_)) +
                                             (left.useful ? ", " + say("keep") : ""))}});
        }
        const Length most = room_for_marks();
        if (shown_end_ > cut_length(most, style_)) {
            block.note =
                say("Each piece is rounded up, so the marks end {} past where they must: cut the last pieces by "
                    "the plan’s own lengths, in mm.",
                    written(shown_end_ - most, style_));
        }
        return block;
    }

    /// Where the last piece must end: at the next flaw or join behind it, else at the roll's end.
    [[nodiscard]] Length room_for_marks() const {
        Length last;
        for (const RollCut& cut : roll_.cuts) {
            last = cut.left_out ? last : std::max(last, cut.end);
        }
        Length room = *roll_.measured;
        for (const RollCut& flaw : roll_.flaws) {
            room = flaw.start >= last ? std::min(room, flaw.start) : room;
        }
        return room;
    }

    [[nodiscard]] SheetWords not_enough() const {
        SheetWords words{.title = say("Not enough cloth"), .lines = {}};
        for (const std::string& window : roll_.short_windows) {
            const WindowPlace place = find_place(survey_, figures_, window);
            words.lines.push_back(say("{} can’t be cut whole from the rolls that came: nothing of it stands below.",
                                      place.window == nullptr ? window : window_title(*place.room, *place.window)));
        }
        return words;
    }

    [[nodiscard]] SheetWords before_cutting() const {
        SheetWords words{.title = say("Before the first cut"), .lines = {}};
        words.lines.emplace_back(
            say("Square the end. Marks run from there; mark the top of every piece as it is cut."));
        if (is_one_way()) {
            words.lines.push_back(one_way_text(*fabric_) + " " +
                                  say("The arrows point to the tops; where the roll has them at its other end, all of "
                                      "them turn round together."));
        }
        if (has_repeat()) {
            words.lines.push_back(say(
                "Measure the repeat on the roll: {} is what this list was worked with. Cut by the pattern, not by the "
                "mark, where the two differ, and ask again where they part by more than a hand.",
                written(fabric_->repeat, style_)));
        }
        const auto split = std::ranges::any_of(roll_.cuts, [](const RollCut& cut) { return cut.curtains.size() == 2; });
        if (split) {
            words.lines.emplace_back(say("A split width is cut along its length; each half goes to the outer edge."));
        }
        if (std::ranges::any_of(roll_.cuts,
                                [](const RollCut& cut) { return cut.what == "flaw" || cut.what == "join"; })) {
            words.lines.emplace_back(say("Look at each flaw and join before the piece next to it is cut."));
        }
        if (is_long()) {
            words.lines.emplace_back(
                say("More than 27 m: measure the roll metre by metre first; the next sheet is for it."));
        }
        return words;
    }

    /// The windows that mustn't be cut for yet, each with the gravest of its flags.
    [[nodiscard]] SheetMinds not_yet() const {
        SheetMinds all{.title = say("Not yet"), .minds = {}};
        std::vector<std::string> said;
        for (const RollCut& cut : roll_.cuts) {
            const WindowPlace place = find_place(survey_, figures_, cut.window);
            const bool again = std::ranges::find(said, cut.window) != said.end();
            if (place.window == nullptr || again) {
                continue;
            }
            said.push_back(cut.window);
            auto minds = minds_of(*place.figures, cut.layer);
            if (!provisional_text(minds).empty()) {
                minds.front().text = window_title(*place.room, *place.window) + ": " + minds.front().text;
                all.minds.push_back(std::move(minds.front()));
            }
        }
        return all;
    }

    [[nodiscard]] SheetBlock metres() const {
        SheetBlock block{.key = "count", .title = say("Metre by metre")};
        block.columns = {"m", say("what lies there"), "m", say("what lies there")};
        const double ordered = order_ == nullptr ? 0.0 : order_->order_m;
        const int count = static_cast<int>(ceil_whole(roll_.measured ? roll_.measured->metres() : ordered));
        const int rows = (count + 1) / 2;
        for (int i = 1; i <= rows; ++i) {
            const int right = i + rows;
            block.rows.push_back(
                {{word_cell(std::to_string(i)), word_cell(known_in(i)),
                  word_cell(right <= count ? std::to_string(right) : ""), word_cell(known_in(right))}});
        }
        return block;
    }

    /// The flaws and joins that were written down in one metre of the roll.
    [[nodiscard]] std::string known_in(int metre) const {
        const Length from = Length::metres(metre - 1);
        const Length to = Length::metres(metre);
        std::string text;
        for (const RollCut& flaw : roll_.flaws) {
            if (flaw.start < to && (flaw.end > from || flaw.start >= from)) {
                const std::string start = written(flaw.start, style_);
                text +=
                    (text.empty() ? "" : "; ") +
                    (flaw.end > flaw.start ? say("{} at {} to {}", worded(flaw.what), start, written(flaw.end, style_))
                                           : say("{} at {}", worded(flaw.what), start));
            }
        }
        return text;
    }

    const Survey& survey_;
    const Figures& figures_;
    const RollCuts& roll_;
    const SheetStyle& style_;
    const Fabric* fabric_ = nullptr;
    const Order* order_ = nullptr;
    ClothCuts cloth_;
    Length shown_end_;  ///< where the last piece that was written ends
};

}  // namespace

std::vector<Sheet> cutting_sheets(const Survey& survey, const Figures& figures, std::span<const RollCuts> rolls,
                                  const SheetStyle& style) {
    std::vector<Sheet> sheets;
    std::string counted;
    for (const RollCuts& roll : rolls) {
        CuttingWriter writer(survey, figures, roll, style);
        sheets.push_back(writer.sheet());
        if (writer.is_long() && (roll.measured || counted != roll.fabric)) {
            sheets.push_back(writer.count_sheet());
            counted = roll.fabric;
        }
    }
    return sheets;
}

}  // namespace truehang
