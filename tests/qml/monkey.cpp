// SPDX-License-Identifier: Apache-2.0
#include "scene.h"

#include "survey/counted.h"
#include "writing.h"

#include <SQLiteCpp/Database.h>
#include <SQLiteCpp/Statement.h>
#include <QFile>
#include <QGuiApplication>
#include <QRandomGenerator>
#include <QTemporaryDir>
#include <QTest>
#include <array>
#include <cstdio>
#include <map>
#include <set>

using namespace truehang;
using namespace truehang::test;

// By hand, not among the tests: what comes of an event hangs on when the store answers, so no two runs are the same.
// Hands that know nothing: touches, drags and keys by chance, from the seed in TRUEHANG_SEED. Nothing warns, nothing
// breaks, and every reading that was said to be kept is in the store afterwards: standing, or where undo has it.
class MonkeyTest : public QObject {
    Q_OBJECT

    static constexpr int events = 20'000;
    static constexpr int settle_every = 500;
    static constexpr int called_back_every = 1'500;

    QRandomGenerator chance_{static_cast<quint32>(qEnvironmentVariableIntValue("TRUEHANG_SEED"))};
    std::map<std::string, std::string> kept_;  // reading and its visit

    int upTo(int most) { return static_cast<int>(chance_.bounded(static_cast<quint32>(most))); }

    QPoint anywhere(Scene& scene) { return {upTo(scene.window().width()), upTo(scene.window().height())}; }

    /// To the system's file dialog, which is no part of this and warns by itself.
    static bool leadsOut(QQuickItem* target) { return nameOf(target).contains(QLatin1String("file")); }

    void touchSomething(Scene& scene) {
        const QList<QQuickItem*> targets = scene.targets();
        QPoint at = anywhere(scene);
        if (!targets.isEmpty()) {
            QQuickItem* target = targets[upTo(static_cast<int>(targets.size()))];
            const QRectF seen = scene.seen(target);
            at = seen.isEmpty() || leadsOut(target) ? at : seen.center().toPoint();
        }
        QTest::mouseClick(&scene.window(), Qt::LeftButton, {}, at);
    }

    void drag(Scene& scene) {
        const QPoint from = anywhere(scene);
        const QPoint to = anywhere(scene);
        QTest::mousePress(&scene.window(), Qt::LeftButton, {}, from);
        QTest::mouseMove(&scene.window(), (from + to) / 2);
        QTest::mouseMove(&scene.window(), to);
        QTest::mouseRelease(&scene.window(), Qt::LeftButton, {}, to);
    }

    void press(Scene& scene) {
        static constexpr std::array keys{Qt::Key_1,         Qt::Key_2,     Qt::Key_4,      Qt::Key_7,
                                         Qt::Key_9,         Qt::Key_0,     Qt::Key_Return, Qt::Key_Return,
                                         Qt::Key_Backspace, Qt::Key_Tab,   Qt::Key_Escape, Qt::Key_Down,
                                         Qt::Key_Up,        Qt::Key_Space, Qt::Key_M,      Qt::Key_Slash};
        const Qt::Key key = keys[static_cast<std::size_t>(upTo(static_cast<int>(keys.size())))];
        const bool writes = key >= Qt::Key_Space && key <= Qt::Key_AsciiTilde;
        QTest::sendKeyEvent(QTest::Click, &scene.window(), key, writes ? QString(QChar(key).toLower()) : QString(),
                            Qt::NoModifier);
    }

    static void pressKey(Scene& scene, const QString& key) {
        const QQuickItem* item = scene.find(key);
        if (item != nullptr && !scene.seen(item).isEmpty()) {
            QTest::mouseClick(&scene.window(), Qt::LeftButton, {}, scene.seen(item).center().toPoint());
        }
    }

    /// A number as it is typed on the ladder, where nothing lies over the keypad.
    void measure(Scene& scene) {
        for (int digit = 3 + upTo(2); digit > 0; --digit) {
            pressKey(scene, QString::number(1 + upTo(9)));
        }
        pressKey(scene, QStringLiteral("Next"));
    }

    /// To a window of a visit by chance, where there is one: away from there chance seldom finds back.
    void callBack(Scene& scene) {
        Notebook& notebook = scene.notebook();
        const ShownRows* visits = notebook.visits();
        if (visits->count() == 0) {
            return;
        }
        notebook.openVisit(visits->value(upTo(visits->count()), "visitId").toString());
        scene.settle();
        const ShownRows* windows = notebook.visit()->windows();
        if (windows->count() > 0) {
            notebook.openWindow(windows->value(upTo(windows->count()), "windowId").toString());
        }
        scene.settle();
    }

    void turn(Scene& scene) {
        QTest::sendKeyEvent(QTest::Click, &scene.window(), upTo(2) == 0 ? Qt::Key_Z : Qt::Key_Y, {},
                            Qt::ControlModifier);
    }

    void doSomething(Scene& scene) {
        const bool measures = scene.notebook().screen() == QLatin1String("walk");
        const int what = measures ? upTo(105) : upTo(60);  // where nothing is measured, chance looks about more
        if (what >= 100) {
            measure(scene);
        } else if (what < 45) {
            touchSomething(scene);
        } else if (what < 85) {
            press(scene);
        } else if (what < 92) {
            QTest::mouseClick(&scene.window(), Qt::LeftButton, {}, anywhere(scene));
        } else if (what < 97) {
            drag(scene);
        } else {
            turn(scene);
        }
    }

    void remember(Notebook& notebook, const QString& station) {
        const Window* window = notebook.open()->window();
        const auto shape = window ? window->shape.known() : std::nullopt;
        if (shape) {
            const auto counted = counted_readings(*window, *shape);
            const auto* found = find_counted(counted, bytes(station));
            if (found) {
                kept_[found->reading->id] = bytes(notebook.open()->visitId());
            }
        }
    }

    static std::set<std::string> visitsIn(SQLite::Database& store) {
        std::set<std::string> all;
        SQLite::Statement rows(store, "SELECT visit_id FROM visit");
        while (rows.executeStep()) {
            all.insert(rows.getColumn(0).getString());
        }
        return all;
    }

    static bool isIn(SQLite::Database& store, const std::string& reading) {
        SQLite::Statement rows(store,
                               "SELECT (SELECT count(*) FROM reading WHERE instr(body, ?1)) + "
                               "(SELECT count(*) FROM edit WHERE instr(changes, ?1))");
        rows.bind(1, reading);
        return rows.executeStep() && rows.getColumn(0).getInt() > 0;
    }

private slots:
    void losesNothing() {
        std::size_t kept = 0;
        Scene scene;
        Notebook& notebook = scene.notebook();
        connect(notebook.walk(), &WalkModel::kept, this, [&](const QString& station) { remember(notebook, station); });
        scene.openWindow("Net store, to measure", {});
        for (int event = 0; event < events; ++event) {
            doSomething(scene);
            QCoreApplication::processEvents();
            if (event % called_back_every == 0) {
                callBack(scene);
            }
            if (event % settle_every == 0) {
                scene.settle();
                QVERIFY2(Scene::warnings().isEmpty(),
                         qPrintable(QStringLiteral("event %1: %2").arg(event).arg(Scene::warnings().join('\n'))));
            }
        }
        scene.settle();
        QVERIFY2(Scene::warnings().isEmpty(), qPrintable(Scene::warnings().join('\n')));
        const QTemporaryDir copied;  // the store itself belongs to the program
        for (const char* file : {"/truehang.sqlite", "/truehang.sqlite-wal"}) {
            QFile::copy(scene.bench().folder() + file, copied.path() + file);
        }
        SQLite::Database store((copied.path() + "/truehang.sqlite").toStdString(), SQLite::OPEN_READWRITE);
        const std::set<std::string> visits = visitsIn(store);
        for (const auto& [reading, visit] : kept_) {
            if (visits.contains(visit)) {  // a visit that was emptied out of the bin took its readings with it
                QVERIFY2(isIn(store, reading), reading.c_str());
                ++kept;
            }
        }
        std::printf("%d events, %zu readings kept, %zu of them in visits that are still there\n", events, kept_.size(),
                    kept);
        QVERIFY(kept > 10);
    }
};

int main(int argc, char** argv) {
    const QGuiApplication app(argc, argv);
    QGuiApplication::setFont(QFont(QStringLiteral("Lato")));
    qputenv("QTEST_FUNCTION_TIMEOUT", "3600000");  // on a machine that has other things to do
    MonkeyTest test;
    return QTest::qExec(&test, argc, argv);
}

#include "monkey.moc"
