// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "figures/figures.h"
#include "shown_rows.h"
#include "survey/stations.h"
#include "units/length_text.h"

#include <QString>
#include <QStringList>
#include <optional>
#include <vector>

// What the walk says of readings that close a loop: that they add up, or which of them may be at fault.

namespace truehang {

/// How a reading fits: the text, and `quiet`, `adds-up`, `differs` or `proposed`.
struct LineUnderNumber {
    QString text;
    QString kind = QStringLiteral("quiet");
};
/// Of the loops that this station's reading closes, the one that doesn't add up, else the one nearest to its limit;
/// quiet where it closes none. `worked`: the window's figures with the reading in it.
[[nodiscard]] LineUnderNumber line_under_number(const WindowFigures& worked, const Window& window,
                                                const Station& station, const LengthStyle& style);
/// A value this far short of what would fit may still be growing, digit by digit: nothing is said of it yet.
[[nodiscard]] bool may_be_half_typed(const WindowFigures& worked, const Station& station, Length value);

/// "These differ by 45 mm", and what tape and edges explain of it.
struct DifferWords {
    QString title;
    QString text;
};
[[nodiscard]] DifferWords differ_words(const WindowFigures& worked, const Window& window, const Flag& flag,
                                       const LengthStyle& style);

/// What went wrong, in plain words: "two digits exchanged", "exchanged with Floor to sill, right".
[[nodiscard]] QString slip_in_words(const Suspect& suspect, const Window& window, const LengthStyle& style);

/// How likely each is, from their weights: "likely" from 0.5 and three times the next; "as likely as the next" (the
/// last of them: "just as likely") within a tenth of its neighbour's weight; else "possible"; nothing without a
/// weight.
[[nodiscard]] QStringList likelihoods(const std::vector<Suspect>& suspects);

/// The readings that may be at fault, as many as the flag suspects; where it suspects none, all that it names. Roles:
/// `suspect` (key), `station`, `says`, `figure`, `slip`, `likely`, `isLikely`, `offer`, `offerSpoken`, `spoken`.
[[nodiscard]] QList<QByteArray> suspect_roles();
[[nodiscard]] QList<ShownRows::Row> suspect_rows(const Flag& flag, const Window& window, const LengthStyle& style);
/// The suspect with this key, or null.
[[nodiscard]] const Suspect* find_suspect(const Flag& flag, const QString& key);
/// "None of these, or two slips at once: possible"; empty where nothing is suspected by weight.
[[nodiscard]] QString none_of_these(const Flag& flag);

/// A length in the style's unit, finely enough to be what it says: sixteenths where eighths would round it away.
[[nodiscard]] QString exactly(Length length, LengthStyle style);
/// An angle in degrees with its sign, as finely as it is known.
[[nodiscard]] QString exactly(Angle angle);

}  // namespace truehang
