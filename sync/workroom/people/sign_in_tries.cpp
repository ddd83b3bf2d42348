// SPDX-License-Identifier: Apache-2.0
#include "workroom/people/sign_in_tries.h"

#include <algorithm>

namespace truehang::workroom {

namespace {

using std::chrono::seconds;

/// What is left of a wait that began then; a clock that was set back ends it.
seconds left(seconds wait, sync::Time since, sync::Time now) {
    const auto ends = since + wait;
    if (now >= ends || now < since) {
        return seconds(0);
    }
    return std::chrono::ceil<seconds>(ends - now);
}

}  // namespace

seconds SignInTries::wait_of_place(const Counts& counts, const std::string& place, sync::Time now) {
    const auto found = counts.find(place);
    if (found == counts.end() || found->second.wrong < free_from_one_place) {
        return seconds(0);
    }
    const int doubled = std::min(found->second.wrong - free_from_one_place, 16);
    return left(std::min(seconds(1LL << doubled), longest), found->second.last, now);
}

seconds SignInTries::wait_of_name(const Counts& counts, const std::string& name, sync::Time now) {
    const auto found = counts.find(name);
    return found == counts.end() || found->second.wrong < free_of_one_name ? seconds(0)
                                                                           : left(name_wait, found->second.last, now);
}

void SignInTries::count(Counts& counts, const std::string& key, sync::Time now) {
    if (counts.size() >= most_places && !counts.contains(key)) {
        counts.erase(std::ranges::min_element(counts, {}, [](const auto& entry) { return entry.second.last; }));
    }
    auto& entry = counts[key];
    ++entry.wrong;
    entry.last = now;
}

seconds SignInTries::begin(const Try& one) {
    const auto now = clock_();
    const std::lock_guard lock(mutex_);
    for (auto* counts : {&places_, &names_}) {
        std::erase_if(*counts, [now](const auto& entry) { return entry.second.last + forgotten <= now; });
    }
    const auto wait =
        std::max(wait_of_place(places_, one.place, now), one.known ? seconds(0) : wait_of_name(names_, one.name, now));
    if (wait > seconds(0)) {
        return wait;
    }
    count(places_, one.place, now);
    if (!one.known) {
        count(names_, one.name, now);
    }
    return seconds(0);
}

void SignInTries::succeeded(const Try& one) {
    const std::lock_guard lock(mutex_);
    places_.erase(one.place);
    const auto name = names_.find(one.name);
    if (!one.known && name != names_.end() && --name->second.wrong <= 0) {
        names_.erase(name);
    }
}

}  // namespace truehang::workroom
