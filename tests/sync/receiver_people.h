// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "protocol/paths.h"
#include "receiver_process.h"

#include <gtest/gtest.h>

#include <fstream>

namespace truehang::sync::test {

inline const std::string four_words = "lead weight, blue hem";

inline bool has(const Reply& page, const std::string& text) { return page.body.find(text) != std::string::npos; }

/// Name=value of the cookie that an answer sets; empty where it sets none.
inline std::string cookie_in(const Reply& reply) {
    const auto field = reply.headers.find("set-cookie");
    return field == reply.headers.end() ? std::string() : field->second.substr(0, field->second.find(';'));
}

/// A workroom with people, and browsers that say exactly what a test wants.
struct Peopled {
    TemporaryFolder folder;
    Receiver receiver;

    explicit Peopled(std::vector<std::string> more = {}) : receiver(folder.path(), std::move(more)) {}

    /// The command `person`, with a password where one is asked for.
    [[nodiscard]] Outcome person(std::vector<std::string> words, const std::string& password = four_words) const {
        const auto file = folder.path() / "typed";
        std::ofstream(file) << password << "\n";
        words.insert(words.end(), {"--password-file", file.string()});
        return run_workroom("person", folder.path(), words);
    }
    void add(const std::string& name, const std::string& role) const {
        const auto added = person({"add", "--role", role, name});
        EXPECT_EQ(added.exit_code, 0) << added.err;
    }
    /// As a browser sends a form of this site.
    [[nodiscard]] Reply form(const std::string& path, const std::string& body, const std::string& cookie = {},
                             Fields more = {}, const std::string& site = "127.0.0.1") const {
        const auto port = ":" + std::to_string(receiver.port());
        more.insert(more.end(), {{"Content-Type", "application/x-www-form-urlencoded"},
                                 {"Host", "127.0.0.1" + port},
                                 {"Origin", "http://" + site + port}});
        if (!cookie.empty()) {
            more.emplace_back("Cookie", cookie);
        }
        return receiver.ask("POST", path, more, body);
    }
    [[nodiscard]] Reply sign_in(const std::string& name, const std::string& password = four_words,
                                const std::string& cookie = {}, Fields more = {}) const {
        return form("/sign-in", "name=" + percent_encode(name) + "&password=" + percent_encode(password), cookie,
                    std::move(more));
    }
    /// The cookie of a person that is signed in.
    [[nodiscard]] std::string in(const std::string& name) const {
        const auto reply = sign_in(name);
        EXPECT_EQ(reply.status, 303) << reply.body;
        return cookie_in(reply);
    }
    [[nodiscard]] Reply get(const std::string& path, const std::string& cookie = {}) const {
        return receiver.ask("GET", path, cookie.empty() ? Fields{} : Fields{{"Cookie", cookie}});
    }
    /// The path of somebody's page, as the people's page links it.
    [[nodiscard]] std::string path_of(const std::string& name, const std::string& cookie) const {
        const auto page = get("/people", cookie).body;
        const auto end = page.find("\"><bdi>" + name + "</bdi>");
        const auto start = end == std::string::npos ? end : page.rfind("href=\"", end);
        return start == std::string::npos ? std::string() : page.substr(start + 6, end - start - 6);
    }
};

}  // namespace truehang::sync::test
