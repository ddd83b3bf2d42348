// SPDX-License-Identifier: Apache-2.0
#include "document/survey_parts.h"

#include "document/light_parts.h"
#include "document/limits.h"
#include "survey/house_rules.h"
#include "survey/stations.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>

namespace truehang {
namespace {

/// House rules that something is divided by, or that a sale or a share bounds; every other rule is a length.
struct RuleRange {
    std::string_view key;
    NumberRange range;
};
constexpr NumberRange divisor_range{0.0, 100000.0, true};
constexpr std::array rule_ranges{
    RuleRange{"tab_gap_mm", divisor_range},        RuleRange{"eyelet_gap_mm", divisor_range},
    RuleRange{"blind_fold_mm", divisor_range},     RuleRange{"order_step_m", {0.0, 100.0, true}},
    RuleRange{"weight_every", {0.0, 100.0, true}}, RuleRange{"fullness_slack", {0.0, 100.0}},
    RuleRange{"pelmet_share", {0.0, 1.0}},         RuleRange{"placing_repeats", {0.0, 100.0}},
    RuleRange{"hook_gap_mm", divisor_range},       RuleRange{"cord_gap_mm", divisor_range},
    RuleRange{"pleats_per_width", {0.0, 100.0}},   RuleRange{"haberdashery_step_m", {0.0, 100.0, true}},
    RuleRange{"tie_back_share", {0.0, 1.0}},       RuleRange{"separate_fullness", {0.0, 100.0}},
    RuleRange{"roll_m", {0.0, 1000.0, true}},      RuleRange{"making_per_width", {0.0, 1000000.0}}};

bool has_too_many_rules(ObjectReader& reader) {
    const bool too_many = reader.value().members.size() > document_limits::rules;
    if (too_many) {
        reader.faults().add(reader.pointer(), fmt::format("At most {} house rules are read.", document_limits::rules));
    }
    return too_many;
}

/// A pair of numbers that a mark names: a point of the picture.
std::optional<std::pair<double, double>> point_of(const JsonValue& value) {
    if (value.kind != JsonKind::array || value.items.size() != 2 || value.items[0].kind != JsonKind::number ||
        value.items[1].kind != JsonKind::number) {
        return std::nullopt;
    }
    return std::pair(value.items[0].number, value.items[1].number);
}

Mark read_mark(ObjectReader& reader) {
    Mark mark;
    reader.text("kind", mark.kind);
    reader.text("text", mark.text);
    for (const auto& [name, value] : reader.value().members) {
        if (name == "kind" || name == "text") {
            continue;
        }
        if (const auto point = point_of(value)) {
            reader.know(name);
            mark.points.emplace_back(name, *point);
        } else if (name == "from" || name == "to" || name == "at") {
            reader.fault(name, "A point must be a list of two numbers, fractions of the upright picture.");
        }
    }
    mark.extra = reader.rest();
    return mark;
}

/// `corner.N.angle_deg`, N from 1, and the mouth's angles.
bool is_angle_station(std::string_view word) {
    if (word == "mouth.left.angle_deg" || word == "mouth.right.angle_deg") {
        return true;
    }
    constexpr std::string_view before = "corner.";
    constexpr std::string_view after = ".angle_deg";
    if (!word.starts_with(before) || !word.ends_with(after) || word.size() <= before.size() + after.size()) {
        return false;
    }
    const std::string_view number = word.substr(before.size(), word.size() - before.size() - after.size());
    return number.front() != '0' && std::ranges::all_of(number, [](char c) { return c >= '0' && c <= '9'; });
}

void check_reading_has_value(ObjectReader& reader, const Reading& reading, Shape shape) {
    if (is_angle_station(reading.station)) {
        static_cast<void>(reader.take("value_deg", Presence::required));
        return;
    }
    if (find_station(shape, reading.station) || !reader.has("value_deg")) {
        static_cast<void>(reader.take("value_mm", Presence::required));
    }
}

void check_fabric(ObjectReader& reader, std::string_view key, const std::optional<std::string>& name,
                  const FabricNames& fabrics) {
    if (name && fabrics.complete && !fabrics.ids.contains(*name)) {
        reader.fault(key, fmt::format("No fabric of this survey has the id {}.", json_string(*name)));
    }
}

PelmetAsked read_pelmet(ObjectReader& reader) {
    PelmetAsked pelmet;
    reader.length("depth_mm", pelmet.depth);
    reader.length("return_mm", pelmet.return_depth);
    pelmet.extra = reader.rest();
    return pelmet;
}

Decided read_decided(ObjectReader& reader) {
    Decided decided;
    reader.number("widths_each", decided.widths_each, {0.0, 1000.0});
    reader.number("repeats", decided.repeats, {0.0, 10'000.0});
    decided.extra = reader.rest();
    return decided;
}

TieBackAsked read_tie_back(ObjectReader& reader) {
    TieBackAsked tie_back;
    reader.word("kind", tie_back.kind);
    reader.length("height_mm", tie_back.height);
    reader.length("length_mm", tie_back.length);
    tie_back.extra = reader.rest();
    return tie_back;
}

/// A mass that may be there, up to 10 t.
void read_mass(ObjectReader& reader, std::string_view key, std::optional<Mass>& field) {
    std::optional<double> kg;
    reader.number(key, kg, {0.0, 10000.0});
    if (kg) {
        field = Mass::kg(*kg);
    }
}

}  // namespace

NumberRange range_of_rule(std::string_view key) {
    const auto found = std::ranges::find(rule_ranges, key, &RuleRange::key);
    return found == rule_ranges.end() ? length_range : found->range;
}

void Ids::add(ObjectReader& reader, const std::string& id) {
    if (!id.empty() && !seen_.insert(id).second) {
        reader.fault("id", fmt::format("The id {} stands twice. Give each its own.", json_string(id)));
    }
}

Fabric read_fabric(ObjectReader& reader) {
    Fabric fabric;
    reader.id("id", fabric.id, Presence::required);
    reader.word("role", fabric.role);
    reader.text("name", fabric.name);
    std::optional<Length> width;
    static_cast<void>(reader.take("width_mm", Presence::required));
    reader.length("width_mm", width, {length_range.low, length_range.high, true});
    reader.length("selvedge_mm", fabric.selvedge);
    reader.length("repeat_mm", fabric.repeat);
    reader.word("match", fabric.match);
    reader.length("repeat_across_mm", fabric.repeat_across);
    reader.length("skew_mm", fabric.skew);
    reader.flag("one_way", fabric.one_way);
    reader.flag("railroad", fabric.railroad);
    reader.number("mass_gsm", fabric.mass_gsm, {0.0, 100000.0});
    reader.number("shrinkage_pct", fabric.shrinkage_pct, {0.0, 50.0});
    reader.whole("blue_wool", fabric.blue_wool, {1.0, 8.0});
    reader.number("price_per_m", fabric.price_per_m, {0.0, any_number.high});
    reader.text("currency", fabric.currency);
    // Documents may hold a key of this name that says something else: that is kept as it stands.
    if (const JsonValue* colour = reader.value().find("colour");
        colour != nullptr && colour->kind == JsonKind::string) {
        reader.text("colour", fabric.colour);
    }
    reader.object("photo", [&](ObjectReader& photo) { fabric.photo = read_photo(photo); });
    fabric.width = width.value_or(Length{});
    if (width && !(*width - 2.0 * fabric.selvedge > Length{})) {
        reader.fault("width_mm", "Nothing is left of this width after its two selvedges.");
    }
    fabric.extra = reader.rest();
    return fabric;
}

void read_rules_label(ObjectReader& reader, HouseRuleEntries& rules) {
    reader.text("name", rules.name);
    reader.whole("version", rules.version, {1.0, count_range.high});
    reader.text("date", rules.date);
    if (!rules.date.empty() && !is_rfc3339(rules.date + "T00:00:00Z")) {
        reader.fault("date", "A date must be written as in 2026-03-14.");
    }
}

void read_rule_values(ObjectReader& reader, HouseRuleEntries& rules, std::span<const std::string_view> labels) {
    if (has_too_many_rules(reader)) {
        return;
    }
    reader.object("head_mm", [&](ObjectReader& heads) {
        if (has_too_many_rules(heads)) {
            return;
        }
        for (const auto& [heading, value] : heads.value().members) {
            heads.number(heading, rules.head_mm[heading], length_range);
        }
        if (heads.value().members.empty()) {
            reader.keep("head_mm");
        }
    });
    const auto known = house_rule_keys();
    for (const auto& [key, value] : reader.value().members) {
        if (key == "head_mm" || std::ranges::find(labels, key) != labels.end()) {
            continue;
        }
        std::optional<double> number;
        if (std::ranges::find(known, key) != known.end()) {
            reader.number(key, number, range_of_rule(key));
        } else if (value.kind == JsonKind::number) {
            reader.know(key);
            number = value.number;
        }
        if (number) {
            rules.numbers.emplace(key, *number);
        }
    }
    rules.extra = reader.rest();
}

HouseRuleEntries read_rules(ObjectReader& reader) {
    constexpr std::array<std::string_view, 3> labels{"name", "version", "date"};
    HouseRuleEntries rules;
    read_rules_label(reader, rules);
    read_rule_values(reader, rules, labels);
    return rules;
}

Reading read_reading(ObjectReader& reader, Shape shape) {
    Reading reading;
    reader.id("id", reading.id);
    reader.text("station", reading.station, Presence::required);
    reader.length("value_mm", reading.value);
    reader.angle("value_deg", reading.angle, {0.0, 360.0});
    reader.text("typed", reading.typed);
    reader.time("taken_at", reading.taken_at);
    reader.text("replaces", reading.replaces);
    reader.word("how", reading.how);
    reader.length("u_mm", reading.u);
    reader.angle("u_deg", reading.angle_u, {0.0, 360.0});
    reader.word("stage", reading.stage);
    check_reading_has_value(reader, reading, shape);
    reading.extra = reader.rest();
    return reading;
}

Obstruction read_obstruction(ObjectReader& reader) {
    Obstruction obstruction;
    reader.id("id", obstruction.id);
    reader.word("kind", obstruction.kind);
    reader.length("left_mm", obstruction.left, placed_range);
    reader.length("width_mm", obstruction.width);
    reader.length("bottom_mm", obstruction.bottom);
    reader.length("height_mm", obstruction.height);
    reader.length("depth_mm", obstruction.depth);
    reader.text("note", obstruction.note);
    obstruction.extra = reader.rest();
    return obstruction;
}

Photo read_photo(ObjectReader& reader) {
    Photo photo;
    reader.text("sha256", photo.sha256);
    reader.text("media_type", photo.media_type);
    reader.whole("bytes", photo.bytes, count_range);
    reader.text("caption", photo.caption);
    reader.text("obstruction", photo.obstruction);
    reader.objects("marks", document_limits::marks,
                   [&](ObjectReader& mark) { photo.marks.push_back(read_mark(mark)); });
    reader.object("plane", [&](ObjectReader& plane) { photo.plane = read_plane(plane); });
    photo.extra = reader.rest();
    return photo;
}

Hardware read_hardware(ObjectReader& reader) {
    Hardware hardware;
    reader.text("name", hardware.name);
    reader.word("kind", hardware.kind);
    reader.word("supply", hardware.supply);
    reader.word("hang", hardware.hang);
    reader.word("run", hardware.run);
    reader.word("stage", hardware.stage);
    reader.length("diameter_mm", hardware.diameter);
    reader.length("length_mm", hardware.length);
    reader.length("left_mm", hardware.left, placed_range);
    reader.length("projection_mm", hardware.projection);
    reader.length("finial_mm", hardware.finial);
    reader.whole("brackets", hardware.brackets, {0.0, static_cast<double>(document_limits::brackets)});
    reader.list("bracket_at_mm", document_limits::brackets, [&](const JsonValue& item, const std::string& where) {
        if (item.kind != JsonKind::number) {
            reader.faults().add(where, fmt::format("Here must stand a number, not {}.", name_of(item.kind)));
        } else if (!lies_within(item.number, length_range)) {
            reader.faults().add(where, says_range(item.number, length_range));
        } else {
            hardware.bracket_at.push_back(Length::mm(item.number));
        }
    });
    reader.length("return_mm", hardware.return_depth);
    reader.length("overlap_mm", hardware.overlap);
    read_mass(reader, "mass_kg", hardware.mass);
    read_mass(reader, "rated_kg", hardware.rated);
    read_mass(reader, "bracket_rated_kg", hardware.bracket_rated);
    read_mass(reader, "fixing_rated_kg", hardware.fixing_rated);
    hardware.extra = reader.rest();
    return hardware;
}

Treatment read_treatment(ObjectReader& reader, const FabricNames& fabrics) {
    Treatment treatment;
    reader.word("heading", treatment.heading);
    reader.word("fit", treatment.fit);
    reader.word("layout", treatment.layout);
    reader.number("fullness", treatment.fullness, {0.0, 100.0});
    reader.word("length", treatment.length);
    reader.length("bottom_mm", treatment.bottom);
    reader.word("top", treatment.top);
    reader.word("drops", treatment.drops);
    reader.nullable_text("fabric", treatment.fabric);
    reader.nullable_text("lining", treatment.lining);
    reader.nullable_text("interlining", treatment.interlining);
    check_fabric(reader, "fabric", treatment.fabric, fabrics);
    check_fabric(reader, "lining", treatment.lining, fabrics);
    check_fabric(reader, "interlining", treatment.interlining, fabrics);
    reader.nullable_text("second_lining", treatment.second_lining);
    check_fabric(reader, "second_lining", treatment.second_lining, fabrics);
    reader.word("lining_hung", treatment.lining_hung);
    reader.length("tab_cut_mm", treatment.tab_cut);
    reader.object("pelmet", [&](ObjectReader& pelmet) { treatment.pelmet = read_pelmet(pelmet); });
    reader.object("tie_back", [&](ObjectReader& tie_back) { treatment.tie_back = read_tie_back(tie_back); });
    reader.word("operation", treatment.operation);
    reader.word("weights", treatment.weights);
    reader.object("decided", [&](ObjectReader& decided) { treatment.decided = read_decided(decided); });
    treatment.extra = reader.rest();
    return treatment;
}

}  // namespace truehang
