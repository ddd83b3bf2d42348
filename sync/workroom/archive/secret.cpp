// SPDX-License-Identifier: Apache-2.0
#include "workroom/archive/secret.h"

#include "protocol/digest.h"

#include <openssl/crypto.h>
#include <openssl/rand.h>

#include <algorithm>
#include <stdexcept>

namespace truehang::workroom {

namespace {

constexpr std::size_t longest = 200;

std::string hex_of(std::string_view bytes) {
    static constexpr std::string_view digits = "0123456789abcdef";
    std::string text;
    for (const char c : bytes) {
        const auto byte = static_cast<unsigned char>(c);
        text += digits[byte >> 4U];
        text += digits[byte & 15U];
    }
    return text;
}

}  // namespace

std::string random_bytes(std::size_t count) {
    std::string bytes(count, '\0');
    if (RAND_bytes(reinterpret_cast<unsigned char*>(bytes.data()), static_cast<int>(count)) != 1) {
        throw std::runtime_error("no randomness");
    }
    return bytes;
}

Secret new_secret() {
    const auto id = hex_of(random_bytes(8));
    const auto secret = hex_of(random_bytes(32));
    return {id, kept_secret(secret), id + "." + secret};
}

std::optional<Secret> read_secret(std::string_view shown) {
    const auto dot = shown.find('.');
    const auto odd = [](char c) { return (c < '0' || c > '9') && (c < 'a' || c > 'z') && c != '-'; };
    if (dot == std::string_view::npos || shown.size() > longest || std::ranges::any_of(shown.substr(0, dot), odd)) {
        return std::nullopt;
    }
    return Secret{std::string(shown.substr(0, dot)), kept_secret(shown.substr(dot + 1)), std::string(shown)};
}

std::string kept_secret(std::string_view secret) { return sync::hex(sync::sha256(secret)); }

bool same_secret(const std::string& kept, const std::string& shown) {
    return kept.size() == shown.size() && CRYPTO_memcmp(kept.data(), shown.data(), shown.size()) == 0;
}

}  // namespace truehang::workroom
