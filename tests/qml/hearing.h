// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "scene.h"

#include <QAccessible>
#include <QList>
#include <QStringList>

namespace truehang::test {

/// One thing that a screen reader comes to.
struct Heard {
    int depth = 0;
    QAccessible::Role role = QAccessible::NoRole;
    QString name, description, value;
    QAccessible::State state;
    QQuickItem* item = nullptr;
    int above = -1;  ///< the one that it stands in; -1: none
};

/// Everything that a screen reader comes to, in its order. What it is told to be invisible it passes by.
[[nodiscard]] QList<Heard> heardOn(const Scene& scene);

/// As text, indented: role, name, value, description, state.
[[nodiscard]] QString written(const QList<Heard>& heard);

/// What a person would hear badly or not at all.
[[nodiscard]] QStringList faultsOfHearing(const QList<Heard>& heard);

/// What is announced to a screen reader at once (alerts), while this lives.
class Announcements {
public:
    Announcements();
    ~Announcements();
    Announcements(const Announcements&) = delete;
    Announcements& operator=(const Announcements&) = delete;

    /// Since it was last asked.
    [[nodiscard]] static QStringList taken();
};

}  // namespace truehang::test
