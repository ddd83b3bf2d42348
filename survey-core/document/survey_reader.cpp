// SPDX-License-Identifier: Apache-2.0
#include "document/agreement_parts.h"
#include "document/light_parts.h"
#include "document/limits.h"
#include "document/survey_parts.h"

#include <fmt/format.h>

#include <algorithm>

namespace truehang {
namespace {

constexpr std::string_view format_name = "truehang.survey/1";

/// Reads rooms and windows, knowing what the whole survey holds so far.
class RoomsReader {
public:
    explicit RoomsReader(const FabricNames& fabrics) : fabrics_(fabrics) {}

    Room read_room(ObjectReader& reader) {
        Room room;
        reader.id("id", room.id, Presence::required);
        rooms_.add(reader, room.id);
        reader.text("name", room.name);
        reader.text("wall", room.wall);
        reader.text("use", room.use);
        reader.flag("young_children", room.young_children);
        reader.list("heat", document_limits::heat, [&](const JsonValue& item, const std::string& where) {
            if (item.kind != JsonKind::string) {
                reader.faults().add(where, fmt::format("Here must stand a text, not {}.", name_of(item.kind)));
            } else {
                room.heat.push_back(item.text);
            }
        });
        reader.object("interior", [&](ObjectReader& item) { room.interior = read_interior(item); });
        reader.objects("photos", document_limits::photos,
                       [&](ObjectReader& photo) { room.photos.push_back(read_photo(photo)); });
        reader.objects("windows", document_limits::windows,
                       [&](ObjectReader& window) { room.windows.push_back(read_window(window)); });
        room.extra = reader.rest();
        return room;
    }

private:
    Window read_window(ObjectReader& reader) {
        Window window;
        if (++windows_read_ == document_limits::windows + 1) {
            reader.faults().add("/rooms", fmt::format("At most {} windows are read.", document_limits::windows));
        }
        reader.id("id", window.id, Presence::required);
        windows_.add(reader, window.id);
        reader.text("name", window.name);
        std::string shape;
        reader.text("shape", shape, Presence::required);
        window.shape = Word<Shape>(shape);
        reader.angle("bearing_deg", window.bearing, {0.0, 360.0, false, true});
        reader.text("bearing_from", window.bearing_from);
        reader.object("outlook", [&](ObjectReader& item) { window.outlook = read_outlook(item); });
        read_measured(reader, window);
        reader.objects("photos", document_limits::photos,
                       [&](ObjectReader& photo) { window.photos.push_back(read_photo(photo)); });
        reader.text("notes", window.notes);
        read_hangings(reader, window);
        window.extra = reader.rest();
        return window;
    }

    static void read_measured(ObjectReader& reader, Window& window) {
        const Shape shape = window.shape.known().value_or(Shape::recess);
        Ids readings;
        const auto read_one = [&](ObjectReader& item) {
            window.readings.push_back(read_reading(item, shape));
            readings.add(item, window.readings.back().id);
        };
        reader.objects("readings", document_limits::readings, read_one, Presence::required);
        reader.objects("not_taken", document_limits::readings, [&](ObjectReader& item) {
            NotTaken& not_taken = window.not_taken.emplace_back();
            item.text("station", not_taken.station);
            item.text("reason", not_taken.reason);
            not_taken.extra = item.rest();
        });
        Ids obstructions;
        reader.objects("obstructions", document_limits::obstructions, [&](ObjectReader& item) {
            window.obstructions.push_back(read_obstruction(item));
            obstructions.add(item, window.obstructions.back().id);
        });
    }

    /// `hardware` and `treatment` of the object into the layer; true where there is one of them.
    bool read_layer(ObjectReader& reader, Layer& layer) {
        const bool hardware =
            reader.nullable_object("hardware", [&](ObjectReader& item) { layer.hardware = read_hardware(item); });
        const bool treatment = reader.nullable_object(
            "treatment", [&](ObjectReader& item) { layer.treatment = read_treatment(item, fabrics_); });
        return hardware || treatment;
    }

    void read_hangings(ObjectReader& reader, Window& window) {
        Layer single;
        const bool hangs = read_layer(reader, single);
        window.layered = reader.has("layers");
        Ids layers;
        reader.objects("layers", document_limits::layers, [&](ObjectReader& item) {
            Layer& layer = window.layers.emplace_back();
            item.id("id", layer.id);
            layers.add(item, layer.id);
            read_layer(item, layer);
            layer.extra = item.rest();
        });
        if (hangs && window.layered) {
            reader.fault("layers", "A window has either layers, or a hardware and a treatment of its own.");
        } else if (hangs) {
            window.layers.push_back(std::move(single));
        }
    }

    const FabricNames& fabrics_;
    Ids rooms_;
    Ids windows_;
    std::size_t windows_read_ = 0;
};

void read_format(ObjectReader& reader) {
    std::string format;
    reader.text("format", format, Presence::required);
    const JsonValue* member = reader.value().find("format");
    if (member == nullptr || member->kind != JsonKind::string) {
        return;
    }
    if (!is_format(format, format_name)) {
        reader.fault("format", fmt::format("This program reads {}, not {}.", format_name, json_string(format)));
    } else if (format != format_name) {
        reader.keep("format");
    }
}

Client read_client(ObjectReader& reader) {
    Client client;
    reader.text("name", client.name);
    reader.text("phone", client.phone);
    reader.text("email", client.email);
    client.extra = reader.rest();
    return client;
}

Site read_site(ObjectReader& reader) {
    Site site;
    reader.text("address", site.address);
    reader.number("latitude", site.latitude, {-90.0, 90.0});
    reader.number("longitude", site.longitude, {-180.0, 180.0});
    reader.number("accuracy_m", site.accuracy_m, {0.0, any_number.high});
    reader.number("elevation_m", site.elevation_m, any_number);
    site.extra = reader.rest();
    return site;
}

Tape read_tape(ObjectReader& reader) {
    Tape tape;
    reader.word("class", tape.accuracy);
    reader.length("length_mm", tape.length);
    reader.length("graduation_mm", tape.graduation);
    reader.length("case_mm", tape.case_length);
    tape.extra = reader.rest();
    return tape;
}

FabricNames read_fabrics(ObjectReader& reader, Survey& survey) {
    FabricNames names;
    const JsonValue* list = reader.value().find("fabrics");
    reader.objects(
        "fabrics", document_limits::fabrics,
        [&](ObjectReader& item) {
            Fabric fabric = read_fabric(item);
            names.complete = names.complete && !fabric.id.empty();
            names.ids.add(item, fabric.id);
            survey.fabrics.push_back(std::move(fabric));
        },
        Presence::required);
    const bool all_read =
        list != nullptr && list->kind == JsonKind::array && list->items.size() == survey.fabrics.size();
    names.complete = names.complete && all_read;
    return names;
}

void read_parents(ObjectReader& reader, Survey& survey) {
    if (reader.has("parents")) {
        survey.parents.emplace();
    }
    reader.list("parents", document_limits::parents, [&](const JsonValue& item, const std::string& where) {
        const bool digest = item.kind == JsonKind::string && item.text.size() == 64 &&
                            item.text.find_first_not_of("0123456789abcdef") == std::string::npos;
        if (!digest) {
            reader.faults().add(where, "Here must stand a SHA-256 as 64 lower-case hexadecimal digits.");
        } else {
            survey.parents->push_back(item.text);
        }
    });
}

ChangedTwice read_changed_twice(ObjectReader& reader) {
    ChangedTwice twice;
    reader.id("at", twice.at, Presence::required);
    reader.objects("values", document_limits::side_by_side, [&](ObjectReader& item) {
        const JsonValue* value = item.take("value");
        twice.values.push_back(value != nullptr ? std::optional(json_text(*value)) : std::nullopt);
        if (!item.rest().empty()) {
            reader.keep("values");
        }
    });
    reader.flag("removed", twice.removed);
    reader.flag("again", twice.again);
    twice.extra = reader.rest();
    return twice;
}

Survey read_whole(ObjectReader& reader) {
    Survey survey;
    read_format(reader);
    reader.id("id", survey.id, Presence::required);
    reader.whole("revision", survey.revision, count_range);
    read_parents(reader, survey);
    reader.text("title", survey.title);
    reader.object("client", [&](ObjectReader& item) { survey.client = read_client(item); });
    reader.object("site", [&](ObjectReader& item) { survey.site = read_site(item); });
    reader.text("measured_by", survey.measured_by);
    reader.time("measured_at", survey.measured_at);
    reader.text("time_zone", survey.time_zone);
    reader.text("entry_unit", survey.entry_unit);
    reader.object("tape", [&](ObjectReader& item) { survey.tape = read_tape(item); });
    reader.object("rules", [&](ObjectReader& item) {
        survey.rules = read_rules(item);
        if (item.value().members.empty()) {
            reader.keep("rules");
        }
    });
    const FabricNames fabrics = read_fabrics(reader, survey);
    RoomsReader rooms(fabrics);
    reader.objects(
        "rooms", document_limits::rooms, [&](ObjectReader& item) { survey.rooms.push_back(rooms.read_room(item)); },
        Presence::required);
    reader.object("signed_off", [&](ObjectReader& item) { survey.signed_off = read_signed_off(item); });
    reader.objects("changed_twice", document_limits::changed_twice,
                   [&](ObjectReader& item) { survey.changed_twice.push_back(read_changed_twice(item)); });
    survey.extra = reader.rest();
    std::erase_if(survey.extra, [](const auto& member) { return member.first == "parents"; });
    return survey;
}

}  // namespace

Result<Survey, Faults> read_survey(std::string_view bytes) {
    Survey survey;
    Faults faults = read_whole_document(bytes, "A survey", [&](ObjectReader& reader) { survey = read_whole(reader); });
    if (!faults.empty()) {
        return faults;
    }
    return survey;
}

}  // namespace truehang
