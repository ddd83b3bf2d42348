// SPDX-License-Identifier: Apache-2.0
// House rules on the workroom's page and as phones fetch them, and choices side by side.
#include "receiver_process.h"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

using namespace truehang::sync::test;

namespace {

const std::string id = "01924f6a-7c00-7000-8000-0000000000a1";

bool has(const Reply& page, const std::string& text) { return page.body.find(text) != std::string::npos; }

struct Rules {
    TemporaryFolder folder;
    Receiver receiver{folder.path()};
    std::string token = receiver.pair();

    [[nodiscard]] Reply save(const std::string& body) const { return save_as(body, "127.0.0.1"); }
    /// As a browser sends a form: with the name of the page's own site.
    [[nodiscard]] Reply save_as(const std::string& body, const std::string& site) const {
        return receiver.ask("POST", "/house-rules",
                            {{"Content-Type", "application/x-www-form-urlencoded"},
                             {"Host", "127.0.0.1:" + std::to_string(receiver.port())},
                             {"Origin", "http://" + site + ":" + std::to_string(receiver.port())}},
                            body);
    }
    [[nodiscard]] nlohmann::json fetched(const std::string& path = "/rules") const {
        const auto reply = receiver.ask("GET", path, {{"Authorization", "Bearer " + token}});
        return reply.status == 200 ? nlohmann::json::parse(reply.body) : nlohmann::json();
    }
};

}  // namespace

// The trade rules, section 1: a hem takes 150 mm where nothing else is said.
TEST(HouseRulesPage, showsTheDefaultsUntilSomethingIsSet) {
    const Rules rules;
    const auto page = rules.receiver.ask("GET", "/house-rules");
    ASSERT_EQ(page.status, 200) << page.body;
    EXPECT_TRUE(has(page, "Cloth taken by the hem, in all"));
    EXPECT_TRUE(has(page, "default 150"));
    EXPECT_EQ(rules.fetched()["rules"]["hem_mm"], 150);
    EXPECT_FALSE(rules.fetched().contains("version"));
    EXPECT_TRUE(has(rules.receiver.ask("GET", "/"), "href=\"/house-rules\""));
}

TEST(HouseRulesPage, savesEachTimeAsANewVersionAndKeepsTheOld) {
    const Rules rules;
    ASSERT_EQ(rules.save("from=0&name=Lined+curtains&hem_mm=160&tab_hang_mm=62%2C5").status, 303);
    auto now = rules.fetched();
    EXPECT_EQ(now["name"], "Lined curtains");
    EXPECT_EQ(now["version"], 1);
    EXPECT_EQ(now["rules"]["hem_mm"], 160);
    EXPECT_EQ(now["rules"]["tab_hang_mm"], 62.5) << "a decimal comma";
    ASSERT_EQ(rules.save("from=1&name=Lined+curtains&hem_mm=&tab_hang_mm=62.5").status, 303);
    now = rules.fetched();
    EXPECT_EQ(now["version"], 2);
    EXPECT_FALSE(now["rules"].contains("hem_mm")) << "an empty line is the default";
    EXPECT_EQ(rules.fetched("/rules/1")["rules"]["hem_mm"], 160);
    EXPECT_TRUE(has(rules.receiver.ask("GET", "/house-rules"), "href=\"/rules/1\""));
    EXPECT_EQ(rules.receiver.ask("GET", "/rules/3").status, 404);
}

TEST(HouseRulesPage, savesNothingOfWhatCantBeTaken) {
    const Rules rules;
    const auto page = rules.save("from=0&name=Lined&hem_mm=-3&seam_mm=wide&order_step_m=0");
    EXPECT_EQ(page.status, 422);
    EXPECT_TRUE(has(page, "-3 lies outside its range: from 0, up to 100000."));
    EXPECT_TRUE(has(page, "value=\"wide\"")) << "what was typed still stands there";
    EXPECT_TRUE(has(page, "0 lies outside its range: above 0, up to 100."));
    EXPECT_FALSE(rules.fetched().contains("version"));
    EXPECT_EQ(rules.save("from=0&name=+&hem_mm=160").status, 422);
}

TEST(HouseRulesPage, doesntOverwriteWhatSomebodySavedMeanwhile) {
    const Rules rules;
    ASSERT_EQ(rules.save("from=0&name=Lined&hem_mm=160").status, 303);
    const auto late = rules.save("from=0&name=Lined&hem_mm=170");
    EXPECT_EQ(late.status, 409);
    EXPECT_TRUE(has(late, "value=\"170\""));
    EXPECT_EQ(rules.fetched()["rules"]["hem_mm"], 160);
}

TEST(HouseRulesPage, takesNoFormFromAnotherSite) {
    const Rules rules;
    EXPECT_EQ(rules.save_as("from=0&name=Lined&hem_mm=160", "elsewhere.example.org").status, 400);
    EXPECT_EQ(rules.receiver.ask("POST", "/house-rules", {}, "from=0&name=Lined&hem_mm=160").status, 400);
    EXPECT_FALSE(rules.fetched().contains("version"));
}

TEST(HouseRulesPage, isForThisMachineOnlyWithoutASignIn) {
    const TemporaryFolder folder;
    const Receiver receiver(folder.path(), {"--sign-in"});
    EXPECT_EQ(receiver.ask("GET", "/house-rules").status, 401);
    EXPECT_EQ(receiver.ask("GET", "/rules").status, 401);
    EXPECT_EQ(receiver.ask("POST", "/house-rules", {}, "from=0&name=Lined&hem_mm=160").status, 401);
    EXPECT_EQ(receiver.ask("GET", "/rules", {{"Authorization", "Bearer " + receiver.pair()}}).status, 200);
}

// Rules and rolls are set by people: what may send surveys may look, and set nothing.
TEST(HouseRulesPage, isNotSetWithADevicesToken) {
    const TemporaryFolder folder;
    const Receiver receiver(folder.path(), {"--sign-in"});
    const auto token = receiver.pair();
    ASSERT_EQ(receiver.put_survey(token, id, 1, example_survey(id, 1)).status, 201);
    const auto here = "127.0.0.1:" + std::to_string(receiver.port());
    const Fields fields{{"Authorization", "Bearer " + token},
                        {"Content-Type", "application/x-www-form-urlencoded"},
                        {"Host", here},
                        {"Origin", "http://" + here}};
    EXPECT_EQ(receiver.ask("POST", "/house-rules", fields, "from=0&name=Lined&hem_mm=160").status, 401);
    EXPECT_EQ(receiver.ask("POST", "/surveys/" + id + "/rolls", fields, "from=0").status, 401);
    const auto rules = receiver.ask("GET", "/rules", {{"Authorization", "Bearer " + token}});
    EXPECT_FALSE(nlohmann::json::parse(rules.body).contains("version"));
}

// The contract's worked example (figures.example.json): 4,480 mm of face cloth in two drops.
TEST(ChoicesPage, showsWhatEachChoiceTakes) {
    const Rules rules;
    ASSERT_EQ(rules.receiver.put_survey(rules.token, id, 1, example_survey(id, 1)).status, 201);
    const std::string path = "/surveys/" + id + "/rooms/parlour/windows/parlour-south/choices";
    const auto page = rules.receiver.ask("GET", path);
    ASSERT_EQ(page.status, 200) << page.body;
    EXPECT_TRUE(has(page, "As it stands"));
    EXPECT_TRUE(has(page, "Unlined"));
    EXPECT_TRUE(has(page, "It is no quotation"));
    EXPECT_TRUE(has(rules.receiver.ask("GET", path + "?heading=eyelet&fullness=2"), "Eyelet headed, 2 × fullness"));
    EXPECT_EQ(rules.receiver.ask("GET", "/surveys/" + id + "/rooms/parlour/windows/attic/choices").status, 404);
    EXPECT_TRUE(has(rules.receiver.ask("GET", "/surveys/" + id), "windows/parlour-south/choices"));
}
