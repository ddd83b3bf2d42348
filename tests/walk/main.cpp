// SPDX-License-Identifier: Apache-2.0
#include "job.h"
#include "start.h"

#include <CLI/CLI.hpp>
#include <QAccessible>
#include <QGuiApplication>
#include <cstdio>
#include <exception>
#include <string>

int main(int argc, char** argv) {
    CLI::App options("Walks through a whole visit by touches and keys, without a display.", "truehang-walk");
    std::string out;
    options.add_option("--out", out, "Folder for pictures, sheet and figures")->type_name("DIR")->required();
    options.allow_extras();  // Qt's own, as -platform
    CLI11_PARSE(options, argc, argv);

    if (qEnvironmentVariableIsEmpty("QT_QPA_PLATFORM")) {
        qputenv("QT_QPA_PLATFORM", "offscreen");
    }
    qputenv("QT_SCALE_FACTOR", "1");
    truehang::walk::listen_for_warnings();
    const QGuiApplication app(argc, argv);
    QGuiApplication::setApplicationName(QStringLiteral("truehang"));
    truehang::make_face_known().wait();
    QAccessible::setActive(true);
    try {
        truehang::walk::Job(QString::fromStdString(out)).run();
    } catch (const std::exception& error) {
        std::fprintf(stderr, "truehang-walk: %s\n", error.what());
        return 1;
    }
    return 0;
}
