// SPDX-License-Identifier: Apache-2.0
#include "store/async_store.h"
#include "store_fixture.h"

namespace truehang::testing {
namespace {

/// A caller's event loop: tasks wait here until the test runs them.
class Loop {
public:
    AsyncStore::PostToCaller post() {
        return [this](AsyncStore::Task task) {
            {
                const std::lock_guard lock(mutex_);
                tasks_.push_back(std::move(task));
            }
            arrived_.notify_one();
        };
    }
    /// Runs the next task, waiting for it.
    void run_one() {
        std::unique_lock lock(mutex_);
        arrived_.wait(lock, [this] { return !tasks_.empty(); });
        auto task = std::move(tasks_.front());
        tasks_.pop_front();
        lock.unlock();
        task();
    }
    [[nodiscard]] std::size_t waiting() {
        const std::lock_guard lock(mutex_);
        return tasks_.size();
    }

private:
    std::mutex mutex_;
    std::condition_variable arrived_;
    std::deque<AsyncStore::Task> tasks_;
};

class Asynchronous : public ::testing::TestWithParam<AsyncStore::Mode> {
protected:
    Folder folder;
    Loop loop;
    AsyncStore::Open open = [this] { return Store::open(folder.path(), surroundings()); };
};

TEST_P(Asynchronous, answers_come_in_order_on_the_callers_side_and_never_before_post_returns) {
    AsyncStore store(open, loop.post(), GetParam());
    const Survey survey = pilot_house();
    std::vector<std::string> seen;
    const auto caller = std::this_thread::get_id();
    store.post([survey](Store& s) { return s.keep(survey, "Visit made"); },
               [&](Result<Revision> kept) {
                   EXPECT_EQ(std::this_thread::get_id(), caller);
                   seen.push_back("kept " + std::to_string(must(kept)));
               });
    store.post([](Store& s) { return s.visits(); },
               [&](Result<std::vector<VisitSummary>> visits) { seen.push_back(must(visits).at(0).title); });
    EXPECT_TRUE(seen.empty());
    loop.run_one();
    loop.run_one();
    EXPECT_EQ(seen, (std::vector<std::string>{"kept 1", "Pilot house, first visit"}));
}

TEST_P(Asynchronous, everything_posted_is_done_before_it_ends) {
    Survey survey = pilot_house();
    {
        AsyncStore store(open, loop.post(), GetParam());
        for (int i = 0; i < 20; ++i) {
            survey.title = "Title " + std::to_string(i);
            store.post([survey](Store& s) { return s.keep(survey, "Title"); }, [](Result<Revision>) {});
        }
    }
    EXPECT_EQ(loop.waiting(), 20U);
    EXPECT_EQ(must(open_store(folder.path())->visit(survey.id)).title, "Title 19");
}

TEST_P(Asynchronous, a_store_that_cannot_be_opened_says_so_and_is_tried_again) {
    auto other = open_store(folder.path());
    AsyncStore store(open, loop.post(), GetParam());
    ErrorCode refusal = ErrorCode::missing;
    bool opened = false;
    store.opened([&](Result<Done> answer) { refusal = answer ? ErrorCode::missing : answer.error().code; });
    loop.run_one();
    EXPECT_EQ(refusal, ErrorCode::busy);
    other.reset();
    store.opened([&](Result<Done> answer) { opened = answer.ok(); });
    loop.run_one();
    EXPECT_TRUE(opened);
}

TEST_P(Asynchronous, what_work_throws_comes_back_as_an_error) {
    AsyncStore store(open, loop.post(), GetParam());
    Error error;
    store.post([](Store&) -> Result<Done> { throw std::runtime_error("the tape broke"); },
               [&](Result<Done> answer) { error = answer.error(); });
    loop.run_one();
    EXPECT_EQ(error.code, ErrorCode::io);
    EXPECT_EQ(error.text, "the tape broke");
}

INSTANTIATE_TEST_SUITE_P(WithAndWithoutThreads, Asynchronous,
                         ::testing::Values(AsyncStore::Mode::own_thread, AsyncStore::Mode::no_threads));

}  // namespace
}  // namespace truehang::testing
