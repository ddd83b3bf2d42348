// SPDX-License-Identifier: Apache-2.0
#include "figures/agreement.h"

#include "sizing/headings.h"
#include "units/length_text.h"
#include "units/saying.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace truehang {

namespace {

std::string title_of(const Room& room, const Window& window) {
    std::string name = window.name.empty() ? window.id : window.name;
    if (!room.name.empty() && name.front() >= 'A' && name.front() <= 'Z') {
        name.front() = static_cast<char>(name.front() - 'A' + 'a');
    }
    return room.name.empty() ? name : room.name + ", " + name;
}

const Fabric* fabric_of(const Survey& survey, const std::string& id) {
    const auto fabric = std::ranges::find(survey.fabrics, id, &Fabric::id);
    return fabric == survey.fabrics.end() ? nullptr : &*fabric;
}

/// Two decimals, with the decimal mark of the language in force.
std::string hundredths(double value) {
    std::string text = fmt::format("{:.2f}", value);
    std::ranges::replace(text, '.', said_decimal());
    return text;
}

/// "Tab headed pair", "Roman blind", in the language in force.
std::string says(Heading heading, int curtains) {
    std::string text = worded(heading_rule(heading).says);
    if (heading != Heading::roman) {
        text = curtains == 2 ? say("{} pair", text) : say("{} curtain", text);
    }
    text.front() = text.front() >= 'a' && text.front() <= 'z' ? static_cast<char>(text.front() - 'a' + 'A') : text[0];
    return text;
}

/// What a document says for a layer: in English.
std::string says_kept(Heading heading, int curtains) {
    const EnglishHere english;
    return says(heading, curtains);
}

std::vector<AgreedCloth> cloths_of(const Survey& survey, const std::vector<Piece>& pieces) {
    std::vector<AgreedCloth> cloths;
    for (const Piece& piece : pieces) {
        auto cloth = std::ranges::find(cloths, piece.fabric, &AgreedCloth::fabric);
        if (cloth == cloths.end()) {
            cloths.emplace_back().fabric = piece.fabric;
            cloth = cloths.end() - 1;
        }
        cloth->length += piece.count * piece.length;
    }
    for (AgreedCloth& cloth : cloths) {
        if (const Fabric* fabric = fabric_of(survey, cloth.fabric)) {
            cloth.name = fabric->name;
            if (fabric->price_per_m) {
                cloth.cost = cloth.length.metres() * *fabric->price_per_m;
                cloth.currency = fabric->currency;
            }
        }
    }
    return cloths;
}

/// The layers of a window that can be made.
std::vector<AgreedLayer> layers_now(const Survey& survey, const Room& room, const Window& window,
                                    const WorkedWindow& worked) {
    std::vector<AgreedLayer> layers;
    for (std::size_t i = 0; i < std::min(window.layers.size(), worked.figures.layers.size()); ++i) {
        const LayerFigures& figures = worked.figures.layers[i];
        const auto& treatment = window.layers[i].treatment;
        const auto heading = treatment && treatment->heading ? treatment->heading->known() : std::nullopt;
        if (!figures.finished || !heading) {
            continue;
        }
        AgreedLayer& layer = layers.emplace_back();
        layer.window = window.id;
        layer.layer = window.layered ? window.layers[i].id : "";
        layer.title = title_of(room, window);
        layer.heading = treatment->heading;
        layer.curtains = figures.finished->curtains;
        layer.says = says_kept(*heading, layer.curtains);
        layer.width = figures.finished->width;
        layer.drop = figures.finished->drop;
        if (i < worked.pieces.size()) {
            layer.cloths = cloths_of(survey, worked.pieces[i].pieces);
        }
    }
    return layers;
}

/// Writes what differs between two layers.
class DifferenceWriter {
public:
    explicit DifferenceWriter(const Survey& survey)
        : unit_(length_unit(survey.entry_unit.value_or("mm")).value_or(LengthUnit::mm)) {}

    [[nodiscard]] std::string between(const AgreedLayer& agreed, const AgreedLayer& now) {
        if (agreed.heading != now.heading || agreed.curtains != now.curtains) {
            add(say("{} was agreed, {} hangs there now", agreed_layer_says(agreed), agreed_layer_says(now)));
        }
        size(say("finished width"), agreed.width, now.width);
        size(say("finished drop"), agreed.drop, now.drop);
        for (const AgreedCloth& cloth : agreed.cloths) {
            const auto same = std::ranges::find(now.cloths, cloth.fabric, &AgreedCloth::fabric);
            if (same == now.cloths.end()) {
                add(say("{} of {} was agreed, and none is taken now", metres(cloth.length), name(cloth)));
            } else {
                compare(cloth, *same);
            }
        }
        for (const AgreedCloth& cloth : now.cloths) {
            if (std::ranges::find(agreed.cloths, cloth.fabric, &AgreedCloth::fabric) == agreed.cloths.end()) {
                add(say("{} of {} wasn’t agreed", metres(cloth.length), name(cloth)));
            }
        }
        return text_;
    }

private:
    [[nodiscard]] static std::string metres(Length length) { return hundredths(length.metres()) + " m"; }
    [[nodiscard]] static const std::string& name(const AgreedCloth& cloth) {
        return cloth.name.empty() ? cloth.fabric : cloth.name;
    }
    void add(const std::string& part) { text_ += (text_.empty() ? "" : "; ") + part; }

    void size(const std::string& what, Length agreed, Length now) {
        const double more = (now - agreed).mm();
        if (std::abs(more) >= 0.5) {
            const std::string apart = said_length(Length::mm(std::abs(more)), unit_);
            const std::string was = said_length(agreed, unit_);
            const std::string is = said_length(now, unit_);
            add(more > 0.0 ? say("{} {} agreed, {} now, {} more", what, was, is, apart)
                           : say("{} {} agreed, {} now, {} less", what, was, is, apart));
        }
    }

    void compare(const AgreedCloth& agreed, const AgreedCloth& now) {
        const double more = (now.length - agreed.length).mm();
        if (std::abs(more) >= 0.5) {
            const std::string apart = metres(Length::mm(std::abs(more)));
            const std::string was = metres(agreed.length);
            const std::string is = metres(now.length);
            add(more > 0.0 ? say("{} of {} agreed, {} now, {} more", was, name(agreed), is, apart)
                           : say("{} of {} agreed, {} now, {} less", was, name(agreed), is, apart));
        }
        const bool priced = agreed.cost && now.cost;
        if (agreed.cost.has_value() != now.cost.has_value() || agreed.currency != now.currency ||
            (priced && std::abs(*agreed.cost - *now.cost) >= 0.005)) {
            add(say("{} at {} agreed, {} now", name(agreed), money(agreed), money(now)));
        }
    }
    [[nodiscard]] static std::string money(const AgreedCloth& cloth) {
        if (!cloth.cost) {
            return say("no price");
        }
        return hundredths(*cloth.cost) + (cloth.currency.empty() ? "" : " " + cloth.currency);
    }

    LengthUnit unit_;
    std::string text_;
};

std::string signer(const Survey& survey) {
    return survey.signed_off->by.empty() ? say("the client") : survey.signed_off->by;
}

Flag outdated(const Survey& survey, const std::string& layer, const std::string& what) {
    return {
        std::string(agreement_outdated),
        Severity::decide,
        {},
        say("No longer what {} agreed: {}. Set it back, or show it again and have it signed.", signer(survey), what),
        "",
        layer,
        {}};
}

}  // namespace

std::string agreed_layer_says(const AgreedLayer& layer) {
    const auto heading = layer.heading ? layer.heading->known() : std::nullopt;
    return heading ? says(*heading, layer.curtains) : layer.says;
}

Agreed agreed_now(const Survey& survey) {
    Agreed agreed;
    agreed.rules = survey.rules.name;
    agreed.revision = survey.revision;
    for (const Room& room : survey.rooms) {
        for (const Window& window : room.windows) {
            for (AgreedLayer& layer : layers_now(survey, room, window, work_window(survey, room, window))) {
                agreed.layers.push_back(std::move(layer));
            }
        }
    }
    return agreed;
}

std::vector<Flag> agreement_flags(const Survey& survey, const Room& room, const Window& window,
                                  const WorkedWindow& worked) {
    std::vector<Flag> flags;
    if (!survey.signed_off || !survey.signed_off->agreed) {
        return flags;
    }
    const std::vector<AgreedLayer> now = layers_now(survey, room, window, worked);
    const auto& agreed = survey.signed_off->agreed->layers;
    const auto find = [](const std::vector<AgreedLayer>& among, const AgreedLayer& wanted) {
        return std::ranges::find_if(
            among, [&](const AgreedLayer& one) { return one.window == wanted.window && one.layer == wanted.layer; });
    };
    for (const AgreedLayer& layer : now) {
        const auto before = find(agreed, layer);
        const std::string what = before == agreed.end()
                                     ? say("{} was added after the signing", agreed_layer_says(layer))
                                     : DifferenceWriter(survey).between(*before, layer);
        if (!what.empty()) {
            flags.push_back(outdated(survey, layer.layer, what));
        }
    }
    for (const AgreedLayer& layer : agreed) {
        const bool hangs = layer.layer.empty()
                               ? !window.layers.empty()
                               : std::ranges::find(window.layers, layer.layer, &Layer::id) != window.layers.end();
        if (layer.window == window.id && find(now, layer) == now.end()) {
            flags.push_back(outdated(survey, hangs ? layer.layer : "",
                                     hangs ? say("{} can’t be made as it stands now", agreed_layer_says(layer))
                                           : say("{} was taken out", agreed_layer_says(layer))));
        }
    }
    return flags;
}

std::vector<std::string> agreed_and_gone(const Survey& survey) {
    std::vector<std::string> gone;
    if (!survey.signed_off || !survey.signed_off->agreed) {
        return gone;
    }
    for (const AgreedLayer& layer : survey.signed_off->agreed->layers) {
        const bool there = std::ranges::any_of(survey.rooms, [&](const Room& room) {
            return std::ranges::find(room.windows, layer.window, &Window::id) != room.windows.end();
        });
        if (!there && (gone.empty() || gone.back() != layer.title)) {
            gone.push_back(layer.title);
        }
    }
    return gone;
}

std::vector<std::string> unsettled(const Survey& survey, const Figures& figures) {
    std::vector<std::string> sentences;
    bool any = false;
    std::size_t at = 0;
    for (const Room& room : survey.rooms) {
        for (const Window& window : room.windows) {
            if (at >= figures.windows.size()) {
                break;
            }
            const WindowFigures& worked = figures.windows[at++];
            any = any || std::ranges::any_of(worked.layers, [](const LayerFigures& one) { return !!one.finished; });
            for (const Flag& flag : worked.flags) {
                if (flag.severity == Severity::stop) {
                    sentences.push_back(title_of(room, window) + ": " + flag.text);
                }
            }
        }
    }
    if (!any) {
        sentences.insert(sentences.begin(), say("There is nothing to agree yet: no curtain or blind can be made."));
    }
    return sentences;
}

}  // namespace truehang
