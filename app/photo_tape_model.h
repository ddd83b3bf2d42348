// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "shown_rows.h"
#include "survey/survey.h"

#include <QObject>
#include <QPointF>
#include <QSize>
#include <QUrl>

namespace truehang {

class OpenVisit;

/// One photo of the open window as a rough tape: the corners of a sheet of known size and of the opening are tapped one
/// after another, each once or several times. Every tap is one edit, undone as one. What the photo then says of the
/// opening stands beside what the tape read; it changes no size.
class PhotoTapeModel : public QObject {
    Q_OBJECT
    /// The photo that is tapped on; empty: none.
    Q_PROPERTY(QString photo READ photo NOTIFY changed)
    /// The corner that is asked for: its key in `corners`, and in words ("The sheet, top left").
    Q_PROPERTY(QString corner READ corner NOTIFY changed)
    Q_PROPERTY(QString asks READ asks NOTIFY changed)
    /// Every corner has been tapped; further taps make them surer.
    Q_PROPERTY(bool complete READ complete NOTIFY changed)
    /// A point is aimed at and not set yet: a fraction of the picture.
    Q_PROPERTY(bool aimed READ aimed NOTIFY changed)
    Q_PROPERTY(QPointF aim READ aim NOTIFY changed)
    /// The photo is used as a tape: something of it is kept.
    Q_PROPERTY(bool used READ used NOTIFY changed)
    /// Every corner: sheets and opening, clockwise from the top left. Roles: `key`, `says`, `spoken` (with how often it
    /// was tapped).
    Q_PROPERTY(truehang::ShownRows* corners READ corners CONSTANT)
    /// The size of the sheet whose corners are asked for (of the opening's: the first): `a4`, `letter` or `own`; how it
    /// lies: `upright` or `across`; as numbers, with the fault of what was typed.
    Q_PROPERTY(QString sheetSize READ sheetSize NOTIFY changed)
    Q_PROPERTY(QString sheetLies READ sheetLies NOTIFY changed)
    Q_PROPERTY(QString sheetWidth READ sheetWidth NOTIFY changed)
    Q_PROPERTY(QString sheetHeight READ sheetHeight NOTIFY changed)
    Q_PROPERTY(QString sheetFault READ sheetFault NOTIFY changed)
    Q_PROPERTY(QString unit READ unit NOTIFY changed)
    /// What this photo says of the opening: `station` (key), `says`, `figure`, `unit` ("± 12 mm", twice the standard
    /// uncertainty), `taped` ("tape: 1240", empty where it wasn't read).
    Q_PROPERTY(truehang::ShownRows* sizes READ sizes CONSTANT)
    /// Why it says nothing; empty where it does, or not every corner is tapped yet.
    Q_PROPERTY(QString trouble READ trouble NOTIFY changed)
    /// What the photos of this window have against its readings; empty where nothing.
    Q_PROPERTY(QString disagrees READ disagrees NOTIFY changed)

public:
    explicit PhotoTapeModel(OpenVisit& open, QObject* parent = nullptr);

    [[nodiscard]] QString photo() const { return photo_; }
    [[nodiscard]] QString corner() const;
    [[nodiscard]] QString asks() const;
    [[nodiscard]] bool complete() const;
    [[nodiscard]] bool aimed() const { return aimed_; }
    [[nodiscard]] QPointF aim() const { return aim_; }
    [[nodiscard]] bool used() const;
    [[nodiscard]] ShownRows* corners() { return &corners_; }
    [[nodiscard]] QString sheetSize() const;
    [[nodiscard]] QString sheetLies() const;
    [[nodiscard]] QString sheetWidth() const { return sheetSide(true); }
    [[nodiscard]] QString sheetHeight() const { return sheetSide(false); }
    [[nodiscard]] QString sheetFault() const { return sheet_fault_; }
    [[nodiscard]] QString unit() const;
    [[nodiscard]] ShownRows* sizes() { return &sizes_; }
    [[nodiscard]] QString trouble() const { return trouble_; }
    [[nodiscard]] QString disagrees() const { return disagrees_; }

    /// Whether a photo of the open window can be one: its opening has four corners.
    Q_INVOKABLE [[nodiscard]] bool fits() const;
    /// `picture` is its file, for how many pixels it has.
    Q_INVOKABLE void openPhoto(const QString& sha256, const QUrl& picture);
    Q_INVOKABLE void close();
    /// Aims at a point, a fraction of the picture, held within it; then by so many of its pixels to the right and down.
    Q_INVOKABLE void aimAt(QPointF at);
    Q_INVOKABLE void nudge(int right, int down);
    /// Gives up what was aimed at.
    Q_INVOKABLE void lower();
    /// What is aimed at is the corner that is asked for. The next one without a tap is asked for then.
    Q_INVOKABLE void set();
    Q_INVOKABLE void choose(const QString& corner);
    /// Forgets the taps of the corner that is asked for; undo brings them back.
    Q_INVOKABLE void forgetTaps();
    Q_INVOKABLE void chooseSize(const QString& word);
    Q_INVOKABLE void chooseLies(const QString& word);
    /// Each keystroke of a side of the sheet, kept as a draft; then the side as it was written.
    Q_INVOKABLE void typingSide(bool width, const QString& text);
    Q_INVOKABLE void writeSide(bool width, const QString& text);
    /// One more sheet on the same photo: on another side of the opening it makes the sizes much surer.
    Q_INVOKABLE void addSheet();
    /// The photo is no tape any more; undo brings it back.
    Q_INVOKABLE void takeOff();

    /// What was tapped, with a first sheet where nothing was; the number of the corner that is asked for: of the first
    /// sheet 0 to 3, of the opening 4 to 7, of further sheets from 8.
    [[nodiscard]] PhotoPlane kept() const;
    [[nodiscard]] std::size_t asked() const { return asked_; }

signals:
    void changed();

private:
    void show();
    void showSizes(const PhotoPlane& plane);
    void followUndo(const PhotoPlane& plane);
    void edit(const QString& says, const std::function<bool(PhotoPlane&)>& change);
    [[nodiscard]] const PhotoPlane* stored() const;
    [[nodiscard]] std::size_t sheetInHand() const;
    [[nodiscard]] QString sheetSide(bool width) const;
    [[nodiscard]] QString place(bool width) const;
    void setSheet(const QString& says, Length width, Length height);

    OpenVisit& open_;
    ShownRows corners_;
    ShownRows sizes_;
    QString photo_;
    QSize pixels_;
    std::size_t asked_ = 0;
    bool aimed_ = false;
    QPointF aim_;
    bool own_ = false;  ///< a size of one's own was asked for, whatever it is so far
    QString sheet_fault_, trouble_, disagrees_;
    std::vector<std::size_t> tapped_;  ///< how often each corner was, when last shown
};

}  // namespace truehang
