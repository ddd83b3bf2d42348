// SPDX-License-Identifier: Apache-2.0
#include "document/document.h"
#include "light/sun.h"

#include <fmt/format.h>

#include <iostream>
#include <string>

// sun_days: of each line "LATITUDE LONGITUDE START" on standard input a line with the crossings of the 24 hours from
// there, as seconds after it with + for a rise and - for a set, and the highest altitude.

using namespace truehang;

int main() {
    double latitude = 0.0;
    double longitude = 0.0;
    std::string start;
    while (std::cin >> latitude >> longitude >> start) {
        const auto from = read_rfc3339(start);
        if (!from) {
            return 2;
        }
        const auto day = sun_day({Angle::degrees(latitude), Angle::degrees(longitude)}, *from);
        for (const auto& crossing : day.crossings) {
            const auto after = std::chrono::duration<double>(crossing.at - *from).count();
            fmt::print("{}{:.1f} ", crossing.rises ? '+' : '-', after);
        }
        fmt::print("{:.5f}\n", day.highest.degrees());
    }
    return 0;
}
