// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "protocol/records.h"
#include "survey/survey.h"
#include "units/result.h"
#include "workroom/archive/survey_states.h"
#include "workroom/records/records.h"

#include <cstddef>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

// What the list says of each survey, kept beside the documents so that no document is read for it: what a page of the
// list costs doesn't grow with what is stored.

namespace truehang::workroom {

class Archive;
class Database;

/// What of a document the list says and is searched by.
struct HeadText {
    explicit HeadText(const Survey& of);

    std::string title, client, address, measured_at;
    std::size_t windows = 0;
    std::vector<std::string> photos;  ///< digests of the photos that it shows, each once
    std::shared_ptr<const Survey> survey;
};

/// One line of the list: a survey's newest revision.
struct Head {
    std::string survey;
    long long change = 0;  ///< place in the order of arrival
    long long revision = 0;
    std::string received_at;  ///< RFC 3339, UTC
    std::string title, client, address, measured_at;
    std::size_t windows = 0;
    std::size_t photos = 0, photos_here = 0;
    std::vector<StateCount> states;
};

struct HeadsAsked {
    std::string words{};   ///< each begins a word of title, client or address; capital or small
    std::string state{};   ///< one of `state_words`; empty: all
    long long before = 0;  ///< only what came in before this change; 0: all
    std::size_t most = 50;
};

struct HeadsPage {
    std::vector<Head> heads;  ///< the one that came in last first
    bool has_older = false;   ///< more came in before the last of these
};

[[nodiscard]] Result<HeadsPage> find_heads(Archive& archive, const HeadsAsked& asked);

/// Digests of the photos that a survey's newest revision shows and that haven't come in.
[[nodiscard]] Result<std::vector<std::string>> missing_photos(Archive& archive, std::string_view survey);

/// Digests of the photos that a survey shows, each once.
[[nodiscard]] std::vector<std::string> photos_of(const Survey& survey);

/// Within the transaction that keeps a revision: its place in the order of arrival, and the survey's head where no
/// later revision is there.
void note_revision(Records& records, const sync::SurveyReceipt& receipt, const HeadText& text);

/// Heads of the surveys that have none (those that an earlier version received, or whose head was forgotten), and
/// places in the order of arrival for revisions that have none.
[[nodiscard]] Result<Done> make_missing_heads(Database& database);

/// Forgets the head of one survey, or of all, within a transaction: they are made anew when the archive is next opened.
/// Records of a version that had none stay as they are.
void forget_head(Records& records, const std::string& survey);
void forget_heads(Records& records);

}  // namespace truehang::workroom
