// SPDX-License-Identifier: Apache-2.0
#include "person.h"

#include <QTest>
#include <algorithm>
#include <stdexcept>

namespace truehang::walk {

namespace {

constexpr int patience = 30'000;  // milliseconds, reached only where something never comes

/// How long a finger rests before it lets go, milliseconds: part of the gesture, or the page would fly on (Flickable
/// throws what is let go within 100 ms of its last move).
constexpr int rest = 120;
/// How often a finger's place is looked at, milliseconds.
constexpr int frame = 17;

QString name_of(QQuickItem* item) {
    QAccessibleInterface* heard_as = QAccessible::queryAccessibleInterface(item);
    return heard_as != nullptr ? heard_as->text(QAccessible::Name) : QString();
}

bool is_control(QQuickItem* item) {
    QAccessibleInterface* heard_as = QAccessible::queryAccessibleInterface(item);
    if (heard_as == nullptr || !item->isEnabled()) {
        return false;
    }
    switch (heard_as->role()) {
        case QAccessible::Button:
        case QAccessible::RadioButton:
        case QAccessible::EditableText:
        case QAccessible::ListItem:
            return true;
        default:
            return false;
    }
}

bool is_checked(QQuickItem* item) {
    QAccessibleInterface* heard_as = QAccessible::queryAccessibleInterface(item);
    return heard_as != nullptr && heard_as->state().checked;
}

void collect(QQuickItem* item, QList<QQuickItem*>& into) {
    if (!item->isVisible() || item->opacity() <= 0) {
        return;
    }
    into << item;
    for (QQuickItem* child : item->childItems()) {
        collect(child, into);
    }
}

bool inside(const QQuickItem* item, const QQuickItem* other) {
    for (const QQuickItem* above = item; above != nullptr; above = above->parentItem()) {
        if (above == other) {
            return true;
        }
    }
    return false;
}

QQuickItem* scrolled_by(const QQuickItem* item) {
    QQuickItem* above = item->parentItem();
    while (above != nullptr && !above->inherits("QQuickFlickable")) {
        above = above->parentItem();
    }
    return above;
}

}  // namespace

Person::Person(Program& program) : program_(program), finger_(QTest::createTouchDevice()) {}

QList<QQuickItem*> Person::items() const {
    QList<QQuickItem*> all;
    collect(program_.window().contentItem(), all);
    return all;
}

QStringList Person::names() const {
    QStringList all;
    for (QQuickItem* item : items()) {
        const QString name = name_of(item);
        if (!name.isEmpty()) {
            all << name;
        }
    }
    return all;
}

QQuickItem* Person::find(const Wanted& wanted, const QQuickItem* within) const {
    QList<QQuickItem*> found;
    for (QQuickItem* item : items()) {
        if ((within != nullptr && !inside(item, within)) || (wanted.control && !is_control(item))) {
            continue;
        }
        const QString name = name_of(item);
        if (wanted.beginning ? name.startsWith(wanted.name) : name == wanted.name) {
            found << item;
        }
    }
    return found.size() > wanted.nth ? found.at(wanted.nth) : nullptr;
}

QQuickItem* Person::await(const Wanted& wanted) {
    if (!QTest::qWaitFor([&] { return find(wanted) != nullptr; }, patience)) {
        throw std::runtime_error("nothing here is called \"" + wanted.name.toStdString() +
                                 "\"; there is: " + names().join(QStringLiteral(" | ")).toStdString());
    }
    program_.settle();
    QQuickItem* found = find(wanted);
    if (found == nullptr) {
        throw std::runtime_error("\"" + wanted.name.toStdString() + "\" came and went");
    }
    return found;
}

QRectF Person::seen(const QQuickItem* item) const {
    QRectF rectangle = item->mapRectToScene(QRectF(QPointF(), item->size()));
    for (const QQuickItem* above = item->parentItem(); above != nullptr; above = above->parentItem()) {
        if (above->clip()) {
            rectangle &= above->mapRectToScene(QRectF(QPointF(), above->size()));
        }
    }
    return rectangle & QRectF(QPointF(), program_.window().size());
}

void Person::drag(QQuickItem* scrolled, double pixels) {
    const QRectF port = seen(scrolled);
    const double far = port.height() * 0.8;
    const double by = qBound(-far, pixels, far);
    // In the margin, where nothing else can be meant; a finger's first 12 px only say that it drags.
    const double x = port.left() + 12;
    const double from = by < 0 ? port.bottom() - port.height() * 0.05 : port.top() + port.height() * 0.05;
    const double to = from + by + (by < 0 ? -12 : 12);
    QQuickWindow* window = &program_.window();
    QTest::touchEvent(window, finger_.get()).press(0, QPointF(x, from).toPoint(), window);
    constexpr int moves = 12;
    for (int move = 1; move <= moves; ++move) {
        QTest::touchEvent(window, finger_.get())
            .move(0, QPointF(x, from + (to - from) * move / moves).toPoint(), window);
        QTest::qWait(frame);
    }
    QTest::qWait(rest);
    QTest::touchEvent(window, finger_.get()).release(0, QPointF(x, to).toPoint(), window);
    if (!QTest::qWaitFor([&] { return !scrolled->property("moving").toBool(); }, patience)) {
        throw std::runtime_error("the page doesn't come to rest");
    }
    program_.settle();
}

void Person::bringIntoView(QQuickItem* item) {
    QQuickItem* scrolled = scrolled_by(item);
    for (int turn = 0; scrolled != nullptr && turn < 60; ++turn) {
        const QRectF whole = item->mapRectToScene(QRectF(QPointF(), item->size()));
        const QRectF port = seen(scrolled);
        if (whole.top() >= port.top() - 0.5 && whole.bottom() <= port.bottom() + 0.5) {
            return;
        }
        const double by =
            whole.bottom() > port.bottom() ? port.bottom() - whole.bottom() - 8 : port.top() - whole.top() + 8;
        const double before = whole.top();
        drag(scrolled, by);
        if (qAbs(item->mapRectToScene(QRectF(QPointF(), item->size())).top() - before) < 0.5) {
            return;  // it scrolls no further
        }
    }
}

void Person::touchItem(QQuickItem* item) {
    bringIntoView(item);
    const QRectF place = seen(item);
    if (place.isEmpty()) {
        throw std::runtime_error(
            "\"" + name_of(item).toStdString() + "\" can't be brought into view: it lies at " +
            QString::number(item->mapRectToScene(QRectF(QPointF(), item->size())).top()).toStdString());
    }
    const QPoint middle = place.center().toPoint();
    QTest::touchEvent(&program_.window(), finger_.get()).press(0, middle, &program_.window());
    QTest::touchEvent(&program_.window(), finger_.get()).release(0, middle, &program_.window());
    program_.settle();
}

void Person::touch(const QString& name, int nth) { touchItem(await({name, false, true, nth})); }

void Person::touchWords(const QString& words) { touchItem(await({words})); }

void Person::touchBeginning(const QString& beginning) { touchItem(await({beginning, true, true})); }

void Person::press(QChar key) {
    QTest::keyClick(&program_.window(), key.toLatin1());
    program_.settle();
}

void Person::write(const QString& field, const QString& text) {
    touchItem(await({field, false, true}));
    QTest::keyClick(&program_.window(), Qt::Key_A, Qt::ControlModifier);
    QTest::keyClick(&program_.window(), Qt::Key_Delete);
    for (const QChar letter : text) {
        QTest::keyClick(&program_.window(), letter.toLatin1());
    }
    QTest::keyClick(&program_.window(), Qt::Key_Return);
    program_.settle();
}

void Person::choose(const QString& group, const QString& choice) {
    const QQuickItem* within = await({group, false, false});
    QQuickItem* option = find({choice, false, true}, within);
    if (option == nullptr) {
        throw std::runtime_error("\"" + group.toStdString() + "\" offers no \"" + choice.toStdString() + "\"");
    }
    if (is_checked(option)) {
        return;
    }
    touchItem(option);
    if (!QTest::qWaitFor([&] { return isChosen(choice); }, patience)) {
        throw std::runtime_error("\"" + choice.toStdString() + "\" isn't chosen by a touch");
    }
}

bool Person::isChosen(const QString& choice) const {
    const auto all = items();
    return std::any_of(all.begin(), all.end(),
                       [&](QQuickItem* item) { return is_checked(item) && name_of(item) == choice; });
}

void Person::expect(const QString& name) { (void)await({name}); }

void Person::expectBeginning(const QString& beginning) { (void)await({beginning, true}); }

bool Person::sees(const QString& name) const { return find({name}) != nullptr; }

QString Person::heard(const QString& beginning) const {
    QQuickItem* item = find({beginning, true});
    return item != nullptr ? name_of(item) : QString();
}

QString Person::reading() const {
    for (QQuickItem* item : items()) {
        QAccessibleInterface* heard_as = QAccessible::queryAccessibleInterface(item);
        if (heard_as != nullptr && heard_as->role() == QAccessible::EditableText &&
            name_of(item).contains(QStringLiteral(", reading in "))) {
            return heard_as->text(QAccessible::Value);
        }
    }
    return {};
}

}  // namespace truehang::walk
