// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "../app/support.h"

#include <QColor>
#include <QPointingDevice>
#include <QQmlApplicationEngine>
#include <QQuickItem>
#include <QQuickWindow>
#include <QStringList>
#include <functional>
#include <memory>

namespace truehang::test {

/// The whole face on the whole program: a fresh folder with the demo surveys in it (or nothing), Main.qml in a window,
/// and hands that find things by what they are called and touch them as a person does. Every warning printed meanwhile
/// is kept.
class Scene {
public:
    enum class Visits { demo, none };

    /// `meanwhile` gets the folder with the visits in it while no program runs.
    explicit Scene(QSize size = {360, 760}, Visits visits = Visits::demo,
                   const std::function<void(const QString& folder)>& meanwhile = {});
    ~Scene();
    Scene(const Scene&) = delete;
    Scene& operator=(const Scene&) = delete;

    [[nodiscard]] Notebook& notebook() { return bench_.notebook(); }
    [[nodiscard]] Bench& bench() { return bench_; }
    [[nodiscard]] QQuickWindow& window() { return *window_; }
    [[nodiscard]] QQmlEngine& engine() { return *engine_; }
    [[nodiscard]] QObject& theme() { return *theme_; }

    /// Lets everything posted be answered and the window be laid out.
    void settle();
    /// Rows of a test's data, `size`, `look` and `scale`: phone and tablet, light and dark, the phone in the largest
    /// letters too.
    static void sizesAndLooks();
    void dress(const QByteArray& look, double scale);
    /// Opens the demo visit with this title, and the window of it with this title.
    void openWindow(const QString& visit, const QString& window);

    /// The visible item that is called this, or null.
    [[nodiscard]] QQuickItem* find(const QString& name) const;
    /// All names that are on the screen, to say what was there instead.
    [[nodiscard]] QStringList names() const;
    /// Whether the word of a list that is called this is the chosen one, as a screen reader is told.
    [[nodiscard]] bool isChosen(const QString& name) const;
    /// Touches the middle of what is called this; false where it isn't there.
    bool touch(const QString& name);
    bool click(const QString& name);
    /// Brings it into sight, as the Tab key does, and touches it; false where it isn't there.
    bool reach(const QString& name);
    /// What the person chooses in the system's dialog, which then closes; false where none is open.
    bool chooseInDialog(const QString& file);
    void key(Qt::Key key, const QString& text = {}, Qt::KeyboardModifiers modifiers = {});
    void typeOnKeyboard(const QString& text);
    void grab(const QString& name);
    /// The same, named for the window's width, the letters and the look too.
    void grabDressed(const QString& name);

    [[nodiscard]] QList<QQuickItem*> items() const;
    [[nodiscard]] QList<QQuickItem*> targets() const;
    [[nodiscard]] QList<QQuickItem*> texts() const;
    /// Where it is seen, in the window: empty where a scrolling part hides it.
    [[nodiscard]] QRectF seen(const QQuickItem* item) const;

    /// What is wrong with how this screen lies: cut-off text, text on text, targets too small or too near.
    [[nodiscard]] QStringList faultsOfLayout() const;

    [[nodiscard]] static QStringList warnings();

private:
    void faultsOfTexts(QStringList& faults) const;
    void faultsOfTargets(QStringList& faults) const;

    Bench bench_;
    std::unique_ptr<QQmlApplicationEngine> engine_;
    QQuickWindow* window_ = nullptr;
    QObject* theme_ = nullptr;
    std::unique_ptr<QPointingDevice> finger_;
};

/// What a person hears an item called.
[[nodiscard]] QString nameOf(QQuickItem* item);

/// Contrast of two colours (WCAG 2.2, success criterion 1.4.3, relative luminance of sRGB).
[[nodiscard]] double contrast(const QColor& one, const QColor& other);

}  // namespace truehang::test
