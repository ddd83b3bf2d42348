// SPDX-License-Identifier: Apache-2.0
#include "store_fixture.h"

// What the workroom asks, and answers until they are there.

namespace truehang::testing {
namespace {

class Questions : public ::testing::Test {
protected:
    [[nodiscard]] VisitQuestion asked(long long number) const {
        return {survey.id,    number,
                "parlour",    "south",
                "below.left", "Sounds short to the floor.",
                "M. Holt",    "2026-03-14T12:00:00Z"};
    }
    [[nodiscard]] VisitAnswer answered(long long number, const char* id, const char* record = "{}") const {
        return {survey.id,    number,   id,        "Yes, to the skirting.",
                "below.left", "862 mm", "J. Tamm", "2026-03-14T13:00:00+00:00",
                "",           record};
    }
    [[nodiscard]] VisitState state() {
        for (const VisitState one : {VisitState::to_measure, VisitState::measuring, VisitState::to_send,
                                     VisitState::there, VisitState::asked}) {
            VisitsAsked narrowed;
            narrowed.id = survey.id;
            narrowed.state = one;
            if (!must(store->visits(narrowed)).visits.empty()) {
                return one;
            }
        }
        throw std::runtime_error("in no state");
    }

    Folder folder;
    std::unique_ptr<Store> store = open_store(folder.path());
    Survey survey = pilot_house();
};

TEST_F(Questions, make_a_visit_one_that_is_asked_about_until_they_are_answered) {
    must(store->keep(survey, "Visit made"));
    const VisitState before = state();
    must(store->note_questions({asked(1), asked(2)}, {}, "", "q1"));
    EXPECT_EQ(must(store->summary(survey.id)).questions, 2);
    EXPECT_EQ(state(), VisitState::asked);
    must(store->keep_answer(answered(1, "a1")));
    EXPECT_EQ(must(store->summary(survey.id)).questions, 1);
    must(store->note_questions({}, {answered(2, "of-another-phone", "")}, "q1", "q2"));
    EXPECT_EQ(must(store->summary(survey.id)).questions, 0);
    EXPECT_EQ(state(), before);
    const auto all = must(store->questions(survey.id));
    ASSERT_EQ(all.size(), 2U);
    VisitQuestion first = asked(1);
    first.answers = {answered(1, "a1")};
    EXPECT_EQ(all[0], first);
    EXPECT_EQ(all[1].answers.at(0).id, "of-another-phone");
}

TEST_F(Questions, on_a_visit_that_comes_later_are_asked_for_again) {
    must(store->note_questions({asked(1)}, {}, "", "q1"));
    must(store->ask_questions_anew());
    EXPECT_EQ(must(store->questions_asked_until()), "");
    must(store->keep(survey, "Taken in"));
    EXPECT_EQ(store->note_questions({}, {}, "q1", "q2").error().code, ErrorCode::conflict) << "asked before it came";
    must(store->note_questions({asked(1)}, {}, "", "q2"));
    EXPECT_EQ(must(store->questions(survey.id)), std::vector{asked(1)});
}

TEST_F(Questions, an_answer_waits_until_the_workroom_has_it) {
    survey.rooms[0].photos.clear();
    survey.rooms[0].windows[0].photos.clear();
    must(store->keep(survey, "Visit made"));
    const auto sent = must(store->document_to_send(survey.id));
    OutboxItem whole;
    whole.id = survey.id;
    whole.revision = sent.revision;
    must(store->confirm(whole, "receipt"));
    for (const OutboxItem& item : must(store->pending())) {
        must(store->confirm(item, "receipt"));
    }
    ASSERT_EQ(state(), VisitState::there);
    must(store->note_questions({asked(1)}, {}, "", "q1"));
    must(store->keep_answer(answered(1, "a1", "{\"id\":\"a1\"}")));
    EXPECT_EQ(state(), VisitState::to_send);
    store = nullptr;
    store = open_store(folder.path());
    const auto waits = must(store->pending());
    ASSERT_EQ(waits.size(), 1U);
    EXPECT_EQ(waits[0].kind, ItemKind::answer);
    EXPECT_EQ(waits[0].id, "a1");
    EXPECT_EQ(must(store->answer_to_send("a1")).record, "{\"id\":\"a1\"}");
    EXPECT_EQ(must(store->items_of(survey.id)).at(1).id, "a1");
    must(store->postpone(waits[0], "2026-03-14T14:00:00Z", "No network."));
    EXPECT_EQ(must(store->pending()).at(0).tries, 1);
    must(store->confirm(waits[0], "taken"));
    EXPECT_TRUE(must(store->pending()).empty());
    EXPECT_EQ(must(store->receipt(ItemKind::answer, "a1", 0)), "taken");
    EXPECT_EQ(state(), VisitState::there);
}

TEST_F(Questions, come_twice_as_once_and_only_for_visits_that_are_here) {
    must(store->keep(survey, "Visit made"));
    VisitQuestion elsewhere = asked(1);
    elsewhere.visit = "another-visit";
    must(store->note_questions({asked(1), elsewhere}, {}, "", "q1"));
    must(store->keep_answer(answered(1, "a1", "{\"id\":\"a1\"}")));
    VisitAnswer came_back = answered(1, "a1", "");
    came_back.device = "J. Tamm’s phone";
    must(store->note_questions({asked(1), elsewhere}, {came_back}, "", "q1"));
    const auto all = must(store->questions(survey.id));
    ASSERT_EQ(all.size(), 1U);
    ASSERT_EQ(all[0].answers.size(), 1U);
    EXPECT_EQ(all[0].answers[0].record, "{\"id\":\"a1\"}") << "what is to be sent stays";
    EXPECT_TRUE(must(store->questions("another-visit")).empty());
}

TEST_F(Questions, are_noted_from_where_it_stands_only) {
    must(store->keep(survey, "Visit made"));
    must(store->note_questions({}, {}, "", "q1"));
    EXPECT_EQ(store->note_questions({asked(1)}, {}, "q2", "q3").error().code, ErrorCode::conflict);
    EXPECT_EQ(must(store->questions_asked_until()), "q1");
    EXPECT_TRUE(must(store->questions(survey.id)).empty());
    must(store->clear_pairing());
    EXPECT_EQ(must(store->questions_asked_until()), "") << "another workroom has cursors of its own";
}

TEST_F(Questions, an_answer_to_none_is_refused) {
    must(store->keep(survey, "Visit made"));
    EXPECT_EQ(store->keep_answer(answered(1, "a1")).error().code, ErrorCode::missing);
    EXPECT_EQ(store->answer_to_send("a1").error().code, ErrorCode::missing);
    EXPECT_EQ(must(store->pending()).size(), must(store->items_of(survey.id)).size());
}

TEST_F(Questions, go_with_the_visit) {
    must(store->keep(survey, "Visit made"));
    must(store->note_questions({asked(1)}, {}, "", "q1"));
    must(store->keep_answer(answered(1, "a1")));
    must(store->remove_visit(survey.id));
    must(store->erase_visits({survey.id}));
    EXPECT_TRUE(must(store->pending()).empty());
    store = nullptr;
    for (const auto& [name, bytes] : folder_bytes(folder.path())) {
        EXPECT_EQ(bytes.find("short to the floor"), std::string::npos) << name;
        EXPECT_EQ(bytes.find("to the skirting"), std::string::npos) << name;
    }
}

}  // namespace
}  // namespace truehang::testing
