// SPDX-License-Identifier: Apache-2.0
#include "workroom/serve.h"

#include "workroom/addresses.h"
#include "workroom/archive/access.h"
#include "workroom/archive/archive.h"
#include "workroom/archive/own_certificate.h"
#include "workroom/documents.h"
#include "workroom/http/http_server.h"
#include "workroom/site/reception.h"
#include "workroom/site/watched_site.h"

#include <fcntl.h>
#include <fmt/format.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

#include <chrono>
#include <csignal>
#include <cstdio>
#include <cstdlib>

namespace truehang::workroom {

namespace {

/// How long a plan that is under way may hold up the end.
constexpr std::chrono::milliseconds planning_ends{1000};

sync::Time now() { return std::chrono::time_point_cast<std::chrono::milliseconds>(std::chrono::system_clock::now()); }

int fail_serving(const Error& error) {
    fmt::print(stderr, "truehang-workroom: {}: {}\n", error.where, error.text);
    return refused;
}

std::chrono::milliseconds in_ms(double seconds) {
    return std::chrono::milliseconds(static_cast<long long>(seconds * 1000.0));
}

/// Held while a folder is served, so that two workrooms don't share one.
class ServingLock {
public:
    explicit ServingLock(const std::string& data)
        : descriptor_(::open((data + "/serving").c_str(), O_RDWR | O_CREAT | O_CLOEXEC, 0600)),
          held_(descriptor_ >= 0 && ::flock(descriptor_, LOCK_EX | LOCK_NB) == 0) {}
    ~ServingLock() {
        if (descriptor_ >= 0) {
            ::close(descriptor_);
        }
    }
    ServingLock(const ServingLock&) = delete;
    ServingLock& operator=(const ServingLock&) = delete;
    [[nodiscard]] bool held() const { return held_; }

private:
    int descriptor_;
    bool held_;
};

http::ServerOptions server_options(const ServeOptions& options, const std::string& address) {
    http::ServerOptions server;
    server.address = address;
    server.port = options.port;
    server.certificate = options.certificate;
    server.key = options.key;
    server.header_time = in_ms(options.header_seconds);
    server.idle_time = in_ms(options.idle_seconds);
    server.stall_time = in_ms(options.stall_seconds);
    return server;
}

/// Whether this may be listened on as asked; says why not.
bool may_listen(const ServeOptions& options, const std::string& address) {
    if (options.certificate.empty() != options.key.empty()) {
        fmt::print(stderr, "truehang-workroom: --certificate and --key are given together.\n");
        return false;
    }
    if (is_loopback(address) || !options.certificate.empty()) {
        return true;
    }
    if (!options.without_tls) {
        return true;  // with a certificate of its own
    }
    fmt::print(stderr, "truehang-workroom: warning: without TLS anyone on the network can read what is sent.\n");
    return true;
}

/// Takes the workroom's own certificate where it serves beyond this machine and was given none, and tells its
/// fingerprint; empty where it doesn't.
Result<std::string> take_own_certificate(ServeOptions& options, const std::string& address) {
    if (is_loopback(address) || options.without_tls || !options.certificate.empty()) {
        return std::string();
    }
    auto names = reached_hosts(address);
    names.push_back(machine_name());
    const auto own = own_certificate(options.kept.data, names, now());
    if (!own) {
        return own.error();
    }
    options.certificate = own->file;
    options.key = own->file;
    return own->fingerprint;
}

Reach reach_of(const ServeOptions& options, const std::string& address, std::uint16_t port) {
    Reach reach;
    reach.addresses = options.reached_at;
    reach.from_this_machine_only = options.reached_at.empty() && is_loopback(address);
    if (options.reached_at.empty()) {
        for (const auto& host : reached_hosts(address)) {
            reach.addresses.push_back(url_of(host, port, !options.certificate.empty()));
        }
    }
    return reach;
}

bool tell(const ServeOptions& options, const std::string& address, std::uint16_t port, const std::string& pin,
          const std::string& code) {
    fmt::print("Listening on {}\nPairing code, for ten minutes: {}\n",
               url_of(address, port, !options.certificate.empty()), code);
    if (!pin.empty()) {
        fmt::print("Fingerprint of its certificate (SHA-256): {}\n", pin);
    }
    std::fflush(stdout);
    if (options.pairing_code_file.empty()) {
        return true;
    }
    const auto mask = ::umask(077);
    const bool written = write_out(code + "\n", options.pairing_code_file);
    ::umask(mask);
    return written;
}

WatchedSite::Log log_of(const ServeOptions& options) {
    return options.log ? WatchedSite::Log([](const std::string& line) { fmt::print(stderr, "{}\n", line); }) : nullptr;
}

/// Receives into an archive that nobody else does; `pin` is the digest of the own certificate, or empty.
int receive(const ServeOptions& options, const std::string& address, const std::string& pin, Archive& archive) {
    archive.clear_incoming();
    Access access(archive);
    Reception reception(archive, access, {options.name, options.sign_in});
    WatchedSite watched(reception, archive, std::chrono::steady_clock::now, log_of(options));
    http::HttpServer server(server_options(options, address), watched);
    const auto port = server.listen();
    if (!port) {
        return fail_serving(port.error());
    }
    auto reach = reach_of(options, address, *port);
    reach.pin = pin;
    reception.set_reach(std::move(reach));
    const auto code = access.new_code();
    if (!code) {
        return fail_serving(code.error());
    }
    if (!tell(options, address, *port, pin, *code)) {
        return refused;
    }
    server.run();
    const bool ended = reception.end(planning_ends);
    archive.close();
    if (!ended) {
        std::_Exit(0);  // a plan under way can't be broken off; nothing of it is kept, and all else is on the disk
    }
    return 0;
}

}  // namespace

int serve(ServeOptions options) {
    const std::string address = options.listen == "localhost" ? "127.0.0.1" : options.listen;
    if (!may_listen(options, address)) {
        return refused;
    }
    std::signal(SIGPIPE, SIG_IGN);
    auto archive = open_archive(options.kept);
    if (!archive) {
        return fail_serving(archive.error());
    }
    const ServingLock lock(options.kept.data);
    if (!lock.held()) {
        return fail_serving(
            {ErrorCode::busy, options.kept.data, "Another workroom receives into this folder already."});
    }
    const auto pin = take_own_certificate(options, address);
    return pin ? receive(options, address, *pin, **archive) : fail_serving(pin.error());
}

int print_pairing_code(const KeptAt& kept) {
    auto archive = open_archive(kept);
    if (!archive) {
        return fail_serving(archive.error());
    }
    const auto code = Access(**archive).new_code();
    if (!code) {
        return fail_serving(code.error());
    }
    return write_out(*code + "\n", "") ? 0 : 2;
}

}  // namespace truehang::workroom
