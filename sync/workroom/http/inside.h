// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "workroom/http/http_server.h"

#include <boost/asio/io_context.hpp>
#include <boost/asio/ip/tcp.hpp>
#include <boost/asio/signal_set.hpp>
#include <boost/asio/ssl/context.hpp>
#include <boost/asio/steady_timer.hpp>
#include <boost/asio/thread_pool.hpp>

// What the server and its connections share. Asio is known to these alone.

namespace truehang::http {

namespace asio = boost::asio;
using tcp = asio::ip::tcp;

struct HttpServer::Inside {
    static constexpr std::chrono::seconds ending_time{5};  ///< for requests under way

    ServerOptions options;
    Site& site;
    asio::io_context io{1};
    asio::thread_pool pool;
    asio::ssl::context tls{asio::ssl::context::tls_server};
    tcp::acceptor acceptor{io};
    asio::signal_set signals{io};
    asio::steady_timer ending{io};
    std::size_t connections = 0;
    std::size_t requests = 0;
    bool stopping = false;

    Inside(ServerOptions given, Site& served) : options(std::move(given)), site(served), pool(options.site_threads) {}

    void begin_stop() {
        if (stopping) {
            return;
        }
        stopping = true;
        boost::system::error_code ignored;
        acceptor.close(ignored);
        signals.cancel(ignored);
        site.ending();
        if (requests == 0) {
            io.stop();
            return;
        }
        ending.expires_after(ending_time);
        ending.async_wait([this](boost::system::error_code) { io.stop(); });
    }
    void request_ended() {
        --requests;
        if (stopping && requests == 0) {
            ending.cancel();
        }
    }
};

}  // namespace truehang::http
