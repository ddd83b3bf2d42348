// SPDX-License-Identifier: Apache-2.0
#include "sheet/flat_piece.h"

#include "sizing/headings.h"
#include "sizing/layer.h"
#include "units/rounding.h"

#include <algorithm>

namespace truehang {

namespace {

Length usable_of(const Survey& survey, const std::string& id) {
    const auto fabric = std::ranges::find(survey.fabrics, id, &Fabric::id);
    return fabric == survey.fabrics.end() ? Length() : fabric->width - 2.0 * fabric->selvedge;
}

/// Seams of a curtain whose whole widths lie on the inside, from its leading edge.
std::vector<Length> joins_of_curtain(double widths, Length usable, const TurnedIn& turned) {
    std::vector<Length> joins;
    const int count = static_cast<int>(ceil_whole(widths)) - 1;
    for (int i = 0; i < count; ++i) {
        joins.push_back((i + 1.0) * usable - turned.side - (2.0 * i + 1.0) * turned.seam);
    }
    return joins;
}

/// Seams of a blind with a whole width in the middle and the rest split to the sides, from its left edge.
std::vector<Length> joins_of_blind(double widths, Length usable, Length finished, Length seam) {
    std::vector<Length> joins;
    const Length one = usable - 2.0 * seam;
    const int beside = static_cast<int>(ceil_whole((widths - 1.0) / 2.0));
    for (int i = 0; i < beside; ++i) {
        joins.insert(joins.begin(), finished / 2.0 - (i + 0.5) * one);
        joins.push_back(finished / 2.0 + (i + 0.5) * one);
    }
    std::erase_if(joins, [&](Length at) { return at.mm() <= 0.0 || at >= finished; });
    return joins;
}

/// Tabs, eyelets or pleats, and the weights in the hem.
void set_heading(FlatPiece& piece, const MakingSetting& setting, const LayerFigures& figures) {
    if (figures.tabs) {
        piece.tabs = figures.tabs->positions;
        piece.tab_width = setting.tab_width;
        piece.tab_hang = figures.tabs->hang;
    }
    if (figures.eyelets) {
        piece.eyelets = figures.eyelets->positions;
        piece.eyelet_top = Length::mm(setting.rules.eyelet_top);
        piece.eyelet_inner = Length::mm(setting.rules.eyelet_inner);
    }
    if (figures.making.pleats) {
        piece.pleats = figures.making.pleats->positions;
        piece.pleat = figures.making.pleats->pleat;
    }
    for (int i = 0; figures.weights && figures.weights->each > 1 && i < figures.weights->each; ++i) {
        piece.weights.push_back(piece.flat * i / (figures.weights->each - 1));
    }
}

}  // namespace

std::optional<MakingSetting> make_setting(const Survey& survey, const Layer& layer, const LayerFigures& figures) {
    const auto asked = asked_of(layer);
    if (!asked || !figures.cloth || !figures.finished) {
        return std::nullopt;
    }
    MakingSetting setting;
    setting.rules = house_rules(survey.rules);
    const HouseRules& rules = setting.rules;
    const bool blind = asked->is_blind();
    setting.turned = {.side = Length::mm(blind ? rules.blind_side : rules.side_turn),
                      .hem = Length::mm(blind ? rules.blind_hem : rules.hem),
                      .head = head_allowance(asked->heading, asked->diameter(), rules),
                      .seam = Length::mm(rules.seam)};
    const Length usable = usable_of(survey, figures.cloth->fabric);
    const double widths = figures.cloth->widths_each;
    setting.joins = blind ? joins_of_blind(widths, usable, figures.finished->width, setting.turned.seam)
                          : joins_of_curtain(widths, usable, setting.turned);
    setting.tab_width = Length::mm(rules.tab_width);
    setting.layout = layer.treatment ? layer.treatment->layout : std::nullopt;
    return setting;
}

FlatPiece flat_piece(const MakingSetting& setting, const LayerFigures& figures, int curtain) {
    const bool blind = figures.blind.has_value();
    const Cloth& cloth = *figures.cloth;
    FlatPiece piece;
    piece.blind = blind;
    piece.one_way = cloth.one_way;
    piece.flat = blind ? figures.finished->width : cloth.flat;
    piece.drop = figures.finished->drop;
    piece.side_turn = setting.turned.side;
    piece.hem = setting.turned.hem;
    piece.head = setting.turned.head;
    piece.cut_across = piece.flat + 2.0 * piece.side_turn;
    piece.cut_drop = cloth.cut_drop;
    piece.joins = setting.joins;
    const bool drawn_left = setting.layout && setting.layout->is(Layout::left);
    piece.leading_right = figures.finished->curtains == 2 ? curtain == 0 : drawn_left;
    if (figures.lining && !blind && !figures.lining->separate) {
        piece.lining_inset = Length::mm(setting.rules.lining_inset);
        piece.lining_rise = Length::mm(setting.rules.lining_rise);
        piece.lining_hem = Length::mm(setting.rules.lining_hem);
    }
    set_heading(piece, setting, figures);
    for (int i = 0; blind && i < figures.blind->rods; ++i) {
        piece.rods.push_back((2.0 * i + 1.0) * figures.blind->fold);
    }
    return piece;
}

}  // namespace truehang
