// SPDX-License-Identifier: Apache-2.0
#include "document/document.h"
#include "document/figures_parts.h"
#include "document/shape_figures.h"
#include "figures/figures.h"

#include <cmath>
#include <nlohmann/json.hpp>

namespace truehang {
namespace {

using Json = nlohmann::ordered_json;

/// A number for a reader: whole ones without a point, nothing that isn't finite.
Json plain(double number) {
    if (!std::isfinite(number)) {
        return nullptr;
    }
    if (std::abs(number) < 1e15 && number == std::trunc(number)) {
        return static_cast<long long>(number);
    }
    return number;
}

/// To so many decimals; the double nearest to that decimal number, so that it is written with no more of them.
Json rounded(double number, double per_one) { return plain(std::round(number * per_one) / per_one); }
Json two_decimals(double number) { return rounded(number, 100.0); }
Json four_decimals(double number) { return rounded(number, 10000.0); }
Json two_decimals(Length length) { return two_decimals(length.mm()); }
/// What is cut or finished is whole already.
Json whole(Length length) { return two_decimals(length); }

template <class Part, class Write>
Json or_null(const std::optional<Part>& part, const Write& write) {
    return part ? write(*part) : Json(nullptr);
}

template <class Items, class Write>
Json list_of(const Items& items, const Write& write) {
    Json list = Json::array();
    for (const auto& item : items) {
        list.push_back(write(item));
    }
    return list;
}

Json size_json(const Size& size) {
    Json json{{"name", size.name}};
    if (size.angle) {
        json["deg"] = two_decimals(size.angle->degrees());
        json["u_deg"] = two_decimals(size.angle_u.value_or(Angle()).degrees());
    } else {
        json["mm"] = two_decimals(size.value);
        json["u_mm"] = two_decimals(size.u);
    }
    if (!size.rests_on.empty()) {
        json["rests_on"] = size.rests_on;
    }
    return json;
}

Json checked_json(const CheckedReading& reading) {
    return {{"station", reading.station},
            {"residual", two_decimals(reading.residual)},
            {"redundancy", four_decimals(reading.redundancy)},
            {"w", four_decimals(reading.w)},
            {"least_slip", reading.least_slip > 0.0 ? two_decimals(reading.least_slip) : Json(nullptr)},
            {"moves_drop_mm", two_decimals(reading.moves_drop)}};
}

Json check_json(const Check& check) {
    Json json{{"network", check.network},
              {"redundancy", check.redundancy},
              {"chi2", two_decimals(check.chi2)},
              {"limit", two_decimals(check.limit)},
              {"adds_up", check.adds_up}};
    if (check.off_by_angle) {
        json["off_by_deg"] = two_decimals(check.off_by_angle->degrees());
        json["explained_deg"] = two_decimals(check.explained_angle.value_or(Angle()).degrees());
    } else {
        json["off_by_mm"] = two_decimals(check.off_by);
        json["explained_mm"] = two_decimals(check.explained);
    }
    json["readings"] = list_of(check.readings, checked_json);
    return json;
}

Json next_json(const NextReading& next) { return {{"station", next.station}, {"why", next.why}}; }

Json finished_json(const Finished& finished) {
    return {{"curtains", finished.curtains},
            {"width_mm", whole(finished.width)},
            {"drop_mm", whole(finished.drop)},
            {"width_u_mm", two_decimals(finished.width_u)},
            {"drop_u_mm", two_decimals(finished.drop_u)}};
}

Json edge_json(const ClothEdge& edge) {
    Json json{{"when", edge.when},
              {"widths_each", plain(edge.widths_each)},
              {"widths", edge.widths},
              {"cut_drop_mm", whole(edge.cut_drop)},
              {"length_mm", whole(edge.length)}};
    if (edge.railroaded) {
        json["railroad"] = Json{{"length_mm", whole(*edge.railroaded)}};
    }
    return json;
}

Json cloth_json(const Cloth& cloth) {
    Json json{{"fabric", cloth.fabric},
              {"widths_each", plain(cloth.widths_each)},
              {"widths", cloth.widths},
              {"fullness", or_null(cloth.fullness, [](double fullness) { return four_decimals(fullness); })},
              {"flat_mm", two_decimals(cloth.flat)},
              {"cut_drop_mm", whole(cloth.cut_drop)},
              {"length_mm", whole(cloth.length)}};
    if (cloth.railroaded) {
        json["railroad"] = Json{{"length_mm", whole(*cloth.railroaded)}};
    }
    if (!cloth.joins.empty()) {
        json["joins_mm"] = list_of(cloth.joins, [](Length join) { return two_decimals(join); });
    }
    if (cloth.one_way) {
        json["one_way"] = true;
    }
    if (!cloth.edges.empty()) {
        json["on_the_edge"] = list_of(cloth.edges, edge_json);
    }
    return json;
}

Json lining_json(const Lining& lining) {
    Json json{{"fabric", lining.fabric},
              {"widths_each", plain(lining.widths_each)},
              {"widths", lining.widths},
              {"flat_mm", two_decimals(lining.flat)},
              {"cut_drop_mm", whole(lining.cut_drop)},
              {"length_mm", whole(lining.length)}};
    if (lining.separate) {
        json["hung"] = "separate";
    }
    return json;
}

void add_positions(Json& json, const std::vector<Length>& positions) {
    if (!positions.empty()) {
        json["positions_mm"] = list_of(positions, [](Length at) { return two_decimals(at); });
    }
}

Json tabs_json(const Tabs& tabs) {
    Json json{{"cut_length_mm", whole(tabs.cut_length)},
              {"hang_mm", two_decimals(tabs.hang)},
              {"each", tabs.each},
              {"spacing_mm", two_decimals(tabs.spacing)},
              {"cut_width_mm", whole(tabs.cut_width)},
              {"length_mm", whole(tabs.length)}};
    add_positions(json, tabs.positions);
    return json;
}

Json eyelets_json(const Eyelets& eyelets) {
    Json json{{"each", eyelets.each},
              {"spacing_mm", two_decimals(eyelets.spacing)},
              {"first_mm", two_decimals(eyelets.first)}};
    add_positions(json, eyelets.positions);
    return json;
}

Json pleats_json(const Pleats& pleats) {
    Json json{
        {"each", pleats.each}, {"pleat_mm", two_decimals(pleats.pleat)}, {"space_mm", two_decimals(pleats.space)}};
    if (!pleats.positions.empty()) {
        json["first_mm"] = two_decimals(pleats.positions.front());
        json["last_mm"] = two_decimals(pleats.positions.back());
    }
    add_positions(json, pleats.positions);
    return json;
}

Json hooks_json(const Hooks& hooks) {
    return {{"each", hooks.each}, {"in_all", hooks.in_all}, {"spacing_mm", two_decimals(hooks.spacing)}};
}

Json tie_back_json(const TieBack& tie_back) {
    const auto length = [](Length mm) { return two_decimals(mm); };
    return {{"kind", tie_back.kind},
            {"count", tie_back.count},
            {"height_mm", or_null(tie_back.height, length)},
            {"length_mm", or_null(tie_back.length, length)},
            {"cut_length_mm", or_null(tie_back.cut_length, length)},
            {"cut_width_mm", or_null(tie_back.cut_width, length)}};
}

Json bought_json(const Bought& bought) {
    Json json{{"what", bought.what}};
    if (bought.count == 0) {
        json["length_mm"] = whole(bought.length);
        return json;
    }
    json["count"] = bought.count;
    if (bought.each.mm() > 0.0) {
        json["each_mm"] = whole(bought.each);
    }
    return json;
}

Json weights_json(const Weights& weights) { return {{"each", weights.each}}; }

Json blind_json(const Blind& blind) {
    return {{"rods", blind.rods}, {"fold_mm", two_decimals(blind.fold)}, {"up_mm", two_decimals(blind.up)}};
}

Json pelmet_json(const PelmetFigures& pelmet) {
    return {{"depth_mm", whole(pelmet.depth)},
            {"face_mm", whole(pelmet.face)},
            {"widths", pelmet.widths},
            {"cut_drop_mm", whole(pelmet.cut_drop)},
            {"length_mm", whole(pelmet.length)}};
}

Json mass_json(Mass mass) { return two_decimals(mass.kg()); }

Json load_json(const Load& load) {
    return {{"bracket_kg", or_null(load.bracket, mass_json)}, {"not_known", load.not_known}};
}

/// What hangs there, as members of the window or of one entry of its layers.
void add_layer(Json& json, const LayerFigures& layer) {
    json["finished"] = or_null(layer.finished, finished_json);
    json["cloth"] = or_null(layer.cloth, cloth_json);
    json["lining"] = or_null(layer.lining, lining_json);
    json["second_lining"] = or_null(layer.making.second_lining, lining_json);
    json["interlining"] = or_null(layer.interlining, lining_json);
    json["tabs"] = or_null(layer.tabs, tabs_json);
    json["eyelets"] = or_null(layer.eyelets, eyelets_json);
    json["pleats"] = or_null(layer.making.pleats, pleats_json);
    json["hooks"] = or_null(layer.making.hooks, hooks_json);
    json["weights"] = or_null(layer.weights, weights_json);
    json["blind"] = or_null(layer.blind, blind_json);
    json["pelmet"] = or_null(layer.pelmet, pelmet_json);
    json["mass_kg"] = or_null(layer.mass, mass_json);
    json["bracket_kg"] = or_null(layer.bracket_mass, mass_json);
    json["load"] = or_null(layer.making.load, load_json);
    json["tie_back"] = or_null(layer.making.tie_back, tie_back_json);
    json["haberdashery"] = list_of(layer.making.bought, bought_json);
    add_shape_figures(json, layer);
}

Json layer_json(const LayerFigures& layer) {
    Json json{{"id", layer.id}};
    add_layer(json, layer);
    return json;
}

/// What a reading was and what it is proposed to be: lengths, or of an angle degrees beside nulls.
template <class Corrected>
void add_correction(Json& json, const Corrected& corrected) {
    json["was_mm"] = corrected.angle ? Json(nullptr) : two_decimals(corrected.was);
    if (corrected.angle) {
        json["was_deg"] = two_decimals(corrected.angle->degrees());
    }
    json["proposed_mm"] = or_null(corrected.proposed, [](Length length) { return two_decimals(length); });
    if (corrected.proposed_angle) {
        json["proposed_deg"] = two_decimals(corrected.proposed_angle->degrees());
    }
}

Json correction_json(const Correction& correction) {
    Json json{{"station", correction.station}};
    add_correction(json, correction);
    return json;
}

Json suspect_json(const Suspect& suspect) {
    Json json{{"station", suspect.station}, {"slip", suspect.slip}};
    add_correction(json, suspect);
    // Weights are cut off, not rounded, so that they never add up to more than 1.
    json["weight"] = plain(std::floor(suspect.weight * 10000.0) / 10000.0);
    if (!suspect.also.empty()) {
        json["also"] = list_of(suspect.also, correction_json);
    }
    return json;
}

Json flag_json(const Flag& flag) {
    Json json{{"code", flag.code}, {"severity", word_of(flag.severity)}, {"stations", flag.stations}};
    if (!flag.obstruction.empty()) {
        json["obstruction"] = flag.obstruction;
    }
    if (!flag.layer.empty()) {
        json["layer"] = flag.layer;
    }
    json["text"] = flag.text;
    if (!flag.suspects.empty() || flag.code == "does-not-add-up") {
        json["suspects"] = list_of(flag.suspects, suspect_json);
    }
    return json;
}

Json step_json(const TraceStep& step) {
    Json json{{"what", step.what}};
    if (step.mm) {
        json["mm"] = two_decimals(*step.mm);
    }
    if (step.count) {
        json["count"] = two_decimals(*step.count);
    }
    if (step.ratio) {
        json["ratio"] = four_decimals(*step.ratio);
    }
    if (!step.from.empty()) {
        json["from"] = step.from;
    }
    return json;
}

Json trace_json(const Trace& trace) {
    Json json{{"figure", trace.figure}};
    if (!trace.layer.empty()) {
        json["layer"] = trace.layer;
    }
    json["steps"] = list_of(trace.steps, step_json);
    return json;
}

Json window_json(const WindowFigures& window) {
    Json json{{"id", window.id}, {"room", window.room}};
    if (!window.form.empty()) {
        json["form"] = window.form;
    }
    json["sizes"] = list_of(window.sizes, size_json);
    json["checks"] = list_of(window.checks, check_json);
    json["next"] = or_null(window.next, next_json);
    if (!window.nothing_more.empty()) {
        json["nothing_more"] = window.nothing_more;
    }
    if (window.layered) {
        json["layers"] = list_of(window.layers, layer_json);
    } else {
        add_layer(json, window.layers.empty() ? LayerFigures{} : window.layers.front());
    }
    json["flags"] = list_of(window.flags, flag_json);
    json["trace"] = list_of(window.trace, trace_json);
    return json;
}

Json cut_json(const Cut& cut) {
    Json json{{"window", cut.window}};
    if (!cut.layer.empty()) {
        json["layer"] = cut.layer;
    }
    json["what"] = cut.what;
    json["length_mm"] = whole(cut.length);
    json["count"] = cut.count;
    return json;
}

Json order_json(const Order& order) {
    return {{"fabric", order.fabric},
            {"length_mm", whole(order.length)},
            {"order_m", rounded(order.order_m, 1e6)},
            {"cuts", list_of(order.cuts, cut_json)},
            {"provisional", order.provisional}};
}

Json haberdashery_json(const Haberdashery& item) {
    Json json{{"what", item.what}};
    if (item.count == 0) {
        json["length_mm"] = whole(item.length);
        json["order_m"] = rounded(item.order_m, 1e6);
        return json;
    }
    json["count"] = item.count;
    if (!item.pieces.empty()) {
        json["pieces"] = list_of(item.pieces, [](const CutToLength& piece) {
            return Json{{"count", piece.count}, {"length_mm", whole(piece.each)}};
        });
    }
    return json;
}

}  // namespace

nlohmann::ordered_json two_decimals_json(double number) { return two_decimals(number); }

nlohmann::ordered_json layer_figures_json(const LayerFigures& layer) {
    Json json = Json::object();
    add_layer(json, layer);
    return json;
}

nlohmann::ordered_json flag_figures_json(const Flag& flag) { return flag_json(flag); }

nlohmann::ordered_json figures_json(const Figures& figures) {
    Json json{{"format", "truehang.figures/1"}, {"survey", figures.survey}};
    json["revision"] = or_null(figures.revision, [](long long revision) { return Json(revision); });
    json["windows"] = list_of(figures.windows, window_json);
    json["orders"] = list_of(figures.orders, order_json);
    json["haberdashery"] = list_of(figures.haberdashery, haberdashery_json);
    if (!figures.flags.empty()) {
        json["flags"] = list_of(figures.flags, flag_json);
    }
    return json;
}

std::string write_figures(const Figures& figures) {
    return figures_json(figures).dump(1, ' ', false, Json::error_handler_t::replace) + "\n";
}

}  // namespace truehang
