// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "field_form.h"
#include "obstruction_placing.h"
#include "shown_rows.h"
#include "wall_photo.h"

#include <QObject>

namespace truehang {

class OpenVisit;

/// What stands in the way at the open window, and the one being edited.
class ObstructionsModel : public QObject {
    Q_OBJECT
    Q_PROPERTY(QString windowTitle READ windowTitle NOTIFY changed)
    /// Roles: `obstructionId` (key), `kind` (words: "Radiator"), `kindWord`, `line` ("120 from the left edge, 1000
    /// wide"), `note`, `caution` (a flag's text, empty where none), `spoken`.
    Q_PROPERTY(truehang::ShownRows* obstructions READ obstructions CONSTANT)
    /// What may be added. Roles: `word` (key), `says`.
    Q_PROPERTY(truehang::ShownRows* kinds READ kinds CONSTANT)
    /// The one being edited, empty where none is.
    Q_PROPERTY(QString current READ current NOTIFY changed)
    /// Fields `kind` (choice), `left` (from the opening's left edge, may be negative), `width`, `bottom` (above the
    /// floor), `height`, `depth` (out from the wall), `note`.
    Q_PROPERTY(truehang::FieldForm* form READ form CONSTANT)
    /// Moves the one being edited on the drawing; the form follows.
    Q_PROPERTY(truehang::ObstructionPlacing* placing READ placing CONSTANT)
    /// A photo of the wall to lie under the drawing.
    Q_PROPERTY(truehang::WallPhoto* wall READ wall CONSTANT)
    /// Where the one being edited stands, for who can't see the drawing: "Radiator, 120 from the left edge, ...".
    Q_PROPERTY(QString standsAt READ standsAt NOTIFY placeChanged)
    /// The same in short, as it moves: "100 from the left edge, 715 above the floor"; empty where it has no place yet.
    Q_PROPERTY(QString placeLine READ placeLine NOTIFY placeChanged)
    /// What the one being edited meets, in the flags' words; empty where nothing. Its severity (`stop` to `note`, a
    /// caution before all) and that severity's word ("Decide").
    Q_PROPERTY(QString meets READ meets NOTIFY placeChanged)
    Q_PROPERTY(QString meetsSeverity READ meetsSeverity NOTIFY placeChanged)
    Q_PROPERTY(QString meetsWord READ meetsWord NOTIFY placeChanged)

public:
    explicit ObstructionsModel(OpenVisit& open, QObject* parent = nullptr);

    [[nodiscard]] QString windowTitle() const;
    [[nodiscard]] ShownRows* obstructions() { return &obstructions_; }
    [[nodiscard]] ShownRows* kinds() { return &kinds_; }
    [[nodiscard]] QString current() const { return current_; }
    [[nodiscard]] FieldForm* form() { return &form_; }
    [[nodiscard]] ObstructionPlacing* placing() { return &placing_; }
    [[nodiscard]] WallPhoto* wall() { return &wall_; }
    [[nodiscard]] QString standsAt() const;
    [[nodiscard]] QString placeLine() const;
    [[nodiscard]] QString meets() const;
    [[nodiscard]] QString meetsSeverity() const;
    [[nodiscard]] QString meetsWord() const;

    /// Its kind in words: "Radiator".
    [[nodiscard]] static QString kindSays(const Obstruction& one);

    /// Adds one of this kind, edits it and returns its id.
    Q_INVOKABLE QString add(const QString& kind);
    Q_INVOKABLE void edit(const QString& obstructionId);
    /// Undo brings it back.
    Q_INVOKABLE void remove(const QString& obstructionId);
    Q_INVOKABLE void done();

signals:
    void changed();
    void placeChanged();

private:
    void show();
    void showForm();
    void follow();
    [[nodiscard]] const Obstruction* edited() const;
    [[nodiscard]] QString lineOf(const Obstruction& one, bool with_units = false) const;
    [[nodiscard]] QString cautionOf(const Obstruction& one) const;
    [[nodiscard]] std::vector<Flag> met() const;
    [[nodiscard]] QString placeOf(const QString& field) const;
    [[nodiscard]] QString leaveField(const QString& field, const QString& text);
    [[nodiscard]] QString chooseField(const QString& field, const QString& word);

    OpenVisit& open_;
    ShownRows obstructions_;
    ShownRows kinds_;
    FieldForm form_;
    ObstructionPlacing placing_;
    WallPhoto wall_;
    QString current_;
};

}  // namespace truehang
