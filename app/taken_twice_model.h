// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "shown_rows.h"
#include "taken_twice.h"

#include <QObject>
#include <QString>
#include <optional>

namespace truehang {

class OpenVisit;

/// What two people took or changed differently on the open visit, side by side, each settled by a person with one tap
/// or by a new reading. Settling is an edit that undo turns back.
class TakenTwiceModel : public QObject {
    Q_OBJECT
    /// One after the other: a place, a thing of it, its choices, where it can be measured again that. Roles: `row`
    /// (key), `kind` (`place`, `thing`, `choice`, `again`), `says`, `who` (from whom and when), `stands` (it holds
    /// meanwhile), `broad` (too long to stand beside another), `spoken`. Worked while it is looked at.
    Q_PROPERTY(truehang::ShownRows* rows READ rows CONSTANT)
    /// How many things are to be settled; of the open window; and in words, empty where none is.
    Q_PROPERTY(int count READ count NOTIFY changed)
    Q_PROPERTY(int countHere READ countHere NOTIFY changed)
    Q_PROPERTY(QString line READ line NOTIFY changed)
    Q_PROPERTY(QString lineHere READ lineHere NOTIFY changed)
    /// Whose work is in the visit too, and since when; empty where nobody else’s is.
    Q_PROPERTY(QString cameLine READ cameLine NOTIFY changed)
    /// Why the last choice can't stand; empty else.
    Q_PROPERTY(QString fault READ fault NOTIFY changed)

public:
    explicit TakenTwiceModel(OpenVisit& open, QObject* parent = nullptr);

    [[nodiscard]] ShownRows* rows() { return &rows_; }
    [[nodiscard]] int count() const { return count_; }
    [[nodiscard]] int countHere() const { return count_here_; }
    [[nodiscard]] QString line() const;
    [[nodiscard]] QString lineHere() const;
    [[nodiscard]] QString cameLine() const;
    [[nodiscard]] QString fault() const { return fault_; }
    /// What lies in the window of that id stands first.
    void setShown(bool shown, const QString& first = {});

    /// Something of another phone came into this visit, or into any (empty).
    void lookAt(const QString& visit);

    /// A choice: it counts from now on. An `again`: leads to the station.
    Q_INVOKABLE void choose(const QString& row);

signals:
    void changed();
    /// The station of a window is to be measured again.
    void wanted(const QString& windowId, const QString& station);

private:
    void readMet();
    void show();
    void showRows();
    void settleReading(const TwiceThing& thing, const TwiceChoice& choice);
    void settleEntry(const TwiceThing& thing, qsizetype choice);
    void settled(const QString& fault);

    OpenVisit& open_;
    bool shown_ = false;
    QString first_;
    QString fault_;
    int count_ = 0;
    int count_here_ = 0;
    std::optional<MetSurvey> met_;
    QList<TwiceThing> things_;
    ShownRows rows_;
};

}  // namespace truehang
