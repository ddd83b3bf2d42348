// SPDX-License-Identifier: Apache-2.0
#include "hearing.h"

#include "keys.h"
#include "places.h"

#include <QDir>
#include <QFile>
#include <QGuiApplication>
#include <QQmlContext>
#include <QQmlProperty>
#include <QTest>
#include <algorithm>
#include <array>

using namespace truehang;
using namespace truehang::test;

namespace {

void write_down(const QString& name, const QString& text) {
    const QString folder = qEnvironmentVariable("TRUEHANG_PICTURES");
    QFile file(folder + QStringLiteral("/heard-") + name + QStringLiteral(".txt"));
    if (!folder.isEmpty() && QDir().mkpath(folder) && file.open(QIODevice::WriteOnly)) {
        file.write(text.toUtf8());
    }
}

/// What stands twice on a page, and does the same from both places.
constexpr std::array stand_twice{"two are called alike: What hangs here", "two are called alike: Measure this window"};

bool begins(const QStringList& said, const QString& words) {
    return std::ranges::any_of(said, [&](const QString& one) { return one.startsWith(words); });
}

}  // namespace

// What a screen reader hears of every screen, and what it is told at once.
class HearingTest : public QObject {
    Q_OBJECT

private slots:
    void everyScreenIsHeard_data() {
        QTest::addColumn<QSize>("size");
        QTest::newRow("phone") << QSize(360, 760);
        QTest::newRow("tablet") << QSize(1024, 768);
    }
    void everyScreenIsHeard() {
        QFETCH(QSize, size);
        Scene scene(size);
        open_house(scene);
        QStringList faults;
        for (const Stop& place : places()) {
            go_to(scene, place);
            const QList<Heard> heard = heardOn(scene);
            QVERIFY(heard.size() > 3);
            const QString name = QStringLiteral("%1%2-%3")
                                     .arg(QLatin1String(place.screen), *place.panel ? "-" + QString(place.panel)
                                                                       : place.open ? QString("-opened")
                                                                                    : QString())
                                     .arg(size.width());
            write_down(name, written(heard));
            for (const QString& fault : faultsOfHearing(heard)) {
                if (!std::ranges::any_of(stand_twice, [&](const char* twice) { return fault.endsWith(twice); })) {
                    faults << name + ": " + fault;
                }
            }
        }
        QVERIFY2(faults.isEmpty(), qPrintable("\n" + faults.join("\n")));
    }

    void theEarsCanFail() {
        Scene scene;
        QCOMPARE(faultsOfHearing(heardOn(scene)), QStringList());
        const auto call = [&](const char* control, const QString& name) {
            QObject* attached =
                QQmlProperty(scene.find(control), "Accessible.name", qmlContext(scene.find(control))).object();
            QVERIFY(attached != nullptr);
            attached->setProperty("name", name);
        };
        call("find", "Settings");
        QCOMPARE(faultsOfHearing(heardOn(scene)).join(""), QString("two are called alike: Settings"));
        call("Take in a visit from a file", "›");
        QVERIFY(faultsOfHearing(heardOn(scene)).join("").contains("without words: Button “›”"));
    }

    // A reading is kept, turned back, done again; one that can't be read is refused.
    void whatBecomesOfAReadingIsSaid() {
        Scene scene({360, 760}, Scene::Visits::none);
        const Announcements listening;
        Keys keys(scene);
        QVERIFY2(keys.press("New visit"), qPrintable(keys.said()));
        QVERIFY2(keys.press("Add the first window"), qPrintable(keys.said()));
        QVERIFY2(keys.press("Recess"), qPrintable(keys.said()));
        scene.settle();
        (void)Announcements::taken();
        scene.typeOnKeyboard("12//3");
        QVERIFY(Announcements::taken().isEmpty());  // nothing is said of what is still being typed
        scene.key(Qt::Key_Return);
        const QString refused = scene.notebook().walk()->line();
        QVERIFY(!refused.isEmpty());
        QCOMPARE(Announcements::taken(), QStringList{refused});
        for (int key = 0; key < 5; ++key) {
            scene.key(Qt::Key_Backspace);
        }
        scene.typeOnKeyboard("1238");
        scene.key(Qt::Key_Return);
        QStringList said = Announcements::taken();
        QVERIFY2(begins(said, "Kept: Width at the top: 1238"), qPrintable(said.join(" | ")));
        QVERIFY2(begins(said, "Width in the middle, reading in mm"), qPrintable(said.join(" | ")));
        scene.key(Qt::Key_Z, {}, Qt::ControlModifier);
        said = Announcements::taken();
        QVERIFY2(begins(said, "Undone: Width at the top: 1238"), qPrintable(said.join(" | ")));
        scene.key(Qt::Key_Y, {}, Qt::ControlModifier);
        said = Announcements::taken();
        QVERIFY2(begins(said, "Done again: Width at the top: 1238"), qPrintable(said.join(" | ")));
    }

    // What a choice or a field brings is said as it comes; what stood there when the page was opened isn't.
    void flagsAreSaidAsTheyCome() {
        Scene scene;
        open_house(scene);
        const Announcements listening;
        Keys keys(scene);
        go_to(scene, {"hanging"});
        QVERIFY(Announcements::taken().isEmpty());
        QVERIFY2(keys.choose("Moved by", "A cord"), qPrintable(keys.said()));
        const QStringList said = Announcements::taken();
        QVERIFY2(begins(said, "Caution. "), qPrintable(said.join(" | ")));
        go_to(scene, {"figures"});
        QVERIFY(Announcements::taken().isEmpty());
        go_to(scene,
              {"fabrics", "", [](Notebook& n) { n.fabrics()->edit(first_key(n.fabrics()->fabrics(), "fabricId")); }});
        (void)Announcements::taken();
        QVERIFY2(keys.write("Width of the roll", "wide"), qPrintable(keys.said()));
        scene.key(Qt::Key_Tab);
        const QString fault = scene.notebook().fabrics()->form()->value(2, "fault").toString();  // name, role, width
        QVERIFY(!fault.isEmpty());
        QCOMPARE(Announcements::taken(), QStringList{fault});
        QCOMPARE(Scene::warnings(), QStringList());
    }
};

int main(int argc, char** argv) {
    const QGuiApplication app(argc, argv);
    QGuiApplication::setFont(QFont(QStringLiteral("Lato")));
    HearingTest test;
    return QTest::qExec(&test, argc, argv);
}

#include "hearing_test.moc"
