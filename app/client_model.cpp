// SPDX-License-Identifier: Apache-2.0
#include "client_model.h"

#include "choices_model.h"
#include "hanging_model.h"
#include "open_visit.h"
#include "sizing/layer.h"

#include <algorithm>
#include <array>

namespace truehang {

namespace {

/// The lines that a client asks about.
constexpr std::array asked_about{"cloth", "cost", "making", "glass", "mass"};

}  // namespace

ClientModel::ClientModel(OpenVisit& open, HangingModel& hanging, ChoicesModel& choices, QObject* parent)
    : QObject(parent),
      open_(open),
      hanging_(hanging),
      choices_(choices),
      rows_({"choice", "row", "title", "says", "takes", "picked", "spoken"}) {
    connect(&open_, &OpenVisit::windowChanged, this, [this] {
        picked_ = 0;
        shut_ = true;
        emit changed();
    });
    connect(&choices_, &ChoicesModel::changed, this, &ClientModel::show);
}

void ClientModel::show() {
    QList<ShownRows::Row> rows;
    ShownRows& lines = *choices_.lines();
    for (int row = 0; row < choices_.choices()->count(); ++row) {
        const auto value = [&](const char* role) { return choices_.choices()->value(row, QLatin1String(role)); };
        if (row > 0 && value("number").toInt() < 0) {
            continue;  // the other answer on an edge: the surveyor's own business
        }
        QVariantList takes;
        for (int line = 0; line < lines.count(); ++line) {
            const QString key = lines.value(line, QStringLiteral("line")).toString();
            const QStringList cells = lines.value(line, QStringLiteral("cells")).toStringList();
            const bool wanted =
                std::ranges::any_of(asked_about, [&](const char* one) { return key == QLatin1String(one); });
            if (wanted && row < cells.size() && !cells[row].isEmpty()) {
                takes.append(QVariantMap{{QStringLiteral("label"), lines.value(line, QStringLiteral("label"))},
                                         {QStringLiteral("text"), cells[row]}});
            }
        }
        const bool picked = rows.size() == picked_;
        rows.append({value("choice"), row, value("title"), value("says"), takes, picked,
                     picked ? tr("%1, shown now").arg(value("spoken").toString()) : value("spoken").toString()});
    }
    rows_.setRows(rows);
    if (picked_ > 0 && picked_ >= rows_.count()) {
        pick(0);
        return;
    }
    emit changed();
}

QString ClientModel::says() const { return rows_.value(picked_, QStringLiteral("says")).toString(); }

QVariantList ClientModel::takes() const { return rows_.value(picked_, QStringLiteral("takes")).toList(); }

int ClientModel::drawn() const {
    return picked_ < rows_.count() ? rows_.value(picked_, QStringLiteral("row")).toInt() : -1;
}

QString ClientModel::turnSays() const {
    const Window* window = open_.window();
    const auto at = static_cast<std::size_t>(std::max(0, hanging_.current()));
    const auto asked = window && at < window->layers.size() ? asked_of(window->layers[at]) : std::nullopt;
    if (asked && asked->is_blind()) {
        return shut_ ? tr("Draw the blind up") : tr("Let the blind down");
    }
    const bool one = asked && asked->curtains() == 1;
    return shut_ ? (one ? tr("Open the curtain") : tr("Open the curtains"))
                 : (one ? tr("Close the curtain") : tr("Close the curtains"));
}

QString ClientModel::note() const { return choices_.note(); }

void ClientModel::pick(int row) {
    if (row >= 0 && row < rows_.count() && row != picked_) {
        picked_ = row;
        show();
    }
}

void ClientModel::turn() {
    shut_ = !shut_;
    emit changed();
}

}  // namespace truehang
