// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstdint>
#include <string>
#include <vector>

namespace truehang::workroom {

[[nodiscard]] bool is_loopback(const std::string& address);
/// Whether an address to listen on means every one this machine has.
[[nodiscard]] bool is_any(const std::string& address);

/// This machine's name, or nothing.
[[nodiscard]] std::string machine_name();
/// The addresses of this machine's network interfaces that are up, without loopback and link-local ones, IPv4 first.
[[nodiscard]] std::vector<std::string> machine_addresses();

/// The addresses under which one that listens on `address` is reached: itself, or all of the machine's.
[[nodiscard]] std::vector<std::string> reached_hosts(const std::string& address);
/// "https://192.0.2.7:8737"; an IPv6 address stands in brackets.
[[nodiscard]] std::string url_of(const std::string& host, std::uint16_t port, bool secure);

}  // namespace truehang::workroom
