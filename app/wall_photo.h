// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "straightened.h"

#include <QObject>
#include <QString>
#include <optional>

namespace truehang {

class OpenVisit;
struct Photo;

/// The open window’s photo that was tapped as a tape, straightened, to lie under its drawing, so that what is in the
/// way can be traced over it. Straightened when it is first shown.
class WallPhoto : public QObject {
    Q_OBJECT
    /// A photo of this window can be straightened.
    Q_PROPERTY(bool there READ isThere NOTIFY changed)
    /// It lies under the drawing, as soon as it is straightened.
    Q_PROPERTY(bool shown READ isShown WRITE setShown NOTIFY changed)
    /// Why it can’t be shown; empty where it can, or isn’t asked for.
    Q_PROPERTY(QString trouble READ trouble NOTIFY changed)

public:
    explicit WallPhoto(OpenVisit& open, QObject* parent = nullptr);

    [[nodiscard]] bool isThere() const { return shape_.has_value(); }
    [[nodiscard]] bool isShown() const { return shown_; }
    void setShown(bool shown);
    [[nodiscard]] QString trouble() const { return trouble_; }

    /// What lies under the drawing now; null: nothing.
    [[nodiscard]] const StraightPhoto* photo() const { return shown_ && straight_ ? &*straight_ : nullptr; }

signals:
    void changed();

private:
    void look();
    void straighten();

    OpenVisit& open_;
    QString sha256_;
    std::optional<PhotoShape> shape_;
    std::optional<StraightPhoto> straight_;
    QString trouble_;
    bool shown_ = false;
    int turn_ = 0;  // an answer to an earlier question is not taken
};

}  // namespace truehang
