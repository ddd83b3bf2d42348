// SPDX-License-Identifier: Apache-2.0
#include "merge/list_order.h"

#include <algorithm>
#include <map>
#include <set>
#include <tuple>

namespace truehang::merging {
namespace {

using Places = std::map<std::string, std::size_t>;

Places places_in(const Keys& base) {
    Places places;
    for (const std::string& key : base) {
        places.emplace(key, places.size());
    }
    return places;
}

/// Whether `a` stands before `b` in the list's own order.
bool stands_before(const Places& base, const std::string& a, const std::string& b) {
    const auto rank = [&](const std::string& key) {
        const auto found = base.find(key);
        const std::size_t place = found != base.end() ? found->second : base.size();
        return std::pair(place, found != base.end() ? std::size_t{0} : key.size());
    };
    const auto [place_a, size_a] = rank(a);
    const auto [place_b, size_b] = rank(b);
    return std::tie(place_a, size_a, a) < std::tie(place_b, size_b, b);
}

}  // namespace

Keys own_order(const Keys& base, Keys keys) {
    const Places places = places_in(base);
    std::ranges::sort(keys, [&](const auto& a, const auto& b) { return stands_before(places, a, b); });
    return keys;
}

Keys core_of(const Keys& base, const Keys& order) {
    const Places places = places_in(base);
    std::size_t size = order.size();
    while (size > 0 && (size == order.size() || stands_before(places, order[size - 1], order[size]))) {
        --size;
    }
    return {order.begin(), order.begin() + static_cast<std::ptrdiff_t>(size)};
}

Keys in_order(const Keys& base, const Keys& core, const Keys& keys) {
    const std::set<std::string> there(keys.begin(), keys.end());
    const std::set<std::string> in_core(core.begin(), core.end());
    Keys order;
    std::ranges::copy_if(core, std::back_inserter(order), [&](const auto& key) { return there.contains(key); });
    Keys rest;
    std::ranges::copy_if(keys, std::back_inserter(rest), [&](const auto& key) { return !in_core.contains(key); });
    std::ranges::move(own_order(base, std::move(rest)), std::back_inserter(order));
    return order;
}

}  // namespace truehang::merging
