// SPDX-License-Identifier: Apache-2.0
#include "support.h"

#include <QCoreApplication>
#include <QProcess>
#include <QSignalSpy>
#include <QTest>
#include <QTimer>
#include <cstdio>
#include <random>

// The program is killed (SIGKILL) at fifty moments while someone types. What it had shown must be there: each
// digit that stood in the field, each reading whose stitch was sewn.

using namespace truehang;
using namespace truehang::test;

namespace {

std::function<std::string()> counting(const char* before, const char* after) {
    return [before, after, count = std::make_shared<std::atomic<int>>(0)] {
        const auto started = static_cast<unsigned>(QCoreApplication::applicationPid()) % 100'000U;
        return QStringLiteral("%1%2%3%4")
            .arg(QLatin1String(before))
            .arg(started, 6, 10, QLatin1Char('0'))
            .arg(++*count, 6, 10, QLatin1Char('0'))
            .arg(QLatin1String(after))
            .toStdString();
    };
}

/// Types four digits, Next, and again, without an end, telling each thing that is kept.
class Typist : public QObject {
public:
    explicit Typist(const QString& folder)
        : keeping_(
              folder, [] { return std::string("2026-03-14T10:20:00+00:00"); },
              counting("01924f6a-7c00-7000-8000-", "")),
          devices_{std::make_unique<RecordedPosition>(),  std::make_unique<NoCamera>(),
                   std::make_unique<RecordedFiles>(),     std::make_unique<NoShare>(),
                   std::make_unique<RecordedClipboard>(), std::make_unique<RecordedVoice>(),
                   std::make_unique<RecordedLight>(),     std::make_unique<RecordedCompass>()},
          notebook_(keeping_, devices_, folder + "/settings.ini") {
        connect(notebook_.walk(), &WalkModel::kept, this, [this](const QString& station) {
            tell("kept", station, value(notebook_.walk()->stations(), station, "figure").toString());
        });
        connect(&notebook_, &Notebook::readyChanged, this, [this] { begin(); });
    }

private:
    void begin() {
        if (notebook_.walk()->windowId().isEmpty()) {
            notebook_.newVisit();
            notebook_.openWindow(notebook_.visit()->addWindow({}, "South window", "recess"));
        }
        connect(notebook_.walk(), &WalkModel::changed, this, [this] { look(); });
        connect(&hand_, &QTimer::timeout, this, [this] { type(); });
        hand_.start(1);  // a quick hand, which waits for nothing
    }

    void type() {
        WalkModel* walk = notebook_.walk();
        if (walk->atEnd()) {
            walk->jumpTo("opening.width.top");
        }
        if (walk->typed().size() >= 4 && !walk->shownIsKept()) {
            walk->next();
        } else {
            walk->pressKey(QString::number(1 + pressed_++ % 9));
        }
    }

    /// What a person sees in the field, told as soon as it is seen.
    void look() {
        const WalkModel* walk = notebook_.walk();
        const QString seen = walk->shownIsKept() ? QString() : walk->shownText();
        if (!seen.isEmpty() && (seen != seen_ || walk->station() != seen_at_)) {
            seen_ = seen;
            seen_at_ = walk->station();
            tell("typed", seen_at_, seen_);
        }
    }

    static void tell(const char* what, const QString& station, const QString& text) {
        std::printf("%s|%s|%s\n", what, qPrintable(station), qPrintable(text));
        std::fflush(stdout);
    }

    SurveyKeeping keeping_;
    Devices devices_;
    Notebook notebook_;
    int pressed_ = 0;
    QTimer hand_;
    QString seen_, seen_at_;
};

}  // namespace

class AppKillTest : public QObject {
    Q_OBJECT

private slots:
    void everythingToldAsKeptIsThere();

private:
    static QList<QStringList> typeUntilKilled(const QString& folder, int lines);
    static void check(const QString& folder, const QList<QStringList>& told);
};

/// The lines a typist told before it was killed, after about so many of them.
QList<QStringList> AppKillTest::typeUntilKilled(const QString& folder, int lines) {
    QProcess typist;
    typist.start(QCoreApplication::applicationFilePath(), {"--type", folder});
    QByteArray output;
    while (output.count('\n') < lines && typist.waitForReadyRead(20'000)) {
        output += typist.readAllStandardOutput();
    }
    typist.kill();  // SIGKILL
    typist.waitForFinished();
    output += typist.readAllStandardOutput();
    QList<QStringList> told;
    for (const QByteArray& line : output.left(output.lastIndexOf('\n')).split('\n')) {
        told.append(QString::fromUtf8(line).split(QLatin1Char('|')));
    }
    return told;
}

void AppKillTest::check(const QString& folder, const QList<QStringList>& told) {
    auto store = Store::open(folder.toStdString(),
                             {[] { return std::string("2026-03-14T10:20:00+00:00"); }, counting("id-", ""), {}});
    QVERIFY2(store.ok(), store.ok() ? "" : store.error().text.c_str());
    const auto draft = (*store)->draft();
    QVERIFY(draft.ok());
    const auto survey = (*store)->visit(draft->visit);
    QVERIFY(survey.ok());
    const auto& readings = survey->rooms.at(0).windows.at(0).readings;
    QStringList typed_last;
    for (const QStringList& line : told) {
        if (line.value(0) == "kept") {
            const bool there = std::ranges::any_of(readings, [&](const Reading& reading) {
                return reading.station == line.value(1).toStdString() && reading.typed == line.value(2).toStdString();
            });
            QVERIFY2(there, qPrintable(line.join(' ')));
        } else {
            typed_last = line;
        }
    }
    // The last digit told: in the field, or, where more was typed meanwhile, in what became of it.
    const std::string station = typed_last.value(1).toStdString();
    const std::string typed = typed_last.value(2).toStdString();
    const bool in_field = draft->station == station && draft->typed.starts_with(typed);
    const bool became_reading = std::ranges::any_of(
        readings, [&](const Reading& r) { return r.station == station && r.typed.starts_with(typed); });
    const bool waits = draft->more.find(station + "\":\"" + typed) != std::string::npos;
    QVERIFY2(in_field || became_reading || waits, qPrintable(typed_last.join(' ')));
}

void AppKillTest::everythingToldAsKeptIsThere() {
    const QTemporaryDir folder;
    std::mt19937 random(1742);  // NOLINT: the same lengths each time; the moment itself is the system's
    std::uniform_int_distribution<int> lines(1, 30);
    for (int round = 0; round < 50; ++round) {
        const auto told = typeUntilKilled(folder.path(), lines(random));
        QVERIFY(!told.isEmpty());
        check(folder.path(), told);
        if (QTest::currentTestFailed()) {
            return;
        }
    }
}

int main(int argc, char** argv) {
    QCoreApplication app(argc, argv);
    if (argc == 3 && std::string_view(argv[1]) == "--type") {
        const Typist typist(QString::fromLocal8Bit(argv[2]));
        return QCoreApplication::exec();
    }
    AppKillTest test;
    return QTest::qExec(&test, argc, argv);
}

#include "app_kill_test.moc"
