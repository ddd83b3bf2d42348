// SPDX-License-Identifier: Apache-2.0
#include "sheet/differences.h"

#include "windows.h"

#include <rapidcheck/gtest.h>

#include <algorithm>
#include <functional>
#include <string>

// What differs between two revisions, against what the trade rules say of the contract's worked example.

namespace truehang::test {
namespace {

using Change = std::function<void(Survey&)>;

Layer& layer_in(Survey& survey) { return survey.rooms.front().windows.front().layers.front(); }

Survey changed(const Change& change) {
    Survey survey = contract_example();
    change(survey);
    return survey;
}

HouseDifference since_example(const Change& change) { return written_differences(contract_example(), changed(change)); }

const DifferenceLine* find_line(const std::vector<DifferenceLine>& lines, const std::string& figure) {
    const auto found = std::ranges::find(lines, figure, &DifferenceLine::figure);
    return found == lines.end() ? nullptr : &*found;
}

void expect_line(const std::vector<DifferenceLine>& lines, const std::string& figure, const std::string& before,
                 const std::string& after, const std::string& more) {
    const DifferenceLine* line = find_line(lines, figure);
    ASSERT_NE(line, nullptr) << figure;
    EXPECT_EQ(line->before, before) << figure;
    EXPECT_EQ(line->after, after) << figure;
    EXPECT_EQ(line->more, more) << figure;
    EXPECT_NE(line->what, figure) << "it has a name for a person";
}

MadeHouse made(const Survey& survey) { return made_by(survey, work_out(survey)); }

/// Things that a later revision may have changed, some of them without a figure.
const std::vector<Change>& changes() {
    static const std::vector<Change> all{
        [](Survey& survey) { survey.title = "Another name"; },
        [](Survey& survey) { layer_in(survey).hardware->length = Length::mm(1761.5); },
        [](Survey& survey) { survey.rules.numbers["floor_clearance_mm"] = 25; },
        [](Survey& survey) { survey.fabrics.front().repeat = Length::mm(640); },
        [](Survey& survey) { layer_in(survey).treatment->lining.reset(); },
        [](Survey& survey) { layer_in(survey).treatment->layout = Word<Layout>(Layout::single); },
        [](Survey& survey) { layer_in(survey).treatment->heading = Word<Heading>(Heading::eyelet); },
        [](Survey& survey) { layer_in(survey).hardware->brackets = 5; },
        [](Survey& survey) {
            std::erase_if(survey.rooms.front().windows.front().readings,
                          [](const Reading& one) { return one.station == "pole.above"; });
        },
        [](Survey& survey) {
            Window other = survey.rooms.front().windows.front();
            other.id = "parlour-north";
            survey.rooms.front().windows.push_back(std::move(other));
        },
        [](Survey& survey) { survey.rooms.front().windows.clear(); },
    };
    return all;
}

Survey by_chance(const std::vector<int>& picks) {
    Survey survey = contract_example();
    for (const int pick : picks) {
        const auto& change = changes()[static_cast<std::size_t>(pick)];
        if (!survey.rooms.front().windows.empty()) {
            change(survey);
        }
    }
    return survey;
}

std::vector<int> some_picks() {
    return *rc::gen::resize(
        4, rc::gen::container<std::vector<int>>(rc::gen::inRange(0, static_cast<int>(changes().size()))));
}

}  // namespace

TEST(Differences, AreNoneWhereOnlyTextChanged) {
    const auto same = since_example([](Survey& survey) {
        survey.revision = 9;
        survey.title = "Pilot house, upstairs";
        survey.client->phone = "+44 1632 960 333";
        survey.rooms.front().windows.front().notes = "Ring first.";
        survey.rules.name = "the same rules, renamed";
        survey.fabrics.front().colour = "#4d7a6c";
    });
    EXPECT_TRUE(same.empty());
}

TEST(Differences, SayByHowManyMillimetresASizeDiffers) {
    const auto wider = since_example([](Survey& survey) { layer_in(survey).hardware->length = Length::mm(1760); });
    ASSERT_EQ(wider.layers.size(), 1U);
    const auto& layer = wider.layers.front();
    EXPECT_EQ(layer.title, "Parlour, south window");
    EXPECT_TRUE(layer.figures_differ);
    // Trade rules, section 4: a pair without return and overlap, each half of the pole: 1720 / 2 and 1760 / 2.
    expect_line(layer.lines, "finished.width_mm", "860 mm", "880 mm", "+20 mm");
    expect_line(layer.lines, "hardware.length_mm", "1720 mm", "1760 mm", "+40 mm");
    EXPECT_EQ(find_line(layer.lines, "finished.drop_mm"), nullptr);

    const auto shorter =
        since_example([](Survey& survey) { survey.rules.numbers["floor_clearance_mm"] = 25; });  // a house rule counts
    ASSERT_EQ(shorter.layers.size(), 1U);
    // Trade rules, section 4: 15 mm more clearance than the 10 of the example's rules, 15 mm less drop.
    expect_line(shorter.layers.front().lines, "finished.drop_mm", "1992 mm", "1977 mm", "−15 mm");
}

TEST(Differences, SayByHowManyMetresAnOrderDiffers) {
    const auto more = since_example([](Survey& survey) { survey.fabrics.front().repeat = Length::mm(640); });
    ASSERT_EQ(more.layers.size(), 1U);
    // Trade rules, section 5: two drops of 2240 go up to four repeats of 640, 2560 each, 0.32 m more each; with the
    // two rows of tabs of 205 the order is 4.89 m before and 5.53 m then, sold by the tenth of a metre.
    expect_line(more.layers.front().lines, "cloth.cut_drop_mm", "2240 mm", "2560 mm", "+320 mm");
    expect_line(more.layers.front().lines, "cloth.length_mm", "4.48 m", "5.12 m", "+0.64 m");
    expect_line(more.bought, "orders.sailcloth.length_mm", "4.89 m", "5.53 m", "+0.64 m");
    expect_line(more.bought, "orders.sailcloth.order_m", "4.90 m", "5.60 m", "+0.70 m");
    EXPECT_EQ(find_line(more.bought, "orders.sailcloth.order_m")->what, "Herring sailcloth, to order");
}

TEST(Differences, SayWhatCameAndWhatWent) {
    const auto unlined = since_example([](Survey& survey) { layer_in(survey).treatment->lining.reset(); });
    // The contract's answer to its example: two drops of sateen lining of 2110.
    expect_line(unlined.layers.front().lines, "lining.length_mm", "4.22 m", "", "");

    const auto without = since_example([](Survey& survey) {
        std::erase_if(survey.rooms.front().windows.front().readings,
                      [](const Reading& one) { return one.station == "pole.above"; });
    });
    ASSERT_EQ(without.layers.size(), 1U);
    EXPECT_TRUE(without.layers.front().figures_differ);
    const auto& lines = without.layers.front().lines;
    EXPECT_TRUE(std::ranges::any_of(lines, [](const DifferenceLine& line) {
        return line.flag && line.before.empty() && line.what == "Stop" && line.after.ends_with('.');
    })) << "a flag that came";
    expect_line(lines, "finished.drop_mm", "1992 mm", "", "");

    const auto gone = since_example([](Survey& survey) { survey.rooms.front().windows.clear(); });
    ASSERT_EQ(gone.layers.size(), 1U);
    EXPECT_TRUE(gone.layers.front().went);
    const auto came =
        written_differences(changed([](Survey& survey) { survey.rooms.front().windows.clear(); }), contract_example());
    ASSERT_EQ(came.layers.size(), 1U);
    EXPECT_TRUE(came.layers.front().came);
}

TEST(Differences, AreWrittenInInchesWhereTheSurveyWas) {
    const auto wider =
        written_differences(changed([](Survey& survey) { survey.entry_unit = "in"; }), changed([](Survey& survey) {
                                survey.entry_unit = "in";
                                layer_in(survey).hardware->length = Length::mm(1720 + 50.8);
                            }));
    ASSERT_EQ(wider.layers.size(), 1U);
    // 25.4 mm to the inch exactly (the international yard and pound agreement of 1959): 50.8 mm is two.
    EXPECT_EQ(find_line(wider.layers.front().lines, "hardware.length_mm")->more, "+2 in");
}

TEST(Differences, HaveADigestThatTellsWhetherAFigureDiffers) {
    const auto digest = [](const Survey& survey) { return digest_text(made(survey).layers.front()); };
    const auto example = digest(contract_example());
    EXPECT_EQ(digest(changed([](Survey& survey) { survey.title = "Another name"; })), example);
    EXPECT_EQ(digest(read_survey(write_survey(contract_example())).value()), example) << "after it has travelled";
    EXPECT_NE(digest(changed([](Survey& survey) { layer_in(survey).hardware->length = Length::mm(1721); })), example);
    EXPECT_NE(example.find("finished.drop_mm=1992\n"), std::string::npos);
}

RC_GTEST_PROP(DifferencesLaw, ARevisionDiffersInNothingFromItself, ()) {
    const Survey survey = by_chance(some_picks());
    RC_ASSERT(written_differences(survey, survey).empty());
}

RC_GTEST_PROP(DifferencesLaw, ThereAndBackAgainIsMinusIt, ()) {
    const MadeHouse one = made(by_chance(some_picks()));
    const MadeHouse other = made(by_chance(some_picks()));
    for (const MadeLayer& then : one.layers) {
        const MadeLayer* now = find_layer(other, then.room, then.window, then.layer);
        if (now == nullptr) {
            continue;
        }
        const auto there = differences(then.figures, now->figures);
        const auto back = differences(now->figures, then.figures);
        RC_ASSERT(there.size() == back.size());
        RC_ASSERT((digest_text(then) == digest_text(*now)) ==
                  std::ranges::all_of(there, [](const FigureDifference& differs) {
                      const auto& value = differs.after ? *differs.after : *differs.before;
                      return is_flag(differs.figure) && value.value != "stop" && value.value != "remeasure";
                  }));
        for (const FigureDifference& difference : there) {
            const auto same = std::ranges::find(back, difference.figure, &FigureDifference::figure);
            RC_ASSERT(same != back.end());
            RC_ASSERT(same->before == difference.after && same->after == difference.before);
            RC_ASSERT(same->more.has_value() == difference.more.has_value());
            RC_ASSERT(same->more.value_or(0.0) == -difference.more.value_or(0.0));
        }
    }
}

}  // namespace truehang::test
