// SPDX-License-Identifier: Apache-2.0
#include "form_fields.h"

#include "whereabouts.h"
#include "writing.h"

namespace truehang {

void FieldMaker::takeDraft(FormField& field) const {
    const QString where = place(field.field);
    if (open.place().has(where)) {
        field.text = open.place().text(where);
    }
}

FormField FieldMaker::text(const QString& field, const QString& label, const QString& stored,
                           const QString& hint) const {
    FormField made{field, label, QStringLiteral("text"), stored, {}, {}, {}, hint};
    takeDraft(made);
    return made;
}

FormField FieldMaker::length(const QString& field, const QString& label, const std::optional<Length>& stored,
                             const QString& hint) const {
    FormField made{field,
                   label,
                   QStringLiteral("length"),
                   truehang::shown(open.survey(), stored),
                   shown(word_of(entry_unit(open.survey()))),
                   {},
                   {},
                   hint};
    takeDraft(made);
    return made;
}

FormField FieldMaker::number(const QString& field, const QString& label, const std::optional<double>& stored,
                             const QString& unit, const QString& hint) const {
    FormField made{field, label, QStringLiteral("number"), truehang::shown(stored), unit, {}, {}, hint};
    takeDraft(made);
    return made;
}

void keep_field(OpenVisit& open, const QString& place, const QString& text, const QString& says,
                const std::function<bool(Survey&)>& change) {
    const bool changed = open.edit(says, change, [&open, place, text](const QString& fault) {
        if (!fault.isEmpty()) {
            open.place().setText(place, text, true);
        } else if (open.place().text(place) == text) {
            open.place().forget(place);
        }
    });
    if (!changed) {
        open.place().forget(place);
    }
}

}  // namespace truehang
