// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "scene.h"

#include <functional>
#include <vector>

namespace truehang::test {

/// A place to be looked at: a screen, what is opened there, how.
struct Stop {
    const char* screen;
    const char* panel = "";
    std::function<void(Notebook&)> open = {};
};

/// Every screen of the program, and every panel that doesn't need a device.
[[nodiscard]] const std::vector<Stop>& places();

/// Opens the first window of the house that the places are looked at in.
void open_house(Scene& scene);
void go_to(Scene& scene, const Stop& place);

/// The value of a role in the first row.
[[nodiscard]] QString first_key(const ShownRows* rows, const char* role);

}  // namespace truehang::test
