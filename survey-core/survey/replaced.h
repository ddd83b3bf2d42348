// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "survey/survey.h"

#include <string_view>
#include <vector>

// Which reading was taken again for which, and choosing among readings of which none was.

namespace truehang {

/// Whether another reading of the window replaces this one of its own. Readings that replace each other in a ring (two
/// people each chose their own) all stand.
[[nodiscard]] bool is_replaced(const Window& window, const Reading& reading);

/// The same of every reading of the window, in its order; n readings take n log n.
[[nodiscard]] std::vector<bool> replaced_in(const Window& window);

/// The readings of a station of which a person is to say which one counts: not replaced, with ids, of the stage that
/// counts; in the document’s order, none where there are fewer than two.
[[nodiscard]] std::vector<const Reading*> contenders(const Window& window, std::string_view station);

/// Makes that one of its station’s contenders count: it replaces the next, that one the one after, the last what they
/// replaced before. Values stay as they are, and no reading goes. False, and nothing changed, where it is none of them.
[[nodiscard]] bool choose_reading(Window& window, std::string_view id);

}  // namespace truehang
