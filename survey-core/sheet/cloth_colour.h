// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "sheet/drawing.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

// Colours of cloth, and lines that stay legible on them. Colours are sRGB, written as `#rrggbb`.

namespace truehang {

struct Colour {
    int red = 0, green = 0, blue = 0;  ///< 0 to 255
    friend bool operator==(Colour, Colour) = default;
};

/// Reads `#rrggbb` or `rrggbb`, in either case; nothing else.
[[nodiscard]] std::optional<Colour> read_colour(std::string_view text);
[[nodiscard]] std::string write_colour(Colour colour);

/// The contrast of two colours, 1 to 21 (WCAG 2.1: relative luminance and contrast ratio).
[[nodiscard]] double contrast(Colour one, Colour other);

/// `share` of the way from one colour to another, 0 to 1.
[[nodiscard]] Colour blended(Colour from, Colour to, double share);

/// The flank of a fold that lies in the shade: darker, of a dark cloth lighter.
[[nodiscard]] Colour shaded(Colour cloth);

/// What a line of this role is drawn with over a cloth: whichever of `ink` and `paper` stands out more from it,
/// hairlines half of the way back to the cloth. Of ink #17242d and paper #f7f7f2 one always has a contrast of more
/// than 3.
[[nodiscard]] std::string line_over(std::string_view cloth, Role role, std::string_view ink, std::string_view paper);

/// A colour with the name of what dyes cloth so.
struct Dye {
    std::string_view word;  ///< to be stored nowhere: what is stored is its colour
    std::string_view says;  ///< "Madder red"
    std::string_view colour;
};
[[nodiscard]] const std::vector<Dye>& dyes();

}  // namespace truehang
