// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "workroom/http/inside.h"

#include <boost/asio/awaitable.hpp>

namespace truehang::http {

/// Serves one connection to its end: TLS where the server has a certificate, then request after request.
[[nodiscard]] asio::awaitable<void> serve_connection(tcp::socket socket, HttpServer::Inside& server);

}  // namespace truehang::http
