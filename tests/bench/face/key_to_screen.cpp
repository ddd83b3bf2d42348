// SPDX-License-Identifier: Apache-2.0
// How long a key of the keypad takes to be seen, in a visit of forty windows: from the touch on the window to the end
// of the frame that shows the digit, the key being kept against the death of the program in between. Prints quantiles.
#include "../../qml/scene.h"

#include <QElapsedTimer>
#include <QGuiApplication>
#include <QTest>
#include <algorithm>
#include <cstdio>
#include <vector>

using namespace truehang;
using namespace truehang::test;

namespace {

constexpr int windows = 40;
constexpr int keys = 600;
constexpr int longest_ms = 2000;

/// The demo's house, each window of it until there are forty.
void fill(Scene& scene) {
    scene.openWindow("Pilot house", {});
    Notebook& notebook = scene.notebook();
    notebook.open()->edit("forty windows", [&](Survey& survey) {
        std::vector<Window> all;
        for (const Room& room : survey.rooms) {
            all.insert(all.end(), room.windows.begin(), room.windows.end());
        }
        auto& into = survey.rooms.front().windows;
        for (std::size_t at = 0; all.size() + at < windows; ++at) {
            Window copy = all[at % all.size()];
            copy.id = notebook.open()->newId();
            into.push_back(copy);
        }
        return true;
    });
    notebook.openWindow(notebook.visit()->windows()->value(0, "windowId").toString());
    notebook.walk()->jumpTo("opening.width.top");
    scene.settle();
}

/// Milliseconds from the touch to the end of the frame after which `typed` is what the field shows.
double press(Scene& scene, QPointingDevice& finger, const QPoint& at, const QString& typed) {
    bool seen = false;
    const auto heard = QObject::connect(&scene.window(), &QQuickWindow::frameSwapped, &scene.window(),
                                        [&] { seen = seen || scene.notebook().walk()->typed() == typed; });
    QElapsedTimer time;
    time.start();
    QTest::touchEvent(&scene.window(), &finger).press(0, at, &scene.window());
    QTest::touchEvent(&scene.window(), &finger).release(0, at, &scene.window());
    while (!seen && time.elapsed() < longest_ms) {
        QCoreApplication::processEvents(QEventLoop::WaitForMoreEvents, 5);
    }
    QObject::disconnect(heard);
    return static_cast<double>(time.nsecsElapsed()) / 1e6;
}

}  // namespace

int main(int argc, char** argv) {
    const QGuiApplication app(argc, argv);
    Scene scene;
    fill(scene);
    const std::unique_ptr<QPointingDevice> finger(QTest::createTouchDevice());
    std::vector<double> took;
    QString typed;
    scene.notebook().walk()->clearField();
    for (int key = 0; key < keys; ++key) {
        if (typed.size() == 4) {
            scene.notebook().walk()->clearField();
            scene.settle();
            typed.clear();
        }
        const QString digit = QString::number(key % 9 + 1);
        typed += digit;
        took.push_back(press(scene, *finger, scene.seen(scene.find(digit)).center().toPoint(), typed));
    }
    std::ranges::sort(took);
    const auto at = [&](double share) { return took[static_cast<std::size_t>(share * (keys - 1))]; };
    std::printf(
        "{\"key_to_screen_ms\": {\"median\": %.2f, \"p99\": %.2f, \"longest\": %.2f, \"keys\": %d, \"windows\": %d}}\n",
        at(0.5), at(0.99), took.back(), keys, windows);
    return 0;
}
