// SPDX-License-Identifier: Apache-2.0
#include "light/light_advice.h"

#include "units/length_text.h"
#include "units/saying.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace truehang {
namespace {

/// A room below this share of daylight is dim, whatever it is used for (BS 8206-2: below 2 % electric light is wanted
/// by day, and 1 % is the least it asks of any room).
constexpr double dim_below = 1.0;
/// Less than this isn’t worth a longer pole.
constexpr double worth_saying = 0.05;

std::string percent(double value) {
    std::string text = fmt::format("{:.1f}", value);
    std::ranges::replace(text, '.', said_decimal());
    return text;
}

const Fabric* fabric_of(const Survey& survey, const std::optional<std::string>& id) {
    const auto found = std::ranges::find_if(survey.fabrics, [&](const Fabric& fabric) { return id == fabric.id; });
    return found == survey.fabrics.end() ? nullptr : &*found;
}

/// Up to its first comma.
std::string name_of_cloth(const Fabric& fabric) {
    return fabric.name.empty() ? fabric.id : fabric.name.substr(0, fabric.name.find(','));
}

class Adviser {
public:
    Adviser(const Survey& survey, const Window& window, const WindowLight& light)
        : survey_(survey), window_(window), light_(light) {}

    std::vector<LightAdvice> advice() {
        if (light_.hours) {
            advise_cloth();
        }
        if (light_.daylight) {
            advise_daylight();
        }
        return std::move(advice_);
    }

private:
    /// The sun falls on the lining, where there is one, else on the cloth itself.
    void advise_cloth() {
        const double hours = sum(light_.hours->on_cloth);
        const Exposure exposure = exposure_of(hours);
        const int least = blue_wool_for(exposure);
        const std::string reason =
            say("Facing {}: {} hours of possible sun a year reach the cloth.",
                compass_word(light_.facing.bearing->bearing), fmt::format("{:.0f}", 10.0 * std::round(hours / 10.0)));
        bool asked = false;
        for (const Layer& layer : window_.layers) {
            if (layer.treatment) {
                asked = true;
                advise_layer(*layer.treatment, exposure, least, reason);
            }
        }
        if (!asked) {
            add(exposure == Exposure::little
                    ? say("Little sun: a cloth of blue wool class {} or better will do.", least)
                    : say("Choose a cloth of blue wool class {} or better, and line it.", least),
                reason);
        }
    }

    void advise_layer(const Treatment& treatment, Exposure exposure, int least, const std::string& reason) {
        const Fabric* face = fabric_of(survey_, treatment.fabric);
        const Fabric* lining = fabric_of(survey_, treatment.lining);
        const bool sheer = face != nullptr && face->role && face->role->is(FabricRole::sheer);
        const Fabric* in_the_sun = lining != nullptr ? lining : face;
        if (in_the_sun == nullptr) {
            add(say("Choose a cloth of blue wool class {} or better.", least), reason);
            return;
        }
        const std::string name = name_of_cloth(*in_the_sun);
        if (in_the_sun->blue_wool && *in_the_sun->blue_wool < least) {
            add(lining != nullptr
                    ? say("{} stands in the sun with blue wool class {}: a lining of {} or better keeps its colour "
                          "longer.",
                          name, *in_the_sun->blue_wool, least)
                    : say("{} stands in the sun with blue wool class {}: line it, or choose {} or better.", name,
                          *in_the_sun->blue_wool, least),
                reason);
        } else if (!in_the_sun->blue_wool) {
            add(say("Ask what blue wool class {} has: {} or better here.", name, least), reason);
        } else if (exposure == Exposure::strong && lining == nullptr && !sheer) {
            add(say("Line it: unlined, {} takes all the sun itself.", name), reason);
        } else if (in_the_sun->blue_wool) {
            add(say("{} has blue wool class {}: as much as this window asks.", name, *in_the_sun->blue_wool), reason);
        }
    }

    void advise_daylight() {
        const Daylight& daylight = *light_.daylight;
        const double least = daylight.least.value_or(dim_below);
        if (daylight.drawn_back && daylight.longer && *daylight.longer - *daylight.drawn_back >= worth_saying) {
            add(say("A pole {} long would clear the glass and win {} % of daylight.",
                    said_length(*daylight.longer_length, unit()), percent(*daylight.longer - *daylight.drawn_back)),
                say("Drawn back, the curtains leave this window {} of {} %.", percent(*daylight.drawn_back),
                    percent(daylight.open)));
        }
        if (daylight.room_whole && daylight.room < least) {
            add(say("A dim room: choose a pale lining, and a heading that draws back narrow."),
                daylight.least ? say("The room has an average daylight factor of {} %; BS 8206-2 asks {} % of a room "
                                     "of this use.",
                                     percent(daylight.room), percent(least))
                               : say("The room has an average daylight factor of {} %, below {} %.",
                                     percent(daylight.room), percent(least)));
        }
    }

    [[nodiscard]] LengthUnit unit() const {
        return survey_.entry_unit ? length_unit(*survey_.entry_unit).value_or(LengthUnit::mm) : LengthUnit::mm;
    }
    void add(std::string text, std::string reason) {
        const bool said = std::ranges::any_of(advice_, [&](const LightAdvice& one) { return one.text == text; });
        if (!said) {
            advice_.push_back({std::move(text), std::move(reason)});
        }
    }

    const Survey& survey_;
    const Window& window_;
    const WindowLight& light_;
    std::vector<LightAdvice> advice_;
};

}  // namespace

Exposure exposure_of(double hours_on_cloth) {
    return hours_on_cloth <= 900.0 ? Exposure::little : hours_on_cloth <= 1800.0 ? Exposure::some : Exposure::strong;
}

int blue_wool_for(Exposure exposure) {
    switch (exposure) {
        case Exposure::little:
            return 4;
        case Exposure::some:
            return 5;
        case Exposure::strong:
            return 6;
    }
    return 6;
}

std::vector<LightAdvice> light_advice(const Survey& survey, const Window& window, const WindowLight& light) {
    return Adviser(survey, window, light).advice();
}

}  // namespace truehang
