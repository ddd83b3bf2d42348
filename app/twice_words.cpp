// SPDX-License-Identifier: Apache-2.0
#include "twice_words.h"

#include "adding_up.h"
#include "document/json_reader.h"
#include "figures/changed_twice.h"
#include "merge/merge.h"
#include "reading_history.h"
#include "sheet/words.h"
#include "units/pointer.h"
#include "writing.h"

#include <QCoreApplication>
#include <QStringList>
#include <algorithm>
#include <array>

namespace truehang {

namespace {

QString twice_text(const char* source) { return QCoreApplication::translate("twice", source); }

struct KeyWord {
    std::string_view key;
    const char* says;
};

/// The parts of what is changed together.
constexpr std::array key_words{
    KeyWord{"left_mm", QT_TRANSLATE_NOOP("twice", "from the left")},
    KeyWord{"width_mm", QT_TRANSLATE_NOOP("twice", "width")},
    KeyWord{"bottom_mm", QT_TRANSLATE_NOOP("twice", "bottom edge")},
    KeyWord{"height_mm", QT_TRANSLATE_NOOP("twice", "height")},
    KeyWord{"depth_mm", QT_TRANSLATE_NOOP("twice", "depth")},
    KeyWord{"length_mm", QT_TRANSLATE_NOOP("twice", "length")},
    KeyWord{"selvedge_mm", QT_TRANSLATE_NOOP("twice", "selvedge")},
    KeyWord{"repeat_mm", QT_TRANSLATE_NOOP("twice", "repeat")},
    KeyWord{"repeat_across_mm", QT_TRANSLATE_NOOP("twice", "repeat across")},
    KeyWord{"match", QT_TRANSLATE_NOOP("twice", "match")},
    KeyWord{"price_per_m", QT_TRANSLATE_NOOP("twice", "price a metre")},
    KeyWord{"currency", QT_TRANSLATE_NOOP("twice", "currency")},
    KeyWord{"latitude", QT_TRANSLATE_NOOP("twice", "latitude")},
    KeyWord{"longitude", QT_TRANSLATE_NOOP("twice", "longitude")},
    KeyWord{"accuracy_m", QT_TRANSLATE_NOOP("twice", "within, in m")},
    KeyWord{"elevation_m", QT_TRANSLATE_NOOP("twice", "above the sea, in m")},
    KeyWord{"bearing_deg", QT_TRANSLATE_NOOP("twice", "degrees from north")},
    KeyWord{"by", QT_TRANSLATE_NOOP("twice", "by")},
    KeyWord{"at", QT_TRANSLATE_NOOP("twice", "on")},
    KeyWord{"caption", QT_TRANSLATE_NOOP("twice", "words")},
    KeyWord{"name", QT_TRANSLATE_NOOP("twice", "name")},
    KeyWord{"version", QT_TRANSLATE_NOOP("twice", "edition")},
    KeyWord{"date", QT_TRANSLATE_NOOP("twice", "date")},
};

QString key_says(std::string_view key) {
    const auto found = std::ranges::find(key_words, key, &KeyWord::key);
    return found != key_words.end() ? twice_text(found->says) : shown(key);
}

bool is_known(std::string_view key) { return std::ranges::find(key_words, key, &KeyWord::key) != key_words.end(); }

QString value_says(const Survey& survey, std::string_view key, const JsonValue& value);

/// The members that have a word of their own; all, where none has.
QString members_say(const Survey& survey, const JsonValue& object) {
    const bool some = std::ranges::any_of(object.members, [](const auto& one) { return is_known(one.first); });
    QStringList parts;
    for (const auto& [key, member] : object.members) {
        if (!some || is_known(key)) {
            parts.append(QStringLiteral("%1 %2").arg(key_says(key), value_says(survey, key, member)));
        }
    }
    return parts.join(QStringLiteral(", "));
}

QString value_says(const Survey& survey, std::string_view key, const JsonValue& value) {
    LengthStyle style = length_style(survey);
    style.with_unit = true;
    switch (value.kind) {
        case JsonKind::string:
            return key == "at" ? shown(day_text(value.text)) : shown(value.text);
        case JsonKind::number:
            return key.ends_with("_mm") ? shown(write_length(Length::mm(value.number), style))
                                        : shown(std::optional(value.number));
        case JsonKind::boolean:
            return value.truth ? twice_text(QT_TRANSLATE_NOOP("twice", "yes"))
                               : twice_text(QT_TRANSLATE_NOOP("twice", "no"));
        case JsonKind::object:
            return members_say(survey, value);
        default:
            return shown(json_text(value));
    }
}

QString name_of(const Survey& survey, std::string_view list, const std::string& id) {
    for (const Room& room : survey.rooms) {
        if (list == "rooms" && room.id == id) {
            return shown(room.name.empty() ? id : room.name);
        }
        for (const Window& window : room.windows) {
            if (list == "windows" && window.id == id) {
                return shown(window_title(room, window));
            }
        }
    }
    const auto fabric = std::ranges::find(survey.fabrics, id, &Fabric::id);
    return list == "fabrics" && fabric != survey.fabrics.end() ? shown(short_name(*fabric)) : QString();
}

constexpr std::array<std::string_view, 7> lists{"rooms",        "windows", "fabrics", "layers",
                                                "obstructions", "photos",  "readings"};

/// Which come first.
QString order_says(const Survey& survey, std::string_view list, const std::optional<std::string>& value) {
    const auto read = value ? read_json(*value) : Result<JsonTree, Faults>(Faults{});
    QStringList names;
    for (const JsonValue& item : read ? read->root.items : std::vector<JsonValue>{}) {
        if (const QString name = name_of(survey, list, item.text); !name.isEmpty()) {
            names.append(name);
        }
    }
    return !value            ? twice_text(QT_TRANSLATE_NOOP("twice", "as they stood before"))
           : names.isEmpty() ? twice_text(QT_TRANSLATE_NOOP("twice", "in another order"))
                             : twice_text(QT_TRANSLATE_NOOP("twice", "first %1")).arg(names.join(QStringLiteral(", ")));
}

const Window* window_of(const Survey& survey, const std::string& id) {
    for (const Room& room : survey.rooms) {
        const auto window = std::ranges::find(room.windows, id, &Window::id);
        if (window != room.windows.end()) {
            return &*window;
        }
    }
    return nullptr;
}

/// What hangs there by each choice, in words; empty where it isn't about a layer, or the words don't tell them apart.
QString layer_says(const Survey& survey, const ChangedTwice& entry, std::size_t choice) {
    const ChangedPlace place = place_of(entry);
    if (place.layer.empty()) {
        return {};
    }
    QStringList texts;
    for (std::size_t i = 0; i < entry.values.size(); ++i) {
        const auto settled = settle(survey, {entry.at, i});
        const Window* window = settled ? window_of(*settled, place.window) : nullptr;
        QString text;
        for (std::size_t at = 0; window != nullptr && at < window->layers.size(); ++at) {
            const Layer& layer = window->layers[at];
            if (layer.id == place.layer || (layer.id.empty() && place.layer == "#1")) {
                text = shown(treatment_text(layer, {entry_unit(survey), decimal_mark()}));
            }
        }
        if (text.isEmpty() || texts.contains(text)) {
            return {};
        }
        texts.append(text);
    }
    return texts.value(static_cast<qsizetype>(choice));
}

QString reading_says(const Survey& survey, const JsonValue& value) {
    Reading reading;
    const auto text = [&](const char* key) {
        const JsonValue* member = value.find(key);
        return member != nullptr && member->kind == JsonKind::string ? member->text : std::string();
    };
    reading.typed = text("typed");
    if (const JsonValue* mm = value.find("value_mm"); mm != nullptr) {
        reading.value = Length::mm(mm->number);
    }
    if (const JsonValue* angle = value.find("value_deg"); angle != nullptr) {
        reading.angle = Angle::degrees(angle->number);
    }
    return reading_text(reading, length_style(survey));
}

}  // namespace

QString choice_says(const Survey& survey, const ChangedTwice& entry, std::size_t choice) {
    if (choice >= entry.values.size()) {
        const bool takes_out = choice + 1 == ways_to_settle(entry);
        return takes_out ? twice_text(QT_TRANSLATE_NOOP("twice", "Take it out"))
                         : twice_text(QT_TRANSLATE_NOOP("twice", "Keep it"));
    }
    const auto& value = entry.values[choice];
    const auto steps = pointer_steps(entry.at);
    const std::string key = steps.empty() ? std::string() : steps.back();
    // The order of a list: the list itself, not an item of it.
    if (std::ranges::find(lists, key) != lists.end() && steps.size() % 2 == 1) {
        return order_says(survey, key, value);
    }
    if (const QString layer = layer_says(survey, entry, choice); !layer.isEmpty()) {
        return layer;
    }
    const auto read = value ? read_json(*value) : Result<JsonTree, Faults>(Faults{});
    if (!read) {
        return twice_text(QT_TRANSLATE_NOOP("twice", "nothing there"));
    }
    if (key == "room") {
        return name_of(survey, "rooms", read->root.text);
    }
    return place_of(entry).key == "reading" ? reading_says(survey, read->root) : value_says(survey, key, read->root);
}

}  // namespace truehang
