// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "shown_rows.h"
#include "survey/survey.h"
#include "units/length_text.h"

#include <QString>
#include <optional>

// Ways to go on at a station where no tape was laid: the same as another of its stretch, or what was typed as an
// estimate.

namespace truehang {

struct Station;

/// Each way's word and what it says. `typed` is what stands in the field, as this station's reading; nothing where that
/// is none.
[[nodiscard]] QList<ShownRows::Row> without_tape_rows(const Window& window, const Station& at,
                                                      const std::optional<Reading>& typed, const LengthStyle& style);

/// The reading that a way's word stands for, without id and time; nothing where there is no such way any more.
[[nodiscard]] std::optional<Reading> without_tape_reading(const Window& window, const Station& at,
                                                          const std::optional<Reading>& typed, const QString& word);

}  // namespace truehang
