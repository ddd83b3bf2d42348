// SPDX-License-Identifier: Apache-2.0
#include "sheet/signed.h"

#include "figures/agreement.h"
#include "units/saying.h"

#include <fmt/format.h>

#include <cmath>

namespace truehang {

namespace {

MadeFigure number(std::string figure, double value) {
    const double rounded = std::round(value * 100.0) / 100.0;
    return {std::move(figure), fmt::format("{}", rounded), rounded, {}};
}

}  // namespace

MadeHouse made_by(const Agreed& agreed) {
    MadeHouse house;
    for (const AgreedLayer& layer : agreed.layers) {
        MadeLayer made{"", layer.window, layer.layer, layer.title, {}};
        if (layer.heading) {
            made.figures.push_back({"heading", layer.heading->text(), std::nullopt, agreed_layer_says(layer)});
        }
        made.figures.push_back(number("finished.curtains", layer.curtains));
        made.figures.push_back(number("finished.width_mm", layer.width.mm()));
        made.figures.push_back(number("finished.drop_mm", layer.drop.mm()));
        for (const AgreedCloth& cloth : layer.cloths) {
            made.figures.push_back(number("agreed." + cloth.fabric + ".length_mm", cloth.length.mm()));
            if (cloth.cost) {
                const auto cost =
                    fmt::format("{:.2f}{}{}", *cloth.cost, cloth.currency.empty() ? "" : " ", cloth.currency);
                made.figures.push_back({"agreed." + cloth.fabric + ".cost", cost, std::nullopt, {}});
            }
        }
        house.layers.push_back(std::move(made));
    }
    return house;
}

std::optional<SinceSigned> since_signed(const Survey& survey) {
    if (!survey.signed_off || !survey.signed_off->agreed) {
        return std::nullopt;
    }
    const Agreed& agreed = *survey.signed_off->agreed;
    return SinceSigned{
        survey.signed_off->by, agreed.revision,
        written_differences(survey, made_by(agreed), made_by(agreed_now(survey)), sheet_style_for(survey))};
}

std::string signed_sentence(const SinceSigned& since) {
    const std::string by = since.by.empty() ? say("the client") : since.by;
    if (!since.revision) {
        return since.differs() ? say("Agreed by {}, figures differ since.", by)
                               : say("Agreed by {}, and the figures are as agreed.", by);
    }
    return since.differs() ? say("Agreed on revision {} by {}, figures differ since.", *since.revision, by)
                           : say("Agreed on revision {} by {}, and the figures are as agreed.", *since.revision, by);
}

}  // namespace truehang
