// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "field_form.h"
#include "open_visit.h"
#include "survey/survey.h"
#include "trade_words.h"

#include <functional>
#include <optional>

namespace truehang {

/// Makes the fields of a form over the open survey; a field with a draft shows the draft.
struct FieldMaker {
    const OpenVisit& open;
    std::function<QString(const QString& field)> place;  ///< where the field's draft is kept

    [[nodiscard]] FormField text(const QString& field, const QString& label, const QString& stored,
                                 const QString& hint = {}) const;
    [[nodiscard]] FormField length(const QString& field, const QString& label, const std::optional<Length>& stored,
                                   const QString& hint = {}) const;
    [[nodiscard]] FormField number(const QString& field, const QString& label, const std::optional<double>& stored,
                                   const QString& unit, const QString& hint = {}) const;

    /// A choice over a word list; a word that this version doesn't know stays chosen and speaks for itself.
    template <class E>
    [[nodiscard]] FormField choice(const QString& field, const QString& label, const std::optional<Word<E>>& stored,
                                   const QString& hint) const {
        FormField made{field, label, QStringLiteral("choice"), {}, {}, {}, choices_of<E>(), hint};
        if (stored) {
            made.word = QString::fromStdString(stored->text());
            made.text = says(*stored);
        }
        return made;
    }

private:
    void takeDraft(FormField& field) const;
};

/// Edits what a field holds and keeps the draft until the edit is on the disk.
void keep_field(OpenVisit& open, const QString& place, const QString& text, const QString& says,
                const std::function<bool(Survey&)>& change);

/// Sets `held`; false where it was so already.
template <class T, class U>
bool replace(T& held, const U& now) {
    if (held == T(now)) {
        return false;
    }
    held = now;
    return true;
}

/// Sets a word of a list; an empty word clears it; a word that isn't in the list is refused.
template <class E>
bool choose_word(std::optional<Word<E>>& held, const QString& word) {
    std::optional<Word<E>> chosen;
    if (!word.isEmpty()) {
        if (!Word<E>::find(word.toStdString())) {
            return false;
        }
        chosen = Word<E>(word.toStdString());
    }
    return replace(held, chosen);
}

}  // namespace truehang
