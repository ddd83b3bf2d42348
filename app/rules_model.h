// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "field_form.h"
#include "shown_rows.h"
#include "survey/survey.h"

#include <QObject>

namespace truehang {

class OpenVisit;
class WorkroomRules;

/// The number of a rule with this key is a length in mm.
[[nodiscard]] bool is_length_rule(std::string_view rule);
/// What people call the rule with this key (`hem_mm`, `head_mm.tab`); empty where none is known.
[[nodiscard]] QString rule_says(std::string_view rule);

/// The house rules that the open visit is worked by: seen, changed one by one, taken again from the workroom. A visit
/// keeps its rules until the surveyor takes others. How sharply the edges of the house are read is the visit’s own and
/// stays.
class RulesModel : public QObject {
    Q_OBJECT
    /// "Harbour workroom, version 3, 14 March 2026".
    Q_PROPERTY(QString workedBy READ workedBy NOTIFY changed)
    /// What the workroom has, and whether the visit is worked by that; empty where it never gave any.
    Q_PROPERTY(QString workroomSays READ workroomSays NOTIFY changed)
    /// There are rules of the workroom, and the visit is worked by others.
    Q_PROPERTY(bool canTake READ canTake NOTIFY changed)
    /// Roles: `rule` (key), `group`, `says`, `figure` ("150 mm"), `line` (what else it could be: the default's value or
    /// the workroom's, where it differs; else empty), `spoken`.
    Q_PROPERTY(truehang::ShownRows* rules READ rules CONSTANT)
    /// The key of the rule being changed; empty: none.
    Q_PROPERTY(QString edited READ edited NOTIFY changed)
    Q_PROPERTY(QString editedSays READ editedSays NOTIFY changed)
    /// "From 0 to 100000 mm." and what holds otherwise.
    Q_PROPERTY(QString editedRange READ editedRange NOTIFY changed)
    Q_PROPERTY(QString editedOtherwise READ editedOtherwise NOTIFY changed)
    /// One field, `value`; left empty the default holds.
    Q_PROPERTY(truehang::FieldForm* form READ form CONSTANT)

public:
    RulesModel(OpenVisit& open, WorkroomRules& workroom, QObject* parent = nullptr);

    [[nodiscard]] QString workedBy() const;
    [[nodiscard]] QString workroomSays() const;
    [[nodiscard]] bool canTake() const;
    [[nodiscard]] ShownRows* rules() { return &rules_; }
    [[nodiscard]] QString edited() const { return edited_; }
    [[nodiscard]] QString editedSays() const;
    [[nodiscard]] QString editedRange() const;
    [[nodiscard]] QString editedOtherwise() const;
    [[nodiscard]] FieldForm* form() { return &form_; }

    Q_INVOKABLE void edit(const QString& rule);
    Q_INVOKABLE void done();
    /// Works the visit by the workroom’s rules; one edit, which undo turns back.
    Q_INVOKABLE void takeWorkrooms();
    /// The workroom’s value for the rule being changed, or the default where it has none.
    Q_INVOKABLE void takeOtherwise();

signals:
    void changed();

private:
    void show();
    void showForm();
    [[nodiscard]] QString placeOf(const QString& rule) const;
    [[nodiscard]] QString leave(const QString& text);
    [[nodiscard]] std::optional<double> otherwise(const std::string& rule) const;
    void set(const QString& rule, std::optional<double> value, const QString& typed);

    OpenVisit& open_;
    WorkroomRules& workroom_;
    ShownRows rules_;
    FieldForm form_;
    QString edited_;
};

}  // namespace truehang
