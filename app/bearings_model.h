// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "devices.h"
#include "field_form.h"
#include "shown_rows.h"
#include "survey/survey.h"

#include <QObject>
#include <functional>
#include <optional>

namespace truehang {

class OpenVisit;

/// Which way the open window faces: what was taken of it, by compass, by a shadow on the sill, or off a plan.
class BearingsModel : public QObject {
    Q_OBJECT
    /// In the order they were taken. Roles: `bearingId` (key; empty of the window’s own), `says` ("Shadow on the sill:
    /// 184° ± 1°"), `minds` (what has to be minded of it, else empty), `apart` (doesn’t agree with the others),
    /// `spoken`.
    Q_PROPERTY(truehang::ShownRows* taken READ taken CONSTANT)
    /// The one being edited, empty where none is; how it was taken (`compass`, `shadow`, `plan`), and what it comes to.
    Q_PROPERTY(QString current READ current NOTIFY changed)
    Q_PROPERTY(QString way READ way NOTIFY changed)
    Q_PROPERTY(QString currentSays READ currentSays NOTIFY changed)
    Q_PROPERTY(QString currentMinds READ currentMinds NOTIFY changed)
    /// "Timed at 10:06:21", of a shadow.
    Q_PROPERTY(QString timeSays READ timeSays NOTIFY changed)
    /// Of a shadow `depth`, `left`, `otherLeft`; of a plan `street`, `looks` (choice), `bearing`; of a compass none.
    Q_PROPERTY(truehang::FieldForm* form READ form CONSTANT)
    /// There is a compass; what it tells while it is watched: "184°, ± 16°", or that it hasn’t told anything yet.
    Q_PROPERTY(bool hasCompass READ hasCompass CONSTANT)
    Q_PROPERTY(bool watching READ watching NOTIFY compassChanged)
    Q_PROPERTY(bool compassTells READ compassTells NOTIFY compassChanged)
    Q_PROPERTY(QString compassSays READ compassSays NOTIFY compassChanged)

public:
    /// Both must outlive it.
    BearingsModel(OpenVisit& open, CompassDevice& compass, QObject* parent = nullptr);

    [[nodiscard]] ShownRows* taken() { return &taken_; }
    [[nodiscard]] QString current() const { return current_; }
    [[nodiscard]] QString way() const;
    [[nodiscard]] QString currentSays() const;
    [[nodiscard]] QString currentMinds() const;
    [[nodiscard]] QString timeSays() const;
    [[nodiscard]] FieldForm* form() { return &form_; }
    [[nodiscard]] bool hasCompass() const { return compass_.isThere(); }
    [[nodiscard]] bool watching() const { return watching_; }
    [[nodiscard]] bool compassTells() const { return fix_.has_value(); }
    [[nodiscard]] QString compassSays() const;

    Q_INVOKABLE void watchCompass();
    Q_INVOKABLE void leaveCompass();
    /// Keeps what the compass tells now; false where it tells nothing.
    Q_INVOKABLE bool takeCompass();
    /// The shadow lies on the marks now: keeps the time, and edits what is to be read. Its id.
    Q_INVOKABLE QString takeShadow();
    Q_INVOKABLE QString takePlan();
    /// The shadow being edited lies on the marks now, not when it was first taken.
    Q_INVOKABLE void timeAgain();
    Q_INVOKABLE void edit(const QString& bearingId);
    /// Undo brings it back.
    Q_INVOKABLE void remove(const QString& bearingId);
    Q_INVOKABLE void done();

signals:
    void changed();
    void compassChanged();

private:
    void show();
    void showForm();
    [[nodiscard]] const BearingTaken* edited() const;
    [[nodiscard]] QString placeOf(const QString& field) const;
    QString add(BearingTaken taken);
    void change(const QString& says, const std::function<bool(BearingTaken&)>& change);
    [[nodiscard]] QString leaveField(const QString& field, const QString& text);
    [[nodiscard]] QString chooseField(const QString& field, const QString& word);

    OpenVisit& open_;
    CompassDevice& compass_;
    ShownRows taken_;
    FieldForm form_;
    QString current_;
    std::optional<CompassFix> fix_;
    bool watching_ = false;
};

}  // namespace truehang
