// SPDX-License-Identifier: Apache-2.0
#include "document/agreement_parts.h"
#include "document/document.h"
#include "document/json_reader.h"
#include "document/light_parts.h"
#include "document/object_writer.h"

#include <algorithm>

namespace truehang {
namespace {

/// A list's item that is an object, written by `write`.
template <class Write>
auto as_item(const Write& write) {
    return [&write](JsonText& out, const auto& item) {
        out.begin_item();
        write(out, item);
    };
}

template <class Part, class Write>
void write_part(JsonText& out, ObjectWriter& object, std::string_view key, const std::optional<Part>& part,
                const Write& write) {
    if (part) {
        object.begin(key);
        write(out, *part);
    }
}

void write_text_item(JsonText& out, const std::string& text) { out.item(json_string(text)); }

void write_client(JsonText& out, const Client& client) {
    ObjectWriter object(out, client.extra);
    object.text("name", client.name);
    object.text("phone", client.phone);
    object.text("email", client.email);
    object.end();
}

void write_site(JsonText& out, const Site& site) {
    ObjectWriter object(out, site.extra);
    object.text("address", site.address);
    object.number("latitude", site.latitude);
    object.number("longitude", site.longitude);
    object.number("accuracy_m", site.accuracy_m);
    object.number("elevation_m", site.elevation_m);
    object.end();
}

void write_tape(JsonText& out, const Tape& tape) {
    ObjectWriter object(out, tape.extra);
    object.word("class", tape.accuracy);
    object.length("length_mm", tape.length);
    object.length("graduation_mm", tape.graduation);
    object.length("case_mm", tape.case_length);
    object.end();
}

bool has_rules(const HouseRuleEntries& rules) {
    return !rules.name.empty() || rules.version || !rules.date.empty() || !rules.numbers.empty() ||
           !rules.head_mm.empty() || !rules.extra.empty();
}

void write_rules(JsonText& out, const HouseRuleEntries& rules) {
    ObjectWriter object(out, rules.extra);
    object.text("name", rules.name);
    object.whole("version", rules.version);
    object.text("date", rules.date);
    write_rule_values(object, out, rules);
    object.end();
}

void write_mark(JsonText& out, const Mark& mark) {
    ObjectWriter object(out, mark.extra);
    object.text("kind", mark.kind);
    for (const auto& [name, point] : mark.points) {
        object.begin(name);
        out.open('[');
        out.item(json_number(point.first));
        out.item(json_number(point.second));
        out.close(']');
    }
    object.text("text", mark.text);
    object.end();
}

void write_photo(JsonText& out, const Photo& photo) {
    ObjectWriter object(out, photo.extra);
    object.text("sha256", photo.sha256);
    object.text("media_type", photo.media_type);
    object.whole("bytes", photo.bytes == 0 ? std::nullopt : std::optional(photo.bytes));
    object.text("caption", photo.caption);
    object.text("obstruction", photo.obstruction);
    object.list("marks", photo.marks, as_item(write_mark));
    write_part(out, object, "plane", photo.plane, write_plane);
    object.end();
}
}  // namespace

void write_fabric(JsonText& out, const Fabric& fabric) {
    ObjectWriter object(out, fabric.extra);
    object.required_text("id", fabric.id);
    object.word("role", fabric.role);
    object.text("name", fabric.name);
    object.length("width_mm", std::optional(fabric.width));
    object.length("selvedge_mm", fabric.selvedge);
    object.length("repeat_mm", fabric.repeat);
    object.word("match", fabric.match);
    object.length("repeat_across_mm", fabric.repeat_across);
    object.length("skew_mm", fabric.skew);
    object.flag("one_way", fabric.one_way);
    object.flag("railroad", fabric.railroad);
    object.number("mass_gsm", fabric.mass_gsm);
    object.number("shrinkage_pct", fabric.shrinkage_pct);
    object.whole("blue_wool", fabric.blue_wool);
    object.number("price_per_m", fabric.price_per_m);
    object.text("currency", fabric.currency);
    object.text("colour", fabric.colour);
    write_part(out, object, "photo", fabric.photo, write_photo);
    object.end();
}

namespace {

void write_reading(JsonText& out, const Reading& reading) {
    ObjectWriter object(out, reading.extra);
    object.text("id", reading.id);
    object.required_text("station", reading.station);
    object.length("value_mm", reading.value);
    object.angle("value_deg", reading.angle);
    object.text("typed", reading.typed);
    object.text("taken_at", reading.taken_at);
    object.text("replaces", reading.replaces);
    object.word("how", reading.how);
    object.length("u_mm", reading.u);
    object.angle("u_deg", reading.angle_u);
    object.word("stage", reading.stage);
    object.end();
}

void write_not_taken(JsonText& out, const NotTaken& not_taken) {
    ObjectWriter object(out, not_taken.extra);
    object.text("station", not_taken.station);
    object.text("reason", not_taken.reason);
    object.end();
}

void write_obstruction(JsonText& out, const Obstruction& obstruction) {
    ObjectWriter object(out, obstruction.extra);
    object.text("id", obstruction.id);
    object.word("kind", obstruction.kind);
    object.length("left_mm", obstruction.left);
    object.length("width_mm", obstruction.width);
    object.length("bottom_mm", obstruction.bottom);
    object.length("height_mm", obstruction.height);
    object.length("depth_mm", obstruction.depth);
    object.text("note", obstruction.note);
    object.end();
}

std::optional<double> kg_of(const std::optional<Mass>& mass) { return mass ? std::optional(mass->kg()) : std::nullopt; }

}  // namespace

void write_hardware(JsonText& out, const Hardware& hardware) {
    ObjectWriter object(out, hardware.extra);
    object.text("name", hardware.name);
    object.word("kind", hardware.kind);
    object.word("supply", hardware.supply);
    object.word("hang", hardware.hang);
    object.word("run", hardware.run);
    object.word("stage", hardware.stage);
    object.length("diameter_mm", hardware.diameter);
    object.length("length_mm", hardware.length);
    object.length("left_mm", hardware.left);
    object.length("projection_mm", hardware.projection);
    object.length("finial_mm", hardware.finial);
    object.whole("brackets", hardware.brackets);
    object.list("bracket_at_mm", hardware.bracket_at,
                [](JsonText& list, Length at) { list.item(json_number(at.mm())); });
    object.length("return_mm", hardware.return_depth);
    object.length("overlap_mm", hardware.overlap);
    object.number("mass_kg", kg_of(hardware.mass));
    object.number("rated_kg", kg_of(hardware.rated));
    object.number("bracket_rated_kg", kg_of(hardware.bracket_rated));
    object.number("fixing_rated_kg", kg_of(hardware.fixing_rated));
    object.end();
}

namespace {

void write_pelmet(JsonText& out, const PelmetAsked& pelmet) {
    ObjectWriter object(out, pelmet.extra);
    object.length("depth_mm", pelmet.depth);
    object.length("return_mm", pelmet.return_depth);
    object.end();
}

void write_tie_back(JsonText& out, const TieBackAsked& tie_back) {
    ObjectWriter object(out, tie_back.extra);
    object.word("kind", tie_back.kind);
    object.length("height_mm", tie_back.height);
    object.length("length_mm", tie_back.length);
    object.end();
}

void write_decided(JsonText& out, const Decided& decided) {
    ObjectWriter object(out, decided.extra);
    object.number("widths_each", decided.widths_each);
    object.number("repeats", decided.repeats);
    object.end();
}

void write_treatment(JsonText& out, const Treatment& treatment) {
    ObjectWriter object(out, treatment.extra);
    object.word("heading", treatment.heading);
    object.word("fit", treatment.fit);
    object.word("layout", treatment.layout);
    object.number("fullness", treatment.fullness);
    object.word("length", treatment.length);
    object.length("bottom_mm", treatment.bottom);
    object.word("top", treatment.top);
    object.word("drops", treatment.drops);
    object.text("fabric", treatment.fabric);
    object.text("lining", treatment.lining);
    object.text("interlining", treatment.interlining);
    object.text("second_lining", treatment.second_lining);
    object.word("lining_hung", treatment.lining_hung);
    object.length("tab_cut_mm", treatment.tab_cut);
    write_part(out, object, "pelmet", treatment.pelmet, write_pelmet);
    write_part(out, object, "tie_back", treatment.tie_back, write_tie_back);
    object.word("operation", treatment.operation);
    object.word("weights", treatment.weights);
    write_part(out, object, "decided", treatment.decided, write_decided);
    object.end();
}

/// The `hardware` and `treatment` of a layer, or of a window that has one.
void write_hanging(JsonText& out, ObjectWriter& object, const Layer& layer) {
    if (layer.hardware) {
        object.begin("hardware");
        write_hardware(out, *layer.hardware);
    } else {
        object.fall_back("hardware");
    }
    if (layer.treatment) {
        object.begin("treatment");
        write_treatment(out, *layer.treatment);
    } else {
        object.fall_back("treatment");
    }
}

void write_layer(JsonText& out, const Layer& layer) {
    ObjectWriter object(out, layer.extra);
    object.text("id", layer.id);
    write_hanging(out, object, layer);
    object.end();
}

void write_window(JsonText& out, const Window& window) {
    ObjectWriter object(out, window.extra);
    object.required_text("id", window.id);
    object.text("name", window.name);
    object.required_text("shape", window.shape.text());
    object.angle("bearing_deg", window.bearing);
    object.text("bearing_from", window.bearing_from);
    write_part(out, object, "outlook", window.outlook, write_outlook);
    object.list("readings", window.readings, as_item(write_reading), true);
    object.list("not_taken", window.not_taken, as_item(write_not_taken));
    object.list("obstructions", window.obstructions, as_item(write_obstruction));
    if (window.layered) {
        object.list("layers", window.layers, as_item(write_layer), true);
    } else {
        static const Layer nothing;
        write_hanging(out, object, window.layers.empty() ? nothing : window.layers.front());
    }
    object.list("photos", window.photos, as_item(write_photo));
    object.text("notes", window.notes);
    object.end();
}

void write_room(JsonText& out, const Room& room) {
    ObjectWriter object(out, room.extra);
    object.required_text("id", room.id);
    object.text("name", room.name);
    object.text("wall", room.wall);
    object.text("use", room.use);
    object.flag("young_children", room.young_children);
    object.list("heat", room.heat, write_text_item);
    write_part(out, object, "interior", room.interior, write_interior);
    object.list("photos", room.photos, as_item(write_photo));
    object.list("windows", room.windows, as_item(write_window), true);
    object.end();
}

void write_changed_twice(JsonText& out, const ChangedTwice& twice) {
    ObjectWriter object(out, twice.extra);
    object.required_text("at", twice.at);
    const bool as_it_stood = std::ranges::find(twice.extra, "values", &Extra::value_type::first) != twice.extra.end();
    if (as_it_stood) {
        object.fall_back("values");
    } else {
        object.list("values", twice.values, [](JsonText& list, const std::optional<std::string>& value) {
            list.begin_item();
            list.open('{');
            if (value) {
                list.member("value", *value);
            }
            list.close('}');
        });
    }
    object.flag("removed", twice.removed ? std::optional(true) : std::nullopt);
    object.flag("again", twice.again ? std::optional(true) : std::nullopt);
    object.end();
}

void write_format(ObjectWriter& object, const Extra& extra) {
    // A later minor version of the format is kept as it was read.
    if (std::ranges::find(extra, "format", &Extra::value_type::first) != extra.end()) {
        object.fall_back("format");
    } else {
        object.required_text("format", "truehang.survey/1");
    }
}

}  // namespace

std::string write_survey(const Survey& survey, bool pretty) {
    JsonText out(pretty);
    ObjectWriter object(out, survey.extra);
    write_format(object, survey.extra);
    object.required_text("id", survey.id);
    object.whole("revision", survey.revision);
    if (survey.parents) {
        object.list("parents", *survey.parents, write_text_item, true);
    }
    object.text("title", survey.title);
    write_part(out, object, "client", survey.client, write_client);
    write_part(out, object, "site", survey.site, write_site);
    object.text("measured_by", survey.measured_by);
    object.text("measured_at", survey.measured_at);
    object.text("time_zone", survey.time_zone);
    object.text("entry_unit", survey.entry_unit);
    write_part(out, object, "tape", survey.tape, write_tape);
    if (has_rules(survey.rules)) {
        object.begin("rules");
        write_rules(out, survey.rules);
    } else {
        object.fall_back("rules");
    }
    object.list("fabrics", survey.fabrics, as_item(write_fabric), true);
    object.list("rooms", survey.rooms, as_item(write_room), true);
    write_part(out, object, "signed_off", survey.signed_off, write_signed_off);
    object.list("changed_twice", survey.changed_twice, as_item(write_changed_twice));
    object.end();
    std::string text = out.take();
    if (pretty) {
        text += '\n';
    }
    return text;
}

}  // namespace truehang
