// SPDX-License-Identifier: Apache-2.0
#include "cloth/part.h"

#include <algorithm>

// Where tabs, eyelets and pleats stand, and how many of a thing there can be.

namespace truehang {

namespace {

/// More than a curtain 100 m wide can have at a spacing that a hand can sew.
constexpr int most_listed = 5000;

}  // namespace

int whole_count(double whole) {
    constexpr double most = 1'000'000.0;
    return static_cast<int>(std::clamp(whole, -most, most));
}

std::vector<Length> evenly(Length first, Length last, int count) {
    if (count < 1 || count > most_listed) {
        return {};
    }
    std::vector<Length> positions;
    positions.reserve(static_cast<std::size_t>(count));
    for (int i = 0; i < count - 1; ++i) {
        positions.push_back(first + (last - first) * i / (count - 1));
    }
    positions.push_back(count == 1 ? first : last);
    return positions;
}

Length flat_at_leading_edge(const LayerContext& layer, Length hangs_flat) {
    if (layer.asked.hardware == nullptr) {
        return Length();
    }
    const Hardware& hardware = *layer.asked.hardware;
    return layer.asked.curtains() == 2 ? std::min(hardware.overlap / 2.0, hangs_flat)
                                       : std::min(hardware.return_depth + hardware.overlap, hangs_flat);
}

}  // namespace truehang
