// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "sheet/made.h"
#include "survey/survey.h"
#include "workroom/records/records.h"

#include <array>
#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

// At which step a survey's layers are, kept beside its head so that the list is filtered by an index.

namespace truehang::workroom {

/// A survey stands under `new` and each step that one of its layers is at; under `changed` where a later revision has
/// other figures than a layer was marked by; under `agreed` where a client signed its figures, and under
/// `agreed-changed` where they differ since; under `question` while something that was asked about it has no answer.
inline constexpr std::array<std::string_view, 9> state_words{
    "new", "ordered", "cut", "made", "hung", "changed", "agreed", "agreed-changed", "question"};

/// SHA-256 of what a layer is made by, 64 hexadecimal digits.
[[nodiscard]] std::string digest_of(const MadeLayer& layer);

struct StateCount {
    std::string state;
    std::size_t layers = 0;  ///< that are there; of `agreed` 1, of `question` how many are open
};

/// Within the transaction that keeps a revision: that a client signed it, where one did; then true. A survey counts as
/// agreed from then on, whichever of its revisions came first and whatever later ones hold.
bool note_agreement(Records& records, const std::string& survey_id, long long revision, const Survey& survey);

/// Within the transaction that keeps a revision or marks: the states of a survey by its newest revision. Figures are
/// worked out only where a layer is marked or a client signed.
void put_states(Records& records, const std::string& survey_id, long long change, const Survey& survey);

/// The same after marks, questions or answers were added; nothing is done where the survey has no head or its newest
/// revision can't be read.
void put_states_again(Records& records, const std::string& survey_id);

/// In the order of `state_words`.
[[nodiscard]] std::vector<StateCount> states_of(Records& records, const std::string& survey_id);

}  // namespace truehang::workroom
