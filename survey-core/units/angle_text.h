// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "units/length.h"
#include "units/result.h"

#include <string>
#include <string_view>

namespace truehang {

/// Reads an angle as people type it, in degrees: "135", "134.5", "134,5°", "135 deg". Range 0 to 360. Errors:
/// `unreadable`, `out_of_range`, each with a sentence that says what is understood.
[[nodiscard]] Result<Angle> read_angle(std::string_view typed);

/// Writes an angle in degrees to at most one decimal: "135", "134.5"; with the sign "135°".
[[nodiscard]] std::string write_angle(Angle angle, char decimal = '.', bool with_unit = false);

}  // namespace truehang
