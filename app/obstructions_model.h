// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "field_form.h"
#include "shown_rows.h"

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

public:
    explicit ObstructionsModel(OpenVisit& open, QObject* parent = nullptr);

    [[nodiscard]] QString windowTitle() const;
    [[nodiscard]] ShownRows* obstructions() { return &obstructions_; }
    [[nodiscard]] ShownRows* kinds() { return &kinds_; }
    [[nodiscard]] QString current() const { return current_; }
    [[nodiscard]] FieldForm* form() { return &form_; }

    /// Adds one of this kind, edits it and returns its id.
    Q_INVOKABLE QString add(const QString& kind);
    Q_INVOKABLE void edit(const QString& obstructionId);
    /// Undo brings it back.
    Q_INVOKABLE void remove(const QString& obstructionId);
    Q_INVOKABLE void done();

signals:
    void changed();

private:
    void show();
    void showForm();
    [[nodiscard]] QString placeOf(const QString& field) const;
    [[nodiscard]] QString leaveField(const QString& field, const QString& text);
    [[nodiscard]] QString chooseField(const QString& field, const QString& word);

    OpenVisit& open_;
    ShownRows obstructions_;
    ShownRows kinds_;
    FieldForm form_;
    QString current_;
};

}  // namespace truehang
