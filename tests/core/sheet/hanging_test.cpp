// SPDX-License-Identifier: Apache-2.0
#include "sheet/cloth_colour.h"
#include "sheet/svg.h"
#include "sizing/headings.h"
#include "windows.h"

#include <rapidcheck/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdlib>
#include <vector>

namespace truehang::test {
namespace {

struct Case {
    Heading heading;
    HardwareKind hardware = HardwareKind::pole;
    Layout layout = Layout::pair;
    HemAt hem = HemAt::floor;
};

constexpr double pole_left = 619.0 - 860.0;  ///< of the contract's example: 1720 long about the middle of its opening
constexpr double pole_length = 1720.0;

/// The contract's example with another heading.
Survey hung(const Case& made) {
    Survey survey = contract_example();
    Layer& layer = survey.rooms.front().windows.front().layers.front();
    layer.treatment->heading = Word<Heading>(made.heading);
    layer.treatment->layout = Word<Layout>(made.layout);
    layer.treatment->length = Word<HemAt>(made.hem);
    layer.treatment->fullness.reset();
    layer.hardware->kind = Word<HardwareKind>(made.hardware);
    return survey;
}

LayerFigures figures_of(const Survey& survey) { return work_out(survey).windows.front().layers.front(); }

Elevation drawn(const Survey& survey, Drawn how, double width = 900.0, double height = 800.0) {
    ElevationOptions options;
    options.width = width;
    options.height = height;
    options.dimensions = false;
    options.drawn = how;
    return test::drawn(survey, options);
}

struct Box {
    double left = 1e9, right = -1e9, low = 1e9, high = -1e9;  ///< mm of the window
    [[nodiscard]] double middle() const { return (left + right) / 2.0; }
};

/// Where the ink lines of a part lie, in mm, in their order.
std::vector<Box> boxes_of(const Elevation& elevation, const std::string& part) {
    std::vector<Box> boxes;
    for (const Stroke& stroke : elevation.strokes) {
        if (stroke.part != part || stroke.role != Role::ink) {
            continue;
        }
        Box& box = boxes.emplace_back();
        for (const Point& point : stroke.points) {
            const double x = (point.x - elevation.origin.x) / elevation.scale;
            const double y = (elevation.origin.y - point.y) / elevation.scale;
            box = {std::min(box.left, x), std::max(box.right, x), std::min(box.low, y), std::max(box.high, y)};
        }
    }
    return boxes;
}

std::vector<double> middles_of(const Elevation& elevation, const std::string& part) {
    std::vector<double> middles;
    for (const Box& box : boxes_of(elevation, part)) {
        middles.push_back(box.middle());
    }
    std::ranges::sort(middles);
    return middles;
}

TEST(HangingDrawing, HasAsManyTabsAsAreSewnWhereTheyAreSewn) {
    const Survey survey = hung({Heading::tab});
    const LayerFigures figures = figures_of(survey);
    ASSERT_TRUE(figures.tabs && figures.cloth && figures.finished);
    const Elevation elevation = drawn(survey, Drawn::shut);
    const std::vector<double> tabs = middles_of(elevation, "tab");
    ASSERT_EQ(tabs.size(), 2U * static_cast<std::size_t>(figures.tabs->each));
    // Trade rules, section 7: from tab_width/2 in, evenly over the flat width. Derived: a curtain 860 wide on flat
    // cloth shows each at the same share; the pair is its own mirror image about 619.
    const double w = figures.finished->width.mm();
    const double flat = figures.cloth->flat.mm();
    for (int i = 0; i < figures.tabs->each; ++i) {
        const double on_the_flat = 25.0 + (flat - 50.0) * i / (figures.tabs->each - 1);
        const auto at = static_cast<std::size_t>(i);
        EXPECT_NEAR(tabs[at], pole_left + w * on_the_flat / flat, 0.6);
        EXPECT_NEAR(tabs[at] + tabs[tabs.size() - 1 - at], 2.0 * 619.0, 0.6);
    }
    // A tab goes over the pole, whose centre is 2070 over the floor and which is 28 thick.
    for (const Box& tab : boxes_of(elevation, "tab")) {
        EXPECT_GT(tab.high, 2070.0 + 14.0);
        EXPECT_LE(tab.right - tab.left, 50.0 + 0.5);
    }
}

TEST(HangingDrawing, KeepsEveryFixingWhenDrawnBack) {
    for (const Heading heading : {Heading::tab, Heading::eyelet, Heading::pinch_pleat, Heading::goblet}) {
        const Survey survey = hung({heading});
        const LayerFigures figures = figures_of(survey);
        const std::string part = heading == Heading::tab ? "tab" : heading == Heading::eyelet ? "eyelet" : "pleat";
        const int each = heading == Heading::tab      ? figures.tabs->each
                         : heading == Heading::eyelet ? figures.eyelets->each
                                                      : figures.making.pleats->each;
        const Elevation back = drawn(survey, Drawn::back, 330.0, 300.0);
        EXPECT_EQ(boxes_of(back, part).size(), 2U * static_cast<std::size_t>(each)) << part;
        // Trade rules, section 8: drawn back, a curtain fills its heading's share of its width.
        const double stack = heading_rule(heading).stack * figures.finished->width.mm();
        const Box left = boxes_of(back, "curtain").front();
        EXPECT_NEAR(left.right - left.left, stack, 1.0) << part;
        EXPECT_NEAR(left.left, pole_left, 1.0);
    }
}

TEST(HangingDrawing, PutsEyeletsOnThePole) {
    const Survey survey = hung({Heading::eyelet});
    const LayerFigures figures = figures_of(survey);
    const Elevation elevation = drawn(survey, Drawn::shut);
    const std::vector<Box> eyelets = boxes_of(elevation, "eyelet");
    ASSERT_EQ(eyelets.size(), 2U * static_cast<std::size_t>(figures.eyelets->each));
    for (const Box& eyelet : eyelets) {
        EXPECT_NEAR((eyelet.low + eyelet.high) / 2.0, 2070.0, 0.6);
    }
    // Trade rules, section 7: the first and the last 50 in on the flat.
    const double share = 50.0 / figures.cloth->flat.mm();
    const std::vector<double> middles = middles_of(elevation, "eyelet");
    EXPECT_NEAR(middles.front(), pole_left + share * figures.finished->width.mm(), 0.6);
    EXPECT_NEAR(middles.back(), pole_left + pole_length - share * figures.finished->width.mm(), 0.6);
}

TEST(HangingDrawing, SpacesPleatsAsTheyHang) {
    for (const Heading heading : {Heading::pinch_pleat, Heading::goblet, Heading::box_pleat}) {
        Survey survey = hung({heading, HardwareKind::track});
        Hardware& track = *survey.rooms.front().windows.front().layers.front().hardware;
        track.return_depth = Length::mm(80);
        track.overlap = Length::mm(100);
        const LayerFigures figures = figures_of(survey);
        ASSERT_TRUE(figures.making.pleats && figures.finished);
        const std::vector<double> pleats = middles_of(drawn(survey, Drawn::shut), "pleat");
        const auto each = static_cast<std::size_t>(figures.making.pleats->each);
        ASSERT_EQ(pleats.size(), 2 * each);
        // Derived: with its pleats closed a curtain has its finished width, of which half the overlap lies flat before
        // the first pleat and the return behind the last; the rest is shared by the spaces. It is drawn as wide as half
        // the track: the return turns back to the wall and half the overlap lies behind its neighbour.
        const double w = figures.finished->width.mm();
        const double shown = pole_length / 2.0 / w;
        EXPECT_NEAR(pleats[each - 1], pole_left + pole_length / 2.0 - shown * 50.0, 1.0);
        EXPECT_NEAR(pleats[0], pole_left + shown * 80.0, 1.0);
        for (std::size_t i = 1; i < each; ++i) {
            EXPECT_NEAR(pleats[i] - pleats[i - 1], shown * (w - 130.0) / static_cast<double>(each - 1), 1.0);
        }
    }
}

TEST(HangingDrawing, HangsOneRingOnThePoleForEachHook) {
    for (const Heading heading : {Heading::pencil_pleat, Heading::pinch_pleat}) {
        const Survey on_pole = hung({heading});
        const LayerFigures figures = figures_of(on_pole);
        const int hooks = figures.making.hooks->each;
        EXPECT_EQ(boxes_of(drawn(on_pole, Drawn::shut), "ring").size(), 2U * static_cast<std::size_t>(hooks));
        EXPECT_TRUE(boxes_of(drawn(hung({heading, HardwareKind::track}), Drawn::shut), "ring").empty());
    }
}

TEST(HangingDrawing, DrawsASingleCurtainToItsSide) {
    for (const Layout layout : {Layout::left, Layout::right, Layout::single}) {
        const Elevation back = drawn(hung({Heading::tab, HardwareKind::pole, layout}), Drawn::back);
        const Box cloth = boxes_of(back, "curtain").front();
        if (layout == Layout::right) {
            EXPECT_NEAR(cloth.right, pole_left + pole_length, 1.0);
        } else {
            EXPECT_NEAR(cloth.left, pole_left, 1.0);
        }
        EXPECT_LT(cloth.right - cloth.left, pole_length / 2.0);
    }
}

TEST(HangingDrawing, PutsEveryRodWhereItIsSewn) {
    Survey survey = hung({Heading::roman, HardwareKind::headrail});
    survey.rooms.front().windows.front().layers.front().treatment->fit = Word<Fit>(Fit::outside);
    survey.rooms.front().windows.front().layers.front().treatment->length = Word<HemAt>(HemAt::sill);
    const LayerFigures figures = figures_of(survey);
    ASSERT_TRUE(figures.blind && figures.finished);
    const Elevation down = drawn(survey, Drawn::shut);
    const std::vector<Box> rods = boxes_of(down, "rod");
    ASSERT_EQ(rods.size(), static_cast<std::size_t>(figures.blind->rods));
    const Box blind = boxes_of(down, "curtain").front();
    // Trade rules, section 9: rods stand fold·(1, 3, 5, …) above the bottom; the rest of the drop over the headrail.
    const double fold = (figures.finished->drop.mm() - 60.0) / (2 * figures.blind->rods + 1);
    for (int i = 0; i < figures.blind->rods; ++i) {
        EXPECT_NEAR(rods[static_cast<std::size_t>(i)].low, blind.low + fold * (2 * i + 1), 1.0);
    }
    // Drawn up it is fold + headrail deep.
    const Box up = boxes_of(drawn(survey, Drawn::back), "curtain").front();
    EXPECT_NEAR(up.high - up.low, fold + 60.0, 1.0);
}

TEST(HangingDrawing, LaysOnTheFloorWhatIsLongerThanTheDrop) {
    const auto count = [](HemAt hem, const char* part) {
        const Elevation elevation = drawn(hung({Heading::tab, HardwareKind::pole, Layout::pair, hem}), Drawn::shut);
        return boxes_of(elevation, part).size();
    };
    EXPECT_EQ(count(HemAt::floor, "pool") + count(HemAt::floor, "break"), 0U);
    EXPECT_GE(count(HemAt::break_, "break"), 2U);
    EXPECT_EQ(count(HemAt::puddle, "pool"), 2U);
    // No cloth hangs below the floor, which lies at 0.
    for (const Box& box : boxes_of(
             drawn(hung({Heading::tab, HardwareKind::pole, Layout::pair, HemAt::puddle}), Drawn::shut), "curtain")) {
        EXPECT_GE(box.low, -0.6);
    }
}

TEST(HangingDrawing, GathersATiedCurtainAtItsTieBack) {
    Survey survey = hung({Heading::pencil_pleat});
    survey.rooms.front().windows.front().layers.front().treatment->tie_back.emplace().height = Length::mm(950);
    const Elevation back = drawn(survey, Drawn::back);
    const std::vector<Box> ties = boxes_of(back, "tie-back");
    ASSERT_EQ(ties.size(), 2U);
    for (const Box& tie : ties) {
        EXPECT_NEAR((tie.low + tie.high) / 2.0, 950.0, 1.0);
    }
    EXPECT_NEAR(ties.front().left, pole_left, 1.0);
    EXPECT_NEAR(ties.back().right, pole_left + pole_length, 1.0);
    EXPECT_TRUE(boxes_of(drawn(survey, Drawn::shut), "tie-back").empty());
}

TEST(HangingDrawing, FillsWithTheColourOfItsCloth) {
    Survey survey = hung({Heading::tab});
    const auto filled = [&](const std::string& colour) {
        survey.fabrics.front().colour = colour;
        const Elevation elevation = drawn(survey, Drawn::shut);
        return std::ranges::count(elevation.strokes, colour, &Stroke::fill);
    };
    EXPECT_GE(filled("#8f2f2f"), 2);
    const std::string svg = svg_of(drawn(survey, Drawn::shut), {});
    EXPECT_NE(svg.find("fill=\"#8f2f2f\""), std::string::npos);
    // What can't be read as a colour is drawn as if there were none.
    survey.fabrics.front().colour = "madder\" onload=\"x";
    for (const Stroke& stroke : drawn(survey, Drawn::shut).strokes) {
        EXPECT_TRUE(stroke.fill.empty() && stroke.over.empty()) << stroke.part;
    }
}

TEST(ClothColour, ReadsSixDigits) {
    EXPECT_EQ(read_colour("#8f2F00"), (Colour{0x8f, 0x2f, 0}));
    EXPECT_EQ(read_colour("8f2f00"), (Colour{0x8f, 0x2f, 0}));
    for (const char* wrong : {"", "#", "#8f2f0", "#8f2f000", "#8f2g00", "red", "##8f2f0", "#8f2f-1"}) {
        EXPECT_FALSE(read_colour(wrong)) << wrong;
    }
    EXPECT_EQ(write_colour({255, 0, 10}), "#ff000a");
}

TEST(ClothColour, MeasuresContrastAsTheStandardDoes) {
    // W3C, WCAG 2.1, definition of contrast ratio: black on white is 21 : 1; G18's often quoted grey #767676 on white
    // is the first that passes 4.5 : 1.
    EXPECT_NEAR(contrast({0, 0, 0}, {255, 255, 255}), 21.0, 1e-9);
    EXPECT_GT(contrast({0x76, 0x76, 0x76}, {255, 255, 255}), 4.5);
    EXPECT_LT(contrast({0x77, 0x77, 0x77}, {255, 255, 255}), 4.5);
}

RC_GTEST_PROP(ClothColour, AlwaysLeavesALineThatStandsOut, ()) {
    // WCAG 2.1, success criterion 1.4.11: shapes need 3 : 1.
    const Colour cloth{*rc::gen::inRange(0, 256), *rc::gen::inRange(0, 256), *rc::gen::inRange(0, 256)};
    for (const auto& [ink, paper] :
         {std::pair{light_palette().ink, light_palette().paper}, {dark_palette().ink, dark_palette().paper}}) {
        const auto line = read_colour(line_over(write_colour(cloth), Role::ink, ink, paper));
        RC_ASSERT(line.has_value());
        RC_ASSERT(contrast(*line, cloth) >= 3.0);
    }
}

TEST(ClothColour, NamesDyesThatCanBeRead) {
    for (const Dye& dye : dyes()) {
        ASSERT_TRUE(read_colour(dye.colour)) << dye.word;
        EXPECT_EQ(write_colour(*read_colour(dye.colour)), dye.colour);
    }
}

/// With TRUEHANG_PICTURES, every heading open and closed as a page to look at.
TEST(HangingDrawing, CanBeLookedAt) {
    const char* folder = std::getenv("TRUEHANG_PICTURES");
    std::string page = "<meta charset=utf-8><body style='margin:8px;background:#f7f7f2;width:1480px'>";
    int number = 0;
    const auto show = [&](const Survey& survey, Drawn how) {
        SvgOptions options;
        options.id = "d" + std::to_string(++number);
        const std::string svg = svg_of(drawn(survey, how, 360.0, 290.0), options);
        EXPECT_NE(svg.find("<polygon"), std::string::npos);
        page += svg;
    };
    const std::array<const char*, 4> colours{"", "#4d7a6c", "#24262b", "#d8c7a3"};
    for (const auto& [word, heading] : Words<Heading>::list) {
        const HardwareKind kind = heading == Heading::s_fold  ? HardwareKind::track
                                  : heading == Heading::roman ? HardwareKind::headrail
                                                              : HardwareKind::pole;
        for (const std::size_t at : {std::size_t{0}, 1 + static_cast<std::size_t>(number / 4) % 3}) {
            Survey survey = hung({heading, kind});
            survey.fabrics.front().colour = colours[at];
            for (const Drawn how : {Drawn::shut, Drawn::back}) {
                show(survey, how);
            }
        }
    }
    for (const HemAt hem : {HemAt::sill, HemAt::below_sill, HemAt::break_, HemAt::puddle}) {
        Survey survey = hung({Heading::pinch_pleat, HardwareKind::pole, Layout::pair, hem});
        survey.fabrics.front().colour = "#84687f";
        survey.rooms.front().windows.front().layers.front().treatment->tie_back.emplace();
        survey.rooms.front().windows.front().layers.front().treatment->pelmet =
            hem == HemAt::below_sill ? std::optional(PelmetAsked{}) : std::nullopt;
        show(survey, Drawn::shut);
        show(survey, Drawn::back);
    }
    if (folder != nullptr) {
        std::ofstream(std::string(folder) + "/headings.html") << page;
    }
}

}  // namespace
}  // namespace truehang::test
