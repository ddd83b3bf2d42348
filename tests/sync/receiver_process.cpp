// SPDX-License-Identifier: Apache-2.0
#include "receiver_process.h"

#include "protocol/digest.h"
#include "protocol/paths.h"
#include "protocol/records.h"

#include <arpa/inet.h>
#include <fcntl.h>
#include <poll.h>
#include <spawn.h>
#include <sys/socket.h>
#include <sys/wait.h>
#include <unistd.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <array>
#include <cctype>
#include <cerrno>
#include <csignal>
#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <iterator>
#include <stdexcept>

extern char** environ;

namespace truehang::sync::test {

namespace {

using Pipe = std::array<int, 2>;

Pipe new_pipe() {
    Pipe ends{};
    if (::pipe2(ends.data(), O_CLOEXEC) != 0) {
        throw std::runtime_error("no pipe");
    }
    return ends;
}

/// Starts a program with the given descriptors as its 0, 1 and 2 (-1: this process's own).
pid_t start(const std::vector<std::string>& arguments, std::array<int, 3> standard) {
    posix_spawn_file_actions_t actions;
    posix_spawn_file_actions_init(&actions);
    for (int target = 0; target < 3; ++target) {
        const int from = standard.at(static_cast<std::size_t>(target));
        if (from >= 0) {
            posix_spawn_file_actions_adddup2(&actions, from, target);
        }
    }
    std::vector<char*> words;
    for (const auto& argument : arguments) {
        words.push_back(const_cast<char*>(argument.c_str()));
    }
    words.push_back(nullptr);
    pid_t process = -1;
    const int fault = posix_spawnp(&process, words[0], &actions, nullptr, words.data(), environ);
    posix_spawn_file_actions_destroy(&actions);
    if (fault != 0) {
        throw std::runtime_error("can't start " + arguments[0]);
    }
    return process;
}

int wait_for(pid_t process) {
    int status = 0;
    ::waitpid(process, &status, 0);
    return WIFEXITED(status) ? WEXITSTATUS(status) : -WTERMSIG(status);
}

std::string read_line(int descriptor) {
    std::string line;
    char c = 0;
    while (::read(descriptor, &c, 1) == 1 && c != '\n') {
        line += c;
    }
    return line;
}

/// Reads two pipes to their ends without letting either fill up.
void read_both(int out, int err, Outcome& outcome) {
    std::array<pollfd, 2> ends{{{out, POLLIN, 0}, {err, POLLIN, 0}}};
    std::array<char, 65536> piece{};
    while (ends[0].fd >= 0 || ends[1].fd >= 0) {
        ::poll(ends.data(), ends.size(), -1);
        for (std::size_t i = 0; i < ends.size(); ++i) {
            if (ends.at(i).fd < 0 || ends.at(i).revents == 0) {
                continue;
            }
            const auto count = ::read(ends.at(i).fd, piece.data(), piece.size());
            if (count <= 0) {
                ends.at(i).fd = -1;
            } else {
                (i == 0 ? outcome.out : outcome.err).append(piece.data(), static_cast<std::size_t>(count));
            }
        }
    }
}

std::string lower(std::string text) {
    std::transform(text.begin(), text.end(), text.begin(),
                   [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
    return text;
}

std::vector<std::string> database_arguments(const std::filesystem::path& data) {
    const auto url = database_for(data);
    return url.empty() ? std::vector<std::string>{} : std::vector<std::string>{"--database", url};
}

}  // namespace

std::string database_for(const std::filesystem::path& data) {
    const char* server = std::getenv("TRUEHANG_POSTGRES");
    if (server == nullptr) {
        return {};
    }
    const auto name = "kept_" + hex(sha256(data.string())).substr(0, 16);
    const auto url = [server](const std::string& of) { return "postgresql:///" + of + "?" + server; };
    // Where it is there already, this fails and it is used again, as a folder is.
    static_cast<void>(run_program({"psql", "-qc", "CREATE DATABASE " + name, url("postgres")}));
    return url(name);
}

Outcome run_program(const std::vector<std::string>& arguments, std::string_view in) {
    // Through a file, so that a program that doesn't read its input can't hold the test up.
    std::FILE* input = std::tmpfile();
    if (!in.empty()) {
        std::fwrite(in.data(), 1, in.size(), input);
    }
    std::rewind(input);
    const auto out = new_pipe();
    const auto err = new_pipe();
    const auto process = start(arguments, {::fileno(input), out[1], err[1]});
    ::close(out[1]);
    ::close(err[1]);
    Outcome outcome;
    read_both(out[0], err[0], outcome);
    ::close(out[0]);
    ::close(err[0]);
    std::fclose(input);
    outcome.exit_code = wait_for(process);
    return outcome;
}

Outcome run_workroom(const std::string& command, const std::filesystem::path& data,
                     const std::vector<std::string>& more) {
    std::vector<std::string> arguments{TRUEHANG_WORKROOM, command, "--data", data.string()};
    for (const auto& words : {database_arguments(data), more}) {
        arguments.insert(arguments.end(), words.begin(), words.end());
    }
    return run_program(arguments);
}

std::string file_text(const std::filesystem::path& file) {
    std::ifstream in(file, std::ios::binary);
    return {std::istreambuf_iterator<char>(in), std::istreambuf_iterator<char>()};
}

TemporaryFolder::TemporaryFolder() {
    std::string pattern = (std::filesystem::temp_directory_path() / "truehang-XXXXXX").string();
    if (::mkdtemp(pattern.data()) == nullptr) {
        throw std::runtime_error("no temporary folder");
    }
    path_ = pattern;
}

TemporaryFolder::~TemporaryFolder() {
    std::error_code ignored;
    std::filesystem::remove_all(path_, ignored);
}

Connection::Connection(int port) : socket_(::socket(AF_INET, SOCK_STREAM | SOCK_CLOEXEC, 0)) {
    const timeval patience{10, 0};
    ::setsockopt(socket_, SOL_SOCKET, SO_RCVTIMEO, &patience, sizeof patience);
    ::setsockopt(socket_, SOL_SOCKET, SO_SNDTIMEO, &patience, sizeof patience);
    sockaddr_in address{};
    address.sin_family = AF_INET;
    address.sin_port = htons(static_cast<std::uint16_t>(port));
    address.sin_addr.s_addr = htonl(INADDR_LOOPBACK);
    if (::connect(socket_, reinterpret_cast<const sockaddr*>(&address), sizeof address) != 0) {
        throw std::runtime_error("can't connect");
    }
}

Connection::~Connection() { ::close(socket_); }

bool Connection::send(std::string_view bytes) {
    while (!bytes.empty()) {
        const auto sent = ::send(socket_, bytes.data(), bytes.size(), MSG_NOSIGNAL);
        if (sent <= 0) {
            return false;
        }
        bytes.remove_prefix(static_cast<std::size_t>(sent));
    }
    return true;
}

void Connection::end_sending() { ::shutdown(socket_, SHUT_WR); }

bool Connection::more() {
    std::array<char, 65536> piece{};
    const auto count = ::recv(socket_, piece.data(), piece.size(), 0);
    if (count > 0) {
        buffer_.append(piece.data(), static_cast<std::size_t>(count));
    }
    return count > 0;
}

Reply Connection::read_reply(bool has_body) {
    std::size_t end = 0;
    while ((end = buffer_.find("\r\n\r\n")) == std::string::npos) {
        if (!more()) {
            return {};
        }
    }
    Reply reply;
    const std::string head = buffer_.substr(0, end);
    buffer_.erase(0, end + 4);
    reply.status = std::stoi(head.substr(9, 3));
    for (std::size_t at = head.find("\r\n"); at != std::string::npos; at = head.find("\r\n", at + 2)) {
        const auto line = head.substr(at + 2, head.find("\r\n", at + 2) - at - 2);
        const auto colon = line.find(':');
        reply.headers[lower(line.substr(0, colon))] = line.substr(std::min(colon + 2, line.size()));
    }
    const auto length = reply.headers.find("content-length");
    const auto wanted = has_body && length != reply.headers.end() ? std::stoul(length->second) : 0;
    while (buffer_.size() < wanted && more()) {
    }
    reply.body = buffer_.substr(0, wanted);
    buffer_.erase(0, wanted);
    return reply;
}

bool Connection::is_closed_by_peer() {
    std::array<char, 4096> piece{};
    while (true) {
        const auto count = ::recv(socket_, piece.data(), piece.size(), 0);
        if (count <= 0) {
            return count == 0 || errno == ECONNRESET;
        }
    }
}

Receiver::Receiver(std::filesystem::path data, std::vector<std::string> more_arguments,
                   std::vector<std::string> before) {
    // It dies with its test: one that is left behind holds what ctest waits for.
    std::vector<std::string> arguments{"setpriv", "--pdeathsig", "KILL"};
    std::ranges::move(before, std::back_inserter(arguments));
    for (const std::string word : {TRUEHANG_WORKROOM, "serve", "--data", data.c_str(), "--port", "0"}) {
        arguments.push_back(word);
    }
    for (const auto& more : {database_arguments(data), more_arguments}) {
        arguments.insert(arguments.end(), more.begin(), more.end());
    }
    const auto out = new_pipe();
    process_ = start(arguments, {-1, out[1], -1});
    ::close(out[1]);
    const auto address = read_line(out[0]);
    const auto code_line = read_line(out[0]);
    ::close(out[0]);
    if (address.find_last_of(':') == std::string::npos || code_line.size() < 9) {
        throw std::runtime_error("the receiver didn't start: " + address);
    }
    port_ = std::stoi(address.substr(address.find_last_of(':') + 1));
    code_ = code_line.substr(code_line.size() - 9);
}

Receiver::~Receiver() {
    if (process_ > 0) {
        end(SIGKILL);
    }
}

int Receiver::end(int signal) {
    ::kill(process_, signal);
    return wait_for(std::exchange(process_, -1));
}

Reply Receiver::ask(const std::string& method, const std::string& path, const Fields& fields,
                    std::string_view body) const {
    std::string head = method + " " + path + " HTTP/1.1\r\n";
    bool names_host = false;
    for (const auto& [name, value] : fields) {
        head += name + ": " + value + "\r\n";
        names_host = names_host || name == "Host";
    }
    head += names_host ? "" : "Host: 127.0.0.1:" + std::to_string(port_) + "\r\n";
    if (method == "PUT" || method == "POST" || method == "PATCH") {
        head += "Content-Length: " + std::to_string(body.size()) + "\r\n";
    }
    Connection connection(port_);
    connection.send(head + "\r\n");
    connection.send(body);
    return connection.read_reply(method != "HEAD");
}

std::string Receiver::pair() const {
    const auto reply = ask("POST", "/pair", {{"Content-Type", "application/json"}},
                           write_record(PairRequest{code_, "A test's phone"}));
    const auto answer = read_pair_answer(reply.body);
    return answer ? answer->token : std::string();
}

Reply Receiver::put_survey(const std::string& token, const std::string& id, long long revision,
                           std::string_view bytes) const {
    return ask("PUT", revision_path(id, revision),
               {{"Authorization", "Bearer " + token},
                {"Content-Type", "application/json"},
                {"Content-Digest", digest_field(sha256(bytes))}},
               bytes);
}

Reply Receiver::put_photo(const std::string& token, const std::string& sha256_hex, std::string_view bytes) const {
    return ask("PUT", photo_path(sha256_hex), {{"Authorization", "Bearer " + token}, {"Content-Type", "image/jpeg"}},
               bytes);
}

std::string example_survey(const std::string& id, long long revision, const std::string& title) {
    auto survey =
        nlohmann::ordered_json::parse(file_text(TRUEHANG_SOURCE_DIR "/tests/reference/contract/survey.example.json"));
    survey["id"] = id;
    survey["revision"] = revision;
    survey["title"] = title;
    return survey.dump();
}

}  // namespace truehang::sync::test
