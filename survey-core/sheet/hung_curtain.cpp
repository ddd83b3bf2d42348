// SPDX-License-Identifier: Apache-2.0
#include "sheet/hung_curtain.h"

#include <algorithm>
#include <cmath>

namespace truehang {

namespace {

constexpr int without_figures = 8;  ///< drawn while there are no figures (common practice, no source)

/// Smoothly from 0 to 1.
double eased(double share) {
    const double s = std::clamp(share, 0.0, 1.0);
    return s * s * (3.0 - 2.0 * s);
}

std::vector<double> even_shares(int count, double inset) {
    std::vector<double> shares;
    for (int i = 0; i < count; ++i) {
        shares.push_back(count == 1 ? 0.5 : inset + (1.0 - 2.0 * inset) * i / (count - 1));
    }
    return shares;
}

std::vector<double> shares_of(const std::vector<Length>& positions, Length flat) {
    std::vector<double> shares;
    for (const Length position : positions) {
        shares.push_back(position / flat);
    }
    return shares;
}

std::vector<double> pleat_shares(const Pleats& pleats, Length flat) {
    const Length hung = flat - pleats.each * pleats.pleat;
    std::vector<double> shares;
    for (std::size_t k = 0; k < pleats.positions.size(); ++k) {
        shares.push_back((pleats.positions[k] - (static_cast<double>(k) + 0.5) * pleats.pleat) / hung);
    }
    return shares;
}

/// From the leading edge.
std::vector<double> figured(const LayerFigures& figures) {
    if (!figures.cloth || figures.cloth->flat.mm() <= 0.0) {
        return {};
    }
    const Length flat = figures.cloth->flat;
    if (figures.tabs) {
        return shares_of(figures.tabs->positions, flat);
    }
    if (figures.eyelets) {
        return shares_of(figures.eyelets->positions, flat);
    }
    if (figures.making.pleats) {
        return pleat_shares(*figures.making.pleats, flat);
    }
    return figures.making.hooks ? even_shares(figures.making.hooks->each, 0.0) : std::vector<double>();
}

}  // namespace

double height_on(const std::vector<Spot>& line, double x) {
    std::size_t i = 1;
    while (i + 1 < line.size() && x > line[i].first) {
        ++i;
    }
    const auto [x0, y0] = line[i - 1];
    const auto [x1, y1] = line[i];
    return x1 > x0 ? y0 + (y1 - y0) * (x - x0) / (x1 - x0) : y1;
}

double HungCurtain::bottom() const { return std::ranges::min_element(hem, {}, &Spot::second)->second; }

double HungCurtain::hem_at(double x) const { return height_on(hem, x); }

double HungCurtain::x_at(double u, double y) const {
    const double above = left + u * width();
    if (!waist) {
        return above;
    }
    const double tied = waist->left + u * (waist->right - waist->left);
    if (y >= waist->y) {
        return tied + (above - tied) * eased((y - waist->y) / std::max(1.0, top - waist->y));
    }
    const double foot = hem.front().first + u * (hem.back().first - hem.front().first);
    return tied + (foot - tied) * eased(1.6 * (waist->y - y) / std::max(1.0, waist->y - bottom()));
}

std::vector<Spot> HungCurtain::fold(double u, double from, double to) const {
    if (!waist) {
        const double x = left + u * width();
        return {{x, from}, {x, to}};
    }
    constexpr int steps = 24;
    std::vector<Spot> spots;
    for (int i = 0; i <= steps; ++i) {
        const double y = from + (to - from) * i / steps;
        spots.emplace_back(x_at(u, y), y);
    }
    return spots;
}

std::vector<Spot> HungCurtain::flank(double u, double other, double from, double to) const {
    std::vector<Spot> spots = fold(u, from, to);
    const std::vector<Spot> back = fold(other, from, to);
    spots.insert(spots.end(), back.rbegin(), back.rend());
    return spots;
}

std::vector<double> fixings(const LayerAsked& asked, const LayerFigures* figures, bool leads_right) {
    std::vector<double> shares = figures != nullptr ? figured(*figures) : std::vector<double>();
    if (shares.empty() && asked.heading != Heading::slot) {
        shares = even_shares(without_figures, 0.03);
    }
    for (double& share : shares) {
        share = std::clamp(leads_right ? 1.0 - share : share, 0.0, 1.0);
    }
    std::ranges::sort(shares);
    return shares;
}

}  // namespace truehang
