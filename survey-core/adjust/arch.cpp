// SPDX-License-Identifier: Apache-2.0
#include "adjust/arch.h"

#include <Eigen/Dense>
#include <algorithm>
#include <array>
#include <cmath>
#include <numeric>
#include <unsupported/Eigen/AutoDiff>

namespace truehang {

namespace {

using Point = std::vector<double>;

// Where an unknown stands in the point; the ordinates' places along the springing line follow.
constexpr std::size_t width = 0, springing_left = 1, springing_right = 2, rise = 3, side_radius = 4, first_along = 5;
constexpr std::size_t unknowns = first_along + static_cast<std::size_t>(most_ordinates);
static_assert(unknowns <= most_unknowns);

std::size_t along_of(int ordinate) { return first_along + static_cast<std::size_t>(ordinate) - 1; }

Told of(std::size_t unknown, const Point& point) {
    Told told{point[unknown], {}};
    told.by[unknown] = 1.0;
    return told;
}

Told rise_of(ArchForm form, const Point& point) {
    Told told = of(form == ArchForm::semicircle ? width : rise, point);
    if (form == ArchForm::semicircle) {
        told.value /= 2.0;
        told.by[width] = 0.5;
    }
    return told;
}

Told crown_of(ArchForm form, const Point& point) {
    Told told = rise_of(form, point);
    told.value += (point[springing_left] + point[springing_right]) / 2.0;
    told.by[springing_left] = 0.5;
    told.by[springing_right] = 0.5;
    return told;
}

/// A number with its derivatives by what shapes a curve, in the order of Shaping.
using Derived = Eigen::AutoDiffScalar<Eigen::Vector4d>;

double at_least(double value, double least) { return std::max(value, least); }
Derived at_least(const Derived& value, double least) { return value.value() < least ? Derived(least) : value; }

/// What shapes a curve, and a place along its springing line: as numbers, or as numbers with their derivatives by
/// these.
template <class Number>
struct Shaping {
    Number width, rise, side_radius, along;

    [[nodiscard]] Number radius(ArchForm form) const {
        const Number a = width / 2.0;
        if (form == ArchForm::three_centred) {
            const Number& r = side_radius;
            const Number over = a * a - 2.0 * a * r + rise * rise;
            return over / (2.0 * at_least(rise - r, 1e-3));
        }
        const Number over = a * a + rise * rise;
        return over / (2.0 * at_least(rise, 1e-3));
    }

    [[nodiscard]] Number height(ArchForm form) const {
        const Number a = width / 2.0;
        const Number big = radius(form);
        if (form == ArchForm::three_centred) {
            const bool is_left = along <= a;
            const Number x = is_left ? along : Number(width - along);
            const Number joint = a - (a - side_radius) * big / at_least(big - side_radius, 1e-3);
            if (x < joint) {
                return arc(side_radius, x - side_radius);
            }
        }
        return rise - big + arc(big, along - a);
    }

private:
    /// An arc over its centre; upright at its ends, where it is followed no further than a hundredth of its radius.
    static Number arc(const Number& radius, const Number& off) {
        using std::sqrt;
        const Number square = radius * radius - off * off;
        const Number flattest = 0.01 * radius;
        const Number least = flattest * flattest;
        return square < least ? flattest : Number(sqrt(square));
    }
};

/// The unknowns that shape a curve of some form; `along` of an ordinate.
Shaping<Derived> shaping_at(ArchForm form, const Point& point, std::size_t along) {
    const auto seed = [&](std::size_t unknown, int which) { return Derived(point[unknown], 4, which); };
    Shaping<Derived> shaping{seed(width, 0), seed(rise, 1), seed(side_radius, 2), seed(along, 3)};
    if (form == ArchForm::semicircle) {
        shaping.rise = shaping.width / 2.0;
    }
    return shaping;
}

Told told_of(const Derived& derived, std::size_t along) {
    Told told{derived.value(), {}};
    told.by[width] = derived.derivatives()(0);
    told.by[rise] = derived.derivatives()(1);
    told.by[side_radius] = derived.derivatives()(2);
    told.by[along] += derived.derivatives()(3);
    return told;
}

Told ordinate_of(ArchForm form, std::size_t along, const Point& point) {
    return told_of(shaping_at(form, point, along).height(form), along);
}

Told radius_of(ArchForm form, const Point& point) {
    return told_of(shaping_at(form, point, first_along).radius(form), first_along);
}

Tells tells_of(const Station& station, ArchForm form) {
    const auto telling = [](std::size_t unknown) {
        return [unknown](const Point& point) { return of(unknown, point); };
    };
    if (station.word == "opening.width.top") {
        return telling(width);
    }
    if (station.word == "opening.height.left") {
        return telling(springing_left);
    }
    if (station.word == "opening.height.right") {
        return telling(springing_right);
    }
    if (station.word == "opening.height.centre") {
        return [form](const Point& point) { return crown_of(form, point); };
    }
    if (station.kind == StationKind::rise) {
        return [form](const Point& point) { return rise_of(form, point); };
    }
    const std::size_t along = station.number > 0 ? along_of(station.number) : 0;
    if (station.kind == StationKind::along) {
        return telling(along);
    }
    if (station.kind == StationKind::ordinate) {
        return [form, along](const Point& point) { return ordinate_of(form, along, point); };
    }
    return {};
}

/// What of an arch was read, and may enter its figure.
struct Read {
    std::vector<const CountedReading*> heights;  ///< of both springings and the crown, all or none
    const CountedReading* rise = nullptr;
    const CountedReading* width = nullptr;
    std::vector<const CountedReading*> ordinates;  ///< those whose height and place along are both there

    [[nodiscard]] bool may_have_curve() const {
        return width != nullptr && !ordinates.empty() && (rise != nullptr || !heights.empty());
    }
};

Read read_of(const std::vector<CountedReading>& readings) {
    Read read;
    const auto* left = find_counted(readings, "opening.height.left");
    const auto* right = find_counted(readings, "opening.height.right");
    const auto* centre = find_counted(readings, "opening.height.centre");
    if (left != nullptr && right != nullptr && centre != nullptr) {
        read.heights = {left, right, centre};
    }
    read.rise = find_counted(readings, "arch.rise");
    read.width = find_counted(readings, "opening.width.top");
    for (const CountedReading& reading : readings) {
        const int n = reading.station.number;
        const bool is_one = reading.station.kind == StationKind::along || reading.station.kind == StationKind::ordinate;
        const bool both = std::ranges::count_if(readings, [n](const CountedReading& other) {
                              return other.station.number == n && n > 0;
                          }) == 2;
        if (is_one && both) {
            read.ordinates.push_back(&reading);
        }
    }
    return read;
}

std::vector<FigureReading> entering(const Read& read, std::optional<ArchForm> form, bool with_heights) {
    std::vector<const CountedReading*> chosen;
    if (form) {
        chosen.push_back(read.width);
    }
    if (with_heights) {
        chosen.insert(chosen.end(), read.heights.begin(), read.heights.end());
    }
    if (read.rise != nullptr) {
        chosen.push_back(read.rise);
    }
    if (form) {
        chosen.insert(chosen.end(), read.ordinates.begin(), read.ordinates.end());
    }
    std::vector<FigureReading> readings;
    for (const CountedReading* reading : chosen) {
        readings.push_back({reading, tells_of(reading->station, form.value_or(ArchForm::ordinates))});
    }
    return readings;
}

/// First guesses by number: the unknowns as read; for three centres with several side radii.
std::optional<Point> start(const FigureValues& values, std::optional<ArchForm> form, std::size_t number) {
    constexpr std::array<double, 3> side_shares{0.6, 0.35, 0.85};
    const bool three = form == ArchForm::three_centred;
    if (number >= (three ? side_shares.size() : 1)) {
        return std::nullopt;
    }
    const auto read = [&](std::string_view station, double otherwise) {
        const double* value = value_of(values, station);
        return value != nullptr ? *value : otherwise;
    };
    Point point(unknowns);
    point[springing_left] = read("opening.height.left", 0.0);
    point[springing_right] = read("opening.height.right", 0.0);
    point[width] = read("opening.width.top", 1000.0);
    const double* crown = value_of(values, "opening.height.centre");
    const double mean = (point[springing_left] + point[springing_right]) / 2.0;
    point[rise] = std::max(1.0, read("arch.rise", crown != nullptr ? *crown - mean : point[width] / 3.0));
    for (int n = 1; n <= most_ordinates; ++n) {
        point[along_of(n)] = read("ordinate." + std::to_string(n) + ".along", 0.0);
    }
    if (three) {
        point[side_radius] = side_shares[number] * std::min(point[rise], point[width] / 2.0);
    }
    return point;
}

PlaneFigure figure_of(const Read& read, std::optional<ArchForm> form, bool with_heights, const TapeRule& tape,
                      Solved solved = Solved::to_the_end) {
    const auto from = [form](const FigureValues& values, std::size_t number) { return start(values, form, number); };
    return {"arch", entering(read, form, with_heights), from, tape, solved};
}

/// The curve that came out is one of its form.
bool is_sound(ArchForm form, const Point& point) {
    constexpr double past_half = 1.001;
    const double half = point[width] / 2.0;
    switch (form) {
        case ArchForm::semicircle:
            return true;
        case ArchForm::segmental:
            return point[rise] > 0.0 && point[rise] <= past_half * half;
        default:
            break;
    }
    const double widest = std::min(point[rise], half);
    return point[rise] < half && point[side_radius] > 0.02 * widest && point[side_radius] < 0.98 * widest;
}

constexpr std::array<ArchForm, 3> curves{ArchForm::semicircle, ArchForm::segmental, ArchForm::three_centred};

bool fits(const PlaneFigure& figure, ArchForm form) {
    return figure.network() && figure.network()->adds_up() && is_sound(form, figure.point());
}

/// Whether the curve would fit if one reading weren't there, and at least two readings more than it needs still hold it
/// then: one slip is likelier than a curve of no known kind. Tried are the readings that stand out most.
bool fits_but_for_one(const Read& read, ArchForm form, bool with_heights, const TapeRule& tape) {
    constexpr std::size_t tried = 3;
    const std::size_t least = form == ArchForm::three_centred ? 4 : 3;
    if (read.ordinates.size() / 2 < least) {
        return false;
    }
    const PlaneFigure figure = figure_of(read, form, with_heights, tape, Solved::while_hopeful);
    if (!figure.network()) {
        return false;
    }
    const Adjustment& adjusted = figure.network()->adjustment;
    std::vector<std::size_t> order(figure.network()->observations.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    const auto& w = adjusted.normalised;
    std::ranges::stable_sort(order, std::ranges::greater{}, [&](std::size_t i) { return std::abs(w[i]); });
    order.resize(std::min(tried, order.size()));
    // What is left of chi-square without a reading, about: a curve that is bent far may leave more.
    const double may_be_left = std::max(4.0 * figure.network()->limit, 0.1 * adjusted.chi2);
    return std::ranges::any_of(order, [&](std::size_t left_out) {
        if (adjusted.chi2 - w[left_out] * w[left_out] > may_be_left) {
            return false;
        }
        auto readings = entering(read, form, with_heights);
        const std::string& station = figure.network()->observations[left_out].station;
        std::erase_if(readings, [&](const FigureReading& each) { return each.reading->station.word == station; });
        const auto from = [form](const FigureValues& values, std::size_t number) {
            return start(values, form, number);
        };
        return fits(PlaneFigure("arch", readings, from, tape, Solved::while_hopeful), form);
    });
}

/// A form, and the figure of what was read with it; with its ordinates alone there is none.
struct Formed {
    ArchForm form = ArchForm::ordinates;
    std::optional<PlaneFigure> figure{};
};

/// The simplest curve that fits, a freer one only where it fits clearly better.
std::optional<Formed> fitting_curve(const Read& read, bool with_heights, const TapeRule& tape) {
    constexpr double clearly = 6.6349;  // chi-square of one more unknown at 0.99
    std::optional<Formed> best;
    double best_chi2 = 0.0;
    double as_expected = 0.0;  // what chi-square is on average
    for (const ArchForm form : curves) {
        if (best && best_chi2 <= as_expected) {
            break;
        }
        PlaneFigure figure = figure_of(read, form, with_heights, tape, Solved::while_hopeful);
        if (fits(figure, form)) {
            const double chi2 = figure.network()->adjustment.chi2;
            as_expected = figure.network()->adjustment.redundancy;
            if (!best || chi2 < best_chi2 - clearly) {
                best = Formed{form, std::move(figure)};
                best_chi2 = chi2;
            }
        }
    }
    return best;
}

/// The form of what was read; its figure takes the heights in, whether they hold or not.
std::optional<Formed> formed(const Read& read, bool heights_hold, const TapeRule& tape) {
    if (read.ordinates.empty()) {
        return std::nullopt;
    }
    if (!read.may_have_curve()) {
        return Formed{};
    }
    if (auto fitting = fitting_curve(read, heights_hold, tape)) {
        return heights_hold ? fitting : Formed{fitting->form, figure_of(read, fitting->form, true, tape)};
    }
    const auto* const form =
        std::ranges::find_if(curves, [&](ArchForm curve) { return fits_but_for_one(read, curve, heights_hold, tape); });
    return form == curves.end() ? Formed{} : Formed{*form, figure_of(read, *form, true, tape)};
}

}  // namespace

std::string_view word_of(ArchForm form) {
    switch (form) {
        case ArchForm::semicircle:
            return "semicircle";
        case ArchForm::segmental:
            return "segmental";
        case ArchForm::three_centred:
            return "three-centred";
        case ArchForm::ordinates:
            break;
    }
    return "ordinates";
}

double ArchCurve::radius() const { return Shaping<double>{width, rise, side_radius, 0.0}.radius(form); }

double ArchCurve::height_at(double along) const {
    return Shaping<double>{width, rise, side_radius, along}.height(form);
}

std::optional<Arch> Arch::adjusted(const std::vector<CountedReading>& readings, const TapeRule& tape) {
    const Read read = read_of(readings);
    const bool too_small = (read.width != nullptr && read.width->value.mm() < 1.0) ||
                           (read.rise != nullptr && read.rise->value.mm() < 1.0);
    if (too_small || (read.heights.empty() && read.rise == nullptr)) {
        return std::nullopt;
    }
    PlaneFigure upright = figure_of(read, std::nullopt, true, tape);
    const bool heights_hold = !upright.network() || upright.network()->adds_up();
    auto found = formed(read, heights_hold, tape);
    const auto form = found ? std::optional(found->form) : std::nullopt;
    if (found && found->figure) {
        return Arch(std::move(*found->figure), form, entering(read, form, true));
    }
    return Arch(std::move(upright), form, entering(read, std::nullopt, true));
}

std::map<std::string, Estimate> Arch::lengths() const {
    std::map<std::string, Estimate> lengths;
    if (!figure_.is_determined()) {
        return lengths;
    }
    const Point& point = figure_.point();
    for (const FigureReading& each : readings_) {
        if (each.reading->station.kind != StationKind::height) {
            lengths[std::string(each.reading->station.word)] = figure_.length(each.tells(point));
        }
    }
    if (!lengths.contains("arch.rise")) {
        lengths["arch.rise"] = figure_.length(rise_of(form_.value_or(ArchForm::ordinates), point));
    }
    if (form_ && *form_ != ArchForm::ordinates) {
        const bool three = *form_ == ArchForm::three_centred;
        lengths[three ? "arch.radius.crown" : "arch.radius"] = figure_.length(radius_of(*form_, point));
        if (three) {
            lengths["arch.radius.side"] = figure_.length(of(side_radius, point));
        }
    }
    return lengths;
}

}  // namespace truehang
