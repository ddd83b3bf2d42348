// SPDX-License-Identifier: Apache-2.0
#include "bearings_model.h"

#include "form_fields.h"
#include "light/facing.h"
#include "open_visit.h"
#include "outlook_edits.h"
#include "trade_words.h"
#include "whereabouts.h"
#include "writing.h"

#include <QTime>
#include <cmath>

namespace truehang {

namespace {

constexpr double full_turn = 360.0;

BearingTaken taken_by(const OpenVisit& open, const char* from) {
    BearingTaken taken;
    taken.id = open.newId();
    taken.from = Word<BearingFrom>(from);
    taken.taken_at = open.now();
    return taken;
}

/// The first and second edge of a shadow.
std::optional<Length> edge_of(const BearingTaken& taken, std::size_t edge) {
    return edge < taken.to_left.size() ? std::optional(taken.to_left[edge]) : std::nullopt;
}

/// Sets one edge; the second can stand only behind a first.
bool set_edge(BearingTaken& taken, std::size_t edge, const std::optional<Length>& length) {
    std::vector<Length> now = taken.to_left;
    if (length && edge < now.size()) {
        now[edge] = *length;
    } else if (length) {
        now.push_back(*length);
    } else if (edge < now.size()) {
        now.erase(now.begin() + static_cast<std::ptrdiff_t>(edge));
    }
    return replace(taken.to_left, now);
}

/// Degrees, below a full turn.
Result<std::optional<Angle>> read_bearing(const QString& text) {
    const auto read = read_field_number(text, 0.0, full_turn);
    if (!read) {
        return read.error();
    }
    return *read ? std::optional(Angle::degrees(std::fmod(**read, full_turn))) : std::nullopt;
}

std::optional<double> degrees_of(const std::optional<Angle>& angle) {
    return angle ? std::optional(angle->degrees()) : std::nullopt;
}

}  // namespace

BearingsModel::BearingsModel(OpenVisit& open, CompassDevice& compass, QObject* parent)
    : QObject(parent),
      open_(open),
      compass_(compass),
      taken_({"bearingId", "says", "minds", "apart", "spoken"}),
      form_({[this](const QString& field, const QString& text) { open_.place().setText(placeOf(field), text, true); },
             [this](const QString& field, const QString& text) { return leaveField(field, text); },
             [this](const QString& field, const QString& word) { return chooseField(field, word); }}) {
    connect(&open_, &OpenVisit::windowChanged, this, [this] {
        leaveCompass();
        done();
        show();
    });
    connect(&open_, &OpenVisit::changed, this, &BearingsModel::show);
}

const BearingTaken* BearingsModel::edited() const {
    return current_.isEmpty() ? nullptr : find_one(open_.window(), &Outlook::bearings, bytes(current_));
}

QString BearingsModel::placeOf(const QString& field) const {
    return QStringLiteral("bearing/%1/%2").arg(current_, field);
}

QString BearingsModel::way() const {
    const BearingTaken* one = edited();
    return one != nullptr && one->from ? shown(one->from->text()) : QString();
}

QString BearingsModel::currentSays() const {
    return taken_.value(taken_.indexOf(current_), QStringLiteral("says")).toString();
}

QString BearingsModel::currentMinds() const {
    return taken_.value(taken_.indexOf(current_), QStringLiteral("minds")).toString();
}

QString BearingsModel::timeSays() const {
    const BearingTaken* one = edited();
    const QString clock = one != nullptr ? shown(one->taken_at).mid(11, 8) : QString();
    return clock.isEmpty() ? QString() : tr("Timed at %1").arg(clock);
}

QString BearingsModel::compassSays() const {
    if (!fix_) {
        return tr("The compass hasn’t told anything yet.");
    }
    const Bearing told{Angle::degrees(fix_->magnetic_deg), Angle::degrees(fix_->u_deg.value_or(10.0)),
                       BearingFrom::compass};
    return shown(said_bearing(told));
}

void BearingsModel::watchCompass() {
    if (watching_ || !compass_.isThere()) {
        return;
    }
    watching_ = true;
    fix_.reset();
    compass_.watch([this](const CompassFix& fix) {
        fix_ = fix;
        emit compassChanged();
    });
    emit compassChanged();
}

void BearingsModel::leaveCompass() {
    if (watching_) {
        compass_.stop();
        watching_ = false;
        fix_.reset();
        emit compassChanged();
    }
}

QString BearingsModel::add(BearingTaken taken) {
    const QString id = shown(taken.id);
    const bool added = open_.editWindow(tr("Which way it faces"), open_.windowId(),
                                        changing_outlook([taken = std::move(taken)](Outlook& outlook) {
                                            outlook.bearings.push_back(taken);
                                            return true;
                                        }));
    return added ? id : QString();
}

bool BearingsModel::takeCompass() {
    if (!fix_) {
        return false;
    }
    BearingTaken taken = taken_by(open_, "compass");
    const double turned = std::fmod(std::fmod(fix_->magnetic_deg, full_turn) + full_turn, full_turn);
    taken.magnetic = Angle::degrees(std::round(10.0 * turned) / 10.0);
    taken.u = fix_->u_deg ? std::optional(Angle::degrees(*fix_->u_deg)) : std::nullopt;
    taken.field_nt = fix_->field_nt ? std::optional(std::round(*fix_->field_nt)) : std::nullopt;
    leaveCompass();
    return !add(std::move(taken)).isEmpty();
}

QString BearingsModel::takeShadow() {
    const QString id = add(taken_by(open_, "shadow"));
    edit(id);
    return id;
}

QString BearingsModel::takePlan() {
    const QString id = add(taken_by(open_, "plan"));
    edit(id);
    return id;
}

void BearingsModel::timeAgain() {
    change(tr("The shadow’s time"), [now = open_.now()](BearingTaken& one) { return replace(one.taken_at, now); });
}

void BearingsModel::edit(const QString& bearingId) {
    current_ = bearingId;
    form_.forgetFaults();
    showForm();
    emit changed();
}

void BearingsModel::remove(const QString& bearingId) {
    open_.editWindow(
        tr("A bearing taken out"), open_.windowId(), changing_outlook([id = bytes(bearingId)](Outlook& outlook) {
            return std::erase_if(outlook.bearings, [&](const BearingTaken& one) { return one.id == id; }) > 0;
        }));
}

void BearingsModel::done() { edit({}); }

void BearingsModel::show() {
    QList<ShownRows::Row> rows;
    if (const Window* window = open_.window()) {
        for (const FacingTold& told : facing_of(open_.survey(), *window).told) {
            QStringList minds;
            for (const std::string& mind : told.minds) {
                minds.append(truehang::shown(mind));
            }
            if (told.apart) {
                minds.prepend(tr("It doesn’t agree with the others."));
            }
            const QString says = truehang::shown(told.says);
            const QString minded = minds.join(QLatin1Char(' '));
            rows.append({truehang::shown(told.id), says, minded, told.apart,
                         minded.isEmpty() ? says : says + QStringLiteral(". ") + minded});
        }
    }
    taken_.setRows(rows);
    showForm();
    emit changed();
}

void BearingsModel::showForm() {
    const BearingTaken* one = edited();
    if (one == nullptr) {
        current_.clear();
        form_.setFields({});
        return;
    }
    const FieldMaker make{open_, [this](const QString& field) { return placeOf(field); }};
    const QString degrees = QStringLiteral("°");
    QList<FormField> fields;
    if (one->from && one->from->is(BearingFrom::shadow)) {
        fields = {
            make.length(QStringLiteral("depth"), tr("Into the room, from the edge’s foot to the mark"), one->depth),
            make.length(QStringLiteral("left"), tr("There, how far the shadow lies to the left"), edge_of(*one, 0),
                        tr("with a minus: to the right")),
            make.length(QStringLiteral("otherLeft"), tr("The bar’s other edge, to the left of its own foot"),
                        edge_of(*one, 1), tr("better with it"))};
    } else if (one->from && one->from->is(BearingFrom::plan)) {
        fields = {make.number(QStringLiteral("street"), tr("The street’s line"), degrees_of(one->street), degrees,
                              tr("clockwise from north")),
                  make.choice(QStringLiteral("looks"), tr("The window looks"), one->looks, tr("not said")),
                  make.number(QStringLiteral("bearing"), tr("Or straight out of the window"), degrees_of(one->bearing),
                              degrees, tr("from the street’s line"))};
    }
    form_.setFields(fields);
}

void BearingsModel::change(const QString& says, const std::function<bool(BearingTaken&)>& change) {
    open_.editWindow(says, open_.windowId(), changing_one(&Outlook::bearings, bytes(current_), change));
}

QString BearingsModel::leaveField(const QString& field, const QString& text) {
    std::function<bool(BearingTaken&)> change;
    if (field == QStringLiteral("street") || field == QStringLiteral("bearing")) {
        const auto read = read_bearing(text);
        if (!read) {
            return fault_of(read);
        }
        const auto member = field == QStringLiteral("street") ? &BearingTaken::street : &BearingTaken::bearing;
        change = [member, angle = *read](BearingTaken& one) { return replace(one.*member, angle); };
    } else {
        const auto read = read_field_length(open_.survey(), text, field != QStringLiteral("depth"));
        if (!read) {
            return fault_of(read);
        }
        if (field == QStringLiteral("depth")) {
            change = [length = *read](BearingTaken& one) { return replace(one.depth, length); };
        } else {
            const std::size_t edge = field == QStringLiteral("left") ? 0 : 1;
            change = [edge, length = *read](BearingTaken& one) { return set_edge(one, edge, length); };
        }
    }
    keep_field(open_, placeOf(field), text, tr("Which way it faces: %1").arg(text),
               within(open_.windowId(), changing_one(&Outlook::bearings, bytes(current_), change)));
    return {};
}

QString BearingsModel::chooseField(const QString& field, const QString& word) {
    if (field == QStringLiteral("looks")) {
        change(tr("Which way it faces"), [word](BearingTaken& one) { return choose_word(one.looks, word); });
    }
    return {};
}

}  // namespace truehang
