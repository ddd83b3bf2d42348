// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "figures/window_working.h"
#include "survey/survey.h"

#include <string>
#include <string_view>
#include <vector>

// What a client put their name to: a frozen copy of the figures, and how far it still covers them.

namespace truehang {

inline constexpr std::string_view agreement_outdated = "agreement-outdated";

/// What there is to agree now: every layer that can be made, with its finished sizes, its cloths, and their cost where
/// a price is given. Lengths are whole millimetres, costs as they are worked. Without a digest.
[[nodiscard]] Agreed agreed_now(const Survey& survey);

/// What hangs there, in the language in force: "Tab headed pair"; as it was written down where the heading isn't known.
[[nodiscard]] std::string agreed_layer_says(const AgreedLayer& layer);

/// Flags `agreement-outdated` (`decide`), one a layer, where a window differs from what was signed: what was agreed and
/// what it is now. None where nothing was signed with its figures.
[[nodiscard]] std::vector<Flag> agreement_flags(const Survey& survey, const Room& room, const Window& window,
                                                const WorkedWindow& worked);

/// Titles of the agreed windows and layers that are no longer there.
[[nodiscard]] std::vector<std::string> agreed_and_gone(const Survey& survey);

/// What stands in the way of agreeing, in sentences with the window’s title: every `stop` flag. Nothing to agree at all
/// is one sentence.
[[nodiscard]] std::vector<std::string> unsettled(const Survey& survey, const Figures& figures);

}  // namespace truehang
