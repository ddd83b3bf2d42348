// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "elevation_item.h"
#include "obstruction_placing.h"

#include <QPointer>
#include <QStringList>

namespace truehang {

/// The elevation with what is in the way to be moved on it: dragged, or with the arrow keys (Shift: ten steps) while it
/// has the focus. What meets something is drawn in thread with a mark beside it.
class PlacingItem : public truehang::ElevationItem {  // in full: by this name QML finds its base
    Q_OBJECT
    Q_PROPERTY(truehang::ObstructionPlacing* placing READ placing WRITE setPlacing NOTIFY placingChanged)
    /// The obstruction that is moved; empty: none.
    Q_PROPERTY(QString movable MEMBER movable_ NOTIFY asked)

public:
    explicit PlacingItem(QQuickItem* parent = nullptr);

    [[nodiscard]] ObstructionPlacing* placing() const { return placing_; }
    void setPlacing(ObstructionPlacing* placing);

    void paint(QPainter* painter) override;

signals:
    void placingChanged();

protected:
    void paintStroke(QPainter& painter, const Stroke& stroke) const override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void mouseReleaseEvent(QMouseEvent* event) override;
    void mouseUngrabEvent() override;
    void keyPressEvent(QKeyEvent* event) override;
    void keyReleaseEvent(QKeyEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;

private:
    [[nodiscard]] QPointF movedBy() const;
    void paintGuides(QPainter& painter) const;
    void paintMark(QPainter& painter, const QRectF& bounds) const;

    QPointer<ObstructionPlacing> placing_;
    QString movable_;
    QStringList meeting_;
    bool held_ = false;
    bool dragging_ = false;
};

}  // namespace truehang
