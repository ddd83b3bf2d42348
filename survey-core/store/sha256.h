// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <array>
#include <cstdint>
#include <string>
#include <string_view>

namespace truehang {

/// SHA-256 (FIPS 180-4) of bytes that come in pieces.
class Sha256 {
public:
    Sha256& add(std::string_view bytes);
    /// The hash of all that was added, 64 lower-case hexadecimal digits. Nothing may be added afterwards.
    [[nodiscard]] std::string hex();

private:
    void take_block(const unsigned char* block);

    std::array<std::uint32_t, 8> state_{0x6a09e667U, 0xbb67ae85U, 0x3c6ef372U, 0xa54ff53aU,
                                        0x510e527fU, 0x9b05688cU, 0x1f83d9abU, 0x5be0cd19U};
    std::array<unsigned char, 64> block_{};
    std::size_t filled_ = 0;
    std::uint64_t length_ = 0;
};

/// SHA-256 of `bytes` in lower-case hexadecimal.
[[nodiscard]] std::string sha256_hex(std::string_view bytes);

/// Whether `text` is 64 lower-case hexadecimal digits.
[[nodiscard]] bool is_sha256_hex(std::string_view text);

}  // namespace truehang
