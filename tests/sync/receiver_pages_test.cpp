// SPDX-License-Identifier: Apache-2.0
#include "protocol/digest.h"
#include "protocol/paths.h"
#include "receiver_process.h"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

using namespace truehang::sync;
using namespace truehang::sync::test;

namespace {

const std::string id = "01924f6a-7c00-7000-8000-0000000000a1";
const std::string sheet = "/surveys/" + id + "/rooms/parlour/windows/parlour-south";

bool has(const Reply& page, const std::string& text) { return page.body.find(text) != std::string::npos; }

/// The text of the element that carries data-figure="NAME"; empty where none does.
std::string figure_on(const std::string& page, const std::string& name) {
    const auto mark = page.find("data-figure=\"" + name + "\"");
    if (mark == std::string::npos) {
        return {};
    }
    const auto start = page.find('>', mark) + 1;
    return page.substr(start, page.find('<', start) - start);
}

struct Served {
    TemporaryFolder folder;
    Receiver receiver;
    std::string token;
    explicit Served(std::vector<std::string> more = {}, const std::string& title = "Pilot house")
        : receiver(folder.path(), std::move(more)), token(receiver.pair()) {
        EXPECT_EQ(receiver.put_survey(token, id, 1, example_survey(id, 1, title)).status, 201);
    }
};

}  // namespace

TEST(Pages, listTheSurveysThatCameIn) {
    const Served served;
    const auto page = served.receiver.ask("GET", "/");
    EXPECT_EQ(page.status, 200);
    EXPECT_TRUE(has(page, "Pilot house"));
    EXPECT_TRUE(has(page, "href=\"/surveys/" + id + "\""));
    EXPECT_TRUE(has(page, "0 of 1")) << "its photo hasn't come";
    EXPECT_TRUE(has(page, "<html lang=\"en\">"));
}

// The figures of the contract's worked example (figures.example.json): drop 1992, width 860, cut drops 2240 and 2110,
// orders of 4.9 and 4.3 m.
TEST(Pages, theSheetSaysTheFiguresOfTheWorkedExample) {
    const Served served;
    const auto page = served.receiver.ask("GET", sheet);
    ASSERT_EQ(page.status, 200) << page.body;
    EXPECT_EQ(figure_on(page.body, "finished.drop_mm"), "1992");
    EXPECT_EQ(figure_on(page.body, "finished.width_mm"), "860");
    EXPECT_EQ(figure_on(page.body, "cloth.cut_drop_mm"), "2240");
    EXPECT_EQ(figure_on(page.body, "lining.cut_drop_mm"), "2110");
    EXPECT_EQ(figure_on(page.body, "orders.sailcloth.order_m"), "4.9 m");
    EXPECT_TRUE(has(page, "data-flag=\"curtain-over-heat\""));
    EXPECT_TRUE(has(page, "<svg xmlns"));
    EXPECT_TRUE(has(page, "data-working=\"finished.drop_mm\""));
    EXPECT_TRUE(has(page, "not here yet")) << "its photo";
}

// 100 mm from the sill's height breaks the plumb line of the worked example: below + height + above is the ceiling's
// height there.
TEST(Pages, aFlagHasItsWordAndItsShape) {
    const Served served;
    auto survey = nlohmann::ordered_json::parse(example_survey(id, 2));
    survey["rooms"][0]["windows"][0]["readings"][5]["value_mm"] = 960;
    survey["rooms"][0]["windows"][0]["readings"][5]["typed"] = "960";
    ASSERT_EQ(served.receiver.put_survey(served.token, id, 2, survey.dump()).status, 201);
    const auto page = served.receiver.ask("GET", sheet);
    EXPECT_TRUE(has(page, "data-flag=\"does-not-add-up\""));
    EXPECT_TRUE(has(page, "<strong>Measure again.</strong>"));
    EXPECT_TRUE(has(page, "stroke-dasharray=\"9 5\"")) << "the broken circle";
    EXPECT_TRUE(has(page, "<path d=\"M12 3 L22 21 L2 21 Z\"/>")) << "the caution's triangle";
    EXPECT_TRUE(has(page, "Provisional"));
    EXPECT_TRUE(has(served.receiver.ask("GET", "/surveys/" + id), "flag-broken-circle"));
}

TEST(Pages, theSurveySaysTheSameFiguresAsItsSheet) {
    const Served served;
    const auto page = served.receiver.ask("GET", "/surveys/" + id);
    ASSERT_EQ(page.status, 200) << page.body;
    EXPECT_EQ(figure_on(page.body, "finished.drop_mm"), "1992");
    EXPECT_EQ(figure_on(page.body, "orders.sailcloth.order_m"), "4.9 m");
    EXPECT_TRUE(has(page, "href=\"" + sheet + "\""));
    EXPECT_TRUE(has(page, "<caption>"));
    EXPECT_TRUE(has(page, "scope=\"row\""));
}

TEST(Pages, everyKindOfSheetHasItsAddress) {
    const Served served;
    const auto survey = served.receiver.ask("GET", "/surveys/" + id).body;
    for (const auto* kind : {"measure", "cutting", "making", "hanging"}) {
        const auto house = "/surveys/" + id + "/sheets/" + kind;
        EXPECT_NE(survey.find("href=\"" + house + "\""), std::string::npos) << kind;
        for (const auto& path : {house, sheet + "/" + kind}) {
            const auto page = served.receiver.ask("GET", path);
            EXPECT_EQ(page.status, 200) << path;
            EXPECT_TRUE(has(page, std::string("data-kind=\"") + kind + "\"")) << path;
        }
    }
    EXPECT_EQ(served.receiver.ask("GET", sheet + "/sewing").status, 404);
    EXPECT_EQ(served.receiver.ask("GET", sheet + "/making/more").status, 404);
}

TEST(Pages, aSheetComesOnOtherPaperAndInInches) {
    const Served served;
    const auto page = served.receiver.ask("GET", sheet + "/making?paper=letter&unit=in");
    EXPECT_TRUE(has(page, "paper-letter"));
    // 2240 mm are 88.19 in, cut never below: 88 1/4.
    EXPECT_EQ(figure_on(page.body, "cloth.cut_drop_mm"), "88 1/4");
    EXPECT_TRUE(has(page, "href=\"" + sheet + "/making?paper=a4&amp;unit=in\""));
    EXPECT_TRUE(has(served.receiver.ask("GET", sheet + "/making?paper=none&unit=ell"), "paper-a4"));
}

TEST(Pages, ordersAndPiecesAsTables) {
    const Served served;
    const auto orders = served.receiver.ask("GET", "/surveys/" + id + "/orders.csv");
    ASSERT_EQ(orders.status, 200);
    EXPECT_EQ(orders.headers.at("content-type"), "text/csv; charset=utf-8; header=present");
    EXPECT_EQ(orders.headers.at("content-disposition"), "attachment; filename=\"orders.csv\"");
    EXPECT_TRUE(has(orders, "\r\nsailcloth,"));
    EXPECT_EQ(served.receiver.ask("GET", "/surveys/" + id + "/pieces.csv").status, 200);
    EXPECT_EQ(served.receiver.ask("GET", "/surveys/" + id + "/windows.csv").status, 404);
    EXPECT_EQ(served.receiver.ask("GET", sheet + "/template.svg").status, 404) << "its top is straight";
}

TEST(Pages, theFiguresAsADocument) {
    const Served served;
    const auto reply = served.receiver.ask("GET", figures_path(id));
    ASSERT_EQ(reply.status, 200);
    const auto figures = nlohmann::json::parse(reply.body);
    EXPECT_EQ(figures.at("format"), "truehang.figures/1");
    EXPECT_EQ(figures.at("windows").at(0).at("finished").at("drop_mm"), 1992);
}

TEST(Pages, showWhatWasTypedAsTextNeverAsMarkup) {
    const Served served({}, "<script>alert(1)</script>\"'&");
    for (const auto& path : {std::string("/"), "/surveys/" + id, sheet}) {
        const auto page = served.receiver.ask("GET", path);
        EXPECT_EQ(page.status, 200) << path;
        EXPECT_FALSE(has(page, "<script>")) << path;
        EXPECT_TRUE(has(page, "&lt;script&gt;")) << path;
        const auto& policy = page.headers.at("content-security-policy");
        EXPECT_TRUE(policy.starts_with("default-src 'none'")) << policy;
        EXPECT_EQ(policy.find("unsafe"), std::string::npos);
        EXPECT_EQ(policy.find("script-src") != std::string::npos, path != sheet) << "only pages that listen run any";
        EXPECT_FALSE(has(page, " style=")) << "the policy lets no inline style through";
        for (auto at = page.body.find("http://"); at != std::string::npos; at = page.body.find("http://", at + 1)) {
            const auto address = std::string_view(page.body).substr(at);
            EXPECT_TRUE(address.starts_with("http://www.w3.org/2000/svg") ||
                        address.starts_with("http://127.0.0.1:" + std::to_string(served.receiver.port()) + "/sheet/"))
                << "nothing of elsewhere: " << address.substr(0, 80);
        }
        EXPECT_EQ(page.headers.at("x-content-type-options"), "nosniff");
    }
}

TEST(Pages, areForThisMachineOnlyWithoutASignIn) {
    const Served served;
    EXPECT_EQ(served.receiver.ask("GET", "/", {{"Host", "localhost:8737"}}).status, 200);
    for (const auto* host : {"workroom.example.org", "127.0.0.1.example.org", "[::1].example.org:1", "0x7f000001"}) {
        const auto page = served.receiver.ask("GET", sheet, {{"Host", host}});
        EXPECT_EQ(page.status, 401) << host;
        EXPECT_FALSE(has(page, "Pilot")) << host;
        EXPECT_EQ(served.receiver.ask("GET", figures_path(id), {{"Host", host}}).status, 401) << host;
    }
    EXPECT_EQ(served.receiver.ask("GET", "/", {{"X-Forwarded-For", "192.0.2.1"}}).status, 401);
    EXPECT_EQ(served.receiver.ask("GET", "/", {{"Forwarded", "for=192.0.2.1"}}).status, 401);
}

TEST(Pages, areOpenedElsewhereByACode) {
    const Served served({"--sign-in"});
    EXPECT_EQ(served.receiver.ask("GET", "/").status, 401);
    const auto code = run_workroom("pair", served.folder.path()).out.substr(0, 9);
    const Fields form{{"Content-Type", "application/x-www-form-urlencoded"}};
    EXPECT_EQ(served.receiver.ask("POST", "/sign-in", form, "code=0000-0000").status, 403);
    const auto in = served.receiver.ask("POST", "/sign-in", form, "code=" + code);
    ASSERT_EQ(in.status, 303);
    const auto& cookie = in.headers.at("set-cookie");
    EXPECT_NE(cookie.find("HttpOnly"), std::string::npos);
    EXPECT_NE(cookie.find("SameSite=Strict"), std::string::npos);
    const Fields signed_in{{"Cookie", "other=1; " + cookie.substr(0, cookie.find(';'))}};
    EXPECT_EQ(served.receiver.ask("GET", "/", signed_in).status, 200);
    EXPECT_EQ(served.receiver.ask("GET", "/", {{"Cookie", "truehang-session=a.b"}}).status, 401);
    EXPECT_EQ(served.receiver.ask("POST", "/sign-in", form, "code=" + code).status, 403) << "a code holds once";
}

TEST(Pages, whatTheyLoadComesFromHere) {
    const Served served;
    EXPECT_EQ(served.receiver.ask("GET", "/style.css").headers.at("content-type"), "text/css; charset=utf-8");
    const auto font = served.receiver.ask("GET", "/font/lato.ttf");
    EXPECT_EQ(font.status, 200);
    EXPECT_GT(font.body.size(), 10'000U);
}

TEST(Pages, showAPhotoOnceItIsHere) {
    const Served served;
    const std::string photo = "\xff\xd8\xff and so on";
    const auto digest = hex(sha256(photo));
    auto survey = nlohmann::ordered_json::parse(example_survey(id, 2));
    survey["rooms"][0]["windows"][0]["photos"][0]["sha256"] = digest;
    ASSERT_EQ(served.receiver.put_survey(served.token, id, 2, survey.dump()).status, 201);
    EXPECT_FALSE(has(served.receiver.ask("GET", sheet), "<img"));
    ASSERT_EQ(served.receiver.put_photo(served.token, digest, photo).status, 201);
    EXPECT_TRUE(has(served.receiver.ask("GET", sheet), "<img src=\"/photos/" + digest + "\" alt=\"radiator valve\">"));
    // The contract's example has an arrow over it, from (0.42, 0.61) to (0.55, 0.7) of the upright picture.
    EXPECT_TRUE(has(served.receiver.ask("GET", sheet),
                    "x1=\"42%\" y1=\"61%\" x2=\"55%\" y2=\"70%\" marker-end=\"url(#tip-1)\""));
    EXPECT_TRUE(has(served.receiver.ask("GET", sheet), ">valve stands out 60</text>"));
}

TEST(Pages, ofWhatIsntHere) {
    const Served served;
    for (const auto* path : {"/surveys/none", "/surveys/none/rooms/a/windows/b", "/nothing", "/surveys"}) {
        EXPECT_EQ(served.receiver.ask("GET", path).status, 404) << path;
    }
    EXPECT_EQ(served.receiver.ask("GET", sheet + "/layers/none").status, 404);
}
