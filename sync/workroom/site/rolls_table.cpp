// SPDX-License-Identifier: Apache-2.0
#include "workroom/site/rolls_table.h"

#include "protocol/digest.h"
#include "survey/house_rules.h"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <algorithm>

namespace truehang::workroom {

namespace {

std::string digest_of(const std::string& bytes) { return sync::hex(sync::sha256(bytes)); }

/// The document without the fabrics that the survey no longer has.
std::string without_unknown_fabrics(const std::string& bytes, const Survey& survey) {
    auto json = nlohmann::ordered_json::parse(bytes, nullptr, false);
    if (!json.is_object() || !json.contains("fabrics") || !json["fabrics"].is_array()) {
        return bytes;
    }
    auto known = nlohmann::ordered_json::array();
    for (const auto& entry : json["fabrics"]) {
        const auto id = entry.value("fabric", std::string());
        if (std::ranges::any_of(survey.fabrics, [&id](const Fabric& each) { return each.id == id; })) {
            known.push_back(entry);
        }
    }
    json["fabrics"] = std::move(known);
    return json.dump();
}

Result<Done> lay_out(const std::string& bytes, RollsTable& table) {
    auto came = read_rolls(bytes, table.survey);
    if (!came) {
        came = read_rolls(without_unknown_fabrics(bytes, table.survey), table.survey);
        table.said =
            "The visit no longer has a cloth that rolls came of. Those rolls are left out here; they stand in the "
            "versions below.";
    }
    if (!came) {
        return Error{ErrorCode::damaged, "rolls", "Stored rolls can’t be read any more."};
    }
    table.came = std::move(came).value();
    return Done{};
}

/// Every rule that holds for a survey, its own over the defaults of this program.
std::string rules_text(const Survey& survey) {
    const HouseRules rules = house_rules(survey.rules);
    std::string text;
    for (const std::string& key : house_rule_keys()) {
        text += fmt::format("{}={}\n", key, rule_value(rules, key).value_or(0.0));
    }
    for (const auto& [heading, mm] : rules.head) {
        text += fmt::format("head {}={}\n", heading, mm);
    }
    return text;
}

}  // namespace

Result<std::optional<RollsTable>> lay_out_rolls(Archive& archive, const std::string& survey_id) {
    const auto document = archive.newest(survey_id);
    if (!document) {
        return document.error();
    }
    if (!*document) {
        return std::optional<RollsTable>();
    }
    auto survey = read_survey((*document)->bytes);
    const RollsShelf shelf(archive);
    auto versions = shelf.versions(survey_id);
    const auto kept = shelf.version(survey_id, 0);
    if (!survey || !versions || !kept) {
        return !survey    ? Error{ErrorCode::damaged, "revision", "A stored document can’t be read any more."}
               : versions ? kept.error()
                          : versions.error();
    }
    RollsTable table{std::move(survey).value(), {}, std::move(versions).value(), {}, {}};
    table.came.survey = survey_id;
    if (*kept) {
        if (const auto laid = lay_out((*kept)->bytes, table); !laid) {
            return laid.error();
        }
        table.basis = {(*document)->receipt.sha256, digest_of((*kept)->bytes), digest_of(rules_text(table.survey)),
                       planner_version};
    }
    return std::optional(std::move(table));
}

Result<std::optional<HousePlan>> kept_plan(Archive& archive, const RollsTable& table) {
    if (table.came.fabrics.empty()) {
        return std::optional(plan_house(table.survey, table.came));
    }
    const auto kept = PlanShelf(archive).plan(table.survey.id);
    if (!kept) {
        return kept.error();
    }
    if (!*kept || (*kept)->basis != table.basis) {
        return std::optional<HousePlan>();
    }
    auto plan = read_roll_plan((*kept)->bytes, table.survey, table.came);
    return plan ? std::optional(std::move(plan).value()) : std::optional<HousePlan>();
}

Result<Done> keep_plan(Archive& archive, const RollsTable& table, const HousePlan& plan) {
    auto bytes = write_roll_plan(plan);
    if (!read_roll_plan(bytes, table.survey, table.came)) {
        return Error{ErrorCode::damaged, "plan", "The plan that was worked out can’t be kept."};
    }
    const auto kept = PlanShelf(archive).keep(table.survey.id, table.basis, std::move(bytes));
    return kept ? Result<Done>(Done{}) : kept.error();
}

}  // namespace truehang::workroom
