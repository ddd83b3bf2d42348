// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "bearings_model.h"
#include "field_form.h"
#include "light/window_light.h"
#include "sheet/sheet.h"
#include "shown_rows.h"
#include "skyline_model.h"

#include <QObject>
#include <optional>

namespace truehang {

class OpenVisit;

/// What light the open window gives: its facing, the sun’s hours, the room’s daylight, and what to say of it. Worked
/// while it is looked at only.
class OutlookModel : public QObject {
    Q_OBJECT
    Q_PROPERTY(QString windowTitle READ windowTitle NOTIFY changed)
    /// "Faces south, 184° ± 2°"
    Q_PROPERTY(QString facing READ facing NOTIFY changed)
    /// What doesn’t agree or isn’t counted. Roles: `mind` (key), `severity`, `word`, `text`.
    Q_PROPERTY(truehang::ShownRows* minds READ minds CONSTANT)
    /// Hours of possible sun, and what has to be said of them. Roles: `label` (key), `glass`, `cloth`, `spoken`.
    Q_PROPERTY(truehang::ShownRows* sun READ sun CONSTANT)
    Q_PROPERTY(QString sunNote READ sunNote NOTIFY changed)
    /// Average daylight factors. Roles: `label` (key), `figure`, `unit`.
    Q_PROPERTY(truehang::ShownRows* daylight READ daylight CONSTANT)
    /// Roles: `text` (key), `reason`.
    Q_PROPERTY(truehang::ShownRows* advice READ advice CONSTANT)
    /// What stands in for what wasn’t measured, and what would tell more. Role: `text` (key).
    Q_PROPERTY(truehang::ShownRows* assumed READ assumed CONSTANT)
    Q_PROPERTY(truehang::ShownRows* wanted READ wanted CONSTANT)
    /// The sun could be followed: there is something to draw.
    Q_PROPERTY(bool hasSun READ hasSun NOTIFY changed)
    /// It isn’t known where the house stands.
    Q_PROPERTY(bool lacksPlace READ lacksPlace NOTIFY changed)
    /// Fields `glassWidth`, `glassHeight`, `outerDepth`; and of the room `width`, `depth`, `height`, `surfaces`
    /// (choice).
    Q_PROPERTY(truehang::FieldForm* glass READ glass CONSTANT)
    /// Where it isn’t known where the house stands: field `coordinates`.
    Q_PROPERTY(truehang::FieldForm* place READ place CONSTANT)
    Q_PROPERTY(truehang::FieldForm* room READ room CONSTANT)
    Q_PROPERTY(truehang::BearingsModel* bearings READ bearings CONSTANT)
    Q_PROPERTY(truehang::SkylineModel* skyline READ skyline CONSTANT)

public:
    /// Both must outlive it.
    OutlookModel(OpenVisit& open, CompassDevice& compass, QObject* parent = nullptr);

    [[nodiscard]] QString windowTitle() const;
    [[nodiscard]] QString facing() const { return facing_; }
    [[nodiscard]] ShownRows* minds() { return &minds_; }
    [[nodiscard]] ShownRows* sun() { return &sun_; }
    [[nodiscard]] QString sunNote() const { return sun_note_; }
    [[nodiscard]] ShownRows* daylight() { return &daylight_; }
    [[nodiscard]] ShownRows* advice() { return &advice_; }
    [[nodiscard]] ShownRows* assumed() { return &assumed_; }
    [[nodiscard]] ShownRows* wanted() { return &wanted_; }
    [[nodiscard]] bool hasSun() const { return light_ && light_->clock; }
    [[nodiscard]] bool lacksPlace() const;
    [[nodiscard]] FieldForm* glass() { return &glass_; }
    [[nodiscard]] FieldForm* room() { return &room_; }
    [[nodiscard]] FieldForm* place() { return &place_; }
    [[nodiscard]] BearingsModel* bearings() { return &bearings_; }
    [[nodiscard]] SkylineModel* skyline() { return &skyline_; }

    /// What was worked, for who draws it; none while it isn’t looked at.
    [[nodiscard]] const std::optional<WindowLight>& light() const { return light_; }
    [[nodiscard]] OpenVisit& open() const { return open_; }
    void setShown(bool shown);

signals:
    void changed();

private:
    void work();
    void show();
    void showSun(const SheetBlock& block);
    void showForms();
    [[nodiscard]] QString placeOf(const QString& form, const QString& field) const;
    [[nodiscard]] QString leaveGlass(const QString& field, const QString& text);
    [[nodiscard]] QString leavePlace(const QString& text);
    [[nodiscard]] QString leaveRoom(const QString& field, const QString& text);
    [[nodiscard]] QString chooseRoom(const QString& field, const QString& word);

    OpenVisit& open_;
    bool shown_ = false;
    std::optional<WindowLight> light_;
    QString facing_, sun_note_;
    ShownRows minds_, sun_, daylight_, advice_, assumed_, wanted_;
    FieldForm glass_, room_, place_;
    BearingsModel bearings_;
    SkylineModel skyline_;
};

}  // namespace truehang
