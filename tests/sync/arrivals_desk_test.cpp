// SPDX-License-Identifier: Apache-2.0
#include "workroom/site/arrivals_desk.h"
#include "receiver_process.h"
#include "workroom/archive/arrivals.h"

#include <gtest/gtest.h>

#include <future>

using namespace truehang;
using namespace truehang::workroom;

namespace {

http::Request asking_since(const std::string& cursor) {
    http::Request request;
    request.head.method = "GET";
    request.head.path = "/arrivals";
    request.head.query = "since=" + cursor;
    return request;
}

/// A request's answer, to be waited for.
std::future<http::Response> asked(ArrivalsDesk& desk, const std::string& since) {
    auto answer = std::make_shared<std::promise<http::Response>>();
    desk.answer(asking_since(since), [answer](http::Response response) { answer->set_value(std::move(response)); });
    return answer->get_future();
}

bool is_held(const std::future<http::Response>& answer) {
    return answer.wait_for(std::chrono::seconds(0)) == std::future_status::timeout;
}

}  // namespace

class Desk : public ::testing::Test {
protected:
    sync::test::TemporaryFolder folder_;
    Result<std::unique_ptr<Archive>> archive_ = Archive::open(folder_.path(), [] { return sync::Time{}; });
};

TEST_F(Desk, holdsARequestForAWhileOnly) {
    ASSERT_TRUE(archive_.ok());
    ArrivalsDesk desk(**archive_, {.held = std::chrono::milliseconds(50), .look = std::chrono::milliseconds(5)});
    auto answer = asked(desk, *newest_cursor(**archive_));
    ASSERT_EQ(answer.wait_for(std::chrono::seconds(10)), std::future_status::ready);
    EXPECT_EQ(answer.get().body, "retry: 1000\n\n");
}

TEST_F(Desk, holdsNoMoreThanItSays) {
    ASSERT_TRUE(archive_.ok());
    ArrivalsDesk desk(**archive_, {.held = std::chrono::hours(1), .look = std::chrono::hours(1)});
    const auto since = *newest_cursor(**archive_);
    std::vector<std::future<http::Response>> held;
    for (std::size_t i = 0; i < ArrivalsDesk::most_held; ++i) {
        held.push_back(asked(desk, since));
    }
    auto one_more = asked(desk, since);
    ASSERT_FALSE(is_held(one_more));
    EXPECT_EQ(one_more.get().body, "retry: 30000\n\n");
    EXPECT_TRUE(std::ranges::all_of(held, is_held));
    desk.end();
    EXPECT_TRUE(std::ranges::none_of(held, is_held));
}
