// SPDX-License-Identifier: Apache-2.0
#include "figures/choices.h"

#include "sizing/headings.h"
#include "survey/house_rules.h"
#include "units/rounding.h"
#include "units/saying.h"

#include <algorithm>
#include <array>

namespace truehang {

namespace {

/// Where the layer stands that is compared: the survey cut down to its one window.
struct OneWindow {
    Survey survey;
    std::size_t layer = 0;

    [[nodiscard]] Window& window() { return survey.rooms.front().windows.front(); }
    [[nodiscard]] const Window& window() const { return survey.rooms.front().windows.front(); }
};

std::optional<OneWindow> one_window(const Survey& survey, std::string_view room_id, std::string_view window_id,
                                    std::string_view layer_id) {
    for (const Room& room : survey.rooms) {
        const auto window = std::ranges::find(room.windows, window_id, &Window::id);
        if (window == room.windows.end() || (!room_id.empty() && room.id != room_id)) {
            continue;
        }
        const auto layer =
            layer_id.empty() ? window->layers.begin() : std::ranges::find(window->layers, layer_id, &Layer::id);
        if (layer == window->layers.end()) {
            return std::nullopt;
        }
        OneWindow one;
        one.layer = static_cast<std::size_t>(layer - window->layers.begin());
        one.survey.id = survey.id;
        one.survey.entry_unit = survey.entry_unit;
        one.survey.tape = survey.tape;
        one.survey.rules = survey.rules;
        one.survey.rules.numbers.erase("placing_repeats");  // once an order, not once a window
        one.survey.fabrics = survey.fabrics;
        Room only = room;
        only.windows = {*window};
        one.survey.rooms = {std::move(only)};
        return one;
    }
    return std::nullopt;
}

std::string length_says(HemAt length) {
    switch (length) {
        case HemAt::floor:
            return say("to the floor");
        case HemAt::sill:
            return say("to the sill");
        case HemAt::below_sill:
            return say("below the sill");
        case HemAt::break_:
            return say("breaking on the floor");
        case HemAt::puddle:
            return say("puddling on the floor");
        case HemAt::given:
            break;
    }
    return say("to a given height");
}

std::string fabric_says(const Survey& survey, const std::string& id) {
    const auto fabric = std::ranges::find(survey.fabrics, id, &Fabric::id);
    return fabric == survey.fabrics.end() || fabric->name.empty() ? id : fabric->name;
}

std::string says(const Survey& survey, const Variation& variation) {
    std::string text;
    const auto add = [&](const std::string& part) { text += (text.empty() ? "" : ", ") + part; };
    if (variation.heading) {
        add(worded(heading_rule(*variation.heading).says));
    }
    if (variation.fullness) {
        add(say("{:g} × fullness", *variation.fullness));
    }
    if (variation.length) {
        add(length_says(*variation.length));
    }
    if (variation.fabric) {
        add(fabric_says(survey, *variation.fabric));
    }
    if (variation.lining) {
        add(variation.lining->empty() ? say("unlined") : say("lined with {}", fabric_says(survey, *variation.lining)));
    }
    if (variation.hardware_length) {
        add(say("hardware {:g} mm long", variation.hardware_length->mm()));
    }
    if (!text.empty() && text.front() >= 'a' && text.front() <= 'z') {
        text.front() = static_cast<char>(text.front() - 'a' + 'A');
    }
    return text.empty() ? say("As it stands") : text;
}

void add_to(std::vector<Money>& sums, const Money& money) {
    const auto sum = std::ranges::find(sums, money.currency, &Money::currency);
    if (sum == sums.end()) {
        sums.push_back(money);
    } else {
        sum->amount += money.amount;
    }
}

/// Lengths and money of what the layer is cut from.
void take_cloths(const OneWindow& one, const Figures& worked, Choice& choice) {
    const std::string layer = one.window().layered ? one.window().layers[one.layer].id : "";
    choice.cloths.clear();
    choice.cost.clear();
    for (const Order& order : worked.orders) {
        ClothTaken taken;
        taken.fabric = order.fabric;
        for (const Cut& cut : order.cuts) {
            if (cut.layer == layer && !cut.window.empty()) {
                taken.length += cut.count * cut.length;
            }
        }
        if (taken.length.mm() > 0.0) {
            choice.cloths.push_back(std::move(taken));
        }
    }
}

/// What the cloths and the making come to, each where its price is known.
void price(const Survey& survey, Choice& choice) {
    const HouseRules rules = house_rules(survey.rules);
    for (ClothTaken& taken : choice.cloths) {
        const auto fabric = std::ranges::find(survey.fabrics, taken.fabric, &Fabric::id);
        if (fabric != survey.fabrics.end() && fabric->price_per_m) {
            taken.cost = Money{fabric->currency, taken.length.metres() * *fabric->price_per_m};
            add_to(choice.cost, *taken.cost);
        }
    }
    const auto& cloth = choice.figures.cloth;
    if (cloth && rules.making_per_width > 0.0) {
        const auto face = std::ranges::find(survey.fabrics, cloth->fabric, &Fabric::id);
        choice.making =
            Money{face == survey.fabrics.end() ? "" : face->currency, cloth->widths * rules.making_per_width};
    }
}

Choice work_choice(OneWindow one, const Variation& variation) {
    Choice choice;
    choice.variation = variation;
    choice.says = says(one.survey, variation);
    Layer& layer = one.window().layers[one.layer];
    layer = varied(std::move(layer), variation);
    Figures worked = work_out(one.survey);
    WindowFigures& window = worked.windows.front();
    take_cloths(one, worked, choice);
    if (one.layer < window.layers.size()) {
        choice.figures = std::move(window.layers[one.layer]);
    }
    for (Flag& flag : window.flags) {
        if (flag.layer.empty() || flag.layer == layer.id) {
            choice.flags.push_back(std::move(flag));
        }
    }
    price(one.survey, choice);
    return choice;
}

/// What takes the other answer of an edge; nothing where it changes nothing that is cut.
Variation taking(const Cloth& first, const ClothEdge& edge) {
    Variation variation;
    if (edge.repeats) {
        variation.decided.emplace().repeats = edge.repeats;
    } else if (edge.widths_each != first.widths_each) {
        variation.decided.emplace().widths_each = edge.widths_each;
    }
    return variation;
}

/// What settles the edges of the first choice as it stands.
Variation keeping(const Cloth& first) {
    Variation variation;
    for (const ClothEdge& edge : first.edges) {
        if (edge.repeats) {
            (variation.decided ? *variation.decided : variation.decided.emplace()).repeats = first.repeats;
        } else if (edge.widths_each != first.widths_each) {
            (variation.decided ? *variation.decided : variation.decided.emplace()).widths_each = first.widths_each;
        }
    }
    return variation;
}

/// The other answer of an edge, worked as if it were taken; where it changes nothing that is cut, with the face cloth
/// that the edge tells.
Choice work_edge(const OneWindow& one, const Choice& first, const ClothEdge& edge) {
    const Variation variation = taking(*first.figures.cloth, edge);
    Choice choice = first;
    if (variation != Variation{}) {
        choice = work_choice(one, variation);
    } else {
        Cloth& cloth = *choice.figures.cloth;
        for (ClothTaken& taken : choice.cloths) {
            taken.length += taken.fabric == cloth.fabric ? edge.length - cloth.length : Length();
        }
        cloth.widths_each = edge.widths_each;
        cloth.widths = edge.widths;
        cloth.cut_drop = edge.cut_drop;
        cloth.length = edge.length;
        cloth.railroaded = edge.railroaded;
        choice.figures.mass.reset();  // was worked for the other length
        choice.figures.bracket_mass.reset();
        choice.cost.clear();
        price(one.survey, choice);
    }
    choice.variation = variation;
    std::erase_if(choice.flags, [](const Flag& flag) { return flag.code == "edge-decided"; });
    choice.says = say("If {}", edge.when);
    choice.on_the_edge = true;
    return choice;
}

/// Leaves the flags that the first choice doesn't have.
void keep_new_flags(const Choice& first, Choice& choice) {
    std::erase_if(choice.flags, [&](const Flag& flag) {
        return std::ranges::any_of(
            first.flags, [&](const Flag& known) { return known.code == flag.code && known.text == flag.text; });
    });
}

bool names_known_fabrics(const Survey& survey, const Variation& variation) {
    const auto is_known = [&](const std::optional<std::string>& id) {
        return !id || id->empty() || std::ranges::find(survey.fabrics, *id, &Fabric::id) != survey.fabrics.end();
    };
    return is_known(variation.fabric) && is_known(variation.lining);
}

}  // namespace

Layer varied(Layer layer, const Variation& variation) {
    if (!layer.treatment) {
        layer.treatment.emplace();
    }
    Treatment& treatment = *layer.treatment;
    if (variation.heading) {
        const bool other = !treatment.heading || !treatment.heading->is(*variation.heading);
        treatment.heading = Word<Heading>(*variation.heading);
        if (other) {
            treatment.fullness.reset();
        }
    }
    if (variation.fullness) {
        treatment.fullness = variation.fullness;
    }
    if (variation.length) {
        treatment.length = Word<HemAt>(*variation.length);
    }
    if (variation.fabric) {
        treatment.fabric = variation.fabric;
    }
    if (variation.lining) {
        treatment.lining = variation.lining->empty() ? std::nullopt : variation.lining;
    }
    if (variation.hardware_length) {
        if (!layer.hardware) {
            layer.hardware.emplace();
        }
        layer.hardware->length = variation.hardware_length;
    }
    if (variation.decided) {
        Decided& decided = treatment.decided ? *treatment.decided : treatment.decided.emplace();
        decided.widths_each = variation.decided->widths_each ? variation.decided->widths_each : decided.widths_each;
        decided.repeats = variation.decided->repeats ? variation.decided->repeats : decided.repeats;
    }
    return layer;
}

std::vector<Variation> usual_variations(const Survey& survey, const Layer& layer, const LayerFigures& figures) {
    std::vector<Variation> usual;
    if (!layer.treatment || !layer.treatment->heading || !layer.treatment->heading->known()) {
        return usual;
    }
    const Treatment& treatment = *layer.treatment;
    const HeadingRule& rule = heading_rule(*treatment.heading->known());
    constexpr double step = 0.25;
    const double fullness = treatment.fullness.value_or(rule.fullness);
    for (const double other : {fullness - step, fullness + step}) {
        if (other >= rule.least && other <= rule.most) {
            usual.emplace_back().fullness = other;
        }
    }
    const auto lining = std::ranges::find_if(
        survey.fabrics, [](const Fabric& fabric) { return fabric.role && fabric.role->is(FabricRole::lining); });
    if (treatment.lining) {
        usual.emplace_back().lining = "";
    } else if (lining != survey.fabrics.end()) {
        usual.emplace_back().lining = lining->id;
    }
    constexpr int most_cloths = 3;
    int cloths = 0;
    for (const Fabric& fabric : survey.fabrics) {
        const bool face = !fabric.role || fabric.role->is(FabricRole::face) || fabric.role->is(FabricRole::sheer);
        if (face && fabric.id != treatment.fabric && cloths++ < most_cloths) {
            usual.emplace_back().fabric = fabric.id;
        }
    }
    if (figures.covers_glass && figures.covers_glass->mm() >= 1.0 && layer.hardware && layer.hardware->length) {
        const int sides = figures.finished ? figures.finished->curtains : 2;
        const double share = rule.stack * 2.0 / sides;
        // Each mm of hardware gives half a mm at each side and takes its share for the cloth drawn back.
        usual.emplace_back().hardware_length =
            *layer.hardware->length + cut_up(2.0 / (1.0 - share) * *figures.covers_glass);
    }
    return usual;
}

std::optional<Choices> compare(const Survey& survey, std::string_view room, std::string_view window,
                               std::string_view layer, const std::vector<Variation>& variations) {
    const auto one = one_window(survey, room, window, layer);
    if (!one || !std::ranges::all_of(variations,
                                     [&](const Variation& wanted) { return names_known_fabrics(survey, wanted); })) {
        return std::nullopt;
    }
    Choices compared;
    compared.window = one->window().id;
    compared.layer = one->window().layered ? one->window().layers[one->layer].id : "";
    const Choice first = work_choice(*one, {});
    compared.choices.push_back(first);
    if (first.figures.cloth) {
        compared.choices.front().variation = keeping(*first.figures.cloth);
        for (const ClothEdge& edge : first.figures.cloth->edges) {
            compared.choices.push_back(work_edge(*one, first, edge));
        }
    }
    for (const Variation& variation : variations) {
        compared.choices.push_back(work_choice(*one, variation));
    }
    for (std::size_t i = 1; i < compared.choices.size(); ++i) {
        keep_new_flags(first, compared.choices[i]);
    }
    return compared;
}

}  // namespace truehang
