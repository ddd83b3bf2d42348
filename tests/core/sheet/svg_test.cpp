// SPDX-License-Identifier: Apache-2.0
#include "windows.h"

#include "sheet/svg.h"

#include <string>

namespace truehang::test {
namespace {

bool says(const std::string& text, const std::string& part) { return text.find(part) != std::string::npos; }

TEST(Svg, EscapesWhatPeopleTyped) {
    Survey survey = one_window(Shape::recess, {{"opening.width.top", 1200}, {"opening.height.left", 1100}});
    survey.rooms[0].name = "<script>alert('x')</script> & \"Co\"";
    ElevationOptions options;
    options.active_station = "opening.height.left";
    options.typed = "4' 3\" <b>";
    const std::string svg = svg_of(drawn(survey, options), {.palette = {}, .id = "w\"1"});
    EXPECT_FALSE(says(svg, "<script"));
    EXPECT_FALSE(says(svg, "<b>"));
    EXPECT_TRUE(says(svg, "&lt;script&gt;alert(&#39;x&#39;)&lt;/script&gt; &amp; &quot;Co&quot;"));
    EXPECT_TRUE(says(svg, "id=\"w&quot;1-title\""));
}

TEST(Svg, LeavesOutControlCharacters) {
    // XML 1.0 (W3C), section 2.2: of the control characters only tab, line feed and carriage return are allowed.
    EXPECT_EQ(escaped(std::string("a\x01"
                                  "b\tc\x1f"
                                  "d",
                                  7)),
              "ab\tcd");
}

TEST(Svg, IsAnImageWithATitleAndADescription) {
    const std::string svg = svg_of(drawn(contract_example()));
    EXPECT_TRUE(svg.starts_with("<svg xmlns=\"http://www.w3.org/2000/svg\""));
    EXPECT_TRUE(says(svg, "role=\"img\""));
    EXPECT_TRUE(says(svg, "aria-labelledby=\"drawing-title drawing-desc\""));
    EXPECT_TRUE(says(svg, "<title id=\"drawing-title\">Parlour, south window</title>"));
    EXPECT_TRUE(says(svg, "<desc id=\"drawing-desc\">The opening, drawn to scale, 1238 to 1242 mm wide"));
    EXPECT_FALSE(says(svg, "nan"));
    EXPECT_FALSE(says(svg, "inf"));
    EXPECT_TRUE(svg.ends_with("</svg>\n"));
}

TEST(Svg, TakesItsColoursFromThePalette) {
    ElevationOptions options;
    options.active_station = "opening.height.left";
    const Elevation elevation = drawn(contract_example(), options);
    const std::string light = svg_of(elevation);
    const std::string dark = svg_of(elevation, {.palette = dark_palette()});
    EXPECT_TRUE(says(light, "#9b2038"));
    EXPECT_FALSE(says(light, "#ef8a99"));
    EXPECT_TRUE(says(dark, "#ef8a99"));
    EXPECT_FALSE(says(dark, "#17242d"));
}

}  // namespace
}  // namespace truehang::test
