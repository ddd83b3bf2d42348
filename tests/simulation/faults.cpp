// SPDX-License-Identifier: Apache-2.0
#include "faults.h"

#include <algorithm>
#include <limits>
#include <numeric>

namespace truehang::sync::simulation {
namespace {

bool writes(Way way) { return way == Way::send_survey || way == Way::send_photo || way == Way::send_piece; }

}  // namespace

std::vector<Fault> possible(Way way, Phase phase) {
    if (way == Way::edit) {
        return phase == Phase::leaving || phase == Phase::acted ? std::vector{Fault::phone_dies, Fault::clock_jumps}
                                                                : std::vector<Fault>{};
    }
    const bool follows = way == Way::follow;
    switch (phase) {
        case Phase::leaving:
            return follows ? std::vector{Fault::cut} : std::vector{Fault::phone_dies, Fault::cut, Fault::clock_jumps};
        case Phase::arriving:
            return follows ? std::vector{Fault::cut, Fault::receiver_dies, Fault::busy}
                           : std::vector{Fault::cut,  Fault::receiver_dies, Fault::repeated,    Fault::delayed,
                                         Fault::busy, Fault::disk_full,     Fault::sign_in_page};
        case Phase::within:
            return writes(way) ? std::vector{Fault::receiver_dies, Fault::disk_full} : std::vector<Fault>{};
        case Phase::kept:
            return writes(way) ? std::vector{Fault::receiver_dies} : std::vector<Fault>{};
        case Phase::answering:
            return follows ? std::vector{Fault::cut, Fault::phone_dies}
                           : std::vector{Fault::cut, Fault::delayed, Fault::phone_dies, Fault::sign_in_page};
        default:
            return {Fault::phone_dies};
    }
}

const std::vector<Case>& cases() {
    static const std::vector<Case> all = [] {
        std::vector<Case> cases;
        for (std::size_t way = 0; way < way_words.size(); ++way) {
            for (std::size_t phase = 0; phase < phase_words.size(); ++phase) {
                for (const Fault fault : possible(static_cast<Way>(way), static_cast<Phase>(phase))) {
                    cases.push_back({static_cast<Way>(way), static_cast<Phase>(phase), fault});
                }
            }
        }
        return cases;
    }();
    return all;
}

Way asked_after(Way way) {
    switch (way) {
        case Way::send_survey:
            return Way::ask_survey;
        case Way::send_photo:
            return Way::ask_photo;
        case Way::send_piece:
            return Way::ask_upload;
        default:
            return way;
    }
}

long long Tally::least() const {
    long long least = std::numeric_limits<long long>::max();
    for (const auto& [way, phase, fault] : cases()) {
        least = std::min(least, of(way, phase, fault));
    }
    return least;
}

long long Tally::all() const { return std::accumulate(counts_.begin(), counts_.end(), 0LL); }

}  // namespace truehang::sync::simulation
