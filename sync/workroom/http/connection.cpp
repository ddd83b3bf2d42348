// SPDX-License-Identifier: Apache-2.0
#include "workroom/http/connection.h"

#include "workroom/http/fields.h"

#include <boost/asio/co_spawn.hpp>
#include <boost/asio/post.hpp>
#include <boost/asio/redirect_error.hpp>
#include <boost/asio/ssl.hpp>
#include <boost/asio/use_awaitable.hpp>
#include <boost/asio/write.hpp>
#include <boost/beast/core.hpp>
#include <boost/beast/http.hpp>
#include <boost/beast/ssl.hpp>

#include <algorithm>
#include <array>
#include <fstream>

namespace truehang::http {

namespace beast = boost::beast;
namespace bhttp = boost::beast::http;
using Clock = std::chrono::steady_clock;
using std::chrono::milliseconds;

namespace {

constexpr std::size_t piece_bytes = 256UL * 1024UL;
constexpr std::size_t read_bytes = 64UL * 1024UL;  ///< of a body at once; Beast reads no more
constexpr std::size_t drain_bytes = 4UL * 1024UL * 1024UL;
constexpr milliseconds drain_time{2000};

/// Runs `work` on the site's threads and comes back.
template <class Work>
asio::awaitable<std::invoke_result_t<Work&>> on_pool(asio::thread_pool& pool, Work work) {
    co_return co_await asio::co_spawn(
        pool, [work = std::move(work)]() mutable -> asio::awaitable<std::invoke_result_t<Work&>> { co_return work(); },
        asio::use_awaitable);
}

/// The answer of the site, which may come on any thread. (Named locals and references only: GCC 12 copies some class
/// temporaries of a co_await expression bit by bit.)
asio::awaitable<Response> answer_of(asio::thread_pool& pool, Site& site, Request& request) {
    const auto executor = co_await asio::this_coro::executor;
    auto start = [&pool, &site, &request, executor](auto handler) {
        auto held = std::make_shared<decltype(handler)>(std::move(handler));
        asio::post(pool, [&site, &request, executor, held] {
            site.answer(std::move(request), [executor, held](Response response) {
                auto answered = std::make_shared<Response>(std::move(response));
                asio::post(executor, [held, answered] { std::move (*held)(std::move(*answered)); });
            });
        });
    };
    co_return co_await asio::async_initiate<const asio::use_awaitable_t<>, void(Response)>(start, asio::use_awaitable);
}

/// A request that was read, or why it wasn't.
struct Incoming {
    enum class End { complete, refused, closed };
    End end = End::closed;
    Request request;
    Response refusal;
    bool keep_alive = false;
    bool body_read = false;  ///< nothing of it is left on the wire
    bool head_only = false;
};

using Parser = bhttp::request_parser<bhttp::buffer_body>;

bool parsed_too_much(beast::error_code error) {
    return error == bhttp::error::header_limit || error == bhttp::error::buffer_overflow;
}

/// One connection, over TCP or TLS.
template <class Stream>
class Session {
public:
    Session(Stream stream, HttpServer::Inside& server, bool secure)
        : stream_(std::move(stream)), server_(server), secure_(secure), buffer_(server.options.header_bytes + 1024) {}

    asio::awaitable<void> serve() {
        beast::error_code error;
        peer_ = tcp_stream().socket().remote_endpoint(error).address();
        bool goes_on = co_await handshake();
        while (goes_on && !server_.stopping) {
            goes_on = co_await serve_one();
        }
        co_await close();
    }

private:
    static bool is_loopback(const asio::ip::address& address) {
        if (address.is_v6() && address.to_v6().is_v4_mapped()) {
            return asio::ip::make_address_v4(asio::ip::v4_mapped, address.to_v6()).is_loopback();
        }
        return address.is_loopback();
    }
    beast::tcp_stream& tcp_stream() { return beast::get_lowest_layer(stream_); }
    auto into(beast::error_code& error) { return asio::redirect_error(asio::use_awaitable, error); }

    asio::awaitable<bool> handshake() {
        beast::error_code error;
        if constexpr (!std::is_same_v<Stream, beast::tcp_stream>) {
            tcp_stream().expires_after(server_.options.header_time);
            co_await stream_.async_handshake(asio::ssl::stream_base::server, into(error));
        }
        co_return !error;
    }

    asio::awaitable<bool> serve_one() {
        if (!co_await first_byte()) {
            co_return false;
        }
        ++server_.requests;
        const bool goes_on = co_await exchange();
        server_.request_ended();
        co_return goes_on;
    }

    asio::awaitable<bool> exchange() {
        Incoming incoming;
        co_await read_request(incoming);
        if (incoming.end == Incoming::End::closed) {
            co_return false;
        }
        Response response;
        if (incoming.end == Incoming::End::complete) {
            response = co_await answer_of(server_.pool, server_.site, incoming.request);
        } else {
            response = std::move(incoming.refusal);
        }
        const bool keep = incoming.keep_alive && incoming.body_read && !server_.stopping;
        const bool written = co_await write(response, keep, incoming.head_only);
        if (written && !incoming.body_read) {
            co_await drain();
        }
        co_return written&& keep;
    }

    asio::awaitable<bool> first_byte() {
        if (buffer_.size() > 0) {
            co_return true;
        }
        beast::error_code error;
        tcp_stream().expires_after(server_.options.idle_time);
        const auto count = co_await stream_.async_read_some(buffer_.prepare(4096), into(error));
        buffer_.commit(count);
        co_return !error && count > 0;
    }

    asio::awaitable<void> read_request(Incoming& incoming) {
        Parser parser;
        parser.header_limit(static_cast<std::uint32_t>(server_.options.header_bytes));
        parser.body_limit(boost::none);
        beast::error_code error;
        tcp_stream().expires_after(server_.options.header_time);
        co_await bhttp::async_read_header(stream_, buffer_, parser, into(error));
        if (error) {
            head_failed(incoming, error);
            co_return;
        }
        incoming.head_only = parser.get().method() == bhttp::verb::head;
        incoming.keep_alive = parser.get().keep_alive();
        incoming.request.head = head_of(parser);
        if (auto refusal = head_refusal(parser, incoming.request.head)) {
            refuse(incoming, std::move(*refusal));
            co_return;
        }
        const Admission admission =
            co_await on_pool(server_.pool, [this, &head = incoming.request.head] { return server_.site.admit(head); });
        if (auto refusal = admission_refusal(parser, admission)) {
            incoming.body_read = parser.is_done();
            refuse(incoming, std::move(*refusal));
            co_return;
        }
        co_await read_body(parser, admission, incoming);
    }

    static void refuse(Incoming& incoming, Response refusal) {
        incoming.end = Incoming::End::refused;
        incoming.refusal = std::move(refusal);
        incoming.request.sink.reset();  // what it took is gone before the refusal is heard
    }

    /// Says what was wrong where the peer still listens; a deadline that passed has closed the socket already.
    void head_failed(Incoming& incoming, beast::error_code error) {
        if (parsed_too_much(error)) {
            refuse(incoming, server_.site.refusal(431, "The request’s headers are larger than is taken here."));
        } else if (error.category() == beast::error_code(bhttp::error::bad_method).category() &&
                   error != bhttp::error::end_of_stream && error != bhttp::error::partial_message) {
            refuse(incoming, server_.site.refusal(400, "This isn’t a request of HTTP/1.1."));
        }
    }

    RequestHead head_of(const Parser& parser) const {
        const auto& message = parser.get();
        RequestHead head;
        head.method = std::string(message.method_string());
        const std::string target(message.target());
        const auto question = target.find('?');
        head.path = target.substr(0, question);
        head.query = question == std::string::npos ? std::string() : target.substr(question + 1);
        head.host = std::string(message[bhttp::field::host]);
        for (const auto& field : message) {
            head.headers.emplace_back(std::string(field.name_string()), std::string(field.value()));
        }
        head.peer = peer_.to_string();
        head.from_this_machine = is_loopback(peer_);
        head.secure = secure_;
        if (const auto length = parser.content_length()) {
            head.content_length = *length;
        }
        return head;
    }

    std::optional<Response> head_refusal(const Parser& parser, const RequestHead& head) {
        const auto& message = parser.get();
        if (message.count(bhttp::field::host) != 1 || head.host.empty() || message.version() < 10 ||
            head.path.empty() || head.path.front() != '/') {
            return server_.site.refusal(400, "A request names its host once and a path.");
        }
        const auto coding = lower(message[bhttp::field::transfer_encoding]);
        if (message.count(bhttp::field::transfer_encoding) > 0) {
            if (message.count(bhttp::field::content_length) > 0) {
                return server_.site.refusal(400, "A request tells its length once.");
            }
            if (coding != "chunked" || message.count(bhttp::field::transfer_encoding) > 1) {
                return server_.site.refusal(501, "No transfer coding but chunked is understood.");
            }
        }
        const auto expects = lower(message[bhttp::field::expect]);
        if (!expects.empty() && expects != "100-continue") {
            return server_.site.refusal(417, "Nothing can be expected but 100-continue.");
        }
        return std::nullopt;
    }

    std::optional<Response> admission_refusal(const Parser& parser, const Admission& admission) {
        if (admission.refusal) {
            return admission.refusal;
        }
        const auto length = parser.content_length();
        if (length && *length > admission.body_limit) {
            return too_large();
        }
        if (!length && (admission.length_required || admission.body_limit == 0) && !parser.is_done()) {
            return server_.site.refusal(411, "Say with Content-Length how long it is.");
        }
        return std::nullopt;
    }

    Response too_large() { return server_.site.refusal(413, "This is larger than is taken here."); }

    asio::awaitable<void> read_body(Parser& parser, const Admission& admission, Incoming& incoming) {
        if (lower(parser.get()[bhttp::field::expect]) == "100-continue" && !parser.is_done()) {
            static constexpr std::string_view go_on = "HTTP/1.1 100 Continue\r\n\r\n";
            beast::error_code error;
            tcp_stream().expires_after(server_.options.stall_time);
            co_await asio::async_write(stream_, asio::buffer(go_on), into(error));
            if (error) {
                co_return;
            }
        }
        incoming.request.sink = admission.sink;
        if (admission.sink) {
            buffer_.reserve(read_bytes);  // reads as much as it has room for
        }
        const auto started = Clock::now();
        std::uint64_t taken = 0;
        std::string piece(std::min<std::size_t>(piece_bytes, admission.body_limit + 1), '\0');
        while (!parser.is_done()) {
            const auto filled = co_await fill(parser, piece, started, taken);
            taken += filled;
            if (taken > admission.body_limit) {
                refuse(incoming, too_large());
                co_return;
            }
            const bool went_on = co_await hand_over(incoming.request, std::string_view(piece.data(), filled));
            if (body_error_) {
                body_failed(incoming);
                co_return;
            }
            if (!went_on) {
                break;
            }
        }
        incoming.body_read = parser.is_done();
        incoming.end = Incoming::End::complete;
    }

    /// Fills `piece` as far as the body goes, in time; where it fails `body_error_` is set, and what came before is
    /// there.
    asio::awaitable<std::size_t> fill(Parser& parser, std::string& piece, Clock::time_point started,
                                      std::uint64_t taken) {
        std::size_t filled = 0;
        while (filled < piece.size() && !parser.is_done()) {
            const auto allowed =
                server_.options.stall_time +
                milliseconds(1000 * (taken + filled) / std::max<std::uint64_t>(1, server_.options.least_rate));
            const auto deadline = std::min(started + allowed, Clock::now() + server_.options.stall_time);
            auto& body = parser.get().body();
            body.data = piece.data() + filled;
            body.size = piece.size() - filled;
            body.more = true;
            beast::error_code error;
            tcp_stream().expires_at(deadline);
            co_await bhttp::async_read_some(stream_, buffer_, parser, into(error));
            if (error && error != bhttp::error::need_buffer) {
                body_error_ = error;
                break;
            }
            filled = piece.size() - body.size;
        }
        co_return filled;
    }

    void body_failed(Incoming& incoming) {
        const auto error = *std::exchange(body_error_, std::nullopt);
        if (error.category() == beast::error_code(bhttp::error::bad_chunk).category() &&
            error != bhttp::error::partial_message && error != bhttp::error::end_of_stream) {
            refuse(incoming, server_.site.refusal(400, "The request’s body can’t be read."));
        }
    }

    asio::awaitable<bool> hand_over(Request& request, std::string_view piece) {
        if (!request.sink) {
            request.body.append(piece);
            co_return true;
        }
        auto* sink = request.sink.get();
        const bool taken = co_await on_pool(server_.pool, [sink, piece] { return sink->take(piece); });
        request.sink_failed = !taken;
        co_return taken;
    }

    asio::awaitable<bool> write(Response& response, bool keep_alive, bool head_only) {
        using Field = HeaderList::value_type;
        if (!std::ranges::all_of(response.headers, is_field_value, &Field::second)) {
            response = server_.site.refusal(500, "The answer has a header that can’t be sent.");
        }
        bhttp::response<bhttp::string_body> message;
        message.result(static_cast<unsigned>(response.status));
        message.version(11);
        message.keep_alive(keep_alive);
        for (const auto& [name, value] : response.headers) {
            message.set(name, value);
        }
        std::ifstream file;
        std::uint64_t length = response.content_length.value_or(response.body.size());
        if (!response.file.empty()) {
            file.open(response.file, std::ios::binary);
            length = std::filesystem::file_size(response.file);
        }
        if (response.status != 204) {
            message.content_length(length);
        }
        if (!head_only) {
            message.body() = std::move(response.body);
        }
        beast::error_code error;
        bhttp::response_serializer<bhttp::string_body> serializer(message);
        serializer.split(head_only || file.is_open());
        tcp_stream().expires_after(server_.options.stall_time);
        if (head_only || file.is_open()) {
            co_await bhttp::async_write_header(stream_, serializer, into(error));
        } else {
            co_await write_whole(serializer, error);
        }
        if (!error && !head_only && file.is_open()) {
            co_return co_await write_file(file, length);
        }
        co_return !error;
    }

    /// Piece by piece, so that a slow reader has its time anew for each.
    asio::awaitable<void> write_whole(bhttp::response_serializer<bhttp::string_body>& serializer,
                                      beast::error_code& error) {
        serializer.limit(piece_bytes);
        while (!error && !serializer.is_done()) {
            tcp_stream().expires_after(server_.options.stall_time);
            co_await bhttp::async_write_some(stream_, serializer, into(error));
        }
    }

    asio::awaitable<bool> write_file(std::ifstream& file, std::uint64_t length) {
        std::string piece(piece_bytes, '\0');
        while (length > 0) {
            const auto wanted = std::min<std::uint64_t>(length, piece.size());
            const bool read = co_await on_pool(server_.pool, [&file, &piece, wanted] {
                return static_cast<bool>(file.read(piece.data(), static_cast<std::streamsize>(wanted)));
            });
            beast::error_code error;
            tcp_stream().expires_after(server_.options.stall_time);
            if (read) {
                co_await asio::async_write(stream_, asio::buffer(piece.data(), wanted), into(error));
            }
            if (!read || error) {
                co_return false;
            }
            length -= wanted;
        }
        co_return true;
    }

    /// After an answer that came before the body was read: the answer is lost if the connection is reset, so what is
    /// still coming is taken off the wire for a while.
    asio::awaitable<void> drain() {
        beast::error_code error;
        if constexpr (std::is_same_v<Stream, beast::tcp_stream>) {
            tcp_stream().socket().shutdown(tcp::socket::shutdown_send, error);
        }
        std::array<char, 16384> scrap{};
        std::size_t drained = 0;
        tcp_stream().expires_after(drain_time);
        while (!error && drained < drain_bytes) {
            drained += co_await stream_.async_read_some(asio::buffer(scrap), into(error));
        }
    }

    asio::awaitable<void> close() {
        beast::error_code error;
        if constexpr (!std::is_same_v<Stream, beast::tcp_stream>) {
            tcp_stream().expires_after(drain_time);
            co_await stream_.async_shutdown(into(error));
        }
        tcp_stream().socket().shutdown(tcp::socket::shutdown_both, error);
        tcp_stream().close();
        co_return;
    }

    Stream stream_;
    HttpServer::Inside& server_;
    bool secure_;
    asio::ip::address peer_;
    beast::flat_buffer buffer_;
    std::optional<beast::error_code> body_error_;
};

}  // namespace

asio::awaitable<void> serve_connection(tcp::socket socket, HttpServer::Inside& server) {
    ++server.connections;
    try {
        if (server.options.certificate.empty()) {
            Session<beast::tcp_stream> session(beast::tcp_stream(std::move(socket)), server, false);
            co_await session.serve();
        } else {
            using Tls = beast::ssl_stream<beast::tcp_stream>;
            Session<Tls> session(Tls(beast::tcp_stream(std::move(socket)), server.tls), server, true);
            co_await session.serve();
        }
    } catch (const std::exception&) {
        // Only this connection is lost: its socket is closed on the way out.
    }
    --server.connections;
}

}  // namespace truehang::http
