// SPDX-License-Identifier: Apache-2.0
#include "demo.h"
#include "devices.h"
#include "document/document.h"
#include "languages.h"
#include "notebook.h"
#include "print.h"
#include "start.h"
#include "survey_keeping.h"

#include <CLI/CLI.hpp>
#include <QDir>
#include <QFile>
#include <QGuiApplication>
#include <QQmlComponent>
#include <QQmlEngine>
#include <QQuickWindow>
#include <QStandardPaths>
#include <cstdio>
#include <memory>
#include <optional>

namespace {

using namespace truehang;

struct Asked {
    std::string data;
    std::string demo;
    std::string window_size;
    std::vector<std::string> print;
    std::string sheet = "measure";
    std::string paper, unit;
};

/// Of all windows where the window is "-".
PrintAsked print_asked(const Asked& asked) {
    PrintAsked print;
    print.kinds = {sheet_kind(asked.sheet).value_or(SheetKind::measure)};
    print.window = asked.print[1] == "-" ? QString() : QString::fromStdString(asked.print[1]);
    print.paper = paper_of(asked.paper);
    print.unit = length_unit(asked.unit);
    return print;
}

int print_only(const Asked& options) {
    const std::vector<std::string>& asked = options.print;
    QFile file(QString::fromStdString(asked[0]));
    if (!file.open(QIODevice::ReadOnly)) {
        std::fprintf(stderr, "%s: %s\n", asked[0].c_str(), qPrintable(file.errorString()));
        return 2;
    }
    const auto survey = read_survey(file.readAll().toStdString());
    if (!survey) {
        for (const Fault& fault : survey.error()) {
            std::fprintf(stderr, "%s: %s\n", fault.pointer.c_str(), fault.text.c_str());
        }
        return 2;
    }
    const auto printed = print_sheets(*survey, print_asked(options), QString::fromStdString(asked[2]));
    if (!printed) {
        std::fprintf(stderr, "%s: %s\n", printed.error().where.c_str(), printed.error().text.c_str());
        return 2;
    }
    return 0;
}

/// "360x760" as width and height; none for anything else.
std::optional<QSize> sides_of(const std::string& text) {
    const QStringList sides = QString::fromStdString(text).split(QLatin1Char('x'));
    const QSize size(sides.value(0).toInt(), sides.value(1).toInt());
    return sides.size() == 2 && size.width() > 0 && size.height() > 0 ? std::optional(size) : std::nullopt;
}

void size_window(QObject& face, const std::string& asked) {
    const auto size = sides_of(asked);
    auto* window = qobject_cast<QQuickWindow*>(&face);
    if (window && size) {
        window->resize(*size);
    }
}

constexpr int speak_anew = 1000;  // how the event loop ends where another language was chosen

/// The face until it is closed or another language is chosen: everything is said by the time it is shown, so it is
/// shown anew, at the same place.
int show_face(SurveyKeeping& keeping, Devices& devices, const QString& data, const std::string& window_size,
              const std::shared_future<void>& fonts) {
    const QString settings = data + QStringLiteral("/settings.ini");
    speak(Settings(settings).language());
    Notebook notebook(keeping, devices, settings);
    QObject::connect(
        notebook.settings(), &Settings::languageChanged, notebook.settings(),
        [] { QCoreApplication::exit(speak_anew); }, Qt::QueuedConnection);
    QQmlEngine engine;
    QQmlComponent main(&engine, QUrl(QStringLiteral("qrc%1Main.qml").arg(QLatin1String(face_folder))));
    fonts.wait();
    const std::unique_ptr<QObject> face(
        main.createWithInitialProperties({{QStringLiteral("notebook"), QVariant::fromValue(&notebook)}}));
    if (!face) {
        qWarning() << main.errors();
        return 1;
    }
    size_window(*face, window_size);
    QGuiApplication::setQuitOnLastWindowClosed(true);
    const int ended = QGuiApplication::exec();
    QGuiApplication::setQuitOnLastWindowClosed(false);  // this window goes, and perhaps another comes
    return ended;
}

int run(const Asked& asked, const std::shared_future<void>& fonts) {
    const QString data = asked.data.empty() ? QStandardPaths::writableLocation(QStandardPaths::AppDataLocation)
                                            : QString::fromStdString(asked.data);
    QDir().mkpath(data);
    SurveyKeeping keeping(data, system_time, system_ids());
    if (!asked.demo.empty()) {
        import_demo(keeping, QString::fromStdString(asked.demo));
    }
    Devices devices = system_devices();
    int ended = speak_anew;
    while (ended == speak_anew) {
        ended = show_face(keeping, devices, data, asked.window_size, fonts);
    }
    return ended;
}

}  // namespace

int main(int argc, char** argv) {
    CLI::App options("Measures windows for curtains and works out what to cut.", "truehang");
    Asked asked;
    options.add_option("--data", asked.data, "Folder that holds the visits")->type_name("DIR");
    options.add_option("--demo", asked.demo, "Takes in these survey documents where there is no visit yet")
        ->type_name("DIR")
        ->check(CLI::ExistingDirectory);
    options.add_option("--window-size", asked.window_size, "Size of the window, as 360x760")
        ->type_name("WxH")
        ->check([](const std::string& size) {
            return sides_of(size) ? std::string() : std::string("two whole numbers are understood, as 360x760");
        });
    options.add_option("--print", asked.print, "Writes the sheet of a window (- for all) as PDF and ends")
        ->type_name("SURVEY WINDOW PDF")
        ->expected(3);
    options.add_option("--sheet", asked.sheet, "With --print: measure, cutting, making, hanging, light or agreed")
        ->check(CLI::IsMember({"measure", "cutting", "making", "hanging", "light", "agreed"}));
    options.add_option("--paper", asked.paper, "With --print: a4 or letter; the locale's where none is given")
        ->check(CLI::IsMember({"a4", "letter"}));
    options.add_option("--unit", asked.unit, "With --print: mm or in; the survey's own where none is given")
        ->check(CLI::IsMember({"mm", "in"}));
    options.allow_extras();  // Qt's own, as -platform
    CLI11_PARSE(options, argc, argv);

    if (!asked.print.empty() && qEnvironmentVariableIsEmpty("QT_QPA_PLATFORM")) {
        qputenv("QT_QPA_PLATFORM", "offscreen");
    }
    const QGuiApplication app(argc, argv);
    QGuiApplication::setApplicationName(QStringLiteral("truehang"));
    QGuiApplication::setDesktopFileName(QStringLiteral("truehang"));
    const std::shared_future<void> fonts = make_face_known();
    if (asked.print.empty()) {
        return run(asked, fonts);
    }
    fonts.wait();
    return print_only(asked);
}
