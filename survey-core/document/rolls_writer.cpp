// SPDX-License-Identifier: Apache-2.0
#include "document/rolls_document.h"

#include <nlohmann/json.hpp>

namespace truehang {

namespace {

using Json = nlohmann::ordered_json;

Json flaw_json(const RollFlaw& flaw) {
    if (flaw.from == flaw.to) {
        return {{"at_mm", flaw.from.mm()}};
    }
    return {{"from_mm", flaw.from.mm()}, {"to_mm", flaw.to.mm()}};
}

Json roll_json(const Roll& roll) {
    Json json{{"id", roll.id}, {"lot", roll.lot}, {"length_mm", roll.length.mm()}, {"phase_mm", roll.phase.mm()}};
    json["flaws"] = Json::array();
    for (const RollFlaw& flaw : roll.flaws) {
        json["flaws"].push_back(flaw_json(flaw));
    }
    json["joins"] = Json::array();
    for (const RollJoin& join : roll.joins) {
        Json entry{{"at_mm", join.at.mm()}};
        if (join.phase) {
            entry["phase_mm"] = join.phase->mm();
        }
        json["joins"].push_back(std::move(entry));
    }
    return json;
}

}  // namespace

std::string write_rolls(const RollsThatCame& came) {
    Json json{{"format", "truehang.rolls/1"},
              {"survey", came.survey},
              {"useful_mm", came.useful.mm()},
              {"fabrics", Json::array()}};
    for (const RollsOfFabric& fabric : came.fabrics) {
        Json rolls = Json::array();
        for (const Roll& roll : fabric.rolls) {
            rolls.push_back(roll_json(roll));
        }
        json["fabrics"].push_back({{"fabric", fabric.fabric}, {"rolls", std::move(rolls)}});
    }
    return json.dump(1, ' ', false, Json::error_handler_t::replace) + "\n";
}

}  // namespace truehang
