// SPDX-License-Identifier: Apache-2.0
#include "workroom/addresses.h"

#include <arpa/inet.h>
#include <fmt/format.h>
#include <ifaddrs.h>
#include <net/if.h>
#include <netinet/in.h>
#include <sys/socket.h>
#include <unistd.h>

#include <algorithm>
#include <array>

namespace truehang::workroom {

namespace {

/// The address of an interface as text; empty where it isn't one that others reach.
std::string text_of(const ifaddrs& one) {
    std::array<char, INET6_ADDRSTRLEN> text{};
    if (one.ifa_addr == nullptr || (one.ifa_flags & IFF_UP) == 0 || (one.ifa_flags & IFF_LOOPBACK) != 0) {
        return {};
    }
    if (one.ifa_addr->sa_family == AF_INET) {
        const auto* ip = reinterpret_cast<const sockaddr_in*>(one.ifa_addr);
        return ::inet_ntop(AF_INET, &ip->sin_addr, text.data(), text.size()) != nullptr ? text.data() : "";
    }
    if (one.ifa_addr->sa_family != AF_INET6) {
        return {};
    }
    const auto* ip = reinterpret_cast<const sockaddr_in6*>(one.ifa_addr);
    const bool named = ::inet_ntop(AF_INET6, &ip->sin6_addr, text.data(), text.size()) != nullptr;
    return named && !IN6_IS_ADDR_LINKLOCAL(&ip->sin6_addr) ? text.data() : "";
}

}  // namespace

bool is_loopback(const std::string& address) { return address.starts_with("127.") || address == "::1"; }

bool is_any(const std::string& address) { return address == "0.0.0.0" || address == "::"; }

std::string machine_name() {
    std::array<char, 256> name{};
    return ::gethostname(name.data(), name.size() - 1) == 0 ? std::string(name.data()) : std::string();
}

std::vector<std::string> machine_addresses() {
    std::vector<std::string> found;
    ifaddrs* first = nullptr;
    if (::getifaddrs(&first) != 0) {
        return found;
    }
    for (const auto* one = first; one != nullptr; one = one->ifa_next) {
        auto text = text_of(*one);
        if (!text.empty() && std::find(found.begin(), found.end(), text) == found.end()) {
            found.push_back(std::move(text));
        }
    }
    ::freeifaddrs(first);
    std::stable_partition(found.begin(), found.end(),
                          [](const std::string& text) { return text.find(':') == std::string::npos; });
    return found;
}

std::vector<std::string> reached_hosts(const std::string& address) {
    if (!is_any(address)) {
        return {address};
    }
    auto hosts = machine_addresses();
    if (hosts.empty()) {
        hosts.push_back(machine_name());
    }
    return hosts;
}

std::string url_of(const std::string& host, std::uint16_t port, bool secure) {
    const bool bracketed = host.find(':') != std::string::npos;
    return fmt::format("{}://{}{}{}:{}", secure ? "https" : "http", bracketed ? "[" : "", host, bracketed ? "]" : "",
                       port);
}

}  // namespace truehang::workroom
