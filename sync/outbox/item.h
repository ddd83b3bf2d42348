// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "protocol/time_text.h"

#include <string>
#include <vector>

// One thing that is to reach the workroom, and how it stands.

namespace truehang::sync {

enum class ItemKind { survey, answer, photo };

/// One row of the outbox: a revision of a survey, an answer to a question, or a photo.
struct Item {
    std::string key;  ///< the shelf's own name for the row
    ItemKind kind = ItemKind::survey;
    std::string survey;                     ///< id of the survey; of a photo, the survey that shows it; of
                                            ///< an answer, the survey that was asked about
    long long revision = 0;                 ///< of a survey
    long long question = 0;                 ///< that an answer is to, its number
    std::string answer;                     ///< id of an answer
    std::string sha256;                     ///< of the bytes to be sent, 64 hexadecimal digits
    long long bytes = 0;                    ///< their number
    std::string media_type;                 ///< of a photo; empty: not known
    std::vector<std::string> parents_here;  ///< of a survey: digests of its parents whose bytes are on this device
    int attempts = 0;   ///< how often it failed so far through something that may lie in this very item
    Time not_before{};  ///< not to be tried again earlier
};

/// How an item stands, for a person.
enum class Standing {
    waiting,     ///< on this device; will be sent
    on_its_way,  ///< being sent now
    there,       ///< the workroom confirmed it
    refused,     ///< the workroom will not take it as it is
};

/// The workroom's proof that it has an item.
struct Receipt {
    std::string sha256;
    std::string received_at;  ///< RFC 3339, the workroom's clock
};

/// Why an item is refused for good, and what a person can do about it; both whole sentences.
struct Refusal {
    std::string why;
    std::string what_to_do;
};

}  // namespace truehang::sync
