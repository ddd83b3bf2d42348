// SPDX-License-Identifier: Apache-2.0
#include "outbox/wire.h"

#include "protocol/limits.h"
#include "protocol/paths.h"
#include "protocol/problem.h"
#include "protocol/records.h"

#include <algorithm>

namespace truehang::sync {

std::string_view word_of(Method method) {
    switch (method) {
        case Method::get:
            return "GET";
        case Method::head:
            return "HEAD";
        case Method::put:
            return "PUT";
        case Method::post:
            return "POST";
        case Method::patch:
            return "PATCH";
    }
    return "GET";
}

std::optional<std::string_view> Answer::header(std::string_view name) const {
    const auto lower = [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; };
    for (const auto& [key, value] : headers) {
        if (std::equal(key.begin(), key.end(), name.begin(), name.end(),
                       [&](char a, char b) { return lower(a) == lower(b); })) {
            return value;
        }
    }
    return std::nullopt;
}

Request pairing_request(const PairRequest& asked) {
    Request request;
    request.method = Method::post;
    request.path = std::string(pair_path);
    request.headers = {{"Content-Type", std::string(json_type)}, {"Accept", std::string(json_type)}};
    request.with_token = false;
    request.content = write_record(asked);
    return request;
}

Result<PairAnswer> read_pairing(const Answer& answer) {
    if (answer.status == 200 || answer.status == 201) {
        auto read = read_pair_answer(answer.content);
        if (read && !read->token.empty()) {
            return read;
        }
    }
    const auto problem = read_problem(answer.content);
    if (problem && problem->kind == ProblemKind::wrong_code) {
        return Error{ErrorCode::conflict, "code", "The workroom doesn’t take this code. Ask it for a new one."};
    }
    if (problem && problem->kind == ProblemKind::too_many_tries) {
        return Error{ErrorCode::busy, "code", "Too many wrong codes. Wait a minute, then try again."};
    }
    if (problem) {
        return Error{ErrorCode::conflict, "", problem->detail};
    }
    return Error{ErrorCode::unreadable, "address",
                 "Something answered at this address, but it isn’t a workroom. Check the address and the network."};
}

}  // namespace truehang::sync
