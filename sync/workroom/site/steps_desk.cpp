// SPDX-License-Identifier: Apache-2.0
#include "workroom/site/steps_desk.h"

#include "protocol/marks.h"
#include "protocol/paths.h"
#include "units/utf8.h"
#include "workroom/archive/mark_shelf.h"
#include "workroom/people/people_shelf.h"
#include "workroom/site/replies.h"
#include "workroom/site/steps_page.h"
#include "workroom/site/typed.h"

#include <fmt/format.h>

#include <algorithm>

namespace truehang::workroom {

using sync::LayerMark;

namespace {

/// What a form asks to be marked, or a sentence that says why it can't be.
Result<std::vector<LayerMark>> marks_asked(Archive& archive, const StepsTable& table, const AskedMark& asked,
                                           long long revision) {
    std::vector<LayerMark> marks;
    if (!asked.done) {
        for (const StepsLayer& layer : table.layers) {
            const auto& mark = layer.steps.at(static_cast<std::size_t>(asked.step));
            if (mark && mark->room == asked.room && mark->window == asked.window && mark->layer == asked.layer) {
                marks.push_back(*mark);
                marks.back().done = false;
                marks.back().figures_sha256.clear();
            }
        }
        return marks;
    }
    const auto made = made_by_revision(archive, table.survey.id, revision);
    if (!made) {
        return made.error();
    }
    if (!*made) {
        return Error{ErrorCode::missing, "revision",
                     "Nothing was marked: that revision isn’t here. Choose one that is."};
    }
    for (const MadeLayer& layer : (*made)->layers) {
        if (asked.all || (layer.room == asked.room && layer.window == asked.window && layer.layer == asked.layer)) {
            LayerMark& mark = marks.emplace_back();
            mark.room = layer.room;
            mark.window = layer.window;
            mark.layer = layer.layer;
            mark.step = asked.step;
            mark.revision = revision;
            mark.figures_sha256 = digest_of(layer);
        }
    }
    if (marks.empty()) {
        return Error{
            ErrorCode::missing, "mark",
            fmt::format("Nothing was marked: revision {} has no such layer. Choose another revision.", revision)};
    }
    return marks;
}

/// Back to the page, where it stood. `typed`: a name that isn’t known otherwise.
http::Response back_to(const StepsTable& table, const std::string& typed, const AskedMark& asked) {
    std::string place;
    for (std::size_t i = 0; i < table.layers.size() && !asked.all; ++i) {
        const MadeLayer& made = table.layers[i].made;
        if (made.room == asked.room && made.window == asked.window && made.layer == asked.layer) {
            place = fmt::format("#layer-{}", i + 1);
        }
    }
    auto response = page_reply(303, "");
    response.headers.emplace_back(
        "Location", steps_path(table.survey.id) + (typed.empty() ? "" : "?by=" + sync::percent_encode(typed)) + place);
    return response;
}

/// Who marks: the one who is signed in, else whoever was typed.
StepsPage page_of(const Caller& caller, std::string said, const std::string& typed) {
    const bool named = !caller.name.empty();
    return {std::move(said), named ? caller.name : typed, named, caller.may_do(Right::mark)};
}

http::Response save(Archive& archive, const StepsTable& table, FormFields& fields, const Caller& caller) {
    const auto typed = caller.name.empty() ? fields["by"] : "";
    const auto by = person_name(caller.name.empty() ? typed : caller.name);
    const auto asked = read_asked_mark(fields["mark"]);
    const auto refuse = [&](int status, std::string said) {
        return page_reply(status, steps_page(table, page_of(caller, std::move(said), is_utf8(typed) ? typed : "")));
    };
    if (!is_utf8(typed)) {
        return refuse(422, fmt::format("Nothing was marked: {}", not_text));
    }
    if (!by) {
        return refuse(422,
                      fmt::format("Nothing was marked: say who marks it, in at most {} letters.", sync::name_limit));
    }
    if (fields["mark"].empty()) {
        return back_to(table, person_name(typed).value_or(""), {.all = true});
    }
    if (!asked) {
        return problem_reply(sync::ProblemKind::malformed_request,
                             "A form of marks names a step and a layer. Load the page again and send it from there.");
    }
    auto marks = marks_asked(archive, table, *asked, typed_number(fields["revision"]));
    if (!marks) {
        return marks.error().code == ErrorCode::missing ? refuse(422, marks.error().text) : error_reply(marks.error());
    }
    for (LayerMark& mark : marks.value()) {
        mark.by = *by;
    }
    const auto added = MarkShelf(archive).add(table.survey.id, std::move(marks).value());
    if (!added && added.error().code == ErrorCode::out_of_range) {
        return refuse(422, added.error().text);
    }
    return added ? back_to(table, person_name(typed).value_or(""), *asked) : error_reply(added.error());
}

}  // namespace

std::optional<std::string> read_steps_path(std::string_view path) { return survey_of_leaf(path, "/steps"); }

std::optional<http::Response> look_at_steps(Archive& archive, const std::string& survey, std::string_view query,
                                            const Caller& caller) {
    const auto table = lay_out_steps(archive, survey);
    if (!table) {
        return error_reply(table.error());
    }
    if (!*table) {
        return std::nullopt;
    }
    const auto typed = person_name(read_form(query)["by"]).value_or("");
    return page_reply(200, steps_page(**table, page_of(caller, "", typed)));
}

std::optional<http::Response> take_steps(Archive& archive, const std::string& survey, std::string_view body,
                                         const Caller& caller) {
    const auto table = lay_out_steps(archive, survey);
    if (!table) {
        return error_reply(table.error());
    }
    auto fields = read_form(body);
    return *table ? std::optional(save(archive, **table, fields, caller)) : std::nullopt;
}

}  // namespace truehang::workroom
