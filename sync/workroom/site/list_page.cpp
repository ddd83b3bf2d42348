// SPDX-License-Identifier: Apache-2.0
#include "workroom/site/list_page.h"

#include "protocol/paths.h"
#include "sheet/words.h"
#include "workroom/site/frame.h"
#include "workroom/site/survey_page.h"

#include <fmt/format.h>

namespace truehang::workroom {

namespace {

View line_view(const Head& head) {
    auto entry = view();
    entry.set("href", "/surveys/" + sync::percent_encode(head.survey));
    entry.set("title", head.title.empty() ? "Untitled visit" : head.title);
    entry.set("client", head.client);
    entry.set("place", head.address.empty() ? truth(false) : View{head.address});
    entry.set("measured", day_text(head.measured_at));
    entry.set("windows", std::to_string(head.windows));
    entry.set("photos", head.photos == 0 ? "" : fmt::format("{} of {}", head.photos_here, head.photos));
    entry.set("received", moment_text(head.received_at));
    entry.set("revision", std::to_string(head.revision));
    return entry;
}

/// The list's own address with what it is asked for; `before` 0: from the newest.
std::string list_href(const std::string& words, long long before) {
    std::string query = words.empty() ? "" : "find=" + sync::percent_encode(words);
    if (before > 0) {
        query += (query.empty() ? "before=" : "&before=") + std::to_string(before);
    }
    return query.empty() ? "/" : "/?" + query;
}

}  // namespace

std::string list_page(const HeadsPage& found, const HeadsAsked& asked) {
    auto values = view();
    auto surveys = view_list();
    for (const auto& head : found.heads) {
        surveys << line_view(head);
    }
    const bool searched = !asked.words.empty();
    values.set("surveys", surveys);
    values.set("some", truth(!found.heads.empty()));
    values.set("nothing_yet", truth(found.heads.empty() && !searched && asked.before == 0));
    values.set("not_found", truth(found.heads.empty() && (searched || asked.before > 0)));
    values.set("words", asked.words);
    values.set("searched", truth(searched));
    values.set("newest", asked.before > 0 ? View{list_href(asked.words, 0)} : truth(false));
    values.set("older", found.has_older ? View{list_href(asked.words, found.heads.back().change)} : truth(false));
    return framed({"Surveys", "page-list", {}, false}, fill("list", values));
}

}  // namespace truehang::workroom
