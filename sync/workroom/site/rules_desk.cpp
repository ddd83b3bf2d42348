// SPDX-License-Identifier: Apache-2.0
#include "workroom/site/rules_desk.h"

#include "workroom/archive/rules_shelf.h"
#include "workroom/site/replies.h"
#include "workroom/site/rules_page.h"

#include <utility>

namespace truehang::workroom {

http::Response take_house_rules(Archive& archive, std::string_view form) {
    RulesShelf shelf(archive);
    const auto current = shelf.current();
    const auto versions = shelf.versions();
    if (!current || !versions) {
        return error_reply(current ? versions.error() : current.error());
    }
    const auto fields = read_form(form);
    const auto from = fields.find("from");
    auto typed = typed_rules(*current, fields);
    RulesPage page{*versions, "", fields, typed.faults};
    if (from == fields.end() || from->second != std::to_string(current->rules.version.value_or(0))) {
        page.said =
            "Somebody saved other house rules meanwhile. What you typed stands below: look at it and save again.";
        return page_reply(409, rules_page(*current, page));
    }
    if (!typed.faults.empty()) {
        page.said = "Nothing was saved. Look at what is marked below.";
        return page_reply(422, rules_page(*current, page));
    }
    const auto kept = shelf.save(std::move(typed.document), current->rules.version.value_or(0), archive.clock()());
    if (!kept) {
        return error_reply(kept.error());
    }
    auto response = page_reply(303, "");
    response.headers.emplace_back("Location", house_rules_path);
    return response;
}

}  // namespace truehang::workroom
