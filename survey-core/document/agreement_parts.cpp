// SPDX-License-Identifier: Apache-2.0
#include "document/agreement_parts.h"

#include "document/document.h"
#include "document/json_reader.h"
#include "document/limits.h"

#include <fmt/format.h>

namespace truehang {

namespace {

constexpr NumberRange aspect_range{0.1, 20.0};

/// A point within the signature’s box.
std::optional<std::pair<double, double>> point_within(const JsonValue& value) {
    const auto is_fraction = [](const JsonValue& item) {
        return item.kind == JsonKind::number && item.number >= 0.0 && item.number <= 1.0;
    };
    if (value.kind != JsonKind::array || value.items.size() != 2 || !is_fraction(value.items[0]) ||
        !is_fraction(value.items[1])) {
        return std::nullopt;
    }
    return std::pair(value.items[0].number, value.items[1].number);
}

/// Reads a signature’s strokes, of at most so many points in all.
class StrokesReader {
public:
    StrokesReader(ObjectReader& reader, Signature& signature) : reader_(reader), signature_(signature) {}

    void read(const JsonValue& stroke, const std::string& where) {
        if (stroke.kind != JsonKind::array) {
            reader_.faults().add(where, fmt::format("Here must stand a list of points, not {}.", name_of(stroke.kind)));
            return;
        }
        auto& points = signature_.strokes.emplace_back();
        for (std::size_t i = 0; i < stroke.items.size() && count_ <= document_limits::signature_points; ++i) {
            if (const auto point = point_within(stroke.items[i])) {
                points.push_back(*point);
            } else {
                reader_.faults().add(pointer_to(where, i),
                                     "A point must be a list of two numbers from 0 to 1, fractions of its box.");
            }
            if (++count_ > document_limits::signature_points) {
                reader_.faults().add(where, fmt::format("At most {} points of a signature are read.",
                                                        document_limits::signature_points));
            }
        }
    }

private:
    ObjectReader& reader_;
    Signature& signature_;
    std::size_t count_ = 0;
};

Signature read_signature(ObjectReader& reader) {
    Signature signature;
    reader.number("aspect", signature.aspect, aspect_range);
    StrokesReader strokes(reader, signature);
    reader.list(
        "strokes", document_limits::signature_strokes,
        [&](const JsonValue& stroke, const std::string& where) { strokes.read(stroke, where); }, Presence::required);
    signature.extra = reader.rest();
    return signature;
}

AgreedCloth read_cloth(ObjectReader& reader) {
    AgreedCloth cloth;
    reader.id("fabric", cloth.fabric, Presence::required);
    reader.text("name", cloth.name);
    reader.length("length_mm", cloth.length, {0.0, 1e9});
    reader.number("cost", cloth.cost, {0.0, any_number.high});
    reader.text("currency", cloth.currency);
    cloth.extra = reader.rest();
    return cloth;
}

AgreedLayer read_layer(ObjectReader& reader) {
    AgreedLayer layer;
    reader.id("window", layer.window, Presence::required);
    reader.text("layer", layer.layer);
    reader.text("title", layer.title);
    reader.text("says", layer.says);
    reader.word("heading", layer.heading);
    reader.whole("curtains", layer.curtains, {0.0, 1000.0});
    reader.length("width_mm", layer.width);
    reader.length("drop_mm", layer.drop);
    reader.objects("cloths", document_limits::fabrics,
                   [&](ObjectReader& item) { layer.cloths.push_back(read_cloth(item)); });
    layer.extra = reader.rest();
    return layer;
}

Agreed read_agreed(ObjectReader& reader) {
    Agreed agreed;
    reader.text("rules", agreed.rules);
    reader.whole("revision", agreed.revision, count_range);
    reader.objects("layers", document_limits::windows,
                   [&](ObjectReader& item) { agreed.layers.push_back(read_layer(item)); });
    reader.text("digest", agreed.digest);
    agreed.extra = reader.rest();
    return agreed;
}

void write_signature(JsonText& out, const Signature& signature) {
    ObjectWriter object(out, signature.extra);
    object.number("aspect", signature.aspect);
    object.list(
        "strokes", signature.strokes,
        [](JsonText& list, const auto& stroke) {
            list.begin_item();
            list.open('[');
            for (const auto& [x, y] : stroke) {
                list.item(fmt::format("[{},{}]", json_number(x), json_number(y)));
            }
            list.close(']');
        },
        true);
    object.end();
}

void write_cloth(JsonText& out, const AgreedCloth& cloth) {
    ObjectWriter object(out, cloth.extra);
    object.required_text("fabric", cloth.fabric);
    object.text("name", cloth.name);
    object.length("length_mm", cloth.length);
    object.number("cost", cloth.cost);
    object.text("currency", cloth.currency);
    object.end();
}

void write_layer(JsonText& out, const AgreedLayer& layer) {
    ObjectWriter object(out, layer.extra);
    object.required_text("window", layer.window);
    object.text("layer", layer.layer);
    object.text("title", layer.title);
    object.text("says", layer.says);
    object.word("heading", layer.heading);
    object.number("curtains", static_cast<double>(layer.curtains));
    object.length("width_mm", layer.width);
    object.length("drop_mm", layer.drop);
    object.list("cloths", layer.cloths, [](JsonText& list, const AgreedCloth& cloth) {
        list.begin_item();
        write_cloth(list, cloth);
    });
    object.end();
}

void write_agreed(JsonText& out, const Agreed& agreed) {
    ObjectWriter object(out, agreed.extra);
    object.text("rules", agreed.rules);
    object.whole("revision", agreed.revision);
    object.list("layers", agreed.layers, [](JsonText& list, const AgreedLayer& layer) {
        list.begin_item();
        write_layer(list, layer);
    });
    object.text("digest", agreed.digest);
    object.end();
}

}  // namespace

SignedOff read_signed_off(ObjectReader& reader) {
    SignedOff signed_off;
    reader.text("by", signed_off.by);
    reader.time("at", signed_off.at);
    reader.object("signature", [&](ObjectReader& item) { signed_off.signature = read_signature(item); });
    reader.object("agreed", [&](ObjectReader& item) { signed_off.agreed = read_agreed(item); });
    signed_off.extra = reader.rest();
    return signed_off;
}

void write_signed_off(JsonText& out, const SignedOff& signed_off) {
    ObjectWriter object(out, signed_off.extra);
    object.text("by", signed_off.by);
    object.text("at", signed_off.at);
    if (signed_off.signature) {
        object.begin("signature");
        write_signature(out, *signed_off.signature);
    }
    if (signed_off.agreed) {
        object.begin("agreed");
        write_agreed(out, *signed_off.agreed);
    }
    object.end();
}

std::string sealed_text(const Agreed& agreed) {
    Agreed unsealed = agreed;
    unsealed.digest.clear();
    std::erase_if(unsealed.extra, [](const auto& entry) { return entry.first == "digest"; });
    JsonText out(false);
    write_agreed(out, unsealed);
    return out.take();
}

}  // namespace truehang
