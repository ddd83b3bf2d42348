// SPDX-License-Identifier: Apache-2.0
#include "workroom/people/password.h"

#include "units/folded.h"

#include <fmt/format.h>
#include <sodium.h>

#include <algorithm>
#include <array>
#include <semaphore>
#include <stdexcept>

namespace truehang::workroom {

namespace {

constexpr unsigned long long passes = 2;
constexpr std::size_t memory = std::size_t{19456} * 1024;

void begin() {
    static const int begun = sodium_init();
    if (begun < 0) {
        throw std::runtime_error("libsodium can’t begin");
    }
}

/// One of the two places at which a password is worked.
class Place {
public:
    Place() { places().acquire(); }
    ~Place() { places().release(); }
    Place(const Place&) = delete;
    Place& operator=(const Place&) = delete;

private:
    static std::counting_semaphore<2>& places() {
        static std::counting_semaphore<2> both{2};
        return both;
    }
};

/// Unicode characters of UTF-8: all bytes but those that go on with one.
std::size_t letters(std::string_view text) {
    return static_cast<std::size_t>(
        std::ranges::count_if(text, [](char c) { return (static_cast<unsigned char>(c) & 0xc0U) != 0x80U; }));
}

/// A kept form that no password has, to be compared with in the place of one that isn't there.
const std::string& nobodys() {
    static const std::string kept = [] {
        std::array<char, 33> secret{};
        randombytes_buf(secret.data(), secret.size());
        return password_to_keep({secret.data(), secret.size()}).value();
    }();
    return kept;
}

}  // namespace

std::string why_not_password(std::string_view password, std::string_view name) {
    if (letters(password) < password_least) {
        return fmt::format("A password has at least {} letters: four words are easy to keep in mind.", password_least);
    }
    if (password.size() > password_most_bytes) {
        return fmt::format("A password has at most {} bytes.", password_most_bytes);
    }
    if (std::ranges::count(password, password.front()) == static_cast<std::ptrdiff_t>(password.size()) ||
        (!name.empty() && folded(password) == folded(name))) {
        return "That password is easily guessed. Choose four words that nobody would put together.";
    }
    return {};
}

Result<std::string> password_to_keep(std::string_view password) {
    begin();
    const Place place;
    std::array<char, crypto_pwhash_argon2id_STRBYTES> kept{};
    if (crypto_pwhash_argon2id_str(kept.data(), password.data(), password.size(), passes, memory) != 0) {
        return Error{ErrorCode::busy, "password", "There isn’t memory enough to take a password. Try again."};
    }
    return std::string(kept.data());
}

bool password_holds(const std::string& kept, std::string_view password) {
    begin();
    const std::string& against = kept.empty() ? nobodys() : kept;
    const Place place;
    const bool holds = password.size() <= password_most_bytes &&
                       crypto_pwhash_argon2id_str_verify(against.c_str(), password.data(), password.size()) == 0;
    return holds && !kept.empty();
}

}  // namespace truehang::workroom
