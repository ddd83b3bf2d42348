// SPDX-License-Identifier: Apache-2.0
#include "workroom/site/rolls_desk.h"

#include "document/rolls_document.h"
#include "figures/figures.h"
#include "protocol/paths.h"
#include "workroom/site/replies.h"
#include "workroom/site/rolls_page.h"

#include <fmt/format.h>

#include <array>
#include <charconv>

namespace truehang::workroom {

namespace {

/// The page with its forms, or while the plan is worked out and nothing was typed a page that looks again by itself.
http::Response page_of(PlanningBench& bench, const RollsTable& table, int status, RollsPage page) {
    const auto plan = bench.by_now(table);
    if (!plan) {
        return error_reply(plan.error());
    }
    page.versions = table.versions;
    page.said = page.said.empty() ? table.said : page.said;
    page.plan = *plan ? &**plan : nullptr;
    page.with_forms = page.with_forms || page.plan != nullptr;
    auto response = page_reply(status, rolls_page(table.survey, work_out(table.survey), table.came, page));
    if (!page.with_forms) {
        looks_again(response);
    }
    return response;
}

std::optional<http::Response> look_at_document(Archive& archive, const RollsPlace& place, const RollsTable& table) {
    const auto kept = RollsShelf(archive).version(place.survey, place.version);
    if (!kept) {
        return error_reply(kept.error());
    }
    if (*kept) {
        return json_reply(200, (*kept)->bytes);
    }
    return place.version == 0 ? std::optional(json_reply(200, write_rolls(table.came))) : std::nullopt;
}

http::Response save(Archive& archive, PlanningBench& bench, const RollsTable& table, const FormFields& fields) {
    const long long from = table.versions.empty() ? 0 : table.versions.back().version;
    const auto typed = typed_rolls(table.came, table.survey, fields);
    const auto seen = fields.find("from");
    constexpr auto meanwhile =
        "Somebody saved other rolls meanwhile. What you typed stands below: look at it and save again.";
    const auto back = [&](int status, const char* said) {
        RollsPage page;
        page.said = said;
        page.typed = fields;
        page.faults = typed.faults;
        page.with_forms = true;
        return page_of(bench, table, status, std::move(page));
    };
    if (seen == fields.end() || seen->second != std::to_string(from)) {
        return back(409, meanwhile);
    }
    if (!typed.faults.empty()) {
        return back(422, "Nothing was saved. Look at what is marked below.");
    }
    const auto kept = RollsShelf(archive).save(table.survey.id, write_rolls(typed.came), from);
    if (!kept && kept.error().code == ErrorCode::conflict) {
        return back(409, meanwhile);
    }
    if (!kept) {
        return error_reply(kept.error());
    }
    bench.changed(table.survey.id);
    auto response = page_reply(303, "");
    response.headers.emplace_back("Location", rolls_path(table.survey.id));
    return response;
}

std::optional<long long> read_version(std::string_view text) {
    long long version = 0;
    const auto [end, fault] = std::from_chars(text.data(), text.data() + text.size(), version);
    const bool whole = fault == std::errc{} && end == text.data() + text.size();
    return whole && version > 0 && text.front() != '0' ? std::optional(version) : std::nullopt;
}

}  // namespace

std::optional<RollsPlace> read_rolls_path(std::string_view path) {
    constexpr std::string_view start = "/surveys/";
    if (!path.starts_with(start)) {
        return std::nullopt;
    }
    path.remove_prefix(start.size());
    const auto slash = path.find('/');
    const auto id = sync::percent_decode(path.substr(0, slash));
    if (slash == std::string_view::npos || !id || !sync::id_travels(*id)) {
        return std::nullopt;
    }
    const auto rest = path.substr(slash);
    using Kind = RollsPlace::Kind;
    static constexpr std::array<std::pair<std::string_view, Kind>, 4> kinds{{{"/rolls", Kind::page},
                                                                             {"/rolls/count", Kind::count},
                                                                             {"/rolls/plan", Kind::plan},
                                                                             {"/rolls/document", Kind::document}}};
    for (const auto& [name, kind] : kinds) {
        if (rest == name) {
            return RollsPlace{*id, kind, 0};
        }
    }
    constexpr std::string_view versions = "/rolls/document/";
    const auto version = rest.starts_with(versions) ? read_version(rest.substr(versions.size())) : std::nullopt;
    return version ? std::optional(RollsPlace{*id, Kind::document, *version}) : std::nullopt;
}

std::optional<http::Response> look_at_rolls(Archive& archive, PlanningBench& bench, const RollsPlace& place,
                                            std::string_view query, bool may_change) {
    const auto found = lay_out_rolls(archive, place.survey);
    if (!found) {
        return error_reply(found.error());
    }
    if (!*found) {
        return std::nullopt;
    }
    const RollsTable& table = **found;
    switch (place.kind) {
        case RollsPlace::Kind::page: {
            RollsPage page;
            page.with_forms = query == "change";
            page.may_change = may_change;
            return page_of(bench, table, 200, std::move(page));
        }
        case RollsPlace::Kind::count:
            return page_reply(200, count_page(table.survey, table.came));
        case RollsPlace::Kind::plan:
        case RollsPlace::Kind::document:
            break;
    }
    return look_at_document(archive, place, table);
}

void look_at_plan(PlanningBench& bench, const RollsPlace& place, const http::Site::Respond& respond) {
    bench.want(place.survey, [respond](const Result<HousePlan>& plan) {
        if (!plan && plan.error().code == ErrorCode::missing) {
            return respond(not_there());
        }
        respond(plan ? json_reply(200, write_roll_plan(*plan)) : error_reply(plan.error()));
    });
}

std::optional<http::Response> take_rolls(Archive& archive, PlanningBench& bench, const RollsPlace& place,
                                         std::string_view body) {
    const auto found = lay_out_rolls(archive, place.survey);
    if (!found) {
        return error_reply(found.error());
    }
    if (!*found) {
        return std::nullopt;
    }
    const auto fields = read_form(body);
    if (!is_rolls_form(fields, (*found)->survey)) {
        return problem_reply(sync::ProblemKind::malformed_request,
                             fmt::format("A form of rolls names a cloth of the visit and at most {} rolls. Load the "
                                         "page again and send it from there.",
                                         most_rows));
    }
    return save(archive, bench, **found, fields);
}

}  // namespace truehang::workroom
