// SPDX-License-Identifier: Apache-2.0
#include "workroom/site/rolls_page.h"

#include "protocol/paths.h"
#include "sheet/cutting_list.h"
#include "sheet/svg.h"
#include "workroom/site/frame.h"
#include "workroom/site/sheet_page.h"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>

namespace truehang::workroom {

namespace {

constexpr std::size_t blank_rows = 2;

View text_or_nothing(const std::string& text) { return text.empty() ? truth(false) : View{text}; }

void set_texts(View& values, const std::string& name, const std::vector<std::string>& texts) {
    auto list = view_list();
    for (const std::string& text : texts) {
        list << View{text};
    }
    values.set(name, list);
    values.set(name + "_some", truth(!texts.empty()));
}

std::string title_of(const Survey& survey) { return survey.title.empty() ? "Untitled visit" : survey.title; }

std::string value_of(const FormFields& fields, const std::string& name) {
    const auto found = fields.find(name);
    return found == fields.end() ? std::string() : found->second;
}

std::size_t form_rows(const FormFields& fields) {
    const auto text = value_of(fields, "rows");
    std::size_t rows = 0;
    std::from_chars(text.data(), text.data() + text.size(), rows);
    return std::min(rows, most_rows);
}

/// One fabric's form as it is shown.
struct ShownForm {
    const Fabric* fabric = nullptr;
    std::string key;  ///< unique on the page
    FormFields fields;
    std::map<std::string, std::string> faults;
    bool patterned = false;
    std::string unit;
};

View input_view(const ShownForm& form, const char* name, std::size_t row, const std::string& label) {
    auto entry = view();
    const auto field = row_field(name, row);
    const auto fault = form.faults.find(field);
    const bool list = std::string_view(name) == "flaws" || std::string_view(name) == "joins";
    entry.set("id", form.key + "-" + field);
    entry.set("field", field);
    entry.set("label", label);
    entry.set("value", value_of(form.fields, field));
    entry.set("longest", list ? "2000" : "60");
    entry.set("wide", truth(list || fault != form.faults.end()));
    entry.set("fault", fault == form.faults.end() ? truth(false) : View{fault->second});
    return entry;
}

View row_view(const ShownForm& form, std::size_t row) {
    auto entry = view();
    const auto name = value_of(form.fields, row_field("name", row));
    const bool kept = row < form_rows(form.fields);
    entry.set("legend", kept ? (name.empty() ? "Roll" : "Roll " + name) : "Another roll");
    auto inputs = view_list();
    inputs << input_view(form, "name", row, "Name or number");
    inputs << input_view(form, "lot", row, "Lot");
    inputs << input_view(form, "length", row, "Length, " + form.unit);
    if (form.patterned) {
        inputs << input_view(form, "line", row, "A repeat’s line at");
    }
    inputs << input_view(form, "flaws", row, "Flaws, from–to");
    inputs << input_view(form, "joins", row, "Joins at");
    entry.set("inputs", inputs);
    return entry;
}

View form_view(const ShownForm& form, const ClothCuts& cloth) {
    auto entry = view();
    const auto kept = form_rows(form.fields);
    const auto rows = std::min(kept + blank_rows, most_rows);
    auto list = view_list();
    for (std::size_t row = 0; row < rows; ++row) {
        list << row_view(form, row);
    }
    const auto whole = form.faults.find("");
    entry.set("key", form.key);
    entry.set("fabric", form.fabric->id);
    entry.set("name", cloth.name);
    entry.set("ordered", cloth.order + " ordered" + (cloth.provisional ? ", provisional" : ""));
    entry.set("unit", form.unit);
    entry.set("patterned", truth(form.patterned));
    entry.set("rows", list);
    entry.set("count", std::to_string(rows));
    entry.set("whole_fault", whole == form.faults.end() ? truth(false) : View{whole->second});
    return entry;
}

/// A form for each fabric that is ordered, and for each that rolls are kept of.
View forms_view(const Survey& survey, const CuttingList& cutting, const RollsThatCame& came, const RollsPage& page) {
    auto forms = view_list();
    const auto typed_fabric = value_of(page.typed, "fabric");
    for (std::size_t i = 0; i < survey.fabrics.size(); ++i) {
        const Fabric& fabric = survey.fabrics[i];
        const auto ordered = std::ranges::find(cutting.cloths, fabric.id, &ClothCuts::fabric);
        const bool kept = std::ranges::count(came.fabrics, fabric.id, &RollsOfFabric::fabric) > 0;
        if (ordered == cutting.cloths.end() && !kept && typed_fabric != fabric.id) {
            continue;
        }
        const bool typed = !page.typed.empty() && typed_fabric == fabric.id;
        ClothCuts none;
        none.name = short_name(fabric);
        none.order = "nothing";
        ShownForm form{&fabric,
                       fmt::format("cloth-{}", i + 1),
                       typed ? page.typed : form_of(came, survey, fabric.id),
                       typed ? page.faults : std::map<std::string, std::string>{},
                       fabric.repeat > Length(),
                       std::string(word_of(entry_unit_of(survey)))};
        forms << form_view(form, ordered == cutting.cloths.end() ? none : *ordered);
    }
    return forms;
}

View roll_view(const RollSheet& roll, const std::string& id) {
    auto entry = view();
    entry.set("title", roll.title);
    entry.set("used", roll.used);
    entry.set("left", text_or_nothing(roll.left));
    SvgOptions svg;
    svg.palette = {"var(--paper)", "var(--ink)", "var(--soft)", "var(--thread)", "var(--wash)"};
    svg.unit = "mm";
    svg.id = id;
    entry.set("drawing", svg_of(roll.drawing, svg));
    svg.id = id + "-narrow";
    entry.set("narrow", svg_of(roll.narrow, svg));
    auto cuts = view_list();
    for (const RollCutLine& cut : roll.cuts) {
        auto line = view();
        line.set("number", cut.number);
        line.set("from", cut.from);
        line.set("to", cut.to);
        line.set("where", cut.where);
        line.set("what", cut.what);
        cuts << line;
    }
    entry.set("cuts", cuts);
    return entry;
}

View plans_view(const HouseRollSheet& sheet) {
    auto plans = view_list();
    for (std::size_t i = 0; i < sheet.fabrics.size(); ++i) {
        const FabricRollSheet& fabric = sheet.fabrics[i];
        auto entry = view();
        entry.set("name", fabric.name);
        entry.set("says", fabric.says);
        set_texts(entry, "more", fabric.more);
        set_texts(entry, "short_of", fabric.short_of);
        auto rolls = view_list();
        for (std::size_t r = 0; r < fabric.rolls.size(); ++r) {
            rolls << roll_view(fabric.rolls[r], fmt::format("roll-{}-{}", i + 1, r + 1));
        }
        entry.set("rolls", rolls);
        plans << entry;
    }
    return plans;
}

View versions_view(const Survey& survey, const std::vector<KeptRolls>& versions) {
    auto list = view_list();
    for (auto version = versions.rbegin(); version != versions.rend(); ++version) {
        auto entry = view();
        entry.set("href", rolls_path(survey.id) + "/document/" + std::to_string(version->version));
        entry.set("version", std::to_string(version->version));
        entry.set("day", day_text(version->saved_at));
        list << entry;
    }
    return list;
}

/// Ordered cloths that no roll is kept of.
std::vector<std::string> not_here(const CuttingList& cutting, const RollsThatCame& came) {
    std::vector<std::string> names;
    for (const ClothCuts& cloth : cutting.cloths) {
        if (std::ranges::count(came.fabrics, cloth.fabric, &RollsOfFabric::fabric) == 0) {
            names.push_back(cloth.name);
        }
    }
    return names;
}

void set_plan(View& values, const HouseRollSheet& sheet) {
    values.set("plans_some", truth(!sheet.fabrics.empty()));
    values.set("plans", plans_view(sheet));
    values.set("short_some", truth(!sheet.short_of.empty()));
    set_texts(values, "short", sheet.short_of);
    set_texts(values, "whole", sheet.whole);
    set_texts(values, "alternatives", sheet.alternatives);
}

std::vector<BackStep> way_back(const Survey& survey) {
    return {{"/", "Surveys"}, {"/surveys/" + sync::percent_encode(survey.id), title_of(survey)}};
}

}  // namespace

std::string rolls_path(std::string_view survey) { return "/surveys/" + sync::percent_encode(survey) + "/rolls"; }

std::string rolls_page(const Survey& survey, const Figures& figures, const RollsThatCame& came, const RollsPage& page) {
    const auto cutting = cutting_list(survey, figures);
    const auto path = rolls_path(survey.id);
    auto values = view();
    values.set("title", "Rolls for " + title_of(survey));
    values.set("which", page.versions.empty() ? std::string("Nothing saved yet.")
                                              : fmt::format("Version {} of {}.", page.versions.back().version,
                                                            day_text(page.versions.back().saved_at)));
    values.set("said", text_or_nothing(page.said));
    values.set("action", path);
    values.set("version", std::to_string(page.versions.empty() ? 0 : page.versions.back().version));
    values.set("with_forms", truth(page.with_forms));
    values.set("may_change", truth(page.may_change));
    values.set("forms", forms_view(survey, cutting, came, page));
    values.set("forms_some", truth(!cutting.cloths.empty() || !came.fabrics.empty()));
    values.set("working", truth(page.plan == nullptr));
    set_plan(values, page.plan == nullptr ? HouseRollSheet{}
                                          : roll_sheet(survey, figures, came, *page.plan, sheet_style_for(survey)));
    set_texts(values, "not_here", not_here(cutting, came));
    const bool counted =
        page.plan == nullptr
            ? !count_sheets(survey, came).empty()
            : std::ranges::any_of(page.plan->fabrics, [](const FabricPlan& plan) { return !plan.count_first.empty(); });
    values.set("count_some", truth(counted));
    values.set("count_href", path + "/count");
    values.set("change_href", path + "?change#came");
    values.set("again_href", path);
    values.set("cutting_href", house_sheets_path(survey, SheetKind::cutting));
    values.set("document_href", path + "/document");
    values.set("plan_href", path + "/plan");
    values.set("versions_some", truth(!page.versions.empty()));
    values.set("versions", versions_view(survey, page.versions));
    return framed({"Rolls", "page-rolls", way_back(survey), false}, fill("rolls", values));
}

std::string working_page(const Survey& survey) {
    auto values = view();
    values.set("title", title_of(survey));
    auto back = way_back(survey);
    back.push_back({rolls_path(survey.id), "Rolls"});
    return framed({"Working the plan out", "page-working", std::move(back), false}, fill("working", values));
}

std::string count_page(const Survey& survey, const RollsThatCame& came) {
    const auto sheets = count_sheets(survey, came, sheet_style_for(survey));
    auto values = view();
    auto counts = view_list();
    for (const CountSheet& count : sheets) {
        auto entry = view();
        auto lines = view_list();
        for (const CountLine& line : count.lines) {
            auto metre = view();
            metre.set("metre", line.metre);
            metre.set("at", line.at);
            metre.set("known", line.known);
            lines << metre;
        }
        entry.set("title", count.title);
        entry.set("lines", lines);
        counts << entry;
    }
    values.set("title", title_of(survey));
    values.set("some", truth(!sheets.empty()));
    values.set("counts", counts);
    auto back = way_back(survey);
    back.push_back({rolls_path(survey.id), "Rolls"});
    return framed({"Metre by metre", "page-count", std::move(back), false}, fill("count", values));
}

}  // namespace truehang::workroom
