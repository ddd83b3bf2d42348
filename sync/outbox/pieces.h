// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "outbox/item.h"
#include "outbox/meaning.h"
#include "outbox/wire.h"

#include <string>

// A large photo goes up in pieces, so that a cut costs what was under way and no more: begun, sent on from where the
// workroom says that it stands, asked again after a cut. What each answer means.

namespace truehang::sync {

/// Which photos go in pieces, and how large a piece is, in bytes.
struct Pieces {
    long long above = 1024LL * 1024;
    long long piece = 512LL * 1024;
};

struct UploadMeaning {
    enum class Kind {
        stands,  ///< go on from `offset`
        begin,   ///< there is no such upload: begin it
        ask,     ///< ask where it stands
        whole,   ///< it can't go in pieces here: send it whole; with a `meaning.why`, later
        other,   ///< `meaning`, as of any item
    };
    Kind kind = Kind::other;
    long long offset = 0;  ///< of `stands`: 0 to the item's bytes
    Meaning meaning;
};

/// The POST that begins an upload, or finds it begun.
[[nodiscard]] Request beginning_of(const Item& item);
/// The HEAD that asks where it stands.
[[nodiscard]] Request question_about(const Item& item);
/// The PATCH that sends at most `piece` bytes from `offset` on.
[[nodiscard]] Request piece_of(const Item& item, long long offset, long long piece);

[[nodiscard]] UploadMeaning meaning_of_beginning(const Item& item, const Answer& answer);
[[nodiscard]] UploadMeaning meaning_of_question(const Item& item, const Answer& answer);
[[nodiscard]] UploadMeaning meaning_of_piece(const Item& item, const ByteRange& sent, const Answer& answer);

}  // namespace truehang::sync
