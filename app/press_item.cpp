// SPDX-License-Identifier: Apache-2.0
#include "press_item.h"

#include <QGuiApplication>
#include <QMetaMethod>
#include <QStyleHints>

namespace truehang {

PressItem::PressItem(QQuickItem* parent) : KeyStop(parent) {
    setAcceptedMouseButtons(Qt::LeftButton);
    setAcceptTouchEvents(true);
}

void PressItem::setFocusPolicy(Qt::FocusPolicy policy) {
    if (focus_policy_ != policy) {
        focus_policy_ = policy;
        setActiveFocusOnTab((policy & Qt::TabFocus) != 0);
        emit focusPolicyChanged();
    }
}

void PressItem::setPressed(bool pressed) {
    if (pressed_ != pressed) {
        pressed_ = pressed;
        emit pressedChanged();
    }
}

void PressItem::press() {
    if ((focus_policy_ & Qt::ClickFocus) == Qt::ClickFocus) {
        forceActiveFocus(Qt::MouseFocusReason);
    }
    setPressed(true);
    if (isSignalConnected(QMetaMethod::fromSignal(&PressItem::pressAndHold))) {
        hold_.start(QGuiApplication::styleHints()->mousePressAndHoldInterval(), this);
    }
}

void PressItem::moveTo(QPointF at) {
    const bool here = contains(at) && !was_held_;
    setPressed(here);
    if (!here) {
        hold_.stop();
    }
}

void PressItem::letGo() {
    const bool here = pressed_;
    forget();
    if (here) {
        emit clicked();
    }
}

void PressItem::forget() {
    finger_ = no_finger;
    hold_.stop();
    was_held_ = false;
    setPressed(false);
}

void PressItem::mousePressEvent(QMouseEvent* event) {
    press();
    event->accept();
}

void PressItem::mouseMoveEvent(QMouseEvent* event) {
    moveTo(event->position());
    event->accept();
}

void PressItem::mouseReleaseEvent(QMouseEvent* event) {
    moveTo(event->position());
    letGo();
    event->accept();
}

void PressItem::mouseUngrabEvent() { forget(); }
void PressItem::touchUngrabEvent() { forget(); }

/// The finger that pressed it first.
bool PressItem::follows(const QEventPoint& finger) {
    if (finger_ == no_finger && finger.state() == QEventPoint::Pressed) {
        finger_ = finger.id();
    }
    return finger.id() == finger_;
}

void PressItem::touchEvent(QTouchEvent* event) {
    if (event->type() == QEvent::TouchCancel) {
        forget();
        return;
    }
    for (const QEventPoint& finger : event->points()) {
        if (!follows(finger)) {
            continue;
        }
        if (finger.state() == QEventPoint::Pressed) {
            press();
        } else if (finger.state() == QEventPoint::Updated) {
            moveTo(finger.position());
        } else if (finger.state() == QEventPoint::Released) {
            moveTo(finger.position());
            letGo();
        }
    }
}

void PressItem::keyPressEvent(QKeyEvent* event) {
    if (event->key() != Qt::Key_Space) {
        KeyStop::keyPressEvent(event);
        return;
    }
    if (!event->isAutoRepeat()) {
        setPressed(true);
    }
}

void PressItem::keyReleaseEvent(QKeyEvent* event) {
    if (event->key() != Qt::Key_Space) {
        KeyStop::keyReleaseEvent(event);
        return;
    }
    if (!event->isAutoRepeat()) {
        letGo();
    }
}

void PressItem::timerEvent(QTimerEvent* event) {
    if (event->timerId() != hold_.timerId()) {
        KeyStop::timerEvent(event);
        return;
    }
    hold_.stop();
    was_held_ = true;
    setPressed(false);
    emit pressAndHold();
}

void PressItem::focusOutEvent(QFocusEvent* event) {
    KeyStop::focusOutEvent(event);
    if (finger_ == no_finger) {  // what Space began ends; a finger goes on
        setPressed(false);
    }
}

}  // namespace truehang
