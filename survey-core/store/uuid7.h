// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstdint>
#include <functional>
#include <string>

namespace truehang {

/// Makes UUIDs of version 7 (RFC 9562, section 5.7) that rise strictly, also within one millisecond and when the clock
/// is set back (section 6.2, method 2: the random bits count up).
class IdMaker {
public:
    /// `unix_ms`: milliseconds since 1970-01-01T00:00:00Z; `random`: 64 uniformly random bits at each call.
    IdMaker(std::function<std::uint64_t()> unix_ms, std::function<std::uint64_t()> random);

    /// Lower case, as `01924f6a-7c00-7000-8000-000000000001`.
    [[nodiscard]] std::string operator()();

private:
    std::function<std::uint64_t()> unix_ms_;
    std::function<std::uint64_t()> random_;
    std::uint64_t last_ms_ = 0;
    std::uint64_t high_ = 0;  // 12 bits beside the version
    std::uint64_t low_ = 0;   // 62 bits beside the variant
};

}  // namespace truehang
