// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <numbers>

namespace truehang {

/// Radians.
inline constexpr double per_degree = std::numbers::pi / 180.0;

}  // namespace truehang
