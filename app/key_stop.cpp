// SPDX-License-Identifier: Apache-2.0
#include "key_stop.h"

namespace truehang {

KeyStop::KeyStop(QQuickItem* parent) : QQuickItem(parent) { setActiveFocusOnTab(true); }

void KeyStop::focusInEvent(QFocusEvent* event) {
    QQuickItem::focusInEvent(event);
    setVisualFocus(event->reason() == Qt::TabFocusReason || event->reason() == Qt::BacktabFocusReason);
}

void KeyStop::focusOutEvent(QFocusEvent* event) {
    QQuickItem::focusOutEvent(event);
    setVisualFocus(false);
}

void KeyStop::setVisualFocus(bool is_seen) {
    if (visual_focus_ != is_seen) {
        visual_focus_ = is_seen;
        emit visualFocusChanged();
    }
}

}  // namespace truehang
