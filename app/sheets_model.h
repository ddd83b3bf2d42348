// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "print.h"
#include "work_aside.h"

#include <QByteArray>
#include <QObject>
#include <QString>
#include <QUrl>
#include <QVariantList>

namespace truehang {

class OpenVisit;
struct Devices;

/// Sheets of the open visit as PDF: which kind, on what paper, in which unit, and what came of the last.
class SheetsModel : public QObject {
    Q_OBJECT
    /// `measure`, `cutting`, `making`, `hanging`, `light`, `agreed` (the client’s copy) or `all` (but light and the
    /// client’s copy).
    Q_PROPERTY(QString kind READ kind WRITE setKind NOTIFY changed)
    /// The id of the one window whose sheets are wanted; empty: all windows. The cutting list is of the house still.
    Q_PROPERTY(QString window READ window WRITE setWindow NOTIFY changed)
    /// What can be chosen: maps with `word` and `says`, all windows first.
    Q_PROPERTY(QVariantList windows READ windows NOTIFY changed)
    /// `a4` or `letter`; the locale's at first.
    Q_PROPERTY(QString paper READ paper WRITE setPaper NOTIFY changed)
    /// `mm` or `in`; the visit's own at first.
    Q_PROPERTY(QString unit READ unit WRITE setUnit NOTIFY changed)
    /// It is being written: how far, from 0 to 1, and in words.
    Q_PROPERTY(bool working READ working NOTIFY changed)
    Q_PROPERTY(double share READ share NOTIFY changed)
    Q_PROPERTY(QString doing READ doing NOTIFY changed)
    /// What came of the last: where it stands, or why not; empty before.
    Q_PROPERTY(QString line READ line NOTIFY changed)
    /// There is a file to hand on.
    Q_PROPERTY(bool written READ written NOTIFY changed)

public:
    SheetsModel(OpenVisit& open, Devices& devices, QObject* parent = nullptr);

    [[nodiscard]] QString kind() const { return kind_; }
    void setKind(const QString& kind);
    [[nodiscard]] QString window() const { return window_; }
    void setWindow(const QString& window);
    [[nodiscard]] QVariantList windows() const;
    [[nodiscard]] QString paper() const;
    void setPaper(const QString& paper);
    [[nodiscard]] QString unit() const;
    void setUnit(const QString& unit);
    [[nodiscard]] bool working() const { return working_; }
    [[nodiscard]] double share() const { return percent_ / 100.0; }
    [[nodiscard]] QString doing() const;
    [[nodiscard]] QString line() const { return line_; }
    [[nodiscard]] bool written() const { return !written_.isEmpty(); }

    /// Writes the chosen sheets into the documents folder, as they stand now.
    Q_INVOKABLE void print();
    /// Leaves off writing; nothing is written then.
    Q_INVOKABLE void stop();
    /// Hands the last file to the system's own sharing; false where there is none.
    Q_INVOKABLE bool handOn();

signals:
    void changed();

private:
    void forget();
    [[nodiscard]] QUrl place() const;
    /// `pdf`: none where it was stopped.
    void end(const Result<std::optional<QByteArray>>& pdf, const QUrl& file);

    OpenVisit& open_;
    Devices& devices_;
    QString kind_ = QStringLiteral("all");
    QString window_;
    Paper paper_ = locale_paper();
    std::optional<LengthUnit> unit_;
    QString line_;
    QUrl written_;
    bool working_ = false;
    int percent_ = 0;
    WorkAside aside_;
};

}  // namespace truehang
