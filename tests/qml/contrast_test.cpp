// SPDX-License-Identifier: Apache-2.0
#include "elevation_item.h"
#include "scene.h"

#include <QDir>
#include <QFile>
#include <QGuiApplication>
#include <QMetaProperty>
#include <QTest>

using namespace truehang;
using namespace truehang::test;

namespace {

// Figures 7 : 1 (WCAG 2.2, 1.4.6), other words 4.5 : 1 (1.4.3), shapes that say something 3 : 1 (1.4.11).
constexpr double figures = 7.0;
constexpr double words = 4.5;
constexpr double shapes = 3.0;

/// A colour of the theme on another, as they are used.
struct Use {
    const char* on_top;
    const char* ground;
    double least;
    const char* what;
};
constexpr Use uses[] = {
    {"ink", "paper", figures, "readings, figures, sentences, labels of drawings"},
    {"ink", "wash", figures, "the same under a finger"},
    {"soft", "paper", figures, "words of second rank, which name figures too"},
    {"soft", "wash", figures, "the same under a finger"},
    {"thread", "paper", figures, "the figure on the tape being measured"},
    {"paper", "thread", figures, "the next action, which may name a figure"},
    {"paper", "ink", figures, "what is selected in a field"},
    {"paper", "soft", words, "a next action that can’t be done yet"},
    {"ink", "paper", shapes, "flags, underlines, focus frame, drawing"},
    {"ink", "wash", shapes, "the drawing’s lines round the glass; underline and frame of what is pressed"},
    {"soft", "paper", shapes, "edges of keys and fields, hairlines of drawings, pinholes"},
    {"soft", "wash", shapes, "hairlines over the glass"},
    {"thread", "paper", shapes, "stitches, the tape being measured, the ground of the next action"},
    {"thread", "wash", shapes, "the tape over the glass"},
    {"paper", "thread", shapes, "focus frame and pressed frame in the next action"},
};

/// Colours that say nothing alone (WCAG 2.2, 1.4.11 asks only for what is needed to understand).
constexpr const char* say_nothing[] = {
    "rule",  // between rows: only controls/Rule.qml draws it
    "wash",  // a ground: what is pressed has a line in ink too
};

QStringList coloursOf(const QObject& theme) {
    QStringList names;
    const QMetaObject& meta = *theme.metaObject();
    for (int index = 0; index < meta.propertyCount(); ++index) {
        if (meta.property(index).typeId() == QMetaType::QColor) {
            names << QLatin1String(meta.property(index).name());
        }
    }
    return names;
}

/// Colours of the theme of which nothing here says what they are for.
QStringList without_a_use(const QStringList& colours) {
    QStringList known;
    for (const Use& use : uses) {
        known << use.on_top << use.ground;
    }
    for (const char* name : say_nothing) {
        known << name;
    }
    QStringList unknown;
    for (const QString& colour : colours) {
        if (!known.contains(colour)) {
            unknown << colour;
        }
    }
    return unknown;
}

QString read(const QString& path) {
    QFile file(path);
    return file.open(QIODevice::ReadOnly) ? QString::fromUtf8(file.readAll()) : QString();
}

}  // namespace

class ContrastTest : public QObject {
    Q_OBJECT

private slots:
    // W3C, WCAG 2.2, contrast ratio: black on white is 21 : 1; #767676 on white is the first grey over 4.5 : 1 (G18).
    void theFormulaIsTheStandards() {
        QCOMPARE(contrast(Qt::black, Qt::white), 21.0);
        QVERIFY(contrast(QColor(0x76, 0x76, 0x76), Qt::white) > 4.5);
        QVERIFY(contrast(QColor(0x77, 0x77, 0x77), Qt::white) < 4.5);
    }

    void everyColourHasAUse() {
        Scene scene;
        const QStringList colours = coloursOf(scene.theme());
        QVERIFY(colours.size() >= 6);
        QCOMPARE(without_a_use(colours), QStringList());
        QCOMPARE(without_a_use({"ink", "gold"}), QStringList{"gold"});
    }

    void coloursStandOut_data() {
        QTest::addColumn<QByteArray>("look");
        QTest::addColumn<double>("lux");
        QTest::newRow("light") << QByteArray("light") << 500.0;
        QTest::newRow("dark") << QByteArray("dark") << 500.0;
        QTest::newRow("by the room, bright") << QByteArray("room") << 500.0;
        QTest::newRow("by the room, dim") << QByteArray("room") << 1.0;
        QTest::newRow("by the system") << QByteArray("system") << 500.0;
    }
    void coloursStandOut() {
        QFETCH(QByteArray, look);
        QFETCH(double, lux);
        Scene scene;
        scene.notebook().settings()->setLook(QLatin1String(look));
        if (scene.bench().light->tell) {
            scene.bench().light->tell(lux);
        }
        scene.settle();
        const auto colour = [&](const char* name) { return scene.theme().property(name).value<QColor>(); };
        for (const Use& use : uses) {
            const double stands = contrast(colour(use.on_top), colour(use.ground));
            QVERIFY2(stands >= use.least, qPrintable(QStringLiteral("%1 on %2 is %3 : 1, for %4")
                                                         .arg(QLatin1String(use.on_top), QLatin1String(use.ground))
                                                         .arg(stands, 0, 'f', 2)
                                                         .arg(QString::fromUtf8(use.what))));
        }
    }

    void theHairlineBetweenRowsSaysNothing() {
        for (const char* folder : {"controls", "pages", "."}) {
            const QDir qml(QStringLiteral(TRUEHANG_SOURCE_DIR "/qml/") + folder);
            for (const QString& file : qml.entryList({"*.qml"})) {
                QVERIFY2(file == "Rule.qml" || !read(qml.filePath(file)).contains("Theme.rule"),
                         qPrintable(file + " draws with `rule`, which doesn’t stand out"));
            }
        }
    }

    // The words on a drawing are figures: in ink or thread, as `uses` has them, never in a hairline's colour.
    void labelsOfDrawingsAreInInkOrThread() {
        Scene scene({1024, 768});
        scene.openWindow("Pilot house", {});
        int labels = 0;
        const ShownRows* windows = scene.notebook().visit()->windows();
        for (int row = 0; row < windows->count(); ++row) {
            scene.openWindow("Pilot house", windows->value(row, "title").toString());
            for (QQuickItem* item : scene.items()) {
                if (const auto* drawing = qobject_cast<ElevationItem*>(item)) {
                    for (const Label& label : drawing->elevation().labels) {
                        ++labels;
                        QVERIFY2(label.role == Role::ink || label.role == Role::thread, label.text.c_str());
                    }
                }
            }
        }
        QVERIFY(labels > 10);
    }
};

int main(int argc, char** argv) {
    QGuiApplication app(argc, argv);
    QGuiApplication::setFont(QFont(QStringLiteral("Lato")));
    ContrastTest test;
    return QTest::qExec(&test, argc, argv);
}

#include "contrast_test.moc"
