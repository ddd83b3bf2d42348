// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "shown_rows.h"
#include "survey/findings.h"
#include "survey/survey.h"
#include "units/length_text.h"

#include <QString>
#include <functional>
#include <string>
#include <vector>

// The readings of one station over time, and the readings that an accepted correction adds: nothing is changed in
// place, and nothing is deleted.

namespace truehang {

/// A proposed value, which no tape has confirmed.
[[nodiscard]] bool is_proposed(const Reading& reading);

/// A reading as it was typed, with its unit; without typed text, its value in the style's unit. "2138 mm".
[[nodiscard]] QString reading_text(const Reading& reading, const LengthStyle& style);

/// "14 March 2026, 10:32" of an RFC 3339 time, on the clock that it was written by; and when a reading was taken.
[[nodiscard]] QString time_shown(std::string_view rfc3339);
[[nodiscard]] QString reading_when(const Reading& reading);

/// Roles: `reading` (key), `figure`, `when`, `how`, `standing` ("counts", "replaced"), `counts`, `spoken`.
[[nodiscard]] QList<QByteArray> history_roles();
/// Every reading of a station, newest first.
[[nodiscard]] QList<ShownRows::Row> history_rows(const Window& window, const std::string& station,
                                                 const LengthStyle& style);

/// The readings that put a suspect's correction in place, the corrections of others that go with it among them: `how`
/// is proposed, each replaces the reading that counts and is of its stage. Empty where nothing is proposed, and where
/// the slip doesn't tell itself what was meant.
[[nodiscard]] std::vector<Reading> proposed_readings(const Window& window, const Suspect& suspect,
                                                     const std::string& taken_at,
                                                     const std::function<std::string()>& new_id);

}  // namespace truehang
