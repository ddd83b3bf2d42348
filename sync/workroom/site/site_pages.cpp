// SPDX-License-Identifier: Apache-2.0
#include "workroom/site/site_pages.h"

#include "document/document.h"
#include "figures/figures.h"
#include "protocol/paths.h"
#include "protocol/sheet_code.h"
#include "sheet/csv.h"
#include "sheet/template_svg.h"
#include "workroom/archive/arrivals.h"
#include "workroom/archive/question_shelf.h"
#include "workroom/archive/rules_shelf.h"
#include "workroom/site/choices_page.h"
#include "workroom/site/erased_page.h"
#include "workroom/site/frame.h"
#include "workroom/site/list_page.h"
#include "workroom/site/rolls_page.h"
#include "workroom/site/rules_page.h"
#include "workroom/site/sheet_code_page.h"
#include "workroom/site/sheet_page.h"
#include "workroom/site/steps_table.h"
#include "workroom/site/survey_page.h"
#include "workroom/site/template_text.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <filesystem>

namespace truehang::workroom {

namespace {

/// The decoded segments of a path; nothing where one can't be decoded.
std::optional<std::vector<std::string>> decoded(std::string_view path) {
    std::vector<std::string> parts;
    while (!path.empty()) {
        path.remove_prefix(1);
        const auto slash = std::min(path.find('/'), path.size());
        auto part = sync::percent_decode(path.substr(0, slash));
        if (!part) {
            return std::nullopt;
        }
        parts.push_back(std::move(*part));
        path.remove_prefix(slash);
    }
    return parts;
}

SitePage failed_page() {
    return {500, framed({"Not readable", "page-missing", {}, false},
                        "<h1>The records can’t be read</h1><p>Look at the workroom’s own messages.</p>")};
}

bool photo_is_here(Archive& archive, const std::string& sha256) {
    const auto photo = archive.photo(sha256);
    return photo && photo->has_value();
}

/// `find`: words to look for; `before`: the place in the order of arrival where an earlier page ended.
SitePage front_page(const PageDesk& desk, std::string_view query) {
    auto fields = read_form(query);
    HeadsAsked asked{.words = fields["find"]};
    if (std::ranges::find(state_words, fields["state"]) != state_words.end()) {
        asked.state = fields["state"];
    }
    const auto& before = fields["before"];
    std::from_chars(before.data(), before.data() + before.size(), asked.before);
    const auto since = newest_cursor(desk.archive);  // before what is shown: nothing falls between the two
    const auto found = find_heads(desk.archive, asked);
    return since && found ? SitePage{.body = list_page(*found, asked, desk.caller, *since), .listens = true}
                          : failed_page();
}

/// What a path below a survey asks for.
struct SurveyPath {
    std::string survey, room, window, layer;
    std::string leaf;    ///< what of it: `measure`, `making`, `orders.csv`, …; empty: its own page
    bool house = false;  ///< /sheets/KIND
};

/// `/surveys/ID`, `/surveys/ID/sheets/KIND`, `/surveys/ID/FILE.csv` and
/// `/surveys/ID/rooms/ROOM/windows/WINDOW[/layers/LAYER][/LEAF]`; nothing for any other.
std::optional<SurveyPath> survey_path(const std::vector<std::string>& parts) {
    if (parts.size() < 2 || parts[0] != "surveys") {
        return std::nullopt;
    }
    SurveyPath asked;
    asked.survey = parts[1];
    if (parts.size() <= 3) {
        asked.leaf = parts.size() == 3 ? parts[2] : "";
        return asked;
    }
    if (parts.size() == 4 && parts[2] == "sheets") {
        asked.house = true;
        asked.leaf = parts[3];
        return asked;
    }
    if (parts.size() < 6 || parts[2] != "rooms" || parts[4] != "windows") {
        return std::nullopt;
    }
    asked.room = parts[3];
    asked.window = parts[5];
    std::size_t at = 6;
    if (parts.size() >= at + 2 && parts[at] == "layers") {
        asked.layer = parts[at + 1];
        at += 2;
    }
    if (parts.size() > at + 1) {
        return std::nullopt;
    }
    asked.leaf = parts.size() > at ? parts[at] : word_of(SheetKind::measure);
    return asked;
}

/// A query's value by its name; empty where it isn't there. None that is asked for needs decoding.
std::string_view asked_value(std::string_view query, std::string_view name) {
    while (!query.empty()) {
        const auto end = std::min(query.find('&'), query.size());
        const auto pair = query.substr(0, end);
        if (pair.size() > name.size() && pair.starts_with(name) && pair[name.size()] == '=') {
            return pair.substr(name.size() + 1);
        }
        query.remove_prefix(std::min(end + 1, query.size()));
    }
    return {};
}

std::optional<SitePage> csv_file(const Survey& survey, const SurveyPath& asked) {
    const auto what = asked.leaf == "orders.csv"   ? std::optional(CsvOf::orders)
                      : asked.leaf == "pieces.csv" ? std::optional(CsvOf::pieces)
                                                   : std::nullopt;
    if (!what) {
        return std::nullopt;
    }
    return SitePage{200, csv_of(survey, work_out(survey), *what), std::string(csv_type), asked.leaf};
}

std::optional<SitePage> template_page(const Survey& survey, const SurveyPath& asked) {
    const auto place = find_window(survey, asked.room, asked.window, "");
    if (!place) {
        return std::nullopt;
    }
    const auto figures = work_out(survey);
    auto svg = template_svg(survey, figures, place->index, sheet_style_for(survey));
    if (!svg) {
        return std::nullopt;
    }
    return SitePage{200, std::move(svg).value(), "image/svg+xml", "template.svg"};
}

/// Sets the cuts of the rolls that came, where any did. A page instead where their plan isn't there.
std::optional<SitePage> set_cuts(const PageDesk& desk, const Survey& survey, const Figures& figures,
                                 SheetsAsked& asked) {
    const auto table = lay_out_rolls(desk.archive, survey.id);
    if (!table || !*table) {
        return failed_page();
    }
    if ((*table)->came.fabrics.empty()) {
        return std::nullopt;
    }
    const auto plan = desk.bench.by_now(**table);
    if (!plan) {
        return failed_page();
    }
    if (!*plan) {
        return SitePage{.body = working_page(survey), .looks_again = true};
    }
    asked.rolls = cuts_as_planned(survey, figures, (*table)->came, **plan);
    return std::nullopt;
}

/// What is printed on every sheet of a revision, so that it can be looked up.
SheetStamp stamp_of(const PageDesk& desk, const sync::SurveyReceipt& receipt) {
    const auto code = sync::sheet_code(receipt.sha256);
    const auto address = desk.reach.addresses.empty() ? std::string() : desk.reach.addresses.front();
    return {code, address.empty() ? "" : address + sync::sheet_code_path(code), receipt.revision, receipt.received_at};
}

std::optional<SitePage> sheets_of_path(const PageDesk& desk, const Survey& survey, const SurveyPath& asked,
                                       const SheetStamp& stamp, std::string_view path, std::string_view query) {
    const auto kind = sheet_kind(asked.leaf);
    const bool there = asked.house || find_window(survey, asked.room, asked.window, asked.layer);
    if (!kind || !there) {
        return std::nullopt;
    }
    SheetPageAsked page;
    page.sheets = {*kind, asked.room, asked.window, asked.layer};
    page.style = sheet_style_for(survey);
    if (const auto unit = length_unit(asked_value(query, "unit"))) {
        page.style.unit = *unit == LengthUnit::in ? LengthUnit::in : LengthUnit::mm;
    }
    page.paper = paper_of(asked_value(query, "paper")).value_or(Paper::a4);
    page.path = path;
    const auto figures = work_out(survey);
    if (*kind == SheetKind::cutting) {
        if (auto instead = set_cuts(desk, survey, figures, page.sheets)) {
            return instead;
        }
    }
    page.stamp = stamp;
    const auto is_here = [&desk](const std::string& sha256) { return photo_is_here(desk.archive, sha256); };
    auto html = sheets_page(survey, figures, page, is_here);
    return html ? std::optional(SitePage{200, std::move(*html)}) : std::nullopt;
}

std::optional<SitePage> page_of_survey(const PageDesk& desk, const SurveyPath& asked, std::string_view path,
                                       std::string_view query) {
    Archive& archive = desk.archive;
    const auto since = newest_cursor(archive);
    const auto document = archive.newest(asked.survey);
    if (!since || !document) {
        return failed_page();
    }
    if (!*document) {
        return std::nullopt;
    }
    const auto survey = read_survey((*document)->bytes);
    if (!survey) {
        return failed_page();
    }
    if (asked.leaf == "choices") {
        const auto place = find_window(*survey, asked.room, asked.window, asked.layer);
        return place ? std::optional(SitePage{200, choices_page(*survey, *place, query)}) : std::nullopt;
    }
    if (asked.leaf.empty()) {
        const auto table = lay_out_steps(archive, asked.survey);
        const auto missing = missing_photos(archive, asked.survey);
        const auto questions = QuestionShelf(archive).questions(asked.survey);
        return table && *table && missing && questions
                   ? SitePage{.body = survey_page(**table, missing->size(), *questions, *since), .listens = true}
                   : failed_page();
    }
    if (asked.window.empty() && !asked.house) {
        return csv_file(*survey, asked);
    }
    return asked.leaf == "template.svg"
               ? template_page(*survey, asked)
               : sheets_of_path(desk, *survey, asked, stamp_of(desk, (*document)->receipt), path, query);
}

}  // namespace

std::optional<SitePage> site_page(const PageDesk& desk, std::string_view path, std::string_view query) {
    Archive& archive = desk.archive;
    if (path == "/") {
        return front_page(desk, query);
    }
    if (path == "/house-rules") {
        const RulesShelf shelf(archive);
        const auto document = shelf.current();
        const auto versions = shelf.versions();
        return document && versions
                   ? SitePage{200, rules_page(*document, {*versions, "", {}, {}, desk.caller.may_do(Right::rule)})}
                   : failed_page();
    }
    if (path == "/erased") {
        const auto erased = erased_surveys(archive);
        return erased ? SitePage{200, erased_page(*erased)} : failed_page();
    }
    if (const auto sheet = sheet_code_page(archive, path)) {
        return *sheet ? SitePage{(*sheet)->status, (*sheet)->html} : failed_page();
    }
    const auto parts = decoded(path);
    const auto asked = parts ? survey_path(*parts) : std::nullopt;
    return asked ? page_of_survey(desk, *asked, path, query) : std::nullopt;
}

std::optional<http::Response> open_file(std::string_view path, const std::string& font_folder) {
    static constexpr std::array<std::pair<std::string_view, std::string_view>, 3> fonts{
        {{"/font/gentium-plus.ttf", "gentiumplus/GentiumPlus-Regular.ttf"},
         {"/font/lato.ttf", "lato/Lato-Regular.ttf"},
         {"/font/lato-bold.ttf", "lato/Lato-Bold.ttf"}}};
    http::Response response;
    response.headers = {{"Cache-Control", "max-age=3600"}, {"X-Content-Type-Options", "nosniff"}};
    static constexpr std::array<std::pair<std::string_view, std::string_view>, 3> within{
        {{"/style.css", "text/css; charset=utf-8"},
         {"/arrivals.js", "text/javascript; charset=utf-8"},
         {"/icon.svg", "image/svg+xml"}}};
    for (const auto& [name, type] : within) {
        if (path == name) {
            response.headers.emplace_back("Content-Type", std::string(type));
            response.body = std::string(template_text(name.substr(1)));
            return response;
        }
    }
    for (const auto& [name, file] : fonts) {
        response.file = std::filesystem::path(font_folder) / file;
        if (path == name && std::filesystem::is_regular_file(response.file)) {
            response.headers.emplace_back("Content-Type", "font/ttf");
            return response;
        }
    }
    return std::nullopt;
}

std::string missing_page() {
    auto values = view();
    return framed({"Nothing is here", "page-missing", {}, false}, fill("missing", values));
}

}  // namespace truehang::workroom
