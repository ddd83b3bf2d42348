// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "document/json_reader.h"
#include "survey/survey.h"

#include <functional>
#include <map>
#include <optional>
#include <set>
#include <string>
#include <string_view>

// One of the three that are merged, at one place of the tree; and how three states of one thing become one.

namespace truehang::merging {

/// What was changed twice, by its place.
using Entries = std::map<std::string, ChangedTwice, std::less<>>;
[[nodiscard]] Entries entries_of(const Survey& survey);

struct Side {
    const JsonValue* node = nullptr;  ///< null: not there
    const Entries* entries = nullptr;

    [[nodiscard]] const ChangedTwice* entry(std::string_view at) const;
    [[nodiscard]] Side member(std::string_view name) const { return {node ? node->find(name) : nullptr, entries}; }
    /// Whether an entry lies at the place or below it.
    [[nodiscard]] std::vector<const ChangedTwice*> entries_under(std::string_view at) const;
};

struct Sides {
    Side base, ours, theirs;

    [[nodiscard]] Sides member(std::string_view name) const {
        return {base.member(name), ours.member(name), theirs.member(name)};
    }
};

/// JSON text, or none where nothing stands there; none comes before every text.
using Value = std::optional<std::string>;

/// One thing as a document has it: what stands, and all that stands side by side.
struct State {
    Value standing;
    std::set<Value> all;
    bool again = false;

    friend bool operator==(const State&, const State&) = default;
};

/// What stands at the place, with the values of its entry.
[[nodiscard]] State state_of(Value standing, const ChangedTwice* entry);

/// The base's where neither changed it, the changed one where one did, both where both did. For one base it doesn't
/// matter in which order, how grouped and how often states are joined: the base's is the identity, and of all others
/// the greatest value stands and the values are united.
[[nodiscard]] State joined(const State& base, const State& ours, const State& theirs);

/// Whether the two say the same at this place and below it, entries included.
[[nodiscard]] bool same_below(const Side& a, const Side& b, const std::string& at);

}  // namespace truehang::merging
