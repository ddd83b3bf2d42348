// SPDX-License-Identifier: Apache-2.0
#include "workroom/sun_command.h"

#include "document/document.h"
#include "light/sun.h"
#include "workroom/documents.h"

#include <fmt/format.h>

#include <charconv>
#include <cmath>

namespace truehang::workroom {

namespace {

/// A whole text as a number from -`most` to `most`.
std::optional<double> number_within(std::string_view text, double most) {
    double number = 0.0;
    const auto end = text.data() + text.size();
    const auto read = std::from_chars(text.data(), end, number);
    const bool fits = read.ec == std::errc() && read.ptr == end && std::abs(number) <= most;
    return fits ? std::optional(number) : std::nullopt;
}

/// A moment whose year, as it was written, is one that sun_at is asked for.
std::optional<Moment> moment_within(const std::string& text) {
    const auto moment = read_rfc3339(text);
    const std::string year = text.substr(0, 4);
    return moment && year >= "2000" && year <= "2060" ? moment : std::nullopt;
}

std::string sun_text(const SunPosition& sun) {
    const std::string azimuth = fmt::format("{:.6f}", sun.azimuth.degrees());
    return fmt::format("{{\"azimuth_deg\": {}, \"altitude_deg\": {:.6f}}}\n",
                       azimuth == "360.000000" ? "0.000000" : azimuth, sun.altitude.degrees());
}

int print_sun(const std::vector<std::string>& given) {
    if (given.size() != 3) {
        fmt::print(stderr,
                   "sun: give a latitude, a longitude and a time, as in: sun 51.5 -0.13 2026-03-20T12:00:00Z\n");
        return refused;
    }
    const auto latitude = number_within(given[0], 90.0);
    const auto longitude = number_within(given[1], 180.0);
    const auto moment = moment_within(given[2]);
    if (!latitude || !longitude || !moment) {  // what was given isn’t said again: it may be of many lines
        fmt::print(stderr, "sun: the {}.\n",
                   !latitude    ? "latitude isn’t a number of degrees from -90 to 90"
                   : !longitude ? "longitude isn’t a number of degrees from -180 to 180"
                                : "time isn’t an RFC 3339 time of the years 2000 to 2060, as 2026-03-20T12:00:00Z");
        return refused;
    }
    return write_out(sun_text(sun_at({Angle::degrees(*latitude), Angle::degrees(*longitude)}, *moment)), "") ? 0
                                                                                                             : refused;
}

}  // namespace

void add_sun(CLI::App& app, int& result) {
    auto* command = app.add_subcommand("sun", "Print where the sun stands: sun LAT LON TIME (degrees, RFC 3339)");
    command->prefix_command();  // -0.13 and -.13 are numbers, not options
    command->callback([command, &result] { result = print_sun(command->remaining()); });
}

}  // namespace truehang::workroom
