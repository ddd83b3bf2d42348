// SPDX-License-Identifier: Apache-2.0
#include "editing.h"
#include "merge/merge.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <set>

// The laws that merge.h states, tried on people who edit by chance. They follow from what a merge is to be (any order,
// any repeats, the same result; nothing lost), not from how it is done.

using namespace truehang;
using namespace truehang::editing;

namespace {

Survey merged(const Survey& base, const Survey& ours, const Survey& theirs) {
    auto result = merge(base, ours, theirs);
    if (!result) {
        RC_FAIL(result.error().front().pointer + ": " + result.error().front().text);
    }
    return std::move(result).value();
}

/// The survey's bytes as a merge writes them.
std::string bytes(const Survey& survey) { return write_survey(merged(survey, survey, survey), true); }

/// All readings of a survey by their ids; with its side-by-side values.
std::set<std::string> readings(const Survey& survey) {
    std::set<std::string> ids;
    for (const Room& room : survey.rooms) {
        for (const Window& window : room.windows) {
            for (const Reading& one : window.readings) {
                ids.insert(one.id);
            }
        }
    }
    return ids;
}

RC_GTEST_PROP(MergeLaw, OneChangedItIsTaken, ()) {
    const Survey base = house();
    const Survey ours = edited(base, "anna", 12);
    RC_ASSERT(write_survey(merged(base, ours, base)) == bytes(ours));
    RC_ASSERT(write_survey(merged(base, base, ours)) == bytes(ours));
}

RC_GTEST_PROP(MergeLaw, TheSameTwiceIsOnce, ()) {
    const Survey base = house();
    const Survey ours = edited(base, "anna", 12);
    RC_ASSERT(write_survey(merged(base, ours, ours)) == bytes(ours));
}

RC_GTEST_PROP(MergeLaw, WhoseItIsDoesntMatter, ()) {
    const Survey base = house();
    const Survey ours = edited(base, "anna");
    const Survey theirs = edited(base, "ben");
    RC_ASSERT(write_survey(merged(base, ours, theirs)) == write_survey(merged(base, theirs, ours)));
}

RC_GTEST_PROP(MergeLaw, GroupingDoesntMatter, ()) {
    const Survey base = house();
    const Survey anna = edited(base, "anna", 4);
    const Survey ben = edited(base, "ben", 4);
    const Survey carl = edited(base, "carl", 4);
    RC_ASSERT(write_survey(merged(base, merged(base, anna, ben), carl)) ==
              write_survey(merged(base, anna, merged(base, ben, carl))));
}

RC_GTEST_PROP(MergeLaw, AnyOrderAndAnyRepeatsGiveTheSameBytes, ()) {
    const Survey base = house();
    const std::vector<Survey> people{edited(base, "anna", 4), edited(base, "ben", 4), edited(base, "carl", 4),
                                     edited(base, "dora", 4)};
    std::vector<std::size_t> order{0, 1, 2, 3};
    const auto extra = *rc::gen::container<std::vector<std::size_t>>(3, rc::gen::inRange<std::size_t>(0, 4));
    Survey once = base;
    for (const std::size_t who : order) {
        once = merged(base, once, people[who]);
    }
    order.insert(order.end(), extra.begin(), extra.end());
    const auto keys = *rc::gen::container<std::vector<int>>(order.size(), rc::gen::inRange(0, 1000));
    std::vector<std::pair<int, std::size_t>> shuffled;
    for (std::size_t i = 0; i < order.size(); ++i) {
        shuffled.emplace_back(keys[i], order[i]);
    }
    std::ranges::sort(shuffled);
    Survey again = base;
    for (const auto& [unused, who] : shuffled) {
        again = merged(base, again, people[who]);
    }
    RC_ASSERT(write_survey(again) == write_survey(once));
}

/// What a person made of it without moving a window to another room, which merge.h excepts.
Survey edited_unmoved(const Survey& from, const std::string& name, int most) {
    constexpr int moving = 15;  // `Person::hang`
    Survey survey = from;
    Person person(survey, name);
    for (const Edit& edit : some_edits(most)) {
        if (edit.kind % Person::kinds != moving) {
            person.make(edit);
        }
    }
    survey.revision = from.revision.value_or(0) + 1;
    return survey;
}

/// A visit in which something is open already, and what a person made of it: edits, and some of it settled.
Survey in_dispute() {
    const Survey base = house();
    return merged(base, edited_unmoved(base, "eve", 8), edited_unmoved(base, "finn", 8));
}

Survey settled_in_part(const Survey& from, const std::string& name) {
    Survey survey = edited_unmoved(from, name, 3);
    settle_what_went(from, survey);
    const auto places = *rc::gen::container<std::vector<std::size_t>>(2, rc::gen::inRange<std::size_t>(0, 1000));
    for (const std::size_t number : places) {
        if (!survey.changed_twice.empty()) {
            const ChangedTwice& entry = survey.changed_twice[number % survey.changed_twice.size()];
            if (auto settled = settle(survey, {entry.at, number / 7 % ways_to_settle(entry)})) {
                survey = std::move(settled).value();
            }
        }
    }
    return survey;
}

/// What merge.h excepts besides: an order that is open.
bool is_of_order(const ChangedTwice& entry) {
    return entry.at == "/rooms" || entry.at == "/fabrics" || entry.at.ends_with("/windows") ||
           entry.at.ends_with("/layers");
}

RC_GTEST_PROP(MergeLaw, AllHoldsWhereSomethingIsOpenAndSomeIsSettled, ()) {
    const Survey base = in_dispute();
    RC_PRE(std::ranges::none_of(base.changed_twice, is_of_order));
    const Survey anna = settled_in_part(base, "anna");
    const Survey ben = settled_in_part(base, "ben");
    const Survey carl = settled_in_part(base, "carl");
    RC_ASSERT(write_survey(merged(base, anna, base)) == bytes(anna));
    const Survey two = merged(base, anna, ben);
    RC_ASSERT(write_survey(two) == write_survey(merged(base, ben, anna)));
    RC_ASSERT(write_survey(merged(base, two, ben)) == write_survey(two));
    RC_ASSERT(write_survey(merged(base, two, carl)) == write_survey(merged(base, anna, merged(base, ben, carl))));
}

RC_GTEST_PROP(MergeLaw, NoReadingIsLost, ()) {
    const Survey base = house();
    const Survey anna = edited(base, "anna");
    const Survey ben = edited(base, "ben");
    const auto kept = readings(merged(base, anna, ben));
    const auto before = readings(base);
    const auto of_anna = readings(anna);
    const auto of_ben = readings(ben);
    for (const auto* of : {&of_anna, &of_ben}) {
        for (const std::string& id : *of) {
            // What was there before may have been taken out, with its window, by the other.
            const bool stays = !before.contains(id) || (of_anna.contains(id) && of_ben.contains(id));
            RC_ASSERT(!stays || kept.contains(id));
        }
    }
}

/// A workroom that takes a revision only from whoever knows its newest, and people who merge until it does.
RC_GTEST_PROP(MergeLaw, ManyRoundsEndAlikeAndLoseNoReading, ()) {
    Survey there = house();
    struct Phone {
        Survey parent, now;
    };
    std::vector<Phone> phones(3, Phone{there, there});
    std::set<std::string> entered;
    const int rounds = *rc::gen::inRange(2, 8);
    for (int round = 0; round < rounds; ++round) {
        const auto who = *rc::gen::inRange<std::size_t>(0, phones.size());
        Phone& phone = phones[who];
        const Survey before = phone.now;
        // Only what is added: what is taken out may go.
        Person person(phone.now, fmt::format("{}-{}", who, round));
        for (Edit edit : some_edits(4)) {
            edit.kind %= 7;
            person.make(edit);
        }
        entered.merge(readings(phone.now));
        if (*rc::gen::arbitrary<bool>()) {
            phone.now = merged(phone.parent, phone.now, there);
            there = phone.parent = phone.now;
        }
    }
    for (int turn = 0; turn < 2; ++turn) {
        for (Phone& phone : phones) {
            phone.now = merged(phone.parent, phone.now, there);
            there = phone.parent = phone.now;
        }
    }
    for (const Phone& phone : phones) {
        RC_ASSERT(write_survey(phone.now) == write_survey(there));
    }
    RC_ASSERT(std::ranges::includes(readings(there), entered));
}

}  // namespace
