// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "field_form.h"
#include "shown_rows.h"
#include "survey/survey.h"

#include <QObject>
#include <functional>

namespace truehang {

class OpenVisit;

/// What stands before the sky outside the open window, sketched in steps of 5° or typed.
class SkylineModel : public QObject {
    Q_OBJECT
    /// Roles: `partId` (key), `kind` (words: "House"), `line` ("from 20° left to 15° right, 12° high"), `spoken`.
    Q_PROPERTY(truehang::ShownRows* parts READ parts CONSTANT)
    /// The one being edited, empty where none is; its kind, and where it stands, in words.
    Q_PROPERTY(QString current READ current NOTIFY changed)
    Q_PROPERTY(QString currentSays READ currentSays NOTIFY changed)
    Q_PROPERTY(QString currentLine READ currentLine NOTIFY changed)
    /// Fields `from`, `to`, `height` (degrees), `kind` (choice).
    Q_PROPERTY(truehang::FieldForm* form READ form CONSTANT)

public:
    /// `open` must outlive it.
    explicit SkylineModel(OpenVisit& open, QObject* parent = nullptr);

    [[nodiscard]] ShownRows* parts() { return &parts_; }
    [[nodiscard]] QString current() const { return current_; }
    [[nodiscard]] QString currentSays() const;
    [[nodiscard]] QString currentLine() const;
    [[nodiscard]] FieldForm* form() { return &form_; }

    /// Adds one straight ahead, 40° wide and 10° high, and edits it; its id.
    Q_INVOKABLE QString add(const QString& kind);
    /// `left`, `right`, `wider`, `narrower`, `higher`, `lower`: the one being edited, by 5°.
    Q_INVOKABLE void step(const QString& how);
    Q_INVOKABLE void edit(const QString& partId);
    /// Undo brings it back.
    Q_INVOKABLE void remove(const QString& partId);
    Q_INVOKABLE void done();

signals:
    void changed();

private:
    void show();
    void showForm();
    [[nodiscard]] const SkylinePart* edited() const;
    [[nodiscard]] QString placeOf(const QString& field) const;
    void change(const QString& says, const std::function<bool(SkylinePart&)>& change);
    [[nodiscard]] QString leaveField(const QString& field, const QString& text);
    [[nodiscard]] QString chooseField(const QString& field, const QString& word);

    OpenVisit& open_;
    ShownRows parts_;
    FieldForm form_;
    QString current_;
};

}  // namespace truehang
