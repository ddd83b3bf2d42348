// SPDX-License-Identifier: Apache-2.0
#include "announced.h"

#include <QAccessible>

namespace truehang {

void Announced::setWords(const QString& words) {
    if (words_ != words) {
        words_ = words;
        emit wordsChanged();
        if (isComponentComplete()) {
            post();
        }
    }
}

void Announced::say(const QString& words) {
    setWords(words);
    post();
}

void Announced::componentComplete() {
    QQuickItem::componentComplete();
    post();
}

/// Once everything else that hangs on the same change has followed it, the name of what shows the words too.
void Announced::post() {
    if (!live_ || words_.isEmpty() || posted_ || !QAccessible::isActive()) {
        return;
    }
    posted_ = true;
    QMetaObject::invokeMethod(
        this,
        [this] {
            posted_ = false;
            if (parentItem() != nullptr && parentItem()->isVisible() && !words_.isEmpty()) {
                QAccessibleEvent event(parentItem(), QAccessible::Alert);
                QAccessible::updateAccessibility(&event);
            }
        },
        Qt::QueuedConnection);
}

}  // namespace truehang
