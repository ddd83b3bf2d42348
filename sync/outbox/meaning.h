// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "outbox/item.h"
#include "outbox/wire.h"
#include "protocol/records.h"

#include <chrono>
#include <optional>
#include <string>

// What one answer means for one item. Only what is plainly the workroom's own word settles anything: a receipt that
// names this very item, or a problem of the protocol. Whatever else comes back is taken for something in between.

namespace truehang::sync {

struct Meaning {
    enum class Kind {
        confirmed,    ///< `receipt` proves it
        absent,       ///< asked, and it isn't there: send it
        stale,        ///< made from something older than what is `there`
        fetched,      ///< `document` holds the bytes that were asked for
        refused,      ///< for good; `refusal` says why
        suspect,      ///< refused, but a broken wire looks the same: for good only when it has happened often
        item_failed,  ///< temporary, and it may lie in this item
        wait,         ///< temporary, and it doesn't: the workroom asks for time
        nonsense,     ///< not the workroom's word
        pair_again,   ///< the workroom doesn't know this device
    };
    Kind kind = Kind::nonsense;
    Receipt receipt;
    Refusal refusal;
    WhatIsThere there;                                     ///< of `stale`
    std::string document;                                  ///< of `fetched`
    std::string why;                                       ///< one sentence
    std::optional<std::chrono::milliseconds> retry_after;  ///< of `wait`
};

/// What an answer to the PUT of this item means.
[[nodiscard]] Meaning meaning_of_send(const Item& item, const Answer& answer);
/// What an answer to the question "what is there?" means for this item.
[[nodiscard]] Meaning meaning_of_ask(const Item& item, const Answer& answer);

/// What the headers mean by which a workroom says that it has this photo.
[[nodiscard]] Meaning meaning_of_photo_there(const Item& item, const Answer& answer);
/// What an answer means for any item that isn't the success that was hoped for.
[[nodiscard]] Meaning meaning_of_trouble(const Item& item, const Answer& answer);
/// What an answer means that isn't the workroom's word.
[[nodiscard]] Meaning meaning_of_nonsense(const Answer& answer);

/// What an answer to the question for a survey’s document of that digest means; `absent` where it isn’t there.
[[nodiscard]] Meaning meaning_of_fetch(const Item& item, const std::string& sha256, const Answer& answer);

/// Reads Retry-After (RFC 9110, 10.2.3): seconds, or an HTTP date counted from the answer's own Date, so that this
/// device's clock doesn't matter. Nothing where it is missing or unreadable.
[[nodiscard]] std::optional<std::chrono::milliseconds> retry_after(const Answer& answer);

}  // namespace truehang::sync
