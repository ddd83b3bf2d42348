// SPDX-License-Identifier: Apache-2.0
#include "support.h"

#include "document/document.h"
#include "print.h"

#include <QFile>
#include <QGuiApplication>
#include <QProcess>
#include <QTemporaryDir>
#include <QTest>

using namespace truehang;

class AppPrintTest : public QObject {
    Q_OBJECT

private slots:
    void theSheetSaysTheFigures();
    void everyDemoWindowPrints();
    void aWindowThatIsNotThere();
    void aFileThatCantBeWritten();
    void theProgramPrints();
    void everyKindPrintsOnEitherPaper();
    void eachSheetCountsItsOwnPages();
    void eachSheetSaysWhichRevisionItIsOf();
    void aSheetOfWhatIsNotInTheWorkroomSaysSo();
};

namespace {

std::string whole(const QString& path) {
    QFile file(QStringLiteral(TRUEHANG_SOURCE_DIR "/") + path);
    return file.open(QIODevice::ReadOnly) ? file.readAll().toStdString() : std::string();
}

QString run(const QString& program, const QStringList& arguments) {
    QProcess process;
    process.start(program, arguments);
    return process.waitForFinished() ? QString::fromUtf8(process.readAllStandardOutput()) : QString();
}

constexpr auto example = "tests/reference/contract/survey.example.json";

/// What the figures document of the contract's example has for its window, as the sheet must write it.
const QStringList& example_figures() {
    static const QStringList figures{"860", "1992", "± 6", "1.51", "2240", "2110", "2070", "4.9 m", "4.3 m", "14 tabs"};
    return figures;
}

}  // namespace

void AppPrintTest::theSheetSaysTheFigures() {
    const auto survey = read_survey(whole(example));
    QVERIFY(survey.ok());
    const QTemporaryDir folder;
    const QString pdf = folder.filePath("sheet.pdf");
    QVERIFY(print_sheet(*survey, "parlour-south", pdf).ok());
    const QString text = run("pdftotext", {"-layout", pdf, "-"});
    QVERIFY(text.contains("Parlour, south window"));
    QVERIFY(text.contains("R. Oduya"));
    for (const QString& figure : example_figures()) {
        QVERIFY2(text.contains(figure), qPrintable(figure + "\n" + text));
    }
    // A4 is 210 × 297 mm (ISO 216): 595 × 842 points.
    QVERIFY(run("pdfinfo", {pdf}).contains("A4"));
    QVERIFY(run("pdffonts", {pdf}).contains("Lato"));
}

void AppPrintTest::everyDemoWindowPrints() {
    const QTemporaryDir folder;
    for (const char* name : {"pilot-house", "net-store", "sail-loft"}) {
        const auto survey = read_survey(whole(QStringLiteral("demo-surveys/%1.json").arg(QLatin1String(name))));
        QVERIFY2(survey.ok(), name);
        for (const Room& room : survey->rooms) {
            for (const Window& window : room.windows) {
                const QString pdf = folder.filePath(QString::fromStdString(window.id) + ".pdf");
                QVERIFY2(print_sheet(*survey, QString::fromStdString(window.id), pdf).ok(), window.id.c_str());
                QVERIFY(run("pdftotext", {pdf, "-"}).size() > 50);
            }
        }
    }
}

void AppPrintTest::aWindowThatIsNotThere() {
    const auto survey = read_survey(whole(example));
    const QTemporaryDir folder;
    const auto printed = print_sheet(*survey, "no-such-window", folder.filePath("sheet.pdf"));
    QCOMPARE(printed.error().code, ErrorCode::missing);
    QVERIFY(!QFile::exists(folder.filePath("sheet.pdf")));
}

void AppPrintTest::aFileThatCantBeWritten() {
    const auto survey = read_survey(whole(example));
    QCOMPARE(print_sheet(*survey, "parlour-south", "/no/such/folder/sheet.pdf").error().code, ErrorCode::io);
}

void AppPrintTest::theProgramPrints() {
    const QTemporaryDir folder;
    const QString pdf = folder.filePath("sheet.pdf");
    QProcess process;
    process.start(TRUEHANG_PROGRAM,
                  {"--print", QStringLiteral(TRUEHANG_SOURCE_DIR "/") + example, "parlour-south", pdf});
    QVERIFY(process.waitForFinished());
    QCOMPARE(process.exitCode(), 0);
    const QString text = run("pdftotext", {"-layout", pdf, "-"});
    for (const QString& figure : example_figures()) {
        QVERIFY2(text.contains(figure), qPrintable(figure));
    }
    process.start(TRUEHANG_PROGRAM, {"--print", "/no/such.json", "parlour-south", pdf});
    QVERIFY(process.waitForFinished());
    QCOMPARE(process.exitCode(), 2);
    QVERIFY(!process.readAllStandardError().isEmpty());
}

void AppPrintTest::everyKindPrintsOnEitherPaper() {
    const auto survey = read_survey(whole(example));
    const QTemporaryDir folder;
    const QString pdf = folder.filePath("sheets.pdf");
    // US Letter is 8.5 × 11 in (ANSI Y14.1): 612 × 792 points; A4 is 210 × 297 mm (ISO 216).
    for (const auto& [paper, name] : {std::pair{Paper::a4, "A4"}, std::pair{Paper::letter, "letter"}}) {
        for (const SheetKind kind : {SheetKind::measure, SheetKind::cutting, SheetKind::making, SheetKind::hanging}) {
            QVERIFY(print_sheets(*survey, {.kinds = {kind}, .paper = paper}, pdf).ok());
            QVERIFY(run("pdfinfo", {pdf}).contains(name));
            const QString text = run("pdftotext", {"-layout", pdf, "-"});
            QVERIFY2(text.contains(QString::fromUtf8(title_of(kind).data())), qPrintable(text));
            QVERIFY(text.contains("Pilot house, revision 1"));
        }
    }
    // 2240 mm are 88.19 in: a cut is never written below.
    QVERIFY(print_sheets(*survey, {.kinds = {SheetKind::making}, .unit = LengthUnit::in}, pdf).ok());
    QVERIFY(run("pdftotext", {"-layout", pdf, "-"}).contains("88 1/4"));
}

void AppPrintTest::eachSheetCountsItsOwnPages() {
    const auto survey = read_survey(whole(example));
    const QTemporaryDir folder;
    const QString pdf = folder.filePath("sheets.pdf");
    QVERIFY(print_sheets(*survey, {.kinds = {SheetKind::cutting}, .paper = Paper::a4}, pdf).ok());
    // One cloth a sheet, two cloths, one page each.
    QCOMPARE(run("pdftotext", {"-layout", pdf, "-"}).count("page 1 of 1"), 2);
}

// The picture code is read by zbar from what poppler makes of the page at 200 dots an inch.
void AppPrintTest::eachSheetSaysWhichRevisionItIsOf() {
    const auto survey = read_survey(whole(example));
    const QTemporaryDir folder;
    const QString pdf = folder.filePath("sheets.pdf");
    const SheetStamp stamp{"Q9W1-DFWF-077Y", "https://workroom.example.org:8737/sheet/Q9W1-DFWF-077Y", 3,
                           "2026-03-14T10:20:00Z"};
    for (const Paper paper : {Paper::a4, Paper::letter}) {
        for (const SheetKind kind : {SheetKind::measure, SheetKind::cutting, SheetKind::making, SheetKind::hanging}) {
            QVERIFY(print_sheets(*survey, {.kinds = {kind}, .paper = paper, .stamp = stamp}, pdf).ok());
            const QString text = run("pdftotext", {"-layout", pdf, "-"});
            const auto sheets = text.count("page 1 of");
            QVERIFY(sheets > 0);
            QCOMPARE(text.count("Sheet Q9W1-DFWF-077Y"), sheets);
            QCOMPARE(text.count("revision 3, came in"), sheets);
            run("pdftoppm",
                {"-r", "200", "-gray", "-f", "1", "-l", "1", "-singlefile", "-png", pdf, folder.filePath("page")});
            QCOMPARE(run("zbarimg", {"--raw", "--quiet", folder.filePath("page.png")}).trimmed(),
                     QString::fromStdString(stamp.address));
        }
    }
}

void AppPrintTest::aSheetOfWhatIsNotInTheWorkroomSaysSo() {
    const auto survey = read_survey(whole(example));
    const QTemporaryDir folder;
    const QString pdf = folder.filePath("sheets.pdf");
    QVERIFY(print_sheets(*survey, {.stamp = SheetStamp{.revision = 4}}, pdf).ok());
    const QString text = run("pdftotext", {pdf, "-"}).simplified();
    QVERIFY2(text.contains("revision 4, not in the workroom yet as it stands here"), qPrintable(text));
    QVERIFY(!text.contains("Sheet "));
}

QTEST_MAIN(AppPrintTest)
#include "app_print_test.moc"
