// SPDX-License-Identifier: Apache-2.0
// Devices as the workroom's page and command show and revoke them.
#include "protocol/digest.h"
#include "protocol/pairing_text.h"
#include "protocol/problem.h"
#include "protocol/records.h"
#include "receiver_process.h"

#include <gtest/gtest.h>

#include <fstream>

using namespace truehang::sync;
using namespace truehang::sync::test;

namespace {

const std::string id = "01924f6a-7c00-7000-8000-0000000000a1";

bool has(const Reply& page, const std::string& text) { return page.body.find(text) != std::string::npos; }

std::string id_of(const std::string& token) { return token.substr(0, token.find('.')); }

struct Workroom {
    TemporaryFolder folder;
    Receiver receiver;
    std::string token;
    explicit Workroom(std::vector<std::string> more = {})
        : receiver(folder.path(), std::move(more)), token(receiver.pair()) {}

    [[nodiscard]] std::string pair_as(const std::string& name) const {
        const auto code = run_workroom("pair", folder.path()).out.substr(0, 9);
        const auto reply = receiver.ask("POST", "/pair", {{"Content-Type", "application/json"}},
                                        write_record(PairRequest{code, name}));
        const auto answer = read_pair_answer(reply.body);
        return answer ? answer->token : std::string();
    }
    /// As a browser sends a form: with the name of the page's own site.
    [[nodiscard]] Reply form(const std::string& path, const std::string& body, Fields more = {},
                             const std::string& site = "127.0.0.1") const {
        more.emplace_back("Content-Type", "application/x-www-form-urlencoded");
        more.emplace_back("Host", "127.0.0.1:" + std::to_string(receiver.port()));
        more.emplace_back("Origin", "http://" + site + ":" + std::to_string(receiver.port()));
        return receiver.ask("POST", path, more, body);
    }
    [[nodiscard]] Outcome revoke(const std::vector<std::string>& more = {}) const {
        return run_workroom("revoke", folder.path(), more);
    }
};

}  // namespace

TEST(DevicesPage, showsWhoMaySend) {
    const Workroom workroom;
    ASSERT_EQ(workroom.receiver.put_survey(workroom.token, id, 1, example_survey(id, 1)).status, 201);
    EXPECT_TRUE(has(workroom.receiver.ask("GET", "/"), "href=\"/devices\""));
    const auto page = workroom.receiver.ask("GET", "/devices");
    ASSERT_EQ(page.status, 200);
    EXPECT_TRUE(has(page, "<bdi>A test&apos;s phone</bdi>")) << page.body;
    EXPECT_TRUE(has(page, "data-says=\"surveys\">1</td>"));
    EXPECT_TRUE(has(page, "action=\"/devices/revoke\""));
    EXPECT_EQ(page.headers.at("cache-control"), "no-store");
    EXPECT_FALSE(has(page, workroom.token.substr(workroom.token.find('.') + 1))) << "no secret";
    EXPECT_EQ(workroom.receiver.ask("GET", "/devices/revoke").status, 404);
}

TEST(DevicesPage, revokesOneForGoodAndKeepsWhatItSent) {
    const Workroom workroom;
    const auto other = workroom.pair_as("Other phone");
    ASSERT_EQ(workroom.receiver.put_survey(workroom.token, id, 1, example_survey(id, 1)).status, 201);
    const auto revoked = workroom.form("/devices/revoke", "device=" + id_of(workroom.token));
    ASSERT_EQ(revoked.status, 303) << revoked.body;
    EXPECT_EQ(revoked.headers.at("location"), "/devices");
    const auto refused = workroom.receiver.put_survey(workroom.token, id, 2, example_survey(id, 2));
    EXPECT_EQ(refused.status, 401);
    const auto problem = read_problem(refused.body);
    ASSERT_TRUE(problem.ok()) << refused.body;
    EXPECT_EQ(problem->kind, ProblemKind::unauthorised);
    EXPECT_NE(problem->detail.find("revoked"), std::string::npos) << problem->detail;
    EXPECT_EQ(workroom.receiver.put_photo(workroom.token, hex(sha256("p")), "p").status, 401);
    const auto fetched =
        workroom.receiver.ask("GET", "/rules", {{"Authorization", "Bearer " + workroom.token}, {"Host", "a.example"}});
    EXPECT_EQ(fetched.status, 401);
    EXPECT_TRUE(has(fetched, "revoked"));
    EXPECT_TRUE(has(workroom.receiver.ask("GET", "/devices"), "revoked "));
    EXPECT_EQ(workroom.receiver.ask("GET", "/surveys/" + id).status, 200) << "what it sent stays";
    EXPECT_EQ(workroom.receiver.put_survey(other, id, 2, example_survey(id, 2)).status, 201);
    EXPECT_EQ(workroom.form("/devices/revoke", "device=" + id_of(workroom.token)).status, 303) << "again";
    EXPECT_EQ(workroom.form("/devices/revoke", "device=none").status, 404);
    EXPECT_EQ(workroom.form("/devices/revoke", "").status, 404);
}

TEST(DevicesPage, isForAPersonOfTheWorkroomAlone) {
    const Workroom workroom({"--sign-in"});
    const auto body = "device=" + id_of(workroom.token);
    const Fields bearer{{"Authorization", "Bearer " + workroom.token}};
    EXPECT_EQ(workroom.receiver.ask("GET", "/devices", bearer).status, 401) << "a device's token opens no door for it";
    EXPECT_EQ(workroom.form("/devices/revoke", body, bearer).status, 401);
    EXPECT_EQ(workroom.form("/devices/revoke", body).status, 401);
    EXPECT_EQ(workroom.receiver.put_photo(workroom.token, hex(sha256("p")), "p").status, 201) << "nothing was revoked";
}

TEST(DevicesPage, takesNoFormFromElsewhere) {
    const Workroom workroom;
    const auto body = "device=" + id_of(workroom.token);
    EXPECT_EQ(workroom.form("/devices/revoke", body, {}, "evil.example").status, 400);
    EXPECT_EQ(workroom.receiver.ask("POST", "/devices/revoke", {}, body).status, 400) << "no Origin at all";
    EXPECT_EQ(workroom.form("/devices/revoke", std::string(5000, 'a')).status, 413);
    EXPECT_EQ(workroom.receiver.put_photo(workroom.token, hex(sha256("p")), "p").status, 201) << "nothing was revoked";
}

TEST(DevicesPage, showsANameAsTextWhateverItHolds) {
    const Workroom workroom;
    ASSERT_FALSE(workroom.pair_as("<script>alert(1)</script>\"'&").empty());
    const auto page = workroom.receiver.ask("GET", "/devices");
    EXPECT_FALSE(has(page, "<script"));
    EXPECT_TRUE(has(page, "&lt;script&gt;alert(1)&lt;/script&gt;"));
}

TEST(PairingPage, showsANewCodeThatPairsOnce) {
    const Workroom workroom;
    EXPECT_TRUE(has(workroom.receiver.ask("GET", "/devices"), "action=\"/devices/code\""));
    const auto page = workroom.form("/devices/code", "");
    ASSERT_EQ(page.status, 200) << page.body;
    EXPECT_EQ(page.headers.at("cache-control"), "no-store");
    const auto at = page.body.find("class=\"code\">") + 13;
    const auto code = page.body.substr(at, 9);
    EXPECT_TRUE(has(page, "http://127.0.0.1:" + std::to_string(workroom.receiver.port())));
    EXPECT_TRUE(has(page, "no phone can reach it")) << "it listens on this machine alone";
    const auto pair = [&] {
        return workroom.receiver.ask("POST", "/pair", {{"Content-Type", "application/json"}},
                                     write_record(PairRequest{code, "phone"}));
    };
    EXPECT_EQ(pair().status, 200) << code;
    EXPECT_EQ(pair().status, 403);
    EXPECT_FALSE(has(workroom.form("/devices/code", ""), code)) << "another each time";
    EXPECT_EQ(workroom.receiver.ask("GET", "/devices/code").status, 404) << "looking makes none";
}

TEST(PairingPage, makesNoCodeForADeviceOrAPageOfElsewhere) {
    const Workroom workroom({"--sign-in"});
    EXPECT_EQ(workroom.form("/devices/code", "", {{"Authorization", "Bearer " + workroom.token}}).status, 401);
    const Workroom open;
    EXPECT_EQ(open.form("/devices/code", "", {}, "evil.example").status, 400);
    EXPECT_EQ(open.receiver.ask("POST", "/devices/code", {}, "").status, 400);
}

// Read by zbar from the picture that a browser makes of the page.
TEST(PairingPage, isReadByAScanner) {
    const Workroom workroom({"--reached-at", "https://workroom.example.org", "--reached-at", "https://192.0.2.7:8737"});
    const auto page = workroom.form("/devices/code", "");
    ASSERT_EQ(page.status, 200);
    EXPECT_TRUE(has(page, "https://192.0.2.7:8737")) << "the other address stands there too";
    EXPECT_FALSE(has(page, "no phone can reach it"));
    const auto file = workroom.folder.path() / "page.html";
    const auto picture = workroom.folder.path() / "page.png";
    std::ofstream(file) << page.body;
    const auto drawn =
        run_program({"chromium", "--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run",
                     "--user-data-dir=" + (workroom.folder.path() / "chromium").string(), "--window-size=900,1600",
                     "--screenshot=" + picture.string(), "file://" + file.string()});
    ASSERT_TRUE(std::filesystem::exists(picture)) << drawn.err;
    const auto scanned = run_program({"zbarimg", "--raw", "--quiet", picture.string()});
    const auto read = read_pairing_text(scanned.out);
    ASSERT_TRUE(read.ok()) << scanned.out << scanned.err;
    EXPECT_EQ(read->address, "https://workroom.example.org");
    EXPECT_TRUE(has(page, ">" + read->code + "<")) << "the same code as in letters";
    ASSERT_TRUE(read->until);
    EXPECT_TRUE(read->pin.empty());
    EXPECT_EQ(workroom.receiver
                  .ask("POST", "/pair", {{"Content-Type", "application/json"}},
                       write_record(PairRequest{read->code, "phone"}))
                  .status,
              200);
}

TEST(RevokeCommand, listsAndRevokesWhileTheWorkroomServes) {
    const Workroom workroom;
    const auto other = workroom.pair_as("Bad \x1b[2J\xc2\x9b name");
    const auto listed = workroom.revoke();
    EXPECT_EQ(listed.exit_code, 0) << listed.err;
    EXPECT_NE(listed.out.find(id_of(workroom.token) + "  A test's phone"), std::string::npos) << listed.out;
    EXPECT_NE(listed.out.find("Bad ?[2J? name"), std::string::npos) << "nothing steers the terminal";
    const auto revoked = workroom.revoke({"A test's phone"});
    EXPECT_EQ(revoked.exit_code, 0) << revoked.err;
    EXPECT_EQ(workroom.receiver.put_photo(workroom.token, hex(sha256("p")), "p").status, 401);
    EXPECT_EQ(workroom.receiver.put_photo(other, hex(sha256("p")), "p").status, 201);
    EXPECT_NE(workroom.revoke().out.find("revoked 2"), std::string::npos);
    EXPECT_EQ(workroom.revoke({id_of(other)}).exit_code, 0);
    EXPECT_EQ(workroom.receiver.put_photo(other, hex(sha256("q")), "q").status, 401);
}

TEST(RevokeCommand, saysWhatIsWrong) {
    const Workroom workroom;
    ASSERT_FALSE(workroom.pair_as("A test's phone").empty());
    const auto two = workroom.revoke({"A test's phone"});
    EXPECT_EQ(two.exit_code, 2);
    EXPECT_NE(two.err.find("give its id"), std::string::npos) << two.err;
    EXPECT_EQ(workroom.revoke({"nobody"}).exit_code, 2);
    const TemporaryFolder empty;
    EXPECT_EQ(run_program({TRUEHANG_WORKROOM, "revoke", "--data", empty.path().string()}).exit_code, 2);
    EXPECT_TRUE(std::filesystem::is_empty(empty.path())) << "nothing was made";
}
