// SPDX-License-Identifier: Apache-2.0
#include "outbox/pieces.h"

#include "protocol/digest.h"
#include "protocol/limits.h"
#include "protocol/paths.h"
#include "protocol/problem.h"
#include "protocol/upload.h"

#include <algorithm>
#include <optional>

namespace truehang::sync {

namespace {

using Kind = UploadMeaning::Kind;

UploadMeaning stands(long long offset) { return {Kind::stands, offset, {}}; }
UploadMeaning plain(Kind kind) { return {kind, 0, {}}; }
UploadMeaning other(Meaning meaning) { return {Kind::other, 0, std::move(meaning)}; }

std::optional<Problem> problem_of(const Answer& answer) {
    auto problem = read_problem(answer.content);
    return problem && status_of(problem->kind) == answer.status ? std::optional(std::move(problem).value())
                                                                : std::nullopt;
}

bool is_success(const Answer& answer) { return answer.status >= 200 && answer.status < 300; }

/// Where an answer says that an unfinished upload of this item stands.
std::optional<long long> offset_of(const Item& item, const Answer& answer) {
    const auto offset = read_byte_count(answer.header(upload_offset_header).value_or(""));
    const bool unfinished = read_truth(answer.header(upload_complete_header).value_or("")) == false;
    return unfinished && offset && *offset <= item.bytes ? offset : std::nullopt;
}

/// Whatever it is, it isn't what takes uploads in pieces.
bool is_not_known(const Answer& answer) { return answer.status == 404 || answer.status == 405 || answer.status == 501; }

/// Whether a problem speaks against sending it in pieces, not against the photo.
bool is_against_pieces(ProblemKind kind) {
    switch (kind) {
        case ProblemKind::malformed_request:
        case ProblemKind::wrong_method:
        case ProblemKind::wrong_type:
        case ProblemKind::not_understood:
        case ProblemKind::length_required:
        case ProblemKind::inconsistent_length:
        case ProblemKind::too_many_uploads:
            return true;
        default:
            return false;
    }
}

Request of_method(Method method, std::string path) {
    Request request;
    request.method = method;
    request.path = std::move(path);
    request.headers = {{"Accept", std::string(json_type)}};
    return request;
}

}  // namespace

Request beginning_of(const Item& item) {
    auto request = of_method(Method::post, photo_path(item.sha256));
    request.headers.emplace_back("Content-Type",
                                 item.media_type.empty() ? "application/octet-stream" : item.media_type);
    request.headers.emplace_back(upload_complete_header, write_truth(false));
    request.headers.emplace_back(upload_length_header, std::to_string(item.bytes));
    return request;
}

Request question_about(const Item& item) { return of_method(Method::head, upload_path(item.sha256)); }

Request piece_of(const Item& item, long long offset, long long piece) {
    auto request = of_method(Method::patch, upload_path(item.sha256));
    request.range = ByteRange{offset, std::min(piece, item.bytes - offset)};
    request.headers.emplace_back("Content-Type", partial_upload_type);
    request.headers.emplace_back(upload_offset_header, std::to_string(offset));
    request.headers.emplace_back(upload_complete_header, write_truth(offset + request.range->bytes == item.bytes));
    request.body_of = item;
    return request;
}

UploadMeaning meaning_of_beginning(const Item& item, const Answer& answer) {
    if (answer.status == 200 || answer.status == 201) {
        const auto offset = offset_of(item, answer);
        return offset ? stands(*offset) : other(meaning_of_send(item, answer));
    }
    const auto problem = problem_of(answer);
    return is_not_known(answer) || (problem && is_against_pieces(problem->kind))
               ? plain(Kind::whole)
               : other(meaning_of_trouble(item, answer));
}

UploadMeaning meaning_of_question(const Item& item, const Answer& answer) {
    if (!is_success(answer)) {
        // An answer to HEAD has no body to say whose it is: anything but a failure is settled by beginning.
        return answer.status < 500 ? plain(Kind::begin) : other(meaning_of_trouble(item, answer));
    }
    if (const auto offset = offset_of(item, answer)) {
        return stands(*offset);
    }
    const bool whole = read_truth(answer.header(upload_complete_header).value_or("")) == true;
    return other(whole ? meaning_of_photo_there(item, answer) : meaning_of_nonsense(answer));
}

UploadMeaning meaning_of_piece(const Item& item, const ByteRange& sent, const Answer& answer) {
    if (is_success(answer)) {
        const auto offset = offset_of(item, answer);
        const bool appended = offset == sent.from + sent.bytes;
        return appended ? stands(*offset) : other(meaning_of_send(item, answer));
    }
    const auto problem = problem_of(answer);
    if (answer.status == 405 || answer.status == 501 || (problem && is_against_pieces(problem->kind))) {
        return plain(Kind::whole);
    }
    if (!problem) {
        return other(meaning_of_trouble(item, answer));
    }
    switch (problem->kind) {
        case ProblemKind::mismatching_offset: {
            const auto there = problem->expected_offset.value_or(sent.from);
            return there != sent.from && there >= 0 && there <= item.bytes ? stands(there) : plain(Kind::ask);
        }
        case ProblemKind::not_there:
            return plain(Kind::begin);
        case ProblemKind::digest_mismatch: {
            auto meaning = plain(Kind::whole);
            meaning.meaning.why = "The pieces that reached the workroom don’t make the photo. It will be sent whole.";
            return meaning;
        }
        default:
            return other(meaning_of_trouble(item, answer));
    }
}

}  // namespace truehang::sync
