// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "store/store.h"

#include <compare>
#include <map>

// A survey as rows: each row holds the JSON of one object of the document without the objects that have rows of their
// own, so that an edit writes little and unknown keys stay where they stood.

namespace truehang {

/// `removed` is no part of the document: the mark of a visit taken out of the list (`true` or `false`).
enum class RowKind { visit, room, window, reading, removed };

struct RowKey {
    RowKind kind = RowKind::visit;
    std::string room;
    std::string window;
    int place = 0;  ///< of a reading, which may have no id
    friend auto operator<=>(const RowKey&, const RowKey&) = default;
};

struct RowState {
    int place = 0;     ///< in its list, from 0
    std::string body;  ///< JSON
    friend bool operator==(const RowState&, const RowState&) = default;
};

using Rows = std::map<RowKey, RowState>;

/// One row before and after an edit; nothing: it wasn't there.
struct RowChange {
    RowKey key;
    std::optional<RowState> before;
    std::optional<RowState> after;
};
using RowChanges = std::vector<RowChange>;

/// The survey's document where `read_survey` takes it; else a Failure `unreadable` with the first fault's pointer.
[[nodiscard]] std::string checked_document(const Survey& survey);

/// A document's rows; its revision is left out.
[[nodiscard]] Rows rows_of(std::string_view document);

/// The survey that rows make, or a Failure `damaged`.
[[nodiscard]] Survey survey_of(const Rows& rows, Revision revision);

/// What to change in `before` to have `after`.
[[nodiscard]] RowChanges changes_between(const Rows& before, const Rows& after);

/// The same changes the other way round.
[[nodiscard]] RowChanges reversed(RowChanges changes);

/// By how many bytes the bodies grow.
[[nodiscard]] long long growth_of(const RowChanges& changes);

/// Changes as they are stored with an edit, and back.
[[nodiscard]] std::string text_of(const RowChanges& changes);
[[nodiscard]] RowChanges changes_of(std::string_view text);

}  // namespace truehang
