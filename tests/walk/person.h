// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "program.h"

#include <QAccessible>
#include <QPointingDevice>
#include <QQuickItem>
#include <QStringList>
#include <memory>

namespace truehang::walk {

/// Eyes and a finger: finds what is on the screen by what it is called to those who hear it, scrolls to it, touches it
/// and types. Whatever isn't found throws, with what stood there instead.
class Person {
public:
    explicit Person(Program& program);

    /// Touches the control with this name. `nth` counts from the top where several have it.
    void touch(const QString& name, int nth = 0);
    /// Touches words that are no control of ours: a row of the system's dialog.
    void touchWords(const QString& words);
    /// Touches the first control whose name begins so.
    void touchBeginning(const QString& beginning);
    /// Writes in the field with this name, in place of what stood there, and leaves it with Return.
    void write(const QString& field, const QString& text);
    /// Touches the choice within its group: "Tab" in "Heading".
    void choose(const QString& group, const QString& choice);
    /// A key of a keyboard at the phone.
    void press(QChar key);

    /// Waits until something with this name, or beginning so, is there.
    void expect(const QString& name);
    void expectBeginning(const QString& beginning);
    [[nodiscard]] bool sees(const QString& name) const;
    /// A choice of this name stands chosen.
    [[nodiscard]] bool isChosen(const QString& choice) const;
    /// The name of the first thing on the screen that begins so, in all its words; empty where none is.
    [[nodiscard]] QString heard(const QString& beginning) const;
    /// The number in the field of the station, as it is heard; empty where none is or there is no station.
    [[nodiscard]] QString reading() const;
    /// The names of everything on the page, scrolled away or not.
    [[nodiscard]] QStringList names() const;

private:
    struct Wanted {
        QString name;
        bool beginning = false;
        bool control = false;
        int nth = 0;
    };
    [[nodiscard]] QList<QQuickItem*> items() const;
    [[nodiscard]] QQuickItem* find(const Wanted& wanted, const QQuickItem* within = nullptr) const;
    QQuickItem* await(const Wanted& wanted);
    void touchItem(QQuickItem* item);
    void bringIntoView(QQuickItem* item);
    /// Drags what scrolls; down where `pixels` is positive.
    void drag(QQuickItem* scrolled, double pixels);
    [[nodiscard]] QRectF seen(const QQuickItem* item) const;

    Program& program_;
    std::unique_ptr<QPointingDevice> finger_;
};

}  // namespace truehang::walk
