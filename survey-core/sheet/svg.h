// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "sheet/drawing.h"

#include <string>
#include <string_view>

namespace truehang {

/// The colours of a drawing, as CSS colours. The defaults are the light look, which paper has too.
struct Palette {
    std::string paper = "#f7f7f2";
    std::string ink = "#17242d";
    std::string soft = "#4d5b64";  ///< hairlines
    std::string thread = "#9b2038";
    std::string wash = "#eceee8";
};
[[nodiscard]] Palette light_palette();
[[nodiscard]] Palette dark_palette();

struct SvgOptions {
    Palette palette;
    std::string font_family = "Lato, sans-serif";
    std::string unit = "px";     ///< of the target: "px" or "mm"
    std::string id = "drawing";  ///< unique on its page: title and description are named after it
};

/// The drawing as one SVG 1.1 element with `role="img"`, a title and a description. All text is escaped; nothing is
/// referenced from elsewhere.
[[nodiscard]] std::string svg_of(const Elevation& elevation, const SvgOptions& options = {});

/// `text` with &, <, >, " and ' as entities and control characters that XML doesn't know left out.
[[nodiscard]] std::string escaped(std::string_view text);

}  // namespace truehang
