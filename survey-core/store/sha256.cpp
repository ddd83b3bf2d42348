// SPDX-License-Identifier: Apache-2.0
#include "store/sha256.h"

#include <algorithm>
#include <bit>
#include <cstring>

namespace truehang {
namespace {

// FIPS 180-4, section 4.2.2.
constexpr std::array<std::uint32_t, 64> round_constants{
    0x428a2f98, 0x71374491, 0xb5c0fbcf, 0xe9b5dba5, 0x3956c25b, 0x59f111f1, 0x923f82a4, 0xab1c5ed5,
    0xd807aa98, 0x12835b01, 0x243185be, 0x550c7dc3, 0x72be5d74, 0x80deb1fe, 0x9bdc06a7, 0xc19bf174,
    0xe49b69c1, 0xefbe4786, 0x0fc19dc6, 0x240ca1cc, 0x2de92c6f, 0x4a7484aa, 0x5cb0a9dc, 0x76f988da,
    0x983e5152, 0xa831c66d, 0xb00327c8, 0xbf597fc7, 0xc6e00bf3, 0xd5a79147, 0x06ca6351, 0x14292967,
    0x27b70a85, 0x2e1b2138, 0x4d2c6dfc, 0x53380d13, 0x650a7354, 0x766a0abb, 0x81c2c92e, 0x92722c85,
    0xa2bfe8a1, 0xa81a664b, 0xc24b8b70, 0xc76c51a3, 0xd192e819, 0xd6990624, 0xf40e3585, 0x106aa070,
    0x19a4c116, 0x1e376c08, 0x2748774c, 0x34b0bcb5, 0x391c0cb3, 0x4ed8aa4a, 0x5b9cca4f, 0x682e6ff3,
    0x748f82ee, 0x78a5636f, 0x84c87814, 0x8cc70208, 0x90befffa, 0xa4506ceb, 0xbef9a3f7, 0xc67178f2};

std::uint32_t sum(std::uint32_t x, int a, int b, int c) { return std::rotr(x, a) ^ std::rotr(x, b) ^ std::rotr(x, c); }
std::uint32_t mix(std::uint32_t x, int a, int b, int shift) { return std::rotr(x, a) ^ std::rotr(x, b) ^ (x >> shift); }

std::array<std::uint32_t, 64> schedule(const unsigned char* block) {
    std::array<std::uint32_t, 64> words{};
    for (std::size_t i = 0; i < 16; ++i) {
        words[i] = std::uint32_t{block[4 * i]} << 24 | std::uint32_t{block[4 * i + 1]} << 16 |
                   std::uint32_t{block[4 * i + 2]} << 8 | std::uint32_t{block[4 * i + 3]};
    }
    for (std::size_t i = 16; i < 64; ++i) {
        words[i] = mix(words[i - 2], 17, 19, 10) + words[i - 7] + mix(words[i - 15], 7, 18, 3) + words[i - 16];
    }
    return words;
}

}  // namespace

void Sha256::take_block(const unsigned char* block) {
    const auto words = schedule(block);
    auto [a, b, c, d, e, f, g, h] = state_;
    for (std::size_t i = 0; i < 64; ++i) {
        const std::uint32_t first = h + sum(e, 6, 11, 25) + ((e & f) ^ (~e & g)) + round_constants[i] + words[i];
        const std::uint32_t second = sum(a, 2, 13, 22) + ((a & b) ^ (a & c) ^ (b & c));
        h = g;
        g = f;
        f = e;
        e = d + first;
        d = c;
        c = b;
        b = a;
        a = first + second;
    }
    const std::array<std::uint32_t, 8> worked{a, b, c, d, e, f, g, h};
    std::transform(state_.begin(), state_.end(), worked.begin(), state_.begin(), std::plus<>());
}

Sha256& Sha256::add(std::string_view bytes) {
    length_ += bytes.size();
    while (!bytes.empty()) {
        const std::size_t taken = std::min(bytes.size(), block_.size() - filled_);
        std::memcpy(block_.data() + filled_, bytes.data(), taken);
        filled_ += taken;
        bytes.remove_prefix(taken);
        if (filled_ == block_.size()) {
            take_block(block_.data());
            filled_ = 0;
        }
    }
    return *this;
}

std::string Sha256::hex() {
    const std::uint64_t bits = length_ * 8;
    add(std::string(1, '\x80'));
    add(std::string((block_.size() + 56 - filled_) % block_.size(), '\0'));
    std::string length(8, '\0');
    for (std::size_t i = 0; i < 8; ++i) {
        length[i] = static_cast<char>(bits >> (56 - 8 * i) & 0xffU);
    }
    add(length);
    static constexpr std::string_view digits = "0123456789abcdef";
    std::string text;
    for (const std::uint32_t word : state_) {
        for (int shift = 28; shift >= 0; shift -= 4) {
            text += digits[word >> shift & 0xfU];
        }
    }
    return text;
}

std::string sha256_hex(std::string_view bytes) { return Sha256().add(bytes).hex(); }

bool is_sha256_hex(std::string_view text) {
    return text.size() == 64 && std::all_of(text.begin(), text.end(),
                                            [](char c) { return (c >= '0' && c <= '9') || (c >= 'a' && c <= 'f'); });
}

}  // namespace truehang
