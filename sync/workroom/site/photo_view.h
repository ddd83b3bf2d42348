// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "survey/survey.h"
#include "workroom/site/frame.h"

namespace truehang::workroom {

/// What a page shows of a photo: its caption, the picture where `here`, and the marks over it. `number` is unique on
/// the page; `shape` is of the window, whose stations the marks may name.
[[nodiscard]] View photo_view(const Photo& photo, Shape shape, std::size_t number, bool here, bool standalone);

}  // namespace truehang::workroom
