// SPDX-License-Identifier: Apache-2.0
#include "workroom/http/http_server.h"

#include "workroom/http/connection.h"

#include <boost/asio/co_spawn.hpp>
#include <boost/asio/detached.hpp>
#include <boost/asio/post.hpp>
#include <boost/asio/redirect_error.hpp>
#include <boost/asio/use_awaitable.hpp>

namespace truehang::http {

using boost::system::error_code;

namespace {

asio::awaitable<void> accept_all(HttpServer::Inside& server) {
    while (!server.stopping) {
        error_code error;
        tcp::socket socket = co_await server.acceptor.async_accept(asio::redirect_error(asio::use_awaitable, error));
        if (error) {
            // Out of descriptors or the peer is gone already: breathe, don't spin.
            asio::steady_timer pause(server.io, std::chrono::milliseconds(50));
            co_await pause.async_wait(asio::redirect_error(asio::use_awaitable, error));
        } else if (server.connections < server.options.connections) {
            asio::co_spawn(server.io, serve_connection(std::move(socket), server), asio::detached);
        }
    }
}

std::optional<Error> load_certificate(HttpServer::Inside& server) {
    error_code error;
    server.tls.set_options(asio::ssl::context::default_workarounds | asio::ssl::context::no_sslv2 |
                           asio::ssl::context::no_sslv3 | asio::ssl::context::no_tlsv1 |
                           asio::ssl::context::no_tlsv1_1);
    server.tls.use_certificate_chain_file(server.options.certificate.string(), error);
    if (error) {
        return Error{ErrorCode::unreadable, server.options.certificate.string(),
                     "The certificate can’t be read: a PEM file with the chain is asked for."};
    }
    server.tls.use_private_key_file(server.options.key.string(), asio::ssl::context::pem, error);
    if (error) {
        return Error{ErrorCode::unreadable, server.options.key.string(),
                     "The key can’t be read, or isn’t the certificate’s: a PEM file is asked for."};
    }
    return std::nullopt;
}

}  // namespace

HttpServer::HttpServer(ServerOptions options, Site& site)
    : inside_(std::make_unique<Inside>(std::move(options), site)) {}

HttpServer::~HttpServer() = default;

Result<std::uint16_t> HttpServer::listen() {
    auto& server = *inside_;
    if (!server.options.certificate.empty()) {
        if (auto fault = load_certificate(server)) {
            return *fault;
        }
    }
    error_code error;
    const auto address = asio::ip::make_address(server.options.address, error);
    if (error) {
        return Error{ErrorCode::unreadable, server.options.address, "An IP address to listen on is asked for."};
    }
    const tcp::endpoint endpoint(address, server.options.port);
    server.acceptor.open(endpoint.protocol(), error);
    if (!error) {
        server.acceptor.set_option(asio::socket_base::reuse_address(true), error);
        server.acceptor.bind(endpoint, error);
    }
    if (!error) {
        server.acceptor.listen(asio::socket_base::max_listen_connections, error);
    }
    if (error) {
        const auto code = error == asio::error::address_in_use ? ErrorCode::busy : ErrorCode::io;
        return Error{code, server.options.address, "It can’t be listened on: " + error.message() + "."};
    }
    return server.acceptor.local_endpoint().port();
}

void HttpServer::run() {
    auto& server = *inside_;
    server.signals.add(SIGTERM);
    server.signals.add(SIGINT);
    server.signals.async_wait([&server](error_code error, int) {
        if (!error) {
            server.begin_stop();
        }
    });
    asio::co_spawn(server.io, accept_all(server), asio::detached);
    server.io.run();
    server.pool.join();
}

void HttpServer::stop() {
    asio::post(inside_->io, [this] { inside_->begin_stop(); });
}

}  // namespace truehang::http
