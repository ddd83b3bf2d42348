// SPDX-License-Identifier: Apache-2.0
// Passwords, sessions and tries, with the clock in the test's hand.
#include "receiver_process.h"
#include "workroom/people/password.h"
#include "workroom/people/people_shelf.h"
#include "workroom/people/sessions.h"
#include "workroom/people/sign_in_desk.h"
#include "workroom/people/sign_in_tries.h"

#include <gtest/gtest.h>

#include <fstream>
#include <thread>

using namespace truehang;
using namespace truehang::workroom;
using namespace std::chrono_literals;

namespace {

const std::string four_words = "lead weight, blue hem";
const std::string others = "ladder rail copper ring";

struct Workroom {
    sync::test::TemporaryFolder folder;
    sync::Time now = *sync::read_time("2026-03-14T10:00:00Z");
    std::unique_ptr<Archive> archive =
        std::move(Archive::open(
                      folder.path(), [this] { return now; }, sync::test::database_for(folder.path())))
            .value();
    PeopleShelf people{*archive};
    PersonSessions sessions{*archive};

    [[nodiscard]] std::string add(const std::string& name, Role role) {
        return std::move(people.add(name, role, four_words)).value().id;
    }
    [[nodiscard]] Proven proven(const std::string& person, const std::string& password = four_words) {
        return people.with_password((*people.by_id(person))->name, password).value().value();
    }
    [[nodiscard]] std::string begin(const std::string& person, const std::string& password = four_words) {
        return std::move(sessions.begin(proven(person, password), "Firefox/140.0")).value();
    }
    [[nodiscard]] bool holds(const std::string& cookie) { return sessions.of(cookie).value().has_value(); }
};

/// The most memory this process has held so far, in KiB (proc(5)).
long long most_memory() {
    std::ifstream status("/proc/self/status");
    for (std::string line; std::getline(status, line);) {
        if (line.starts_with("VmHWM:")) {
            return std::stoll(line.substr(6));
        }
    }
    return 0;
}

}  // namespace

// OWASP's Password Storage Cheat Sheet, Argon2id: m=19456 (19 MiB), t=2, p=1. The form is the reference
// implementation's, as its command `argon2 -e` writes it.
TEST(Passwords, areKeptByArgon2idWithTheSettingsOfOwasp) {
    const auto kept = password_to_keep(four_words);
    ASSERT_TRUE(kept.ok());
    EXPECT_TRUE(kept->starts_with("$argon2id$v=19$m=19456,t=2,p=1$")) << *kept;
    EXPECT_NE(*kept, *password_to_keep(four_words)) << "a salt of its own each time";
    EXPECT_TRUE(password_holds(*kept, four_words));
    EXPECT_FALSE(password_holds(*kept, others));
    EXPECT_FALSE(password_holds(*kept, four_words + " "));
    EXPECT_FALSE(password_holds("", four_words));
    EXPECT_FALSE(password_holds("", ""));
    EXPECT_FALSE(password_holds("$argon2id$nonsense", four_words));
}

// The command of the reference implementation of RFC 9106 works the tag; here it is compared.
TEST(Passwords, areTheSameAsTheReferenceImplementationWorks) {
    for (const auto* salt : {"sixteen bytes it", "another salt of 20 b"}) {
        auto encoded = sync::test::run_program(
            {"argon2", salt, "-id", "-t", "2", "-k", "19456", "-p", "1", "-l", "32", "-e"}, four_words);
        ASSERT_EQ(encoded.exit_code, 0) << encoded.err;
        encoded.out.erase(encoded.out.find_last_not_of('\n') + 1);
        EXPECT_TRUE(password_holds(encoded.out, four_words)) << encoded.out;
        EXPECT_FALSE(password_holds(encoded.out, others));
    }
}

// NIST SP 800-63B-4, 3.1.1.2: at least 15 characters where a password stands alone, Unicode counted by code points, no
// rule on their kinds; what is easily guessed is refused.
TEST(Passwords, areLongRatherThanMixed) {
    EXPECT_FALSE(why_not_password("fourteen lette", "").empty());
    EXPECT_EQ(why_not_password("fifteen letters", ""), "");
    EXPECT_FALSE(why_not_password("ääääääääää ", "").empty()) << "11 letters of 21 bytes";
    EXPECT_FALSE(why_not_password(std::string(20, 'a'), "").empty());
    EXPECT_FALSE(why_not_password("Annamaria Tammsaare", "annamaria tammsaare").empty());
    EXPECT_FALSE(why_not_password(std::string(1000, 'a') + std::string(1000, 'b'), "").empty());
}

// Two of 19 MiB at once are 38; without a bound sixteen would take 304.
TEST(Passwords, holdBoundedMemoryHoweverManyAreTried) {
    const auto kept = *password_to_keep(four_words);
    const auto before = most_memory();
    std::vector<std::thread> threads;
    std::atomic<int> held{0};
    for (int i = 0; i < 16; ++i) {
        threads.emplace_back([&] { held += password_holds(kept, four_words) ? 1 : 0; });
    }
    for (auto& thread : threads) {
        thread.join();
    }
    EXPECT_EQ(held, 16);
    EXPECT_LE(most_memory() - before, 48 * 1024);
}

TEST(People, beginWithAnOwnerAndNeverLoseTheLast) {
    Workroom workroom;
    EXPECT_FALSE(*workroom.people.any());
    EXPECT_EQ(workroom.people.add("Ann", Role::workroom, four_words).error().code, ErrorCode::conflict);
    const auto ann = workroom.add(" Ann ", Role::owner);
    EXPECT_EQ(workroom.people.add("Ben", Role::owner, four_words, true).error().code, ErrorCode::conflict);
    EXPECT_EQ(workroom.people.add("ANN", Role::workroom, four_words).error().code, ErrorCode::conflict);
    EXPECT_EQ(workroom.people.add("Ben", Role::workroom, "short").error().code, ErrorCode::out_of_range);
    EXPECT_EQ(workroom.people.add(" ", Role::workroom, four_words).error().code, ErrorCode::out_of_range);
    const auto ben = workroom.add("Ben", Role::workroom);
    EXPECT_EQ(workroom.people.set_role(ann, Role::surveyor).error().code, ErrorCode::conflict);
    EXPECT_EQ(workroom.people.take_out(ann).error().code, ErrorCode::conflict);
    ASSERT_TRUE(workroom.people.set_role(ben, Role::owner).ok());
    ASSERT_TRUE(workroom.people.take_out(ann).ok());
    EXPECT_EQ(workroom.people.take_out(ann).error().code, ErrorCode::missing);
    ASSERT_EQ(workroom.people.all()->size(), 1U);
    EXPECT_EQ(workroom.people.all()->front().name, "Ben");
    EXPECT_TRUE(workroom.people.take_out(ben).ok()) << "who works alone again needs nobody";
}

TEST(People, haveNamesThatAreTextInUtf8) {
    EXPECT_EQ(person_name("  Jürgen\n\x7f Öt\xc2\x9b "), "Jürgen Öt");
    EXPECT_EQ(person_name("鈴木 🪡"), "鈴木 🪡");
    // Not UTF-8 by RFC 3629: a byte alone, one cut off, a surrogate, more bytes than needed, beyond U+10FFFF.
    for (const auto* odd : {"A\xff", "A\xc3", "\xed\xa0\x80", "\xe0\x80\xaf", "\xf4\x90\x80\x80", "\xc3\x28"}) {
        EXPECT_EQ(person_name(odd), std::nullopt) << odd;
    }
    EXPECT_EQ(person_name(std::string(101, 'a')), std::nullopt);
}

TEST(PeoplesSessions, endInTimeAndAreKnownForLonger) {
    Workroom workroom;
    const auto ann = workroom.add("Ann", Role::owner);
    const auto cookie = workroom.begin(ann);
    ASSERT_TRUE(workroom.holds(cookie));
    EXPECT_EQ(workroom.sessions.of(cookie).value()->person.name, "Ann");
    workroom.now += session_life - 1ms;
    EXPECT_TRUE(workroom.holds(cookie));
    workroom.now += 1ms;
    EXPECT_FALSE(workroom.holds(cookie));
    EXPECT_FALSE(workroom.sessions.known(cookie, "ann")->empty());
    EXPECT_TRUE(workroom.sessions.known(cookie, "Ben")->empty()) << "another’s browser";
    workroom.now += browser_known;
    EXPECT_TRUE(workroom.sessions.known(cookie, "Ann")->empty());
}

TEST(PeoplesSessions, areKeptAsDigestsAndKnownByTheirSecretAlone) {
    Workroom workroom;
    const auto ann = workroom.add("Ann", Role::owner);
    const auto cookie = workroom.begin(ann);
    const auto other = workroom.begin(ann);
    const auto id = cookie.substr(0, 16);
    EXPECT_FALSE(workroom.holds(id + other.substr(16)));
    EXPECT_FALSE(workroom.holds(id + "."));
    EXPECT_FALSE(workroom.holds(id));
    EXPECT_FALSE(workroom.holds("\xff\xfe.x"));
    const auto secret = cookie.substr(17);
    ASSERT_EQ(secret.size(), 64U);
    workroom.archive->close();
    for (const auto& entry : std::filesystem::recursive_directory_iterator(workroom.folder.path())) {
        if (entry.is_regular_file()) {
            const auto bytes = sync::test::file_text(entry.path());
            EXPECT_EQ(bytes.find(secret), std::string::npos) << entry.path();
            EXPECT_EQ(bytes.find(four_words), std::string::npos) << entry.path();
        }
    }
}

TEST(PeoplesSessions, endWithASignOutANewPasswordOrTheirPerson) {
    Workroom workroom;
    const auto ann = workroom.add("Ann", Role::owner);
    const auto ben = workroom.add("Ben", Role::workroom);
    const auto one = workroom.begin(ben);
    const auto two = workroom.begin(ben);
    const auto anns = workroom.begin(ann);
    ASSERT_TRUE(workroom.sessions.sign_out(one.substr(0, 16)).ok());
    EXPECT_FALSE(workroom.holds(one));
    EXPECT_TRUE(workroom.holds(two));
    EXPECT_EQ(workroom.sessions.all(ben)->size(), 1U);
    EXPECT_FALSE(workroom.sessions.known(one, "Ben")->empty());
    ASSERT_TRUE(workroom.sessions.end(ann, two.substr(0, 16)).ok());
    EXPECT_TRUE(workroom.holds(two)) << "it isn’t Ann’s to end as her own";
    ASSERT_TRUE(workroom.people.set_password(ben, others).ok());
    EXPECT_FALSE(workroom.holds(two));
    EXPECT_TRUE(workroom.sessions.known(two, "Ben")->empty()) << "whoever knew the old one is a stranger now";
    EXPECT_FALSE(workroom.people.with_password("Ben", four_words)->has_value());
    EXPECT_TRUE(workroom.people.with_password("ben", others)->has_value());
    const auto three = workroom.begin(ben, others);
    const auto under_way = workroom.proven(ben, others);
    ASSERT_TRUE(workroom.people.take_out(ben).ok());
    EXPECT_FALSE(workroom.holds(three));
    EXPECT_TRUE(workroom.holds(anns));
    EXPECT_EQ(workroom.sessions.begin(under_way, "").error().code, ErrorCode::missing);
}

// An old password was shown, then another was set, then the sign-in goes on.
TEST(PeoplesSessions, dontBeginWithAPasswordThatWasChangedMeanwhile) {
    Workroom workroom;
    const auto ann = workroom.add("Ann", Role::owner);
    const auto under_way = workroom.proven(ann);
    ASSERT_TRUE(workroom.people.set_password(ann, others).ok());
    EXPECT_EQ(workroom.sessions.begin(under_way, "").error().code, ErrorCode::missing);
    EXPECT_TRUE(workroom.sessions.all(ann)->empty());
    EXPECT_TRUE(workroom.holds(workroom.begin(ann, others)));
}

// Ann shows her password to choose another; meanwhile an owner gives her one, because somebody may know hers. What the
// owner set stands, whichever of the two is written last.
TEST(People, dontOverwriteAPasswordThatWasSetMeanwhile) {
    Workroom workroom;
    const auto ann = workroom.add("Ann", Role::owner);
    const auto shown = workroom.proven(ann);
    const auto cookie = workroom.begin(ann);
    ASSERT_TRUE(workroom.people.set_password(ann, others).ok());
    const auto late = workroom.people.change_password(shown, "a third one, of her own", cookie.substr(0, 16));
    ASSERT_FALSE(late.ok());
    EXPECT_EQ(late.error().code, ErrorCode::conflict);
    EXPECT_TRUE(workroom.people.with_password("Ann", others)->has_value());
    EXPECT_FALSE(workroom.people.with_password("Ann", "a third one, of her own")->has_value());
    EXPECT_FALSE(workroom.holds(cookie)) << "the owner signed her out";

    const auto one = workroom.begin(ann, others);
    const auto two = workroom.begin(ann, others);
    EXPECT_EQ(workroom.people.change_password(workroom.proven(ann, others), "short", "").error().code,
              ErrorCode::out_of_range);
    ASSERT_TRUE(workroom.people.change_password(workroom.proven(ann, others), four_words, one.substr(0, 16)).ok());
    EXPECT_TRUE(workroom.people.with_password("Ann", four_words)->has_value());
    EXPECT_TRUE(workroom.holds(one));
    EXPECT_FALSE(workroom.holds(two));

    const auto ben = workroom.add("Ben", Role::workroom);
    const auto bens = workroom.proven(ben);
    ASSERT_TRUE(workroom.people.take_out(ben).ok());
    EXPECT_EQ(workroom.people.change_password(bens, others, "").error().code, ErrorCode::missing);
}

// By hand from what the class says: five are free, then a second, doubled up to 300 s.
TEST(SignInTries, slowDownAPlaceThatGuesses) {
    sync::Time now = *sync::read_time("2026-03-14T10:00:00Z");
    SignInTries tries([&] { return now; });
    const SignInTries::Try one{"192.0.2.1", "ann", false};
    for (int i = 0; i < 5; ++i) {
        ASSERT_EQ(tries.begin(one), 0s) << i;
    }
    for (const auto wait : {1s, 2s, 4s, 8s, 16s, 32s, 64s, 128s, 256s, 300s, 300s}) {
        EXPECT_EQ(tries.begin({"192.0.2.1", "other", false}), wait) << "whatever name it tries";
        EXPECT_EQ(tries.begin(one), wait) << "asking while it waits changes nothing";
        now += wait - 1ms;
        EXPECT_EQ(tries.begin(one), 1s);
        now += 1ms;
        ASSERT_EQ(tries.begin({"192.0.2.1", std::to_string(wait.count()), false}), 0s) << wait.count();
    }
    now += SignInTries::forgotten;
    EXPECT_EQ(tries.begin(one), 0s);
}

TEST(SignInTries, ofStrangersDontLockOutTheOwnerOfAName) {
    sync::Time now = *sync::read_time("2026-03-14T10:00:00Z");
    SignInTries tries([&] { return now; });
    for (int i = 0; i < 20; ++i) {
        ASSERT_EQ(tries.begin({"192.0.2." + std::to_string(i), "ann", false}), 0s);
    }
    EXPECT_EQ(tries.begin({"198.51.100.1", "ann", false}), 30s) << "from wherever";
    EXPECT_EQ(tries.begin({"198.51.100.1", "ben", false}), 0s) << "another’s name";
    EXPECT_EQ(tries.begin({"here", "ann", true}), 0s);
    EXPECT_EQ(tries.begin({"browser 1", "ann", true}), 0s);
    now += 30s;
    EXPECT_EQ(tries.begin({"198.51.100.1", "ann", false}), 0s) << "a delay, no lock";
}

TEST(SignInTries, areForgivenToThoseWhoWereRight) {
    sync::Time now = *sync::read_time("2026-03-14T10:00:00Z");
    SignInTries tries([&] { return now; });
    const SignInTries::Try one{"192.0.2.1", "ann", false};
    for (int i = 0; i < 100; ++i) {
        ASSERT_EQ(tries.begin(one), 0s) << i;
        tries.succeeded(one);
    }
    for (int i = 0; i < 6; ++i) {
        static_cast<void>(tries.begin(one));
    }
    now -= 1h;
    EXPECT_EQ(tries.begin(one), 0s) << "a clock that was set back holds nobody up for an hour";
}

// RFC 4291, 2.5.4 and 2.5.5.2.
TEST(SignInTries, areCountedByAddressOrNetwork) {
    http::RequestHead head;
    head.peer = "2001:db8:1:2:3:4:5:6";
    const auto network = place_of(head);
    head.peer = "2001:db8:1:2:ffff::1";
    EXPECT_EQ(place_of(head), network);
    head.peer = "2001:db8:1:3::1";
    EXPECT_NE(place_of(head), network);
    head.peer = "::ffff:192.0.2.7";
    EXPECT_EQ(place_of(head), "192.0.2.7");
    head.peer = "192.0.2.7";
    head.headers = {{"X-Forwarded-For", "203.0.113.9"}};
    EXPECT_EQ(place_of(head), "192.0.2.7") << "anybody may say that";
    head.peer = "127.0.0.1";
    head.from_this_machine = true;
    head.headers = {{"X-Forwarded-For", "203.0.113.9, 198.51.100.4"}};
    EXPECT_EQ(place_of(head), "198.51.100.4") << "what the proxy here added";
    head.headers = {{"X-Forwarded-For", "nonsense"}};
    EXPECT_EQ(place_of(head), "elsewhere");
}
