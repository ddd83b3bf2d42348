// SPDX-License-Identifier: Apache-2.0
#include "walk_aloud.h"

#include "devices.h"
#include "settings.h"
#include "walk_model.h"

#include <array>
#include <utility>

namespace truehang {

WalkAloud::WalkAloud(const WalkModel& walk, const Settings& settings, VoiceDevice& voice, QObject* parent)
    : QObject(parent), walk_(walk), settings_(settings), voice_(voice) {
    connect(&walk_, &WalkModel::taken, this, &WalkAloud::readBack);
    connect(&walk_, &WalkModel::moved, this, &WalkAloud::say);
    connect(&walk_, &WalkModel::changed, this, &WalkAloud::showDiffering);
}

bool WalkAloud::offered() const { return voice_.isThere(); }

QString WalkAloud::spokenFigure(const QString& figure) {
    struct Unit {
        QString written;
        QString said;
    };
    const std::array<Unit, 5> units{{{QStringLiteral(" mm"), tr("%1 millimetres")},
                                     {QStringLiteral(" cm"), tr("%1 centimetres")},
                                     {QStringLiteral(" m"), tr("%1 metres")},
                                     {QStringLiteral(" in"), tr("%1 inches")},
                                     {QStringLiteral("°"), tr("%1 degrees")}}};
    for (const Unit& unit : units) {
        if (figure.endsWith(unit.written)) {
            return unit.said.arg(figure.chopped(unit.written.size()));
        }
    }
    return figure;
}

void WalkAloud::readBack(const QString& figure) { read_back_ = spokenFigure(figure); }

void WalkAloud::say() {
    const QString before = std::exchange(read_back_, {});
    if (!settings_.aloud() || walk_.windowId().isEmpty()) {
        return;
    }
    const QString now = walk_.differs() ? walk_.differsTitle() : walk_.says();
    voice_.say(before.isEmpty() ? now : tr("%1. %2").arg(before, now));
}

void WalkAloud::showDiffering() {
    const bool did = std::exchange(differed_, walk_.differs());
    if (differed_ && !did && settings_.aloud()) {
        voice_.say(walk_.differsTitle());
    }
}

}  // namespace truehang
