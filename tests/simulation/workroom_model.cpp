// SPDX-License-Identifier: Apache-2.0
#include "workroom_model.h"

#include "document/document.h"
#include "protocol/digest.h"
#include "protocol/limits.h"
#include "protocol/upload.h"

#include <algorithm>

namespace truehang::sync::simulation {
namespace {

const std::string received_at = "2026-03-14T12:00:00Z";

Answer not_there() { return problem_answer({ProblemKind::not_there, "Not here.", {}}); }

long long number_in(const Request& request, std::string_view name) {
    for (const auto& [key, value] : request.headers) {
        if (key == name) {
            return read_byte_count(value).value_or(-1);
        }
    }
    return -1;
}

bool completes(const Request& request) {
    return std::ranges::any_of(request.headers, [](const Header& header) {
        return header.first == upload_complete_header && read_truth(header.second) == true;
    });
}

PhotoReceipt receipt_of(const std::string& sha256, std::size_t bytes) {
    return {sha256, static_cast<long long>(bytes), received_at};
}

}  // namespace

Answer problem_answer(const Problem& problem) {
    return {status_of(problem.kind), {{"Content-Type", std::string(problem_type)}}, write_problem(problem)};
}

WorkroomModel::Outcome WorkroomModel::look(int receiver, const Request& request, const std::string& body) {
    const auto place = read_path(request.path);
    if (!place) {
        return {not_there(), {}};
    }
    switch (place->kind) {
        case Place::Kind::receipt:
            return {receipts(place->survey), {}};
        case Place::Kind::revision:
            return request.method == Method::get ? Outcome{document(*place), {}} : put_survey(*place, body);
        case Place::Kind::photo:
            return request.method == Method::post   ? Outcome{begin(receiver, place->sha256, request), {}}
                   : request.method == Method::head ? Outcome{ask_photo(place->sha256), {}}
                                                    : put_photo(place->sha256, request, body);
        case Place::Kind::upload:
            return request.method == Method::head ? Outcome{ask_upload(receiver, place->sha256), {}}
                                                  : take_piece(receiver, place->sha256, request, body);
        default:
            return {not_there(), {}};
    }
}

WorkroomModel::Outcome WorkroomModel::put_survey(const Place& place, const std::string& body) {
    const auto survey = read_survey(body);
    if (!survey || survey->id != place.survey || survey->revision != place.revision) {
        return {problem_answer({ProblemKind::malformed_document, "Faults.", {}}), {}};
    }
    KeptRevision kept{{place.survey, place.revision, hex(sha256(body)), received_at}, body, {}};
    kept.parents = survey->parents.value_or(std::vector<std::string>{});
    const auto known = records_.surveys.find(place.survey);
    if (known == records_.surveys.end()) {
        return keep_revision(place, std::move(kept));
    }
    const auto same = known->second.find(place.revision);
    if (same != known->second.end() && same->second.receipt.sha256 == kept.receipt.sha256) {
        const Answer again{200, {}, write_record(same->second.receipt)};
        return bug_ == Bug::repeat_counts_twice ? Outcome{again, keep_revision(place, std::move(kept)).write}
                                                : Outcome{again, {}};
    }
    if (same != known->second.end()) {
        return bug_ == Bug::revision_replaced ? keep_revision(place, std::move(kept))
                                              : Outcome{stale(place, kept.parents), {}};
    }
    const auto& head = known->second.rbegin()->second.receipt;
    const bool follows =
        head.revision < place.revision && std::ranges::find(kept.parents, head.sha256) != kept.parents.end();
    return follows || bug_ == Bug::last_writer_wins ? keep_revision(place, std::move(kept))
                                                    : Outcome{stale(place, kept.parents), {}};
}

WorkroomModel::Outcome WorkroomModel::keep_revision(const Place& place, KeptRevision kept) {
    const Answer answer{201, {}, write_record(kept.receipt)};
    const long long number = ++places_;
    return {answer, [this, place, number, kept = std::move(kept)] {
                records_.changes[number] = kept.receipt;
                records_.surveys[place.survey].insert_or_assign(place.revision, kept);
            }};
}

Answer WorkroomModel::stale(const Place& place, const std::vector<std::string>& parents) const {
    const auto& revisions = records_.surveys.at(place.survey);
    WhatIsThere there{revisions.rbegin()->second.receipt, "Another phone", "", 0};
    std::map<std::string, long long> line{{there.newest.sha256, 0}};
    for (auto kept = revisions.rbegin(); kept != revisions.rend(); ++kept) {
        if (const auto in_line = line.find(kept->second.receipt.sha256); in_line != line.end()) {
            in_line->second = kept->first;
            for (const auto& parent : kept->second.parents) {
                line.emplace(parent, 0);
            }
        }
    }
    const auto common = std::ranges::find_if(parents, [&line](const auto& parent) { return line.contains(parent); });
    if (common != parents.end()) {
        there.common_sha256 = *common;
        there.common_revision = line.at(*common);
    }
    return problem_answer({ProblemKind::conflict, "Something else is here.", {}, {}, {}, there});
}

Answer WorkroomModel::receipts(const std::string& survey) const {
    const auto known = records_.surveys.find(survey);
    if (known == records_.surveys.end()) {
        return not_there();
    }
    SurveyThere there{survey, {}, {}};
    for (const auto& [number, kept] : known->second) {
        there.revisions.push_back(kept.receipt);
    }
    return {200, {}, write_record(there)};
}

Answer WorkroomModel::document(const Place& place) const {
    const auto known = records_.surveys.find(place.survey);
    if (known == records_.surveys.end() || !known->second.contains(place.revision)) {
        return not_there();
    }
    return {200, {}, known->second.at(place.revision).bytes};
}

WorkroomModel::Outcome WorkroomModel::put_photo(const std::string& sha256, const Request& request,
                                                const std::string& body) {
    if (records_.photos.contains(sha256)) {
        return {{200, {}, write_record(receipt_of(sha256, records_.photos.at(sha256).size()))}, {}};
    }
    if (bug_ != Bug::digest_not_checked &&
        (static_cast<long long>(body.size()) < request.body_of->bytes || hex(sync::sha256(body)) != sha256)) {
        return {problem_answer({ProblemKind::digest_mismatch, "Other bytes.", {}}), {}};
    }
    return keep_photo(sha256, body);
}

WorkroomModel::Outcome WorkroomModel::keep_photo(const std::string& sha256, std::string bytes) {
    const Answer answer{201, {}, write_record(receipt_of(sha256, bytes.size()))};
    return {answer, [this, sha256, bytes = std::move(bytes)] { records_.photos.emplace(sha256, bytes); }};
}

Answer WorkroomModel::ask_photo(const std::string& sha256) const {
    if (!records_.photos.contains(sha256)) {
        return {404, {}, ""};
    }
    const auto digest = sha256_from_hex(sha256).value_or(Sha256{});
    return {200, {{"repr-digest", digest_field(digest)}, {"truehang-received-at", received_at}}, ""};
}

Answer WorkroomModel::begin(int receiver, const std::string& sha256, const Request& request) {
    if (const auto found = records_.photos.find(sha256); found != records_.photos.end()) {
        return {200, {{"upload-complete", "?1"}}, write_record(receipt_of(sha256, found->second.size()))};
    }
    const auto [upload, begun] =
        uploads_[receiver].try_emplace(sha256, Upload{"", number_in(request, upload_length_header)});
    return {begun ? 201 : 200,
            {{"upload-offset", std::to_string(upload->second.came.size())},
             {"upload-complete", "?0"},
             {"upload-length", std::to_string(upload->second.length)}},
            ""};
}

Answer WorkroomModel::ask_upload(int receiver, const std::string& sha256) {
    if (const auto found = uploads_[receiver].find(sha256); found != uploads_[receiver].end()) {
        return {204,
                {{"upload-offset", std::to_string(found->second.came.size())},
                 {"upload-complete", "?0"},
                 {"upload-length", std::to_string(found->second.length)}},
                ""};
    }
    auto answer = ask_photo(sha256);
    if (answer.status == 200) {
        answer.status = 204;
        answer.headers.emplace_back("upload-complete", "?1");
    }
    return answer;
}

WorkroomModel::Outcome WorkroomModel::take_piece(int receiver, const std::string& sha256, const Request& request,
                                                 const std::string& body) {
    const auto found = uploads_[receiver].find(sha256);
    if (found == uploads_[receiver].end()) {
        return {not_there(), {}};
    }
    auto& upload = found->second;
    const auto offset = number_in(request, upload_offset_header);
    const auto there = static_cast<long long>(upload.came.size());
    if (offset != there && bug_ != Bug::piece_taken_anywhere) {
        Answer answer = problem_answer({ProblemKind::mismatching_offset, "Elsewhere.", {}, there, offset});
        answer.headers.emplace_back("upload-offset", std::to_string(there));
        return {answer, {}};
    }
    upload.came += body;
    const bool whole = static_cast<long long>(body.size()) == request.range->bytes;
    if (!whole || !completes(request)) {
        return {{204,
                 {{"upload-offset", std::to_string(upload.came.size())},
                  {"upload-complete", "?0"},
                  {"upload-length", std::to_string(upload.length)}},
                 ""},
                {}};
    }
    std::string came = std::move(upload.came);
    if (hex(sync::sha256(came)) != sha256 && bug_ != Bug::piece_taken_anywhere) {
        uploads_[receiver].erase(found);
        return {problem_answer({ProblemKind::digest_mismatch, "Other bytes.", {}}), {}};
    }
    auto kept = keep_photo(sha256, came);
    upload.came = std::move(came);  // until it is kept, so that a death in between costs nothing
    return {kept.answer, [this, receiver, sha256, write = std::move(kept.write)] {
                write();
                uploads_[receiver].erase(sha256);
            }};
}

std::pair<std::vector<SurveyReceipt>, long long> WorkroomModel::changes_after(long long place) const {
    std::vector<SurveyReceipt> changes;
    for (auto change = records_.changes.upper_bound(place); change != records_.changes.end() && changes.size() < 3;
         ++change) {
        changes.push_back(change->second);
        place = change->first;
    }
    return {changes, place};
}

}  // namespace truehang::sync::simulation
