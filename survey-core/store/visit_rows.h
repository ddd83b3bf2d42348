// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "store/connection.h"
#include "store/photo_folder.h"
#include "store/rows.h"

namespace truehang {

/// When and by which edit rows are written.
struct Stamp {
    std::string now;
    long long edit_number = 0;
};

/// A visit's line: what every edit needs of it.
struct VisitLine {
    Revision revision = 0;
    bool removed = false;
    long long body_bytes = 0;  ///< of all its rows
};

/// Nothing where there is no such visit.
[[nodiscard]] std::optional<VisitLine> visit_line(Connection& connection, std::string_view visit_id);
/// The same, with a Failure `missing`.
VisitLine visit_line_or_missing(Connection& connection, std::string_view visit_id);

/// Every row of a visit's document.
[[nodiscard]] Rows stored_rows(Connection& connection, std::string_view visit_id);

/// One window's row, if it is there, and its readings.
[[nodiscard]] Rows stored_window(Connection& connection, std::string_view visit_id, const std::string& room_id,
                                 const std::string& window_id);

/// Writes one row as it is to be, or takes it away; keeps the visit's title and address, the uses of photos and the
/// outbox of photos in step.
void write_change(Connection& connection, const PhotoFolder& photos, std::string_view visit_id, const RowChange& change,
                  const Stamp& stamp);

/// Keeps how far one stored window is measured; `sum_counts` then adds it to its visit's line.
void keep_count(Connection& connection, std::string_view visit_id, std::string_view room_id, const Window& window);
/// The visit's line from its windows' counts: none where a window isn't counted yet.
void sum_counts(Connection& connection, std::string_view visit_id);
/// Both, for every window of a survey as it is stored.
void keep_counts(Connection& connection, const Survey& survey);

/// The windows are to be counted again when the visit is next listed.
void forget_counts(Connection& connection, std::string_view visit_id);

/// Queues the photo where its file is here and it isn't queued yet.
void queue_photo(Connection& connection, const PhotoFolder& photos, std::string_view sha256, const Stamp& stamp);

/// The row as it is stored now.
[[nodiscard]] std::optional<RowState> stored_row(Connection& connection, std::string_view visit_id, const RowKey& key);

}  // namespace truehang
