// SPDX-License-Identifier: Apache-2.0
#include "document/shape_figures.h"

#include <algorithm>
#include <cmath>

namespace truehang {
namespace {

using Json = nlohmann::ordered_json;

/// To two decimals; whole ones without a point.
Json two_decimals(double number) {
    const double rounded = std::round(number * 100.0) / 100.0;
    return rounded == std::trunc(rounded) ? Json(static_cast<long long>(rounded)) : Json(rounded);
}
Json two_decimals(Length length) { return two_decimals(length.mm()); }

Json drop_json(const DropThere& drop) {
    Json json{{"line", drop.line}, {"mm", two_decimals(drop.drop)}, {"u_mm", two_decimals(drop.u)}};
    if (!drop.curtains.empty()) {
        json["curtains"] = drop.curtains;
    }
    return json;
}

Json planned_json(const Planned& planned) {
    Json json{{"width_mm", two_decimals(planned.width)},
              {"drop_mm", two_decimals(planned.drop)},
              {"longer_mm", two_decimals(planned.longer)}};
    const auto add = [&json](const char* key, const std::optional<Length>& length) {
        if (length) {
            json[key] = two_decimals(*length);
        }
    };
    add("cut_drop_mm", planned.cut_drop);
    add("hem_left_mm", planned.hem_left);
    add("short_by_mm", planned.short_by);
    if (!planned.says.empty()) {
        json["says"] = planned.says;
    }
    return json;
}

Json run_json(const BentRun& run, bool has_joints) {
    Json bends = Json::array();
    Json joints = Json::array();
    for (const Bend& bend : run.bends) {
        bends.push_back({{"at_mm", two_decimals(bend.at)}, {"angle_deg", two_decimals(bend.angle.degrees())}});
        joints.push_back(two_decimals(bend.at));
    }
    Json json{{"length_mm", two_decimals(run.length.value)}, {"u_mm", two_decimals(run.length.u)}};
    json["bends"] = std::move(bends);
    json["joints_mm"] = has_joints ? std::move(joints) : Json::array();
    return json;
}

Json top_json(const std::vector<CurtainTop>& tops) {
    Length longest;
    Json curtains = Json::array();
    for (const CurtainTop& top : tops) {
        Json points = Json::array();
        for (const TopPoint& point : top.table) {
            points.push_back({{"hung_mm", two_decimals(point.hung)},
                              {"flat_mm", two_decimals(point.flat)},
                              {"drop_mm", two_decimals(point.drop)}});
            longest = std::max(longest, point.drop);
        }
        curtains.push_back({{"side", top.side}, {"points", std::move(points)}});
    }
    return {{"longest_mm", two_decimals(longest)}, {"curtains", std::move(curtains)}};
}

}  // namespace

void add_shape_figures(Json& json, const LayerFigures& layer) {
    if (layer.finished && !layer.finished->drops.empty()) {
        Json& drops = json["finished"]["drops_mm"] = Json::array();
        for (const DropThere& drop : layer.finished->drops) {
            drops.push_back(drop_json(drop));
        }
    }
    if (layer.finished && layer.finished->planned) {
        json["finished"]["planned"] = planned_json(*layer.finished->planned);
    }
    if (layer.run) {
        json["run"] = run_json(*layer.run, layer.has_joints);
    }
    if (!layer.tops.empty()) {
        json["top"] = top_json(layer.tops);
    }
}

}  // namespace truehang
