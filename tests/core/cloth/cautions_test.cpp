// SPDX-License-Identifier: Apache-2.0
#include "cautions/cautions.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <string>

namespace truehang {
namespace {

bool says(Hazard hazard, std::string_view region, std::string_view what) {
    return std::ranges::any_of(cautions_at(hazard), [&](const Caution& caution) {
        return caution.region == region && caution.text.find(what) != std::string_view::npos;
    });
}

// What each caution must carry to be edited and judged: a region, a source, a date, and who decides in the end.
TEST(Cautions, EachIsWholeAndDefersToOthers) {
    for (const Caution& caution : cautions()) {
        EXPECT_FALSE(caution.region.empty());
        EXPECT_FALSE(caution.source.empty());
        EXPECT_EQ(caution.checked.size(), 10U);
        EXPECT_NE(caution.text.find("ocal rules"), std::string_view::npos) << caution.text;
        EXPECT_NE(caution.text.find("qualified"), std::string_view::npos) << caution.text;
        if (caution.source.find("no source") == std::string_view::npos) {
            EXPECT_FALSE(caution.edition.empty()) << caution.source;
        }
    }
}

TEST(Cautions, EveryMomentBeginsWithGeneralSense) {
    for (const Hazard hazard : {Hazard::cord, Hazard::heat, Hazard::power, Hazard::drilling, Hazard::ladder,
                                Hazard::load, Hazard::lifting, Hazard::escape, Hazard::weights, Hazard::fire}) {
        ASSERT_FALSE(cautions_at(hazard).empty());
        EXPECT_EQ(cautions_at(hazard).front().region, "any");
    }
}

// Common practice, no source: what is noted of a room tells a public place, a workplace or lodgings from a home.
TEST(Cautions, OfFireWhereThePublicIs) {
    const auto is_said = [](const char* use) {
        Room room;
        room.use = use;
        const auto flags = cautions_of_choice(room, Treatment());
        return std::ranges::any_of(flags, [](const Flag& flag) { return flag.code == "cloth-for-public-place"; });
    };
    for (const char* use : {"hotel bedroom", "Office", "village hall", "the pub", "care home"}) {
        EXPECT_TRUE(is_said(use)) << use;
    }
    for (const char* use : {"", "bedroom", "hallway", "barn", "living room", "carefully kept stair"}) {
        EXPECT_FALSE(is_said(use)) << use;
    }
}

// Australian consumer goods standard, 2014: 220 mm, 1600 mm, 70 N for 10 s; Canada SOR/2019-97: 220 mm, 440 mm, 35 N;
// US ANSI/WCMA A100.1-2022: no free-hanging operating cords on made-to-order products.
TEST(Cautions, CordsByRegion) {
    for (const char* what : {"220 mm", "1600 mm", "70 N for 10 s"}) {
        EXPECT_TRUE(says(Hazard::cord, "Australia", what)) << what;
    }
    for (const char* what : {"220 mm", "440 mm", "35 N"}) {
        EXPECT_TRUE(says(Hazard::cord, "Canada", what)) << what;
    }
    EXPECT_TRUE(says(Hazard::cord, "US", "No free-hanging operating cord"));
    EXPECT_TRUE(says(Hazard::cord, "Europe", "check the standard"));
}

// NFPA 701: method 1 to 700 g/m2, method 2 above. BS 7671: cables within 150 mm of ceilings and corners. US IRC R310:
// 5.7 ft2, 24 in high, 20 in wide, sill at most 44 in; England: 0.33 m2, 450 mm, sill at most 1100 mm.
TEST(Cautions, FireCablesAndEscape) {
    EXPECT_TRUE(says(Hazard::fire, "US", "700 g/m²"));
    EXPECT_TRUE(says(Hazard::drilling, "UK", "150 mm"));
    EXPECT_TRUE(says(Hazard::escape, "US", "5.7 ft²"));
    EXPECT_TRUE(says(Hazard::escape, "US", "44 in"));
    EXPECT_TRUE(says(Hazard::escape, "England", "1100 mm"));
    // Geometry: 0.33 m2 at 450 mm wide is 734 mm high.
    EXPECT_TRUE(says(Hazard::escape, "England", std::to_string(static_cast<int>(std::ceil(330000.0 / 450.0)))));
}

}  // namespace
}  // namespace truehang
