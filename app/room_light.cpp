// SPDX-License-Identifier: Apache-2.0
#include "room_light.h"

#include "devices.h"
#include "settings.h"

namespace truehang {

namespace {

constexpr double dim_below = 20.0;     // lux
constexpr double bright_above = 60.0;  // lux

}  // namespace

RoomLight::RoomLight(const Settings& settings, LightDevice& device, QObject* parent)
    : QObject(parent), settings_(settings), device_(device) {
    connect(&settings_, &Settings::changed, this, &RoomLight::follow);
    follow();
}

RoomLight::~RoomLight() { device_.stop(); }

bool RoomLight::offered() const { return device_.isThere(); }

void RoomLight::follow() {
    const bool wanted = settings_.look() == QStringLiteral("room");
    if (wanted == watching_) {
        return;
    }
    watching_ = wanted;
    if (wanted) {
        device_.watch([this](double lux) { take(lux); });
    } else {
        device_.stop();
    }
}

void RoomLight::take(double lux) {
    const bool dim = dim_ ? lux <= bright_above : lux < dim_below;
    if (dim != dim_) {
        dim_ = dim;
        emit changed();
    }
}

}  // namespace truehang
