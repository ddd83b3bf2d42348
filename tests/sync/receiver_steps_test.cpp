// SPDX-License-Identifier: Apache-2.0
// What was ordered, cut, made and hung of each layer, and what a later revision has changed since.
#include "older_records.h"
#include "protocol/marks.h"
#include "protocol/paths.h"
#include "receiver_process.h"

#include <gtest/gtest.h>
#include <csignal>
#include <nlohmann/json.hpp>

using namespace truehang::sync;
using namespace truehang::sync::test;
using Json = nlohmann::json;

namespace {

const std::string id = "01924f6a-7c00-7000-8000-0000000000b1";
const std::string page_path = "/surveys/" + id + "/steps";
const std::string layer = "/parlour/parlour-south/";

bool has(const Reply& page, const std::string& text) { return page.body.find(text) != std::string::npos; }

Fields bearer(const std::string& token) { return {{"Authorization", "Bearer " + token}}; }

/// A revision of the worked example whose pole is so long, in mm.
std::string with_pole(long long revision, double length) {
    auto survey = Json::parse(example_survey(id, revision));
    survey["rooms"][0]["windows"][0]["hardware"]["length_mm"] = length;
    return survey.dump();
}

/// As a browser sends a form of this site.
Reply post(const Receiver& receiver, const std::string& path, const std::string& body, Fields more = {}) {
    const auto here = "127.0.0.1:" + std::to_string(receiver.port());
    more.insert(more.end(),
                {{"Content-Type", "application/x-www-form-urlencoded"}, {"Host", here}, {"Origin", "http://" + here}});
    return receiver.ask("POST", path, more, body);
}

std::string form(const std::string& mark, int revision, const std::string& by = "Ann") {
    return "by=" + by + "&revision=" + std::to_string(revision) + "&mark=" + percent_encode(mark);
}

struct Steps {
    TemporaryFolder folder;
    Receiver receiver{folder.path()};
    std::string token = receiver.pair();

    Steps() { send(1, 1720); }
    void send(long long revision, double pole) const {
        EXPECT_EQ(receiver.put_survey(token, id, revision, with_pole(revision, pole)).status, 201);
    }
    [[nodiscard]] Reply mark(const std::string& what, int revision) const {
        return post(receiver, page_path, form(what + layer, revision));
    }
    [[nodiscard]] Reply page(const std::string& path = page_path) const { return receiver.ask("GET", path); }
    [[nodiscard]] LayerMarks marks() const {
        const auto reply = receiver.ask("GET", marks_path(id), bearer(token));
        EXPECT_EQ(reply.status, 200) << reply.body;
        return read_marks(reply.body).value();
    }
};

}  // namespace

TEST(Steps, areMarkedByAPersonAndTakenBackByAnotherMark) {
    const Steps steps;
    EXPECT_TRUE(has(steps.page("/surveys/" + id), "href=\"" + page_path + "\""));
    EXPECT_TRUE(has(steps.page(), "Mark as cut"));
    EXPECT_TRUE(steps.marks().marks.empty());
    const auto marked = steps.mark("set/cut", 1);
    ASSERT_EQ(marked.status, 303) << marked.body;
    EXPECT_EQ(marked.headers.at("location"), page_path + "?by=Ann#layer-1");
    EXPECT_TRUE(has(steps.page(page_path + "?by=Ann"), "value=\"Ann\"")) << "the name stays in the form";
    EXPECT_TRUE(has(steps.page(), "Cut from revision 1"));
    EXPECT_TRUE(has(steps.page(), ", by Ann"));
    EXPECT_TRUE(has(steps.page("/surveys/" + id), "Cut from revision 1"));
    ASSERT_EQ(steps.mark("set/cut", 1).status, 303);
    EXPECT_EQ(steps.marks().marks.size(), 1U) << "the same twice is one mark";

    ASSERT_EQ(steps.mark("back/cut", 1).status, 303);
    EXPECT_FALSE(has(steps.page(), "Cut from revision 1"));
    const auto marks = steps.marks().marks;
    ASSERT_EQ(marks.size(), 2U) << "what was marked stays written down";
    EXPECT_EQ(marks[0].step, Step::cut);
    EXPECT_EQ(marks[0].by, "Ann");
    EXPECT_EQ(marks[0].window, "parlour-south");
    EXPECT_TRUE(marks[0].done);
    EXPECT_FALSE(marks[1].done);
    EXPECT_TRUE(standing_marks(marks).empty());
}

// Trade rules, section 4: a pair without return and overlap, each half of the pole: 1720 / 2 is 860, 1760 / 2 is 880.
TEST(Steps, standBesideALaterRevisionWithWhatDiffers) {
    const Steps steps;
    ASSERT_EQ(steps.mark("set/ordered", 1).status, 303);
    ASSERT_EQ(steps.mark("set/cut", 1).status, 303);
    steps.send(2, 1760);
    const auto page = steps.page();
    EXPECT_TRUE(has(page, "Cut from revision 1")) << "it was cut from the revision that it was cut from";
    EXPECT_TRUE(has(page, "figures differ since"));
    EXPECT_TRUE(has(page, "From revision 1 to revision 2"));
    EXPECT_TRUE(
        has(page, "<td data-figure=\"finished.width_mm\">860 mm</td><td>880 mm</td><td class=\"number\">+20 mm</td>"))
        << page.body;
    EXPECT_FALSE(has(page, "figures are the same"));
    EXPECT_TRUE(has(steps.page("/surveys/" + id), "The figures differ since it was marked:"));

    ASSERT_EQ(steps.mark("set/cut", 2).status, 303);
    EXPECT_TRUE(has(steps.page(), "Cut from revision 2"));
    EXPECT_TRUE(has(steps.page(), "figures differ since")) << "it is still ordered from revision 1";
    ASSERT_EQ(steps.mark("set/ordered", 2).status, 303);
    EXPECT_FALSE(has(steps.page(), "differ since"));
    EXPECT_FALSE(has(steps.page("/surveys/" + id), "differ since"));
}

// Trade rules, section 5: two drops of 2240 go up to four repeats of 640, 2560 each; with two rows of tabs of 205 the
// order is 4.89 m before and 5.53 m then.
TEST(Steps, sayByHowManyMetresTheOrderDiffers) {
    const Steps steps;
    ASSERT_EQ(steps.mark("set/ordered", 1).status, 303);
    auto survey = Json::parse(with_pole(2, 1720));
    survey["fabrics"][0]["repeat_mm"] = 640;
    ASSERT_EQ(steps.receiver.put_survey(steps.token, id, 2, survey.dump()).status, 201);
    EXPECT_TRUE(has(steps.page(),
                    "<th scope=\"row\">Herring sailcloth, cut in all</th><td "
                    "data-figure=\"orders.sailcloth.length_mm\">4.89 m</td><td>5.53 m</td><td "
                    "class=\"number\">+0.64 m</td>"))
        << steps.page().body;
}

TEST(Steps, sayThatTheFiguresAreTheSameWhereOnlyWordsChanged) {
    const Steps steps;
    ASSERT_EQ(steps.mark("set/made", 1).status, 303);
    auto survey = Json::parse(with_pole(2, 1720));
    survey["title"] = "Pilot house, upstairs";
    ASSERT_EQ(steps.receiver.put_survey(steps.token, id, 2, survey.dump()).status, 201);
    EXPECT_TRUE(has(steps.page(), "Made from revision 1"));
    EXPECT_TRUE(has(steps.page(), "The figures are the same."));
    EXPECT_FALSE(has(steps.page(), "differ since"));
}

TEST(Steps, keepALayerThatALaterRevisionNoLongerHas) {
    const Steps steps;
    ASSERT_EQ(steps.mark("set/hung", 1).status, 303);
    auto survey = Json::parse(with_pole(2, 1720));
    survey["rooms"][0]["windows"] = Json::array();
    ASSERT_EQ(steps.receiver.put_survey(steps.token, id, 2, survey.dump()).status, 201);
    EXPECT_TRUE(has(steps.page(), "Hung from revision 1"));
    EXPECT_TRUE(has(steps.page(), "No longer in revision 2."));
    EXPECT_TRUE(has(steps.page(), "Parlour, south window"));
    EXPECT_EQ(steps.mark("set/hung", 2).status, 422);
}

TEST(Steps, refuseWhatCantBeMarkedAndSayWhy) {
    const Steps steps;
    const auto nameless = post(steps.receiver, page_path, form("set/cut" + layer, 1, "+"));
    EXPECT_EQ(nameless.status, 422);
    EXPECT_TRUE(has(nameless, "say who marks it"));
    EXPECT_EQ(steps.mark("set/cut", 7).status, 422) << "a revision that isn’t here";
    EXPECT_EQ(post(steps.receiver, page_path, form("set/cut/parlour/attic/", 1)).status, 422);
    EXPECT_EQ(post(steps.receiver, page_path, form("set/sold" + layer, 1)).status, 400);
    EXPECT_EQ(post(steps.receiver, "/surveys/elsewhere/steps", form("set/cut" + layer, 1)).status, 404);
    EXPECT_EQ(steps.receiver.ask("GET", marks_path("elsewhere")).status, 404);
    EXPECT_EQ(post(steps.receiver, page_path, form("set/cut" + layer, 1, std::string(70000, 'a'))).status, 413);
    const auto no_text = post(steps.receiver, page_path, form("set/cut" + layer, 1, "Ann%FF"));
    EXPECT_EQ(no_text.status, 422);
    EXPECT_TRUE(has(no_text, "isn’t text in UTF-8")) << no_text.body;
    EXPECT_TRUE(steps.marks().marks.empty());
    ASSERT_EQ(post(steps.receiver, page_path, form("set/cut" + layer, 1, "%3Cb%3E")).status, 303);
    EXPECT_TRUE(has(steps.page(), "by &lt;b&gt;")) << "a name is shown, not run";
}

TEST(Steps, areMarkedByNoOtherSiteAndByNoDevice) {
    const TemporaryFolder folder;
    const Receiver receiver(folder.path(), {"--sign-in"});
    const auto token = receiver.pair();
    ASSERT_EQ(receiver.put_survey(token, id, 1, with_pole(1, 1720)).status, 201);
    EXPECT_EQ(receiver.ask("GET", page_path).status, 401);
    EXPECT_EQ(post(receiver, page_path, form("set/cut" + layer, 1)).status, 401);
    EXPECT_EQ(post(receiver, page_path, form("set/cut" + layer, 1), bearer(token)).status, 401);
    EXPECT_EQ(receiver.ask("GET", marks_path(id)).status, 401);
    EXPECT_EQ(receiver.ask("GET", marks_path(id), bearer(token)).status, 200) << "a device may read them";
    const Steps open;
    EXPECT_EQ(
        open.receiver.ask("POST", page_path, {{"Origin", "http://elsewhere.example.org"}}, form("set/cut" + layer, 1))
            .status,
        400);
    EXPECT_TRUE(open.marks().marks.empty());
}

TEST(Steps, areMarkedForTheWholeHouseAtOnce) {
    const Steps steps;
    auto survey = Json::parse(with_pole(2, 1720));
    auto other = survey["rooms"][0]["windows"][0];
    other["id"] = "parlour-north";
    survey["rooms"][0]["windows"].push_back(other);
    ASSERT_EQ(steps.receiver.put_survey(steps.token, id, 2, survey.dump()).status, 201);
    EXPECT_TRUE(has(steps.page(), "Mark all as ordered"));
    ASSERT_EQ(post(steps.receiver, page_path, form("set/ordered", 2)).status, 303);
    EXPECT_EQ(steps.marks().marks.size(), 2U);
}

TEST(Steps, goWithTheirSurveyIntoAFileAndOutOfTheRecordsWithIt) {
    const TemporaryFolder out;
    const auto zip = (out.path() / "visit.zip").string();
    const auto other = (out.path() / "other").string();
    LayerMarks marks;
    {
        Steps steps;
        ASSERT_EQ(steps.mark("set/cut", 1).status, 303);
        ASSERT_EQ(steps.mark("back/cut", 1).status, 303);
        ASSERT_EQ(steps.mark("set/ordered", 1).status, 303);
        marks = steps.marks();
        const auto data = steps.folder.path().string();
        const auto run = [&](std::vector<std::string> words) {
            words.insert(words.begin(), TRUEHANG_WORKROOM);
            return run_program(words);
        };
        EXPECT_EQ(run({"verify", "--data", data}).exit_code, 0);
        ASSERT_EQ(run({"export", "--data", data, id, zip}).exit_code, 0);
        ASSERT_EQ(run({"erase", "--data", data, id}).exit_code, 0);
        EXPECT_EQ(steps.page().status, 404);
        EXPECT_EQ(post(steps.receiver, page_path, form("set/cut" + layer, 1)).status, 404);
        EXPECT_EQ(file_text(steps.folder.path() / "workroom.sqlite").find("parlour-south"), std::string::npos);
    }
    {
        const Receiver made(other);
        static_cast<void>(made);
    }
    const auto imported = run_program({TRUEHANG_WORKROOM, "import", "--data", other, zip});
    ASSERT_EQ(imported.exit_code, 0) << imported.err;
    EXPECT_EQ(run_program({TRUEHANG_WORKROOM, "import", "--data", other, zip}).exit_code, 0) << "again is no fault";
    const Receiver receiver(other);
    const auto there = receiver.ask("GET", marks_path(id));
    ASSERT_EQ(there.status, 200);
    EXPECT_EQ(read_marks(there.body).value(), marks);
    ASSERT_EQ(post(receiver, page_path, form("set/made" + layer, 1)).status, 303);
    EXPECT_EQ(run_program({TRUEHANG_WORKROOM, "import", "--data", other, zip}).exit_code, 0) << "more marks stay";
}

// A copy may be brought back without a revision that wasn’t whole: what was marked against it can still be taken back.
TEST(Steps, ofARevisionThatIsNotHereAreTakenBack) {
    const TemporaryFolder folder;
    {
        Receiver receiver(folder.path());
        const auto token = receiver.pair();
        ASSERT_EQ(receiver.put_survey(token, id, 1, with_pole(1, 1720)).status, 201);
        ASSERT_EQ(receiver.put_survey(token, id, 2, with_pole(2, 1720)).status, 201);
        ASSERT_EQ(post(receiver, page_path, form("set/cut" + layer, 1)).status, 303);
        receiver.end(SIGTERM);
    }
    SQLite::Database((folder.path() / "workroom.sqlite").string(), SQLite::OPEN_READWRITE)
        .exec("DELETE FROM revision WHERE revision = 1");
    const Receiver receiver(folder.path());
    ASSERT_EQ(post(receiver, page_path, form("back/cut" + layer, 1)).status, 303);
    const auto marks = read_marks(receiver.ask("GET", marks_path(id)).body).value().marks;
    ASSERT_EQ(marks.size(), 2U);
    EXPECT_FALSE(marks[1].done);
}

TEST(Steps, thatAreLeftOutOfWhatIsBroughtBackDontStandInTheList) {
    const TemporaryFolder out;
    Steps steps;
    ASSERT_EQ(steps.mark("set/cut", 1).status, 303);
    ASSERT_TRUE(has(steps.page("/?state=cut"), "Pilot house"));
    steps.receiver.end(SIGTERM);
    SQLite::Database((steps.folder.path() / "workroom.sqlite").string(), SQLite::OPEN_READWRITE)
        .exec("UPDATE layer_mark SET step = 'sold'");
    const auto copy = (out.path() / "copy").string();
    const auto back = (out.path() / "back").string();
    static_cast<void>(run_program({TRUEHANG_WORKROOM, "backup", "--data", steps.folder.path().string(), copy}));
    const auto restored = run_program({TRUEHANG_WORKROOM, "restore", "--what-is-whole", "--data", back, copy});
    const Receiver receiver(back);
    EXPECT_FALSE(has(receiver.ask("GET", "/?state=cut"), "Pilot house")) << restored.err;
    EXPECT_TRUE(has(receiver.ask("GET", "/?state=new"), "Pilot house")) << restored.err;
}

TEST(Marks, areReadAsTheyWereWrittenAndRefusedWhereTheyAreNot) {
    const std::string digest(64, 'a');
    const LayerMarks marks{"s",
                           {{1, "r", "w", "", Step::cut, true, 3, digest, "Ann", "2026-03-14T09:00:00.000Z"},
                            {2, "r", "w", "", Step::cut, false, 3, "", "Ann", "2026-03-14T10:00:00.000Z"},
                            {4, "r", "w", "sheer", Step::hung, true, 3, digest, "Bo", "2026-03-15T10:00:00.000Z"}}};
    const auto text = write_marks(marks);
    EXPECT_EQ(read_marks(text).value(), marks);
    const auto standing = standing_marks(marks.marks);
    ASSERT_EQ(standing.size(), 1U);
    EXPECT_EQ(standing[0].number, 4);
    for (const auto& [was, is, where] : {std::tuple{"truehang.marks/1", "truehang.marks/2", "/format"},
                                         std::tuple{"\"hung\"", "\"sold\"", "/marks/2/step"},
                                         std::tuple{"\"number\": 2", "\"number\": 1", "/marks/1/number"},
                                         std::tuple{"\"done\": false", "\"done\": 0", "/marks/1/done"},
                                         std::tuple{"\"by\": \"Bo\"", "\"by\": \"\"", "/marks/2/by"}}) {
        auto changed = text;
        changed.replace(changed.find(was), std::string(was).size(), is);
        const auto read = read_marks(changed);
        ASSERT_FALSE(read.ok()) << where;
        EXPECT_EQ(read.error().where, where);
    }
}
