// SPDX-License-Identifier: Apache-2.0
#include "keys.h"

#include <QAccessible>
#include <QTest>

namespace truehang::test {

namespace {

constexpr int most_stops = 250;

QAccessible::Role role_of(QQuickItem* item) {
    const QAccessibleInterface* heard = QAccessible::queryAccessibleInterface(item);
    return heard == nullptr ? QAccessible::NoRole : heard->role();
}

bool is_a(const QQuickItem* item, const char* type) {
    return QByteArray(item->metaObject()->className()).startsWith(type);
}

QQuickItem* above(const QQuickItem* item, const char* inherits) {
    for (QQuickItem* up = item->parentItem(); up != nullptr; up = up->parentItem()) {
        if (up->inherits(inherits)) {
            return up;
        }
    }
    return nullptr;
}

/// A field shows its cursor, what is drawn on its own frame; everything else an ink frame.
bool shows_focus(const QQuickItem* item) {
    if (item->inherits("QQuickTextInput") || item->inherits("truehang::PlacingItem") ||
        item->inherits("truehang::MarksItem")) {
        return item->hasActiveFocus();
    }
    const auto children = item->childItems();
    return std::any_of(children.begin(), children.end(), [](const QQuickItem* child) {
        return child->isVisible() && (is_a(child, "FocusFrame") || shows_focus(child));
    });
}

/// Where it stands, beside others of the same scrolling part: there, however far that is scrolled.
QRectF place_of(const QQuickItem* item, const QQuickItem* scrolling) {
    const QRectF own(QPointF(), item->size());
    if (scrolling == nullptr) {
        return item->mapRectToScene(own);
    }
    auto* content = scrolling->property("contentItem").value<QQuickItem*>();
    return item->mapRectToItem(content, own);
}

bool stands_above(const QQuickItem* item, const QQuickItem* other) {
    const QQuickItem* part = above(item, "QQuickFlickable");
    const QQuickItem* its_part = above(other, "QQuickFlickable");
    const bool together = part == its_part;
    const QRectF here = together ? place_of(item, part) : place_of(part != nullptr ? part : item, nullptr);
    const QRectF there = together ? place_of(other, part) : place_of(its_part != nullptr ? its_part : other, nullptr);
    const bool one_column = here.left() < there.right() && there.left() < here.right();
    return one_column && here.bottom() <= there.top() + 1;
}

}  // namespace

QQuickItem* wordsAround(QQuickItem* item) {
    for (QQuickItem* up = item; up != nullptr; up = up->parentItem()) {
        if (is_a(up, "ChoiceList")) {
            return up;
        }
    }
    return nullptr;
}

QQuickItem* Keys::focused() const { return scene_.window().activeFocusItem(); }

QString Keys::at() const { return focused() == nullptr ? QString() : nameOf(focused()); }

QString Keys::said() const {
    return QStringLiteral("at %1; passed %2; there is %3").arg(at(), passed_.join(" | "), scene_.names().join(" | "));
}

void Keys::look() {
    const QQuickItem* item = focused();
    if (item == nullptr || item == scene_.window().contentItem()) {
        faults_ << QStringLiteral("nothing has the focus");
        return;
    }
    const QString name = QStringLiteral("%1 (%2)").arg(at(), scene_.notebook().screen());
    if (!shows_focus(item)) {
        faults_ << QStringLiteral("one doesn't see the focus: %1").arg(name);
    }
    const QRectF seen = scene_.seen(item);
    const QQuickItem* part = above(item, "QQuickFlickable");
    const double room = part == nullptr ? item->height() : std::min(item->height(), part->height());
    if (seen.height() < room - 2 || seen.width() < item->width() - 2) {
        faults_ << QStringLiteral("out of sight: %1, %2 of %3").arg(name).arg(seen.height()).arg(room);
    }
}

bool Keys::to(const QString& name) {
    passed_.clear();
    for (int stops = 0; stops < most_stops; ++stops) {
        if (at() == name) {
            return true;
        }
        scene_.key(Qt::Key_Tab);
        look();
        passed_ << at();
    }
    return false;
}

bool Keys::press(const QString& name, Qt::Key key) {
    if (!to(name)) {
        return false;
    }
    scene_.key(key, key == Qt::Key_Space ? QStringLiteral(" ") : QString());
    scene_.settle();
    return true;
}

bool Keys::choose(const QString& label, const QString& word) {
    passed_.clear();
    QQuickItem* list = nullptr;
    for (int stops = 0; stops < most_stops && list == nullptr; ++stops) {
        scene_.key(Qt::Key_Tab);
        look();
        passed_ << at();
        QQuickItem* around = focused() == nullptr ? nullptr : wordsAround(focused());
        list = around != nullptr && nameOf(around) == label ? around : nullptr;
    }
    if (list == nullptr) {
        return false;
    }
    const auto is_there = [&] { return at() == word; };
    for (const Qt::Key arrow : {Qt::Key_Up, Qt::Key_Down}) {
        QString before;
        while (!is_there() && before != at()) {
            before = at();
            scene_.key(arrow);
            look();
            passed_ << at();
        }
    }
    if (!is_there()) {
        return false;
    }
    scene_.key(Qt::Key_Space, QStringLiteral(" "));
    scene_.settle();
    return true;
}

bool Keys::write(const QString& field, const QString& words) {
    if (!to(field)) {
        return false;
    }
    scene_.key(Qt::Key_A, {}, Qt::ControlModifier);
    scene_.typeOnKeyboard(words);
    return true;
}

void Keys::lookAtOrder(const QList<QQuickItem*>& round) {
    QStringList leaps;
    for (int stop = 0; stop < round.size(); ++stop) {
        QQuickItem* next = round[(stop + 1) % round.size()];
        if (next != round[stop] && stands_above(next, round[stop])) {
            leaps << QStringLiteral("%1 after %2").arg(nameOf(next), nameOf(round[stop]));
        }
    }
    if (leaps.size() > 1) {  // one leads from the end to the beginning
        faults_ << QStringLiteral("out of order (%1): %2").arg(scene_.notebook().screen(), leaps.join(", "));
    }
}

void Keys::lookForUnreached(const QList<QQuickItem*>& round) {
    for (QQuickItem* target : scene_.targets()) {
        QQuickItem* words = role_of(target) == QAccessible::RadioButton ? wordsAround(target) : nullptr;
        QQuickItem* list = above(target, "QQuickListView");
        const bool reached = std::any_of(round.begin(), round.end(), [&](QQuickItem* stop) {
            return stop == target || (words != nullptr && wordsAround(stop) == words) ||
                   (list != nullptr && above(stop, "QQuickListView") == list);
        });
        if (!reached) {
            faults_ << QStringLiteral("never reached: %1 (%2)").arg(nameOf(target), scene_.notebook().screen());
        }
    }
}

QStringList Keys::faultsOfRound() {
    faults_.clear();
    QList<QQuickItem*> round;
    for (int stops = 0; stops < most_stops; ++stops) {
        scene_.key(Qt::Key_Tab);
        if (round.contains(focused())) {
            break;
        }
        look();
        round << focused();
    }
    lookAtOrder(round);
    lookForUnreached(round);
    QList<QQuickItem*> back;
    for (int stops = 0; stops < round.size(); ++stops) {
        back.prepend(focused());
        scene_.key(Qt::Key_Backtab, {}, Qt::ShiftModifier);
        look();
    }
    if (QSet<QQuickItem*>(back.begin(), back.end()) != QSet<QQuickItem*>(round.begin(), round.end())) {
        faults_ << QStringLiteral("another way back: %1").arg(scene_.notebook().screen());
    }
    return std::exchange(faults_, {});
}

}  // namespace truehang::test
