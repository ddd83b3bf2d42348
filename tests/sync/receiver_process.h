// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <filesystem>
#include <map>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include <sys/types.h>

// The built program as a process of its own, and a client that says exactly what a test wants said on the wire.

namespace truehang::sync::test {

struct Outcome {
    int exit_code = -1;
    std::string out, err;
};

/// Runs a program to its end, `in` on its standard input.
[[nodiscard]] Outcome run_program(const std::vector<std::string>& arguments, std::string_view in = {});

/// Runs a command of `truehang-workroom` on the records in `data` (or, where TRUEHANG_POSTGRES is set, on those that
/// are in its database instead).
[[nodiscard]] Outcome run_workroom(const std::string& command, const std::filesystem::path& data,
                                   const std::vector<std::string>& more = {});

/// The contents of a file; empty where it can't be read.
[[nodiscard]] std::string file_text(const std::filesystem::path& file);

/// A folder of its own, removed at the end.
class TemporaryFolder {
public:
    TemporaryFolder();
    ~TemporaryFolder();
    TemporaryFolder(const TemporaryFolder&) = delete;
    TemporaryFolder& operator=(const TemporaryFolder&) = delete;
    [[nodiscard]] const std::filesystem::path& path() const { return path_; }

private:
    std::filesystem::path path_;
};

struct Reply {
    int status = 0;                              ///< 0: the connection ended without an answer
    std::map<std::string, std::string> headers;  ///< names in lower case
    std::string body;
};

/// One connection. Waits at most ten seconds for anything, so that a test fails rather than hangs.
class Connection {
public:
    explicit Connection(int port);
    ~Connection();
    Connection(const Connection&) = delete;
    Connection& operator=(const Connection&) = delete;

    /// False where the peer closed before all was sent.
    bool send(std::string_view bytes);
    void end_sending();
    [[nodiscard]] Reply read_reply(bool has_body = true);
    /// True where the peer closes, with or without more bytes before.
    [[nodiscard]] bool is_closed_by_peer();

private:
    bool more();
    int socket_ = -1;
    std::string buffer_;
};

using Fields = std::vector<std::pair<std::string, std::string>>;

/// `truehang-workroom serve` on a loopback port of its own.
class Receiver {
public:
    /// `before`: words that start another program, which starts the receiver.
    explicit Receiver(std::filesystem::path data, std::vector<std::string> more_arguments = {},
                      std::vector<std::string> before = {});
    ~Receiver();
    Receiver(const Receiver&) = delete;
    Receiver& operator=(const Receiver&) = delete;

    [[nodiscard]] int port() const { return port_; }
    [[nodiscard]] const std::string& code() const { return code_; }
    /// Sends a signal and waits for the end: the exit code, or minus the signal that ended it.
    int end(int signal);

    /// One request on a connection of its own, Host and Content-Length added.
    [[nodiscard]] Reply ask(const std::string& method, const std::string& path, const Fields& fields = {},
                            std::string_view body = {}) const;
    /// Pairs a device: its token.
    [[nodiscard]] std::string pair() const;
    [[nodiscard]] Reply put_survey(const std::string& token, const std::string& id, long long revision,
                                   std::string_view bytes) const;
    [[nodiscard]] Reply put_photo(const std::string& token, const std::string& sha256, std::string_view bytes) const;

private:
    pid_t process_ = -1;
    int port_ = 0;
    std::string code_;
};

/// Where a PostgreSQL is at hand (tests/postgres/with_postgres.py), the address of a database there, made for the
/// records that would lie in `data`; else empty.
[[nodiscard]] std::string database_for(const std::filesystem::path& data);

/// The worked example of a survey document under another id and revision.
[[nodiscard]] std::string example_survey(const std::string& id, long long revision,
                                         const std::string& title = "Pilot house");

}  // namespace truehang::sync::test
