// SPDX-License-Identifier: Apache-2.0
#include "workroom/archive/lineage.h"

#include "document/document.h"
#include "workroom/archive/database.h"

#include <algorithm>
#include <map>
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
std::vector<std::string> parents_told(Records& records, const std::string& survey, long long revision) {
    Query query(records, "SELECT bytes FROM revision WHERE survey = ? AND revision = ?");
    query.bind(1, survey);
    query.bind(2, revision);
    const auto document = query.step() ? read_survey(query.text(0)) : Result<Survey, Faults>(Faults{});
    return document ? document->parents.value_or(std::vector<std::string>{}) : std::vector<std::string>{};
}

/// What the newest revision was made from, itself included, each with its revision where it is here.
std::map<std::string, long long> made_from(Records& records, const WhatIsThere& there) {
    std::map<std::string, long long> line{{there.newest.sha256, there.newest.revision}};
    Query query(records, "SELECT revision, sha256 FROM revision WHERE survey = ? ORDER BY revision DESC");
    query.bind(1, there.newest.id);
    // A parent has a lower revision than its child, so one way down meets them all.
    while (query.step()) {
        const auto in_line = line.find(query.text(1));
        if (in_line != line.end()) {
            in_line->second = query.number(0);
            for (const std::string& parent : parents_told(records, there.newest.id, in_line->second)) {
                line.emplace(parent, 0);
            }
        }
    }
    return line;
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
        const auto line = made_from(records, *there);
        for (const std::string& parent : parents) {
            if (const auto found = line.find(parent); found != line.end()) {
                there->common_sha256 = parent;
                there->common_revision = found->second;
                break;
            }
        }
        return there;
    });
}

}  // namespace truehang::workroom
