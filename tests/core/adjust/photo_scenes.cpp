// SPDX-License-Identifier: Apache-2.0
#include "adjust/measured.h"

#include <nlohmann/json.hpp>

#include <iostream>
#include <string>

// photo_scenes: of each line of standard input, a window as JSON ({"photos": [a plane of the survey document],
// "tape": {station: mm}}), a line of JSON with what its photos say: "sizes" {station: [mm, u]} of all together, "check"
// and "suspects" of the tape, and of each photo its "lens" (shares at the picture's corner), "tap_u" (pixels),
// "wall_to_picture" (rows of the homography, mm to pixels from the centre) or its "trouble".

using namespace truehang;
using Json = nlohmann::json;

namespace {

TappedCorners corners_of(const Json& json) {
    TappedCorners corners;
    for (const Json& each : json) {
        Taps& taps = corners.emplace_back();
        for (const Json& tap : each) {
            taps.emplace_back(tap.at(0).get<double>(), tap.at(1).get<double>());
        }
    }
    return corners;
}

PhotoPlane plane_of(const Json& json) {
    PhotoPlane plane;
    plane.width_px = json.at("width_px").get<long long>();
    plane.height_px = json.at("height_px").get<long long>();
    for (const Json& sheet : json.at("sheets")) {
        plane.sheets.push_back({Length::mm(sheet.at("width_mm").get<double>()),
                                Length::mm(sheet.at("height_mm").get<double>()),
                                corners_of(sheet.at("corners")),
                                {}});
    }
    plane.opening = corners_of(json.at("opening"));
    return plane;
}

Window window_of(const Json& json) {
    Window window;
    window.shape = Word<Shape>(Shape::recess);
    for (const Json& plane : json.at("photos")) {
        window.photos.emplace_back().plane = plane_of(plane);
    }
    for (const auto& [station, mm] : json.at("tape").items()) {
        Reading reading;
        reading.id = reading.station = station;
        reading.value = Length::mm(mm.get<double>());
        window.readings.push_back(std::move(reading));
    }
    return window;
}

Json photo_json(const PhotoPlane& plane) {
    const auto shape = photo_shape(plane);
    if (!shape) {
        return {{"trouble", shape.error().text}};
    }
    return {{"lens", {shape->lens_2, shape->lens_4}},
            {"tap_u", shape->tap_u},
            {"chi2", shape->chi2},
            {"redundancy", shape->redundancy},
            {"wall_to_picture", shape->homography}};
}

Json said_of(const Window& window) {
    Json said{{"photos", Json::array()}, {"sizes", Json::object()}, {"check", nullptr}, {"suspects", Json::array()}};
    for (const Photo& photo : window.photos) {
        said["photos"].push_back(photo_json(*photo.plane));
    }
    const MeasuredWindow measured = measure(window, Shape::recess, Hang::level, TapeRule{}, LengthUnit::mm);
    if (measured.photos) {
        for (const PhotoSize& size : measured.photos->sizes()) {
            said["sizes"][size.station] = {size.value.mm(), size.u.mm()};
        }
    }
    if (measured.photo_check) {
        const Network& check = *measured.photo_check;
        said["check"] = {{"redundancy", check.adjustment.redundancy},
                         {"chi2", check.adjustment.chi2},
                         {"limit", check.limit},
                         {"adds_up", check.adds_up()}};
    }
    for (const Flag& flag : measured.flags) {
        if (flag.code == "does-not-add-up") {
            for (const Suspect& suspect : flag.suspects) {
                said["suspects"].push_back(suspect.station);
            }
        }
    }
    return said;
}

}  // namespace

int main() {
    std::string line;
    while (std::getline(std::cin, line)) {
        std::cout << said_of(window_of(Json::parse(line))).dump() << '\n';
    }
    return 0;
}
