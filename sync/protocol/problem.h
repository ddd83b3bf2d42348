// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "protocol/records.h"
#include "units/result.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

// Problem details for HTTP (RFC 9457), the body of every answer that isn't a success.

namespace truehang::sync {

/// The closed set of problems a workroom reports. `type` is `urn:truehang:problem:` and the word.
enum class ProblemKind {
    malformed_request,    ///< 400: the request itself can't be read
    digest_mismatch,      ///< 400: the bytes that came aren't the ones the digest tells of
    inconsistent_length,  ///< 400: an upload's piece or length contradicts the length it was begun with
    unauthorised,         ///< 401: no token, or none the workroom knows
    wrong_code,           ///< 403: the pairing code isn't the one shown, or is used up or too old
    not_there,            ///< 404
    wrong_method,         ///< 405
    too_slow,             ///< 408
    conflict,             ///< 409: this revision is there already with other content
    mismatching_offset,   ///< 409: a piece doesn’t begin where the upload stands
    erased,               ///< 410: the workroom erased this survey or photo for good and takes it no more
    unknown_cursor,       ///< 410: this workroom's records didn't give that cursor
    length_required,      ///< 411: photos say how long they are
    too_large,            ///< 413
    wrong_type,           ///< 415: a body of a kind that isn't taken here
    malformed_document,   ///< 422: the survey document has faults; nothing was stored
    too_many_tries,       ///< 429
    too_many_uploads,     ///< 429: this device has as much unfinished as it may
    headers_too_large,    ///< 431
    internal,             ///< 500
    not_understood,       ///< 501: a transfer coding or method this workroom doesn't have
    busy,                 ///< 503: try again later
    disk_full,            ///< 507
};

[[nodiscard]] std::string_view word_of(ProblemKind kind);
[[nodiscard]] int status_of(ProblemKind kind);

/// One fault of a document.
struct ProblemFault {
    std::string pointer;  ///< RFC 6901
    std::string text;
};

struct Problem {
    ProblemKind kind = ProblemKind::internal;
    std::string detail;                          ///< one sentence for a person: what is wrong, what to do
    std::vector<ProblemFault> faults;            ///< of `malformed_document`
    std::optional<long long> expected_offset{};  ///< of `mismatching_offset`: where the upload stands
    std::optional<long long> provided_offset{};  ///< of `mismatching_offset`: where the piece began
    std::optional<WhatIsThere> there{};          ///< of `conflict`
};

/// {"type", "title", "status", "detail", "faults", "expected-offset", "provided-offset", "there", "common_parent"}.
[[nodiscard]] std::string write_problem(const Problem& problem);

/// Reads a problem of this protocol. Error `unreadable` for any other JSON or text, so that an answer that came from
/// something in between (a hotel's sign-in page, a proxy) is never taken for the workroom's.
[[nodiscard]] Result<Problem> read_problem(std::string_view json);

}  // namespace truehang::sync
