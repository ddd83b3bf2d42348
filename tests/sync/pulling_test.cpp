// SPDX-License-Identifier: Apache-2.0
#include "two_phones.h"

#include <gtest/gtest.h>

#include <chrono>
#include <random>

// Phones that ask what others sent, by the protocol’s text: what came is in the visit, whatever is cut, and once both
// know all, nothing is sent any more.

using namespace truehang;
using namespace truehang::sync;
using namespace truehang::sync::test;

namespace {

class Asking {
public:
    Asking() {
        for (StorePhone* phone : {&two.anna, &two.ben}) {
            phone->asks = true;
            phone->start();
        }
    }

    /// Lets a phone run for a while of its own time.
    void run(StorePhone& phone) {
        const Time until = phone.now + std::chrono::minutes(20);
        for (int i = 0; i < 500 && phone.now < until; ++i) {
            two.step(phone);
        }
    }
    void run_both() {
        for (int round = 0; round < 3; ++round) {
            run(two.anna);
            run(two.ben);
        }
    }

    static std::set<std::string> readings(StorePhone& phone) {
        std::set<std::string> ids;
        const Survey survey = phone.store().visit(id).value();
        for (const Window& window : survey.rooms.at(0).windows) {
            for (const Reading& reading : window.readings) {
                ids.insert(reading.id);
            }
        }
        return ids;
    }

    /// Both have all and say the same, and nothing waits.
    void expect_alike() {
        two.expect_all_there();
        EXPECT_EQ(readings(two.anna), two.entered);
        EXPECT_EQ(readings(two.ben), two.entered);
        const auto plain = [](StorePhone& phone) {
            Survey survey = phone.store().visit(id).value();
            survey.parents.reset();
            survey.revision.reset();
            return write_survey(merge(survey, survey, survey).value(), false);
        };
        EXPECT_EQ(plain(two.anna), plain(two.ben));
    }

    TwoPhones two;
};

TEST(Pulling, WhoHasNothingToSayGetsWhatTheOtherSent) {
    Asking both;
    both.run_both();
    both.two.read(both.two.anna, "a1", 0);
    both.run(both.two.anna);
    const int puts = both.two.workroom.puts;
    both.run(both.two.ben);
    EXPECT_EQ(Asking::readings(both.two.ben), std::set<std::string>{"a1"});
    // It is theirs, so there is nothing to send, and it counts as at the workroom.
    EXPECT_EQ(both.two.workroom.puts, puts);
    const auto summary = both.two.ben.store().summary(id).value();
    EXPECT_EQ(summary.confirmed_revision, summary.revision);
    EXPECT_EQ(both.two.ben.store().last_met(id)->value().sent_by, "The other phone");
    EXPECT_EQ(both.two.ben.store().undo(id).value(), "Put together");
    EXPECT_TRUE(Asking::readings(both.two.ben).empty());
}

TEST(Pulling, BothComeToTheSameAndThenBothAreQuiet) {
    Asking both;
    both.two.read(both.two.anna, "a1", 0);
    both.two.read(both.two.ben, "b1", 0);
    both.two.note(both.two.anna, "Damp.");
    both.two.note(both.two.ben, "Dry.");
    both.run_both();
    both.expect_alike();
    EXPECT_EQ(both.two.anna.store().visit(id)->changed_twice.size(), 1U);
    const int puts = both.two.workroom.puts;
    both.run_both();
    EXPECT_EQ(both.two.workroom.puts, puts);
}

TEST(Pulling, WhatOneSettledIsSettledForTheOther) {
    Asking both;
    both.two.note(both.two.anna, "Damp.");
    both.two.note(both.two.ben, "Dry.");
    both.run_both();
    Survey settled = settle(both.two.anna.store().visit(id).value(), {"/windows/w1/notes", 0}).value();
    ASSERT_TRUE(both.two.anna.store().keep(settled, "settled"));
    both.run_both();
    const Survey there = both.two.ben.store().visit(id).value();
    EXPECT_EQ(there.rooms[0].windows[0].notes, "Damp.");
    EXPECT_TRUE(there.changed_twice.empty());
}

TEST(Pulling, PhotosOfTheOtherComeByTheirDigest) {
    Asking both;
    const std::string bytes = "\xFF\xD8\xFF a picture";
    const auto sha = both.two.anna.store().keep_photo(bytes, "image/jpeg").value();
    Survey survey = both.two.anna.store().visit(id).value();
    survey.rooms[0].windows[0].photos.emplace_back().sha256 = sha;
    ASSERT_TRUE(both.two.anna.store().keep(survey, "photo"));
    both.run(both.two.anna);
    const std::string there = std::exchange(both.two.workroom.photos[sha], "something else");
    both.run(both.two.ben);
    EXPECT_FALSE(both.two.ben.store().photo_bytes(sha)) << "bytes of another digest aren't it";
    both.two.workroom.photos[sha] = there;
    both.run_both();
    EXPECT_EQ(both.two.ben.store().photo_bytes(sha).value(), bytes);
    EXPECT_TRUE(both.two.ben.store().pending()->empty());
    EXPECT_EQ(both.two.ben.store().summary(id)->photos_confirmed, 1);
}

TEST(Pulling, EveryStepCanBeCutInEveryWay) {
    // Of the phone that asks: what came, the document, what came again; with edits of its own, the sending too.
    for (int cut = 0; cut < 5; ++cut) {
        for (int fate = 1; fate < static_cast<int>(Fate::count); ++fate) {
            for (const bool edits : {false, true}) {
                Asking both;
                both.two.read(both.two.anna, "a1", 0);
                both.run(both.two.anna);
                if (edits) {
                    both.two.read(both.two.ben, "b1", 0);
                }
                for (int i = 0; i < cut; ++i) {
                    both.two.step(both.two.ben);
                }
                both.two.step(both.two.ben, static_cast<Fate>(fate));
                both.run_both();
                both.expect_alike();
                ASSERT_FALSE(testing::Test::HasFailure()) << "cut " << cut << ", fate " << fate << ", edits " << edits;
            }
        }
    }
}

TEST(Pulling, ByChanceNothingIsLostAndAllComeToTheSame) {
    for (unsigned seed = 1; seed <= 15; ++seed) {
        std::mt19937 random(seed);
        const auto pick = [&random](unsigned below) { return random() % below; };
        Asking both;
        for (int i = 0; i < 60; ++i) {
            StorePhone& phone = pick(2) == 0 ? both.two.anna : both.two.ben;
            if (pick(4) == 0) {
                both.two.read(phone, "r" + std::to_string(i), static_cast<int>(pick(2)));
            } else {
                const bool well = pick(2) == 0;
                both.two.step(phone,
                              well ? Fate::arrives : static_cast<Fate>(pick(static_cast<unsigned>(Fate::count))));
            }
        }
        both.run_both();
        both.expect_alike();
        ASSERT_FALSE(testing::Test::HasFailure()) << "seed " << seed;
    }
}

}  // namespace
