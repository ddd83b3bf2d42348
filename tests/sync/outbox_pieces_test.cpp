// SPDX-License-Identifier: Apache-2.0
#include "outbox/outbox.h"

#include "simulated_workroom.h"

#include <gtest/gtest.h>

#include <random>

// What each answer is stands in sync/protocol/README.md, "Sending a photo in pieces"; how a client goes on after a cut
// in draft-ietf-httpbis-resumable-upload-12, sections 4.2.1, 4.3.1 and 4.4.1.

using namespace truehang;
using namespace truehang::sync;
using namespace truehang::sync::test;
using std::chrono::seconds;

namespace {

constexpr Pieces small_pieces{2000, 1000};

std::string bytes_of_length(std::size_t count, unsigned seed = 1) {
    std::mt19937 random(seed);
    std::string bytes(count, '\0');
    for (auto& byte : bytes) {
        byte = static_cast<char>(random() & 0xffU);
    }
    return bytes;
}

/// A phone with one photo of 4500 bytes, in simulated time: four pieces of 1000 and one of 500.
struct Phone {
    std::string content = bytes_of_length(4500);
    Item photo = item_with(content);
    Shelf shelf;
    Workroom workroom;
    Time now = start;
    std::unique_ptr<Outbox> outbox;

    Phone() {
        shelf.items = {photo};
        workroom.contents[photo.sha256] = content;
        restart();
    }
    void restart() {
        outbox = std::make_unique<Outbox>(
            shelf, [this] { return now; }, [] { return std::uint64_t{0}; }, Delays{}, small_pieces);
        outbox->paired();
    }
    /// The next request, once it is due.
    Request sent() {
        auto step = outbox->next();
        if (!step.request && step.wake_at) {
            now = *step.wake_at;
            step = outbox->next();
        }
        EXPECT_TRUE(step.request);
        return step.request.value_or(Request{});
    }
    Request deliver() {
        auto request = sent();
        outbox->answered(request.ticket, workroom.receive(request));
        return request;
    }
    void deliver(int requests) {
        for (int i = 0; i < requests; ++i) {
            static_cast<void>(deliver());
        }
    }
    /// The wire is cut once so many bytes of the body have come.
    Request cut(long long after) {
        auto request = sent();
        static_cast<void>(workroom.receive(request, after));
        outbox->failed(request.ticket, WireFailure::broken_off);
        return request;
    }
    /// All of it comes; the answer doesn't.
    Request lose_the_answer() {
        auto request = sent();
        static_cast<void>(workroom.receive(request));
        outbox->failed(request.ticket, WireFailure::broken_off);
        return request;
    }
    Request answer_with(const Answer& answer) {
        auto request = sent();
        outbox->answered(request.ticket, answer);
        return request;
    }
    /// Goes on without faults until nothing is pending: true where that comes to pass.
    bool ends() {
        for (int i = 0; i < 100 && !shelf.items.empty(); ++i) {
            static_cast<void>(deliver());
        }
        return shelf.items.empty();
    }
    [[nodiscard]] bool is_there() const {
        return shelf.confirmed.contains(photo.key) && workroom.photos.contains(photo.sha256);
    }
};

std::string header_of(const Request& request, std::string_view name) {
    for (const auto& [key, value] : request.headers) {
        if (key == name) {
            return value;
        }
    }
    return "";
}

void expect_piece(const Request& request, long long from, long long bytes, const char* complete) {
    EXPECT_EQ(request.method, Method::patch);
    ASSERT_TRUE(request.range);
    EXPECT_EQ(request.range->from, from);
    EXPECT_EQ(request.range->bytes, bytes);
    EXPECT_EQ(header_of(request, "Upload-Offset"), std::to_string(from));
    EXPECT_EQ(header_of(request, "Upload-Complete"), complete);
    EXPECT_EQ(header_of(request, "Content-Type"), "application/partial-upload");
}

}  // namespace

TEST(OutboxPieces, beginsSendsEachPieceOnceAndKeepsTheReceipt) {
    Phone phone;
    const auto begun = phone.deliver();
    EXPECT_EQ(begun.method, Method::post);
    EXPECT_EQ(begun.path, photo_path(phone.photo.sha256));
    EXPECT_EQ(header_of(begun, "Upload-Complete"), "?0");
    EXPECT_EQ(header_of(begun, "Upload-Length"), "4500");
    EXPECT_FALSE(begun.body_of);
    for (long long at = 0; at < 4000; at += 1000) {
        const auto piece = phone.sent();
        expect_piece(piece, at, 1000, "?0");
        const auto state = phone.outbox->state_of(phone.photo);
        EXPECT_EQ(state.standing, Standing::on_its_way);
        EXPECT_EQ(state.bytes_there, at);
        phone.outbox->answered(piece.ticket, phone.workroom.receive(piece));
    }
    expect_piece(phone.deliver(), 4000, 500, "?1");
    EXPECT_TRUE(phone.is_there());
    EXPECT_EQ(phone.workroom.bytes_sent, 4500);
}

TEST(OutboxPieces, aSmallPhotoGoesWhole) {
    Phone phone;
    phone.shelf.items = {photo_item("small")};
    EXPECT_EQ(phone.deliver().method, Method::put);
}

TEST(OutboxPieces, aSurveyGoesBetweenTwoPieces) {
    Phone phone;
    phone.deliver(3);
    phone.shelf.items.push_back(survey_item("a"));
    EXPECT_EQ(phone.deliver().path, "/surveys/a/revisions/1");
    expect_piece(phone.sent(), 2000, 1000, "?0");
}

TEST(OutboxPieces, aWorkroomThatTakesNoPiecesGetsItWhole) {
    for (const int status : {404, 405, 501}) {
        Phone phone;
        phone.workroom.takes_pieces = false;
        EXPECT_EQ(phone.answer_with({status, {}, "<html>No</html>"}).method, Method::post);
        EXPECT_EQ(phone.deliver().method, Method::put);
        EXPECT_TRUE(phone.is_there()) << status;
    }
    for (const auto kind : {ProblemKind::wrong_method, ProblemKind::not_there, ProblemKind::too_many_uploads,
                            ProblemKind::inconsistent_length, ProblemKind::malformed_request}) {
        Phone phone;
        phone.answer_with(problem_answer(kind));
        EXPECT_EQ(phone.deliver().method, Method::put);
        EXPECT_TRUE(phone.is_there()) << word_of(kind);
    }
}

TEST(OutboxPieces, cutWhileBeginning) {
    for (const bool it_arrived : {false, true}) {
        Phone phone;
        const auto request = phone.sent();
        if (it_arrived) {
            static_cast<void>(phone.workroom.receive(request));
        }
        phone.outbox->failed(request.ticket, WireFailure::broken_off);
        const auto asked = phone.deliver();
        EXPECT_EQ(asked.method, Method::head);
        EXPECT_EQ(asked.path, upload_path(phone.photo.sha256));
        EXPECT_EQ(phone.deliver().method, it_arrived ? Method::patch : Method::post);
        EXPECT_TRUE(phone.ends() && phone.is_there());
        EXPECT_EQ(phone.workroom.bytes_sent, 4500);
    }
}

TEST(OutboxPieces, cutWithinAPieceGoesOnAtThatVeryByte) {
    for (const long long after : {0, 1, 337, 999}) {
        Phone phone;
        phone.deliver(3);
        phone.cut(after);
        EXPECT_EQ(phone.deliver().method, Method::head);
        expect_piece(phone.deliver(), 2000 + after, 1000, "?0");
        EXPECT_TRUE(phone.ends() && phone.is_there());
        EXPECT_EQ(phone.workroom.bytes_sent, 4500) << "no byte twice";
    }
}

TEST(OutboxPieces, cutAgainAndAgainItWaitsNoLongerAsLongAsItComesOn) {
    Phone phone;
    phone.deliver();
    int cuts = 0;
    for (; cuts < 20; ++cuts) {
        phone.cut(200);
        EXPECT_EQ(phone.deliver().method, Method::head);
    }
    // Each cut waits for `Delays::first` at most, the link's and the item's own at once: derived by hand.
    EXPECT_LE(phone.now - start, cuts * Delays{}.first);
    EXPECT_TRUE(phone.ends() && phone.is_there());
    EXPECT_EQ(phone.workroom.bytes_sent, 4500);
}

TEST(OutboxPieces, cutAfterAPieceBeforeItsAnswer) {
    Phone phone;
    phone.deliver(2);
    phone.lose_the_answer();
    EXPECT_EQ(phone.deliver().method, Method::head);
    expect_piece(phone.sent(), 2000, 1000, "?0");
}

TEST(OutboxPieces, cutAfterTheLastPieceBeforeItsAnswerFindsTheReceipt) {
    Phone phone;
    phone.deliver(5);
    expect_piece(phone.lose_the_answer(), 4000, 500, "?1");
    EXPECT_EQ(phone.deliver().method, Method::head);
    EXPECT_TRUE(phone.is_there());
    EXPECT_EQ(phone.shelf.confirmed.at(phone.photo.key).received_at, "2026-03-14T12:00:00Z");
    EXPECT_EQ(phone.workroom.bytes_sent, 4500);
}

TEST(OutboxPieces, goesOnAfterThePhoneForgotWhatItKnew) {
    Phone phone;
    phone.deliver(3);
    phone.cut(400);
    phone.restart();
    EXPECT_EQ(phone.deliver().method, Method::post);
    EXPECT_EQ(phone.outbox->state_of(phone.photo).bytes_there, 2400);
    expect_piece(phone.sent(), 2400, 1000, "?0");
}

TEST(OutboxPieces, aWorkroomThatLostAnUnconfirmedPartSaysWhereItStands) {
    Phone phone;
    phone.deliver(3);
    auto& came = phone.workroom.uploads.at(phone.photo.sha256).came;
    came.resize(1500);  // no workroom may, of what it confirmed: the phone goes by its word all the same
    expect_piece(phone.deliver(), 2000, 1000, "?0");
    expect_piece(phone.deliver(), 1500, 1000, "?0");
    EXPECT_TRUE(phone.ends() && phone.is_there());
}

TEST(OutboxPieces, sweptMeanwhileBeginsAnew) {
    Phone phone;
    phone.deliver(3);
    phone.workroom.uploads.clear();
    expect_piece(phone.deliver(), 2000, 1000, "?0");
    EXPECT_EQ(phone.deliver().method, Method::post);
    EXPECT_EQ(phone.outbox->state_of(phone.photo).bytes_there, 0);
    EXPECT_TRUE(phone.ends() && phone.is_there());
    Phone cut;
    cut.deliver(3);
    cut.cut(500);
    cut.workroom.uploads.clear();
    EXPECT_EQ(cut.deliver().method, Method::head);
    EXPECT_EQ(cut.deliver().method, Method::post);
    EXPECT_TRUE(cut.ends() && cut.is_there());
}

TEST(OutboxPieces, erasedMeanwhileIsRefused) {
    Phone phone;
    phone.deliver(3);
    phone.workroom.uploads.clear();
    phone.workroom.erased.insert(phone.photo.sha256);
    EXPECT_TRUE(phone.ends());
    EXPECT_EQ(phone.shelf.refused.at(phone.photo.key).why, "The workroom erased this photo’s visit for good.");
    EXPECT_TRUE(phone.workroom.photos.empty());
}

TEST(OutboxPieces, sentByAnotherMeanwhileIsConfirmed) {
    Phone phone;
    phone.workroom.photos[phone.photo.sha256] = {phone.photo.sha256, 4500, "2026-03-14T12:00:00Z"};
    EXPECT_EQ(phone.deliver().method, Method::post);
    EXPECT_TRUE(phone.is_there());
    EXPECT_EQ(phone.workroom.bytes_sent, 0);
}

TEST(OutboxPieces, piecesThatDontMakeThePhotoGoWhole) {
    Phone phone;
    phone.deliver(3);
    phone.workroom.uploads.at(phone.photo.sha256).came.replace(0, 5, "wrong");
    while (phone.workroom.uploads.contains(phone.photo.sha256)) {
        phone.deliver();
    }
    EXPECT_TRUE(phone.shelf.refused.empty());
    EXPECT_EQ(phone.deliver().method, Method::put);
    EXPECT_TRUE(phone.is_there());
}

TEST(OutboxPieces, aSignInPageInTheMiddleChangesNothing) {
    const Answer page{200, {{"Content-Type", "text/html"}}, "<html>Welcome aboard</html>"};
    for (int before = 0; before < 6; ++before) {
        Phone phone;
        phone.deliver(before);
        phone.answer_with(page);
        EXPECT_TRUE(phone.shelf.confirmed.empty());
        EXPECT_EQ(phone.outbox->link().state, Link::State::unreachable);
        EXPECT_TRUE(phone.ends() && phone.is_there()) << before;
        EXPECT_EQ(phone.workroom.bytes_sent, 4500);
    }
}

TEST(OutboxPieces, anAnswerThatStaysWhereItIsEndsInADelay) {
    Phone phone;
    phone.deliver();
    int asked = 0;
    while (phone.outbox->next().request && asked < 50) {
        phone.outbox->answered(++asked + 1, problem_answer(ProblemKind::mismatching_offset));
    }
    EXPECT_LT(asked, 50);
    EXPECT_TRUE(phone.ends() && phone.is_there());
}

TEST(OutboxPieces, aWorkroomThatForgetsEachUploadIsAskedSeldom) {
    Phone phone;
    int requests = 0;
    for (const Time end = start + std::chrono::hours(1); phone.now < end && requests < 1000; ++requests) {
        static_cast<void>(phone.deliver());
        phone.workroom.uploads.clear();
    }
    // An hour of delays that double from 2 s to 1800 s (`Delays`) has eleven of them; between two stand at most five
    // requests: derived by hand from `stall_limit`.
    EXPECT_LT(requests, 70);
}

// It takes a piece and has forgotten all of them by the next: the same bytes again and again are no coming on.
TEST(OutboxPieces, aWorkroomThatForgetsWhatItTookIsAskedSeldom) {
    Phone phone;
    int requests = 0;
    for (const Time end = start + std::chrono::hours(1); phone.now < end && requests < 1000; ++requests) {
        const bool piece = !phone.workroom.uploads.empty();
        static_cast<void>(phone.deliver());
        if (piece) {
            phone.workroom.uploads.clear();
        }
    }
    EXPECT_LT(requests, 70);  // as above
}

TEST(OutboxPieces, aWorkroomOfLaterIsntToldWhereAnotherStood) {
    Phone phone;
    phone.deliver(3);
    phone.outbox->unpaired();
    phone.outbox->paired();
    EXPECT_EQ(phone.sent().method, Method::post);
}
