// SPDX-License-Identifier: Apache-2.0
#include "survey/standing.h"

#include "survey/replaced.h"

#include <algorithm>

namespace truehang {
namespace {

/// A reading of the station stands that is more than a proposal.
bool is_read(const Window& window, std::string_view station) {
    return std::ranges::any_of(window.readings, [&](const Reading& reading) {
        const bool proposed = reading.how && reading.how->is(How::proposed);
        return reading.station == station && !proposed && !is_replaced(window, reading);
    });
}

}  // namespace

std::vector<Station> stations_left(const Window& window) {
    std::vector<Station> left = walk_of(window);
    std::erase_if(left, [&](const Station& station) {
        return is_read(window, station.word) ||
               std::ranges::any_of(window.not_taken, [&](const NotTaken& n) { return n.station == station.word; });
    });
    return left;
}

StationCount stations_taken(const Window& window) {
    const auto asked = static_cast<int>(walk_of(window).size());
    return {asked - static_cast<int>(stations_left(window).size()), asked};
}

}  // namespace truehang
