// SPDX-License-Identifier: Apache-2.0
#include "survey/replaced.h"

#include <algorithm>
#include <iterator>
#include <map>
#include <optional>
#include <string>

namespace truehang {
namespace {

bool when_fixed(const Reading& reading) { return reading.stage && reading.stage->is(Stage::fixed); }

const Reading* with_id(const Window& window, std::string_view id) {
    const auto found = std::ranges::find(window.readings, id, &Reading::id);
    return found != window.readings.end() && !id.empty() ? &*found : nullptr;
}

using PlaceOfId = std::map<std::string_view, std::size_t>;

/// Where each reading stands that can be replaced.
PlaceOfId places_by_id(const Window& window) {
    PlaceOfId places;
    for (std::size_t i = 0; i < window.readings.size(); ++i) {
        if (!window.readings[i].id.empty()) {
            places.emplace(window.readings[i].id, i);
        }
    }
    return places;
}

/// Which readings lead back to themselves. From each that wasn't come by yet, along what it replaces: one that was come
/// by on the same way closes a ring.
std::vector<bool> in_rings(const Window& window, const PlaceOfId& places) {
    const std::size_t count = window.readings.size();
    std::vector<std::size_t> way_of(count, count);
    std::vector<bool> in_ring(count);
    for (std::size_t from = 0; from < count; ++from) {
        std::vector<std::size_t> way;
        std::size_t at = from;
        while (at != count && way_of[at] == count) {
            way_of[at] = from;
            way.push_back(at);
            const auto earlier = places.find(window.readings[at].replaces);
            at = earlier == places.end() ? count : earlier->second;
        }
        if (at != count && way_of[at] == from) {
            for (auto one = std::ranges::find(way, at); one != way.end(); ++one) {
                in_ring[*one] = true;
            }
        }
    }
    return in_ring;
}

/// The readings that one replaces, and those that they replace: places in the window, from its own on.
std::vector<std::size_t> chain_from(const Window& window, std::string_view id) {
    std::vector<std::size_t> chain;
    const Reading* one = with_id(window, id);
    while (one != nullptr && chain.size() < window.readings.size()) {
        chain.push_back(static_cast<std::size_t>(one - window.readings.data()));
        one = with_id(window, one->replaces);
    }
    return chain;
}

/// Puts a reading, with those that it replaces, into the chain of the one that counts: at its end, or before the first
/// that both have.
void put_into_chain(Window& window, std::string_view counts, const std::string& earlier) {
    const auto chain = chain_from(window, counts);
    std::size_t after = chain.back();
    std::optional<std::size_t> before;
    for (const std::size_t one : chain_from(window, earlier)) {
        const auto met = std::ranges::find(chain, one);
        if (met != chain.end() && window.readings[one].id == earlier) {
            return;
        }
        if (met == chain.begin()) {  // it replaced the one that counts now
            window.readings[*before].replaces.clear();
            break;
        }
        if (met != chain.end()) {
            after = *std::prev(met);
            break;
        }
        before = one;
    }
    window.readings[after].replaces = earlier;
}

}  // namespace

std::vector<bool> replaced_in(const Window& window) {
    const PlaceOfId places = places_by_id(window);
    const auto in_ring = in_rings(window, places);
    std::vector<bool> replaced(window.readings.size());
    for (const Reading& reading : window.readings) {
        const auto earlier = places.find(reading.replaces);
        if (earlier != places.end() && reading.replaces != reading.id && !in_ring[earlier->second]) {
            replaced[earlier->second] = true;
        }
    }
    return replaced;
}

bool is_replaced(const Window& window, const Reading& reading) {
    const auto place = static_cast<std::size_t>(&reading - window.readings.data());
    return replaced_in(window).at(place);
}

std::vector<const Reading*> contenders(const Window& window, std::string_view station) {
    std::vector<const Reading*> standing;
    const auto replaced = replaced_in(window);
    for (std::size_t i = 0; i < replaced.size(); ++i) {
        const Reading& reading = window.readings[i];
        if (reading.station == station && !reading.id.empty() && !replaced[i]) {
            standing.push_back(&reading);
        }
    }
    if (std::ranges::any_of(standing, [](const Reading* one) { return when_fixed(*one); })) {
        std::erase_if(standing, [](const Reading* one) { return !when_fixed(*one); });
    }
    return standing.size() > 1 ? standing : std::vector<const Reading*>{};
}

bool choose_reading(Window& window, std::string_view id) {
    const Reading* chosen = with_id(window, id);
    const auto among = chosen != nullptr ? contenders(window, chosen->station) : std::vector<const Reading*>{};
    if (std::ranges::find(among, chosen) == among.end()) {
        return false;
    }
    std::vector<std::string> chain{std::string(id)};
    std::vector<std::string> before;
    for (const Reading* one : among) {
        if (one != chosen) {
            chain.push_back(one->id);
        }
        before.push_back(one->replaces);
    }
    for (std::size_t i = 0; i < chain.size(); ++i) {
        auto& reading = *std::ranges::find(window.readings, chain[i], &Reading::id);
        reading.replaces = i + 1 < chain.size() ? chain[i + 1] : std::string();
    }
    for (const std::string& earlier : before) {
        if (with_id(window, earlier) != nullptr) {
            put_into_chain(window, id, earlier);
        }
    }
    return true;
}

}  // namespace truehang
