// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "units/result.h"

#include <chrono>
#include <cstddef>
#include <cstdint>
#include <filesystem>
#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

// HTTP/1.1 for a site that never sees a socket: one thread for all connections, a few for the site's own work. Limits,
// deadlines and what of the protocol is taken stand here; nothing of the library that does it does.

namespace truehang::http {

using HeaderList = std::vector<std::pair<std::string, std::string>>;

/// What a request says before its body.
struct RequestHead {
    std::string method;  ///< as sent, "GET"
    std::string path;    ///< percent-encoded, without query
    std::string query;   ///< without "?"
    std::string host;    ///< as sent, never empty
    HeaderList headers;
    std::string peer;                ///< the peer's IP address as text
    bool from_this_machine = false;  ///< the peer's address is a loopback address
    bool secure = false;             ///< over TLS
    std::optional<std::uint64_t> content_length;

    /// The first header of that name in lower case; empty where there is none.
    [[nodiscard]] std::string_view header(std::string_view lower_case_name) const;
};

struct Response {
    int status = 200;
    HeaderList headers;  ///< Content-Type and others; length, date and connection are added
    std::string body;
    std::filesystem::path file;                   ///< sent as the body where not empty
    std::optional<std::uint64_t> content_length;  ///< of an answer to HEAD
};

/// Where a body goes piece by piece, on the site's threads, never two calls at a time.
class BodySink {
public:
    virtual ~BodySink() = default;
    /// False where it can't be taken (the disk is full): reading stops and the site answers.
    [[nodiscard]] virtual bool take(std::string_view piece) = 0;
};

/// What the site says to a head.
struct Admission {
    std::optional<Response> refusal;  ///< answered at once; the body isn't read
    std::uint64_t body_limit = 0;     ///< more is 413
    bool length_required = false;     ///< a body of unknown length is 411
    std::shared_ptr<BodySink> sink;   ///< null: the body is held in memory
};

struct Request {
    RequestHead head;
    std::string body;                ///< where there is no sink
    std::shared_ptr<BodySink> sink;  ///< the admission's
    bool sink_failed = false;        ///< a `take` said no
};

/// What is served. All calls come on the site's threads, several at a time.
class Site {
public:
    using Respond = std::function<void(Response)>;
    virtual ~Site() = default;
    [[nodiscard]] virtual Admission admit(const RequestHead& head) = 0;
    /// Must call `respond` once, now or later, on any thread.
    virtual void answer(Request request, Respond respond) = 0;
    /// The answer to what never gets as far as `answer`: 400, 411, 413, 417, 431, 501; 500 in place of one with a
    /// header that holds control characters.
    [[nodiscard]] virtual Response refusal(int status, std::string_view text) = 0;
    /// The server stops: what is held back is answered now. Doesn't wait; called once, on the server's thread.
    virtual void ending() {}
};

struct ServerOptions {
    std::string address = "127.0.0.1";
    std::uint16_t port = 0;                         ///< 0: any that is free
    std::filesystem::path certificate;              ///< PEM chain; empty: no TLS
    std::filesystem::path key;                      ///< PEM
    std::chrono::milliseconds header_time{10'000};  ///< first byte to end of headers; TLS handshake likewise
    std::chrono::milliseconds idle_time{60'000};    ///< between requests
    std::chrono::milliseconds stall_time{10'000};   ///< between two pieces of a body, in either direction
    std::uint64_t least_rate = 8192;                ///< bytes a second of a body on the whole, after `stall_time`
    std::size_t header_bytes = 16384;
    std::size_t connections = 512;
    unsigned site_threads = 3;
};

class HttpServer {
public:
    HttpServer(ServerOptions options, Site& site);
    ~HttpServer();
    HttpServer(const HttpServer&) = delete;
    HttpServer& operator=(const HttpServer&) = delete;

    /// Takes the address and port; gives the port. Errors: `unreadable` (address, certificate or key), `busy`, `io`.
    [[nodiscard]] Result<std::uint16_t> listen();
    /// Serves until `stop`, SIGTERM or SIGINT; requests under way get a few seconds to end.
    void run();
    /// From any thread.
    void stop();

    struct Inside;

private:
    std::unique_ptr<Inside> inside_;
};

}  // namespace truehang::http
