// SPDX-License-Identifier: Apache-2.0
#include "workroom/site/site_pages.h"

#include "document/document.h"
#include "figures/figures.h"
#include "protocol/paths.h"
#include "workroom/archive/rules_shelf.h"
#include "workroom/site/choices_page.h"
#include "workroom/site/frame.h"
#include "workroom/site/rules_page.h"
#include "workroom/site/sheet_page.h"
#include "workroom/site/survey_page.h"
#include "workroom/site/template_text.h"

#include <algorithm>
#include <array>
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
                        "<h1>The records can't be read</h1><p>Look at the workroom's own messages.</p>")};
}

bool photo_is_here(Archive& archive, const std::string& sha256) {
    const auto photo = archive.photo(sha256);
    return photo && photo->has_value();
}

std::optional<SitePage> front_page(Archive& archive) {
    const auto documents = archive.newest_of_all();
    if (!documents) {
        return failed_page();
    }
    std::vector<SurveyLine> lines;
    for (const auto& document : *documents) {
        auto survey = read_survey(document.bytes);
        if (!survey) {
            return failed_page();
        }
        const auto photos = photos_of(*survey).size();
        const auto here = photos - missing_photos(archive, *survey).size();
        lines.push_back({std::move(survey).value(), document.receipt, here, photos});
    }
    return SitePage{200, list_page(lines)};
}

std::optional<SitePage> page_of_survey(Archive& archive, std::vector<std::string> parts, std::string_view query) {
    const bool choices = parts.size() % 2 == 1;
    if (choices) {
        parts.pop_back();
    }
    const auto document = archive.newest(parts[1]);
    if (!document) {
        return failed_page();
    }
    if (!*document) {
        return std::nullopt;
    }
    const auto survey = read_survey((*document)->bytes);
    if (!survey) {
        return failed_page();
    }
    if (choices) {
        const auto place = find_window(*survey, parts[3], parts[5], parts.size() == 8 ? parts[7] : "");
        return place ? std::optional(SitePage{200, choices_page(*survey, *place, query)}) : std::nullopt;
    }
    const auto figures = work_out(*survey);
    if (parts.size() == 2) {
        const auto receipts = archive.receipts(parts[1]);
        return receipts
                   ? SitePage{200, survey_page(*survey, figures, *receipts, missing_photos(archive, *survey).size())}
                   : failed_page();
    }
    const auto place = find_window(*survey, parts[3], parts[5], parts.size() == 8 ? parts[7] : "");
    if (!place) {
        return std::nullopt;
    }
    const auto is_here = [&archive](const std::string& sha256) { return photo_is_here(archive, sha256); };
    return SitePage{200, sheet_page(*survey, figures, *place, is_here, false)};
}

}  // namespace

std::optional<SitePage> site_page(Archive& archive, std::string_view path, std::string_view query) {
    if (path == "/") {
        return front_page(archive);
    }
    if (path == "/house-rules") {
        const RulesShelf shelf(archive.rules_folder());
        const auto document = shelf.current();
        return document ? SitePage{200, rules_page(*document, {shelf.versions(), "", {}, {}})} : failed_page();
    }
    const auto parts = decoded(path);
    const bool of_survey = parts && parts->size() >= 2 && parts->front() == "surveys";
    const auto count = of_survey ? parts->size() : 0;
    const bool window = count >= 6 && count <= 9 && (*parts)[2] == "rooms" && (*parts)[4] == "windows" &&
                        (count < 8 || (*parts)[6] == "layers") && (count % 2 == 0 || parts->back() == "choices");
    return count == 2 || window ? page_of_survey(archive, *parts, query) : std::nullopt;
}

std::optional<http::Response> open_file(std::string_view path, const std::string& font_folder) {
    static constexpr std::array<std::pair<std::string_view, std::string_view>, 3> fonts{
        {{"/font/gentium-plus.ttf", "gentiumplus/GentiumPlus-Regular.ttf"},
         {"/font/lato.ttf", "lato/Lato-Regular.ttf"},
         {"/font/lato-bold.ttf", "lato/Lato-Bold.ttf"}}};
    http::Response response;
    response.headers = {{"Cache-Control", "max-age=3600"}, {"X-Content-Type-Options", "nosniff"}};
    if (path == "/style.css") {
        response.headers.emplace_back("Content-Type", "text/css; charset=utf-8");
        response.body = std::string(template_text("style.css"));
        return response;
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

std::string sign_in_page(const std::string& why) {
    auto values = view();
    values.set("why", why.empty() ? truth(false) : View{why});
    return framed({"Sign in", "page-sign-in", {}, false}, fill("sign_in", values));
}

std::string missing_page() {
    auto values = view();
    return framed({"Nothing is here", "page-missing", {}, false}, fill("missing", values));
}

std::vector<std::string> missing_photos(Archive& archive, const Survey& survey) {
    auto missing = photos_of(survey);
    std::erase_if(missing, [&archive](const std::string& sha256) { return photo_is_here(archive, sha256); });
    return missing;
}

}  // namespace truehang::workroom
