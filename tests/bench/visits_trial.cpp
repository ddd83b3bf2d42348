// SPDX-License-Identifier: Apache-2.0
// visits_trial [VISITS]: the list of visits as a person meets it, with so many of them (10,000): opening the store and
// the list's first page, a search, and every frame while it is scrolled from end to end with an edit committed
// every 50 ms. Prints JSON; frames are timed from the window's request to draw to the end of rendering.
#include "devices.h"
#include "notebook.h"
#include "start.h"
#include "survey_keeping.h"

#include <QElapsedTimer>
#include <QGuiApplication>
#include <QQmlApplicationEngine>
#include <QQuickItem>
#include <QQuickWindow>
#include <QTemporaryDir>
#include <QTest>
#include <QTimer>
#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <vector>

namespace {

using namespace truehang;
constexpr int patience = 120'000;

/// Times from a request to draw to the end of rendering.
class FrameClock : public QObject {
public:
    explicit FrameClock(QQuickWindow& window) {
        window.installEventFilter(this);
        connect(
            &window, &QQuickWindow::afterRendering, this,
            [this] {
                if (running_.isValid()) {
                    frames.push_back(static_cast<double>(running_.nsecsElapsed()) / 1e6);
                    running_.invalidate();
                }
            },
            Qt::DirectConnection);
    }
    bool eventFilter(QObject*, QEvent* event) override {
        if (event->type() == QEvent::UpdateRequest) {
            running_.start();
        }
        return false;
    }
    std::vector<double> frames;

private:
    QElapsedTimer running_;
};

double quantile(std::vector<double> values, double share) {
    if (values.empty()) {
        return 0.0;
    }
    std::sort(values.begin(), values.end());
    return values[static_cast<std::size_t>(share * static_cast<double>(values.size() - 1))];
}

Survey house(int number) {
    Survey survey;
    survey.id = "visit-" + std::to_string(number);
    survey.title = "House " + std::to_string(number);
    survey.measured_at = QDate(2016, 1, 1).addDays(number / 4).toString(Qt::ISODate).toStdString() + "T09:00:00+00:00";
    survey.client.emplace();
    survey.client->name = "Client " + std::to_string(number * 7919 % 10007);
    survey.site.emplace();
    survey.site->address = std::to_string(number % 90 + 1) + " Slipway Row, Ferrymouth";
    Room room;
    room.id = "parlour";
    room.name = "Parlour";
    Window window;
    window.id = "south-" + std::to_string(number);
    window.name = "South window";
    window.shape = Shape::recess;
    room.windows.push_back(window);
    survey.rooms.push_back(room);
    return survey;
}

bool fill(const std::filesystem::path& folder, int visits) {
    StoreSurroundings given{system_time, system_ids(), {}};
    given.survives_power_cut = false;
    const auto store = Store::open(folder, std::move(given));
    for (int i = 0; store && i < visits; ++i) {
        if (!(*store)->keep(house(i), "Visit made")) {
            return false;
        }
    }
    return store.ok();
}

QQuickItem* list_in(QQuickItem* item) {
    if (item->inherits("QQuickListView")) {
        return item;
    }
    for (QQuickItem* child : item->childItems()) {
        if (QQuickItem* found = list_in(child)) {
            return found;
        }
    }
    return nullptr;
}

/// Throws the list towards older visits again and again until every one has gone by, then back.
void scroll(Notebook& notebook, QQuickItem& list, int visits) {
    list.setProperty("maximumFlickVelocity", 20000.0);
    for (const double speed : {20000.0, -20000.0}) {
        for (int thrown = 0; thrown < 1000; ++thrown) {
            QMetaObject::invokeMethod(&list, "flick", Q_ARG(double, 0.0), Q_ARG(double, speed));
            QTest::qWait(120);
            const bool at_end = list.property(speed > 0 ? "atYBeginning" : "atYEnd").toBool();
            if (at_end && (speed < 0 || notebook.visits()->count() >= visits)) {
                break;
            }
        }
    }
}

/// Until the answer is shown, milliseconds; the list is whole again afterwards.
double search(Notebook& notebook) {
    QElapsedTimer searching;
    searching.start();
    notebook.setSearch(QStringLiteral("house 1234 slipway"));
    static_cast<void>(QTest::qWaitFor([&] { return notebook.visits()->count() < 60; }, patience));
    const double ms = static_cast<double>(searching.nsecsElapsed()) / 1e6;
    notebook.setSearch({});
    static_cast<void>(QTest::qWaitFor([&] { return notebook.visits()->count() >= 60; }, patience));
    return ms;
}

/// Opens the newest visit, so that there is something to edit, and goes back to the list.
void open_newest(Notebook& notebook, int visits) {
    notebook.openVisit(QStringLiteral("visit-%1").arg(visits - 1));
    static_cast<void>(QTest::qWaitFor([&] { return notebook.screen() == QStringLiteral("visit"); }, patience));
    notebook.setScreen(QStringLiteral("visits"));
    QTest::qWait(200);
}

int run(int visits) {
    const QTemporaryDir folder;
    if (!fill(folder.path().toStdString(), visits)) {
        std::fprintf(stderr, "the visits were not kept\n");
        return 1;
    }
    QElapsedTimer opening;
    opening.start();
    SurveyKeeping keeping(folder.path(), system_time, system_ids());
    Devices devices = system_devices();
    Notebook notebook(keeping, devices, folder.filePath(QStringLiteral("settings.ini")));
    QQmlApplicationEngine engine;
    engine.setInitialProperties({{QStringLiteral("notebook"), QVariant::fromValue(&notebook)}});
    engine.load(QUrl(QStringLiteral("qrc%1Main.qml").arg(QLatin1String(face_folder))));
    auto* window = engine.rootObjects().isEmpty() ? nullptr : qobject_cast<QQuickWindow*>(engine.rootObjects().first());
    const auto listed = [&notebook] { return notebook.visits()->count() > 0; };
    if (!window || !QTest::qWaitFor(listed, patience)) {
        return 1;
    }
    const double open_ms = static_cast<double>(opening.nsecsElapsed()) / 1e6;
    const double search_ms = search(notebook);
    open_newest(notebook, visits);
    QQuickItem* const list = list_in(window->contentItem());
    if (!list) {
        return 1;
    }
    int commits = 0;
    QTimer edits;
    QObject::connect(&edits, &QTimer::timeout, &edits, [&] {
        notebook.visit()->renameRoom(QStringLiteral("parlour"), QStringLiteral("Parlour %1").arg(++commits));
    });
    FrameClock clock(*window);
    edits.start(50);
    scroll(notebook, *list, visits);
    std::printf(
        "{\"visits\": %d, \"open_ms\": %.1f, \"search_ms\": %.1f, \"shown\": %d, \"commits\": %d, "
        "\"frames\": %zu, \"frame_median_ms\": %.2f, \"frame_99_ms\": %.2f, \"frame_most_ms\": %.2f}\n",
        visits, open_ms, search_ms, notebook.visits()->count(), commits, clock.frames.size(),
        quantile(clock.frames, 0.5), quantile(clock.frames, 0.99), quantile(clock.frames, 1.0));
    return 0;
}

}  // namespace

int main(int argc, char** argv) {
    const QGuiApplication app(argc, argv);
    make_face_known().wait();
    return run(argc > 1 ? std::atoi(argv[1]) : 10'000);
}
