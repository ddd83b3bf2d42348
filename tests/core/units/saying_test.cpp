// SPDX-License-Identifier: Apache-2.0
#include "units/saying.h"

#include "units/length_text.h"

#include <gtest/gtest.h>
#include <thread>

namespace truehang {
namespace {

constexpr std::string_view table =
    "# a remark\n@decimal ,\n\nThe {} is {:.1f} m wide.\n{1:.1f} m Breite: {0}\n\nsill\nFensterbank\n\n"
    "facet {}, along the wall\nSeite {}, an der Wand\n";

/// Speaks for as long as it lives.
class Speaking {
public:
    explicit Speaking(const Language& language) { speak(&language); }
    ~Speaking() { speak(nullptr); }
    Speaking(const Speaking&) = delete;
    Speaking& operator=(const Speaking&) = delete;
};

TEST(Saying, EnglishWhereNoOtherLanguageIsInForce) {
    // By hand: the pattern filled as the format library documents it.
    EXPECT_EQ(say("The {} is {:.1f} m wide.", "sill", 1.25), "The sill is 1.2 m wide.");
    EXPECT_EQ(worded("facet 2, along the wall"), "facet 2, along the wall");
    EXPECT_EQ(said_decimal(), '.');
    EXPECT_EQ(within_sentence("Sill"), "sill");
    EXPECT_EQ(within_sentence("SW gable"), "SW gable");
}

TEST(Saying, AnotherLanguagePutsWordsAndDecimalsItsOwnWay) {
    const auto language = Language::read(table);
    ASSERT_TRUE(language.ok()) << language.error().text;
    const Speaking speaking(*language);
    // By hand: the second argument first, a decimal comma (DIN 1333).
    EXPECT_EQ(say("The {} is {:.1f} m wide.", worded("sill"), 1.25), "1,2 m Breite: Fensterbank");
    EXPECT_EQ(worded("facet 2, along the wall"), "Seite 2, an der Wand");
    EXPECT_EQ(worded("a name that somebody gave"), "a name that somebody gave");
    EXPECT_EQ(said_length(Length::mm(124.0), LengthUnit::cm), "12,4 cm");
    EXPECT_EQ(within_sentence("Fensterbank"), "Fensterbank");
}

TEST(Saying, DocumentsStayEnglishOnTheThreadThatAsksForIt) {
    const auto language = Language::read(table);
    const Speaking speaking(*language);
    const EnglishHere english;
    EXPECT_EQ(worded("sill"), "sill");
    std::string elsewhere;
    std::thread([&elsewhere] { elsewhere = worded("sill"); }).join();
    EXPECT_EQ(elsewhere, "Fensterbank");
}

TEST(Saying, ATableAtFaultSaysWhere) {
    const auto unpaired = Language::read("sill\nFensterbank\n\nfloor\n\nhead\nSturz\n");
    ASSERT_FALSE(unpaired.ok());
    EXPECT_EQ(unpaired.error().where, "line 5");
    EXPECT_NE(unpaired.error().text.find("floor"), std::string::npos);
    EXPECT_FALSE(Language::read("sill\nFensterbank\n\nsill\nBrett\n").ok());
    EXPECT_FALSE(Language::read("sill").ok());
}

TEST(Saying, APatternWithOtherPlaceholdersFallsBackToEnglish) {
    const auto language = Language::read("The pole meets the {}.\nDie Stange stößt an: {3}.\n");
    const Speaking speaking(*language);
    EXPECT_EQ(say("The pole meets the {}.", "beam"), "The pole meets the beam.");
}

}  // namespace
}  // namespace truehang
