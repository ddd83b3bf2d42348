// SPDX-License-Identifier: Apache-2.0
#include "document/object_reader.h"
#include "document/rolls_document.h"
#include "document/survey_parts.h"

#include <fmt/format.h>

#include <algorithm>

namespace truehang {

namespace {

constexpr std::size_t most_fabrics = 1000;
constexpr std::size_t most_rolls = 1000;
constexpr std::size_t most_flaws = 1000;
constexpr NumberRange roll_range{0.0, 1000000.0, true};  ///< mm
constexpr NumberRange on_roll{0.0, 1000000.0};
constexpr NumberRange useful_range{0.0, 100000.0, true};

void check_format(ObjectReader& reader) {
    std::string format;
    reader.text("format", format, Presence::required);
    if (reader.has("format") && !is_format(format, "truehang.rolls/1")) {
        reader.fault("format", fmt::format("This program reads truehang.rolls/1, not {}.", json_string(format)));
    }
}

RollFlaw read_flaw(ObjectReader& reader, Length roll) {
    std::optional<Length> at;
    RollFlaw flaw;
    reader.length("at_mm", at, on_roll);
    const Presence both = at ? Presence::optional : Presence::required;
    reader.length("from_mm", flaw.from, on_roll, both);
    reader.length("to_mm", flaw.to, on_roll, both);
    if (at && (reader.has("from_mm") || reader.has("to_mm"))) {
        reader.fault("at_mm", "A flaw has either a place of its own, or a from and a to.");
    }
    if (at) {
        return {*at, *at};
    }
    if (flaw.to < flaw.from) {
        reader.fault("to_mm", "A flaw ends behind where it begins: exchange the two.");
    }
    if (flaw.to > roll) {
        reader.fault("to_mm", "This flaw lies behind the roll’s end: measure again from the start.");
    }
    return flaw;
}

RollJoin read_join(ObjectReader& reader, Length roll) {
    RollJoin join;
    reader.length("at_mm", join.at, on_roll, Presence::required);
    reader.length("phase_mm", join.phase, on_roll);
    if (join.at > roll) {
        reader.fault("at_mm", "This join lies behind the roll’s end: measure again from the start.");
    }
    return join;
}

Roll read_roll(ObjectReader& reader) {
    Roll roll;
    reader.id("id", roll.id, Presence::required);
    reader.text("lot", roll.lot);
    reader.length("length_mm", roll.length, roll_range, Presence::required);
    reader.length("phase_mm", roll.phase, on_roll);
    reader.objects("flaws", most_flaws, [&](ObjectReader& item) {
        roll.flaws.push_back(read_flaw(item, roll.length));
        if (roll.flaws.back().from > roll.length) {
            item.fault(item.has("at_mm") ? "at_mm" : "from_mm",
                       "This flaw lies behind the roll’s end: measure again from the start.");
        }
    });
    reader.objects("joins", most_flaws,
                   [&](ObjectReader& item) { roll.joins.push_back(read_join(item, roll.length)); });
    return roll;
}

RollsOfFabric read_fabric_rolls(ObjectReader& reader, const Survey& survey) {
    RollsOfFabric fabric;
    reader.id("fabric", fabric.fabric, Presence::required);
    const bool there =
        std::ranges::any_of(survey.fabrics, [&](const Fabric& each) { return each.id == fabric.fabric; });
    if (!fabric.fabric.empty() && !there) {
        reader.fault("fabric", fmt::format("The survey has no fabric {}.", json_string(fabric.fabric)));
    }
    Ids ids;
    reader.objects(
        "rolls", most_rolls,
        [&](ObjectReader& item) {
            fabric.rolls.push_back(read_roll(item));
            ids.add(item, fabric.rolls.back().id);
        },
        Presence::required);
    return fabric;
}

RollsThatCame read_whole(ObjectReader& reader, const Survey& survey) {
    RollsThatCame came;
    check_format(reader);
    reader.id("survey", came.survey, Presence::required);
    if (!came.survey.empty() && came.survey != survey.id) {
        reader.fault("survey", fmt::format("These rolls came for the survey {}; this one is {}.",
                                           json_string(came.survey), json_string(survey.id)));
    }
    reader.length("useful_mm", came.useful, useful_range);
    reader.objects(
        "fabrics", most_fabrics,
        [&](ObjectReader& item) {
            RollsOfFabric fabric = read_fabric_rolls(item, survey);
            const auto known = std::ranges::find(came.fabrics, fabric.fabric, &RollsOfFabric::fabric);
            if (known == came.fabrics.end()) {
                came.fabrics.push_back(std::move(fabric));
            } else {
                item.fault("fabric", "This fabric stands twice. Put all its rolls into one list.");
            }
        },
        Presence::required);
    std::ranges::stable_sort(came.fabrics, {}, [&](const RollsOfFabric& of) {
        return std::ranges::find(survey.fabrics, of.fabric, &Fabric::id) - survey.fabrics.begin();
    });
    return came;
}

}  // namespace

Result<RollsThatCame, Faults> read_rolls(std::string_view bytes, const Survey& survey) {
    RollsThatCame came;
    Faults faults = read_whole_document(bytes, "A rolls document",
                                        [&](ObjectReader& reader) { came = read_whole(reader, survey); });
    if (!faults.empty()) {
        return faults;
    }
    return came;
}

}  // namespace truehang
