// SPDX-License-Identifier: Apache-2.0
// The code on a printed sheet and the page that it leads to; the list by what is done; what was agreed.
#include "older_records.h"
#include "protocol/digest.h"
#include "protocol/paths.h"
#include "protocol/sheet_code.h"
#include "receiver_process.h"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

using namespace truehang::sync;
using namespace truehang::sync::test;
using Json = nlohmann::json;

namespace {

const std::string id = "01924f6a-7c00-7000-8000-0000000000c1";

bool has(const Reply& page, const std::string& text) { return page.body.find(text) != std::string::npos; }

Json example(const std::string& survey, long long revision, double pole = 1720) {
    auto json = Json::parse(example_survey(survey, revision));
    json["rooms"][0]["windows"][0]["hardware"]["length_mm"] = pole;
    return json;
}

/// What the contract's answer to its example says was agreed: two of 860 × 1992, 4.89 m of sailcloth, 4.22 m of sateen.
Json agreement() {
    return Json::parse(R"({"by": "R. Oduya", "at": "2026-03-14T11:40:00+00:00", "agreed": {"rules": "house rules 2026",
        "revision": 1, "layers": [{"window": "parlour-south", "title": "Parlour, south window", "says": "Tab headed pair",
        "heading": "tab", "curtains": 2, "width_mm": 860, "drop_mm": 1992, "cloths": [
        {"fabric": "sailcloth", "name": "Herring sailcloth, chalk", "length_mm": 4890},
        {"fabric": "sateen", "name": "Cotton sateen lining, dove grey", "length_mm": 4220}]}]}})");
}

struct Workroom {
    TemporaryFolder folder;
    Receiver receiver{folder.path()};
    std::string token = receiver.pair();

    std::string send(const Json& survey) const {
        const auto bytes = survey.dump();
        EXPECT_EQ(receiver.put_survey(token, survey["id"], survey["revision"], bytes).status, 201);
        return sheet_code(hex(sha256(bytes)));
    }
    [[nodiscard]] Reply page(const std::string& path) const { return receiver.ask("GET", path); }
    void mark(const std::string& survey, const std::string& what, int revision) const {
        const auto here = "127.0.0.1:" + std::to_string(receiver.port());
        const auto body =
            "by=Ann&revision=" + std::to_string(revision) + "&mark=" + percent_encode(what + "/parlour/parlour-south/");
        EXPECT_EQ(receiver
                      .ask("POST", "/surveys/" + survey + "/steps",
                           {{"Content-Type", "application/x-www-form-urlencoded"},
                            {"Host", here},
                            {"Origin", "http://" + here}},
                           body)
                      .status,
                  303);
    }
    /// Whether the list shows a survey under a state.
    [[nodiscard]] bool lists(const std::string& state, const std::string& survey) const {
        return has(page("/?state=" + state), "href=\"/surveys/" + survey + "\"");
    }
};

}  // namespace

// FIPS 180-4's example: SHA-256 of "abc" begins ba7816bf 8f01cfea. Its first 60 bits in fives by hand: 23 9 28 1 13 15
// 28 15 0 7 7 30.
TEST(SheetCode, isTheBeginningOfTheDigest) {
    EXPECT_EQ(sheet_code(hex(sha256("abc"))), "Q9W1-DFWF-077Y");
    EXPECT_EQ(read_sheet_code("q9wl dfwf o77y"), "ba7816bf8f01cfe") << "as people type it";
    EXPECT_FALSE(read_sheet_code("Q9W1-DFWF-077"));
    EXPECT_FALSE(read_sheet_code("Q9W1-DFWF-077Y0"));
    EXPECT_FALSE(read_sheet_code("Q9W1-DFWF-077U"));
    EXPECT_EQ(sheet_code("abc"), "");
}

TEST(SheetCode, standsOnEverySheetAndLeadsToWhetherItIsCurrent) {
    const Workroom workroom;
    const auto first = workroom.send(example(id, 1));
    for (const auto* kind : {"measure", "cutting", "making", "hanging"}) {
        const auto sheet = workroom.page("/surveys/" + id + "/sheets/" + kind);
        EXPECT_TRUE(has(sheet, "<strong>" + first + "</strong>")) << kind;
        EXPECT_TRUE(has(sheet, "revision 1, came in ")) << kind;
        EXPECT_TRUE(has(sheet, "/sheet/" + first)) << kind;
        EXPECT_TRUE(has(sheet, "class=\"picture-code\"")) << kind;
    }
    EXPECT_TRUE(has(workroom.page("/sheet/" + first), "Revision 1: current"));

    // Trade rules, section 4: each half of the pole, 1720 / 2 and 1760 / 2.
    const auto second = workroom.send(example(id, 2, 1760));
    const auto superseded = workroom.page("/sheet/" + first);
    EXPECT_EQ(superseded.status, 200);
    EXPECT_TRUE(has(superseded, "Revision 1: superseded"));
    EXPECT_TRUE(has(superseded, "don’t cut from this sheet"));
    EXPECT_TRUE(has(superseded, "<td class=\"number\">+20 mm</td>")) << superseded.body;
    EXPECT_FALSE(has(superseded, "current"));
    EXPECT_TRUE(has(workroom.page("/sheet/" + second), "Revision 2: current"));

    auto renamed = example(id, 3, 1760);
    renamed["title"] = "Pilot house, upstairs";
    workroom.send(renamed);
    EXPECT_TRUE(has(workroom.page("/sheet/" + second), "Revision 2: superseded"));
    EXPECT_TRUE(has(workroom.page("/sheet/" + second), "The figures are the same."));
}

TEST(SheetCode, saysWhatIsErasedAndWhatIsNotHere) {
    const Workroom workroom;
    const auto code = workroom.send(example(id, 1));
    EXPECT_EQ(workroom.page("/sheet/Q9W1-DFWF-077Y").status, 404);
    EXPECT_EQ(workroom.page("/sheet/1").status, 404);
    EXPECT_EQ(workroom.page("/sheet/%00").status, 404);
    ASSERT_EQ(run_workroom("erase", workroom.folder.path(), {id}).exit_code, 0);
    const auto erased = workroom.page("/sheet/" + code);
    EXPECT_EQ(erased.status, 410);
    EXPECT_TRUE(has(erased, "was erased here for good"));
    const TemporaryFolder folder;
    const Receiver strict(folder.path(), {"--sign-in"});
    EXPECT_EQ(strict.ask("GET", "/sheet/" + code).status, 401);
}

TEST(ListByState, showsASurveyUnderEachStepThatOneOfItsLayersIsAt) {
    const Workroom workroom;
    const std::string other = "01924f6a-7c00-7000-8000-0000000000c2";
    workroom.send(example(id, 1));
    workroom.send(example(other, 1));
    EXPECT_TRUE(workroom.lists("new", id));
    workroom.mark(id, "set/ordered", 1);
    workroom.mark(id, "set/cut", 1);
    EXPECT_FALSE(workroom.lists("new", id));
    EXPECT_FALSE(workroom.lists("ordered", id)) << "it is further";
    EXPECT_TRUE(workroom.lists("cut", id));
    EXPECT_FALSE(workroom.lists("cut", other));
    EXPECT_FALSE(workroom.lists("changed", id));
    EXPECT_TRUE(has(workroom.page("/"), ">1 cut"));
    EXPECT_TRUE(workroom.lists("cut&find=pilot", id));
    EXPECT_FALSE(workroom.lists("cut&find=loft", id));

    workroom.send(example(id, 2, 1760));
    EXPECT_TRUE(workroom.lists("changed", id)) << "found by the revision that came";
    EXPECT_TRUE(workroom.lists("cut", id));
    workroom.mark(id, "set/cut", 2);
    workroom.mark(id, "set/ordered", 2);
    EXPECT_FALSE(workroom.lists("changed", id));
    workroom.mark(id, "back/cut", 2);
    EXPECT_TRUE(workroom.lists("ordered", id));
    EXPECT_TRUE(has(workroom.page("/?state=%3Cb%3E"), "/surveys/" + id)) << "no such state: all of them";
}

TEST(Agreement, isSaidOnPageListAndSheetWhereFiguresDifferSince) {
    const Workroom workroom;
    auto survey = example(id, 1);
    survey["signed_off"] = agreement();
    workroom.send(survey);
    EXPECT_TRUE(
        has(workroom.page("/surveys/" + id), "Agreed on revision 1 by R. Oduya, and the figures are as agreed."));
    EXPECT_TRUE(workroom.lists("agreed", id));
    EXPECT_FALSE(workroom.lists("agreed-changed", id));
    survey["revision"] = 2;
    // Trade rules, section 4: each half of the pole, 1760 / 2 is 880, 20 more than agreed.
    survey["rooms"][0]["windows"][0]["hardware"]["length_mm"] = 1760;
    workroom.send(survey);
    const auto page = workroom.page("/surveys/" + id);
    EXPECT_TRUE(has(page, "Agreed on revision 1 by R. Oduya, figures differ since."));
    EXPECT_TRUE(
        has(page, "<td data-figure=\"finished.width_mm\">860 mm</td><td>880 mm</td><td class=\"number\">+20 mm</td>"));
    EXPECT_TRUE(workroom.lists("agreed-changed", id));
    EXPECT_TRUE(has(workroom.page("/"), "agreed, differs since"));
    for (const auto* kind : {"measure", "cutting", "making", "hanging"}) {
        EXPECT_TRUE(has(workroom.page("/surveys/" + id + "/sheets/" + kind),
                        "Agreed on revision 1 by R. Oduya, figures differ since."))
            << kind;
    }

    auto without = example(id, 3);
    without.erase("signed_off");
    workroom.send(without);
    EXPECT_TRUE(has(workroom.page("/surveys/" + id), "An earlier revision was signed; this one carries no agreement."));
    EXPECT_TRUE(workroom.lists("agreed-changed", id)) << "a signature can’t go unseen";
}

TEST(Agreement, isSeenWhicheverRevisionCameFirst) {
    const Workroom workroom;
    auto later = example(id, 3);
    later.erase("signed_off");
    workroom.send(later);
    EXPECT_FALSE(workroom.lists("agreed", id));
    auto survey = example(id, 2);
    survey["signed_off"] = agreement();
    workroom.send(survey);
    EXPECT_TRUE(has(workroom.page("/surveys/" + id), "An earlier revision was signed; this one carries no agreement."));
    EXPECT_TRUE(workroom.lists("agreed-changed", id));
}

// Which revisions were signed is written down since version 11. Records that began at 8, 9 or 10 may have the table
// already; those that came to these versions from 7 haven’t, and then nothing could be marked or sent any more.
TEST(Agreement, isFoundInRecordsOfEarlierVersionsWithTheirTableOrWithout) {
    const TemporaryFolder folder;
    {
        Receiver receiver(folder.path());
        const auto token = receiver.pair();
        auto survey = example(id, 1);
        survey["signed_off"] = agreement();
        ASSERT_EQ(receiver.put_survey(token, id, 1, survey.dump()).status, 201);
        auto without = example(id, 2);
        without.erase("signed_off");
        ASSERT_EQ(receiver.put_survey(token, id, 2, without.dump()).status, 201);
        receiver.end(SIGTERM);
    }
    for (const int version : {10, 9, 8}) {
        for (const bool with_table : {true, false}) {
            make_older(folder.path(), version);
            run_on_records(folder.path(), "DELETE FROM head_state WHERE state = 'agreed-changed'");
            if (with_table) {
                run_on_records(folder.path(),
                               "CREATE TABLE agreed_revision(survey TEXT NOT NULL, revision BIGINT NOT NULL,"
                               " PRIMARY KEY(survey, revision))");
            }
            Receiver receiver(folder.path());
            const auto list = receiver.ask("GET", "/?state=agreed-changed");
            EXPECT_TRUE(has(list, "href=\"/surveys/" + id + "\"")) << version << (with_table ? " with it" : " without");
            receiver.end(SIGTERM);
        }
    }
}

TEST(Agreement, isNotTakenForSignedWhereItsSealDoesntFit) {
    const Workroom workroom;
    auto survey = example(id, 1);
    survey["signed_off"] = agreement();
    survey["signed_off"]["agreed"]["digest"] = std::string(64, 'a');
    workroom.send(survey);
    const auto page = workroom.page("/surveys/" + id);
    EXPECT_TRUE(has(page, "its seal doesn’t fit"));
    EXPECT_FALSE(has(page, "figures are as agreed"));
}
