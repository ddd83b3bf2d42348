// SPDX-License-Identifier: Apache-2.0
#include "sheet/differences.h"

#include "units/saying.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <string_view>

namespace truehang {

namespace {

struct FigureName {
    std::string_view figure;
    std::string_view says;
};

/// Figures that no sheet names by themselves.
constexpr std::array names{
    FigureName{"heading", to_say("Heading")},
    FigureName{"length", to_say("Length down to")},
    FigureName{"operation", to_say("Operation")},
    FigureName{"cloth.fabric", to_say("Cloth")},
    FigureName{"cloth.repeats", to_say("Repeats in a drop")},
    FigureName{"cloth.one_way", to_say("Runs one way")},
    FigureName{"lining.fabric", to_say("Lining")},
    FigureName{"lining.hung", to_say("Lining hung")},
    FigureName{"second_lining.fabric", to_say("Second lining")},
    FigureName{"second_lining.hung", to_say("Second lining hung")},
    FigureName{"interlining.fabric", to_say("Interlining")},
    FigureName{"eyelets.first_mm", to_say("First eyelet from the edge")},
    FigureName{"pleats.first_mm", to_say("First pleat from the leading edge")},
    FigureName{"pleats.last_mm", to_say("Last pleat from the leading edge")},
    FigureName{"hooks.in_all", to_say("Hooks in all")},
    FigureName{"hooks.spacing_mm", to_say("Hook spacing")},
    FigureName{"weights.kind", to_say("Weights")},
    FigureName{"tie_back.kind", to_say("Tied back by")},
    FigureName{"tie_back.count", to_say("Tie-backs")},
    FigureName{"tie_back.cut_width_mm", to_say("Tie-back, cut width")},
    FigureName{"top.left", to_say("Shape of the top, left curtain")},
    FigureName{"top.right", to_say("Shape of the top, right curtain")},
    FigureName{"top.single", to_say("Shape of the top")},
    FigureName{"run.joints_mm", to_say("Joints along the run")},
    FigureName{"hardware.kind", to_say("Hangs from")},
    FigureName{"hardware.name", to_say("Hardware")},
    FigureName{"hardware.supply", to_say("Hardware comes from")},
    FigureName{"hardware.hang", to_say("Hardware hangs")},
    FigureName{"hardware.run", to_say("Hardware runs")},
    FigureName{"hardware.diameter_mm", to_say("Diameter")},
    FigureName{"hardware.length_mm", to_say("Length of pole or track")},
    FigureName{"hardware.left_mm", to_say("Its left end from the opening’s left edge")},
    FigureName{"hardware.projection_mm", to_say("Projection")},
    FigureName{"hardware.finial_mm", to_say("Finial")},
    FigureName{"hardware.return_mm", to_say("Return")},
    FigureName{"hardware.overlap_mm", to_say("Overlap")},
    FigureName{"hardware.brackets", to_say("Brackets")},
    FigureName{"hardware.bracket_at_mm", to_say("Brackets from the left end")},
};

/// The figures of which metres are bought.
constexpr std::array<std::string_view, 7> bought_by_length{
    "cloth.length_mm", "lining.length_mm", "second_lining.length_mm", "interlining.length_mm",
    "tabs.length_mm",  "pelmet.length_mm", "cloth.railroad.length_mm"};

constexpr std::string_view agreed_figure = "agreed.";  ///< `agreed.FABRIC.length_mm`, `agreed.FABRIC.cost`

bool in_metres(std::string_view figure) {
    return figure.ends_with("_m") || figure.starts_with("orders.") || figure.starts_with(agreed_figure) ||
           (figure.starts_with("haberdashery.") && figure.ends_with(".length_mm")) ||
           std::ranges::find(bought_by_length, figure) != bought_by_length.end();
}

class DifferenceWriter {
public:
    DifferenceWriter(const Survey& survey, const SheetStyle& style) : survey_(survey), style_(style) {}

    [[nodiscard]] DifferenceLine line(const FigureDifference& difference) const {
        DifferenceLine line;
        line.figure = difference.figure;
        line.flag = is_flag(difference.figure);
        line.what = line.flag ? flag_name(difference) : name(difference.figure);
        line.before = difference.before ? text(*difference.before) : "";
        line.after = difference.after ? text(*difference.after) : "";
        if (difference.figure.starts_with("top.") && !line.before.empty() && !line.after.empty()) {
            line.before = say("as it was");
            line.after = say("another outline");
        }
        if (difference.more) {
            const double more = *difference.more;
            line.more = (more > 0.0 ? "+" : "−") + with_unit(difference.figure, std::abs(more));
        }
        return line;
    }

    [[nodiscard]] std::vector<DifferenceLine> lines(const std::vector<MadeFigure>& before,
                                                    const std::vector<MadeFigure>& after) const {
        std::vector<DifferenceLine> written;
        for (const FigureDifference& difference : differences(before, after)) {
            written.push_back(line(difference));
        }
        std::stable_partition(written.begin(), written.end(), [](const DifferenceLine& one) { return !one.flag; });
        return written;
    }

private:
    [[nodiscard]] std::string with_unit(std::string_view figure, double number) const {
        if (in_metres(figure)) {
            const double metres = figure.ends_with("_mm") ? number / 1000.0 : number;
            const bool whole_cm = std::abs(metres * 100.0 - std::round(metres * 100.0)) < 1e-6;
            return number_text(metres, whole_cm ? 2 : 3, style_) + " m";
        }
        if (figure.ends_with("_mm")) {
            if (style_.unit == LengthUnit::in) {
                return truehang::written(Length::mm(number), style_) + " in";
            }
            const bool whole = std::abs(number - std::round(number)) < 1e-6;
            return number_text(number, whole ? 0 : 1, style_) + " mm";
        }
        const bool whole = std::abs(number - std::round(number)) < 1e-6;
        return number_text(number, whole ? 0 : 2, style_);
    }

    [[nodiscard]] std::string text(const MadeFigure& figure) const {
        if (figure.number) {
            return with_unit(figure.figure, *figure.number);
        }
        return figure.says.empty() ? figure.value : figure.says;
    }

    [[nodiscard]] static std::string flag_name(const FigureDifference& difference) {
        const std::string& severity = (difference.after ? difference.after : difference.before)->value;
        for (const Severity one :
             {Severity::stop, Severity::remeasure, Severity::decide, Severity::caution, Severity::note}) {
            if (severity == word_of(one)) {
                return worded(flag_word(one));
            }
        }
        return severity;
    }

    [[nodiscard]] std::string cloth_name(const std::string& id) const {
        const auto fabric = std::ranges::find(survey_.fabrics, id, &Fabric::id);
        return fabric == survey_.fabrics.end() ? id : short_name(*fabric);
    }

    [[nodiscard]] std::string name(const std::string& figure) const {
        constexpr std::string_view orders = "orders.";
        constexpr std::string_view haberdashery = "haberdashery.";
        if (figure.starts_with(orders)) {
            const auto dot = figure.rfind('.');
            const std::string cloth = cloth_name(figure.substr(orders.size(), dot - orders.size()));
            return figure.ends_with(".order_m") ? say("{}, to order", cloth) : say("{}, cut in all", cloth);
        }
        if (figure.starts_with(agreed_figure)) {
            const auto dot = figure.rfind('.');
            const std::string cloth = cloth_name(figure.substr(agreed_figure.size(), dot - agreed_figure.size()));
            return figure.ends_with(".cost") ? say("{}, its cost", cloth) : cloth;
        }
        if (figure.starts_with(haberdashery)) {
            const std::string what = figure.substr(haberdashery.size());
            const std::string item = what.substr(0, what.find('.'));
            std::string said = worded(item);
            said.front() =
                said.front() >= 'a' && said.front() <= 'z' ? static_cast<char>(said.front() - 'a' + 'A') : said.front();
            return what.ends_with(".each_mm") ? say("{}, each", said) : said;
        }
        const auto found = std::ranges::find(names, figure, &FigureName::figure);
        return found == names.end() ? figure_text(figure) : worded(found->says);
    }

    const Survey& survey_;
    const SheetStyle& style_;
};

}  // namespace

LayerDifference written_differences(const Survey& survey, const MadeLayer& before, const MadeLayer& after,
                                    const SheetStyle& style) {
    const DifferenceWriter writer(survey, style);
    LayerDifference difference{after.room, after.window, after.layer, after.title, false, false, {}};
    difference.lines = writer.lines(before.figures, after.figures);
    difference.figures_differ = digest_text(before) != digest_text(after);
    return difference;
}

HouseDifference written_differences(const Survey& survey, const MadeHouse& before, const MadeHouse& after,
                                    const SheetStyle& style) {
    HouseDifference house;
    const auto add = [&](LayerDifference difference) {
        if (difference.came || difference.went || !difference.lines.empty()) {
            house.layers.push_back(std::move(difference));
        }
    };
    for (const MadeLayer& now : after.layers) {
        const MadeLayer* then = find_layer(before, now.room, now.window, now.layer);
        LayerDifference difference = written_differences(survey, then == nullptr ? MadeLayer{} : *then, now, style);
        difference.came = then == nullptr;
        add(std::move(difference));
    }
    for (const MadeLayer& then : before.layers) {
        if (find_layer(after, then.room, then.window, then.layer) == nullptr) {
            MadeLayer none{then.room, then.window, then.layer, then.title, {}};
            LayerDifference difference = written_differences(survey, then, none, style);
            difference.went = true;
            add(std::move(difference));
        }
    }
    house.bought = DifferenceWriter(survey, style).lines(before.bought, after.bought);
    return house;
}

HouseDifference written_differences(const Survey& before, const Survey& after) {
    return written_differences(after, made_by(before, work_out(before)), made_by(after, work_out(after)),
                               sheet_style_for(after));
}

}  // namespace truehang
