// SPDX-License-Identifier: Apache-2.0
#include "skyline_model.h"

#include "form_fields.h"
#include "open_visit.h"
#include "outlook_edits.h"
#include "trade_words.h"
#include "whereabouts.h"
#include "writing.h"

#include <algorithm>
#include <cmath>

namespace truehang {

namespace {

constexpr double one_step = 5.0;  ///< degrees
constexpr double first_half = 20.0;
constexpr double first_height = 10.0;
constexpr double farthest = 90.0;

double from_of(const SkylinePart& part) { return part.from.value_or(Angle::degrees(-farthest)).degrees(); }
double to_of(const SkylinePart& part) { return part.to.value_or(Angle::degrees(farthest)).degrees(); }
double height_of(const SkylinePart& part) { return part.height.value_or(Angle()).degrees(); }

std::optional<double> number_of(const std::optional<Angle>& angle) {
    return angle ? std::optional(angle->degrees()) : std::nullopt;
}

/// By how much each step moves the left edge, the right edge and the top.
struct Moves {
    double from = 0.0, to = 0.0, height = 0.0;
};
Moves moves_of(const QString& how) {
    if (how == QStringLiteral("left")) {
        return {-one_step, -one_step, 0.0};
    }
    if (how == QStringLiteral("right")) {
        return {one_step, one_step, 0.0};
    }
    if (how == QStringLiteral("wider")) {
        return {-one_step, one_step, 0.0};
    }
    if (how == QStringLiteral("narrower")) {
        return {one_step, -one_step, 0.0};
    }
    return {0.0, 0.0, how == QStringLiteral("higher") ? one_step : how == QStringLiteral("lower") ? -one_step : 0.0};
}

}  // namespace

SkylineModel::SkylineModel(OpenVisit& open, QObject* parent)
    : QObject(parent),
      open_(open),
      parts_({"partId", "kind", "line", "spoken"}),
      form_({[this](const QString& field, const QString& text) { open_.place().setText(placeOf(field), text, true); },
             [this](const QString& field, const QString& text) { return leaveField(field, text); },
             [this](const QString& field, const QString& word) { return chooseField(field, word); }}) {
    connect(&open_, &OpenVisit::windowChanged, this, [this] {
        done();
        show();
    });
    connect(&open_, &OpenVisit::changed, this, &SkylineModel::show);
}

const SkylinePart* SkylineModel::edited() const {
    return current_.isEmpty() ? nullptr : find_one(open_.window(), &Outlook::skyline, bytes(current_));
}

QString SkylineModel::placeOf(const QString& field) const {
    return QStringLiteral("skyline/%1/%2").arg(current_, field);
}

QString SkylineModel::currentSays() const {
    return parts_.value(parts_.indexOf(current_), QStringLiteral("kind")).toString();
}

QString SkylineModel::currentLine() const {
    return parts_.value(parts_.indexOf(current_), QStringLiteral("line")).toString();
}

void SkylineModel::show() {
    const auto side = [](double degrees) {
        const QString number = shown(std::optional(std::abs(degrees)));
        return degrees < 0.0   ? tr("%1° left").arg(number)
               : degrees > 0.0 ? tr("%1° right").arg(number)
                               : tr("straight ahead");
    };
    QList<ShownRows::Row> rows;
    const Window* window = open_.window();
    if (window != nullptr && window->outlook) {
        for (const SkylinePart& part : window->outlook->skyline) {
            const QString kind = part.kind ? truehang::says(*part.kind) : tr("Something");
            const QString line =
                tr("from %1 to %2, %3° high")
                    .arg(side(from_of(part)), side(to_of(part)), truehang::shown(std::optional(height_of(part))));
            rows.append({truehang::shown(part.id), kind, line, QStringLiteral("%1, %2").arg(kind, line)});
        }
    }
    parts_.setRows(rows);
    showForm();
    emit changed();
}

void SkylineModel::showForm() {
    const SkylinePart* one = edited();
    if (one == nullptr) {
        current_.clear();
        form_.setFields({});
        return;
    }
    const FieldMaker make{open_, [this](const QString& field) { return placeOf(field); }};
    const QString degrees = QStringLiteral("°");
    form_.setFields({make.number(QStringLiteral("height"), tr("How high its top stands over the level"),
                                 number_of(one->height), degrees),
                     make.number(QStringLiteral("from"), tr("Its left edge, from straight ahead"), number_of(one->from),
                                 degrees, tr("with a minus: to the left")),
                     make.number(QStringLiteral("to"), tr("Its right edge, from straight ahead"), number_of(one->to),
                                 degrees, tr("with a minus: to the left")),
                     make.choice(QStringLiteral("kind"), tr("What it is"), one->kind, {})});
}

QString SkylineModel::add(const QString& kind) {
    if (!Word<SkylineKind>::find(bytes(kind))) {
        return {};
    }
    SkylinePart part;
    part.id = open_.newId();
    part.kind = Word<SkylineKind>(bytes(kind));
    part.from = Angle::degrees(-first_half);
    part.to = Angle::degrees(first_half);
    part.height = Angle::degrees(first_height);
    const bool added = open_.editWindow(tr("Outside: %1").arg(truehang::says(*part.kind)), open_.windowId(),
                                        changing_outlook([part](Outlook& outlook) {
                                            outlook.skyline.push_back(part);
                                            return true;
                                        }));
    if (!added) {
        return {};
    }
    edit(shown(part.id));
    return shown(part.id);
}

void SkylineModel::step(const QString& how) {
    const Moves by = moves_of(how);
    for (const char* field : {"from", "to", "height"}) {
        open_.place().forget(placeOf(QLatin1String(field)));
    }
    form_.forgetFaults();
    change(tr("What stands outside"), [by](SkylinePart& part) {
        const double from = std::clamp(from_of(part) + by.from, -farthest, farthest);
        const double to = std::clamp(to_of(part) + by.to, -farthest, farthest);
        const double height = std::clamp(height_of(part) + by.height, 0.0, farthest);
        if (from >= to) {
            return false;
        }
        SkylinePart now = part;
        now.from = Angle::degrees(from);
        now.to = Angle::degrees(to);
        now.height = Angle::degrees(height);
        const bool moved = now.from != part.from || now.to != part.to || now.height != part.height;
        part = now;
        return moved;
    });
}

void SkylineModel::edit(const QString& partId) {
    current_ = partId;
    form_.forgetFaults();
    showForm();
    emit changed();
}

void SkylineModel::remove(const QString& partId) {
    open_.editWindow(tr("No longer outside"), open_.windowId(),
                     changing_outlook([id = bytes(partId)](Outlook& outlook) {
                         return std::erase_if(outlook.skyline, [&](const SkylinePart& p) { return p.id == id; }) > 0;
                     }));
}

void SkylineModel::done() { edit({}); }

void SkylineModel::change(const QString& says, const std::function<bool(SkylinePart&)>& change) {
    open_.editWindow(says, open_.windowId(), changing_one(&Outlook::skyline, bytes(current_), change));
}

QString SkylineModel::leaveField(const QString& field, const QString& text) {
    const bool is_height = field == QStringLiteral("height");
    const auto read = read_field_number(text, is_height ? 0.0 : -farthest, farthest);
    if (!read) {
        return fault_of(read);
    }
    const auto member = is_height                         ? &SkylinePart::height
                        : field == QStringLiteral("from") ? &SkylinePart::from
                                                          : &SkylinePart::to;
    const std::optional<Angle> angle = *read ? std::optional(Angle::degrees(**read)) : std::nullopt;
    if (const SkylinePart* one = edited(); one != nullptr && !is_height) {
        SkylinePart tried = *one;
        tried.*member = angle;
        if (from_of(tried) >= to_of(tried)) {
            return tr("Its left edge must stand to the left of its right edge.");
        }
    }
    keep_field(open_, placeOf(field), text, tr("What stands outside: %1").arg(text),
               within(open_.windowId(),
                      changing_one<SkylinePart>(&Outlook::skyline, bytes(current_), [member, angle](SkylinePart& part) {
                          return replace(part.*member, angle);
                      })));
    return {};
}

QString SkylineModel::chooseField(const QString& field, const QString& word) {
    if (field == QStringLiteral("kind")) {
        change(tr("What stands outside"), [word](SkylinePart& part) { return choose_word(part.kind, word); });
    }
    return {};
}

}  // namespace truehang
