// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "field_form.h"
#include "shown_rows.h"

#include <QObject>

namespace truehang {

class OpenVisit;

/// The cloths of the open visit, and the one being edited.
class FabricsModel : public QObject {
    Q_OBJECT
    /// Roles: `fabricId` (key), `name`, `role` (words), `line` ("1400 wide, repeat 320 straight"), `used` (windows it
    /// hangs at, as words), `spoken`.
    Q_PROPERTY(truehang::ShownRows* fabrics READ fabrics CONSTANT)
    /// The fabric being edited, empty where none is.
    Q_PROPERTY(QString current READ current NOTIFY currentChanged)
    /// Fields `name`, `role`, `width`, `selvedge`, `repeat`, `match`, `oneWay`, `dye` (a choice), `colour`, `mass`,
    /// `shrinkage`.
    Q_PROPERTY(truehang::FieldForm* form READ form CONSTANT)
    /// Why the last thing asked couldn't be done ("it hangs at the south window").
    Q_PROPERTY(QString fault READ fault NOTIFY faultChanged)

public:
    explicit FabricsModel(OpenVisit& open, QObject* parent = nullptr);

    [[nodiscard]] ShownRows* fabrics() { return &fabrics_; }
    [[nodiscard]] QString current() const { return current_; }
    [[nodiscard]] FieldForm* form() { return &form_; }
    [[nodiscard]] QString fault() const { return fault_; }

    Q_INVOKABLE void edit(const QString& fabricId);
    /// Adds a cloth 1400 wide (to be corrected) with this role word (`face`, `lining`, `interlining`, `sheer`), edits
    /// it and returns its id.
    Q_INVOKABLE QString add(const QString& role);
    /// Refused while a window uses it.
    Q_INVOKABLE void remove(const QString& fabricId);
    Q_INVOKABLE void done();

signals:
    void currentChanged();
    void faultChanged();

private:
    void show();
    void showForm();
    void setFault(const QString& fault);
    [[nodiscard]] QString leaveField(const QString& field, const QString& text);
    [[nodiscard]] QString chooseField(const QString& field, const QString& word);
    [[nodiscard]] QString placeOf(const QString& field) const;

    OpenVisit& open_;
    ShownRows fabrics_;
    FieldForm form_;
    QString current_;
    QString fault_;
};

}  // namespace truehang
