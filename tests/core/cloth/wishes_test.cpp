// SPDX-License-Identifier: Apache-2.0
// Wishes that can't be met: each is told in the trade's words, with what to change, and nothing is cut. The sentences'
// limits follow from what the parts are (trade rules, sections 4 to 9); common practice, no source, where none is
// named.
#include "house.h"

#include <gtest/gtest.h>

#include <functional>

namespace truehang {
namespace {

House lined_pair() {
    House house;
    house.on_track(Heading::pencil_pleat, Length::mm(1800), Length::mm(2000));
    house.treatment().fabric = "face";
    house.treatment().lining = "lining";
    house.fabric("face", Length::mm(1400)).selvedge = Length::mm(10);
    house.fabric("lining", Length::mm(1370));
    return house;
}

Fabric& face(House& house) { return house.survey.fabrics.front(); }

House on_a_pole(Heading heading) {
    House house = lined_pair();
    house.treatment().heading = Word<Heading>(heading);
    house.hardware().kind = Word<HardwareKind>(HardwareKind::pole);
    house.hardware().diameter = Length::mm(28);
    return house;
}

House roman() {
    House house = lined_pair();
    house.window().layers.front().hardware.reset();
    house.treatment().heading = Word<Heading>(Heading::roman);
    house.treatment().fit = Word<Fit>(Fit::inside);
    return house.read("opening.width.top", Length::mm(900)).read("opening.height.left", Length::mm(1200));
}

struct Wish {
    const char* name;
    std::function<House()> house;
    const char* told;    ///< what the sentence names
    const char* change;  ///< what would do
};

class Wishes : public testing::TestWithParam<Wish> {};

TEST_P(Wishes, AreToldWithWhatToChange) {
    const House house = GetParam().house();
    const WindowFigures figures = house.figures();
    int stops = 0;
    std::string text;
    for (const Flag& flag : figures.flags) {
        if (flag.code == "impossible") {
            EXPECT_EQ(flag.severity, Severity::stop);
            text = flag.text;
            ++stops;
        }
        EXPECT_NE(flag.code, "fullness-range");
        EXPECT_NE(flag.code, "on-the-edge");
    }
    EXPECT_EQ(stops, 1);
    EXPECT_NE(text.find(GetParam().told), std::string::npos) << text;
    EXPECT_NE(text.find(GetParam().change), std::string::npos) << text;
    EXPECT_FALSE(figures.layers.front().cloth);
    EXPECT_TRUE(house.orders().empty());
}

template <class Change>
std::function<House()> with(House (*make)(), const Change& change) {
    return [make, change] {
        House house = make();
        change(house);
        return house;
    };
}

std::function<House()> with_rules(std::function<House()> make, std::map<std::string, double> rules) {
    return [make = std::move(make), rules = std::move(rules)] {
        House house = make();
        house.rules(rules);
        return house;
    };
}

House tabbed() { return on_a_pole(Heading::tab); }
House eyeletted() { return on_a_pole(Heading::eyelet); }
House slotted() { return on_a_pole(Heading::slot); }

INSTANTIATE_TEST_SUITE_P(
    OfTheTrade, Wishes,
    testing::Values(
        Wish{"all selvedge", with(lined_pair, [](House& h) { face(h).selvedge = Length::mm(700); }), "selvedges",
             "Look at both"},
        Wish{"more selvedge than cloth", with(lined_pair, [](House& h) { face(h).selvedge = Length::mm(900); }),
             "selvedges", "Look at both"},
        Wish{"fullness 0.4", with(lined_pair, [](House& h) { h.treatment().fullness = 0.4; }), "0.4 × fullness",
             "1.75 to 2.5"},
        Wish{"slack as large as the fullness", with_rules(lined_pair, {{"fullness_slack", 2.0}}), "2 × below",
             "fullness_slack"},
        Wish{"a repeat longer than the roll", with(lined_pair, [](House& h) { face(h).repeat = Length::mm(64000); }),
             "64 m", "Measure the repeat"},
        Wish{"a drop longer than the roll", with_rules(lined_pair, {{"roll_m", 2.0}}), "2.2 m", "roll_m"},
        Wish{"a repeat across wider than the cloth",
             with(lined_pair, [](House& h) { face(h).repeat_across = Length::mm(1500); }), "1500 mm across",
             "wider cloth"},
        Wish{"skew over the whole width", with(lined_pair, [](House& h) { face(h).skew = Length::mm(1400); }),
             "off square", "Measure its skew"},
        Wish{"seams that eat the cloth", with_rules(lined_pair, {{"seam_mm", 700}}), "Seams of 700 mm",
             "narrower seams"},
        Wish{"more than a thousand widths",
             with(lined_pair,
                  [](House& h) {
                      face(h).width = Length::mm(52);
                      h.treatment().lining.reset();
                      h.hardware().length = Length::mm(90000);
                  }),
             "1,000 widths", "Look at the width"},
        Wish{"a hem deeper than the drop", with_rules(lined_pair, {{"hem_mm", 2500}}), "2500 mm", "shallower hem"},
        Wish{"a track shorter than the overlap",
             with(lined_pair, [](House& h) { h.hardware().overlap = Length::mm(1900); }), "overlap", "longer one"},
        Wish{"a pelmet deeper than the curtain",
             with(lined_pair,
                  [](House& h) {
                      h.treatment().pelmet = PelmetAsked{Length::mm(2400), Length(), {}};
                  }),
             "2400 mm deep", "a sixth to a fifth"},
        Wish{"a pelmet of no depth",
             with(lined_pair,
                  [](House& h) {
                      h.treatment().pelmet = PelmetAsked{Length(), Length(), {}};
                  }),
             "no depth", "leave it out"},
        Wish{"a lining narrower than its insets", with_rules(lined_pair, {{"lining_inset_mm", 1000}}), "1000 mm in",
             "less"},
        Wish{"a lining that ends above its top", with_rules(lined_pair, {{"lining_rise_mm", 2500}}), "2500 mm above",
             "come lower"},
        Wish{"a tab wider than the cloth", with_rules(tabbed, {{"tab_width_mm", 720}, {"tab_gap_mm", 800}}),
             "cloth is 1380 mm", "narrower"},
        Wish{"tabs of no width", with_rules(tabbed, {{"tab_width_mm", 0}}), "no width", "house rules"},
        Wish{"tabs that overlap", with_rules(tabbed, {{"tab_gap_mm", 40}}), "40 mm apart", "further apart"},
        Wish{"tabs too short for the pole", with(tabbed, [](House& h) { h.treatment().tab_cut = Length::mm(50); }),
             "50 mm", "longer"},
        Wish{"a facing longer than the curtain",
             with_rules(with(tabbed, [](House& h) { h.treatment().lining.reset(); }), {{"facing_mm", 2500}}),
             "2500 mm deep", "shallower"},
        Wish{"eyelets that overlap", with_rules(eyeletted, {{"eyelet_gap_mm", 30}}), "30 mm apart", "further apart"},
        Wish{"a slot deeper than the curtain", with_rules(slotted, {{"slot_ease_mm", 5000}}), "pocket", "thinner pole"},
        Wish{"folds of no depth", with_rules(roman, {{"blind_fold_mm", 0.001}}), "Folds", "deeper folds"},
        Wish{"weights without number", with_rules(lined_pair, {{"weight_every", 1e-6}}), "weight", "weight_every"},
        Wish{"a blind shorter than its headrail",
             with_rules(roman, {{"blind_headrail_mm", 1300}, {"blind_hem_mm", 50}}), "headrail of 1300", "longer"},
        Wish{"a blind narrower than its ease", with_rules(roman, {{"blind_ease_mm", 1000}}), "ease",
             "widths of the opening"}),
    [](const testing::TestParamInfo<Wish>& wish) {
        std::string name = wish.param.name;
        for (char& c : name) {
            c = (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') ? c : '_';
        }
        return name;
    });

// The same windows with nothing asked in vain are worked.
TEST(WishesThatCanBeMet, AreWorked) {
    for (const auto& house : {lined_pair(), tabbed(), eyeletted(), slotted(), roman()}) {
        EXPECT_TRUE(house.layer().cloth);
        EXPECT_FALSE(has_flag(house.figures(), "impossible"));
    }
}

}  // namespace
}  // namespace truehang
