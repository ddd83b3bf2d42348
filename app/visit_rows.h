// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "shown_rows.h"
#include "store/store.h"
#include "visit_state.h"

#include <QString>
#include <functional>
#include <set>
#include <string>
#include <vector>

namespace truehang {

/// The visits as they are listed, page by page: what a row says is worked out when it is shown. Roles: `visitId` (key),
/// `title`, `line`, `state`, `mark`, `asks`, `spoken`, `heading` (the day, on the last row of each; else empty),
/// `unsent` (the workroom hasn't confirmed it whole), `waits` (a line where it hasn't for a day; else empty),
/// `damaged` (it can’t be read back).
class VisitRows : public ShownRows {
    Q_OBJECT

public:
    explicit VisitRows(QObject* parent = nullptr);

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] bool canFetchMore(const QModelIndex& parent) const override;
    void fetchMore(const QModelIndex& parent) override;

    /// Whether others come after the rows that are here.
    [[nodiscard]] bool hasMore() const { return has_more_; }
    /// The list from its beginning: rows that stay in their places are changed there, else it is made anew.
    void begin(VisitsPage page);
    /// The page that follows.
    void append(VisitsPage page);
    /// What was fetched doesn't follow any longer: the next look at the end asks again.
    void fetchAgain() { fetching_ = false; }
    /// One visit as it stands now, put where it belongs; none: it is no longer in this list.
    void renew(const std::string& id, const std::vector<VisitSummary>& found);
    /// These can’t be read back, and say so.
    void setUnreadable(const std::vector<std::string>& ids);
    /// The time now, RFC 3339: which day is called today, and what has waited for a day.
    void setNow(const std::string& now);

    /// Told when a view comes near the end.
    std::function<void()> on_wants_more;

private:
    enum Column { visit_id, title, line, state, mark, asks, spoken, heading, unsent, waits, damaged };
    [[nodiscard]] QVariant valueOf(std::size_t row, int column) const;
    [[nodiscard]] StandsAs standingOf(const VisitSummary& visit) const;
    [[nodiscard]] QString waitingOf(const VisitSummary& visit) const;
    [[nodiscard]] QString spokenOf(const VisitSummary& visit) const;
    [[nodiscard]] QString headingOf(std::size_t row) const;
    void headingChanged(int row);
    void take(int row);
    void put(VisitSummary visit);

    std::vector<VisitSummary> visits_;
    std::set<std::string> unreadable_;
    std::string now_;
    std::string today_;
    bool has_more_ = false;
    bool fetching_ = false;
};

}  // namespace truehang
