// SPDX-License-Identifier: Apache-2.0
// The least that Qt Quick can show: a window of the phone's size with nothing in it. The app's first frame is measured
// against this one's.
#include <QGuiApplication>
#include <QQmlApplicationEngine>

int main(int argc, char** argv) {
    QGuiApplication application(argc, argv);
    QQmlApplicationEngine engine;
    engine.loadData("import QtQuick\nWindow { width: 360; height: 760; visible: true }\n");
    return engine.rootObjects().isEmpty() ? 1 : QGuiApplication::exec();
}
