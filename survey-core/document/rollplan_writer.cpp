// SPDX-License-Identifier: Apache-2.0
#include "document/rolls_document.h"

#include <cmath>
#include <map>
#include <nlohmann/json.hpp>

namespace truehang {

namespace {

using Json = nlohmann::ordered_json;

/// Millimetres to the micrometre, whole ones without a point.
Json mm(Length length) {
    const double rounded = std::round(length.mm() * 1000.0) / 1000.0;
    if (rounded == std::trunc(rounded)) {
        return static_cast<long long>(rounded);
    }
    return rounded;
}

using Pieces = std::map<std::string, const PieceToCut*>;

Json piece_json(const PieceToCut& piece) {
    Json json{{"id", piece.id}, {"window", piece.window}};
    if (!piece.layer.empty()) {
        json["layer"] = piece.layer;
    }
    json["what"] = piece.what;
    json["curtain"] = piece.curtain > 0 ? Json(piece.curtain) : Json(nullptr);
    json["length_mm"] = mm(piece.length);
    json["phase_mm"] = piece.matched ? mm(piece.phase) : Json(nullptr);
    return json;
}

Json roll_json(const PlannedRoll& roll, const Pieces& pieces) {
    Json json{{"roll", roll.roll}, {"lot", roll.lot}, {"cuts", Json::array()}};
    for (const PlannedCut& cut : roll.cuts) {
        json["cuts"].push_back({{"piece", cut.piece},
                                {"window", pieces.at(cut.piece)->window},
                                {"what", pieces.at(cut.piece)->what},
                                {"from_mm", mm(cut.from)},
                                {"to_mm", mm(cut.to)},
                                {"beside", cut.beside}});
    }
    json["remnants"] = Json::array();
    for (const Remnant& remnant : roll.remnants) {
        json["remnants"].push_back(
            {{"from_mm", mm(remnant.from)}, {"to_mm", mm(remnant.to)}, {"useful", remnant.useful}});
    }
    json["used_mm"] = mm(roll.used);
    return json;
}

Json fabric_json(const FabricPlan& fabric) {
    Pieces pieces;
    Json json{{"fabric", fabric.fabric}, {"pieces", Json::array()}, {"rolls", Json::array()}};
    for (const PieceToCut& piece : fabric.pieces) {
        pieces[piece.id] = &piece;
        json["pieces"].push_back(piece_json(piece));
    }
    for (const PlannedRoll& roll : fabric.plan.rolls) {
        json["rolls"].push_back(roll_json(roll, pieces));
    }
    json["not_placed"] = fabric.plan.not_placed;
    json["lots"] = fabric.plan.lots;
    json["split_rooms"] = fabric.plan.split_rooms;
    json["used_mm"] = mm(fabric.plan.used);
    json["least_mm"] = mm(fabric.plan.least);
    json["gap_pct"] = shown_gap_pct(fabric.plan);
    json["most_windows"] = fabric.plan.most_windows;
    json["longest_remnant_mm"] = mm(fabric.plan.longest_remnant);
    json["missing_mm"] = mm(fabric.missing);
    json["count_first"] = fabric.count_first;
    return json;
}

Json alternative_json(const Alternative& alternative) {
    return {{"change", alternative.change},
            {"window", alternative.window.empty() ? Json(nullptr) : Json(alternative.window)},
            {"value", std::round(alternative.value * 10000.0) / 10000.0},
            {"text", alternative.text},
            {"short_windows", alternative.short_windows}};
}

}  // namespace

nlohmann::ordered_json roll_plan_json(const HousePlan& plan) {
    Json json{{"format", "truehang.rollplan/1"}, {"survey", plan.survey}, {"fabrics", Json::array()}};
    for (const FabricPlan& fabric : plan.fabrics) {
        json["fabrics"].push_back(fabric_json(fabric));
    }
    json["windows"] = plan.windows;
    json["short_windows"] = plan.short_windows;
    json["alternatives"] = Json::array();
    for (const Alternative& alternative : plan.alternatives) {
        json["alternatives"].push_back(alternative_json(alternative));
    }
    return json;
}

std::string write_roll_plan(const HousePlan& plan) {
    return roll_plan_json(plan).dump(1, ' ', false, Json::error_handler_t::replace) + "\n";
}

}  // namespace truehang
