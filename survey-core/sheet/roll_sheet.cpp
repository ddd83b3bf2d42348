// SPDX-License-Identifier: Apache-2.0
#include "sheet/roll_sheet.h"

#include "sheet/planned_roll.h"
#include "sheet/roll_cuts.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>

namespace truehang {

namespace {

/// The drawing of a phone's width: its rows are shorter, so that its words stay as large.
constexpr double narrow_width = 82.0;
constexpr Length narrow_row = Length::mm(4000);

std::string metres(Length length) { return fmt::format("{:.2f} m", length.metres()); }

std::string joined(const std::vector<std::string>& parts, std::string_view between) {
    std::string text;
    for (const std::string& part : parts) {
        text += (text.empty() ? "" : std::string(between)) + part;
    }
    return text;
}

std::string room_name(const Room& room) { return room.name.empty() ? room.id : room.name; }
std::string own_name(const Window& window) { return window.name.empty() ? window.id : window.name; }

/// What windows and rooms are called, by their ids.
class Names {
public:
    explicit Names(const Survey& survey) : survey_(survey) {}

    [[nodiscard]] std::string window(const std::string& id) const {
        for (const Room& room : survey_.rooms) {
            for (const Window& window : room.windows) {
                if (window.id == id) {
                    return window_title(room, window);
                }
            }
        }
        return id;
    }
    [[nodiscard]] std::vector<std::string> lines(const PieceToCut& piece) const {
        for (const Room& room : survey_.rooms) {
            for (const Window& window : room.windows) {
                if (window.id == piece.window && room.id == piece.room) {
                    return {room_name(room), own_name(window)};
                }
            }
        }
        return {piece.window};
    }
    /// What a piece's layer is called; empty where its window has but one.
    [[nodiscard]] std::string layer(const RollCut& cut) const {
        for (const Room& room : survey_.rooms) {
            for (const Window& window : room.windows) {
                if (window.id == cut.window) {
                    return window.layered ? cut.layer : std::string();
                }
            }
        }
        return cut.layer;
    }
    [[nodiscard]] std::string room(const std::string& id) const {
        const auto room = std::ranges::find(survey_.rooms, id, &Room::id);
        return room == survey_.rooms.end() ? id : room_name(*room);
    }
    [[nodiscard]] std::vector<std::string> windows(const std::vector<std::string>& ids) const {
        std::vector<std::string> names;
        std::ranges::transform(ids, std::back_inserter(names), [this](const auto& id) { return window(id); });
        return names;
    }

private:
    const Survey& survey_;
};

/// "drop", "row of tabs": a piece without its number.
std::string one_piece(const std::string& what) {
    const std::string text = piece_text(what, 1);
    return text.starts_with("1 ") ? text.substr(2) : text;
}

/// "drop 2 of 4, left curtain": which piece of its window it is.
std::string what_of(const RollCut& cut, const std::string& layer, int curtains) {
    if (cut.left_out) {
        return cut.what == "left over" ? "cut off and keep: left over" : "leave: " + cut.what;
    }
    std::string text = one_piece(cut.what);
    text += cut.of > 1 ? fmt::format(" {} of {}", cut.number, cut.of) : "";
    const std::string whose = whose_text(cut, curtains);
    text += whose.empty() ? "" : ", " + whose;
    text += layer.empty() ? "" : ", " + layer;
    return text + (cut.beside ? ", beside the one before" : "");
}

std::string used_text(const FabricPlan& fabric) {
    int pieces = 0;
    for (const PlannedRoll& roll : fabric.plan.rolls) {
        pieces += static_cast<int>(roll.cuts.size());
    }
    if (pieces == 0) {
        return fabric.pieces.empty() ? "Nothing of the house is cut from this cloth."
                                     : "No window can be cut whole from what came.";
    }
    const auto rolls = static_cast<int>(fabric.plan.rolls.size());
    const double gap = shown_gap_pct(fabric.plan);
    return fmt::format("{} from {}: {} of cloth used, {}.", counted(pieces, "piece", "pieces"),
                       counted(rolls, "roll", "rolls"), metres(fabric.plan.used),
                       gap > 0.0 ? fmt::format("at most {:g} % over the least possible", gap)
                                 : std::string("which is the least possible"));
}

std::vector<std::string> lots_text(const FabricPlan& fabric, const Names& names) {
    std::vector<std::string> lots;
    for (const std::string& lot : fabric.plan.lots) {
        lots.push_back(lot.empty() ? "none said" : lot);
    }
    std::vector<std::string> more;
    if (lots.size() == 1) {
        more.push_back(fabric.plan.lots.front().empty() ? "No lot was said."
                                                        : "All from one lot: " + lots.front() + ".");
    } else if (!lots.empty()) {
        more.push_back("Lots: " + joined(lots, ", ") + ". All of a window comes from one of them.");
    }
    std::vector<std::string> rooms;
    std::ranges::transform(fabric.plan.split_rooms, std::back_inserter(rooms),
                           [&](const auto& id) { return names.room(id); });
    if (!rooms.empty()) {
        more.push_back("Windows of different lots hang in one room: " + joined(rooms, ", ") +
                       ". Lay the cloths side by side in daylight before you cut.");
    }
    return more;
}

/// "4 drops, 1 row of tabs for Parlour, south window", a line a window.
std::vector<std::string> short_text(const FabricPlan& fabric, const Names& names) {
    std::vector<std::string> lines;
    for (const std::string& window : fabric.plan.short_windows) {
        std::vector<std::string> kinds;
        std::map<std::string, int> counts;
        for (const PieceToCut& piece : fabric.pieces) {
            if (piece.window == window && counts[piece.what]++ == 0) {
                kinds.push_back(piece.what);
            }
        }
        for (std::string& kind : kinds) {
            kind = piece_text(kind, counts[kind]);
        }
        lines.push_back(names.window(window) + ": " + joined(kinds, ", "));
    }
    if (!lines.empty() && fabric.missing > Length()) {
        lines.push_back(metres(fabric.missing) + " more in one length would do for what isn’t placed.");
    }
    if (!lines.empty() && !fabric.plan.most_windows) {
        lines.push_back("It isn’t proved that no more windows could be cut.");
    }
    return lines;
}

std::string left_text(const RollCuts& roll, const SheetStyle& style) {
    std::vector<std::string> parts;
    for (const Remnant& remnant : roll.left_over) {
        parts.push_back(fmt::format("{} ({} to {}{})", written(remnant.to - remnant.from, style),
                                    written(remnant.from, style), written(remnant.to, style),
                                    remnant.useful ? ", keep" : ""));
    }
    return parts.empty() ? "" : "Left over: " + joined(parts, "; ") + ".";
}

std::string roll_title(const Roll& roll, const SheetStyle& style) {
    return "Roll " + roll.id + (roll.lot.empty() ? "" : ", lot " + roll.lot) + ", " + written(roll.length, style) +
           " long";
}

/// The sheets of one fabric's rolls.
class RollWriter {
public:
    RollWriter(const Figures& figures, const FabricPlan& plan, const Names& names, PlannedRollOptions options,
               const SheetStyle& style)
        : figures_(figures), plan_(plan), names_(names), options_(options), style_(style) {}

    [[nodiscard]] RollSheet sheet(const Roll& roll, const PlannedRoll& planned, const RollCuts& cuts) const {
        RollSheet sheet;
        sheet.title = roll_title(roll, style_);
        sheet.used = metres(planned.used) + " used.";
        sheet.left = left_text(cuts, style_);
        std::vector<DrawnPiece> drawn;
        const auto shown = shown_cuts(cuts, style_);
        for (std::size_t i = 0; i < shown.size(); ++i) {
            const RollCut& cut = cuts.cuts[i];
            sheet.cuts.push_back(line(cut, shown[i]));
            if (!cut.left_out) {
                const auto& piece = *std::ranges::find(plan_.pieces, planned.cuts[drawn.size()].piece, &PieceToCut::id);
                auto lines = names_.lines(piece);
                lines.push_back(one_piece(piece.what));
                drawn.push_back({std::move(lines), written(shown[i].to, style_), piece.widths < 0.75});
            }
        }
        sheet.drawing = planned_roll_drawing(roll, planned, drawn, options_);
        auto narrow = options_;
        narrow.width = narrow_width;
        narrow.row = narrow_row;
        sheet.narrow = planned_roll_drawing(roll, planned, drawn, narrow);
        return sheet;
    }

private:
    [[nodiscard]] RollCutLine line(const RollCut& cut, const ShownCut& shown) const {
        return {shown.number > 0 ? std::to_string(shown.number) : "–", written(shown.from, style_),
                written(shown.to, style_), cut.window.empty() ? std::string() : names_.window(cut.window),
                what_of(cut, names_.layer(cut), curtains_of(figures_, cut))};
    }

    const Figures& figures_;
    const FabricPlan& plan_;
    const Names& names_;
    PlannedRollOptions options_;
    SheetStyle style_;
};

std::string known_text(const MetreMark& mark, const SheetStyle& style) {
    std::vector<std::string> known;
    for (const RollFlaw& flaw : mark.flaws) {
        known.push_back(flaw.from == flaw.to ? "flaw at " + written(flaw.from, style)
                                             : "flaw " + written(flaw.from, style) + " to " + written(flaw.to, style));
    }
    for (const Length join : mark.joins) {
        known.push_back("join at " + written(join, style));
    }
    return joined(known, "; ");
}

CountSheet count_of(const Roll& roll, const std::string& fabric, const SheetStyle& style) {
    CountSheet sheet{fabric + ": " + roll_title(roll, style), {}};
    for (const MetreMark& mark : metre_marks(roll)) {
        sheet.lines.push_back({std::to_string(mark.metre), written(mark.at, style), known_text(mark, style)});
    }
    return sheet;
}

std::vector<RollSheet> sheets_of_rolls(const RollWriter& writer, const RollPlan& plan, const std::vector<Roll>& rolls,
                                       const std::vector<RollCuts>& cuts) {
    std::vector<RollSheet> sheets;
    auto of_roll = cuts.begin();
    for (const PlannedRoll& planned : plan.rolls) {
        const auto roll = std::ranges::find(rolls, planned.roll, &Roll::id);
        if (roll != rolls.end() && !planned.cuts.empty() && of_roll != cuts.end()) {
            sheets.push_back(writer.sheet(*roll, planned, *of_roll++));
        }
    }
    return sheets;
}

}  // namespace

HouseRollSheet roll_sheet(const Survey& survey, const Figures& figures, const RollsThatCame& came,
                          const HousePlan& plan, const SheetStyle& style) {
    const Names names(survey);
    HouseRollSheet house;
    for (const FabricPlan& fabric_plan : plan.fabrics) {
        const auto fabric = std::ranges::find(survey.fabrics, fabric_plan.fabric, &Fabric::id);
        const auto of = std::ranges::find(came.fabrics, fabric_plan.fabric, &RollsOfFabric::fabric);
        if (fabric == survey.fabrics.end() || of == came.fabrics.end()) {
            continue;
        }
        PlannedRollOptions options;
        options.cloth_width = fabric->width > Length() ? fabric->width : options.cloth_width;
        const RollWriter writer(figures, fabric_plan, names, options, style);
        house.fabrics.push_back(
            {fabric_plan.fabric, short_name(*fabric), used_text(fabric_plan), lots_text(fabric_plan, names),
             short_text(fabric_plan, names),
             sheets_of_rolls(writer, fabric_plan.plan, of->rolls, cuts_as_planned(figures, of->rolls, fabric_plan))});
    }
    house.whole = names.windows(plan.windows);
    house.short_of = names.windows(plan.short_windows);
    for (const Alternative& alternative : plan.alternatives) {
        house.alternatives.push_back(alternative.text);
    }
    return house;
}

std::vector<CountSheet> count_sheets(const Survey& survey, const RollsThatCame& came, const SheetStyle& style) {
    std::vector<CountSheet> counts;
    HousePieces pieces = house_pieces(survey);
    for (const RollsOfFabric& of : came.fabrics) {
        const auto fabric = std::ranges::find(survey.fabrics, of.fabric, &Fabric::id);
        if (fabric == survey.fabrics.end()) {
            continue;
        }
        const auto first = counted_first(of.rolls, pieces[of.fabric]);
        for (const Roll& roll : of.rolls) {
            if (std::ranges::count(first, roll.id) > 0) {
                counts.push_back(count_of(roll, short_name(*fabric), style));
            }
        }
    }
    return counts;
}

}  // namespace truehang
