// SPDX-License-Identifier: Apache-2.0
#include "sheet/made.h"

#include "document/figures_parts.h"
#include "sheet/sheet_head.h"
#include "sheet/words.h"
#include "sizing/headings.h"
#include "units/saying.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <string_view>

namespace truehang {

namespace {

using Json = nlohmann::ordered_json;

/// Parts of a layer's figures that aren't compared.
constexpr std::string_view flag_figure = "flags.";
constexpr std::array<std::string_view, 9> left_out{"mass_kg",      "bracket_kg", "load",
                                                   "on_the_edge",  "planned",    "positions_mm",
                                                   "haberdashery", "longest_mm", "railroad"};

std::string number_value(double number) {
    const double rounded = std::round(number * 100.0) / 100.0;
    return fmt::format("{}", rounded == 0.0 ? 0.0 : rounded);
}

const MadeFigure* find_figure(const std::vector<MadeFigure>& figures, const std::string& name) {
    const auto found = std::ranges::find(figures, name, &MadeFigure::figure);
    return found == figures.end() ? nullptr : &*found;
}

/// Gathers a layer's figures.
class Gathering {
public:
    Gathering(const Survey& survey, std::vector<MadeFigure>& into) : survey_(survey), into_(into) {}

    void number(std::string figure, double number) {
        add({std::move(figure), number_value(number), std::round(number * 100.0) / 100.0, {}});
    }
    void length(std::string figure, const std::optional<Length>& length) {
        if (length) {
            number(std::move(figure), length->mm());
        }
    }
    void words(std::string figure, std::string value, std::string says = {}) {
        if (!value.empty()) {
            add({std::move(figure), std::move(value), std::nullopt, std::move(says)});
        }
    }
    /// A second figure of one name is numbered.
    void add(MadeFigure made) {
        const std::string name = made.figure;
        for (int again = 2; find_figure(into_, made.figure) != nullptr; ++again) {
            made.figure = fmt::format("{}.{}", name, again);
        }
        into_.push_back(std::move(made));
    }

    /// What stands under `path` in the figures document.
    void take(const std::string& path, const Json& json) {
        if (json.is_number()) {
            number(path, json.get<double>());
        } else if (json.is_string()) {
            const bool fabric = path.ends_with(".fabric");
            words(path, json.get<std::string>(), fabric ? fabric_name(json.get<std::string>()) : "");
        } else if (json.is_boolean() && json.get<bool>()) {
            words(path, "yes");
        } else if (json.is_object()) {
            for (const auto& [key, value] : json.items()) {
                const bool uncertainty = key == "u_mm" || key.ends_with("_u_mm") || key == "fullness";
                if (!uncertainty && std::ranges::find(left_out, key) == left_out.end()) {
                    take(path.empty() ? key : fmt::format("{}.{}", path, key), value);
                }
            }
        } else if (json.is_array() && !json.empty()) {
            take_list(path, json);
        }
    }

private:
    /// Entries with a name of their own stand under it, others by their number; bare numbers in one line.
    void take_list(const std::string& path, const Json& list) {
        std::string line;
        for (std::size_t i = 0; i < list.size(); ++i) {
            const Json& entry = list[i];
            if (entry.is_number()) {
                line += (line.empty() ? "" : " ") + number_value(entry.get<double>());
            } else if (path == "finished.drops_mm") {
                number(path + "." + entry.value("line", ""), entry.value("mm", 0.0));
            } else if (path == "top.curtains") {
                words("top." + entry.value("side", ""), outline_of(entry));
            } else {
                take(fmt::format("{}.{}", path, i + 1), entry);
            }
        }
        words(path, line);
    }

    /// "0/1992 100/1990": along the flat cloth, and the drop there.
    static std::string outline_of(const Json& curtain) {
        std::string outline;
        for (const Json& point : curtain.value("points", Json::array())) {
            outline += fmt::format("{}{}/{}", outline.empty() ? "" : " ", number_value(point.value("flat_mm", 0.0)),
                                   number_value(point.value("drop_mm", 0.0)));
        }
        return outline;
    }

    [[nodiscard]] std::string fabric_name(const std::string& id) const {
        const auto fabric = std::ranges::find(survey_.fabrics, id, &Fabric::id);
        return fabric == survey_.fabrics.end() || fabric->name.empty() ? id : fabric->name;
    }

    const Survey& survey_;
    std::vector<MadeFigure>& into_;
};

template <class E>
std::string text_of(const std::optional<Word<E>>& word) {
    return word ? word->text() : std::string();
}

void add_treatment(Gathering& gathering, const Treatment& treatment) {
    if (treatment.heading) {
        const auto known = treatment.heading->known();
        gathering.words("heading", treatment.heading->text(),
                        known ? worded(heading_rule(*known).says) : treatment.heading->text());
    }
    gathering.words("length", text_of(treatment.length));
    gathering.words("weights.kind", text_of(treatment.weights));
    gathering.words("operation", text_of(treatment.operation));
}

void add_hardware(Gathering& gathering, const Hardware& hardware) {
    const auto kind = hardware.kind ? hardware.kind->text() : std::string("pole");
    gathering.words("hardware.kind", kind, worded(kind));
    gathering.words("hardware.name", hardware.name);
    gathering.words("hardware.supply", text_of(hardware.supply));
    gathering.words("hardware.hang", text_of(hardware.hang));
    gathering.words("hardware.run", text_of(hardware.run));
    gathering.length("hardware.diameter_mm", hardware.diameter);
    gathering.length("hardware.length_mm", hardware.length);
    gathering.length("hardware.left_mm", hardware.left);
    gathering.length("hardware.projection_mm", hardware.projection);
    gathering.length("hardware.finial_mm", hardware.finial);
    gathering.length("hardware.return_mm", hardware.return_depth);
    gathering.length("hardware.overlap_mm", hardware.overlap);
    if (hardware.brackets) {
        gathering.number("hardware.brackets", *hardware.brackets);
    }
    std::string places;
    for (const Length place : hardware.bracket_at) {
        places += (places.empty() ? "" : " ") + number_value(place.mm());
    }
    gathering.words("hardware.bracket_at_mm", places);
}

void add_flags(Gathering& gathering, const WindowFigures& window, const std::string& layer) {
    for (const Flag& flag : window.flags) {
        if (flag.layer.empty() || flag.layer == layer) {
            gathering.words(std::string(flag_figure) + flag.code, std::string(word_of(flag.severity)), flag.text);
        }
    }
}

bool stands_in_the_way(const MadeFigure& figure) {
    return figure.value == word_of(Severity::stop) || figure.value == word_of(Severity::remeasure);
}

void add_bought(Gathering& gathering, const std::vector<Bought>& bought) {
    for (const Bought& item : bought) {
        const std::string name = "haberdashery." + item.what;
        if (item.count == 0) {
            gathering.length(name + ".length_mm", item.length);
            continue;
        }
        gathering.number(name, item.count);
        if (item.each.mm() > 0.0) {
            gathering.length(name + ".each_mm", item.each);
        }
    }
}

MadeLayer made_layer(const Survey& survey, const SheetPlace& place, const WindowFigures& window, std::size_t at) {
    const LayerFigures& figures = window.layers[at];
    MadeLayer made{place.room->id, place.window->id, figures.id, window_title(*place.room, *place.window), {}};
    Gathering gathering(survey, made.figures);
    if (at < place.window->layers.size()) {
        const Layer& asked = place.window->layers[at];
        if (asked.treatment) {
            add_treatment(gathering, *asked.treatment);
        }
        gathering.take("", layer_figures_json(figures));
        add_bought(gathering, figures.making.bought);
        if (asked.hardware) {
            add_hardware(gathering, *asked.hardware);
        }
    }
    add_flags(gathering, window, figures.id);
    return made;
}

void add_house_bought(std::vector<MadeFigure>& into, const Survey& survey, const Figures& figures) {
    Gathering gathering(survey, into);
    for (const Order& order : figures.orders) {
        gathering.length("orders." + order.fabric + ".length_mm", order.length);
        gathering.number("orders." + order.fabric + ".order_m", order.order_m);
    }
    for (const Haberdashery& item : figures.haberdashery) {
        const std::string name = "haberdashery." + item.what;
        if (item.count == 0) {
            gathering.number(name + ".order_m", item.order_m);
        } else {
            gathering.number(name, item.count);
        }
    }
}

}  // namespace

MadeHouse made_by(const Survey& survey, const Figures& figures) {
    MadeHouse house;
    for (std::size_t window = 0; window < figures.windows.size(); ++window) {
        const SheetPlace place = sheet_place(survey, window);
        for (std::size_t layer = 0; place.window != nullptr && layer < figures.windows[window].layers.size(); ++layer) {
            house.layers.push_back(made_layer(survey, place, figures.windows[window], layer));
        }
    }
    add_house_bought(house.bought, survey, figures);
    return house;
}

const MadeLayer* find_layer(const MadeHouse& house, const std::string& room, const std::string& window,
                            const std::string& layer) {
    const auto found = std::ranges::find_if(house.layers, [&](const MadeLayer& made) {
        return made.room == room && made.window == window && made.layer == layer;
    });
    return found == house.layers.end() ? nullptr : &*found;
}

bool is_flag(const std::string& figure) { return figure.starts_with(flag_figure); }

std::string digest_text(const MadeLayer& layer) {
    std::vector<std::string> lines;
    for (const MadeFigure& figure : layer.figures) {
        if (!is_flag(figure.figure) || stands_in_the_way(figure)) {
            lines.push_back(figure.figure + "=" + figure.value);
            std::ranges::replace(lines.back(), '\n', ' ');
        }
    }
    std::ranges::sort(lines);
    std::string text;
    for (const std::string& line : lines) {
        text += line + "\n";
    }
    return text;
}

std::vector<FigureDifference> differences(const std::vector<MadeFigure>& before, const std::vector<MadeFigure>& after) {
    std::vector<FigureDifference> found;
    for (const MadeFigure& now : after) {
        const MadeFigure* then = find_figure(before, now.figure);
        if (then == nullptr) {
            found.push_back({now.figure, std::nullopt, now, std::nullopt});
        } else if (*then != now) {
            const bool numbers = then->number && now.number;
            found.push_back(
                {now.figure, *then, now,
                 numbers ? std::optional(std::round((*now.number - *then->number) * 100.0) / 100.0) : std::nullopt});
        }
    }
    for (const MadeFigure& then : before) {
        if (find_figure(after, then.figure) == nullptr) {
            found.push_back({then.figure, then, std::nullopt, std::nullopt});
        }
    }
    return found;
}

}  // namespace truehang
