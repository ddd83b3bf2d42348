// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "figures/figures.h"
#include "sheet/snapping.h"
#include "survey/survey.h"

#include <QObject>
#include <QStringList>
#include <optional>

namespace truehang {

class OpenVisit;

/// Whether a flag says that an obstruction meets something, or stands where it may hurt.
[[nodiscard]] bool meets_something(const Flag& flag);

/// Moves one thing that is in the way of the open window, by finger or by keys: where it snaps, what it meets there,
/// and the one edit that is made when it is let go.
class ObstructionPlacing : public QObject {
    Q_OBJECT
    /// It is being moved and not kept yet.
    Q_PROPERTY(bool moving READ moving NOTIFY moved)
    /// What its edges lie on now ("the sill, the opening's left edge"); empty where on nothing.
    Q_PROPERTY(QString lies READ lies NOTIFY moved)

public:
    explicit ObstructionPlacing(OpenVisit& open, QObject* parent = nullptr);

    [[nodiscard]] bool moving() const { return trial_.has_value(); }
    [[nodiscard]] QString lies() const;
    /// The flags of the window with the one being moved where it is now; none where none is moved.
    [[nodiscard]] const std::vector<Flag>& flags() const { return figures_.flags; }

    /// Takes hold of one; false where it isn't there.
    bool take(const QString& id);
    /// Brings it so many mm from where it was taken, to the right and up, and to a line within `reach_mm`.
    void moveBy(double right_mm, double up_mm, double reach_mm);
    /// Brings it on by so many steps of the drag (5 mm or 1/4 in), without snapping.
    void step(int right, int up);
    /// Lets go: one edit, undone as one. Nothing where it lies where it was.
    void letGo();
    /// Back to where it was taken.
    void giveUp();

    /// The one being moved as it stands now; null where none is.
    [[nodiscard]] const Obstruction* held(const QString& id) const;
    /// How far it was brought, in mm to the right and up.
    [[nodiscard]] double right() const;
    [[nodiscard]] double up() const;
    /// The upright and the level line that it lies on, in mm from the opening's left edge and above its floor.
    [[nodiscard]] const std::optional<SnapLine>& across() const { return across_; }
    [[nodiscard]] const std::optional<SnapLine>& level() const { return level_; }
    /// Ids of what meets something at the window, with the one being moved where it is now.
    [[nodiscard]] QStringList meeting() const;

signals:
    void moved();

private:
    void place(double left, double bottom);

    OpenVisit& open_;
    std::optional<Window> trial_;
    WindowFigures figures_;
    std::string id_;
    ObstructionBox start_;
    ObstructionBox now_;
    std::optional<SnapLine> across_, level_;
};

}  // namespace truehang
