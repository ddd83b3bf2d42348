// SPDX-License-Identifier: Apache-2.0
#include "workroom/site/list_page.h"

#include "protocol/marks.h"
#include "protocol/paths.h"
#include "sheet/words.h"
#include "workroom/site/frame.h"

#include <fmt/format.h>

#include <algorithm>

namespace truehang::workroom {

namespace {

bool has_state(const std::vector<StateCount>& states, std::string_view word) {
    return std::ranges::find(states, word, &StateCount::state) != states.end();
}

/// "2 new, 3 cut"; "new" alone where nothing is marked.
std::string states_text(const std::vector<StateCount>& states) {
    std::string text;
    for (const StateCount& state : states) {
        if (state.state == "new" || sync::step_of(state.state)) {
            text += (text.empty() ? "" : ", ") +
                    (state.layers > 0 ? fmt::format("{} {}", state.layers, state.state) : state.state);
        }
    }
    return text;
}

/// What a state is called among the filters.
std::string state_says(std::string_view word) {
    if (word == "changed") {
        return "figures differ since";
    }
    if (word == "question") {
        return "asked, no answer yet";
    }
    return word == "agreed-changed" ? "agreed, figures differ since" : std::string(word);
}

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
    entry.set("states", states_text(head.states));
    entry.set("question", truth(has_state(head.states, "question")));
    entry.set("changed", truth(has_state(head.states, "changed")));
    entry.set("agreed_changed", truth(has_state(head.states, "agreed-changed")));
    return entry;
}

/// The list's own address with what it is asked for; `before` 0: from the newest.
std::string list_href(const std::string& words, const std::string& state, long long before) {
    std::string query = words.empty() ? "" : "find=" + sync::percent_encode(words);
    if (!state.empty()) {
        query += (query.empty() ? "state=" : "&state=") + state;
    }
    if (before > 0) {
        query += (query.empty() ? "before=" : "&before=") + std::to_string(before);
    }
    return query.empty() ? "/" : "/?" + query;
}

/// The list by each state, and all of it.
View filters_view(const HeadsAsked& asked) {
    auto filters = view_list();
    const auto add = [&](const std::string& state, const std::string& says) {
        auto entry = view();
        entry.set("href", list_href(asked.words, state, 0));
        entry.set("says", says);
        entry.set("here", truth(state == asked.state));
        filters << entry;
    };
    add("", "all");
    for (const std::string_view word : state_words) {
        add(std::string(word), state_says(word));
    }
    return filters;
}

}  // namespace

std::string list_page(const HeadsPage& found, const HeadsAsked& asked, const Caller& caller, const std::string& since) {
    auto values = view();
    values.set("since", since);
    values.set("may_pair", truth(caller.may_do(Right::pair)));
    values.set("may_people", truth(caller.may_do(Right::people) && (!caller.alone || caller.here)));
    values.set("name", caller.name.empty() ? truth(false) : View{caller.name});
    auto surveys = view_list();
    for (const auto& head : found.heads) {
        surveys << line_view(head);
    }
    const bool searched = !asked.words.empty() || !asked.state.empty();
    values.set("filters", filters_view(asked));
    values.set("state", asked.state.empty() ? truth(false) : View{asked.state});
    values.set("surveys", surveys);
    values.set("some", truth(!found.heads.empty()));
    values.set("nothing_yet", truth(found.heads.empty() && !searched && asked.before == 0));
    values.set("not_found", truth(found.heads.empty() && (searched || asked.before > 0)));
    values.set("words", asked.words);
    values.set("searched", truth(searched));
    values.set("newest", asked.before > 0 ? View{list_href(asked.words, asked.state, 0)} : truth(false));
    values.set("older",
               found.has_older ? View{list_href(asked.words, asked.state, found.heads.back().change)} : truth(false));
    return framed({"Surveys", "page-list", {}, false}, fill("list", values));
}

}  // namespace truehang::workroom
