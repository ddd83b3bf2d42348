// SPDX-License-Identifier: Apache-2.0
#include "hearing.h"

#include <private/qguiapplication_p.h>
#include <qpa/qplatformaccessibility.h>
#include <qpa/qplatformintegration.h>

#include <QMetaEnum>
#include <QRegularExpression>
#include <algorithm>

namespace truehang::test {

namespace {

QStringList announced;

void listen(QAccessibleEvent* event) {
    if (event->type() == QAccessible::Alert && event->accessibleInterface() != nullptr) {
        announced << event->accessibleInterface()->text(QAccessible::Name);
    }
}

QString word_of(QAccessible::Role role) {
    return QString::fromLatin1(QMetaEnum::fromType<QAccessible::Role>().valueToKey(role));
}

void collect(QAccessibleInterface* heard, int depth, int above, QList<Heard>& into) {
    if (heard == nullptr || !heard->isValid() || heard->state().invisible) {
        return;
    }
    into << Heard{depth,
                  heard->role(),
                  heard->text(QAccessible::Name),
                  heard->text(QAccessible::Description),
                  heard->text(QAccessible::Value),
                  heard->state(),
                  qobject_cast<QQuickItem*>(heard->object()),
                  above};
    const int here = static_cast<int>(into.size()) - 1;
    for (int child = 0; child < heard->childCount(); ++child) {
        collect(heard->child(child), depth + 1, here, into);
    }
}

QStringList states_of(const Heard& one) {
    QStringList states;
    const auto say = [&](bool holds, const char* word) {
        if (holds) {
            states << QLatin1String(word);
        }
    };
    say(one.state.focusable, "focusable");
    say(one.state.focused, "focused");
    say(one.state.checkable && !one.state.checked, "not checked");
    say(one.state.checked, "checked");
    say(one.state.selected, "selected");
    say(one.state.expanded, "expanded");
    say(one.state.collapsed, "collapsed");
    say(one.state.disabled, "disabled");
    say(one.state.readOnly, "read only");
    say(one.state.editable, "editable");
    return states;
}

bool is_control(const Heard& one) {
    return one.role == QAccessible::Button || one.role == QAccessible::RadioButton ||
           one.role == QAccessible::EditableText || one.role == QAccessible::CheckBox;
}

/// A control's name with those of the groups that it stands in.
QString full_name(const QList<Heard>& heard, const Heard& one) {
    QString name = one.name;
    for (int above = one.above; above >= 0; above = heard[above].above) {
        if (heard[above].role == QAccessible::Grouping) {
            name = heard[above].name + QStringLiteral(": ") + name;
        }
    }
    return name;
}

QString said(const Heard& one) { return QStringLiteral("%1 “%2”").arg(word_of(one.role), one.name); }

void faults_of_one(const QList<Heard>& heard, const Heard& one, QStringList& faults) {
    static const QRegularExpression words(QStringLiteral("[\\p{L}\\p{N}]"));
    const bool must_be_named = is_control(one) || one.state.focusable || one.role == QAccessible::Graphic ||
                               one.role == QAccessible::StaticText || one.role == QAccessible::Heading;
    if (must_be_named && !words.match(one.name).hasMatch()) {
        faults << QStringLiteral("without words: %1").arg(said(one));
    }
    if (one.state.focusable && (one.role == QAccessible::NoRole || one.role == QAccessible::Client)) {
        faults << QStringLiteral("without a role: %1").arg(said(one));
    }
    if (one.name != one.name.trimmed() || one.name.endsWith(QLatin1Char(',')) || one.name.contains(", ,") ||
        one.name.contains(QStringLiteral("  ")) || one.name.contains(QStringLiteral(". ,"))) {
        faults << QStringLiteral("words that aren't there are heard: %1").arg(said(one));
    }
    if (one.role != QAccessible::Window && !one.name.isEmpty() &&
        (one.description == one.name || one.value == one.name)) {
        faults << QStringLiteral("said twice: %1").arg(said(one));
    }
    if (one.above >= 0 && is_control(heard[one.above])) {
        faults << QStringLiteral("part of a control: %1 in %2").arg(said(one), said(heard[one.above]));
    }
    const bool spoken_above = one.above >= 0 && heard[one.above].role == QAccessible::StaticText;
    if (spoken_above) {
        faults << QStringLiteral("said twice: %1 in %2").arg(said(one), said(heard[one.above]));
    }
}

}  // namespace

QList<Heard> heardOn(const Scene& scene) {
    QList<Heard> heard;
    collect(QAccessible::queryAccessibleInterface(&const_cast<Scene&>(scene).window()), 0, -1, heard);
    return heard;
}

QString written(const QList<Heard>& heard) {
    QString text;
    for (const Heard& one : heard) {
        text += QString(2 * one.depth, QLatin1Char(' ')) + said(one);
        text += one.value.isEmpty() ? QString() : QStringLiteral(" = “%1”").arg(one.value);
        text += one.description.isEmpty() ? QString() : QStringLiteral(" – %1").arg(one.description);
        const QStringList states = states_of(one);
        text += states.isEmpty() ? QString() : QStringLiteral(" [%1]").arg(states.join(QStringLiteral(", ")));
        text += QLatin1Char('\n');
    }
    return text;
}

QStringList faultsOfHearing(const QList<Heard>& heard) {
    QStringList faults;
    QStringList controls;
    for (const Heard& one : heard) {
        faults_of_one(heard, one, faults);
        if (is_control(one)) {
            const QString name = full_name(heard, one);
            if (controls.contains(name)) {
                faults << QStringLiteral("two are called alike: %1").arg(name);
            }
            controls << name;
        }
    }
    return faults;
}

Announcements::Announcements() {
    announced.clear();
    QGuiApplicationPrivate::platformIntegration()->accessibility()->setActive(true);  // as a screen reader does
    QAccessible::installUpdateHandler(listen);
}

Announcements::~Announcements() {
    QAccessible::installUpdateHandler(nullptr);
    QGuiApplicationPrivate::platformIntegration()->accessibility()->setActive(false);
}

QStringList Announcements::taken() { return std::exchange(announced, {}); }

}  // namespace truehang::test
