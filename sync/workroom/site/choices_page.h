// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "workroom/site/sheet_page.h"

#include <string>
#include <string_view>

namespace truehang::workroom {

/// Ways to hang one window side by side: as it stands, the other answers where it lies on an edge, what `query` asks
/// for (`heading`, `fullness`, `fabric`, as a form sends them), and what is usually worth comparing.
[[nodiscard]] std::string choices_page(const Survey& survey, const WindowPlace& place, std::string_view query);

}  // namespace truehang::workroom
