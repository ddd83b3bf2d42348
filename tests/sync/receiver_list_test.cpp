// SPDX-License-Identifier: Apache-2.0
#include "older_records.h"
#include "protocol/digest.h"
#include "protocol/paths.h"
#include "protocol/problem.h"
#include "receiver_process.h"

#include <fmt/format.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <atomic>
#include <csignal>
#include <map>
#include <numeric>
#include <thread>

// The list of what came in, its search and its pages, and the order of arrival that a client follows by a cursor.

using namespace truehang::sync;
using namespace truehang::sync::test;
using Json = nlohmann::json;

namespace {

std::string id_of(int number) { return fmt::format("01924f6a-7c00-7000-8000-{:012}", number); }

Fields bearer(const std::string& token) { return {{"Authorization", "Bearer " + token}}; }

bool has(const Reply& page, const std::string& text) { return page.body.find(text) != std::string::npos; }

/// The surveys that a page of the list leads to, in its order.
std::vector<std::string> surveys_on(const Reply& page) {
    static const std::string mark = "<th scope=\"row\"><a href=\"/surveys/";
    std::vector<std::string> ids;
    for (auto at = page.body.find(mark); at != std::string::npos; at = page.body.find(mark, at + 1)) {
        const auto start = at + mark.size();
        ids.push_back(page.body.substr(start, page.body.find('"', start) - start));
    }
    return ids;
}

/// Where a word of the list's foot leads; empty where it isn't there.
std::string leads(const Reply& page, const std::string& word) {
    const auto end = page.body.find("\">" + word + "</a>");
    if (end == std::string::npos) {
        return {};
    }
    static const std::string mark = "<a href=\"";
    const auto start = page.body.rfind(mark, end) + mark.size();
    auto href = page.body.substr(start, end - start);
    for (auto at = href.find("&amp;"); at != std::string::npos; at = href.find("&amp;")) {
        href.replace(at, 5, "&");
    }
    return href;
}

std::string survey_of(int number, const std::string& title, const std::string& client, long long revision = 1) {
    auto survey = Json::parse(example_survey(id_of(number), revision, title));
    survey["client"]["name"] = client;
    return survey.dump();
}

Json changes(const Receiver& receiver, const std::string& token, const std::string& query = {}) {
    const auto reply = receiver.ask("GET", "/changes" + query, bearer(token));
    EXPECT_EQ(reply.status, 200) << reply.body;
    return Json::parse(reply.body);
}

}  // namespace

TEST(List, isSearchedByTheBeginningsOfWords) {
    const TemporaryFolder folder;
    const Receiver receiver(folder.path());
    const auto token = receiver.pair();
    ASSERT_EQ(receiver.put_survey(token, id_of(1), 1, survey_of(1, "Pilot house", "Ägnes Örd")).status, 201);
    ASSERT_EQ(receiver.put_survey(token, id_of(2), 1, survey_of(2, "Sail loft", "J. O'Dell <b>")).status, 201);
    const auto found = [&](const std::string& words) {
        return surveys_on(receiver.ask("GET", "/?find=" + percent_encode(words)));
    };
    EXPECT_EQ(found("pilot"), std::vector{id_of(1)});
    EXPECT_EQ(found("ägn HOU"), std::vector{id_of(1)}) << "capitals and small letters, in any order";
    EXPECT_EQ(found("lo"), std::vector{id_of(2)}) << "the beginning of a word is enough, its middle isn't asked for";
    EXPECT_EQ(found("o'd"), std::vector{id_of(2)});
    EXPECT_TRUE(found("pilot sail").empty()) << "every word is looked for";
    EXPECT_TRUE(found("%").empty());
    EXPECT_EQ(found("").size(), 2U);
    const auto nothing = receiver.ask("GET", "/?find=%22%3E%3Cscript%3E");
    EXPECT_TRUE(has(nothing, "value=\"&quot;&gt;&lt;script&gt;\"")) << "what was typed stands there, harmless";
    EXPECT_TRUE(has(nothing, "Nothing is here that has these words"));
    EXPECT_TRUE(has(receiver.ask("GET", "/"), "Dell &lt;b&gt;"));
}

// A word is cut where it is too long to search by, between two characters; what isn’t UTF-8 is found nowhere.
TEST(List, takesNamesOfManyBytesAndSearchesOfAny) {
    const TemporaryFolder folder;
    const Receiver receiver(folder.path());
    const auto token = receiver.pair();
    std::string address = "1";
    for (int i = 0; i < 40; ++i) {
        address += "\xE6\x9D\x9C";  // U+675C, three bytes
    }
    ASSERT_EQ(receiver.put_survey(token, id_of(1), 1, survey_of(1, address, "A")).status, 201);
    EXPECT_EQ(surveys_on(receiver.ask("GET", "/?find=" + percent_encode(address))), std::vector{id_of(1)});
    EXPECT_EQ(receiver.ask("GET", "/?find=%FF").status, 200);
    EXPECT_EQ(receiver.ask("GET", "/surveys/%FF").status, 404);
    EXPECT_EQ(
        receiver.ask("GET", "/changes", {{"X-Forwarded-For", "192.0.2.9"}, {"Authorization", "Bearer \xFF.a"}}).status,
        401);
}

TEST(List, isLeafedThroughFromTheNewestEachOnce) {
    const TemporaryFolder folder;
    const Receiver receiver(folder.path());
    const auto token = receiver.pair();
    constexpr int surveys = 120;
    for (int number = 1; number <= surveys; ++number) {
        const auto title = fmt::format("{} house", number % 2 == 0 ? "Even" : "Odd");
        ASSERT_EQ(receiver.put_survey(token, id_of(number), 1, survey_of(number, title, "A")).status, 201);
    }
    for (const auto& [start, step] : {std::pair{"/", 1}, std::pair{"/?find=even", 2}}) {
        std::vector<std::string> seen;
        int pages = 0;
        for (std::string at = start; !at.empty(); ++pages) {
            const auto page = receiver.ask("GET", at);
            const auto shown = surveys_on(page);
            EXPECT_LE(shown.size(), 50U);
            seen.insert(seen.end(), shown.begin(), shown.end());
            EXPECT_EQ(leads(page, "Newest"), pages == 0 ? "" : start);
            at = leads(page, "Older");
        }
        std::vector<std::string> expected;
        for (int number = surveys; number > 0; number -= step) {
            expected.push_back(id_of(number));
        }
        EXPECT_EQ(seen, expected);
        EXPECT_EQ(pages, step == 1 ? 3 : 2);
    }
}

TEST(List, saysTheNewestRevisionWhicheverCameLast) {
    const TemporaryFolder folder;
    const Receiver receiver(folder.path());
    const auto token = receiver.pair();
    ASSERT_EQ(receiver.put_survey(token, id_of(1), 3, survey_of(1, "Third title", "A", 3)).status, 201);
    ASSERT_EQ(receiver.put_survey(token, id_of(1), 2, survey_of(1, "Second title", "A", 2)).status, 201);
    const auto page = receiver.ask("GET", "/");
    EXPECT_TRUE(has(page, "Third title"));
    EXPECT_TRUE(has(page, "revision 3"));
    EXPECT_TRUE(surveys_on(receiver.ask("GET", "/?find=second")).empty());
    ASSERT_EQ(receiver.put_survey(token, id_of(1), 4, survey_of(1, "Fourth title", "A", 4)).status, 201);
    EXPECT_TRUE(surveys_on(receiver.ask("GET", "/?find=third")).empty()) << "words of what was before are gone";
    EXPECT_EQ(surveys_on(receiver.ask("GET", "/?find=fourth")).size(), 1U);
    EXPECT_EQ(changes(receiver, token)["changes"].size(), 3U) << "each that came in is told";
}

TEST(List, isMadeForWhatAnEarlierVersionReceived) {
    const TemporaryFolder folder;
    std::string token;
    {
        Receiver receiver(folder.path());
        token = receiver.pair();
        ASSERT_EQ(receiver.put_survey(token, id_of(1), 2, survey_of(1, "Pilot house", "A", 2)).status, 201);
        ASSERT_EQ(receiver.put_survey(token, id_of(2), 1, survey_of(2, "Sail loft", "B")).status, 201);
        receiver.end(SIGTERM);
        make_older(folder.path(), 5);
        SQLite::Database database((folder.path() / "workroom.sqlite").string(), SQLite::OPEN_READWRITE);
        database.exec(
            "INSERT INTO revision SELECT 'no-survey', 1, sha256, received_at, device, CAST('{' AS BLOB) "
            "FROM revision LIMIT 1");
    }
    const Receiver receiver(folder.path());
    EXPECT_EQ(surveys_on(receiver.ask("GET", "/")), (std::vector<std::string>{"no-survey", id_of(2), id_of(1)}))
        << "what can't be read is listed too";
    EXPECT_EQ(surveys_on(receiver.ask("GET", "/?find=pilot")), std::vector{id_of(1)});
    EXPECT_EQ(changes(receiver, token)["changes"].size(), 3U);
}

TEST(Revisions, areFetchedAsTheyCameAndNotTwice) {
    const TemporaryFolder folder;
    const Receiver receiver(folder.path());
    const auto token = receiver.pair();
    const auto survey = example_survey(id_of(1), 1) + " \n";
    ASSERT_EQ(receiver.put_survey(token, id_of(1), 1, survey).status, 201);
    const auto path = revision_path(id_of(1), 1);
    const auto got = receiver.ask("GET", path, bearer(token));
    ASSERT_EQ(got.status, 200);
    EXPECT_EQ(got.body, survey);
    const auto tag = got.headers.at("etag");
    EXPECT_EQ(tag, '"' + hex(sha256(survey)) + '"');
    EXPECT_EQ(got.headers.at("repr-digest"), digest_field(sha256(survey)));
    // RFC 9110, 13.1.2 and 15.4.5: a match is answered without content.
    auto fields = bearer(token);
    fields.emplace_back("If-None-Match", "\"other\", " + tag);
    const auto same = receiver.ask("GET", path, fields);
    EXPECT_EQ(same.status, 304);
    EXPECT_TRUE(same.body.empty());
    EXPECT_EQ(receiver.ask("GET", revision_path(id_of(1), 2), bearer(token)).status, 404);
}

TEST(Changes, areFollowedByACursorAcrossARestart) {
    const TemporaryFolder folder;
    std::string token, next;
    {
        Receiver receiver(folder.path());
        token = receiver.pair();
        for (int number = 1; number <= 5; ++number) {
            ASSERT_EQ(receiver.put_survey(token, id_of(number), 1, survey_of(number, "T", "A")).status, 201);
        }
        const auto first = changes(receiver, token, "?limit=3");
        EXPECT_EQ(first["changes"].size(), 3U);
        EXPECT_EQ(first["changes"][0]["id"], id_of(1));
        EXPECT_EQ(first["more"], true);
        const auto rest = changes(receiver, token, "?limit=3&after=" + first["next"].get<std::string>());
        EXPECT_EQ(rest["changes"].size(), 2U);
        EXPECT_EQ(rest["more"], false);
        next = rest["next"].get<std::string>();
        EXPECT_EQ(changes(receiver, token, "?after=" + next)["changes"].size(), 0U);
        receiver.end(SIGKILL);
    }
    const Receiver receiver(folder.path());
    ASSERT_EQ(receiver.put_survey(token, id_of(6), 1, survey_of(6, "T", "A")).status, 201);
    const auto since = changes(receiver, token, "?after=" + next);
    ASSERT_EQ(since["changes"].size(), 1U);
    EXPECT_EQ(since["changes"][0]["id"], id_of(6));
}

TEST(Changes, tellThatASurveyWasErased) {
    const TemporaryFolder folder;
    const Receiver receiver(folder.path());
    const auto token = receiver.pair();
    ASSERT_EQ(receiver.put_survey(token, id_of(1), 1, survey_of(1, "Pilot house", "A")).status, 201);
    ASSERT_EQ(receiver.put_survey(token, id_of(2), 1, survey_of(2, "Sail loft", "B")).status, 201);
    const auto before = changes(receiver, token)["next"].get<std::string>();
    const auto erased = run_workroom("erase", folder.path(), {id_of(1)});
    ASSERT_EQ(erased.exit_code, 0) << erased.err;
    const auto since = changes(receiver, token, "?after=" + before);
    ASSERT_EQ(since["changes"].size(), 1U);
    EXPECT_EQ(since["changes"][0]["id"], id_of(1));
    EXPECT_TRUE(since["changes"][0].contains("erased_at"));
    EXPECT_FALSE(since["changes"][0].contains("sha256"));
    const auto all = changes(receiver, token);
    ASSERT_EQ(all["changes"].size(), 2U) << "of what was erased nothing else is told";
    EXPECT_EQ(all["changes"][0]["id"], id_of(2));
    EXPECT_EQ(surveys_on(receiver.ask("GET", "/")), std::vector{id_of(2)});
    EXPECT_TRUE(surveys_on(receiver.ask("GET", "/?find=pilot")).empty());
}

// A copy may lack what came in after it was made, under places that it will give again.
TEST(Changes, ofACopyBeginAnew) {
    const TemporaryFolder folder;
    const auto copy = folder.path() / "copy";
    std::string token, cursor;
    {
        const Receiver receiver(folder.path() / "kept");
        token = receiver.pair();
        ASSERT_EQ(receiver.put_survey(token, id_of(1), 1, survey_of(1, "Pilot house", "A")).status, 201);
        cursor = changes(receiver, token)["next"].get<std::string>();
        const auto made =
            run_program({TRUEHANG_WORKROOM, "backup", "--data", (folder.path() / "kept").string(), copy.string()});
        ASSERT_EQ(made.exit_code, 0) << made.err;
    }
    const Receiver receiver(copy);
    EXPECT_EQ(receiver.ask("GET", "/changes?after=" + cursor, bearer(token)).status, 410);
    EXPECT_EQ(changes(receiver, token)["changes"].size(), 1U);
    EXPECT_EQ(surveys_on(receiver.ask("GET", "/?find=pilot")), std::vector{id_of(1)});
}

TEST(Changes, takeOnlyCursorsThatTheseRecordsGave) {
    const TemporaryFolder folder;
    const TemporaryFolder elsewhere;
    const Receiver receiver(folder.path());
    const Receiver other(elsewhere.path());
    const auto token = receiver.pair();
    const auto foreign = changes(other, other.pair())["next"].get<std::string>();
    const auto own = changes(receiver, token)["next"].get<std::string>();
    for (const auto& cursor : {foreign, own + "9", own + "x", own.substr(0, own.size() - 1), std::string("-0"),
                               std::string("%00"), std::string(3000, '7')}) {
        const auto reply = receiver.ask("GET", "/changes?after=" + cursor, bearer(token));
        EXPECT_EQ(reply.status, 410) << cursor;
        EXPECT_EQ(read_problem(reply.body)->kind, ProblemKind::unknown_cursor);
    }
    for (const auto* limit : {"0", "-1", "ten", "1.5", "99999999999999999999"}) {
        EXPECT_EQ(receiver.ask("GET", std::string("/changes?limit=") + limit, bearer(token)).status, 400) << limit;
    }
    EXPECT_EQ(receiver.ask("GET", "/changes", {{"X-Forwarded-For", "10.0.0.9"}}).status, 401) << "no token";
}

// What is followed while many write at once: every receipt is told once, none is passed over, and those of one phone
// come in the order in which it had them confirmed.
TEST(Changes, passOverNothingThatIsUnderWay) {
    const TemporaryFolder folder;
    const Receiver receiver(folder.path());
    const auto token = receiver.pair();
    constexpr int phones = 6;
    constexpr int each = 20;
    std::atomic<int> sending = phones;
    std::vector<std::thread> threads;
    for (int phone = 0; phone < phones; ++phone) {
        threads.emplace_back([&, phone] {
            for (int revision = 1; revision <= each; ++revision) {
                EXPECT_EQ(
                    receiver.put_survey(token, id_of(phone), revision, survey_of(phone, "T", "A", revision)).status,
                    201);
            }
            --sending;
        });
    }
    std::map<std::string, std::vector<long long>> told;
    std::string query;
    for (bool last = false; !last;) {
        last = sending == 0;
        for (bool more = true; more;) {
            const auto answer = changes(receiver, token, query);
            for (const auto& receipt : answer["changes"]) {
                told[receipt["id"]].push_back(receipt["revision"]);
            }
            more = answer["more"];
            query = "?limit=7&after=" + answer["next"].get<std::string>();
        }
    }
    for (auto& thread : threads) {
        thread.join();
    }
    std::vector<long long> all(each);
    std::iota(all.begin(), all.end(), 1);
    EXPECT_EQ(told.size(), static_cast<std::size_t>(phones));
    for (const auto& [survey, revisions] : told) {
        EXPECT_EQ(revisions, all) << survey;
    }
}
