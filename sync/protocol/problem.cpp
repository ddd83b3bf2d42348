// SPDX-License-Identifier: Apache-2.0
#include "protocol/problem.h"

#include <nlohmann/json.hpp>

#include <array>

namespace truehang::sync {

namespace {

using Json = nlohmann::ordered_json;

struct ProblemEntry {
    ProblemKind kind;
    int status;
    std::string_view word;
    std::string_view title;
};

constexpr auto entries = std::to_array<ProblemEntry>({
    {ProblemKind::malformed_request, 400, "malformed-request", "The request can’t be read"},
    {ProblemKind::digest_mismatch, 400, "digest-mismatch", "The bytes that came aren’t the ones that were sent"},
    {ProblemKind::inconsistent_length, 400, "inconsistent-upload-length", "The lengths told of an upload differ"},
    {ProblemKind::unauthorised, 401, "unauthorised", "This device isn’t known here"},
    {ProblemKind::wrong_code, 403, "wrong-code", "The code doesn’t hold"},
    {ProblemKind::not_there, 404, "not-there", "Nothing is here"},
    {ProblemKind::wrong_method, 405, "wrong-method", "That can’t be done here"},
    {ProblemKind::too_slow, 408, "too-slow", "The request took too long"},
    {ProblemKind::conflict, 409, "conflict", "This revision is here with other content"},
    {ProblemKind::mismatching_offset, 409, "mismatching-upload-offset", "The upload stands at another byte"},
    {ProblemKind::erased, 410, "erased", "The workroom erased it for good"},
    {ProblemKind::unknown_cursor, 410, "unknown-cursor", "This cursor isn’t known here"},
    {ProblemKind::length_required, 411, "length-required", "The length must be told"},
    {ProblemKind::too_large, 413, "too-large", "Larger than is taken here"},
    {ProblemKind::wrong_type, 415, "wrong-type", "A kind of content that isn’t taken here"},
    {ProblemKind::malformed_document, 422, "malformed-document", "The survey document has faults"},
    {ProblemKind::too_many_tries, 429, "too-many-tries", "Too many tries"},
    {ProblemKind::too_many_uploads, 429, "too-many-uploads", "Too much is unfinished"},
    {ProblemKind::headers_too_large, 431, "headers-too-large", "The headers are too large"},
    {ProblemKind::internal, 500, "internal", "The workroom failed"},
    {ProblemKind::not_understood, 501, "not-understood", "The workroom doesn’t do that"},
    {ProblemKind::busy, 503, "busy", "The workroom is busy"},
    {ProblemKind::disk_full, 507, "disk-full", "The workroom’s disk is full"},
});

constexpr std::string_view type_prefix = "urn:truehang:problem:";

const ProblemEntry& entry_of(ProblemKind kind) {
    for (const auto& entry : entries) {
        if (entry.kind == kind) {
            return entry;
        }
    }
    return entry_of(ProblemKind::internal);
}

std::string text_at(const Json& json, const char* key) {
    const auto found = json.find(key);
    return found != json.end() && found->is_string() ? found->get<std::string>() : std::string();
}

std::optional<long long> offset_at(const Json& json, const char* key) {
    const auto found = json.find(key);
    return found != json.end() && found->is_number_unsigned() ? std::optional(found->get<long long>()) : std::nullopt;
}

Json there_json(const WhatIsThere& there) {
    Json json{{"id", there.newest.id},
              {"revision", there.newest.revision},
              {"sha256", there.newest.sha256},
              {"received_at", there.newest.received_at}};
    if (!there.sent_by.empty()) {
        json["sent_by"] = there.sent_by;
    }
    return json;
}

Json common_json(const WhatIsThere& there) {
    Json json{{"sha256", there.common_sha256}};
    if (there.common_revision > 0) {
        json["revision"] = there.common_revision;
    }
    return json;
}

std::optional<WhatIsThere> there_in(const Json& problem) {
    const auto there = problem.find("there");
    const auto newest = there != problem.end()
                            ? read_survey_receipt(there->dump(-1, ' ', false, Json::error_handler_t::replace))
                            : Result<SurveyReceipt>(Error{});
    if (!newest) {
        return std::nullopt;
    }
    WhatIsThere told{*newest, text_at(*there, "sent_by"), "", 0};
    if (const auto common = problem.find("common_parent"); common != problem.end() && common->is_object()) {
        told.common_sha256 = text_at(*common, "sha256");
        told.common_revision = offset_at(*common, "revision").value_or(0);
    }
    return told;
}

}  // namespace

std::string_view word_of(ProblemKind kind) { return entry_of(kind).word; }
int status_of(ProblemKind kind) { return entry_of(kind).status; }

std::string write_problem(const Problem& problem) {
    const auto& entry = entry_of(problem.kind);
    Json json{{"type", std::string(type_prefix) + std::string(entry.word)},
              {"title", entry.title},
              {"status", entry.status},
              {"detail", problem.detail}};
    if (!problem.faults.empty()) {
        Json faults = Json::array();
        for (const auto& fault : problem.faults) {
            faults.push_back(Json{{"pointer", fault.pointer}, {"text", fault.text}});
        }
        json["faults"] = faults;
    }
    if (problem.expected_offset) {
        json["expected-offset"] = *problem.expected_offset;
    }
    if (problem.provided_offset) {
        json["provided-offset"] = *problem.provided_offset;
    }
    if (problem.there) {
        json["there"] = there_json(*problem.there);
        if (!problem.there->common_sha256.empty()) {
            json["common_parent"] = common_json(*problem.there);
        }
    }
    return json.dump(-1, ' ', false, Json::error_handler_t::replace);
}

Result<Problem> read_problem(std::string_view json) {
    const Error foreign{ErrorCode::unreadable, "", "This is not a problem that a workroom reports."};
    const Json parsed = Json::parse(json, nullptr, false);
    if (!parsed.is_object()) {
        return foreign;
    }
    const auto type = text_at(parsed, "type");
    for (const auto& entry : entries) {
        if (type != std::string(type_prefix) + std::string(entry.word)) {
            continue;
        }
        Problem problem{entry.kind,
                        text_at(parsed, "detail"),
                        {},
                        offset_at(parsed, "expected-offset"),
                        offset_at(parsed, "provided-offset"),
                        there_in(parsed)};
        const auto faults = parsed.find("faults");
        if (faults != parsed.end() && faults->is_array()) {
            for (const auto& fault : *faults) {
                problem.faults.push_back(fault.is_object()
                                             ? ProblemFault{text_at(fault, "pointer"), text_at(fault, "text")}
                                             : ProblemFault{});
            }
        }
        return problem;
    }
    return foreign;
}

}  // namespace truehang::sync
