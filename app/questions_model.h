// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "shown_rows.h"
#include "store/questions.h"

#include <QObject>
#include <QString>
#include <vector>

namespace truehang::sync {
struct QuestionAnswer;
}

namespace truehang {

class OpenVisit;

/// What the workroom asks about the open visit: each a request to measure there again, answered by the reading that
/// counts, in words, or both. An answer is kept first and goes to the workroom like a visit.
class QuestionsModel : public QObject {
    Q_OBJECT
    /// Open ones first. Roles: `question` (key), `place` ("Parlour, south window: Width at the top"), `words`, `who`
    /// (who asks, and when), `answers` (each with who and when, one a line; empty while it is open), `chosen` (its
    /// answer is being given), `canMeasure`, `reading` (that counts there now, in words; empty where none can answer),
    /// `typed` (the words of an answer that isn’t given yet), `spoken`.
    Q_PROPERTY(truehang::ShownRows* rows READ rows CONSTANT)
    /// How many are open; of the open window; and in words, empty where none is.
    Q_PROPERTY(int count READ count NOTIFY changed)
    Q_PROPERTY(int countHere READ countHere NOTIFY changed)
    Q_PROPERTY(QString line READ line NOTIFY changed)
    /// Why the last answer wasn't taken; empty else.
    Q_PROPERTY(QString fault READ fault NOTIFY changed)

public:
    explicit QuestionsModel(OpenVisit& open, QObject* parent = nullptr);

    [[nodiscard]] ShownRows* rows() { return &rows_; }
    [[nodiscard]] int count() const;
    [[nodiscard]] int countHere() const;
    [[nodiscard]] QString line() const;
    [[nodiscard]] QString fault() const { return fault_; }

    /// Reads what the store has, as after something came.
    void read();

    /// The question that is answered next.
    Q_INVOKABLE void choose(const QString& question);
    /// At each keystroke: the words outlive the program.
    Q_INVOKABLE void typing(const QString& question, const QString& words);
    /// Leads to the station, or to the window where no station is named.
    Q_INVOKABLE void measureAgain(const QString& question);
    /// Answers with the words typed, and with the reading that counts where `withReading`.
    Q_INVOKABLE void answer(const QString& question, bool withReading);

signals:
    void changed();
    /// The station of a window is to be measured again.
    void wanted(const QString& windowId, const QString& station);
    /// An answer is kept and waits to be sent.
    void answered();

private:
    [[nodiscard]] const VisitQuestion* find(const QString& question) const;
    [[nodiscard]] QString placeOf(const VisitQuestion& question) const;
    [[nodiscard]] QString wordsPlace(const QString& question) const;
    [[nodiscard]] ShownRows::Row rowOf(const VisitQuestion& question) const;
    void show();
    void keep(const sync::QuestionAnswer& answer);

    OpenVisit& open_;
    std::vector<VisitQuestion> questions_;
    QString chosen_;
    QString fault_;
    bool keeping_ = false;  ///< an answer is on its way to the store
    ShownRows rows_;
};

}  // namespace truehang
