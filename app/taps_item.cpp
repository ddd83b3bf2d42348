// SPDX-License-Identifier: Apache-2.0
#include "taps_item.h"

#include "arrow_keys.h"

#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>
#include <algorithm>
#include <cmath>
#include <optional>

namespace truehang {

namespace {

constexpr double line = 2.0;
constexpr double halo = 5.0;
constexpr double key_step = 0.01;  // of the picture
constexpr double arm = 14.0;
constexpr double open_middle = 3.0;

/// The middle of a corner's taps; nothing without any.
std::optional<QPointF> middle_of(const Taps& taps) {
    if (taps.empty()) {
        return std::nullopt;
    }
    QPointF sum;
    for (const auto& [x, y] : taps) {
        sum += QPointF(x, y);
    }
    return sum / static_cast<double>(taps.size());
}

}  // namespace

TapsItem::TapsItem(QQuickItem* parent) : QQuickPaintedItem(parent) {
    setAntialiasing(true);
    setAcceptedMouseButtons(Qt::LeftButton);
    setActiveFocusOnTab(true);
    connect(this, &TapsItem::asked, this, [this] { update(); });
}

void TapsItem::setTape(PhotoTapeModel* tape) {
    if (tape_ == tape) {
        return;
    }
    if (tape_) {
        disconnect(tape_, nullptr, this, nullptr);
    }
    tape_ = tape;
    if (tape_) {
        connect(tape_, &PhotoTapeModel::changed, this, [this] { update(); });
    }
    emit asked();
}

QPointF TapsItem::shownAt(QPointF share) const { return {share.x() * width(), share.y() * height()}; }

void TapsItem::paint(QPainter* painter) {
    if (!tape_ || tape_->photo().isEmpty()) {
        return;
    }
    painter->setRenderHint(QPainter::Antialiasing);
    const PhotoPlane plane = tape_->kept();
    constexpr std::size_t corners = 4;
    const std::size_t block = tape_->asked() / corners;
    for (std::size_t sheet = 0; sheet < plane.sheets.size(); ++sheet) {
        paintQuad(*painter, plane.sheets[sheet].corners, block == (sheet == 0 ? 0 : sheet + 1));
    }
    paintQuad(*painter, plane.opening, block == 1);
    if (tape_->aimed()) {
        paintCross(*painter, shownAt(tape_->aim()));
    }
    if (hasActiveFocus()) {
        painter->setBrush(Qt::NoBrush);
        painter->setPen(QPen(ink_, 3.0));
        painter->drawRect(QRectF(0, 0, width(), height()).adjusted(1.5, 1.5, -1.5, -1.5));
    }
}

void TapsItem::paintQuad(QPainter& painter, const TappedCorners& corners, bool asked_for) const {
    std::vector<std::optional<QPointF>> middles;
    for (const Taps& taps : corners) {
        middles.push_back(middle_of(taps));
    }
    for (const auto& pen : {QPen(paper_, halo), QPen(asked_for ? thread_ : ink_, line)}) {
        painter.setPen(pen);
        painter.setBrush(Qt::NoBrush);
        for (std::size_t i = 0; i < middles.size(); ++i) {
            const auto& next = middles[(i + 1) % middles.size()];
            if (middles[i] && next) {
                painter.drawLine(shownAt(*middles[i]), shownAt(*next));
            }
            if (middles[i]) {
                painter.drawEllipse(shownAt(*middles[i]), halo, halo);
            }
        }
    }
}

/// Open in its middle, so that the corner is seen through it.
void TapsItem::paintCross(QPainter& painter, QPointF at) const {
    for (const auto& pen : {QPen(paper_, halo), QPen(thread_, line)}) {
        painter.setPen(pen);
        for (const QPointF way : {QPointF(1, 0), QPointF(-1, 0), QPointF(0, 1), QPointF(0, -1)}) {
            painter.drawLine(at + open_middle * way, at + arm * way);
        }
    }
}

void TapsItem::aim(QPointF point) {
    if (tape_) {
        tape_->aimAt({point.x() / std::max(1.0, width()), point.y() / std::max(1.0, height())});
    }
}

void TapsItem::mousePressEvent(QMouseEvent* event) {
    setKeepMouseGrab(true);
    aim(event->position());
    event->accept();
}

void TapsItem::mouseMoveEvent(QMouseEvent* event) { aim(event->position()); }

void TapsItem::mouseReleaseEvent(QMouseEvent* event) {
    aim(event->position());
    setKeepMouseGrab(false);
}

void TapsItem::mouseUngrabEvent() { setKeepMouseGrab(false); }

void TapsItem::keyPressEvent(QKeyEvent* event) {
    const auto way = way_of_arrow(event->key());
    const bool sets = event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter || event->key() == Qt::Key_Space;
    if (!tape_) {
        event->ignore();
    } else if (way && !tape_->aimed()) {
        tape_->aimAt({0.5, 0.5});
    } else if (way && (event->modifiers() & Qt::ShiftModifier) != 0) {
        tape_->nudge(way->x(), way->y());
    } else if (way) {
        tape_->aimAt(tape_->aim() + key_step * QPointF(*way));
    } else if (sets && tape_->aimed() && !event->isAutoRepeat()) {
        tape_->set();
    } else if (event->key() == Qt::Key_Escape && tape_->aimed()) {
        tape_->lower();
    } else {
        event->ignore();
    }
}

void TapsItem::focusInEvent(QFocusEvent* event) {
    QQuickPaintedItem::focusInEvent(event);
    update();
}

void TapsItem::focusOutEvent(QFocusEvent* event) {
    QQuickPaintedItem::focusOutEvent(event);
    update();
}

}  // namespace truehang
