// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "outbox/item.h"
#include "protocol/limits.h"
#include "units/result.h"

#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

// What the outbox asks of whoever holds the wire, and what it is told back. No sockets here.

namespace truehang::sync {

enum class Method { get, head, put, post, patch };
[[nodiscard]] std::string_view word_of(Method method);

using Header = std::pair<std::string, std::string>;

/// A part of an item's bytes.
struct ByteRange {
    long long from = 0;
    long long bytes = 0;
};

/// One request, complete but for the workroom's address, the token and the bytes of an item.
struct Request {
    long long ticket = 0;  ///< names the request when its answer is handed back
    Method method = Method::get;
    std::string path;  ///< percent-encoded, to be sent as it is
    std::vector<Header> headers;
    bool with_token = true;       ///< send `Authorization: Bearer TOKEN`
    std::string content;          ///< the body, where `body_of` is empty
    std::optional<Item> body_of;  ///< the body is the stored bytes of this item (document or photo), Item::bytes long
    std::optional<ByteRange> range;          ///< of `body_of`: only this part of them
    std::size_t answer_most = answer_limit;  ///< bytes of an answer that are read
};

/// What came back. Redirects are not followed: a 3xx is an answer as any other.
struct Answer {
    int status = 0;
    std::vector<Header> headers;
    std::string content;  ///< at most `Request::answer_most` bytes; more is cut off

    /// The first header of that name, whatever its case; nothing where it isn't there.
    [[nodiscard]] std::optional<std::string_view> header(std::string_view name) const;
};

/// Why no answer came.
enum class WireFailure {
    not_reached,  ///< no network, no such host, connection refused: the workroom got nothing
    not_trusted,  ///< the workroom's certificate isn't one this device trusts: it got nothing
    broken_off,   ///< the connection ended or ran out of time after the request began: it may have everything
    no_bytes,     ///< the item's bytes couldn't be read on this device: nothing was sent
};

struct PairRequest;
struct PairAnswer;

/// The request that takes this device on, to be sent without a token; `ticket` is 0 and its answer goes to
/// `read_pairing`.
[[nodiscard]] Request pairing_request(const PairRequest& asked);

/// What the answer to it means: the token and the workroom's name, or why not in a sentence for a person.
[[nodiscard]] Result<PairAnswer> read_pairing(const Answer& answer);

}  // namespace truehang::sync
