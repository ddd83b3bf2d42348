// SPDX-License-Identifier: Apache-2.0
#include "plates.h"

#include <QDir>
#include <QFile>
#include <QGuiApplication>
#include <QRegularExpression>
#include <QTest>
#include <cstdio>

using namespace truehang;
using namespace truehang::test;

namespace {

const QString source = QStringLiteral(TRUEHANG_SOURCE_DIR);

QString golden_of(const QString& look, const QString& control) {
    return source + QStringLiteral("/tests/qml/golden/%1/%2.png").arg(look, control);
}

/// The controls that have a file and no place in the gallery, and those in the gallery that have no file.
QStringList without_a_place(const QStringList& files, const QStringList& shown) {
    QStringList odd;
    for (const QString& name : files) {
        if (!shown.contains(name)) {
            odd << name + " has no plate in qml/gallery";
        }
    }
    for (const QString& name : shown) {
        if (!files.contains(name)) {
            odd << name + " is no control of qml/controls";
        }
    }
    return odd;
}

QStringList controls_on_disk() {
    QStringList names;
    for (const QString& file : QDir(source + "/qml/controls").entryList({"*.qml"})) {
        names << file.chopped(4);
    }
    return names;
}

QString text_of(const QString& control) {
    QFile file(source + "/qml/controls/" + control + ".qml");
    return file.open(QIODevice::ReadOnly) ? QString::fromUtf8(file.readAll()) : QString();
}

/// With TRUEHANG_PICTURES: how it looks now, to look at.
void keep(const QImage& picture, const QString& name) {
    const QString folder = qEnvironmentVariable("TRUEHANG_PICTURES");
    if (!folder.isEmpty()) {
        const QString file = folder + "/golden/" + name + ".png";
        QDir().mkpath(QFileInfo(file).path());
        picture.save(file);
    }
}

/// Where pieces differ from the picture that was taken once, a line each.
QStringList changes(const std::vector<StatePicture>& pieces, const QImage& golden) {
    QStringList all;
    int y = 0;
    for (const StatePicture& piece : pieces) {
        const QImage was = golden.copy(0, y, golden.width(), piece.picture.height());
        y += piece.picture.height();
        if (const auto found = difference(piece.picture, was)) {
            all << QStringLiteral("“%1”: %2 pixels differ, within %3 × %4 at %5, %6")
                       .arg(piece.what)
                       .arg(found->pixels)
                       .arg(found->box.width())
                       .arg(found->box.height())
                       .arg(found->box.left())
                       .arg(found->box.top());
        }
    }
    if (y != golden.height()) {
        all << QStringLiteral("all states together are %1 high and were %2").arg(y).arg(golden.height());
    }
    return all;
}

}  // namespace

class GoldenTest : public QObject {
    Q_OBJECT

    std::unique_ptr<Plates> plates_;

    std::vector<StatePicture> taken(const char* control) {
        plates_->dress(gallery_looks[0]);
        plates_->show(QLatin1String(control));
        return plates_->taken();
    }

private slots:
    void initTestCase() { plates_ = std::make_unique<Plates>(); }
    void cleanupTestCase() { plates_.reset(); }

    void everyControlHasAPlate() {
        QCOMPARE(without_a_place(controls_on_disk(), plates_->controls()), QStringList());
        QCOMPARE(without_a_place({"Key", "Lever"}, {"Key"}), QStringList{"Lever has no plate in qml/gallery"});
        QCOMPARE(without_a_place({"Key"}, {"Key", "Lever"}), QStringList{"Lever is no control of qml/controls"});
    }

    void everyStateIsShown() {
        // What they show is other controls, which have their long words themselves.
        const QStringList of_others{"Keypad", "FormFields", "Page", "Place"};
        for (const QString& control : plates_->controls()) {
            plates_->show(control);
            QStringList acts;
            QString states;
            for (const auto& [what, act] : plates_->states()) {
                acts << act;
                states += what + "; ";
            }
            const QString text = text_of(control);
            if (text.contains("PressItem {")) {
                QVERIFY2(acts.contains("press") && acts.contains("focus"), qPrintable(control));
            }
            if (text.contains("TextInput {")) {
                QVERIFY2(acts.contains("focus"), qPrintable(control));
            }
            if (text.contains("enabled ?")) {
                QVERIFY2(states.contains("disabled"), qPrintable(control));
            }
            if (text.contains(QRegularExpression("property string (text|label|says|what|title)|^(Text|Heading) \\{",
                                                 QRegularExpression::MultilineOption)) &&
                !of_others.contains(control)) {
                QVERIFY2(states.contains("long"), qPrintable(control + ": " + states));
            }
        }
    }

    void everyControlLiesWell_data() {
        QTest::addColumn<int>("look");
        for (int look = 0; look < static_cast<int>(std::size(gallery_looks)); ++look) {
            QTest::newRow(gallery_looks[look].name) << look;
        }
    }
    void everyControlLiesWell() {
        QFETCH(int, look);
        plates_->dress(gallery_looks[look]);
        QStringList faults;
        for (const QString& control : plates_->controls()) {
            plates_->show(control);
            for (const QString& fault : plates_->scene().faultsOfLayout()) {
                faults << control + ": " + fault;
            }
        }
        QVERIFY2(faults.isEmpty(), qPrintable("\n" + faults.join("\n")));
        QCOMPARE(Scene::warnings(), QStringList());
    }

    void everyControlLooksAsItDid_data() { everyControlLiesWell_data(); }
    void everyControlLooksAsItDid() {
        QFETCH(int, look);
        const GalleryLook& worn = gallery_looks[look];
        plates_->dress(worn);
        QStringList faults;
        for (const QString& control : plates_->controls()) {
            if (!Plates::pictured(control, worn)) {
                continue;
            }
            plates_->show(control);
            const QString name = QStringLiteral("%1/%2").arg(QLatin1String(worn.name), control);
            const std::vector<StatePicture> pieces = plates_->taken();
            const QImage golden(golden_of(QLatin1String(worn.name), control));
            QVERIFY2(!golden.isNull(), qPrintable(name + " has no golden picture"));
            const QStringList found = changes(pieces, golden);
            for (const QString& change : found) {
                faults << name + ", " + change;
                std::fprintf(stderr, "%s\n", qPrintable(faults.last()));  // a failure's message holds but a few
            }
            if (!found.isEmpty()) {
                keep(stacked(pieces), name);
            }
        }
        QVERIFY2(faults.isEmpty(), qPrintable(faults.join("\n")));
        QCOMPARE(Scene::warnings(), QStringList());
    }

    // A picture that nothing shows any more is no check.
    void everyGoldenPictureIsOfAControl() {
        qint64 bytes = 0;
        for (const GalleryLook& look : gallery_looks) {
            const QDir folder(source + "/tests/qml/golden/" + look.name);
            for (const QFileInfo& file : folder.entryInfoList({"*.png"})) {
                QVERIFY2(plates_->controls().contains(file.baseName()), qPrintable(file.filePath()));
                bytes += file.size();
            }
        }
        QVERIFY2(bytes < 1 << 20, qPrintable(QString::number(bytes)));
    }

    void aShiftOfTwoPixelsIsSeen() {
        const QImage before = stacked(taken("WordButton"));
        QCOMPARE(changes(taken("WordButton"), before), QStringList());
        for (QQuickItem* text : plates_->scene().texts()) {
            if (text->property("text").toString() == "take a level line") {
                text->setX(text->x() + 2);
                break;
            }
        }
        const QStringList seen = changes(plates_->taken(), before);
        QCOMPARE(seen.size(), 1);
        QVERIFY2(seen.first().startsWith("“plain”"), qPrintable(seen.first()));
    }

    // The tolerance of 8 lies between: a token that moves by 10 in each part is seen, by 5 isn't.
    void aColourThatMovesIsSeen() {
        const QImage before = stacked(taken("Sentence"));
        const auto moved_by = [&](int by) {
            for (QQuickItem* text : plates_->scene().texts()) {
                if (text->property("second").toBool() && text->property("text").toString().startsWith("The floor")) {
                    const auto was = text->property("color").value<QColor>();
                    text->setProperty("color", QColor(was.red() + by, was.green() + by, was.blue() + by));
                }
            }
            return changes(plates_->taken(), before);
        };
        QCOMPARE(moved_by(5), QStringList());
        const QStringList seen = moved_by(5);
        QCOMPARE(seen.size(), 1);
        QVERIFY2(seen.first().startsWith("“of second rank, long”"), qPrintable(seen.first()));
    }

    void anotherHeightIsSeen() {
        QImage before = stacked(taken("FlagMark"));
        before = before.copy(0, 0, before.width(), before.height() - 1);
        QVERIFY(!changes(plates_->taken(), before).isEmpty());
    }
};

int main(int argc, char** argv) {
    pin_what_pictures_hang_on();
    QGuiApplication app(argc, argv);
    QGuiApplication::setFont(QFont(QStringLiteral("Lato")));
    GoldenTest test;
    return QTest::qExec(&test, argc, argv);
}

#include "golden_test.moc"
