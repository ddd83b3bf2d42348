// SPDX-License-Identifier: Apache-2.0
#include "support.h"

#include "own_items.h"
#include "writing.h"

#include <QFile>
#include <QTest>

using namespace truehang;
using namespace truehang::test;

// The surveyor's own lists: apart from visits, copied into them, never changed by them.
class AppListsTest : public QObject {
    Q_OBJECT

    static void hang(Bench& bench) {
        HangingModel* hanging = bench.notebook().hanging();
        hanging->addLayer();
        hanging->hardware()->leave("diameter", "28");
        hanging->hardware()->leave("length", "1720");
        hanging->hardware()->leave("left", "-240");
        hanging->hardware()->choose("stage", "fixed");
    }

    static QString cloth(Bench& bench, const QString& role, const QString& name, const QString& width) {
        FabricsModel* fabrics = bench.notebook().fabrics();
        const QString id = fabrics->add(role);
        fabrics->form()->leave("name", name);
        fabrics->form()->leave("width", width);
        fabrics->done();
        return id;
    }

    static QStringList says(const ShownRows* form, const QString& field) {
        QStringList all;
        for (const QVariant& one : value(form, field, "choices").toList()) {
            all << one.toMap().value("says").toString();
        }
        return all;
    }

    static QString wordOf(const ShownRows* form, const QString& field, const QString& says) {
        for (const QVariant& one : value(form, field, "choices").toList()) {
            if (one.toMap().value("says").toString() == says) {
                return one.toMap().value("word").toString();
            }
        }
        return {};
    }

    static const Layer& layer(Bench& bench) { return bench.notebook().open()->window()->layers.at(0); }

private slots:
    void whatIsKeptIsChosenAtAnotherVisit() {
        Bench bench;
        bench.openNewWindow();
        hang(bench);
        ListsModel* lists = bench.notebook().lists();
        QVERIFY(!lists->hasAny());
        lists->keepCloth(cloth(bench, "face", "Herring sailcloth", "1400"));
        lists->keepCloth(cloth(bench, "lining", "Sateen, dove", "1370"));
        lists->keepHardware();
        QCOMPARE(lists->said(), QString());  // not said before it is on the disk
        bench.settle();
        QCOMPARE(lists->said(), QString("In your list: Pole, 28 across, 1720 long"));
        QCOMPARE(lists->items()->count(), 3);

        bench.reopen();  // they outlive the program
        bench.openNewWindow();
        HangingModel* hanging = bench.notebook().hanging();
        hanging->addLayer();
        QCOMPARE(says(hanging->hardware(), "own"), QStringList{"Pole, 28 across, 1720 long"});
        hanging->hardware()->choose("own", "Pole, 28 across, 1720 long");
        QCOMPARE(layer(bench).hardware->length, Length::mm(1720));
        QVERIFY(!layer(bench).hardware->left);  // where it hung, and that it was up, was of the other window
        QVERIFY(!layer(bench).hardware->stage);
        QVERIFY(says(hanging->treatment(), "fabric").contains("Herring sailcloth"));
        QVERIFY(!says(hanging->treatment(), "fabric").contains("Sateen, dove"));
        hanging->treatment()->choose("fabric", wordOf(hanging->treatment(), "fabric", "Herring sailcloth"));
        bench.settle();
        const Survey& survey = bench.notebook().open()->survey();
        QCOMPARE(survey.fabrics.size(), std::size_t{1});
        QCOMPARE(*layer(bench).treatment->fabric, survey.fabrics[0].id);
        // One edit: undone, the cloth is neither hung nor there.
        bench.notebook().open()->undo();
        bench.settle();
        QVERIFY(bench.notebook().open()->survey().fabrics.empty());
        QVERIFY(!layer(bench).treatment->fabric);
    }

    void theSameClothIsTakenOnce() {
        Bench bench;
        bench.openNewWindow();
        HangingModel* hanging = bench.notebook().hanging();
        hanging->addLayer();
        const QString id = cloth(bench, "face", "Herring sailcloth", "1400");
        bench.notebook().lists()->keepCloth(id);
        QVERIFY(!says(hanging->treatment(), "fabric").filter("Herring").isEmpty());
        QCOMPARE(says(hanging->treatment(), "fabric").filter("Herring").size(), 1);
        const QString item = bench.notebook().lists()->items()->value(0, "item").toString();
        QVERIFY(!bench.notebook().lists()->take(item));
        QCOMPARE(bench.notebook().open()->survey().fabrics.size(), std::size_t{1});
        // Kept again under its name, it takes the place of the earlier one.
        bench.notebook().fabrics()->edit(id);
        bench.notebook().fabrics()->form()->leave("width", "1500");
        bench.notebook().lists()->keepCloth(id);
        QCOMPARE(bench.notebook().lists()->items()->count(), 1);
        QVERIFY(bench.notebook().lists()->items()->value(0, "line").toString().contains("1500"));
    }

    void takenOutComesBackUntilItIsEmptied() {
        Bench bench;
        bench.openNewWindow();
        ListsModel* lists = bench.notebook().lists();
        lists->keepCloth(cloth(bench, "face", "Herring sailcloth", "1400"));
        lists->keepCloth(cloth(bench, "face", "Gull linen", "1400"));
        QCOMPARE(lists->items()->value(0, "name").toString(), QString("Gull linen"));
        const QString item = lists->items()->value(0, "item").toString();
        lists->remove(item);
        QVERIFY(lists->hasRemoved());
        bench.openNewWindow();
        bench.notebook().hanging()->addLayer();
        QCOMPARE(says(bench.notebook().hanging()->treatment(), "fabric"), (QStringList{"None", "Herring sailcloth"}));
        bench.reopen();
        lists = bench.notebook().lists();
        QVERIFY(value(lists->items(), item, "isRemoved").toBool());
        lists->bringBack(item);
        QVERIFY(!lists->hasRemoved());
        lists->remove(item);
        lists->emptyRemoved();
        bench.settle();
        QCOMPARE(lists->items()->count(), 1);
        QFile file(bench.folder() + "/lists.json");
        QVERIFY(file.open(QIODevice::ReadOnly));
        QVERIFY(!file.readAll().contains("Gull"));
    }

    void areFoundByWords() {
        Bench bench;
        bench.openNewWindow();
        ListsModel* lists = bench.notebook().lists();
        lists->keepCloth(cloth(bench, "face", "Herring sailcloth", "1400"));
        lists->keepCloth(cloth(bench, "lining", "Sateen, dove", "1370"));
        lists->setSearch("1370 LINING");
        QCOMPARE(lists->items()->count(), 1);
        QCOMPARE(lists->items()->value(0, "name").toString(), QString("Sateen, dove"));
        lists->setSearch("nothing such");
        QCOMPARE(lists->items()->count(), 0);
        QVERIFY(lists->hasAny());
    }

    void houseRulesAreKeptButNotHowEdgesAreRead() {
        Bench bench;
        bench.openNewWindow();
        bench.notebook().open()->edit("rules", [](Survey& survey) {
            survey.rules.name = "Lined curtains";
            survey.rules.numbers = {{"hem_mm", 160.0}, {"edge_u_mm", 4.0}};
            return true;
        });
        bench.notebook().lists()->keepRules();
        bench.openNewWindow();
        bench.notebook().open()->edit("an edge", [](Survey& survey) {
            survey.rules.numbers = {{"edge_u_mm", 2.0}};
            return true;
        });
        QVERIFY(bench.notebook().lists()->take("rules/Lined curtains"));
        const auto& numbers = bench.notebook().open()->survey().rules.numbers;
        QCOMPARE(numbers.at("hem_mm"), 160.0);
        QCOMPARE(numbers.at("edge_u_mm"), 2.0);
    }

    void aFileThatCantBeReadStays() {
        Bench bench;
        bench.end();
        QFile file(bench.folder() + "/lists.json");
        QVERIFY(file.open(QIODevice::WriteOnly));
        file.write("{\"format\": \"truehang.lists/1\", \"hardware\": [{}]}");
        file.close();
        bench.reopen();
        bench.openNewWindow();
        ListsModel* lists = bench.notebook().lists();
        QVERIFY2(lists->fault().contains("/hardware/0/name"), qPrintable(lists->fault()));
        lists->keepCloth(cloth(bench, "face", "Herring sailcloth", "1400"));
        QVERIFY(file.open(QIODevice::ReadOnly));
        QVERIFY(file.readAll().contains("[{}]"));
    }

    void aFullDiskLeavesTheLists() {
        Bench bench;
        bench.openNewWindow();
        ListsModel* lists = bench.notebook().lists();
        lists->keepCloth(cloth(bench, "face", "Herring sailcloth", "1400"));
        const QString second = cloth(bench, "face", "Gull linen", "1400");
        bench.settle();
        {
            const FullDisk full;
            lists->keepCloth(second);
            bench.settle();
        }
        QVERIFY(!lists->fault().isEmpty());
        QCOMPARE(lists->items()->count(), 1);
        lists->keepCloth(second);
        bench.settle();
        QVERIFY(lists->fault().isEmpty());
        QCOMPARE(lists->items()->count(), 2);
    }

    void aWindowHangsAsAnother() {
        Bench bench;
        const QString first = bench.openNewWindow();
        hang(bench);
        bench.notebook().hanging()->treatment()->choose("heading", "tab");
        const QString second = bench.notebook().visit()->addWindow({}, "the other", "recess");
        bench.notebook().openWindow(second);
        HangingModel* hanging = bench.notebook().hanging();
        QCOMPARE(hanging->elsewhere()->count(), 1);
        QCOMPARE(hanging->elsewhere()->value(0, "windowId").toString(), first);
        hanging->hangAsAt(first);
        bench.settle();
        QVERIFY(layer(bench).treatment->heading->is(Heading::tab));
        QCOMPARE(layer(bench).hardware->length, Length::mm(1720));
        QVERIFY(!layer(bench).hardware->stage);
        QCOMPARE(hanging->elsewhere()->count(), 0);
        hanging->hangAsAt(first);  // nothing is hung over what hangs
        QCOMPARE(bench.notebook().open()->window()->layers.size(), std::size_t{1});
    }
};

QTEST_MAIN(AppListsTest)
#include "app_lists_test.moc"
