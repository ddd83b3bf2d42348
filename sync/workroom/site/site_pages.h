// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "workroom/archive/archive.h"
#include "workroom/http/http_server.h"
#include "workroom/people/door.h"
#include "workroom/site/planning_bench.h"
#include "workroom/site/reach.h"

#include <optional>
#include <string>
#include <string_view>

namespace truehang::workroom {

struct SitePage {
    int status = 200;
    std::string body;
    std::string type{};        ///< its media type; empty: a page
    std::string file_name{};   ///< what it is kept as, where it is a file to keep
    bool looks_again = false;  ///< something is still being worked out
    bool listens = false;      ///< for what comes in while it is looked at
};

/// What pages are made of, and who looks.
struct PageDesk {
    Archive& archive;
    PlanningBench& bench;
    const Reach& reach;
    const Caller& caller;
};

/// The page or file at a path: `/`, `/house-rules`, `/erased`, `/surveys/ID`, `/surveys/ID/sheets/KIND`,
/// `/surveys/ID/orders.csv`, `/pieces.csv`, and below `/surveys/ID/rooms/ROOM/windows/WINDOW[/layers/LAYER]` the kinds
/// of sheet (none: measure), `template.svg` and `choices`, which `query` adds to. It may choose `paper` (a4, letter)
/// and `unit` (mm, in) of sheets, and of `/` what to `find` and `before` which. Where rolls came, the cutting sheets
/// are by their plan. Nothing for any other path or where what it names isn't here; an archive that can't be read is a
/// page of status 500.
[[nodiscard]] std::optional<SitePage> site_page(const PageDesk& desk, std::string_view path,
                                                std::string_view query = {});

/// The style sheet, the script and the fonts, which need no sign-in; nothing for any other path.
[[nodiscard]] std::optional<http::Response> open_file(std::string_view path, const std::string& font_folder);

[[nodiscard]] std::string missing_page();

}  // namespace truehang::workroom
