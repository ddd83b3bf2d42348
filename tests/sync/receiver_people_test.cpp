// SPDX-License-Identifier: Apache-2.0
// People who sign in, and what is refused to everybody else.
#include "receiver_people.h"
#include "protocol/digest.h"
#include "protocol/marks.h"

#include <poll.h>
#include <pty.h>
#include <sys/wait.h>
#include <termios.h>
#include <unistd.h>
#include <utmp.h>

#include <csignal>

using namespace truehang::sync;
using namespace truehang::sync::test;

namespace {

const std::string id = "01924f6a-7c00-7000-8000-0000000000c1";
const std::string first_form = "name=Ann&password=lead+weight%2C+blue+hem&again=lead+weight%2C+blue+hem";

}  // namespace

TEST(FirstOwner, isWrittenDownOnAPageOfThisMachineAlone) {
    const Peopled workroom;
    EXPECT_TRUE(has(workroom.get("/"), "href=\"/people\""));
    EXPECT_TRUE(has(workroom.get("/people"), "Write down the first owner"));
    const Fields elsewhere{{"X-Forwarded-For", "192.0.2.1"}};
    EXPECT_EQ(workroom.form("/people", first_form, "", elsewhere).status, 401);
    const auto code = run_workroom("pair", workroom.folder.path()).out.substr(0, 9);
    const auto by_code = cookie_in(workroom.form("/sign-in", "code=" + code, "", elsewhere));
    ASSERT_FALSE(by_code.empty());
    EXPECT_EQ(workroom.form("/people", first_form, by_code, elsewhere).status, 403) << "a code makes no owner";
    EXPECT_EQ(workroom.form("/people", first_form, "", {}, "evil.example").status, 400);
    EXPECT_EQ(workroom.form("/people", "name=Ann&password=short&again=short").status, 422);
    EXPECT_EQ(workroom.form("/people", "name=Ann&password=lead+weight%2C+blue+hem&again=else").status, 422);
    EXPECT_EQ(workroom.get("/").status, 200) << "nobody was written down";

    const auto first = workroom.form("/people", first_form);
    ASSERT_EQ(first.status, 303) << first.body;
    EXPECT_EQ(workroom.get("/people", cookie_in(first)).status, 200) << "and is signed in";
    EXPECT_EQ(workroom.get("/").status, 401) << "from now on everybody signs in, here too";
    EXPECT_EQ(workroom.form("/people", first_form).status, 401);
    EXPECT_EQ(workroom.receiver.ask("GET", "/", {{"Cookie", by_code}, {"X-Forwarded-For", "192.0.2.1"}}).status, 401)
        << "what a code opened is shut";
    const auto another = run_workroom("pair", workroom.folder.path()).out.substr(0, 9);
    EXPECT_EQ(workroom.form("/sign-in", "code=" + another).status, 403) << "a code pairs phones alone";
    EXPECT_FALSE(workroom.receiver.pair().empty());
}

TEST(PersonCommand, writesDownChangesAndTakesOut) {
    const Peopled workroom;
    EXPECT_EQ(workroom.person({"add", "--role", "workroom", "Ben"}).exit_code, 2) << "the first is an owner";
    EXPECT_EQ(workroom.person({"add", "Ann"}).exit_code, 2) << "no role";
    EXPECT_EQ(workroom.person({"add", "--role", "owner", "Ann"}, "short").exit_code, 2);
    EXPECT_NE(run_workroom("person", workroom.folder.path(), {"list"}).out.find("Nobody"), std::string::npos);
    EXPECT_EQ(workroom.get("/").status, 200) << "nobody was written down";
    workroom.add("Ann", "owner");
    workroom.add("Ben", "surveyor");
    EXPECT_EQ(workroom.person({"add", "--role", "owner", "ben"}).exit_code, 2) << "that name is there";
    const auto bens = workroom.in("Ben");
    ASSERT_EQ(workroom.get("/devices", bens).status, 403);
    ASSERT_EQ(workroom.person({"role", "--role", "workroom", "Ben"}).exit_code, 0);
    EXPECT_EQ(workroom.get("/devices", bens).status, 200) << "at once";
    const auto listed = run_workroom("person", workroom.folder.path(), {"list"});
    EXPECT_NE(listed.out.find("Ben  workroom, since "), std::string::npos) << listed.out;
    EXPECT_EQ(listed.out.find("argon2"), std::string::npos);
    ASSERT_EQ(workroom.person({"password", "Ben"}, "ladder rail copper ring").exit_code, 0);
    EXPECT_EQ(workroom.get("/", bens).status, 401) << "signed out";
    EXPECT_EQ(workroom.sign_in("Ben").status, 403);
    EXPECT_EQ(workroom.sign_in("Ben", "ladder rail copper ring").status, 303);
    EXPECT_EQ(workroom.person({"out", "Ann"}).exit_code, 2) << "the last owner";
    EXPECT_EQ(workroom.person({"out", "Ben"}).exit_code, 0);
    EXPECT_EQ(workroom.sign_in("Ben", "ladder rail copper ring").status, 403);
    EXPECT_EQ(workroom.person({"out", "Ben"}).exit_code, 2);
    const auto without_file = run_workroom("person", workroom.folder.path(), {"add", "--role", "owner", "Cy"});
    EXPECT_EQ(without_file.exit_code, 2);
    EXPECT_NE(without_file.err.find("--password-file"), std::string::npos) << without_file.err;
    const auto nowhere = (workroom.folder.path() / "nowhere").string();
    const auto missing =
        run_workroom("person", workroom.folder.path(), {"add", "--role", "owner", "--password-file", nowhere, "Cy"});
    EXPECT_EQ(missing.exit_code, 2);
    EXPECT_NE(missing.err.find(nowhere + ": this file can’t be read"), std::string::npos) << missing.err;
}

// POSIX, termios: ECHO in c_lflag; the character at INTR (^C) sends SIGINT.
TEST(PersonCommand, leavesTheTerminalAsItWasWhenItIsBrokenOff) {
    const TemporaryFolder folder;
    const auto data = folder.path().string();
    int master = -1;
    int terminal = -1;
    ASSERT_EQ(::openpty(&master, &terminal, nullptr, nullptr, nullptr), 0);
    const auto shows = [terminal] {
        termios settings{};
        ::tcgetattr(terminal, &settings);
        return (settings.c_lflag & static_cast<tcflag_t>(ECHO)) != 0;
    };
    ASSERT_TRUE(shows());
    const auto process = ::fork();
    if (process == 0) {
        ::login_tty(terminal);
        ::execl(TRUEHANG_WORKROOM, TRUEHANG_WORKROOM, "person", "--data", data.c_str(), "add", "--role", "owner", "Ann",
                nullptr);
        ::_exit(127);
    }
    std::string said;
    pollfd more{master, POLLIN, 0};
    for (char c = 0; said.find("letters: ") == std::string::npos && ::poll(&more, 1, 10'000) == 1;) {
        ASSERT_EQ(::read(master, &c, 1), 1);
        said += c;
    }
    EXPECT_FALSE(shows()) << said;
    ASSERT_EQ(::write(master, "\x03", 1), 1);
    int status = 0;
    ASSERT_EQ(::waitpid(process, &status, 0), process);
    EXPECT_TRUE(WIFSIGNALED(status) && WTERMSIG(status) == SIGINT) << status;
    EXPECT_TRUE(shows());
    ::close(master);
    ::close(terminal);
}

TEST(SignIn, keepsABrowserByACookieForThisSiteAlone) {
    const Peopled workroom;
    workroom.add("Ann", "owner");
    EXPECT_TRUE(has(workroom.get("/sign-in"), "type=\"password\""));
    const auto asked = workroom.get("/sheet/ABCD-EFGH-JKMN");
    EXPECT_EQ(asked.status, 401);
    EXPECT_TRUE(has(asked, "name=\"to\" value=\"/sheet/ABCD-EFGH-JKMN\"")) << asked.body;
    const auto in = workroom.form("/sign-in", "name=ann&password=lead+weight%2C+blue+hem&to=%2Fhouse-rules");
    ASSERT_EQ(in.status, 303) << in.body;
    EXPECT_EQ(in.headers.at("location"), "/house-rules");
    // RFC 6265bis: HttpOnly, SameSite=Strict; without TLS no Secure, or the browser wouldn't keep it.
    const auto& field = in.headers.at("set-cookie");
    for (const auto* wanted : {"; Path=/", "; HttpOnly", "; SameSite=Strict", "; Max-Age="}) {
        EXPECT_NE(field.find(wanted), std::string::npos) << field;
    }
    EXPECT_EQ(field.find("Secure"), std::string::npos) << field;
    EXPECT_EQ(workroom.get("/", cookie_in(in)).status, 200);
    const auto again = workroom.sign_in("Ann", four_words, cookie_in(in));
    ASSERT_EQ(again.status, 303);
    EXPECT_NE(cookie_in(again), cookie_in(in)) << "a new secret each time";
    EXPECT_EQ(workroom.get("/", cookie_in(in)).status, 401) << "the browser’s one before has ended";
    for (const auto* to : {"//evil.example/", "https://evil.example/", "/\\evil.example", "/sign-in", "/rules",
                           "/surveys/a\r\nX-Smuggled: yes", "/surveys/a\nb", "/surveys/a b", "/surveys/ä"}) {
        const auto led =
            workroom.form("/sign-in", "name=ann&password=lead+weight%2C+blue+hem&to=" + percent_encode(to));
        EXPECT_EQ(led.headers.at("location"), "/") << to;
        EXPECT_EQ(led.headers.count("x-smuggled"), 0U) << to;
    }
}

// As long as a password may be (1024 bytes), each byte percent-encoded, as a browser sends what isn’t US-ASCII.
TEST(SignIn, takesTheLongestPasswordWhereverOneIsTyped) {
    std::string longest;
    while (longest.size() < 1024) {
        longest += longest.size() % 3 == 0 ? "ä" : "ö";
    }
    const auto typed = percent_encode(longest);
    const auto twice = "password=" + typed + "&again=" + typed;
    const Peopled workroom;
    const auto first = workroom.form("/people", "name=Ann&" + twice);
    ASSERT_EQ(first.status, 303) << first.body;
    const auto signed_in = workroom.sign_in("Ann", longest);
    ASSERT_EQ(signed_in.status, 303) << signed_in.body;
    const auto ann = cookie_in(signed_in);
    EXPECT_EQ(workroom.form("/me/password", "now=" + typed + "&" + twice, ann).status, 200);
    EXPECT_EQ(workroom.form("/people", "name=Ben&role=workroom&" + twice, ann).status, 303);
    EXPECT_EQ(workroom.form(workroom.path_of("Ben", ann) + "/password", twice, ann).status, 303);
}

TEST(SignIn, isKeptForTlsWhereThereIsTls) {
    const TemporaryFolder folder;
    const auto data = (folder.path() / "data").string();
    const auto file = folder.path() / "typed";
    std::ofstream(file) << four_words << "\n";
    const Receiver receiver(data, {"--listen", "0.0.0.0"});
    ASSERT_EQ(
        run_workroom("person", data, {"add", "--role", "owner", "Ann", "--password-file", file.string()}).exit_code, 0);
    const auto url = "https://127.0.0.1:" + std::to_string(receiver.port());
    const auto in = run_program({"curl", "-ksS", "--max-time", "10", "-D", "-", "-H", "Origin: " + url, "-d",
                                 "name=Ann&password=lead+weight%2C+blue+hem", url + "/sign-in"});
    EXPECT_NE(in.out.find("303"), std::string::npos) << in.out << in.err;
    EXPECT_NE(in.out.find("; Secure"), std::string::npos) << in.out;
}

TEST(SignIn, isRefusedWithOneSentenceWhateverWasWrong) {
    const Peopled workroom;
    workroom.add("Ann", "owner");
    const auto wrong = workroom.sign_in("Ann", "not the password at all");
    const auto nobody = workroom.sign_in("Nan", "not the password at all");
    EXPECT_EQ(wrong.status, 403);
    EXPECT_EQ(nobody.status, 403);
    const auto sentence = "This name and this password don’t belong together.";
    EXPECT_TRUE(has(wrong, sentence));
    EXPECT_TRUE(has(nobody, sentence));
    EXPECT_TRUE(cookie_in(wrong).empty());
    EXPECT_FALSE(has(wrong, "not the password at all")) << "a password isn’t written back";
    EXPECT_EQ(workroom.form("/sign-in", "name=Ann&password=lead+weight%2C+blue+hem", "", {}, "evil.example").status,
              403);
    EXPECT_EQ(workroom.receiver.ask("POST", "/sign-in", {}, "name=Ann&password=lead+weight%2C+blue+hem").status, 403)
        << "no Origin at all";
    EXPECT_EQ(workroom.form("/sign-in", std::string(17000, 'a')).status, 413);
    EXPECT_EQ(workroom.form("/sign-in", "name=%ff%fe&password=aaa").status, 403);
}

TEST(SignIn, waitsAfterWrongTriesAndLocksNobodyOut) {
    const Peopled workroom;
    workroom.add("Ann", "owner");
    const Fields stranger{{"X-Forwarded-For", "192.0.2.66"}};
    for (int i = 0; i < 5; ++i) {
        EXPECT_EQ(workroom.sign_in("Ann", "wrong", "", stranger).status, 403) << i;
    }
    const auto waits = workroom.sign_in("Ann", four_words, "", stranger);
    EXPECT_EQ(waits.status, 429) << "the right one isn’t looked at either";
    EXPECT_GE(std::stoi(waits.headers.at("retry-after")), 1);
    EXPECT_TRUE(has(waits, "Wait 1 second, then try again."));
    EXPECT_EQ(workroom.sign_in("Ann").status, 303) << "on this machine";
    EXPECT_EQ(workroom.sign_in("Ann", four_words, "", {{"X-Forwarded-For", "192.0.2.7"}}).status, 303);
}

TEST(SignIn, ofSomebodyWhoseNameManyTryIsStillTheirs) {
    const Peopled workroom({"--sign-in"});
    workroom.add("Ann", "owner");
    const auto own = cookie_in(workroom.sign_in("Ann", four_words, "", {{"X-Forwarded-For", "192.0.2.200"}}));
    ASSERT_EQ(workroom.form("/sign-out", "", own).status, 303);
    for (int i = 0; i < 20; ++i) {
        const Fields stranger{{"X-Forwarded-For", "198.51.100." + std::to_string(i)}};
        EXPECT_EQ(workroom.sign_in("Ann", "wrong", "", stranger).status, 403) << i;
    }
    const Fields elsewhere{{"X-Forwarded-For", "203.0.113.5"}};
    EXPECT_EQ(workroom.sign_in("Ann", four_words, "", elsewhere).status, 429);
    EXPECT_EQ(workroom.sign_in("Ann", four_words, own, elsewhere).status, 303) << "a browser that was hers before";
}

TEST(People, areSeenToByAnOwner) {
    const Peopled workroom;
    workroom.add("Ann", "owner");
    const auto ann = workroom.in("Ann");
    const auto words = "&password=lead+weight%2C+blue+hem&again=lead+weight%2C+blue+hem";
    ASSERT_EQ(workroom.form("/people", std::string("name=Ben&role=workroom") + words, ann).status, 303);
    EXPECT_EQ(workroom.form("/people", std::string("name=ben&role=owner") + words, ann).status, 422);
    const auto ben = workroom.in("Ben");
    const auto path = workroom.path_of("Ben", ann);
    ASSERT_FALSE(path.empty());
    EXPECT_TRUE(has(workroom.get(path, ann), "a browser"));
    EXPECT_EQ(workroom.get(path, ben).status, 403);
    ASSERT_EQ(workroom.form(path + "/role", "role=surveyor", ann).status, 303);
    EXPECT_EQ(workroom.get("/devices", ben).status, 403);
    EXPECT_EQ(workroom.form(path + "/role", "role=king", ann).status, 422);
    ASSERT_EQ(workroom.form(path + "/sessions", "", ann).status, 303);
    EXPECT_EQ(workroom.get("/", ben).status, 401);
    const auto again = workroom.in("Ben");
    ASSERT_EQ(
        workroom.form(path + "/password", "password=ladder+rail+copper+ring&again=ladder+rail+copper+ring", ann).status,
        303);
    EXPECT_EQ(workroom.get("/", again).status, 401);
    EXPECT_EQ(workroom.sign_in("Ben", "ladder rail copper ring").status, 303);
    const auto own = workroom.path_of("Ann", ann);
    EXPECT_EQ(workroom.form(own + "/out", "", ann).status, 422) << "nobody takes themselves out";
    EXPECT_EQ(workroom.form(own + "/role", "role=surveyor", ann).status, 422) << "the last owner";
    ASSERT_EQ(workroom.form(path + "/out", "", ann).status, 303);
    EXPECT_EQ(workroom.sign_in("Ben", "ladder rail copper ring").status, 403);
    EXPECT_EQ(workroom.get(path, ann).status, 404);
    for (const auto* trick : {"/people/..%2f..", "/people/%00", "/people/%ff", "/people/' OR 1=1"}) {
        EXPECT_NE(workroom.get(trick, ann).status, 200) << trick;
    }
}

TEST(People, haveNamesThatAreTextWhateverTheyHold) {
    const Peopled workroom;
    workroom.add("<script>alert(1)</script>\"'&", "owner");
    const auto cookie = workroom.in("<script>alert(1)</script>\"'&");
    const auto own = workroom.get("/people", cookie).body;
    const auto at = own.find("/people/");
    for (const auto& path :
         {std::string("/"), std::string("/people"), std::string("/me"), own.substr(at, own.find('"', at) - at)}) {
        const auto page = workroom.get(path, cookie);
        EXPECT_EQ(page.status, 200) << path;
        EXPECT_FALSE(has(page, "<script>")) << path;
        EXPECT_TRUE(has(page, "&lt;script&gt;alert(1)&lt;/script&gt;")) << path;
    }
    EXPECT_FALSE(has(workroom.sign_in("<script>alert(1)</script>", "wrong"), "<script"));
}

TEST(OwnSessions, areListedAndEndedByTheirPerson) {
    const Peopled workroom;
    workroom.add("Ann", "owner");
    workroom.add("Ben", "surveyor");
    const Fields phone{{"User-Agent", "Mozilla/5.0 (Android 15; Mobile; rv:140.0) Gecko/140.0 Firefox/140.0"}};
    const auto one = cookie_in(workroom.sign_in("Ben", four_words, "", phone));
    const auto two = workroom.in("Ben");
    const auto ann = workroom.in("Ann");
    const auto page = workroom.get("/me", two);
    EXPECT_TRUE(has(page, "Firefox on Android")) << page.body;
    EXPECT_TRUE(has(page, "(this one)"));
    EXPECT_FALSE(has(page, one.substr(one.find('.') + 1))) << "no secret";
    const auto session = one.substr(one.find('=') + 1, 16);
    ASSERT_EQ(workroom.form("/me/sessions", "session=" + session, ann).status, 303);
    EXPECT_EQ(workroom.get("/", one).status, 200) << "it isn’t Ann’s";
    ASSERT_EQ(workroom.form("/me/sessions", "session=" + session, two).status, 303);
    EXPECT_EQ(workroom.get("/", one).status, 401);
    const auto three = workroom.in("Ben");
    ASSERT_EQ(workroom.form("/me/sessions", "", two).status, 303);
    EXPECT_EQ(workroom.get("/", three).status, 401);
    EXPECT_EQ(workroom.get("/", two).status, 200) << "all but the one that asks";
    ASSERT_EQ(workroom.form("/sign-out", "", two).status, 303);
    EXPECT_EQ(workroom.get("/", two).status, 401);
}

TEST(OwnPassword, isChangedByWhoKnowsTheOneBefore) {
    const Peopled workroom;
    workroom.add("Ann", "owner");
    const auto one = workroom.in("Ann");
    const auto two = workroom.in("Ann");
    const auto change = [&](const std::string& now, const std::string& to, const std::string& again) {
        return workroom.form(
            "/me/password",
            "now=" + percent_encode(now) + "&password=" + percent_encode(to) + "&again=" + percent_encode(again), one);
    };
    EXPECT_EQ(change("guessed", "ladder rail copper ring", "ladder rail copper ring").status, 403);
    EXPECT_EQ(change(four_words, "ladder rail copper ring", "another").status, 422);
    EXPECT_EQ(change(four_words, "short", "short").status, 422);
    EXPECT_EQ(workroom.get("/", two).status, 200) << "nothing was changed";
    ASSERT_EQ(change(four_words, "ladder rail copper ring", "ladder rail copper ring").status, 200);
    EXPECT_EQ(workroom.get("/", one).status, 200);
    EXPECT_EQ(workroom.get("/", two).status, 401);
    EXPECT_EQ(workroom.sign_in("Ann").status, 403);
    EXPECT_EQ(workroom.sign_in("Ann", "ladder rail copper ring").status, 303);
    for (int i = 0; i < 5; ++i) {
        static_cast<void>(change("guessed", "fifteen letters", "fifteen letters"));
    }
    EXPECT_EQ(change("guessed", "fifteen letters", "fifteen letters").status, 429) << "tries are counted here too";
}

TEST(Steps, areMarkedByTheOneWhoIsSignedInWhateverIsTyped) {
    const Peopled workroom;
    workroom.add("Ann", "owner");
    workroom.add("Ben", "workroom");
    workroom.add("Sue", "surveyor");
    const auto token = workroom.receiver.pair();
    ASSERT_EQ(workroom.receiver.put_survey(token, id, 1, example_survey(id, 1)).status, 201);
    const auto path = "/surveys/" + id + "/steps";
    const auto ben = workroom.in("Ben");
    const auto page = workroom.get(path, ben);
    EXPECT_FALSE(has(page, "Who marks it"));
    EXPECT_TRUE(has(page, "Marked by <bdi>Ben</bdi>"));
    const auto form = "by=Ann&revision=1&mark=" + percent_encode("set/cut/parlour/parlour-south/");
    ASSERT_EQ(workroom.form(path, form, ben).status, 303);
    const auto marks =
        read_marks(workroom.receiver.ask("GET", marks_path(id), {{"Authorization", "Bearer " + token}}).body);
    ASSERT_EQ(marks.value().marks.size(), 1U);
    EXPECT_EQ(marks.value().marks[0].by, "Ben");
    const auto sue = workroom.in("Sue");
    const auto seen = workroom.get(path, sue);
    EXPECT_TRUE(has(seen, "Cut from revision 1"));
    EXPECT_FALSE(has(seen, "<button")) << "a surveyor looks";
    EXPECT_EQ(workroom.form(path, form, sue).status, 403);
    EXPECT_FALSE(has(workroom.get("/house-rules", sue), "Save as a new version"));
    EXPECT_FALSE(has(workroom.get("/surveys/" + id + "/rolls?change", sue), "Save these rolls"));
    EXPECT_FALSE(has(workroom.get("/", sue), "href=\"/devices\""));
    EXPECT_FALSE(has(workroom.get("/devices", ben), "/devices/revoke")) << "an owner revokes";
    EXPECT_FALSE(has(workroom.get("/", ben), "href=\"/people\""));
}

TEST(SignIn, leavesNoSecretInTheLog) {
    const TemporaryFolder folder;
    const auto log = folder.path() / "log";
    const auto data = folder.path() / "data";
    const auto file = folder.path() / "typed";
    std::ofstream(file) << four_words << "\n";
    std::string cookie;
    {
        Receiver receiver(data, {"--log"}, {"sh", "-c", "exec \"$0\" \"$@\" 2>" + log.string()});
        ASSERT_EQ(run_workroom("person", data, {"add", "--role", "owner", "Annabel", "--password-file", file.string()})
                      .exit_code,
                  0);
        const auto host = "127.0.0.1:" + std::to_string(receiver.port());
        const Fields form{{"Host", host}, {"Origin", "http://" + host}, {"User-Agent", "Firefox/140.0"}};
        cookie = cookie_in(receiver.ask("POST", "/sign-in", form, "name=Annabel&password=wrongly+typed"));
        cookie = cookie_in(receiver.ask("POST", "/sign-in", form, "name=Annabel&password=lead+weight%2C+blue+hem"));
        ASSERT_FALSE(cookie.empty());
        EXPECT_EQ(receiver.ask("GET", "/people", {{"Cookie", cookie}}).status, 200);
        EXPECT_EQ(receiver.end(SIGTERM), 0);
    }
    const auto text = file_text(log);
    EXPECT_NE(text.find(R"("status":303)"), std::string::npos) << text;
    for (const auto& secret : {std::string("lead"), std::string("wrongly"), std::string("Annabel"),
                               cookie.substr(cookie.find('=') + 1), cookie.substr(cookie.find('.') + 1)}) {
        EXPECT_EQ(text.find(secret), std::string::npos) << text;
    }
}
