// SPDX-License-Identifier: Apache-2.0
#include "light/zone.h"

#include <date/tz.h>

#include <exception>
#include <string>

namespace truehang {
namespace {

const date::time_zone* zone_named(std::string_view name) {
    try {
        return name.empty() ? nullptr : date::locate_zone(std::string(name));
    } catch (const std::exception&) {  // the library’s way to say that it has no such zone, or no database
        return nullptr;
    }
}

}  // namespace

std::optional<OffsetAt> offset_in(std::string_view zone) {
    const date::time_zone* found = zone_named(zone);
    if (found == nullptr) {
        return std::nullopt;
    }
    return [found, known = date::sys_info()](Moment at) mutable {
        const auto second = std::chrono::floor<std::chrono::seconds>(at);
        if (second < known.begin || second >= known.end) {
            known = found->get_info(second);
        }
        return known.offset;
    };
}

OffsetAt offset_by_sun(Angle longitude) {
    const std::chrono::seconds offset(static_cast<long long>(longitude.degrees() * 240.0));
    return [offset](Moment) { return offset; };
}

}  // namespace truehang
