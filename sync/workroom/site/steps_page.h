// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "protocol/marks.h"
#include "workroom/site/frame.h"
#include "workroom/site/steps_table.h"

#include <string>
#include <string_view>

namespace truehang::workroom {

/// `/surveys/ID/steps`
[[nodiscard]] std::string steps_path(std::string_view survey);

/// What the page has to say beside the marks.
struct StepsPage {
    std::string said;           ///< one sentence at the top, or nothing
    std::string by;             ///< the name that stands in the form
    bool by_signed_in = false;  ///< it is the one who is signed in, and isn’t typed
    bool may_mark = true;
};

/// The page on which a workroom marks what was done with each layer, and sees what a later revision has changed since.
[[nodiscard]] std::string steps_page(const StepsTable& table, const StepsPage& page);

/// "Cut from revision 3": what was done, and by which revision.
[[nodiscard]] std::string step_text(const sync::LayerMark& mark);

/// Differences for the partial of that name: figures as a table, what is to be minded as sentences below it.
void set_differences(View& values, const std::vector<DifferenceLine>& lines);

/// What the form's buttons say: `set/cut/ROOM/WINDOW/LAYER`, `back/…`; `set/ordered` of all layers.
struct AskedMark {
    bool done = true;
    sync::Step step = sync::Step::ordered;
    bool all = false;
    std::string room{}, window{}, layer{};
};
[[nodiscard]] std::string write_asked_mark(const AskedMark& asked);
[[nodiscard]] std::optional<AskedMark> read_asked_mark(std::string_view text);

}  // namespace truehang::workroom
