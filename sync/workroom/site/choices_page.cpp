// SPDX-License-Identifier: Apache-2.0
#include "workroom/site/choices_page.h"

#include "figures/choices.h"
#include "sheet/words.h"
#include "sizing/headings.h"
#include "workroom/site/frame.h"
#include "workroom/site/rules_page.h"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <functional>

namespace truehang::workroom {

namespace {

std::string money_text(const Money& money) {
    return fmt::format("{:.2f}{}{}", money.amount, money.currency.empty() ? "" : " ", money.currency);
}

std::string metres_text(Length length) { return fmt::format("{:.2f} m", length.metres()); }

std::string name_of(const Survey& survey, const std::string& id) {
    const auto fabric =
        std::find_if(survey.fabrics.begin(), survey.fabrics.end(), [&id](const Fabric& one) { return one.id == id; });
    return fabric == survey.fabrics.end() ? id : short_name(*fabric);
}

std::string cloths_text(const Survey& survey, const Choice& choice) {
    std::string text;
    for (const ClothTaken& taken : choice.cloths) {
        text += (text.empty() ? "" : "; ") + name_of(survey, taken.fabric) + " " + metres_text(taken.length);
    }
    return text.empty() ? "nothing can be cut" : text;
}

std::string cost_text(const Choice& choice) {
    std::string text;
    for (const Money& sum : choice.cost) {
        text += (text.empty() ? "" : " and ") + money_text(sum);
    }
    return text.empty() ? "no price" : text;
}

std::string widths_text(const Choice& choice) {
    const auto& cloth = choice.figures.cloth;
    if (!cloth) {
        return "";
    }
    const std::string fullness = cloth->fullness ? fmt::format(", {:.2f} ×", *cloth->fullness) : "";
    return fmt::format("{}, {:g} in each{}", cloth->widths, cloth->widths_each, fullness);
}

std::string glass_text(const Choice& choice) {
    const auto& covered = choice.figures.covers_glass;
    if (!covered) {
        return "";
    }
    return covered->mm() < 0.5 ? "none" : fmt::format("{:.0f} mm", covered->mm());
}

std::string mass_said(const Choice& choice) {
    return choice.figures.mass ? fmt::format("{:.1f} kg", choice.figures.mass->kg()) : "";
}

std::string flags_text(const Choice& choice) {
    std::string text;
    for (const Flag& flag : choice.flags) {
        if (flag.severity != Severity::note) {
            text += (text.empty() ? "" : " ") + flag.text;
        }
    }
    return text;
}

/// One line of the table: what it is, and what each choice has there.
void add_row(View& rows, const std::string& what, const std::vector<Choice>& choices,
             const std::function<std::string(const Choice&)>& text) {
    auto row = view();
    auto cells = view_list();
    for (const Choice& choice : choices) {
        auto cell = view();
        cell.set("says", choice.says);
        cell.set("text", text(choice));
        cells << cell;
    }
    row.set("what", what);
    row.set("cells", cells);
    rows << row;
}

View rows_view(const Survey& survey, const std::vector<Choice>& choices) {
    auto rows = view_list();
    add_row(rows, "widths", choices, widths_text);
    add_row(rows, "cloth", choices, [&survey](const Choice& choice) { return cloths_text(survey, choice); });
    add_row(rows, "cloth, in money", choices, cost_text);
    const bool charged = std::any_of(choices.begin(), choices.end(), [](const Choice& one) { return !!one.making; });
    if (charged) {
        add_row(rows, "making, by the width", choices,
                [](const Choice& choice) { return choice.making ? money_text(*choice.making) : ""; });
    }
    add_row(rows, "glass covered when open, each side", choices, glass_text);
    add_row(rows, "weight", choices, mass_said);
    add_row(rows, "to decide or mind (of the others, what is new)", choices, flags_text);
    return rows;
}

/// What the form asked for, where it asked for anything that can be had.
std::vector<Variation> asked_variations(const Survey& survey, std::string_view query) {
    const auto fields = read_form(query);
    const auto field = [&fields](const char* name) {
        const auto found = fields.find(name);
        return found == fields.end() ? std::string() : found->second;
    };
    Variation asked;
    asked.heading = Word<Heading>::find(field("heading"));
    const std::string fullness = field("fullness");
    double number = 0.0;
    const auto [end, fault] = std::from_chars(fullness.data(), fullness.data() + fullness.size(), number);
    if (fault == std::errc{} && end == fullness.data() + fullness.size() && number > 0.0 && number <= 100.0) {
        asked.fullness = number;
    }
    const std::string fabric = field("fabric");
    if (std::any_of(survey.fabrics.begin(), survey.fabrics.end(),
                    [&fabric](const Fabric& one) { return one.id == fabric; })) {
        asked.fabric = fabric;
    }
    return asked == Variation{} ? std::vector<Variation>{} : std::vector<Variation>{asked};
}

View headings_view() {
    auto list = view_list();
    for (const auto& [word, heading] : Words<Heading>::list) {
        auto entry = view();
        entry.set("value", std::string(word));
        entry.set("text", std::string(heading_rule(heading).says));
        list << entry;
    }
    return list;
}

View fabrics_view(const Survey& survey) {
    auto list = view_list();
    for (const Fabric& fabric : survey.fabrics) {
        auto entry = view();
        entry.set("value", fabric.id);
        entry.set("text", short_name(fabric));
        list << entry;
    }
    return list;
}

}  // namespace

std::string choices_page(const Survey& survey, const WindowPlace& place, std::string_view query) {
    const Room& room = *place.room;
    const Window& window = *place.window;
    const std::string layer = window.layered ? window.layers[place.layer].id : "";
    std::vector<Choice> choices;
    if (place.layer < window.layers.size()) {
        auto variations = asked_variations(survey, query);
        if (const auto first = compare(survey, room.id, window.id, layer, {})) {
            const auto usual = usual_variations(survey, window.layers[place.layer], first->choices.front().figures);
            variations.insert(variations.end(), usual.begin(), usual.end());
        }
        if (auto compared = compare(survey, room.id, window.id, layer, variations)) {
            choices = std::move(compared->choices);
        }
    }
    auto values = view();
    auto says = view_list();
    for (const Choice& choice : choices) {
        says << View{choice.says};
    }
    values.set("title", window_title(room, window));
    values.set("some", truth(!choices.empty()));
    values.set("says", says);
    values.set("rows", rows_view(survey, choices));
    values.set("note", std::string(not_a_quotation));
    values.set("action", choices_path(survey, room, window, layer));
    values.set("headings", headings_view());
    values.set("fabrics", fabrics_view(survey));
    const auto back = sheet_path(survey, room, window, layer);
    return framed({"Choices", "page-choices", {{"/", "Surveys"}, {back, "Its sheet"}}, false}, fill("choices", values));
}

}  // namespace truehang::workroom
