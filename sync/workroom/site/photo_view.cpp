// SPDX-License-Identifier: Apache-2.0
#include "workroom/site/photo_view.h"

#include "protocol/paths.h"
#include "survey/stations.h"

#include <fmt/format.h>

#include <algorithm>
#include <optional>

namespace truehang::workroom {

namespace {

using Spot = std::pair<double, double>;

std::optional<Spot> place_of(const Mark& mark, std::string_view name) {
    const auto found = std::ranges::find(mark.points, name, [](const auto& point) { return point.first; });
    return found == mark.points.end() ? std::nullopt : std::optional(found->second);
}

/// A share of the picture as SVG takes it: "42%".
std::string percent(double share) { return fmt::format("{:g}%", share * 100.0); }

std::string words_of(const Mark& mark, Shape shape) {
    const auto station = mark.kind == "station" ? find_station(shape, mark.text) : std::nullopt;
    return station ? std::string(station->says) : mark.text;
}

View run_view(Spot from, Spot to, const std::string& tip) {
    auto run = view();
    run.set("x1", percent(from.first));
    run.set("y1", percent(from.second));
    run.set("x2", percent(to.first));
    run.set("y2", percent(to.second));
    run.set("tip", tip.empty() ? truth(false) : View{tip});
    return run;
}

/// Words stand to the right of a place, to its left where that lies in the right half.
View words_view(Spot at, const std::string& words, bool spot) {
    const bool left = at.first > 0.5;
    auto entry = view();
    entry.set("x", percent(at.first));
    entry.set("y", percent(at.second));
    entry.set("dx", left ? "-9" : "9");
    entry.set("dy", at.second < 0.1 ? "18" : "-6");
    entry.set("anchor", left ? "end" : "start");
    entry.set("words", words);
    entry.set("spot", truth(spot));
    return entry;
}

}  // namespace

View photo_view(const Photo& photo, Shape shape, std::size_t number, bool here, bool standalone) {
    auto entry = view();
    entry.set("caption", photo.caption.empty() ? "No caption" : photo.caption);
    entry.set("src", here && !standalone ? View{sync::photo_path(photo.sha256)} : truth(false));
    entry.set("absent", here || standalone ? truth(false) : View{"not here yet"});
    const std::string tip = fmt::format("tip-{}", number);
    auto runs = view_list();
    auto words = view_list();
    std::string said;
    for (const Mark& mark : photo.marks) {
        const auto from = place_of(mark, "from");
        const auto to = place_of(mark, "to");
        const auto at = place_of(mark, "at");
        const std::string text = words_of(mark, shape);
        if ((mark.kind == "arrow" || mark.kind == "line") && from && to) {
            runs << run_view(*from, *to, mark.kind == "arrow" ? tip : "");
            words << words_view(*from, text, false);
        } else if ((mark.kind == "text" || mark.kind == "station") && at) {
            words << words_view(*at, text, true);
        } else {
            continue;
        }
        said += (said.empty() ? "" : "; ") + (text.empty() ? mark.kind : text);
    }
    entry.set("marked", said.empty() ? truth(false) : View{said});
    entry.set("tip", tip);
    entry.set("runs", runs);
    entry.set("words", words);
    return entry;
}

}  // namespace truehang::workroom
