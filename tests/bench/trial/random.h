// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cmath>
#include <cstddef>
#include <cstdint>
#include <numbers>
#include <random>
#include <vector>

namespace truehang::trial {

/// Draws that are the same with any standard library: the generator is the standard's, the transforms are written out
/// here (the standard leaves those of its distributions open).
class Random {
public:
    explicit Random(std::uint64_t seed) : engine_(seed) {}

    /// In [0, 1), 53 bits.
    [[nodiscard]] double uniform() { return static_cast<double>(engine_() >> 11U) * 0x1.0p-53; }
    [[nodiscard]] double between(double least, double most) { return least + (most - least) * uniform(); }
    [[nodiscard]] bool chance(double probability) { return uniform() < probability; }
    /// A whole number from 0 to `count` - 1.
    [[nodiscard]] std::size_t below(std::size_t count) {
        return static_cast<std::size_t>(uniform() * static_cast<double>(count));
    }
    /// Standard normal, by Box and Muller; the second of each pair is kept for the next call.
    [[nodiscard]] double normal() {
        if (spare_) {
            spare_ = false;
            return kept_;
        }
        const double radius = std::sqrt(-2.0 * std::log(1.0 - uniform()));
        const double turn = 2.0 * std::numbers::pi * uniform();
        kept_ = radius * std::sin(turn);
        spare_ = true;
        return radius * std::cos(turn);
    }
    /// Normal, drawn again until it lies within `most` of 0.
    [[nodiscard]] double normal_within(double deviation, double most) {
        for (;;) {
            if (const double drawn = deviation * normal(); std::abs(drawn) <= most) {
                return drawn;
            }
        }
    }
    /// The place of one of these shares, as often as its share of their sum.
    [[nodiscard]] std::size_t by_share(const std::vector<double>& shares) {
        double sum = 0.0;
        for (const double share : shares) {
            sum += share;
        }
        double left = uniform() * sum;
        for (std::size_t i = 0; i + 1 < shares.size(); ++i) {
            if (left < shares[i]) {
                return i;
            }
            left -= shares[i];
        }
        return shares.size() - 1;
    }
    template <class T>
    [[nodiscard]] const T& pick(const std::vector<T>& from) {
        return from[below(from.size())];
    }

private:
    std::mt19937_64 engine_;
    double kept_ = 0.0;
    bool spare_ = false;
};

}  // namespace truehang::trial
