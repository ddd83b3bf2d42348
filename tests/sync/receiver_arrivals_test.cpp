// SPDX-License-Identifier: Apache-2.0
// What a page that lies open hears of: server-sent events as the WHATWG's HTML standard writes them ("Server-sent
// events", 9.2.5 the stream, 9.2.6 how it is read).
#include "receiver_process.h"

#include <gtest/gtest.h>

#include <csignal>
#include <sstream>

namespace truehang::sync::test {

namespace {

struct Event {
    std::string name, id, data;
    bool operator==(const Event&) const = default;
};

/// The events of a stream, read as the standard says: fields by line, an event at each empty line that has data.
std::vector<Event> events_of(const std::string& stream) {
    std::vector<Event> events;
    Event event;
    std::istringstream lines(stream);
    for (std::string line; std::getline(lines, line);) {
        const auto colon = std::min(line.find(':'), line.size());
        const auto field = line.substr(0, colon);
        auto value = line.substr(std::min(colon + 1, line.size()));
        value.erase(0, value.starts_with(' ') ? 1 : 0);
        if (line.empty() && !event.data.empty()) {
            events.push_back(std::exchange(event, {}));
        } else if (field == "event") {
            event.name = value;
        } else if (field == "id") {
            event.id = value;
        } else if (field == "data") {
            event.data += (event.data.empty() ? "" : "\n") + value;
        }
    }
    return events;
}

/// The place in the order of arrival that a page says it was made at.
std::string since_of(const Reply& page) {
    static constexpr std::string_view name = "data-since=\"";
    const auto at = page.body.find(name);
    return at == std::string::npos
               ? ""
               : page.body.substr(at + name.size(), page.body.find('"', at + name.size()) - at - name.size());
}

std::string arrivals_path(const std::string& since, const std::string& survey = {}) {
    return "/arrivals?since=" + since + (survey.empty() ? "" : "&survey=" + survey);
}

/// A request that may be held.
std::string held_request(const std::string& path, const std::string& heard = {}) {
    return "GET " + path + " HTTP/1.1\r\nHost: localhost\r\n" +
           (heard.empty() ? "" : "Last-Event-ID: " + heard + "\r\n") + "\r\n";
}

}  // namespace

TEST(Arrivals, areToldOfWhatCameAfterThePageWasMade) {
    const TemporaryFolder folder;
    const Receiver receiver(folder.path());
    const auto token = receiver.pair();
    ASSERT_EQ(receiver.put_survey(token, "old-house", 1, example_survey("old-house", 1, "Old house")).status, 201);
    const auto since = since_of(receiver.ask("GET", "/"));
    ASSERT_FALSE(since.empty());
    ASSERT_EQ(receiver.put_survey(token, "mill", 1, example_survey("mill", 1, "The mill")).status, 201);

    const auto one = receiver.ask("GET", arrivals_path(since));
    ASSERT_EQ(one.status, 200);
    EXPECT_EQ(one.headers.at("content-type"), "text/event-stream");
    EXPECT_EQ(one.headers.at("cache-control"), "no-store");
    const auto told = events_of(one.body);
    ASSERT_EQ(told.size(), 1U) << one.body;
    EXPECT_EQ(told[0].name, "arrived");
    EXPECT_EQ(told[0].data, "“The mill” has come in.");

    ASSERT_EQ(receiver.put_survey(token, "barn", 1, example_survey("barn", 1, "The barn")).status, 201);
    const auto two = events_of(receiver.ask("GET", arrivals_path(since), {{"Last-Event-ID", told[0].id}}).body);
    ASSERT_EQ(two.size(), 1U);
    EXPECT_EQ(two[0].data, "2 visits have come in, “The barn” last.");
    EXPECT_EQ(since_of(receiver.ask("GET", "/")), two[0].id) << "a page that is made now knows as much";
}

TEST(Arrivals, areHeardOfByAPageThatWaits) {
    const TemporaryFolder folder;
    const Receiver receiver(folder.path());
    const auto token = receiver.pair();
    const auto since = since_of(receiver.ask("GET", "/"));
    Connection waiting(receiver.port());
    ASSERT_TRUE(waiting.send(held_request(arrivals_path(since), since)));
    ASSERT_EQ(receiver.put_survey(token, "mill", 1, example_survey("mill", 1, "The mill")).status, 201);
    const auto told = events_of(waiting.read_reply().body);
    ASSERT_EQ(told.size(), 1U);
    EXPECT_EQ(told[0].data, "“The mill” has come in.");
}

TEST(Arrivals, ofOneVisitAreItsRevisionsOnly) {
    const TemporaryFolder folder;
    const Receiver receiver(folder.path());
    const auto token = receiver.pair();
    ASSERT_EQ(receiver.put_survey(token, "mill", 1, example_survey("mill", 1)).status, 201);
    const auto since = since_of(receiver.ask("GET", "/surveys/mill"));
    ASSERT_FALSE(since.empty());
    Connection waiting(receiver.port());
    ASSERT_TRUE(waiting.send(held_request(arrivals_path(since, "mill"))));
    ASSERT_EQ(receiver.put_survey(token, "barn", 1, example_survey("barn", 1)).status, 201);
    ASSERT_EQ(receiver.put_survey(token, "mill", 4, example_survey("mill", 4)).status, 201);
    const auto told = events_of(waiting.read_reply().body);
    ASSERT_EQ(told.size(), 1U);
    EXPECT_EQ(told[0].data, "Revision 4 of this visit has come in: what stands here is older.");

    // It isn't told again because of another visit.
    Connection again(receiver.port());
    ASSERT_TRUE(again.send(held_request(arrivals_path(since, "mill"), told[0].id)));
    ASSERT_EQ(receiver.put_survey(token, "barn", 2, example_survey("barn", 2)).status, 201);
    ASSERT_EQ(events_of(receiver.ask("GET", arrivals_path(since), {{"Last-Event-ID", told[0].id}}).body).size(), 1U);
    ASSERT_EQ(receiver.put_survey(token, "mill", 5, example_survey("mill", 5)).status, 201);
    const auto later = events_of(again.read_reply().body);
    ASSERT_EQ(later.size(), 1U);
    EXPECT_EQ(later[0].data, "Revision 5 of this visit has come in: what stands here is older.");
}

TEST(Arrivals, sayThatAVisitWasErased) {
    const TemporaryFolder folder;
    std::string since;
    {
        Receiver receiver(folder.path());
        const auto token = receiver.pair();
        ASSERT_EQ(receiver.put_survey(token, "mill", 1, example_survey("mill", 1)).status, 201);
        since = since_of(receiver.ask("GET", "/surveys/mill"));
        ASSERT_EQ(receiver.end(SIGTERM), 0);
    }
    ASSERT_EQ(run_workroom("erase", folder.path(), {"mill"}).exit_code, 0);
    const Receiver receiver(folder.path());
    const auto of_it = events_of(receiver.ask("GET", arrivals_path(since, "mill")).body);
    const auto of_all = events_of(receiver.ask("GET", arrivals_path(since)).body);
    ASSERT_EQ(of_it.size(), 1U);
    ASSERT_EQ(of_all.size(), 1U);
    EXPECT_EQ(of_it[0].data, "This visit was erased.");
    EXPECT_EQ(of_all[0].data, "A visit was erased.");
}

TEST(Arrivals, ofACopyThatWasBroughtBackAreAskedForAnew) {
    const TemporaryFolder folder;
    const Receiver receiver(folder.path());
    const auto told = events_of(receiver.ask("GET", arrivals_path("0123456789abcdef-7")).body);
    ASSERT_EQ(told.size(), 1U);
    EXPECT_EQ(told[0].id, since_of(receiver.ask("GET", "/")));
    EXPECT_EQ(told[0].data, "The records were brought back from a copy: what stands here may be older.");
}

TEST(Arrivals, areNotAskedForWithoutAPlace) {
    const TemporaryFolder folder;
    const Receiver receiver(folder.path());
    EXPECT_EQ(receiver.ask("GET", "/arrivals").status, 400);
    EXPECT_EQ(receiver.ask("GET", "/arrivals?since=").status, 400);
    EXPECT_EQ(receiver.ask("GET", arrivals_path("x"), {{"X-Forwarded-For", "192.0.2.9"}}).status, 401);
}

TEST(Arrivals, areOneEventWhateverATitleHolds) {
    const TemporaryFolder folder;
    const Receiver receiver(folder.path());
    const auto token = receiver.pair();
    const auto since = since_of(receiver.ask("GET", "/"));
    ASSERT_EQ(receiver.put_survey(token, "mill", 1, example_survey("mill", 1, "Mill\r\n\nevent: x\rdata: y")).status,
              201);
    const auto reply = receiver.ask("GET", arrivals_path(since));
    const auto told = events_of(reply.body);
    ASSERT_EQ(told.size(), 1U) << reply.body;
    EXPECT_EQ(told[0].name, "arrived");
    EXPECT_EQ(reply.body.find('\r'), std::string::npos) << "a line ends at a carriage return too";
}

TEST(Arrivals, areNotWaitedForWhenTheReceiverEnds) {
    const TemporaryFolder folder;
    Receiver receiver(folder.path());
    const auto since = since_of(receiver.ask("GET", "/"));
    Connection waiting(receiver.port());
    ASSERT_TRUE(waiting.send(held_request(arrivals_path(since))));
    ASSERT_EQ(receiver.ask("GET", "/health").status, 200);  // the other is taken in by now
    EXPECT_EQ(receiver.end(SIGTERM), 0);
    const auto reply = waiting.read_reply();
    EXPECT_EQ(reply.status, 200);
    EXPECT_TRUE(events_of(reply.body).empty());
}

}  // namespace truehang::sync::test
