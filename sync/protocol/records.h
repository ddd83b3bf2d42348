// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "units/result.h"

#include <string>
#include <string_view>
#include <vector>

// The JSON records that travel. Reading passes over keys it doesn't know; a key that is missing or of a wrong type is
// the error `unreadable` with its JSON pointer in `where`.

namespace truehang::sync {

/// What a device says to be taken on: body of `POST /pair`.
struct PairRequest {
    std::string code;         ///< as typed; the receiver forgives case, spaces and hyphens
    std::string device_name;  ///< for people: "J. Tamm’s phone"; 1 to 100 bytes
};

/// What it gets: the bearer token, told this once, and what the workroom calls itself.
struct PairAnswer {
    std::string token;
    std::string workroom;
};

/// Proof that one revision is stored, as the bytes that were sent.
struct SurveyReceipt {
    std::string id;
    long long revision = 0;
    std::string sha256;       ///< of the bytes, 64 hexadecimal digits
    std::string received_at;  ///< RFC 3339, UTC
    friend bool operator==(const SurveyReceipt&, const SurveyReceipt&) = default;
};

/// What is there of a survey, told to whoever sent a revision made from something older.
struct WhatIsThere {
    SurveyReceipt newest;
    std::string sent_by;            ///< the device’s name, for people; empty: not told
    std::string common_sha256;      ///< the sender’s newest parent that the newest there is made from; empty: none
    long long common_revision = 0;  ///< the revision that it is there; 0: it isn’t there itself
    friend bool operator==(const WhatIsThere&, const WhatIsThere&) = default;
};

/// Proof that one photo is stored.
struct PhotoReceipt {
    std::string sha256;
    long long bytes = 0;
    std::string received_at;
    friend bool operator==(const PhotoReceipt&, const PhotoReceipt&) = default;
};

/// What is there of one survey: answer to `GET /surveys/{id}/receipt`, revisions in rising order.
struct SurveyThere {
    std::string id;
    std::vector<SurveyReceipt> revisions;
    std::vector<std::string> photos_missing;  ///< digests the newest revision names and the workroom lacks
};

/// A revision that came in, or a survey that was erased for good: then only its id and when.
struct Change {
    SurveyReceipt receipt;
    std::string erased_at;  ///< RFC 3339, UTC; empty: it came in
    std::string sent_by{};  ///< the name of the device that sent it, for people; may be empty
};

/// What changed, in the order of the workroom's commits: answer to `GET /changes`.
struct Changes {
    std::vector<Change> changes;
    std::string next;   ///< cursor to ask with for what comes in later
    bool more = false;  ///< there is more already
};

[[nodiscard]] std::string write_record(const PairRequest& record);
[[nodiscard]] std::string write_record(const PairAnswer& record);
[[nodiscard]] std::string write_record(const SurveyReceipt& record);
[[nodiscard]] std::string write_record(const PhotoReceipt& record);
[[nodiscard]] std::string write_record(const SurveyThere& record);
[[nodiscard]] std::string write_record(const Changes& record);

[[nodiscard]] Result<PairRequest> read_pair_request(std::string_view json);
[[nodiscard]] Result<PairAnswer> read_pair_answer(std::string_view json);
[[nodiscard]] Result<SurveyReceipt> read_survey_receipt(std::string_view json);
[[nodiscard]] Result<PhotoReceipt> read_photo_receipt(std::string_view json);
[[nodiscard]] Result<SurveyThere> read_survey_there(std::string_view json);
[[nodiscard]] Result<Changes> read_changes(std::string_view json);

}  // namespace truehang::sync
