// SPDX-License-Identifier: Apache-2.0
#include "workroom/archive/lineage.h"

#include "document/document.h"
#include "workroom/archive/database.h"

#include <algorithm>
#include <set>

namespace truehang::workroom {
namespace {

using sync::SurveyReceipt;
using sync::WhatIsThere;

std::optional<WhatIsThere> newest_there(Records& records, const std::string& survey) {
    Query query(records,
                "SELECT r.survey, r.revision, r.sha256, r.received_at, coalesce(d.name, '') FROM revision r"
                " LEFT JOIN device d ON d.id = r.device WHERE r.survey = ? ORDER BY r.revision DESC LIMIT 1");
    query.bind(1, survey);
    if (!query.step()) {
        return std::nullopt;
    }
    return WhatIsThere{SurveyReceipt{query.text(0), query.number(1), query.text(2), query.text(3)}, query.text(4), "",
                       0};
}

/// The parents that a revision’s document tells.
std::set<std::string> parents_told(Records& records, const std::string& survey, long long revision) {
    Query query(records, "SELECT bytes FROM revision WHERE survey = ? AND revision = ?");
    query.bind(1, survey);
    query.bind(2, revision);
    const auto document = query.step() ? read_survey(query.text(0)) : Result<Survey, Faults>(Faults{});
    const auto told = document ? document->parents.value_or(std::vector<std::string>{}) : std::vector<std::string>{};
    return {told.begin(), told.end()};
}

/// The digests that the newest revision was made from, itself included, as far back as `wanted`: further back nothing
/// is asked for, and each step reads a whole document.
std::set<std::string> made_from(Records& records, const SurveyReceipt& newest, const std::string& wanted) {
    std::set<std::string> line{newest.sha256};
    Query query(records, "SELECT revision, sha256 FROM revision WHERE survey = ? ORDER BY revision DESC");
    query.bind(1, newest.id);
    // A parent has a lower revision than its child, so one way down meets them all.
    while (!line.contains(wanted) && query.step()) {
        if (line.contains(query.text(1))) {
            line.merge(parents_told(records, newest.id, query.number(0)));
        }
    }
    return line;
}

/// The revision of that digest; 0 where it isn’t here.
long long revision_of(Records& records, const std::string& survey, const std::string& sha256) {
    Query query(records, "SELECT coalesce(max(revision), 0) FROM revision WHERE survey = ? AND sha256 = ?");
    query.bind(1, survey);
    query.bind(2, sha256);
    return query.step() ? query.number(0) : 0;
}

}  // namespace

bool is_stale(Records& records, const std::string& survey, long long revision,
              const std::vector<std::string>& parents) {
    const auto there = newest_there(records, survey);
    return there &&
           (there->newest.revision >= revision || std::ranges::find(parents, there->newest.sha256) == parents.end());
}

Result<std::optional<WhatIsThere>> what_is_there(Database& database, const std::string& survey,
                                                 const std::vector<std::string>& parents) {
    return database.read<std::optional<WhatIsThere>>([&](Records& records) -> Result<std::optional<WhatIsThere>> {
        const Transaction one_state(records, Transaction::Use::reading);
        auto there = newest_there(records, survey);
        if (!there || parents.empty()) {
            return there;
        }
        const auto line = made_from(records, there->newest, parents.front());
        const auto common =
            std::ranges::find_if(parents, [&line](const std::string& parent) { return line.contains(parent); });
        if (common != parents.end()) {
            there->common_sha256 = *common;
            there->common_revision = revision_of(records, survey, *common);
        }
        return there;
    });
}

}  // namespace truehang::workroom
