// SPDX-License-Identifier: Apache-2.0
// Ways to hang one window, side by side.
#include "figures/choices.h"
#include "house.h"

#include <gtest/gtest.h>

namespace truehang {
namespace {

House priced_pair() {
    House house;
    house.on_track(Heading::pencil_pleat, Length::mm(1800), Length::mm(2000));
    house.treatment().fabric = "face";
    house.treatment().lining = "lining";
    Fabric& face = house.fabric("face", Length::mm(1400));
    face.price_per_m = 34.5;
    face.currency = "GBP";
    face.mass_gsm = 300;
    Fabric& lining = house.fabric("lining", Length::mm(1370));
    lining.price_per_m = 9;
    lining.currency = "EUR";
    lining.mass_gsm = 150;
    return house.read("opening.width.top", Length::mm(1600));
}

Choices compared(const House& house, const std::vector<Variation>& variations) {
    return compare(house.survey, "", "window", "", variations).value();
}

Variation with_heading(Heading heading) {
    Variation variation;
    variation.heading = heading;
    return variation;
}

// Law: the first choice is the window as it stands, a variation that changes nothing equals it, and a variation equals
// the survey edited so.
TEST(Choices, AreWhatTheEditedSurveyWouldBe) {
    House house = priced_pair();
    const Choices side_by_side = compared(house, {with_heading(Heading::pinch_pleat)});
    ASSERT_EQ(side_by_side.choices.size(), 2U);
    EXPECT_EQ(side_by_side.choices[0].figures.cloth->length, house.layer().cloth->length);
    house.treatment().heading = Word<Heading>(Heading::pinch_pleat);
    EXPECT_EQ(side_by_side.choices[1].figures.cloth->length, house.layer().cloth->length);
    EXPECT_EQ(side_by_side.choices[1].figures.mass->kg(), house.layer().mass->kg());
    EXPECT_EQ(side_by_side.choices[1].says, "Pinch pleated");
}

// Derived: money is length by price, cloth by cloth, and a sum for each currency alone.
TEST(Choices, NeverAddCurrenciesTogether) {
    const Choices side_by_side = compared(priced_pair(), {});
    const Choice& first = side_by_side.choices.front();
    ASSERT_EQ(first.cost.size(), 2U);
    EXPECT_EQ(first.cost[0].currency, "GBP");
    EXPECT_NEAR(first.cost[0].amount, first.figures.cloth->length.metres() * 34.5, 1e-9);
    EXPECT_EQ(first.cost[1].currency, "EUR");
    EXPECT_NEAR(first.cost[1].amount, first.figures.lining->length.metres() * 9, 1e-9);
    EXPECT_FALSE(first.making);
}

// Derived: a charge by the width, in the face cloth's currency.
TEST(Choices, ChargeTheMakingByTheWidth) {
    House house = priced_pair();
    house.rules({{"making_per_width", 45}});
    const Choices side_by_side = compared(house, {});
    const Choice& first = side_by_side.choices.front();
    ASSERT_TRUE(first.making);
    EXPECT_EQ(first.making->currency, "GBP");
    EXPECT_NEAR(first.making->amount, 45.0 * first.figures.cloth->widths, 1e-9);
}

// Derived from the trade rules, section 8: stack × w - (track - opening) / 2 on each side, 0.25 × 900 - 100 = 125; a
// track of 1,800 + 250 × … clears it where nothing is left.
TEST(Choices, SayWhatGlassIsCovered) {
    Variation longer;
    longer.hardware_length = Length::mm(2200);
    const Choices side_by_side = compared(priced_pair(), {longer});
    EXPECT_NEAR(side_by_side.choices[0].figures.covers_glass->mm(), 125, 1e-9);
    EXPECT_NEAR(side_by_side.choices[1].figures.covers_glass.value_or(Length::mm(-1)).mm(), 0, 1e-9);
}

// Law: of a variation only the flags that are new are told: tabs can't hang from a track, and without its lining the
// curtain has nothing that it hadn't before.
TEST(Choices, TellTheFlagsThatAppear) {
    Variation unlined;
    unlined.lining = "";
    const Choices side_by_side = compared(priced_pair(), {with_heading(Heading::tab), unlined});
    EXPECT_FALSE(side_by_side.choices[0].flags.empty());
    EXPECT_TRUE(side_by_side.choices[2].flags.empty());
    int heading = 0;
    for (const Flag& flag : side_by_side.choices[1].flags) {
        heading += flag.code == "heading-hardware" ? 1 : 0;
        EXPECT_NE(flag.code, "not-checked");
    }
    EXPECT_EQ(heading, 1);
}

// Derived by hand (joins_test.cpp): at a track of 2 × 1990 / 1.9 one and a half widths are just enough at 2.0 ×, and at
// 2.05 × there are two: both answers stand side by side, with what each takes.
TEST(Choices, ShowBothAnswersOnAnEdge) {
    House house = priced_pair();
    house.treatment().fullness = 2.0;
    house.hardware().length = Length::mm(2.0 * 1990 / 1.9);
    const Choices side_by_side = compared(house, {});
    ASSERT_EQ(side_by_side.choices.size(), 2U);
    const Choice& other = side_by_side.choices[1];
    EXPECT_TRUE(other.on_the_edge);
    EXPECT_EQ(side_by_side.choices[0].figures.cloth->widths, 3);
    EXPECT_EQ(other.figures.cloth->widths, 4);
    EXPECT_GT(other.cost.front().amount, side_by_side.choices[0].cost.front().amount);
}

const Flag* flag_of(const std::vector<Flag>& flags, std::string_view code) {
    const auto found = std::ranges::find(flags, code, &Flag::code);
    return found == flags.end() ? nullptr : &*found;
}

// The same edge (derived by hand, joins_test.cpp): one and a half widths in each, or two. Either is taken: the cloth,
// its lining and its money are then those that stood beside it, nothing is left to decide, and the answer that was left
// can be taken in its turn.
TEST(Choices, TakeEitherAnswerOfAnEdge) {
    House house = priced_pair();
    house.treatment().fullness = 2.0;
    house.hardware().length = Length::mm(2.0 * 1990 / 1.9);
    const Choices both = compared(house, {});
    EXPECT_NE(flag_of(both.choices[0].flags, "on-the-edge"), nullptr);
    for (const std::size_t answer : {std::size_t{0}, std::size_t{1}}) {
        House decided = house;
        decided.window().layers[0] = varied(house.window().layers[0], both.choices[answer].variation);
        const Choices after = compared(decided, {});
        ASSERT_EQ(after.choices.size(), 2U);
        EXPECT_EQ(after.choices[0].figures.cloth->widths, answer == 0 ? 3 : 4);
        EXPECT_EQ(after.choices[0].figures.cloth->length, both.choices[answer].figures.cloth->length);
        EXPECT_EQ(after.choices[0].figures.lining->length, both.choices[answer].figures.lining->length);
        EXPECT_EQ(after.choices[0].cost.front().amount, both.choices[answer].cost.front().amount);
        EXPECT_EQ(after.choices[0].figures.finished->width, both.choices[0].figures.finished->width);
        EXPECT_EQ(flag_of(after.choices[0].flags, "on-the-edge"), nullptr);
        EXPECT_NE(flag_of(after.choices[0].flags, "edge-decided"), nullptr);
        EXPECT_EQ(after.choices[1].figures.cloth->widths, answer == 0 ? 4 : 3);
    }
}

// Derived by hand: two widths of 1400 with 15 off at their join and 40 off each side lie 2690 flat, in a finished width
// of 1990 / 1.9 = 1047.368, which is 2.5683 ×: what is reached is told of the width that hangs there.
TEST(Choices, TellTheFullnessThatADecidedEdgeReaches) {
    House house = priced_pair();
    house.treatment().fullness = 2.0;
    house.hardware().length = Length::mm(2.0 * 1990 / 1.9);
    house.treatment().decided.emplace().widths_each = 2.0;
    EXPECT_NEAR(house.layer().cloth->flat.mm(), 2690.0, 1e-9);
    EXPECT_NEAR(*house.layer().cloth->fullness, 2690.0 / (1990.0 / 1.9), 1e-9);
}

// Derived by hand: a drop of 2000, nothing added, is four repeats of 500, and five where it is any more. Either is cut
// for when it was decided; six is no answer here, and is asked again.
TEST(Choices, CutTheRepeatsThatWereDecided) {
    House house;
    house.bare().on_track(Heading::pencil_pleat, Length::mm(1800), Length::mm(2000));
    house.read("opening.width.top", Length::mm(1600));
    house.treatment().fabric = "face";
    Fabric& face = house.fabric("face", Length::mm(1400));
    face.repeat = Length::mm(500);
    face.match = Word<Match>(Match::straight);
    const auto flags = [&] { return compared(house, {}).choices[0].flags; };
    EXPECT_NEAR(house.layer().cloth->cut_drop.mm(), 2000.0, 1e-9);
    EXPECT_NE(flag_of(flags(), "on-the-edge"), nullptr);
    for (const double repeats : {4.0, 5.0}) {
        house.treatment().decided.emplace().repeats = repeats;
        EXPECT_NEAR(house.layer().cloth->cut_drop.mm(), 500.0 * repeats, 1e-9);
        EXPECT_NEAR(house.layer().cloth->length.mm(), 500.0 * repeats * house.layer().cloth->widths, 1e-9);
        EXPECT_NE(flag_of(flags(), "edge-decided"), nullptr);
        EXPECT_EQ(flag_of(flags(), "on-the-edge"), nullptr);
    }
    house.treatment().decided.emplace().repeats = 6.0;
    EXPECT_NEAR(house.layer().cloth->cut_drop.mm(), 2000.0, 1e-9);
    EXPECT_NE(flag_of(flags(), "on-the-edge"), nullptr);
}

// Law: a decision that is neither of the answers decides nothing.
TEST(Choices, AskAgainWhereTheAnswersAreOthers) {
    House house = priced_pair();
    house.treatment().fullness = 2.0;
    house.hardware().length = Length::mm(2.0 * 1990 / 1.9);
    house.treatment().decided.emplace().widths_each = 5.0;
    const Choices asked = compared(house, {});
    EXPECT_EQ(asked.choices[0].figures.cloth->widths, 3);
    EXPECT_NE(flag_of(asked.choices[0].flags, "on-the-edge"), nullptr);
    house.hardware().length = Length::mm(1800);  // no edge any more
    EXPECT_EQ(flag_of(compared(house, {}).choices[0].flags, "edge-decided"), nullptr);
}

TEST(Choices, RefuseWhatIsntThere) {
    const House house = priced_pair();
    Variation unknown;
    unknown.fabric = "nettle";
    EXPECT_FALSE(compare(house.survey, "", "window", "", {unknown}));
    EXPECT_FALSE(compare(house.survey, "", "door", "", {}));
    EXPECT_FALSE(compare(house.survey, "", "window", "sheers", {}));
}

}  // namespace
}  // namespace truehang
