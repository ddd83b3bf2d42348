// SPDX-License-Identifier: Apache-2.0
#include "more_stations.h"

#include "writing.h"

#include <algorithm>

namespace truehang {

namespace {

/// The highest number of a kind in the walk; 0 where it has none.
int last_of(const std::vector<Station>& walk, StationKind kind) {
    int last = 0;
    for (const Station& station : walk) {
        last = station.kind == kind ? std::max(last, station.number) : last;
    }
    return last;
}

bool is_wanted(const Station& station, const std::vector<Station>& walk, int facets) {
    switch (station.kind) {
        case StationKind::facet:
            return station.number == facets + 1;
        case StationKind::along:
            return station.number == 0 || station.number == last_of(walk, StationKind::along) + 1;
        case StationKind::ordinate:
            return station.number <= last_of(walk, StationKind::along);
        case StationKind::angle:
        case StationKind::corner_depth:
            return station.number < facets;
        case StationKind::diagonal:
        case StationKind::depth:
        case StationKind::rise:
        case StationKind::slope:
        case StationKind::projection:
        case StationKind::chord:
        case StationKind::width:
        case StationKind::wall:
            return true;
        default:
            return false;
    }
}

}  // namespace

QList<ShownRows::Row> more_rows(const Window& window, const std::vector<Station>& walk) {
    QList<ShownRows::Row> rows;
    const auto shape = window.shape.known();
    if (!shape) {
        return rows;
    }
    const int facets = std::max(facets_asked(window), last_of(walk, StationKind::facet));
    for (const Station& station : stations_of(*shape)) {
        const bool walked = std::ranges::find(walk, station.word, &Station::word) != walk.end();
        if (!walked && is_wanted(station, walk, facets)) {
            rows.append({shown(station.word), shown(station_words(station))});
        }
    }
    return rows;
}

}  // namespace truehang
