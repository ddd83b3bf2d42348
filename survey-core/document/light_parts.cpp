// SPDX-License-Identifier: Apache-2.0
#include "document/light_parts.h"

#include "document/limits.h"
#include "document/survey_parts.h"

#include <fmt/format.h>

namespace truehang {
namespace {

constexpr NumberRange bearing_range{0.0, 360.0, false, true};
constexpr NumberRange turned_range{-90.0, 90.0};
constexpr NumberRange above_level{0.0, 90.0};
constexpr NumberRange angle_u_range{0.0, 180.0};
constexpr NumberRange clock_range{0.0, 1'000'000.0};
constexpr NumberRange field_range{0.0, 1'000'000.0};
constexpr NumberRange pixels_range{0.0, 100'000.0};
constexpr std::size_t shadow_edges = 20;

BearingTaken read_bearing(ObjectReader& reader) {
    BearingTaken taken;
    reader.id("id", taken.id);
    reader.word("from", taken.from);
    reader.time("taken_at", taken.taken_at);
    reader.angle("magnetic_deg", taken.magnetic, bearing_range);
    reader.number("field_nt", taken.field_nt, field_range);
    reader.angle("bearing_deg", taken.bearing, bearing_range);
    reader.angle("street_deg", taken.street, bearing_range);
    reader.word("looks", taken.looks);
    reader.angle("u_deg", taken.u, angle_u_range);
    reader.length("depth_mm", taken.depth);
    reader.list("to_left_mm", shadow_edges, [&](const JsonValue& item, const std::string& where) {
        if (item.kind != JsonKind::number) {
            reader.faults().add(where, fmt::format("Here must stand a number, not {}.", name_of(item.kind)));
        } else if (!lies_within(item.number, placed_range)) {
            reader.faults().add(where, says_range(item.number, placed_range));
        } else {
            taken.to_left.push_back(Length::mm(item.number));
        }
    });
    reader.length("u_mm", taken.reading_u);
    reader.number("clock_s", taken.clock_s, clock_range);
    taken.extra = reader.rest();
    return taken;
}

SkylinePart read_skyline_part(ObjectReader& reader) {
    SkylinePart part;
    reader.id("id", part.id);
    reader.word("kind", part.kind);
    reader.angle("from_deg", part.from, turned_range);
    reader.angle("to_deg", part.to, turned_range);
    reader.angle("height_deg", part.height, above_level);
    part.extra = reader.rest();
    return part;
}

/// A pair of numbers, or a fault at its pointer.
void read_tap(ObjectReader& reader, const JsonValue& item, const std::string& where, Taps& taps) {
    const bool pair = item.kind == JsonKind::array && item.items.size() == 2 &&
                      item.items[0].kind == JsonKind::number && item.items[1].kind == JsonKind::number;
    if (!pair) {
        reader.faults().add(where, "A point must be a list of two numbers, fractions of the upright picture.");
    } else {
        taps.emplace_back(item.items[0].number, item.items[1].number);
    }
}

void read_corners(ObjectReader& reader, std::string_view key, TappedCorners& corners) {
    reader.list(key, 4, [&](const JsonValue& item, const std::string& where) {
        Taps& taps = corners.emplace_back();
        if (item.kind != JsonKind::array) {
            reader.faults().add(where, fmt::format("Here must stand a list, not {}.", name_of(item.kind)));
        } else if (item.items.size() > document_limits::taps) {
            reader.faults().add(where, fmt::format("At most {} taps of a corner are read.", document_limits::taps));
        } else {
            for (std::size_t tap = 0; tap < item.items.size(); ++tap) {
                read_tap(reader, item.items[tap], pointer_to(where, tap), taps);
            }
        }
    });
}

FlatSheet read_sheet(ObjectReader& reader) {
    FlatSheet sheet;
    reader.length("width_mm", sheet.width);
    reader.length("height_mm", sheet.height);
    read_corners(reader, "corners", sheet.corners);
    sheet.extra = reader.rest();
    return sheet;
}

void write_bearing(JsonText& out, const BearingTaken& taken) {
    ObjectWriter object(out, taken.extra);
    object.text("id", taken.id);
    object.word("from", taken.from);
    object.text("taken_at", taken.taken_at);
    object.angle("magnetic_deg", taken.magnetic);
    object.number("field_nt", taken.field_nt);
    object.angle("bearing_deg", taken.bearing);
    object.angle("street_deg", taken.street);
    object.word("looks", taken.looks);
    object.angle("u_deg", taken.u);
    object.length("depth_mm", taken.depth);
    object.list("to_left_mm", taken.to_left, [](JsonText& list, Length at) { list.item(json_number(at.mm())); });
    object.length("u_mm", taken.reading_u);
    object.number("clock_s", taken.clock_s);
    object.end();
}

void write_skyline_part(JsonText& out, const SkylinePart& part) {
    ObjectWriter object(out, part.extra);
    object.text("id", part.id);
    object.word("kind", part.kind);
    object.angle("from_deg", part.from);
    object.angle("to_deg", part.to);
    object.angle("height_deg", part.height);
    object.end();
}

void write_taps(JsonText& out, const Taps& taps) {
    out.begin_item();
    out.open('[');
    for (const auto& [x, y] : taps) {
        out.begin_item();
        out.open('[');
        out.item(json_number(x));
        out.item(json_number(y));
        out.close(']');
    }
    out.close(']');
}

void write_sheet(JsonText& out, const FlatSheet& sheet) {
    out.begin_item();
    ObjectWriter object(out, sheet.extra);
    object.length("width_mm", sheet.width);
    object.length("height_mm", sheet.height);
    object.list("corners", sheet.corners, write_taps);
    object.end();
}

}  // namespace

Outlook read_outlook(ObjectReader& reader) {
    Outlook outlook;
    reader.length("glass_width_mm", outlook.glass_width);
    reader.length("glass_height_mm", outlook.glass_height);
    reader.length("outer_depth_mm", outlook.outer_depth);
    Ids bearings;
    reader.objects("bearings", document_limits::bearings, [&](ObjectReader& item) {
        outlook.bearings.push_back(read_bearing(item));
        bearings.add(item, outlook.bearings.back().id);
    });
    Ids skyline;
    reader.objects("skyline", document_limits::skyline, [&](ObjectReader& item) {
        outlook.skyline.push_back(read_skyline_part(item));
        skyline.add(item, outlook.skyline.back().id);
    });
    outlook.extra = reader.rest();
    return outlook;
}

Interior read_interior(ObjectReader& reader) {
    Interior interior;
    reader.length("width_mm", interior.width);
    reader.length("depth_mm", interior.depth);
    reader.length("height_mm", interior.height);
    reader.word("surfaces", interior.surfaces);
    interior.extra = reader.rest();
    return interior;
}

PhotoPlane read_plane(ObjectReader& reader) {
    PhotoPlane plane;
    reader.whole("width_px", plane.width_px, pixels_range);
    reader.whole("height_px", plane.height_px, pixels_range);
    reader.objects("sheets", document_limits::sheets,
                   [&](ObjectReader& item) { plane.sheets.push_back(read_sheet(item)); });
    read_corners(reader, "opening", plane.opening);
    plane.extra = reader.rest();
    return plane;
}

void write_outlook(JsonText& out, const Outlook& outlook) {
    ObjectWriter object(out, outlook.extra);
    object.length("glass_width_mm", outlook.glass_width);
    object.length("glass_height_mm", outlook.glass_height);
    object.length("outer_depth_mm", outlook.outer_depth);
    object.list("bearings", outlook.bearings, [](JsonText& list, const BearingTaken& taken) {
        list.begin_item();
        write_bearing(list, taken);
    });
    object.list("skyline", outlook.skyline, [](JsonText& list, const SkylinePart& part) {
        list.begin_item();
        write_skyline_part(list, part);
    });
    object.end();
}

void write_interior(JsonText& out, const Interior& interior) {
    ObjectWriter object(out, interior.extra);
    object.length("width_mm", interior.width);
    object.length("depth_mm", interior.depth);
    object.length("height_mm", interior.height);
    object.word("surfaces", interior.surfaces);
    object.end();
}

void write_plane(JsonText& out, const PhotoPlane& plane) {
    ObjectWriter object(out, plane.extra);
    object.whole("width_px", plane.width_px == 0 ? std::nullopt : std::optional(plane.width_px));
    object.whole("height_px", plane.height_px == 0 ? std::nullopt : std::optional(plane.height_px));
    object.list("sheets", plane.sheets, write_sheet);
    object.list("opening", plane.opening, write_taps);
    object.end();
}

}  // namespace truehang
