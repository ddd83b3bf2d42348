// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "shown_rows.h"

#include <QObject>

namespace truehang {

class ChoicesModel;
class HangingModel;
class OpenVisit;

/// The page that is turned round to the client: one window, the ways to hang it, and what each takes, in few words.
class ClientModel : public QObject {
    Q_OBJECT
    /// Roles: `choice` (key), `row` (of `ChoicesModel.choices`), `title` ("As it hangs now", "Choice 1"), `says`,
    /// `takes` (maps with `label` and `text`), `picked`, `spoken`.
    Q_PROPERTY(truehang::ShownRows* choices READ choices CONSTANT)
    /// The row of `choices` that is looked at.
    Q_PROPERTY(int picked READ picked NOTIFY changed)
    /// "Tab headed pair, 1.5 ×", and what it takes as a list of maps.
    Q_PROPERTY(QString says READ says NOTIFY changed)
    Q_PROPERTY(QVariantList takes READ takes NOTIFY changed)
    /// The row of `ChoicesModel.choices` that is drawn; -1: as it hangs now.
    Q_PROPERTY(int drawn READ drawn NOTIFY changed)
    Q_PROPERTY(bool shut READ isShut NOTIFY changed)
    /// What the button does: "Draw them back", "Let the blind down".
    Q_PROPERTY(QString turnSays READ turnSays NOTIFY changed)
    /// That the sums are no quotation; empty where no sum is shown.
    Q_PROPERTY(QString note READ note NOTIFY changed)

public:
    ClientModel(OpenVisit& open, HangingModel& hanging, ChoicesModel& choices, QObject* parent = nullptr);

    [[nodiscard]] ShownRows* choices() { return &rows_; }
    [[nodiscard]] int picked() const { return picked_; }
    [[nodiscard]] QString says() const;
    [[nodiscard]] QVariantList takes() const;
    [[nodiscard]] int drawn() const;
    [[nodiscard]] bool isShut() const { return shut_; }
    [[nodiscard]] QString turnSays() const;
    [[nodiscard]] QString note() const;

    Q_INVOKABLE void pick(int row);
    Q_INVOKABLE void turn();

signals:
    void changed();

private:
    void show();

    OpenVisit& open_;
    HangingModel& hanging_;
    ChoicesModel& choices_;
    ShownRows rows_;
    int picked_ = 0;
    bool shut_ = true;
};

}  // namespace truehang
