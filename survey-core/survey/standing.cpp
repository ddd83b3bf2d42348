// SPDX-License-Identifier: Apache-2.0
#include "survey/standing.h"

#include "survey/stations.h"

#include <algorithm>

namespace truehang {
namespace {

/// A reading of the station stands that is more than a proposal.
bool is_read(const Window& window, std::string_view station) {
    return std::ranges::any_of(window.readings, [&](const Reading& reading) {
        const bool replaced = !reading.id.empty() && std::ranges::any_of(window.readings, [&](const Reading& other) {
            return other.replaces == reading.id && other.id != reading.id;
        });
        const bool proposed = reading.how && reading.how->is(How::proposed);
        return reading.station == station && !replaced && !proposed;
    });
}

}  // namespace

StationCount stations_taken(const Window& window) {
    StationCount count;
    for (const Station& station : walk_of(window)) {
        ++count.asked;
        const bool excused =
            std::ranges::any_of(window.not_taken, [&](const NotTaken& n) { return n.station == station.word; });
        count.taken += excused || is_read(window, station.word) ? 1 : 0;
    }
    return count;
}

}  // namespace truehang
