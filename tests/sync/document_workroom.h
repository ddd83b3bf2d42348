// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "document/document.h"
#include "outbox/wire.h"
#include "protocol/digest.h"
#include "protocol/paths.h"
#include "protocol/problem.h"
#include "protocol/records.h"

#include <algorithm>
#include <map>
#include <string>
#include <utility>
#include <vector>

// A workroom in memory that keeps documents and photos and answers as the protocol says.

namespace truehang::sync::test {

/// The workroom: each survey’s revisions by number, none ever replaced.
class DocumentWorkroom {
public:
    struct Kept {
        SurveyReceipt receipt;
        std::string bytes;
    };
    std::map<std::string, std::map<long long, Kept>> surveys;
    std::map<std::string, std::string> photos;  ///< bytes by digest
    int puts = 0;

    Answer receive(const Request& request, const std::string& body) {
        if (request.path.starts_with(changes_path)) {
            return tell_changes(request.path);
        }
        const auto place = read_path(request.path);
        if (place && place->kind == Place::Kind::photo) {
            return with_photo(request, *place, body);
        }
        if (!place) {
            return problem({ProblemKind::not_there, "Not here.", {}});
        }
        auto& revisions = surveys[place->survey];
        if (place->kind == Place::Kind::receipt) {
            SurveyThere there{place->survey, {}, {}};
            for (const auto& [number, kept] : revisions) {
                there.revisions.push_back(kept.receipt);
            }
            return revisions.empty() ? problem({ProblemKind::not_there, "Not here.", {}})
                                     : Answer{200, {}, write_record(there)};
        }
        const auto found = revisions.find(place->revision);
        if (request.method == Method::get) {
            return found != revisions.end() ? Answer{200, {}, found->second.bytes}
                                            : problem({ProblemKind::not_there, "Not here.", {}});
        }
        return put(*place, body);
    }

    [[nodiscard]] const Kept& newest(const std::string& survey) const { return surveys.at(survey).rbegin()->second; }

private:
    static Answer problem(const Problem& problem) { return {status_of(problem.kind), {}, write_problem(problem)}; }

    /// Cursors are places in the order in which revisions came.
    Answer tell_changes(const std::string& path) {
        const auto after = path.find("after=");
        std::size_t from = after == std::string::npos ? 0 : std::stoul(path.substr(after + 6));
        Changes changes;
        while (from < order_.size() && changes.changes.size() < 2) {
            const auto& [survey, revision] = order_[from++];
            changes.changes.push_back({surveys.at(survey).at(revision).receipt, {}, "The other phone"});
        }
        changes.next = std::to_string(from);
        changes.more = from < order_.size();
        return {200, {}, write_record(changes)};
    }

    Answer with_photo(const Request& request, const Place& place, const std::string& body) {
        if (request.method == Method::put) {
            photos.emplace(place.sha256, body);
        }
        const auto found = photos.find(place.sha256);
        if (found == photos.end()) {
            return problem({ProblemKind::not_there, "Not here.", {}});
        }
        return request.method == Method::get
                   ? Answer{200, {{"Content-Type", "image/jpeg"}}, found->second}
                   : Answer{200,
                            {},
                            write_record(PhotoReceipt{place.sha256, static_cast<long long>(found->second.size()),
                                                      "2026-03-14T12:00:00Z"})};
    }

    Answer put(const Place& place, const std::string& body) {
        ++puts;
        auto& revisions = surveys[place.survey];
        const auto sha = hex(sha256(body));
        if (const auto found = revisions.find(place.revision); found != revisions.end()) {
            return found->second.receipt.sha256 == sha ? Answer{200, {}, write_record(found->second.receipt)}
                                                       : conflict(place.survey, body);
        }
        const auto document = read_survey(body);
        if (!document) {
            return problem({ProblemKind::malformed_document, "Faults.", {}});
        }
        const auto& parents = document->parents;
        if (parents && !revisions.empty()) {
            const auto& head = revisions.rbegin()->second.receipt;
            const bool knows = std::find(parents->begin(), parents->end(), head.sha256) != parents->end();
            if (!knows || head.revision >= place.revision) {
                return conflict(place.survey, body);
            }
        }
        const SurveyReceipt receipt{place.survey, place.revision, sha, "2026-03-14T12:00:00Z"};
        revisions[place.revision] = {receipt, body};
        order_.emplace_back(place.survey, place.revision);
        return {201, {}, write_record(receipt)};
    }

    Answer conflict(const std::string& survey, const std::string& body) {
        const auto& revisions = surveys[survey];
        WhatIsThere there{revisions.rbegin()->second.receipt, "The other phone", "", 0};
        std::map<std::string, long long> line{{there.newest.sha256, there.newest.revision}};
        for (auto kept = revisions.rbegin(); kept != revisions.rend(); ++kept) {
            if (const auto in_line = line.find(kept->second.receipt.sha256); in_line != line.end()) {
                in_line->second = kept->first;
                const auto older = read_survey(kept->second.bytes).value().parents.value_or(std::vector<std::string>{});
                for (const auto& parent : older) {
                    line.emplace(parent, 0);
                }
            }
        }
        const auto sent = read_survey(body).value().parents.value_or(std::vector<std::string>{});
        for (const auto& parent : sent) {
            if (const auto found = line.find(parent); found != line.end()) {
                there.common_sha256 = parent;
                there.common_revision = found->second;
                break;
            }
        }
        return problem({ProblemKind::conflict, "Something else is here.", {}, {}, {}, there});
    }

    std::vector<std::pair<std::string, long long>> order_;
};

}  // namespace truehang::sync::test
