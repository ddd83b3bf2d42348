// SPDX-License-Identifier: Apache-2.0
#include "workroom/site/survey_page.h"

#include "document/document.h"
#include "protocol/digest.h"
#include "protocol/paths.h"
#include "sheet/cutting_list.h"
#include "sheet/measure_sheet.h"
#include "sheet/signed.h"
#include "sheet/template_svg.h"
#include "sheet/words.h"
#include "workroom/site/frame.h"
#include "workroom/site/questions_page.h"
#include "workroom/site/rolls_page.h"
#include "workroom/site/sheet_page.h"
#include "workroom/site/steps_page.h"
#include "workroom/site/steps_table.h"

#include <fmt/format.h>

#include <algorithm>

namespace truehang::workroom {

namespace {

std::string title_of(const Survey& survey) { return survey.title.empty() ? "Untitled visit" : survey.title; }

std::string survey_href(const Survey& survey) { return "/surveys/" + sync::percent_encode(survey.id); }

View text_or_nothing(const std::string& text) { return text.empty() ? truth(false) : View{text}; }

std::string cell_text(const MeasureSheet& sheet, std::string_view figure) {
    const auto* cell = find_cell(sheet, figure);
    return cell == nullptr ? "" : cell->text;
}

View minds_view(const MeasureSheet& sheet) {
    auto minds = view_list();
    std::vector<std::string> said;
    for (const auto& mind : sheet.mind) {
        if (std::find(said.begin(), said.end(), mind.word) != said.end()) {
            continue;
        }
        said.push_back(mind.word);
        auto entry = view();
        entry.set("word", mind.word);
        entry.set("shape", shape_name(word_of(mind.shape)));
        minds << entry;
    }
    return minds;
}

/// What was done last of a layer, and whether that is by other figures than the newest revision's.
void set_step(View& entry, const StepsTable& table, const WindowPlace& place, const std::string& layer) {
    const auto found = std::ranges::find_if(table.layers, [&](const StepsLayer& one) {
        return one.made.room == place.room->id && one.made.window == place.window->id && one.made.layer == layer;
    });
    const auto* mark = found == table.layers.end() ? nullptr : found->furthest();
    entry.set("step", mark == nullptr ? truth(false) : View{step_text(*mark)});
    entry.set("changed", truth(found != table.layers.end() && found->has_changed()));
}

View window_view(const StepsTable& table, const WindowPlace& place) {
    const Survey& survey = table.survey;
    const Figures& figures = table.figures;
    const auto& window = *place.window;
    const auto sheet = measure_sheet(survey, figures, place.index, place.layer);
    const auto& layer = window.layered ? window.layers[place.layer].id : std::string();
    const auto name = window.name.empty() ? window.id : window.name;
    auto entry = view();
    entry.set("id", window.id);
    entry.set("href", sheet_path(survey, *place.room, window, layer));
    const auto sheets = sheet_path(survey, *place.room, window, layer);
    const bool hangs = place.layer < figures.windows[place.index].layers.size();
    entry.set("making", hangs ? View{sheets + "/making"} : truth(false));
    entry.set("hanging", hangs ? View{sheets + "/hanging"} : truth(false));
    entry.set("light", sheet_path(survey, *place.room, window, "") + "/light");
    entry.set("template", template_svg(survey, figures, place.index).ok()
                              ? View{sheet_path(survey, *place.room, window, "") + "/template.svg"}
                              : truth(false));
    entry.set("name", layer.empty() ? name : name + ", " + layer);
    entry.set("ask", ask_path(survey.id, place.room->id, window.id));
    entry.set("hangs", sheet.description);
    entry.set("width", cell_text(sheet, "finished.width_mm"));
    entry.set("drop", cell_text(sheet, "finished.drop_mm"));
    entry.set("mind", minds_view(sheet));
    set_step(entry, table, place, layer);
    return entry;
}

View rooms_view(const StepsTable& table) {
    const Survey& survey = table.survey;
    auto rooms = view_list();
    std::size_t index = 0;
    for (const auto& room : survey.rooms) {
        auto windows = view_list();
        for (const auto& window : room.windows) {
            for (std::size_t layer = 0; layer < std::max<std::size_t>(1, window.layers.size()); ++layer) {
                windows << window_view(table, {&room, &window, index, layer});
            }
            ++index;
        }
        auto entry = view();
        entry.set("name", room.name.empty() ? room.id : room.name);
        entry.set("about", text_or_nothing(room.wall));
        entry.set("windows", windows);
        rooms << entry;
    }
    return rooms;
}

View cloth_view(const ClothCuts& cloth) {
    auto entry = view();
    auto lines = view_list();
    for (const auto& line : cloth.lines) {
        auto cut = view();
        cut.set("where", line.where.empty() ? truth(false) : View{line.where});
        cut.set("piece", line.piece);
        cut.set("length", line.length);
        cut.set("total", line.total);
        cut.set("provisional", truth(line.provisional));
        lines << cut;
    }
    entry.set("lines", lines);
    entry.set("name", cloth.name);
    entry.set("summary", cloth.summary);
    entry.set("length", cloth.length);
    entry.set("order", cloth.order);
    entry.set("length_figure", "orders." + cloth.fabric + ".length_mm");
    entry.set("order_figure", "orders." + cloth.fabric + ".order_m");
    entry.set("measure_roll", truth(cloth.measure_roll));
    entry.set("provisional", truth(cloth.provisional));
    return entry;
}

void set_cutting(View& values, const CuttingList& list) {
    auto cloths = view_list();
    for (const auto& cloth : list.cloths) {
        cloths << cloth_view(cloth);
    }
    auto haberdashery = view_list();
    for (std::size_t i = 0; i < list.haberdashery.size(); ++i) {
        auto entry = view();
        entry.set("comma", i == 0 ? "" : ", ");
        entry.set("text", list.haberdashery[i]);
        haberdashery << entry;
    }
    values.set("cloths_some", truth(!list.cloths.empty() || !list.haberdashery.empty()));
    values.set("cloths", cloths);
    values.set("haberdashery_some", truth(!list.haberdashery.empty()));
    values.set("haberdashery", haberdashery);
}

View who_view(const Survey& survey) {
    auto who = view_list();
    const auto say = [&who](const std::string& line) {
        if (!line.empty()) {
            who << View{line};
        }
    };
    if (survey.client) {
        const auto& client = *survey.client;
        std::string line = client.name;
        for (const auto& part : {client.phone, client.email}) {
            line += line.empty() || part.empty() ? part : ", " + part;
        }
        say(line);
    }
    say(survey.site ? survey.site->address : "");
    say(survey.measured_at.empty() ? ""
                                   : "Measured " + day_text(survey.measured_at) +
                                         (survey.measured_by.empty() ? "" : " by " + survey.measured_by) + ".");
    return who;
}

bool is_provisional(const Figures& figures) {
    return std::any_of(figures.orders.begin(), figures.orders.end(),
                       [](const Order& order) { return order.provisional; });
}

View receipts_view(const std::vector<sync::SurveyReceipt>& receipts) {
    auto list = view_list();
    for (auto receipt = receipts.rbegin(); receipt != receipts.rend(); ++receipt) {
        auto entry = view();
        entry.set("revision", std::to_string(receipt->revision));
        entry.set("received", moment_text(receipt->received_at));
        entry.set("sha256", receipt->sha256);
        list << entry;
    }
    return list;
}

/// That layers were done by figures that differ since, and where the steps stand.
void set_steps(View& values, const StepsTable& table) {
    std::string changed;
    for (const StepsLayer& layer : table.layers) {
        if (layer.has_changed()) {
            changed += (changed.empty() ? "" : "; ") + layer.made.title +
                       (layer.made.layer.empty() ? "" : ", " + layer.made.layer);
        }
    }
    values.set("steps_href", steps_path(table.survey.id));
    values.set("changed_since", changed.empty() ? truth(false) : View{changed});
}

/// How far a client's signature covers what there is now, with what differs.
void set_signed(View& values, const StepsTable& table) {
    const Survey& survey = table.survey;
    const auto since = since_signed(survey);
    const auto* agreed = since ? &*survey.signed_off->agreed : nullptr;
    const bool broken =
        agreed != nullptr && !agreed->digest.empty() && sync::hex(sync::sha256(sealed_text(*agreed))) != agreed->digest;
    values.set("signed", since && !since->differs() && !broken ? View{signed_sentence(*since)} : truth(false));
    values.set("signed_differs", since && since->differs() ? View{signed_sentence(*since)} : truth(false));
    values.set("unsealed", broken ? View{"What was agreed isn’t as it was signed: its seal doesn’t fit."}
                           : table.lost_agreement
                               ? View{"An earlier revision was signed; this one carries no agreement."}
                               : truth(false));
    auto layers = view_list();
    for (const LayerDifference& layer : since ? since->difference.layers : std::vector<LayerDifference>{}) {
        auto entry = view();
        entry.set("title", layer.layer.empty() ? layer.title : layer.title + ", " + layer.layer);
        entry.set("before", "agreed");
        entry.set("after", fmt::format("revision {}", table.newest()));
        set_differences(entry, layer.lines);
        layers << entry;
    }
    values.set("agreed_layers", layers);
}

void set_questions(View& values, const Survey& survey, const std::vector<sync::AskedQuestion>& asked) {
    const auto open = std::ranges::count_if(asked, [](const auto& one) { return one.answers.empty(); });
    values.set("ask_href", ask_path(survey.id));
    values.set("open_questions",
               open == 0 ? truth(false)
                         : View{fmt::format("{} question{} no answer yet.", open, open == 1 ? " has" : "s have")});
    values.set("asked_some", truth(!asked.empty()));
    values.set("questions", questions_view(survey, asked));
}

}  // namespace

std::string survey_page(const StepsTable& table, std::size_t photos_missing,
                        const std::vector<sync::AskedQuestion>& asked, const std::string& since) {
    const Survey& survey = table.survey;
    const Figures& figures = table.figures;
    const auto& receipts = table.receipts;
    auto values = view();
    values.set("since", since);
    values.set("of", survey.id);
    values.set("title", title_of(survey));
    values.set("revision", receipts.empty() ? "" : std::to_string(receipts.back().revision));
    values.set("received", receipts.empty() ? "" : moment_text(receipts.back().received_at));
    values.set("who", who_view(survey));
    values.set("provisional", is_provisional(figures)
                                  ? View{"A window still has something to settle: don’t cut what it rests on."}
                                  : truth(false));
    values.set("photos_missing", photos_missing == 0 ? truth(false)
                                                     : View{fmt::format("{} photo{} not come in yet.", photos_missing,
                                                                        photos_missing == 1 ? " has" : "s have")});
    values.set("rooms", rooms_view(table));
    set_cutting(values, cutting_list(survey, figures));
    values.set("receipts", receipts_view(receipts));
    auto kinds = view_list();
    for (const auto kind :
         {SheetKind::measure, SheetKind::cutting, SheetKind::making, SheetKind::hanging, SheetKind::light}) {
        auto entry = view();
        entry.set("href", house_sheets_path(survey, kind));
        entry.set("text", std::string(title_of(kind)) + (kind == SheetKind::cutting ? "" : "s"));
        kinds << entry;
    }
    values.set("kinds", kinds);
    values.set("survey_href", survey_href(survey));
    values.set("figures_href", sync::figures_path(survey.id));
    values.set("rolls_href", rolls_path(survey.id));
    set_steps(values, table);
    set_signed(values, table);
    set_questions(values, survey, asked);
    return framed({title_of(survey), "page-survey", {{"/", "Surveys"}}, false}, fill("survey", values));
}

}  // namespace truehang::workroom
