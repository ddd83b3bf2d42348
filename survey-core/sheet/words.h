// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "figures/figures.h"
#include "survey/survey.h"
#include "units/length_text.h"

#include <optional>
#include <string>
#include <string_view>

// The English of sheets and drawings, in one place, so that a translation stands beside it.

namespace truehang {

/// How a sheet writes its numbers: mm unless another unit is asked for, the locale's decimal mark.
struct SheetStyle {
    LengthUnit unit = LengthUnit::mm;
    char decimal = '.';
};

/// The shape that goes with a flag's word, so that colour is never needed.
enum class FlagShape { triangle, circle, square, broken_circle, bar };
[[nodiscard]] FlagShape shape_of(Severity severity);
[[nodiscard]] std::string_view word_of(FlagShape shape);

/// "Caution", "Note", "Decide", "Measure again", "Stop".
[[nodiscard]] std::string_view flag_word(Severity severity);

/// The style of a survey's sheets: inches where its readings were entered in inches, else mm.
[[nodiscard]] SheetStyle sheet_style_for(const Survey& survey);

/// What the sheet says once of its lengths: "All in mm unless said; ± is twice the standard uncertainty."
[[nodiscard]] std::string unit_sentence(const SheetStyle& style);

/// A length without its unit: whole mm, or inches to the nearest eighth.
[[nodiscard]] std::string written(Length length, const SheetStyle& style);

/// A length that is cut, rounded to the same steps but never down, so that no piece falls short.
[[nodiscard]] std::string written_cut(Length length, const SheetStyle& style);

/// The least length that is not below `length` and that `written_cut` writes exactly.
[[nodiscard]] Length cut_length(Length length, const SheetStyle& style);

/// Cloth as it is bought: "4.9 m"; with inches its yards too, rounded up: "4.9 m (5.36 yd)".
[[nodiscard]] std::string order_text(double metres, const SheetStyle& style);

/// A number to so many decimals with the style's decimal mark; a true minus sign.
[[nodiscard]] std::string number_text(double value, int decimals, const SheetStyle& style);

/// Twice one standard uncertainty: "± 6"; empty for 0. Whole mm, halves away from zero, at least 1 where u is above 0;
/// in inches upward to the next eighth.
[[nodiscard]] std::string plus_minus(Length u, const SheetStyle& style);

/// "2.7 kg", to a tenth.
[[nodiscard]] std::string mass_text(Mass mass, const SheetStyle& style);

/// "one" to "twelve", digits above.
[[nodiscard]] std::string count_word(int count);
/// "2 drops", "1 drop".
[[nodiscard]] std::string counted(int count, std::string_view one, std::string_view many);

/// Pieces of one kind: "2 drops", "2 rows of tabs", "a half repeat between the phases"; the kind itself where it is
/// new.
[[nodiscard]] std::string piece_text(std::string_view what, int count);

/// "14 March 2026" of an RFC 3339 time; the text itself where it can't be read.
[[nodiscard]] std::string day_text(std::string_view rfc3339);

/// "14 March 2026, 10:20 UTC" of an RFC 3339 time in UTC; the text itself where it can't be read.
[[nodiscard]] std::string moment_text(std::string_view rfc3339);

/// "Parlour, south window".
[[nodiscard]] std::string window_title(const Room& room, const Window& window);

/// "A pair, tab headed, lined, floor length, on a 28 mm pole 1720 long, level."; what isn't chosen is left out.
[[nodiscard]] std::string treatment_text(const Layer& layer, const SheetStyle& style);

/// What an obstruction is called: "radiator", "picture rail", or its own word.
[[nodiscard]] std::string obstruction_text(const Obstruction& obstruction);

/// A figure's name for a person: "Finished drop" for `finished.drop_mm`; the path itself where none is known.
[[nodiscard]] std::string figure_text(std::string_view figure);

/// What is said of a cloth whose design or nap runs one way, wherever it is cut or made up.
[[nodiscard]] std::string one_way_text(const Fabric& fabric);

/// The cloth's short name: up to its first comma, "Herring sailcloth"; its id where it has no name.
[[nodiscard]] std::string short_name(const Fabric& fabric);

}  // namespace truehang
