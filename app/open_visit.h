// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "figures/figures.h"
#include "store/store.h"
#include "survey/survey.h"

#include <QObject>
#include <functional>
#include <memory>
#include <optional>

namespace truehang {

class SurveyKeeping;
class Whereabouts;

/// The survey that is open and the window in it, shared by the view models and by what is drawn. Every edit is shown at
/// once and goes to the store as one transaction (the change, its undo, its outbox row); one that can't be written is
/// taken back from what is shown and reported.
class OpenVisit : public QObject {
    Q_OBJECT
    Q_PROPERTY(QString visitId READ visitId NOTIFY opened)
    Q_PROPERTY(QString windowId READ windowId NOTIFY windowChanged)

public:
    explicit OpenVisit(SurveyKeeping& keeping, QObject* parent = nullptr);
    ~OpenVisit() override;

    [[nodiscard]] QString visitId() const;
    [[nodiscard]] QString windowId() const;

    [[nodiscard]] bool isOpen() const;
    [[nodiscard]] const Survey& survey() const;
    [[nodiscard]] const Window* window(const QString& id) const;
    [[nodiscard]] const Room* roomOf(const QString& windowId) const;
    /// The open window, or nothing.
    [[nodiscard]] const Window* window() const;
    /// "Parlour, south window"
    [[nodiscard]] QString titleOf(const QString& windowId) const;

    /// Figures of one window, worked when first asked for after an edit.
    [[nodiscard]] const WindowFigures& figuresOf(const QString& windowId) const;
    /// Figures of the whole survey, worked when first asked for after an edit.
    [[nodiscard]] const Figures& figures() const;
    /// Figures of one window with this reading in it, which isn't kept yet.
    [[nodiscard]] WindowFigures figuresWith(const QString& windowId, const Reading& reading) const;
    /// Figures of one of the survey's windows as it would be, which isn't kept yet.
    [[nodiscard]] WindowFigures figuresWith(const Window& tried) const;

    /// What happens once an edit is on the disk (no text) or couldn't be written (the reason).
    using AfterKeeping = std::function<void(const QString& fault)>;

    /// Changes the survey. `says` is what undo calls it. False, and nothing done, where `change` returns false. While
    /// an undo is on its way `change` waits for it and is called later, on another state: it holds all that it needs.
    bool edit(const QString& says, const std::function<bool(Survey&)>& change, AfterKeeping after = {});
    bool editWindow(const QString& says, const QString& windowId, const std::function<bool(Window&)>& change,
                    AfterKeeping after = {});

    [[nodiscard]] bool canUndo() const;
    [[nodiscard]] bool canRedo() const;
    /// What undo and redo would turn back: "Sill to head, left: 1130"; empty where nothing.
    [[nodiscard]] QString undoSays() const;
    [[nodiscard]] QString redoSays() const;
    void undo();
    void redo();

    /// What the store tells of it: revision, photos, what has arrived. As last read; see `askStanding`.
    [[nodiscard]] const VisitSummary& summary() const;
    /// Reads undo's offer and the summary anew, as after something arrived.
    void askStanding();

    /// Where the person is, and half-typed text.
    [[nodiscard]] Whereabouts& place();
    [[nodiscard]] const Whereabouts& place() const;

    /// A new id (RFC 9562, version 7) and the time now, RFC 3339.
    [[nodiscard]] std::string newId() const;
    [[nodiscard]] std::string now() const;

    /// Reads a survey from the store and opens it; `after` has the fault, or none.
    void openSurvey(const QString& id, std::function<void(const QString& fault)> after = {});
    /// Opens a survey that is made here; it is kept as an edit.
    void openNew(const Survey& survey, const QString& says, AfterKeeping after = {});
    void close();
    /// An empty id closes the window.
    void openWindow(const QString& id);

    /// Why something couldn't be put together, and whether that will stay so; no text: it is done.
    using AfterMeeting = std::function<void(const QString& fault, bool for_good)>;
    /// Puts what somebody else sent together with the visit as it stands here, as one edit; `base` is the document that
    /// both were made from. Once `after` has no fault it is on the disk and waits to be sent.
    void bringTogether(const QString& says, const Survey& base, const MetRevision& met, AfterMeeting after);
    /// Whether this visit is open, or is being read to be: what the store changes meanwhile could be overwritten.
    [[nodiscard]] bool holds(const QString& id) const;
    /// Reads the survey again, as after the store changed it by itself.
    void readAgain();

    [[nodiscard]] SurveyKeeping& keeping() { return keeping_; }

signals:
    /// Another survey is open, or none.
    void opened();
    /// Another window is open, or none.
    void windowChanged();
    /// The survey changed.
    void changed();
    /// What undo and redo would do, or what has arrived, was read anew.
    void standingChanged();
    /// Every edit made so far is on the disk.
    void keptAll();
    /// An edit is on the disk, or was undone or done again; `what` is what it is called.
    void wasKept(const QString& what);
    void wasUndone(const QString& what);
    void wasDoneAgain(const QString& what);
    /// An edit couldn't be written; `reason` says what to do.
    void notKept(const QString& reason);

private:
    struct Edit;
    bool take(Edit edit);
    void keep(const Edit& edit);
    void settle(const Result<Revision>& kept, const AfterKeeping& after);
    using Turn = Result<std::optional<std::string>> (Store::*)(std::string_view);
    void turnBack(Turn turn);
    void show(std::optional<Survey> survey);

    class Parts;
    SurveyKeeping& keeping_;
    std::unique_ptr<Parts> parts_;
};

}  // namespace truehang
