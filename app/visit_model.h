// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "field_form.h"
#include "figures/next_step.h"
#include "shown_rows.h"
#include "store/store.h"
#include "survey/survey.h"
#include "thread_mark.h"
#include "writing.h"

#include <QObject>

namespace truehang {

class OpenVisit;

/// The open visit: who and where, its rooms and windows, what it is measured with, what to order, and the sign-off.
class VisitModel : public QObject {
    Q_OBJECT
    Q_PROPERTY(QString visitId READ visitId NOTIFY changed)
    /// The title, or "New visit" while it has none.
    Q_PROPERTY(QString title READ title NOTIFY changed)
    Q_PROPERTY(QString clientName READ clientName NOTIFY changed)
    Q_PROPERTY(QString address READ address NOTIFY changed)
    /// Where it stands: "measuring, 2 windows left", "at the workroom, 3 of 5 photos".
    Q_PROPERTY(QString state READ state NOTIFY changed)
    Q_PROPERTY(truehang::thread_mark::Mark mark READ mark NOTIFY changed)
    /// "54.60000, -1.10000, within 12 m", or empty where the site has no position.
    Q_PROPERTY(QString positionLine READ positionLine NOTIFY changed)

    /// Fields `title`, `clientName`, `clientPhone`, `clientEmail`, `address`, `measuredBy`.
    Q_PROPERTY(truehang::FieldForm* site READ site CONSTANT)
    /// Fields `entryUnit`, `tapeClass`, `edge` (choices), `rulesName` (text).
    Q_PROPERTY(truehang::FieldForm* measuring READ measuring CONSTANT)

    /// Roles: `roomId` (key), `name`, `line` ("3 windows"), `children` (words), `spoken`, `use`,
    /// `place` ("Room 2 of 5").
    Q_PROPERTY(truehang::ShownRows* rooms READ rooms CONSTANT)
    /// All windows, room by room. Roles: `windowId` (key), `roomId`, `room`, `name`, `title` ("Parlour, south window"),
    /// `shape` (words), `state` (words), `mark` (ThreadMark), `firstOfRoom`, `asks` (has a stop or remeasure flag),
    /// `spoken`, `place` ("Window 1 of 2 in Kitchen").
    Q_PROPERTY(truehang::ShownRows* windows READ windows CONSTANT)
    /// Roles: `word` (key), `says`, `offered` (false: "later"), `tells` (what it is).
    Q_PROPERTY(truehang::ShownRows* shapes READ shapes CONSTANT)
    /// Windows that were taken out, alone or with their room, and can be brought back; the last one first. Roles:
    /// `windowId` (key), `title`, `spoken`.
    Q_PROPERTY(truehang::ShownRows* removedWindows READ removedWindows CONSTANT)
    /// What to buy over the house. Roles: `fabricId` (key), `name`, `figure` ("4.9"), `unit` ("m"), `line` (what it
    /// goes into), `provisional` (words, empty where firm), `spoken`.
    Q_PROPERTY(truehang::ShownRows* orders READ orders CONSTANT)

    Q_PROPERTY(bool signedOff READ signedOff NOTIFY changed)
    /// "Agreed by R. Oduya, 14 March 2026", or empty.
    Q_PROPERTY(QString signedLine READ signedLine NOTIFY changed)

    /// That what was done before can't be undone, once something was erased for good, until the next edit; else empty.
    Q_PROPERTY(QString erasedSays READ erasedSays NOTIFY changed)
    /// What comes next: `window` (the first is to be added), `measure`, `agree`, `send` or `done`; and in words.
    Q_PROPERTY(QString nextStep READ nextStep NOTIFY changed)
    Q_PROPERTY(QString nextSays READ nextSays NOTIFY changed)
    /// What comes after the figures of the open window: the next window, else what comes next of the visit.
    Q_PROPERTY(QString afterWindowSays READ afterWindowSays NOTIFY changed)

    Q_PROPERTY(bool canUndo READ canUndo NOTIFY changed)
    Q_PROPERTY(bool canRedo READ canRedo NOTIFY changed)
    /// What would be undone or done again: "Sill to head, left: 1130".
    Q_PROPERTY(QString undoSays READ undoSays NOTIFY changed)
    Q_PROPERTY(QString redoSays READ redoSays NOTIFY changed)

public:
    explicit VisitModel(OpenVisit& open, QObject* parent = nullptr);

    [[nodiscard]] QString visitId() const;
    [[nodiscard]] QString title() const;
    [[nodiscard]] QString clientName() const;
    [[nodiscard]] QString address() const;
    [[nodiscard]] QString state() const;
    [[nodiscard]] thread_mark::Mark mark() const;
    [[nodiscard]] QString positionLine() const;
    [[nodiscard]] FieldForm* site() { return &site_; }
    [[nodiscard]] FieldForm* measuring() { return &measuring_; }
    [[nodiscard]] ShownRows* rooms() { return &rooms_; }
    [[nodiscard]] ShownRows* windows() { return &windows_; }
    [[nodiscard]] ShownRows* shapes() { return &shapes_; }
    [[nodiscard]] ShownRows* removedWindows() { return &removed_windows_; }
    [[nodiscard]] ShownRows* orders() { return &orders_; }
    [[nodiscard]] bool signedOff() const;
    [[nodiscard]] QString signedLine() const;
    [[nodiscard]] QString erasedSays() const;
    [[nodiscard]] QString nextStep() const;
    [[nodiscard]] QString nextSays() const;
    [[nodiscard]] QString afterWindowSays() const;
    /// The window that comes after the open one; empty where that is the last.
    [[nodiscard]] QString windowAfter() const;
    /// The window that is to be measured next; empty where another step comes next.
    [[nodiscard]] QString windowToMeasure() const { return shown(next_.window); }
    [[nodiscard]] QString undoSays() const;
    [[nodiscard]] QString redoSays() const;
    [[nodiscard]] bool canUndo() const;
    [[nodiscard]] bool canRedo() const;

    /// The new room's id; an empty name becomes "Room 2".
    Q_INVOKABLE QString addRoom(const QString& name);
    Q_INVOKABLE void renameRoom(const QString& roomId, const QString& name);
    /// What the room is used as, in the surveyor's words: a public place brings its caution of fire.
    Q_INVOKABLE void setRoomUse(const QString& roomId, const QString& use);
    /// `children`: `yes`, `no` or `unknown`.
    Q_INVOKABLE void setYoungChildren(const QString& roomId, const QString& children);
    /// Takes the room with its windows out; undo brings it back.
    Q_INVOKABLE void removeRoom(const QString& roomId);
    /// The new window's id, or empty where the shape isn't offered. An empty name becomes "Window 2". An empty
    /// `roomId` makes a first room.
    Q_INVOKABLE QString addWindow(const QString& roomId, const QString& name, const QString& shape);
    Q_INVOKABLE void renameWindow(const QString& windowId, const QString& name);
    Q_INVOKABLE void removeWindow(const QString& windowId);
    /// Puts it into its room, made again where it has gone.
    Q_INVOKABLE void bringWindowBack(const QString& windowId);
    /// Erases the windows that were taken out for good, and with them what could be undone.
    Q_INVOKABLE void eraseRemovedWindows();
    /// `by` places towards the end, within the visit and within the room.
    Q_INVOKABLE void moveRoom(const QString& roomId, int by);
    Q_INVOKABLE void moveWindow(const QString& windowId, int by);
    Q_INVOKABLE void moveWindowTo(const QString& windowId, const QString& roomId);
    /// A window like this one after it, with nothing measured; its id, or empty.
    Q_INVOKABLE QString copyWindow(const QString& windowId);
    Q_INVOKABLE void undo();
    Q_INVOKABLE void redo();

signals:
    /// What a screen reader says at once: "Kept: Sill to head, left: 1130".
    void told(const QString& words);
    void changed();

private:
    void show();
    void showRooms();
    void showSite();
    void showMeasuring();
    void showOrders();
    void showRemoved();
    void askRemoved();
    [[nodiscard]] QString placeOf(const QString& field) const;
    [[nodiscard]] QString leaveSite(const QString& field, const QString& text);
    [[nodiscard]] QString chooseMeasuring(const QString& field, const QString& word);

    OpenVisit& open_;
    Next next_;
    bool erased_ = false;
    FieldForm site_;
    FieldForm measuring_;
    ShownRows rooms_;
    ShownRows windows_;
    ShownRows shapes_;
    ShownRows removed_windows_;
    ShownRows orders_;
    std::vector<RemovedWindow> removed_;
    QStringList asked_with_;  // the windows that were there when `removed_` was read
};

}  // namespace truehang
