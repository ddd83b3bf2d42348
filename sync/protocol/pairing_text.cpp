// SPDX-License-Identifier: Apache-2.0
#include "protocol/pairing_text.h"

#include "protocol/digest.h"
#include "protocol/pairing_code.h"
#include "protocol/paths.h"

#include <algorithm>
#include <map>

namespace truehang::sync {

namespace {

constexpr std::string_view word = "pair?";

Error unreadable_pairing(std::string where) {
    return {ErrorCode::unreadable, std::move(where),
            "This isn’t the text that a workroom shows for pairing. Copy the whole of it."};
}

/// As `percent_encode`, but what a query may hold as it is (RFC 3986, section 3.4) and an address is full of stays.
std::string encoded(std::string_view text) {
    std::string out;
    for (const char c : text) {
        out += c == ':' || c == '/' ? std::string(1, c) : percent_encode(std::string_view(&c, 1));
    }
    return out;
}

std::string_view without_ends(std::string_view text) {
    static constexpr std::string_view white = " \t\r\n";
    const auto first = text.find_first_not_of(white);
    return first == std::string_view::npos ? std::string_view{}
                                           : text.substr(first, text.find_last_not_of(white) - first + 1);
}

char lower(char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; }

bool is_address(std::string_view text) {
    const auto scheme = text.find("://");
    const bool known = scheme != std::string_view::npos && scheme + 3 < text.size() &&
                       (text.substr(0, scheme) == "http" || text.substr(0, scheme) == "https");
    return known && std::all_of(text.begin(), text.end(), [](char c) { return c > ' ' && c < '\x7f'; });
}

using Keys = std::map<std::string, std::string, std::less<>>;

Result<Keys> read_keys(std::string_view query) {
    Keys keys;
    while (!query.empty()) {
        const auto end = std::min(query.find('&'), query.size());
        const auto pair = query.substr(0, end);
        query.remove_prefix(std::min(end + 1, query.size()));
        const auto equals = std::min(pair.find('='), pair.size());
        std::string key(pair.substr(0, equals));
        auto value = percent_decode(pair.substr(std::min(equals + 1, pair.size())));
        if (!value || keys.count(key) > 0) {
            return unreadable_pairing(std::move(key));
        }
        keys.emplace(std::move(key), std::move(*value));
    }
    return keys;
}

std::string value_of(const Keys& keys, std::string_view key) {
    const auto found = keys.find(key);
    return found == keys.end() ? std::string() : found->second;
}

}  // namespace

std::string write_pairing_text(const PairingText& text) {
    std::string out =
        std::string(pairing_scheme) + std::string(word) + "at=" + encoded(text.address) + "&code=" + encoded(text.code);
    if (text.until) {
        out += "&until=" + encoded(write_time(*text.until));
    }
    return text.pin.empty() ? out : out + "&pin=" + encoded(text.pin);
}

bool is_pairing_text(std::string_view text) {
    const auto inner = without_ends(text).substr(0, pairing_scheme.size());
    return std::equal(inner.begin(), inner.end(), pairing_scheme.begin(), pairing_scheme.end(),
                      [](char a, char b) { return lower(a) == b; });
}

Result<PairingText> read_pairing_text(std::string_view text) {
    const auto inner = without_ends(text);
    if (!is_pairing_text(inner) || inner.size() > pairing_text_limit ||
        inner.substr(pairing_scheme.size(), word.size()) != word) {
        return unreadable_pairing("");
    }
    const auto keys = read_keys(inner.substr(pairing_scheme.size() + word.size()));
    if (!keys) {
        return keys.error();
    }
    PairingText read{value_of(*keys, "at"), value_of(*keys, "code"), {}, value_of(*keys, "pin")};
    if (!is_address(read.address)) {
        return unreadable_pairing("at");
    }
    if (!read_pairing_code(read.code)) {
        return unreadable_pairing("code");
    }
    if (keys->count("until") > 0) {
        read.until = read_time(value_of(*keys, "until"));
        if (!read.until) {
            return unreadable_pairing("until");
        }
    }
    const bool pinned = keys->count("pin") > 0;
    if (pinned && (!sha256_from_hex(read.pin) || !read.address.starts_with("https:"))) {
        return unreadable_pairing("pin");
    }
    return read;
}

}  // namespace truehang::sync
