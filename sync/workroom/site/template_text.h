// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string_view>

namespace truehang::workroom {

/// The text of a template or style sheet of `pages`, compiled in; empty for any other name.
[[nodiscard]] std::string_view template_text(std::string_view name);

}  // namespace truehang::workroom
