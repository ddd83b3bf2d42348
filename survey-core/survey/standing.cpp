// SPDX-License-Identifier: Apache-2.0
#include "survey/standing.h"

#include "survey/replaced.h"

#include <algorithm>
#include <set>
#include <string_view>

namespace truehang {
namespace {

/// The stations with a reading that stands and is more than a proposal.
std::set<std::string_view> stations_read(const Window& window) {
    std::set<std::string_view> read;
    const auto replaced = replaced_in(window);
    for (std::size_t i = 0; i < replaced.size(); ++i) {
        const Reading& reading = window.readings[i];
        if (!replaced[i] && !(reading.how && reading.how->is(How::proposed))) {
            read.insert(reading.station);
        }
    }
    return read;
}

}  // namespace

std::vector<Station> stations_left(const Window& window) {
    const auto read = stations_read(window);
    std::vector<Station> left = walk_of(window);
    std::erase_if(left, [&](const Station& station) {
        return read.contains(station.word) ||
               std::ranges::any_of(window.not_taken, [&](const NotTaken& n) { return n.station == station.word; });
    });
    return left;
}

StationCount stations_taken(const Window& window) {
    const auto asked = static_cast<int>(walk_of(window).size());
    return {asked - static_cast<int>(stations_left(window).size()), asked};
}

}  // namespace truehang
