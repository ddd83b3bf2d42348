// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <QPoint>
#include <optional>

namespace truehang {

/// Which way an arrow key goes on the screen: to the right and down, by one; none for another key.
[[nodiscard]] inline std::optional<QPoint> way_of_arrow(int key) {
    switch (key) {
        case Qt::Key_Left:
            return QPoint(-1, 0);
        case Qt::Key_Right:
            return QPoint(1, 0);
        case Qt::Key_Up:
            return QPoint(0, -1);
        case Qt::Key_Down:
            return QPoint(0, 1);
        default:
            return std::nullopt;
    }
}

}  // namespace truehang
