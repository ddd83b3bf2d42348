// SPDX-License-Identifier: Apache-2.0
// What the server says on the wire of what a site answers.
#include "workroom/http/http_server.h"
#include "receiver_process.h"

#include <gtest/gtest.h>

#include <thread>

using namespace truehang;
using namespace truehang::sync::test;

namespace {

/// A site that answers everything with one header.
class OneHeader : public http::Site {
public:
    explicit OneHeader(std::string value) : value_(std::move(value)) {}
    http::Admission admit(const http::RequestHead&) override { return {}; }
    void answer(http::Request, Respond respond) override { respond({303, {{"Location", value_}}, "body", {}, {}}); }
    http::Response refusal(int status, std::string_view text) override {
        return {status, {}, std::string(text), {}, {}};
    }

private:
    std::string value_;
};

Reply answered_with(const std::string& value) {
    OneHeader site(value);
    http::HttpServer server({}, site);
    const auto port = server.listen();
    EXPECT_TRUE(port.ok());
    std::thread serving([&] { server.run(); });
    Reply reply;
    {
        Connection connection(*port);
        connection.send("GET / HTTP/1.1\r\nHost: a\r\n\r\n");
        reply = connection.read_reply();
    }
    server.stop();
    serving.join();
    return reply;
}

}  // namespace

// RFC 9110, section 5.5: a field value holds no control character but a tab; CR, LF and NUL are dangerous.
TEST(HttpServer, sendsNoHeaderWithControlCharacters) {
    using namespace std::string_literals;
    for (const auto& value :
         {"/a\r\nX-Smuggled: yes"s, "/a\nX-Smuggled: yes"s, "/a\r\n\r\nwords"s, "/a\0b"s, "/a\x7f"s}) {
        const auto reply = answered_with(value);
        EXPECT_EQ(reply.status, 500) << value;
        EXPECT_EQ(reply.headers.count("x-smuggled"), 0U) << value;
        EXPECT_EQ(reply.headers.count("location"), 0U) << value;
    }
    for (const auto& value : {"/a"s, "/a\tb c"s, "/\xc3\xa4"s}) {
        const auto reply = answered_with(value);
        EXPECT_EQ(reply.status, 303) << value;
        EXPECT_EQ(reply.headers.at("location"), value);
    }
}
