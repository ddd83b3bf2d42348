// SPDX-License-Identifier: Apache-2.0
#include "support.h"

#include "document/document.h"
#include "signature_item.h"

#include <QFile>
#include <QPointF>
#include <QTest>

using namespace truehang;
using namespace truehang::test;

// Deciding with the client: a cloth's colour, what is shown, signing, and what the signing covers.
class AppClientTest : public QObject {
    Q_OBJECT

private:
    /// The contract's example, without its signature, its cloth at 24 a metre.
    static void openExample(Bench& bench) {
        open_example(bench, [](Survey& survey) {
            survey.signed_off.reset();
            survey.fabrics.front().price_per_m = 24.0;
            survey.fabrics.front().currency = "GBP";
        });
    }

    static QVariantList aSignature() {
        return {QVariant(QVariantList{QPointF(0.1, 0.5), QPointF(0.4, 0.25), QPointF(0.6, 0.75)}),
                QVariant(QVariantList{QPointF(0.8, 0.5)})};
    }

    static void lengthen(Bench& bench, double mm) {
        bench.notebook().open()->editWindow("Pole", "parlour-south", [mm](Window& window) {
            window.layers.front().hardware->length = Length::mm(mm);
            return true;
        });
        bench.settle();
    }

private slots:
    void aColourIsChosenOrTyped() {
        Bench bench;
        openExample(bench);
        FabricsModel* fabrics = bench.notebook().fabrics();
        fabrics->edit("sailcloth");
        const auto colour = [&] { return bench.notebook().open()->survey().fabrics.front().colour; };
        QCOMPARE(value(fabrics->form(), "dye", "word").toString(), QString());
        fabrics->form()->choose("dye", "#8f2f2f");
        bench.settle();
        QCOMPARE(colour(), std::string("#8f2f2f"));
        QCOMPARE(value(fabrics->form(), "dye", "text").toString(), QString("Madder red"));
        fabrics->form()->leave("colour", " 4D7a6B ");
        bench.settle();
        QCOMPARE(colour(), std::string("#4d7a6b"));
        QCOMPARE(value(fabrics->form(), "colour", "text").toString(), QString("#4d7a6b"));
        fabrics->form()->leave("colour", "sea green");
        bench.settle();
        QCOMPARE(colour(), std::string("#4d7a6b"));
        QVERIFY(value(fabrics->form(), "colour", "fault").toString().contains("#8f2f2f"));
        fabrics->form()->leave("colour", "");
        bench.settle();
        QCOMPARE(colour(), std::string());
        bench.notebook().visit()->undo();
        bench.settle();
        QCOMPARE(colour(), std::string("#4d7a6b"));
    }

    void whatTheClientIsShown() {
        Bench bench;
        openExample(bench);
        bench.notebook().setScreen("client");
        bench.settle();
        ClientModel* client = bench.notebook().client();
        QVERIFY(client->choices()->count() >= 3);
        QCOMPARE(client->choices()->value(0, "title").toString(), QString("As it hangs now"));
        for (int row = 1; row < client->choices()->count(); ++row) {
            QVERIFY(client->choices()->value(row, "title").toString().startsWith("Choice "));
        }
        // The contract's answer: 4.89 m of sailcloth; at 24 a metre 117.36.
        const QVariantList takes = client->takes();
        QVERIFY(takes.size() >= 4);
        QVERIFY(takes[0].toMap()["text"].toString().contains("4.89"));
        QVERIFY(takes[1].toMap()["text"].toString().contains("117.36 GBP"));
        QVERIFY(client->note().contains("no quotation"));
        QVERIFY(client->isShut());
        QCOMPARE(client->turnSays(), QString("Open the curtains"));
        client->turn();
        QVERIFY(!client->isShut());
        QCOMPARE(client->turnSays(), QString("Close the curtains"));
        client->pick(1);
        QCOMPARE(client->picked(), 1);
        const int row = client->drawn();
        QVERIFY(row >= 1);
        const auto drawn = bench.notebook().choices()->asDrawn(row);
        QVERIFY(drawn.has_value());
        QVERIFY(drawn->window.layers.front().treatment->fullness != std::optional(1.5));
        QVERIFY(!bench.notebook().choices()->asDrawn(99).has_value());
        // Only looked at: nothing of the visit has changed.
        QCOMPARE(bench.notebook().open()->window()->layers.front().treatment->fullness, std::optional(1.5));
        QVERIFY(bench.notebook().goBack());
        QCOMPARE(bench.notebook().screen(), QString("figures"));
    }

    void signingFreezesTheFigures() {
        Bench bench;
        openExample(bench);
        AgreementModel* agreement = bench.notebook().agreement();
        agreement->setShown(true);
        QVERIFY(agreement->canSign());
        QCOMPARE(agreement->unsettled()->count(), 0);
        QCOMPARE(agreement->layers()->count(), 1);
        QVERIFY(agreement->layers()->value(0, "sizes").toString().contains("860"));
        QVERIFY(agreement->sum().contains("117.36 GBP"));
        QVERIFY(!agreement->sign("  ", aSignature(), 2.0));
        QVERIFY(!agreement->fault().isEmpty());
        QVERIFY(!agreement->signedOff());
        QVERIFY(agreement->sign(" R. Oduya ", aSignature(), 2.0));
        bench.settle();
        const SignedOff& signed_off = *bench.notebook().open()->survey().signed_off;
        QCOMPARE(signed_off.by, std::string("R. Oduya"));
        QCOMPARE(signed_off.signature->strokes.size(), std::size_t{2});
        QCOMPARE(signed_off.signature->strokes[0][1], (std::pair{0.4, 0.25}));
        QCOMPARE(signed_off.agreed->layers.size(), std::size_t{1});
        QCOMPARE(signed_off.agreed->digest.size(), std::size_t{64});
        QCOMPARE(agreement->signature().size(), 2);
        QCOMPARE(agreement->aspect(), 2.0);
        QVERIFY(agreement->broken().isEmpty());
        QVERIFY(agreement->line().startsWith("Agreed by R. Oduya, 14 March 2026"));
        QVERIFY(bench.notebook().visit()->signedLine().startsWith("Agreed by R. Oduya, 14 March 2026"));
        QVERIFY(!agreement->canSign());

        bench.reopen();  // all of it is on the disk
        bench.notebook().agreement()->setShown(true);
        QTRY_VERIFY_WITH_TIMEOUT(bench.notebook().agreement()->signedOff(), patience);
        QCOMPARE(bench.notebook().agreement()->signature().size(), 2);
        QVERIFY(bench.notebook().agreement()->broken().isEmpty());
        bench.notebook().visit()->undo();
        bench.settle();
        QVERIFY(!bench.notebook().agreement()->signedOff());
    }

    void aLaterChangeIsNoLongerCovered() {
        Bench bench;
        openExample(bench);
        AgreementModel* agreement = bench.notebook().agreement();
        agreement->setShown(true);
        QVERIFY(agreement->sign("R. Oduya", {}, 0.0));
        bench.settle();
        QVERIFY(!bench.notebook().open()->survey().signed_off->signature);
        QCOMPARE(agreement->gaps()->count(), 0);
        lengthen(bench, 1760);
        QCOMPARE(agreement->gaps()->count(), 1);
        QCOMPARE(agreement->gaps()->value(0, "title").toString(), QString("Parlour, south window"));
        QVERIFY(agreement->gaps()->value(0, "text").toString().contains("20 mm more"));
        QVERIFY(agreement->line().contains("no longer covers Parlour, south window"));
        // What was agreed stays as it was.
        QVERIFY(agreement->layers()->value(0, "sizes").toString().contains("860"));
        ShownRows* flags = bench.notebook().figures()->flags();
        bool said = false;
        for (int row = 0; row < flags->count(); ++row) {
            said = said || flags->value(row, "text").toString().contains("No longer what R. Oduya agreed");
        }
        QVERIFY(said);
        bench.notebook().visit()->undo();
        bench.settle();
        QCOMPARE(agreement->gaps()->count(), 0);
    }

    void whatWasFrozenIsSealed() {
        Bench bench;
        openExample(bench);
        AgreementModel* agreement = bench.notebook().agreement();
        agreement->setShown(true);
        QVERIFY(agreement->sign("R. Oduya", {}, 0.0));
        bench.settle();
        bench.notebook().open()->edit("By another hand", [](Survey& survey) {
            survey.signed_off->agreed->layers.front().drop = Length::mm(1900);
            return true;
        });
        bench.settle();
        QVERIFY(agreement->broken().contains("isn’t what was signed"));
    }

    void whatIsNotSettledIsSaid() {
        Bench bench;
        openExample(bench);
        bench.notebook().open()->editWindow("Pole", "parlour-south", [](Window& window) {
            return std::erase_if(window.readings, [](const Reading& one) { return one.station == "pole.above"; }) > 0;
        });
        bench.settle();
        AgreementModel* agreement = bench.notebook().agreement();
        agreement->setShown(true);
        QVERIFY(agreement->unsettled()->count() >= 2);
        QVERIFY(agreement->unsettled()->value(1, "text").toString().startsWith("Parlour, south window: "));
        QVERIFY(!agreement->canSign());
        QVERIFY(!agreement->sign("R. Oduya", {}, 0.0));
        QVERIFY(agreement->fault().contains("nothing to agree"));
        QVERIFY(!agreement->signedOff());
    }

    void aSignatureHoldsNoMoreThanADocument() {
        SignatureItem item;
        item.setSize({300, 100});
        item.setStrokes(aSignature());
        QCOMPARE(item.strokes(), aSignature());
        QVERIFY(!item.isBlank());
        QCOMPARE(item.aspect(), 3.0);
        item.clear();
        QVERIFY(item.isBlank());
    }

    void aHalfDrawnSignatureIsThereAgain() {
        Bench bench;
        openExample(bench);
        AgreementModel* agreement = bench.notebook().agreement();
        QVERIFY(agreement->signature().isEmpty());
        agreement->drawing(aSignature());
        agreement->typing("R. Od");
        bench.settle();
        bench.reopen();
        bench.settle();
        agreement = bench.notebook().agreement();
        QCOMPARE(agreement->signature(), aSignature());
        QCOMPARE(agreement->name(), QString("R. Od"));
        agreement->setShown(true);
        QVERIFY(agreement->sign("R. Oduya", agreement->signature(), 2.0));
        bench.settle();
        agreement->takeBack();
        bench.settle();
        QVERIFY(agreement->signature().isEmpty());  // what was signed with isn't offered once more
        QCOMPARE(agreement->name(), QString::fromStdString(bench.notebook().open()->survey().client->name));
        agreement->drawing(aSignature());
        agreement->drawing({});  // wiped off
        bench.settle();
        bench.reopen();
        bench.settle();
        QVERIFY(bench.notebook().agreement()->signature().isEmpty());
    }

    void theClientsCopyIsPrinted() {
        Bench bench;
        openExample(bench);
        SheetsModel* sheets = bench.notebook().sheets();
        bench.notebook().agreement()->setShown(true);
        QVERIFY(bench.notebook().agreement()->sign("R. Oduya", aSignature(), 2.0));
        bench.settle();
        sheets->setKind("agreed");
        sheets->print();
        QTRY_VERIFY_WITH_TIMEOUT(!sheets->working(), patience);
        QVERIFY(sheets->written());
        QVERIFY(bench.files->held.firstKey().fileName().endsWith("agreement.pdf"));
        QVERIFY(bench.files->held.first().startsWith("%PDF-"));
    }
};

QTEST_MAIN(AppClientTest)
#include "app_client_test.moc"
