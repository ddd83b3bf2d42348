// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "visit_rows.h"

#include <QObject>
#include <QString>
#include <QStringList>
#include <QTimer>
#include <deque>
#include <functional>
#include <optional>
#include <set>
#include <string>

namespace truehang {

class SurveyKeeping;

/// The visits of the notebook and its bin: the store searches and narrows them and gives them a page at a time; after
/// an edit the edited visit alone is read.
class VisitList : public QObject {
    Q_OBJECT

public:
    explicit VisitList(SurveyKeeping& keeping, QObject* parent = nullptr);

    [[nodiscard]] ShownRows* shown() { return &shown_; }
    [[nodiscard]] ShownRows* removed() { return &removed_; }
    /// Roles: `word` (key), `says`, `chosen`. `asked` is among them only where the workroom asks something.
    [[nodiscard]] ShownRows* states() { return &states_; }

    [[nodiscard]] QString search() const { return search_; }
    void setSearch(const QString& words);
    /// `toMeasure`, `measuring`, `toSend`, `there`, `asked`, or empty: all. Another word is taken as empty.
    [[nodiscard]] QString narrowed() const;
    void setNarrowed(const QString& word);

    /// Reads the first page of both lists, or as far as they were read.
    void read();
    /// What emptying the bin asks first: how many visits, and which of them the workroom hasn’t confirmed; empty where
    /// the bin is.
    [[nodiscard]] QString binQuestion() const;
    /// Erases for good what `binQuestion` asked about; `then` has the fault, or none, and the ids of what went.
    void emptyBin(std::function<void(const QString& fault, const QStringList& gone)> then);
    /// What rests on the time is shown as it is now.
    void lookAtClock();
    /// One visit changed.
    void renew(const QString& visitId);

signals:
    void faulty(const QString& fault);

private:
    void readInto(VisitRows& rows, bool anew);
    void readMore(VisitRows& rows);
    void countOn();
    void lookThrough(const VisitsPage& page);
    void lookOn();
    void showStates();
    [[nodiscard]] VisitsAsked asked(const VisitRows& rows) const;

    SurveyKeeping& keeping_;
    QString search_;
    std::optional<VisitState> state_;
    int asking_ = 0;  // counts what was asked of the visits that aren't removed: answers to earlier questions are left
    bool questions_ = false;
    bool counting_ = false;
    bool counted_some_ = false;
    bool looking_ = false;
    std::set<std::string> looked_through_;
    std::deque<std::string> to_look_through_;
    QTimer rest_;  // before the next are looked through
    VisitRows shown_;
    VisitRows removed_;
    ShownRows states_;
};

}  // namespace truehang
