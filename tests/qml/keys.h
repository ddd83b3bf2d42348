// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "scene.h"

#include <QList>
#include <QStringList>

namespace truehang::test {

/// Somebody who has a keyboard and nothing else. Everything that the keyboard comes to is looked at: whether one sees
/// that it is there, whether it is in sight, whether it comes in the order of reading.
class Keys {
public:
    explicit Keys(Scene& scene) : scene_(scene) {}

    /// What the item that has the focus is called.
    [[nodiscard]] QString at() const;
    /// Tab, as often as it takes to come to what is called this; false where it never comes there.
    bool to(const QString& name);
    /// Comes there and presses it.
    bool press(const QString& name, Qt::Key key = Qt::Key_Return);
    /// Comes to a list of words with Tab, to this word of it with the arrows, and chooses it.
    bool choose(const QString& label, const QString& word);
    /// Comes to a field, wipes what stands there and writes this.
    bool write(const QString& field, const QString& words);

    /// Once round with Tab and once back: faults of what it came to, and controls that it never came to.
    [[nodiscard]] QStringList faultsOfRound();
    /// Faults seen on the way so far.
    [[nodiscard]] const QStringList& faults() const { return faults_; }
    /// Where it is and what it passed, for a test that fails.
    [[nodiscard]] QString said() const;

private:
    [[nodiscard]] QQuickItem* focused() const;
    void look();
    void lookAtOrder(const QList<QQuickItem*>& round);
    void lookForUnreached(const QList<QQuickItem*>& round);

    Scene& scene_;
    QStringList faults_;
    QStringList passed_;
};

/// The list of words that a word to choose stands in, or null.
[[nodiscard]] QQuickItem* wordsAround(QQuickItem* item);

}  // namespace truehang::test
