// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "field_form.h"
#include "figures/choices.h"
#include "shown_rows.h"

#include <QObject>
#include <optional>
#include <vector>

namespace truehang {

class HangingModel;
class OpenVisit;

/// Other ways to hang the layer that the hanging page edits, beside what hangs there now, each with what it takes. They
/// are worked only while the page is shown. What the surveyor asked of them is kept as half-typed text is.
class ChoicesModel : public QObject {
    Q_OBJECT
    /// First what hangs now, then the other answers where it lies on an edge, then the surveyor's own choices. Roles:
    /// `choice` (key), `title` ("As it hangs now", "On the edge", "Choice 1"), `says` ("2 × fullness, unlined"),
    /// `number` (of the surveyor's own, from 0; else -1), `canTake`, `flags` (what is new with it: maps with
    /// `severity`, `word`, `text`), `spoken`.
    Q_PROPERTY(truehang::ShownRows* choices READ choices CONSTANT)
    /// What they take. Roles: `line` (key), `label`, `cells` (a text for each of `choices`, with its unit).
    Q_PROPERTY(truehang::ShownRows* lines READ lines CONSTANT)
    /// That the sums are no quotation; empty where no sum is shown.
    Q_PROPERTY(QString note READ note NOTIFY changed)
    /// False where three choices stand there, or nothing hangs at the window.
    Q_PROPERTY(bool canAdd READ canAdd NOTIFY changed)
    /// The surveyor's own choice that is being changed, from 0; -1: none.
    Q_PROPERTY(int edited READ edited NOTIFY changed)
    /// Fields `heading`, `length`, `fabric`, `lining` (choices), `fullness`, `hardware` of the choice being changed;
    /// what is left empty stays as it hangs now.
    Q_PROPERTY(truehang::FieldForm* form READ form CONSTANT)

public:
    ChoicesModel(OpenVisit& open, HangingModel& hanging, QObject* parent = nullptr);

    [[nodiscard]] ShownRows* choices() { return &choices_; }
    [[nodiscard]] ShownRows* lines() { return &lines_; }
    [[nodiscard]] QString note() const { return note_; }
    [[nodiscard]] bool canAdd() const;
    [[nodiscard]] int edited() const { return edited_; }
    [[nodiscard]] FieldForm* form() { return &form_; }

    /// Whether anyone looks; where a layer is looked at for the first time, its usual choices are set out.
    void setShown(bool shown);

    /// The open window with the layer hung as in this row of `choices`, to be drawn; nothing where there is no such
    /// row.
    struct AsDrawn {
        Window window;
        WindowFigures figures;
    };
    [[nodiscard]] std::optional<AsDrawn> asDrawn(int row) const;

    /// Sets out one more choice and edits it.
    Q_INVOKABLE void add();
    Q_INVOKABLE void edit(int number);
    Q_INVOKABLE void done();
    Q_INVOKABLE void leaveOut(int number);
    /// Hangs it so: one edit, which undo turns back. The choice then stands there as what hangs now.
    Q_INVOKABLE void take(int number);
    /// Decides an edge for the answer in this row of `choices`: the first as it hangs now, or the other one.
    Q_INVOKABLE void settle(int row);

signals:
    void changed();

private:
    void show();
    void showForm();
    void showLines(const std::vector<Choice>& choices);
    void setOutUsual();
    [[nodiscard]] const Layer* layer() const;
    [[nodiscard]] std::string layerId() const;
    [[nodiscard]] QString placeOf(const QString& what) const;
    [[nodiscard]] QString placeOf(int number, const QString& field) const;
    [[nodiscard]] int count() const;
    void setCount(int count);
    [[nodiscard]] QString asked(int number, const QString& field) const;
    void ask(int number, const QString& field, const QString& text);
    [[nodiscard]] Variation variation(int number) const;
    [[nodiscard]] QString says(const Variation& variation) const;
    [[nodiscard]] QString leave(const QString& field, const QString& text);
    bool hang(const QString& step, const Variation& wanted);

    OpenVisit& open_;
    HangingModel& hanging_;
    ShownRows choices_;
    ShownRows lines_;
    FieldForm form_;
    std::vector<Choice> compared_;    // one for each row of `choices`
    std::vector<Variation> answers_;  // what takes each of the choices before the surveyor's own
    QString note_;
    int edited_ = -1;
    bool shown_ = false;
};

}  // namespace truehang
