// SPDX-License-Identifier: Apache-2.0
#include "outbox/store_shelf.h"

#include "document/document.h"
#include "protocol/digest.h"
#include "protocol/records.h"
#include "simulated_workroom.h"

#include <gtest/gtest.h>

#include <cstdlib>
#include <deque>
#include <filesystem>

using namespace truehang;
using namespace truehang::sync::test;
using sync::Outbox;
using sync::StoreShelf;

namespace {

/// A phone's store and outbox with simulated time, and the queue of its event loop.
class Phone : public testing::Test {
protected:
    Phone() {
        std::string pattern = (std::filesystem::temp_directory_path() / "truehang-XXXXXX").string();
        folder_ = ::mkdtemp(pattern.data());
    }
    ~Phone() override { std::filesystem::remove_all(folder_); }

    Result<std::unique_ptr<Store>> open() {
        StoreSurroundings surroundings;
        surroundings.now = [this] { return sync::write_time(now_); };
        surroundings.new_id = [this] { return "00000000-0000-7000-8000-" + std::to_string(100000000000 + ++ids_); };
        return Store::open(folder_, surroundings);
    }
    void pump() {
        while (!queue_.empty()) {
            auto task = std::move(queue_.front());
            queue_.pop_front();
            task();
        }
    }
    void keep(const Survey& survey) {
        bool kept = false;
        store_.post([survey](Store& store) { return store.keep(survey, "made"); },
                    [&kept](const Result<Revision>& done) { kept = done.ok(); });
        pump();
        ASSERT_TRUE(kept);
        shelf_.refresh();
        pump();
    }
    /// Sends whatever is due, with the very bytes that the shelf gives.
    void send_all() {
        while (auto request = outbox_.next().request) {
            std::string bytes;
            if (request->body_of) {
                shelf_.bytes_of(*request->body_of,
                                [&bytes](const Result<std::string>& read) { bytes = read ? *read : ""; });
                pump();
                EXPECT_EQ(sync::hex(sync::sha256(bytes)), request->body_of->sha256);
                EXPECT_EQ(static_cast<long long>(bytes.size()), request->body_of->bytes);
            }
            outbox_.answered(request->ticket, workroom_.receive(*request));
            pump();
        }
    }
    static Survey visit(const std::string& title) {
        Survey survey;
        survey.id = "01924f6a-7c00-7000-8000-000000000001";
        survey.title = title;
        return survey;
    }

    std::filesystem::path folder_;
    sync::Time now_ = start;
    long long ids_ = 0;
    std::deque<std::function<void()>> queue_;
    AsyncStore store_{[this] { return open(); }, [this](AsyncStore::Task task) { queue_.push_back(std::move(task)); },
                      AsyncStore::Mode::no_threads};
    StoreShelf shelf_{store_, {}};
    Outbox outbox_{shelf_, [this] { return now_; }, [] { return std::uint64_t{0}; }};
    sync::test::Workroom workroom_;
};

}  // namespace

TEST_F(Phone, aVisitIsSentAndItsReceiptKept) {
    outbox_.paired();
    keep(visit("Pilot house"));
    ASSERT_EQ(shelf_.pending().size(), 1U);
    send_all();
    EXPECT_TRUE(shelf_.pending().empty());
    std::optional<std::string> record;
    store_.post([](Store& store) { return store.receipt(truehang::ItemKind::survey, visit("").id, 1); },
                [&record](const Result<std::optional<std::string>>& read) { record = read ? *read : std::nullopt; });
    pump();
    ASSERT_TRUE(record);
    const auto receipt = sync::read_survey_receipt(*record);
    ASSERT_TRUE(receipt.ok());
    EXPECT_EQ(receipt->revision, 1);
}

TEST_F(Phone, anEditMeanwhileGoesAsTheNextRevision) {
    outbox_.paired();
    keep(visit("Pilot house"));
    const auto request = outbox_.next().request;
    ASSERT_TRUE(request);
    keep(visit("Pilot house, first visit"));
    outbox_.answered(request->ticket, workroom_.receive(*request));
    pump();
    ASSERT_EQ(shelf_.pending().size(), 1U);
    EXPECT_EQ(shelf_.pending()[0].revision, 2);
    send_all();
    EXPECT_TRUE(shelf_.pending().empty());
    EXPECT_EQ(workroom_.surveys.size(), 2U);
}

TEST_F(Phone, aPostponedVisitWaitsAndCountsItsTries) {
    outbox_.paired();
    keep(visit("Pilot house"));
    const auto request = outbox_.next().request;
    ASSERT_TRUE(request);
    outbox_.answered(request->ticket, problem_answer(sync::ProblemKind::internal));
    pump();
    ASSERT_EQ(shelf_.pending().size(), 1U);
    EXPECT_EQ(shelf_.pending()[0].attempts, 1);
    EXPECT_GT(shelf_.pending()[0].not_before, now_);
    const auto step = outbox_.next();
    EXPECT_FALSE(step.request);
    now_ = *step.wake_at;
    send_all();
    EXPECT_TRUE(shelf_.pending().empty());
}

TEST_F(Phone, bytesOfAnOlderRevisionArentHandedOutAsIfTheyWereIt) {
    outbox_.paired();
    keep(visit("Pilot house"));
    const auto old = shelf_.pending().at(0);
    keep(visit("Pilot house, again"));
    std::optional<Error> error;
    shelf_.bytes_of(
        old, [&error](const Result<std::string>& read) { error = read ? std::nullopt : std::optional(read.error()); });
    pump();
    ASSERT_TRUE(error);
    EXPECT_EQ(error->code, ErrorCode::conflict);
}
