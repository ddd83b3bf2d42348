// SPDX-License-Identifier: Apache-2.0
#include "placing_item.h"

#include "arrow_keys.h"

#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>
#include <algorithm>
#include <cmath>

namespace truehang {

namespace {

constexpr double drag_starts = 8.0;  // a finger's tremble is no drag
constexpr double snap_reach = 10.0;
constexpr double mark_side = 20.0;
constexpr int far_steps = 10;

}  // namespace

PlacingItem::PlacingItem(QQuickItem* parent) : ElevationItem(parent) {
    connect(this, &ElevationItem::drawn, this, [this] {
        meeting_ = placing_ ? placing_->meeting() : QStringList();
        update();
    });
    connect(this, &QQuickItem::activeFocusChanged, this, [this] { update(); });
    connect(this, &ElevationItem::asked, this, [this] { setActiveFocusOnTab(!movable_.isEmpty()); });
}

void PlacingItem::setPlacing(ObstructionPlacing* placing) {
    if (placing_ == placing) {
        return;
    }
    if (placing_) {
        disconnect(placing_, nullptr, this, nullptr);
    }
    placing_ = placing;
    if (placing_) {
        connect(placing_, &ObstructionPlacing::moved, this, [this] {
            meeting_ = placing_->meeting();
            update();
        });
    }
    emit placingChanged();
}

QPointF PlacingItem::movedBy() const {
    const double scale = elevation().scale;
    return placing_ ? QPointF(placing_->right() * scale, -placing_->up() * scale) : QPointF();
}

void PlacingItem::paintStroke(QPainter& painter, const Stroke& stroke) const {
    const QString part = QString::fromStdString(stroke.part);
    const bool is_moved = part == movable_ && placing_ && placing_->held(part) != nullptr;
    if (!is_moved && !meeting_.contains(part)) {
        ElevationItem::paintStroke(painter, stroke);
        return;
    }
    Stroke shown = stroke;
    if (meeting_.contains(part) && shown.role != Role::paper && shown.role != Role::wash) {
        shown.role = Role::thread;
        shown.width = std::max(shown.width, 1.5);
    }
    painter.save();
    if (is_moved) {
        painter.translate(movedBy());
    }
    ElevationItem::paintStroke(painter, shown);
    painter.restore();
}

void PlacingItem::paint(QPainter* painter) {
    ElevationItem::paint(painter);
    paintGuides(*painter);
    const bool moves = placing_ && placing_->held(movable_) != nullptr;
    if (const auto bounds = movable_.isEmpty() ? std::nullopt : boundsOf(movable_)) {
        painter->setBrush(Qt::NoBrush);
        painter->setPen(QPen(colourOf(Role::ink), hasActiveFocus() ? 3.0 : 1.5));
        painter->drawRect((moves ? bounds->translated(movedBy()) : *bounds).adjusted(-4, -4, 4, 4));
    }
    for (const QString& id : meeting_) {
        if (const auto bounds = boundsOf(id)) {
            paintMark(*painter, moves && id == movable_ ? bounds->translated(movedBy()) : *bounds);
        }
    }
}

void PlacingItem::paintGuides(QPainter& painter) const {
    const auto bounds = placing_ && placing_->held(movable_) != nullptr ? boundsOf(movable_) : std::nullopt;
    if (!bounds) {
        return;
    }
    QPen pen(colourOf(Role::ink), 1.0);
    pen.setDashPattern({2, 3});
    painter.setPen(pen);
    const Elevation& drawing = elevation();
    if (placing_->across()) {
        const double x = drawing.origin.x + placing_->across()->at * drawing.scale;
        painter.drawLine(QPointF(x, 0), QPointF(x, height()));
    }
    if (placing_->level()) {
        const Obstruction& moved = *placing_->held(movable_);
        const double lower = bounds->bottom() + movedBy().y();
        const double y = lower - (placing_->level()->at - moved.bottom.value_or(Length()).mm()) * drawing.scale;
        painter.drawLine(QPointF(0, y), QPointF(width(), y));
    }
}

/// A triangle with a stroke in it, within the drawing: beside the upper right corner, from the side over the thing
/// itself, since words stand beside it there.
void PlacingItem::paintMark(QPainter& painter, const QRectF& bounds) const {
    const QPointF at = isTurned() ? bounds.center() - QPointF(mark_side / 2, -mark_side)
                                  : bounds.topRight() + QPointF(mark_side * 0.4, -mark_side);
    const double x = std::clamp(at.x(), 2.0, std::max(2.0, width() - mark_side - 2));
    const double y = std::clamp(at.y(), 2.0, std::max(2.0, height() - mark_side - 2));
    const QPolygonF triangle(
        {QPointF(x, y + mark_side), QPointF(x + mark_side / 2, y + 2), QPointF(x + mark_side, y + mark_side)});
    painter.setPen(QPen(colourOf(Role::thread), 2.0, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
    painter.setBrush(colourOf(Role::paper));
    painter.drawPolygon(triangle);
    const double middle = x + mark_side / 2;
    painter.drawLine(QPointF(middle, y + 8), QPointF(middle, y + 13));
    painter.drawPoint(QPointF(middle, y + 16.5));
}

void PlacingItem::mousePressEvent(QMouseEvent* event) {
    ElevationItem::mousePressEvent(event);
    held_ = placing_ && !movable_.isEmpty() && obstructionAt(pressedAt()) == movable_;
    dragging_ = false;
    setKeepMouseGrab(held_);
    if (!movable_.isEmpty()) {
        forceActiveFocus(Qt::MouseFocusReason);
    }
}

void PlacingItem::mouseMoveEvent(QMouseEvent* event) {
    if (!held_ || elevation().scale <= 0) {
        return;
    }
    const QPointF by = event->position() - pressedAt();
    if (!dragging_ && std::hypot(by.x(), by.y()) > drag_starts) {
        dragging_ = placing_->take(movable_);
    }
    if (dragging_) {
        const double scale = elevation().scale;
        placing_->moveBy(by.x() / scale, -by.y() / scale, snap_reach / scale);
    }
}

void PlacingItem::mouseReleaseEvent(QMouseEvent* event) {
    const bool was_dragging = dragging_;
    held_ = dragging_ = false;
    setKeepMouseGrab(false);
    if (was_dragging) {
        placing_->letGo();
    } else {
        ElevationItem::mouseReleaseEvent(event);
    }
}

void PlacingItem::mouseUngrabEvent() {
    if (dragging_ && placing_) {
        placing_->giveUp();
    }
    held_ = dragging_ = false;
    setKeepMouseGrab(false);
}

void PlacingItem::keyPressEvent(QKeyEvent* event) {
    const bool moves = placing_ && placing_->moving();
    if (event->key() == Qt::Key_Escape && moves) {
        placing_->giveUp();
        return;
    }
    const auto way = way_of_arrow(event->key());
    if (!way || !placing_ || movable_.isEmpty() || dragging_ || (!moves && !placing_->take(movable_))) {
        event->ignore();
        return;
    }
    const int steps = (event->modifiers() & Qt::ShiftModifier) != 0 ? far_steps : 1;
    placing_->step(way->x() * steps, -way->y() * steps);
}

void PlacingItem::keyReleaseEvent(QKeyEvent* event) {
    if (!way_of_arrow(event->key()) || event->isAutoRepeat() || !placing_ || dragging_) {
        event->ignore();
        return;
    }
    placing_->letGo();
}

void PlacingItem::focusOutEvent(QFocusEvent* event) {
    ElevationItem::focusOutEvent(event);
    if (placing_ && !dragging_) {
        placing_->letGo();
    }
}

}  // namespace truehang
