// SPDX-License-Identifier: Apache-2.0
#include "document/object_reader.h"
#include "document/rolls_document.h"
#include "document/survey_parts.h"

#include <fmt/format.h>

#include <algorithm>
#include <map>

namespace truehang {

namespace {

constexpr std::size_t most_of_a_kind = 100000;
constexpr NumberRange on_rolls{0.0, 1e12};  ///< mm, over all rolls
constexpr Length held_to = Length::mm(0.001);

void texts(ObjectReader& reader, std::string_view key, std::vector<std::string>& field) {
    const auto read = [&](const JsonValue& item, const std::string& where) {
        if (item.kind == JsonKind::string) {
            field.push_back(item.text);
        } else {
            reader.faults().add(where, fmt::format("Here must stand a text, not {}.", name_of(item.kind)));
        }
    };
    reader.list(key, most_of_a_kind, read, Presence::required);
}

/// Reads what one fabric's rolls are cut into, against its pieces and the rolls that came.
class FabricReader {
public:
    FabricReader(const Survey& survey, const RollsThatCame& came, const HousePieces& pieces)
        : survey_(survey), came_(came), pieces_(pieces) {}

    FabricPlan read(ObjectReader& reader) {
        FabricPlan plan;
        reader.id("fabric", plan.fabric, Presence::required);
        plan.rules = roll_rules(survey_, plan.fabric, came_.useful);
        const auto pieces = pieces_.find(plan.fabric);
        plan.pieces = pieces == pieces_.end() ? std::vector<PieceToCut>() : pieces->second;
        for (const PieceToCut& piece : plan.pieces) {
            left_.emplace(piece.id, &piece);
        }
        const auto of = std::ranges::find(came_.fabrics, plan.fabric, &RollsOfFabric::fabric);
        rolls_ = of == came_.fabrics.end() ? nullptr : &of->rolls;
        if (rolls_ == nullptr) {
            reader.fault("fabric", "No rolls came of this cloth.");
        }
        reader.objects(
            "rolls", most_of_a_kind, [&](ObjectReader& item) { plan.plan.rolls.push_back(roll(item)); },
            Presence::required);
        texts(reader, "not_placed", plan.plan.not_placed);
        texts(reader, "lots", plan.plan.lots);
        texts(reader, "split_rooms", plan.plan.split_rooms);
        texts(reader, "count_first", plan.count_first);
        reader.length("used_mm", plan.plan.used, on_rolls, Presence::required);
        reader.length("least_mm", plan.plan.least, on_rolls, Presence::required);
        reader.length("longest_remnant_mm", plan.plan.longest_remnant, on_rolls, Presence::required);
        reader.length("missing_mm", plan.missing, on_rolls, Presence::required);
        std::optional<bool> most;
        reader.flag("most_windows", most);
        plan.plan.most_windows = most.value_or(true);
        tell_windows(reader, plan);
        return plan;
    }

private:
    PlannedRoll roll(ObjectReader& reader) {
        PlannedRoll planned;
        reader.id("roll", planned.roll, Presence::required);
        reader.text("lot", planned.lot, Presence::required);
        reader.length("used_mm", planned.used, on_rolls, Presence::required);
        const Roll* came = nullptr;
        if (rolls_ != nullptr) {
            const auto found = std::ranges::find(*rolls_, planned.roll, &Roll::id);
            came = found == rolls_->end() ? nullptr : &*found;
        }
        if (came == nullptr) {
            reader.fault("roll", "No such roll came of this cloth.");
        }
        const auto read_cut = [&](ObjectReader& item) {
            planned.cuts.push_back(cut(item, came == nullptr ? Length() : came->length));
        };
        const auto read_remnant = [&](ObjectReader& item) { planned.remnants.push_back(remnant(item)); };
        reader.objects("cuts", most_of_a_kind, read_cut, Presence::required);
        reader.objects("remnants", most_of_a_kind, read_remnant, Presence::required);
        return planned;
    }

    PlannedCut cut(ObjectReader& reader, Length roll) {
        PlannedCut cut;
        reader.id("piece", cut.piece, Presence::required);
        reader.length("from_mm", cut.from, on_rolls, Presence::required);
        reader.length("to_mm", cut.to, on_rolls, Presence::required);
        std::optional<bool> beside;
        reader.flag("beside", beside);
        cut.beside = beside.value_or(false);
        const auto piece = left_.find(cut.piece);
        if (piece == left_.end()) {
            reader.fault("piece", "The survey has no such piece, or it is cut twice.");
        } else if (cut.to - cut.from < piece->second->length - held_to || cut.to > roll + held_to) {
            reader.fault("to_mm", "The piece is longer, or the roll ends before it does.");
        }
        left_.erase(cut.piece);
        return cut;
    }

    static Remnant remnant(ObjectReader& reader) {
        Remnant remnant;
        reader.length("from_mm", remnant.from, on_rolls, Presence::required);
        reader.length("to_mm", remnant.to, on_rolls, Presence::required);
        std::optional<bool> useful;
        reader.flag("useful", useful);
        remnant.useful = useful.value_or(false);
        return remnant;
    }

    /// A window is short where a piece of it isn't placed, and whole otherwise.
    void tell_windows(ObjectReader& reader, FabricPlan& plan) {
        std::set<std::string> names(plan.plan.not_placed.begin(), plan.plan.not_placed.end());
        const bool all = std::ranges::all_of(left_, [&](const auto& left) { return names.contains(left.first); });
        if (!all || names.size() != left_.size()) {
            reader.fault("not_placed", "Every piece of the survey is cut from a roll or isn’t placed.");
        }
        std::set<std::string> short_windows;
        for (const auto& [id, piece] : left_) {
            short_windows.insert(piece->window);
        }
        for (const PieceToCut& piece : plan.pieces) {
            auto& windows = short_windows.contains(piece.window) ? plan.plan.short_windows : plan.plan.windows;
            if (std::ranges::find(windows, piece.window) == windows.end()) {
                windows.push_back(piece.window);
            }
        }
    }

    const Survey& survey_;
    const RollsThatCame& came_;
    const HousePieces& pieces_;
    std::map<std::string, const PieceToCut*> left_;  ///< pieces that no roll was seen to give yet
    const std::vector<Roll>* rolls_ = nullptr;
};

Alternative read_alternative(ObjectReader& reader) {
    Alternative alternative;
    std::optional<std::string> window;
    reader.id("change", alternative.change, Presence::required);
    reader.nullable_text("window", window);
    alternative.window = window.value_or("");
    reader.number("value", alternative.value, any_number);
    reader.text("text", alternative.text, Presence::required);
    texts(reader, "short_windows", alternative.short_windows);
    return alternative;
}

HousePlan read_house(ObjectReader& reader, const Survey& survey, const RollsThatCame& came) {
    HousePlan plan;
    std::string format;
    reader.text("format", format, Presence::required);
    if (reader.has("format") && !is_format(format, "truehang.rollplan/1")) {
        reader.fault("format", fmt::format("This program reads truehang.rollplan/1, not {}.", json_string(format)));
    }
    reader.id("survey", plan.survey, Presence::required);
    if (plan.survey != survey.id) {
        reader.fault("survey", "This plan is of another survey.");
    }
    const HousePieces pieces = house_pieces(survey);
    const auto read_fabric = [&](ObjectReader& item) {
        plan.fabrics.push_back(FabricReader(survey, came, pieces).read(item));
    };
    reader.objects("fabrics", most_of_a_kind, read_fabric, Presence::required);
    const auto same = [](const FabricPlan& each, const RollsOfFabric& of) { return each.fabric == of.fabric; };
    if (!std::ranges::equal(plan.fabrics, came.fabrics, same)) {
        reader.fault("fabrics", "The plan is of other cloths than the rolls that came.");
    }
    texts(reader, "windows", plan.windows);
    texts(reader, "short_windows", plan.short_windows);
    reader.objects(
        "alternatives", most_of_a_kind,
        [&](ObjectReader& item) { plan.alternatives.push_back(read_alternative(item)); }, Presence::required);
    return plan;
}

}  // namespace

Result<HousePlan, Faults> read_roll_plan(std::string_view bytes, const Survey& survey, const RollsThatCame& came) {
    HousePlan plan;
    Faults faults = read_whole_document(bytes, "A roll plan document",
                                        [&](ObjectReader& reader) { plan = read_house(reader, survey, came); });
    if (!faults.empty()) {
        return faults;
    }
    return plan;
}

}  // namespace truehang
