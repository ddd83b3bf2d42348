// SPDX-License-Identifier: Apache-2.0
#include "sheet/template_svg.h"

#include "windows.h"

#include <algorithm>
#include <cmath>
#include <sstream>
#include <string>
#include <utility>
#include <vector>

// The top of an arch at 1 : 1, and the edges of the curtains that follow it.

namespace truehang::test {
namespace {

TEST(Template, IsOneToOneInMillimetres) {
    // A half circle over 1000: rise 500; 30 of margin at each side and above, so 1060 wide.
    Survey survey = one_window(Shape::arch, {{"opening.width.bottom", 1000},
                                             {"opening.width.top", 1000},
                                             {"opening.height.left", 900},
                                             {"opening.height.right", 900},
                                             {"below.left", 800},
                                             {"arch.rise", 500}});
    const auto svg = template_svg(survey, work_out(survey), 0);
    ASSERT_TRUE(svg.ok()) << svg.error().text;
    EXPECT_NE(svg->find("width=\"1060mm\""), std::string::npos) << svg->substr(0, 400);
    EXPECT_NE(svg->find("viewBox=\"0 0 1060 "), std::string::npos);
    EXPECT_NE(svg->find("points=\"30,530 "), std::string::npos) << svg->substr(0, 900);
    EXPECT_NE(svg->find("1030,530\""), std::string::npos);
    EXPECT_NE(svg->find(">This line is 100 mm long<"), std::string::npos);
}

/// The extents of every polyline of an SVG, width and height.
std::vector<std::pair<double, double>> extents_in(const std::string& svg) {
    std::vector<std::pair<double, double>> extents;
    const std::string mark = "points=\"";
    for (std::size_t at = svg.find(mark); at != std::string::npos; at = svg.find(mark, at + 1)) {
        std::istringstream points(svg.substr(at + mark.size(), svg.find('"', at + mark.size()) - at - mark.size()));
        double left = 1e9, right = -1e9, top = 1e9, foot = -1e9, x = 0, y = 0;
        char comma = 0;
        while (points >> x >> comma >> y) {
            left = std::min(left, x);
            right = std::max(right, x);
            top = std::min(top, y);
            foot = std::max(foot, y);
        }
        extents.emplace_back(right - left, foot - top);
    }
    return extents;
}

bool has_extent(const std::string& svg, double width, double height) {
    // Points are written to a hundredth of a mm.
    return std::ranges::any_of(extents_in(svg), [&](const std::pair<double, double>& one) {
        return std::abs(one.first - width) < 0.02 && std::abs(one.second - height) < 0.02;
    });
}

/// A half circle over 1000 on springings 1700 above the floor, under it a pair in pencil pleats, shaped.
Survey shaped_pair() {
    Survey survey = one_window(Shape::arch, {{"opening.width.top", 1000},
                                             {"opening.height.left", 900},
                                             {"opening.height.centre", 1400},
                                             {"opening.height.right", 900},
                                             {"below.left", 800},
                                             {"below.centre", 800},
                                             {"below.right", 800},
                                             {"arch.rise", 500}});
    Fabric cloth;
    cloth.id = "cloth";
    cloth.width = Length::mm(1400);
    survey.fabrics.push_back(cloth);
    Layer layer;
    layer.hardware.emplace().kind = Word<HardwareKind>(HardwareKind::track);
    Treatment& treatment = layer.treatment.emplace();
    treatment.heading = Word<Heading>(Heading::pencil_pleat);
    treatment.top = Word<TopEdge>(TopEdge::shaped);
    treatment.fabric = "cloth";
    survey.rooms[0].windows[0].layers.push_back(layer);
    return survey;
}

/// How often a text stands there; each label does twice, once as its halo.
std::size_t times_in(const std::string& svg, const std::string& text) {
    std::size_t times = 0;
    for (std::size_t at = svg.find(text); at != std::string::npos; at = svg.find(text, at + 1)) {
        ++times;
    }
    return times;
}

// By hand each curtain of a pair hangs 500 wide under a
// quarter of it, so its edge rises by 500; flat it lies as wide as the figures say, cut 75 above (pencil pleats, trade
// rules, section 2) and 40 out at each side (section 1).
TEST(Template, HasTheCurtainsOwnEdgesWithTheirTurnings) {
    const Survey survey = shaped_pair();
    const Figures figures = work_out(survey);
    const LayerFigures& worked = figures.windows[0].layers[0];
    ASSERT_EQ(worked.tops.size(), 2U);
    const auto svg = template_svg(survey, figures, 0);
    ASSERT_TRUE(svg.ok()) << svg.error().text;
    EXPECT_NEAR(worked.finished->width.mm(), 500.0, 1e-9);
    EXPECT_TRUE(has_extent(*svg, 500.0, 500.0));
    const double flat = worked.cloth->flat.mm();
    EXPECT_NEAR(flat, *worked.cloth->fullness * 500.0, 1e-6);
    EXPECT_TRUE(has_extent(*svg, flat, 500.0));
    EXPECT_TRUE(has_extent(*svg, flat + 2 * 40.0, 500.0 + 75.0));
    // 800 + 900 up to the springing, less 10 off the floor: the shortest drop.
    for (const auto* words :
         {"Hanging: the left curtain", "Flat on the table: the right curtain", "where it is cut",
          "75 more at the head, straight up the cloth, and 40 more at each side.",
          "The level line stands 1690 above the finished hem.", "The opening’s own edge, no turning."}) {
        EXPECT_NE(svg->find(words), std::string::npos) << words;
    }
    EXPECT_EQ(times_in(*svg, "This line is 100 mm long"), 2U * 5U);
}

// The circle's own equation: at x from its left foot a half circle of radius 500 is √(500² − (500 − x)²) high. What is
// drawn between two points lies within half a millimetre of it, on the table too, where it is stretched across.
TEST(Template, FollowsTheCurveToHalfAMillimetre) {
    const Survey survey = shaped_pair();
    const Figures figures = work_out(survey);
    const auto& outline = figures.windows[0].layers[0].tops[0].outline;
    ASSERT_GT(outline.size(), 50U);
    for (std::size_t i = 1; i < outline.size(); ++i) {
        const TopPoint& left = outline[i - 1];
        const TopPoint& right = outline[i];
        const double x = (left.hung + right.hung).mm() / 2.0;
        const double circle = 1690.0 + std::sqrt(500.0 * 500.0 - (500.0 - x) * (500.0 - x));
        const double across = (right.flat - left.flat).mm();
        const double up = (right.drop - left.drop).mm();
        const double off = across * (circle - (left.drop + right.drop).mm() / 2.0) / std::hypot(across, up);
        EXPECT_LT(std::abs(off), 0.5) << "at " << x;
    }
}

TEST(Template, IsNoneOfWhatIsStraightOrNotMeasured) {
    const Survey straight = contract_example();
    EXPECT_EQ(template_svg(straight, work_out(straight), 0).error().code, ErrorCode::missing);
    const Survey unmeasured = one_window(Shape::arch, {{"opening.width.bottom", 1000}});
    EXPECT_EQ(template_svg(unmeasured, work_out(unmeasured), 0).error().code, ErrorCode::missing);
    EXPECT_EQ(template_svg(straight, work_out(straight), 7).error().code, ErrorCode::missing);
}

}  // namespace
}  // namespace truehang::test
