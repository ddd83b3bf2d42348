// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "shown_rows.h"

#include <functional>

namespace truehang {

/// One field of a form as its owner describes it.
struct FormField {
    QString field;           ///< its name, unique in the form
    QString label;           ///< what a person reads
    QString kind;            ///< `text`, `long-text`, `length`, `number`, `choice`
    QString text;            ///< as typed or as stored; of a choice: what the chosen word says
    QString unit;            ///< beside the field; empty where none
    QString word;            ///< of a choice: the chosen word; empty where none is chosen
    QVariantList choices;    ///< of a choice: maps with `word` and `says`
    QString hint;            ///< what holds while it is empty ("centred", "the heading's own")
    QStringList cautions{};  ///< what could hurt someone as it is chosen now
};

/// Fields to fill in, one row each. Roles: `field` (key), `label`, `kind`, `text`, `unit`, `fault` (one line under the
/// field, empty where none), `word`, `choices`, `hint`, `spoken` (for the accessible name), `cautions` (sentences that
/// stand under the field). A view calls `typing` at each keystroke (kept as a draft; the role `text` follows without a
/// change signal) and `leave` once the field is left (an edit; may be called again with the same text). Text that can't
/// be read stays in the field, with the reason in `fault`; nothing stored changes.
class FieldForm : public ShownRows {
    Q_OBJECT

public:
    /// What the owner does with a field. `leave` and `choose` return the fault, or nothing when the edit was taken.
    struct Hands {
        std::function<void(const QString& field, const QString& text)> typing;
        std::function<QString(const QString& field, const QString& text)> leave;
        std::function<QString(const QString& field, const QString& word)> choose;
    };

    explicit FieldForm(Hands hands, QObject* parent = nullptr);

    Q_INVOKABLE void typing(const QString& field, const QString& text);
    Q_INVOKABLE void leave(const QString& field, const QString& text);
    Q_INVOKABLE void choose(const QString& field, const QString& word);

    /// Shows these fields; a field whose text has a fault keeps its text and its fault.
    void setFields(const QList<FormField>& fields);
    void forgetFaults();

private:
    void setFault(const QString& field, const QString& typed, const QString& fault);

    Hands hands_;
    QHash<QString, QPair<QString, QString>> faults_;  // field: typed text, fault
};

}  // namespace truehang
