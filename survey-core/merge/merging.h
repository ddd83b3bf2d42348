// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "merge/list_order.h"
#include "merge/shape_of_survey.h"
#include "merge/side.h"

#include <map>
#include <set>
#include <utility>

namespace truehang::merging {

/// An entry for the removal of what another changed.
struct Removal {
    bool removed = false;
    bool again = false;
    friend bool operator==(const Removal&, const Removal&) = default;
};

/// Merges three trees into one, and gathers what was changed twice.
class Merging {
public:
    /// The tree of all three; `entries` holds then what was changed twice in it.
    [[nodiscard]] JsonValue survey(const Sides& sides);
    [[nodiscard]] Entries take_entries() { return std::move(entries_); }

private:
    using Names = std::set<std::string, std::less<>>;
    using Items = std::map<std::string, JsonValue>;
    /// What keeps an item that one took out: another list’s order, or that it is named.
    struct Kept {
        Names moved, named;
    };
    /// The orders of one list in the three documents.
    struct Orders {
        Keys base, ours, theirs;
    };

    std::optional<JsonValue> node(const Node& node, const Sides& sides, const std::string& at, bool whole_where_new);
    std::optional<JsonValue> value(const Sides& sides, const std::string& at);
    JsonValue members(const Node& node, const Sides& sides, const std::string& at, const Names& but = {});
    std::optional<JsonValue> list(const Node& node, const Sides& sides, const std::string& at, const Names& named = {});
    Items items(const Node& node, const Sides& sides, const std::string& at, const Kept& kept);
    JsonValue windows(const Sides& sides);
    /// Whether the item is there; where one took it out, that one’s side becomes the base’s.
    bool present(Sides& sides, const std::string& at, bool moved_or_named);
    [[nodiscard]] State order_state(const Side& side, const std::string& at, const Keys& base, const Keys& order) const;
    [[nodiscard]] Names moved(const Sides& sides, const std::string& at, const Orders& orders) const;
    Keys ordered(const Sides& sides, const std::string& at, const Orders& orders, const Keys& there);
    void keep_removal(const std::string& at, const Removal& removal);
    void keep_values(const std::string& at, const State& state);
    [[nodiscard]] Names fabrics_named(const JsonValue& windows) const;
    [[nodiscard]] Names rooms_named(const JsonValue& windows) const;

    Entries entries_;
};

/// A list of keys as JSON text, and back; no keys from a text that is no list of texts.
[[nodiscard]] std::string text_of_keys(const Keys& keys);
[[nodiscard]] Keys keys_of_text(const std::string& text);

}  // namespace truehang::merging
