// SPDX-License-Identifier: Apache-2.0
#include "document/document.h"
#include "document/figures_parts.h"
#include "figures/choices.h"

namespace truehang {
namespace {

using Json = nlohmann::ordered_json;

Json money_json(const Money& money) {
    return {{"currency", money.currency}, {"amount", two_decimals_json(money.amount)}};
}

template <class E>
void add_word(Json& json, const char* key, const std::optional<E>& value) {
    if (value) {
        json[key] = Word<E>::word_for(*value);
    }
}

Json variation_json(const Variation& variation) {
    Json json = Json::object();
    add_word(json, "heading", variation.heading);
    if (variation.fullness) {
        json["fullness"] = two_decimals_json(*variation.fullness);
    }
    add_word(json, "length", variation.length);
    if (variation.fabric) {
        json["fabric"] = *variation.fabric;
    }
    if (variation.lining) {
        json["lining"] = variation.lining->empty() ? Json(nullptr) : Json(*variation.lining);
    }
    if (variation.hardware_length) {
        json["hardware_length_mm"] = two_decimals_json(variation.hardware_length->mm());
    }
    if (variation.decided) {
        Json& decided = json["decided"] = Json::object();
        if (variation.decided->widths_each) {
            decided["widths_each"] = two_decimals_json(*variation.decided->widths_each);
        }
        if (variation.decided->repeats) {
            decided["repeats"] = two_decimals_json(*variation.decided->repeats);
        }
    }
    return json;
}

Json choice_json(const Choice& choice) {
    Json json{
        {"says", choice.says}, {"on_the_edge", choice.on_the_edge}, {"changes", variation_json(choice.variation)}};
    json["cloths"] = Json::array();
    for (const ClothTaken& taken : choice.cloths) {
        Json cloth{{"fabric", taken.fabric}, {"length_mm", two_decimals_json(taken.length.mm())}};
        cloth["cost"] = taken.cost ? money_json(*taken.cost) : Json(nullptr);
        json["cloths"].push_back(std::move(cloth));
    }
    json["cost"] = Json::array();
    for (const Money& sum : choice.cost) {
        json["cost"].push_back(money_json(sum));
    }
    if (choice.making) {
        json["making"] = money_json(*choice.making);
    }
    json["covers_glass_mm"] =
        choice.figures.covers_glass ? two_decimals_json(choice.figures.covers_glass->mm()) : Json(nullptr);
    json["figures"] = layer_figures_json(choice.figures);
    json["flags"] = Json::array();
    for (const Flag& flag : choice.flags) {
        json["flags"].push_back(flag_figures_json(flag));
    }
    return json;
}

}  // namespace

std::string write_choices(const Choices& compared) {
    Json json{{"format", "truehang.choices/1"}, {"window", compared.window}};
    if (!compared.layer.empty()) {
        json["layer"] = compared.layer;
    }
    json["note"] = not_a_quotation;
    json["choices"] = Json::array();
    for (const Choice& choice : compared.choices) {
        json["choices"].push_back(choice_json(choice));
    }
    return json.dump(1, ' ', false, Json::error_handler_t::replace) + "\n";
}

}  // namespace truehang
