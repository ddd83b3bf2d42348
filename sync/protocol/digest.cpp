// SPDX-License-Identifier: Apache-2.0
#include "protocol/digest.h"

#include <openssl/evp.h>

#include <algorithm>
#include <cctype>
#include <new>

namespace truehang::sync {

struct Sha256Stream::State {
    EVP_MD_CTX* context = EVP_MD_CTX_new();
    State() {
        if (context == nullptr) {
            throw std::bad_alloc();
        }
        start();
    }
    ~State() { EVP_MD_CTX_free(context); }
    State(const State&) = delete;
    State& operator=(const State&) = delete;
    void start() const { EVP_DigestInit_ex(context, EVP_sha256(), nullptr); }
};

Sha256Stream::Sha256Stream() : state_(std::make_unique<State>()) {}
Sha256Stream::~Sha256Stream() = default;
Sha256Stream::Sha256Stream(Sha256Stream&&) noexcept = default;
Sha256Stream& Sha256Stream::operator=(Sha256Stream&&) noexcept = default;

void Sha256Stream::add(std::string_view bytes) { EVP_DigestUpdate(state_->context, bytes.data(), bytes.size()); }

Sha256 Sha256Stream::finish() {
    Sha256 digest{};
    unsigned int length = 0;
    EVP_DigestFinal_ex(state_->context, digest.data(), &length);
    state_->start();
    return digest;
}

Sha256 sha256(std::string_view bytes) {
    Sha256Stream stream;
    stream.add(bytes);
    return stream.finish();
}

std::string hex(const Sha256& digest) {
    static constexpr std::string_view digits = "0123456789abcdef";
    std::string text;
    text.reserve(digest.size() * 2);
    for (const auto byte : digest) {
        text += digits[byte >> 4U];
        text += digits[byte & 15U];
    }
    return text;
}

std::optional<Sha256> sha256_from_hex(std::string_view text) {
    Sha256 digest{};
    if (text.size() != digest.size() * 2) {
        return std::nullopt;
    }
    for (std::size_t i = 0; i < text.size(); ++i) {
        const char c = text[i];
        const bool decimal = c >= '0' && c <= '9';
        if (!decimal && (c < 'a' || c > 'f')) {
            return std::nullopt;
        }
        const auto value = static_cast<unsigned>(decimal ? c - '0' : c - 'a' + 10);
        digest.at(i / 2) = static_cast<std::uint8_t>(i % 2 == 0 ? value << 4U : digest.at(i / 2) | value);
    }
    return digest;
}

std::string digest_field(const Sha256& digest) {
    std::array<unsigned char, 48> base64{};
    const int length = EVP_EncodeBlock(base64.data(), digest.data(), static_cast<int>(digest.size()));
    std::string field = "sha-256=:";
    field.append(base64.begin(), base64.begin() + length);
    return field + ":";
}

namespace {

const Error unreadable_field{ErrorCode::unreadable, "Content-Digest",
                             "Content-Digest must read sha-256=:BASE64: (RFC 9530)."};

/// A dictionary member of the form `key=:base64:`; parameters aren't understood and not needed.
struct Member {
    std::string_view key, base64;
};

std::string_view trimmed(std::string_view text) {
    const auto first = text.find_first_not_of(" \t");
    return first == std::string_view::npos ? std::string_view{}
                                           : text.substr(first, text.find_last_not_of(" \t") - first + 1);
}

std::optional<Member> read_member(std::string_view text) {
    const auto equals = text.find('=');
    if (equals == std::string_view::npos || equals == 0) {
        return std::nullopt;
    }
    const auto key = text.substr(0, equals);
    const auto value = text.substr(equals + 1);
    const auto key_character = [](char c) {
        return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '_' || c == '-' || c == '.' || c == '*';
    };
    if (!std::all_of(key.begin(), key.end(), key_character) || value.size() < 2 || value.front() != ':' ||
        value.back() != ':') {
        return std::nullopt;
    }
    return Member{key, value.substr(1, value.size() - 2)};
}

std::optional<Sha256> read_base64(std::string_view text) {
    Sha256 digest{};
    std::array<unsigned char, 33> bytes{};
    if (text.size() != 44 || text.back() != '=' || text[42] == '=') {
        return std::nullopt;
    }
    const auto* input = reinterpret_cast<const unsigned char*>(text.data());
    if (EVP_DecodeBlock(bytes.data(), input, static_cast<int>(text.size())) != 33) {
        return std::nullopt;
    }
    std::copy_n(bytes.begin(), digest.size(), digest.begin());
    return digest_field(digest).substr(9, 44) == text ? std::optional(digest) : std::nullopt;
}

}  // namespace

Result<std::optional<Sha256>> read_digest_field(std::string_view field) {
    std::optional<Sha256> found;
    while (true) {
        const auto comma = field.find(',');
        const auto member = read_member(trimmed(field.substr(0, comma)));
        if (!member) {
            return unreadable_field;
        }
        if (member->key == "sha-256") {
            found = read_base64(member->base64);
            if (!found) {
                return unreadable_field;
            }
        }
        if (comma == std::string_view::npos) {
            return found;
        }
        field.remove_prefix(comma + 1);
    }
}

}  // namespace truehang::sync
