// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "adjust/network.h"
#include "slip.h"

#include <vector>

namespace truehang::trial {

/// The networks of a window alone, without anything that is said of them.
struct Networks {
    std::vector<Network> networks;
    bool no_figure = false;  ///< readings that form no figure at all
};
[[nodiscard]] Networks networks_of(const Visit& visit, const Window& window);

/// How probable it is that some network is flagged for a slip, and whether it is above the detectable size in one:
/// from how far off it makes each network of the same window read without error.
struct Detection {
    bool detectable = false;
    double flag_probability = 0.0;  ///< by theory
};
[[nodiscard]] Detection detection_of(const Visit& visit, const Truth& truth, const Planted& planted);

}  // namespace truehang::trial
