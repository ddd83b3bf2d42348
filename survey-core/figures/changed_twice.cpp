// SPDX-License-Identifier: Apache-2.0
#include "figures/changed_twice.h"

#include "units/pointer.h"
#include "units/saying.h"

#include <algorithm>
#include <array>
#include <optional>
#include <utility>

namespace truehang {
namespace {

struct Thing {
    std::string_view key;
    std::string_view says;
};

constexpr std::array things{
    Thing{"notes", to_say("the notes")},
    Thing{"name", to_say("the name")},
    Thing{"shape", to_say("the shape")},
    Thing{"room", to_say("which room it is in")},
    Thing{"bearing_deg+bearing_from", to_say("which way it faces")},
    Thing{"readings", to_say("the order of the readings")},
    Thing{"obstructions", to_say("the order of what is in the way")},
    Thing{"photos", to_say("the order of the photos")},
    Thing{"layers", to_say("the order of the layers")},
    Thing{"windows", to_say("the order of the windows")},
    Thing{"rooms", to_say("the order of the rooms")},
    Thing{"fabrics", to_say("the order of the cloths")},
    Thing{"reason", to_say("why a reading wasn’t taken")},
    Thing{"caption", to_say("the words under a photo")},
    Thing{"left_mm+width_mm+bottom_mm+height_mm+depth_mm", to_say("where something in the way is")},
    Thing{"note", to_say("the note on something in the way")},
    Thing{"hardware", to_say("what it hangs from")},
    Thing{"treatment", to_say("what hangs there")},
    Thing{"heading", to_say("the heading")},
    Thing{"fullness", to_say("the fullness")},
    Thing{"layout", to_say("whether it is a pair")},
    Thing{"length+bottom_mm", to_say("where the hem hangs")},
    Thing{"fabric", to_say("the face cloth")},
    Thing{"lining", to_say("the lining")},
    Thing{"interlining", to_say("the interlining")},
    Thing{"second_lining", to_say("the second lining")},
    Thing{"pelmet", to_say("the pelmet")},
    Thing{"tie_back", to_say("the tie-back")},
    Thing{"length_mm+left_mm", to_say("the length of what it hangs from")},
    Thing{"diameter_mm", to_say("the diameter")},
    Thing{"projection_mm", to_say("the projection")},
    Thing{"brackets+bracket_at_mm", to_say("the brackets")},
    Thing{"title", to_say("the title")},
    Thing{"phone", to_say("the client’s telephone number")},
    Thing{"email", to_say("the client’s e-mail address")},
    Thing{"address", to_say("the address")},
    Thing{"latitude+longitude+accuracy_m+elevation_m", to_say("the position")},
    Thing{"tape", to_say("the tape")},
    Thing{"rules", to_say("the house rules")},
    Thing{"signed_off", to_say("the sign-off")},
    Thing{"width_mm+selvedge_mm", to_say("the width")},
    Thing{"repeat_mm+match+repeat_across_mm", to_say("the repeat")},
    Thing{"price_per_m+currency", to_say("the price")},
    Thing{"colour", to_say("the colour")},
};

std::string name_of_room(const Survey& survey, const std::string& id) {
    const auto room = std::ranges::find(survey.rooms, id, &Room::id);
    return room != survey.rooms.end() && !room->name.empty() ? room->name : id;
}

std::string name_of_fabric(const Survey& survey, const std::string& id) {
    const auto fabric = std::ranges::find(survey.fabrics, id, &Fabric::id);
    return fabric != survey.fabrics.end() && !fabric->name.empty() ? fabric->name : id;
}

/// What the key alone is called.
std::string key_says(const ChangedPlace& place) {
    if (place.key == "name" && place.window.empty() && place.room.empty() && place.fabric.empty()) {
        return say("the client’s name");
    }
    const auto thing = std::ranges::find(things, place.key, &Thing::key);
    return thing != things.end() ? worded(thing->says) : place.key;
}

/// What an item that one took out is called.
std::string item_says(const Survey& survey, const ChangedPlace& place) {
    if (!place.obstruction.empty()) {
        return say("something in the way");
    }
    if (!place.layer.empty()) {
        return say("a layer");
    }
    if (!place.window.empty()) {
        return say("this window");
    }
    return place.room.empty() ? say("the cloth {}", name_of_fabric(survey, place.fabric))
                              : say("the room {}", name_of_room(survey, place.room));
}

Flag flag_of(const Survey& survey, const ChangedTwice& twice) {
    const ChangedPlace place = place_of(twice);
    return {std::string(changed_twice_code),
            Severity::decide,
            {},
            changed_twice_says(survey, twice),
            place.obstruction,
            place.layer.starts_with('#') ? "" : place.layer,
            {}};
}

}  // namespace

ChangedPlace place_of(const ChangedTwice& twice) {
    ChangedPlace place;
    const auto steps = pointer_steps(twice.at);
    std::size_t item = 0;  // the steps that name the innermost item
    for (std::size_t i = 0; i + 1 < steps.size(); i += 2) {
        for (const auto& [list, id] :
             {std::pair("windows", &place.window), std::pair("rooms", &place.room), std::pair("fabrics", &place.fabric),
              std::pair("layers", &place.layer), std::pair("obstructions", &place.obstruction)}) {
            if (steps[i] == list) {
                *id = steps[i + 1];
                item = i + 2;
            }
        }
    }
    place.key = item < steps.size() ? steps.back() : "";
    // A reading and a photo are told by their list.
    if (steps.size() > 1 && (steps[steps.size() - 2] == "readings" || steps[steps.size() - 2] == "photos")) {
        place.key = steps[steps.size() - 2] == "readings" ? "reading" : "photo";
    }
    return place;
}

std::string changed_thing(const Survey& survey, const ChangedTwice& twice) {
    const ChangedPlace place = place_of(twice);
    if (place.key == "reading") {
        return say("a reading");
    }
    if (place.key == "photo") {
        return say("a photo");
    }
    if (place.key.empty()) {
        return item_says(survey, place);
    }
    if (!place.fabric.empty()) {
        return say("{} of the cloth {}", key_says(place), name_of_fabric(survey, place.fabric));
    }
    if (!place.room.empty()) {
        return say("{} of the room {}", key_says(place), name_of_room(survey, place.room));
    }
    return key_says(place);
}

std::string changed_twice_says(const Survey& survey, const ChangedTwice& twice) {
    const std::string thing = changed_thing(survey, twice);
    return twice.values.empty()
               ? say("Two people worked on this: one took out {} while another changed it. It was kept. Say whether it "
                     "stays.",
                     thing)
               : say("Two people changed {} in different ways. Both are kept. Say which one counts.", thing);
}

std::vector<Flag> changed_twice_flags(const Survey& survey, const Window& window) {
    std::vector<Flag> flags;
    for (const ChangedTwice& twice : survey.changed_twice) {
        if (place_of(twice).window == window.id) {
            flags.push_back(flag_of(survey, twice));
        }
    }
    return flags;
}

std::vector<Flag> changed_twice_flags(const Survey& survey) {
    std::vector<Flag> flags;
    for (const ChangedTwice& twice : survey.changed_twice) {
        if (place_of(twice).window.empty()) {
            flags.push_back(flag_of(survey, twice));
        }
    }
    return flags;
}

}  // namespace truehang
