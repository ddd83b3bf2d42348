// SPDX-License-Identifier: Apache-2.0
#include "store/uuid7.h"

#include <string_view>

namespace truehang {
namespace {

constexpr std::uint64_t high_mask = 0xfff;
constexpr std::uint64_t low_mask = 0x3fff'ffff'ffff'ffff;

std::string hyphenated(std::uint64_t upper, std::uint64_t lower) {
    static constexpr std::string_view digits = "0123456789abcdef";
    std::string text;
    for (int i = 0; i < 32; ++i) {
        if (i == 8 || i == 12 || i == 16 || i == 20) {
            text += '-';
        }
        const std::uint64_t half = i < 16 ? upper : lower;
        text += digits[half >> (60 - 4 * (i % 16)) & 0xfU];
    }
    return text;
}

}  // namespace

IdMaker::IdMaker(std::function<std::uint64_t()> unix_ms, std::function<std::uint64_t()> random)
    : unix_ms_(std::move(unix_ms)), random_(std::move(random)) {}

std::string IdMaker::operator()() {
    const std::uint64_t now = unix_ms_() & 0xffff'ffff'ffff;
    if (now > last_ms_) {
        last_ms_ = now;
        high_ = random_() & high_mask;
        low_ = random_() & low_mask;
    } else {
        low_ = (low_ + 1 + (random_() & 0xffff'ffff)) & low_mask;
        if (low_ <= 0xffff'ffff) {  // it may have come round: count on in the bits above
            high_ = (high_ + 1) & high_mask;
            last_ms_ += high_ == 0 ? 1 : 0;
        }
    }
    return hyphenated(last_ms_ << 16 | std::uint64_t{7} << 12 | high_, std::uint64_t{1} << 63 | low_);
}

}  // namespace truehang
