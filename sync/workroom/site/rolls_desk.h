// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "workroom/archive/archive.h"
#include "workroom/http/http_server.h"
#include "workroom/site/planning_bench.h"

#include <optional>
#include <string>
#include <string_view>

namespace truehang::workroom {

/// The largest form of rolls, in bytes.
inline constexpr std::uint64_t rolls_form_limit = 262144;

/// What a path about the rolls of a survey names.
struct RollsPlace {
    enum class Kind { page, count, plan, document };
    std::string survey;
    Kind kind = Kind::page;
    long long version = 0;  ///< of a document; 0: the newest
};

/// `/surveys/ID/rolls`, its `/count`, and as documents its `/plan`, `/document` and `/document/N`. Nothing for any
/// other path.
[[nodiscard]] std::optional<RollsPlace> read_rolls_path(std::string_view path);

/// The answer to a request that may look, but to one for the plan; nothing where the survey, or that version, isn't
/// here. While a plan is worked out the page has no forms and looks again by itself, but where `query` is "change".
[[nodiscard]] std::optional<http::Response> look_at_rolls(Archive& archive, PlanningBench& bench,
                                                          const RollsPlace& place, std::string_view query,
                                                          bool may_change);

/// The plan as a document, answered when it is worked out.
void look_at_plan(PlanningBench& bench, const RollsPlace& place, const http::Site::Respond& respond);

/// Takes a form that was sent from this site; nothing where the survey isn't here.
[[nodiscard]] std::optional<http::Response> take_rolls(Archive& archive, PlanningBench& bench, const RollsPlace& place,
                                                       std::string_view body);

}  // namespace truehang::workroom
