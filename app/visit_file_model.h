// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "work_aside.h"

#include <QObject>
#include <QString>
#include <QUrl>
#include <memory>

namespace truehang {

class OpenVisit;
struct Devices;

/// Visits as files: writing the open one, and taking one in. Either is long work: it shows how far it is, can be
/// stopped, and goes on while other pages are open.
class VisitFileModel : public QObject {
    Q_OBJECT
    /// A file is being written or taken in.
    Q_PROPERTY(bool working READ working NOTIFY changed)
    /// What is being done and how far it is: "Writing the file, 45 %"; empty where nothing is.
    Q_PROPERTY(QString doing READ doing NOTIFY progressed)
    /// The same as a share from 0 to 1.
    Q_PROPERTY(double share READ share NOTIFY progressed)
    /// What came of the last: where the file stands, what was taken in, or why not; empty before.
    Q_PROPERTY(QString line READ line NOTIFY changed)
    /// There is a file of the open visit to hand on.
    Q_PROPERTY(bool written READ written NOTIFY changed)
    /// The visit that was taken in, or that was here already: its id, or empty.
    Q_PROPERTY(QString takenIn READ takenIn NOTIFY changed)
    /// What the open visit says where the workroom hasn't confirmed all of it for a day; else empty.
    Q_PROPERTY(QString waits READ waits NOTIFY waitsChanged)
    /// The ending by which files are chosen, as a dialog's filter has it.
    Q_PROPERTY(QString filter READ filter CONSTANT)

public:
    VisitFileModel(OpenVisit& open, Devices& devices, QObject* parent = nullptr);

    [[nodiscard]] bool working() const { return working_; }
    [[nodiscard]] QString doing() const;
    [[nodiscard]] double share() const { return percent_ / 100.0; }
    [[nodiscard]] QString line() const { return line_; }
    [[nodiscard]] bool written() const { return !written_.isEmpty(); }
    [[nodiscard]] QString takenIn() const { return taken_in_; }
    [[nodiscard]] QString waits() const;
    [[nodiscard]] static QString filter();

    /// Writes the open visit's file into the documents folder, under a name that isn't there yet.
    Q_INVOKABLE void write();
    /// Takes a chosen file in: a visit that isn't here as it is; one that is here in another state, or damaged, as a
    /// visit of its own; one that is here as it stands not again.
    Q_INVOKABLE void takeIn(const QUrl& file);
    /// Leaves off: nothing is written, no visit is taken in.
    Q_INVOKABLE void stop();
    /// What waits is shown as it is now.
    void lookAtClock() { emit waitsChanged(); }
    /// Forgets what came of the last; what is going on goes on.
    Q_INVOKABLE void forget();
    /// Hands the written file to the system's own sharing; false where there is none.
    Q_INVOKABLE bool handOn();

signals:
    void changed();
    void progressed();
    void waitsChanged();
    /// A visit was kept or brought back.
    void tookIn(const QString& visitId);

private:
    struct Coming;
    void start(const QString& doing);
    void end(const QString& line);
    void wrote(const Result<std::optional<PackedVisit>>& written, const QString& file);
    [[nodiscard]] QString freePlace() const;
    void look(const std::shared_ptr<Coming>& coming);
    void keepPhotos(const std::shared_ptr<Coming>& coming, std::size_t next);
    void keepVisit(const std::shared_ptr<Coming>& coming);
    void endTakenIn(const Coming& coming);

    OpenVisit& open_;
    Devices& devices_;
    WorkAside aside_;
    bool working_ = false;
    bool writing_ = false;
    int percent_ = 0;
    QString doing_;
    QString line_;
    QUrl written_;
    QString taken_in_;
};

}  // namespace truehang
