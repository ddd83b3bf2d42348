// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "survey/stations.h"
#include "survey/words.h"
#include "units/length_text.h"

#include <QString>
#include <QVariantList>

// The trade's words for the word lists of the survey, for screens: one place for a translation.

namespace truehang {

[[nodiscard]] QString says(TapeClass tape_class);
[[nodiscard]] QString says(FabricRole role);
[[nodiscard]] QString says(Match match);
[[nodiscard]] QString says(Shape shape);
/// What such a window is, for those who choose one.
[[nodiscard]] QString tells(Shape shape);
/// Between what a width of such a window is taken, where the word alone could mean the glass; else empty. Common
/// practice, no source.
[[nodiscard]] QString runs_between(Shape shape, const Station& station);
[[nodiscard]] QString says(ObstructionKind kind);
[[nodiscard]] QString says(HardwareKind kind);
[[nodiscard]] QString says(Supply supply);
[[nodiscard]] QString says(Hang hang);
[[nodiscard]] QString says(Run run);
[[nodiscard]] QString says(Stage stage);
[[nodiscard]] QString says(TopEdge top);
[[nodiscard]] QString says(DropsAt drops);
[[nodiscard]] QString says(Heading heading);
[[nodiscard]] QString says(Fit fit);
[[nodiscard]] QString says(Layout layout);
[[nodiscard]] QString says(HemAt length);
[[nodiscard]] QString says(LiningHung hung);
[[nodiscard]] QString says(Operation operation);
[[nodiscard]] QString says(TieBackKind kind);
[[nodiscard]] QString says(WeightKind kind);
[[nodiscard]] QString says(SkylineKind kind);
[[nodiscard]] QString says(Surfaces surfaces);
[[nodiscard]] QString says(Looks looks);
[[nodiscard]] QString says(LengthUnit unit);

/// One choice of a form: its word and what it says.
[[nodiscard]] inline QVariant choice(const QString& word, const QString& says) {
    return QVariantMap{{QStringLiteral("word"), word}, {QStringLiteral("says"), says}};
}

/// Every word of a list, with what it says.
template <class E>
[[nodiscard]] QVariantList choices_of() {
    QVariantList choices;
    for (const auto& [word, value] : Words<E>::list) {
        choices.append(choice(QString::fromUtf8(word.data(), static_cast<qsizetype>(word.size())), says(value)));
    }
    return choices;
}

/// What a word says; a word that this version doesn't know speaks for itself.
template <class E>
[[nodiscard]] QString says(const Word<E>& word) {
    return word.known() ? says(*word.known()) : QString::fromStdString(word.text());
}

}  // namespace truehang
