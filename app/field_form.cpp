// SPDX-License-Identifier: Apache-2.0
#include "field_form.h"

namespace truehang {

FieldForm::FieldForm(Hands hands, QObject* parent)
    : ShownRows({"field", "label", "kind", "text", "unit", "fault", "word", "choices", "hint", "spoken", "cautions"},
                parent),
      hands_(std::move(hands)) {}

void FieldForm::typing(const QString& field, const QString& text) {
    const int row = indexOf(field);
    if (row < 0) {
        return;
    }
    setValue(row, "text", text, true);
    if (hands_.typing) {
        hands_.typing(field, text);
    }
}

void FieldForm::leave(const QString& field, const QString& text) {
    if (indexOf(field) < 0 || !hands_.leave) {
        return;
    }
    setFault(field, text, hands_.leave(field, text));
}

void FieldForm::choose(const QString& field, const QString& word) {
    if (indexOf(field) < 0 || !hands_.choose) {
        return;
    }
    setFault(field, word, hands_.choose(field, word));
}

void FieldForm::setFault(const QString& field, const QString& typed, const QString& fault) {
    const int row = indexOf(field);  // looked for again: the hands may have shown other fields
    if (fault.isEmpty()) {
        faults_.remove(field);
    } else {
        faults_.insert(field, {typed, fault});
        setValue(row, "text", typed, true);
    }
    setValue(row, "fault", fault);
}

void FieldForm::setFields(const QList<FormField>& fields) {
    QList<Row> rows;
    for (const FormField& field : fields) {
        const auto faulty = faults_.constFind(field.field);
        const bool refused = faulty != faults_.constEnd() && field.kind != QStringLiteral("choice");
        const QString text = refused ? faulty->first : field.text;
        const QString fault = faulty != faults_.constEnd() ? faulty->second : QString();
        const QString told = text.isEmpty() ? field.hint : text;
        QString spoken = field.label;
        if (!told.isEmpty()) {
            spoken += QStringLiteral(": ") + told;
            if (!field.unit.isEmpty() && !text.isEmpty()) {
                spoken += QLatin1Char(' ') + field.unit;
            }
        }
        rows.append({field.field, field.label, field.kind, text, field.unit, fault, field.word, field.choices,
                     field.hint, spoken, field.cautions});
    }
    setRows(rows);
}

void FieldForm::forgetFaults() { faults_.clear(); }

}  // namespace truehang
