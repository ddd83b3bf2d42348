// SPDX-License-Identifier: Apache-2.0
#include "position_model.h"

#include "devices.h"
#include "open_visit.h"

#include <QPointer>

namespace truehang {

PositionModel::PositionModel(OpenVisit& open, Devices& devices, QObject* parent)
    : QObject(parent), open_(open), devices_(devices) {
    connect(&open_, &OpenVisit::opened, this, &PositionModel::cancel);
    connect(&open_, &OpenVisit::changed, this, &PositionModel::changed);
}

QString PositionModel::says() const {
    if (state_ == State::Asking) {
        return tr("Asking where we are");
    }
    if (state_ == State::NoPosition) {
        return tr("No position here");
    }
    const auto& site = open_.survey().site;
    if (!site || !site->latitude || !site->longitude) {
        return {};
    }
    const QString where = QStringLiteral("%1, %2").arg(*site->latitude, 0, 'f', 5).arg(*site->longitude, 0, 'f', 5);
    return site->accuracy_m ? tr("%1, within %2 m").arg(where).arg(*site->accuracy_m, 0, 'f', 0) : where;
}

void PositionModel::ask() {
    if (!open_.isOpen() || state_ == State::Asking) {
        return;
    }
    setState(State::Asking);
    devices_.position->ask([self = QPointer(this), visit = open_.visitId()](const std::optional<PositionFix>& fix) {
        if (self && self->state_ == State::Asking && self->open_.visitId() == visit) {
            self->take(fix);
        }
    });
}

void PositionModel::take(const std::optional<PositionFix>& fix) {
    setState(fix ? State::Here : State::NoPosition);
    if (!fix) {
        return;
    }
    open_.edit(tr("Position of the site"), [fix](Survey& survey) {
        Site& site = survey.site ? *survey.site : survey.site.emplace();
        site.latitude = fix->latitude;
        site.longitude = fix->longitude;
        site.accuracy_m = fix->accuracy_m;
        site.elevation_m = fix->elevation_m;
        return true;
    });
}

void PositionModel::cancel() {
    if (state_ == State::Asking) {
        devices_.position->cancel();
    }
    setState(State::Quiet);
}

void PositionModel::forget() {
    setState(State::Quiet);
    open_.edit(tr("Position taken off"), [](Survey& survey) {
        if (!survey.site || !survey.site->latitude) {
            return false;
        }
        survey.site->latitude = survey.site->longitude = survey.site->accuracy_m = survey.site->elevation_m =
            std::nullopt;
        return true;
    });
}

void PositionModel::setState(State state) {
    if (state_ != state) {
        state_ = state;
        emit changed();
    }
}

}  // namespace truehang
