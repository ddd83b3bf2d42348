// SPDX-License-Identifier: Apache-2.0
#include "support.h"

#include "document/document.h"

#include <QDateTime>
#include <QFile>
#include <QSignalSpy>
#include <QTest>

#include <sys/resource.h>
#include <csignal>

namespace truehang::test {

Result<QByteArray> RecordedFiles::read(const QUrl& file, qint64 most) {
    if (!held.contains(file)) {
        return Error{ErrorCode::io, {}, "There is no such file."};
    }
    return held.value(file).size() > most ? Result<QByteArray>(Error{ErrorCode::out_of_range, {}, "Too large."})
                                          : Result<QByteArray>(held.value(file));
}

Result<Done> RecordedFiles::write(const QUrl& file, const QByteArray& bytes) {
    held.insert(file, bytes);
    return Done{};
}

Bench::Bench() {
    auto recorded_position = std::make_unique<RecordedPosition>();
    auto no_camera = std::make_unique<NoCamera>();
    camera = no_camera.get();
    auto recorded_files = std::make_unique<RecordedFiles>();
    auto recorded_clipboard = std::make_unique<RecordedClipboard>();
    position = recorded_position.get();
    files = recorded_files.get();
    clipboard = recorded_clipboard.get();
    auto recorded_voice = std::make_unique<RecordedVoice>();
    voice = recorded_voice.get();
    auto recorded_light = std::make_unique<RecordedLight>();
    light = recorded_light.get();
    auto recorded_compass = std::make_unique<RecordedCompass>();
    compass = recorded_compass.get();
    devices_ = {std::move(recorded_position), std::move(no_camera),          std::move(recorded_files),
                std::make_unique<NoShare>(),  std::move(recorded_clipboard), std::move(recorded_voice),
                std::move(recorded_light),    std::move(recorded_compass)};
    begin();
}

void Bench::begin() {
    const auto now = [this] {
        const QDateTime at = QDateTime(QDate(2026, 3, 14), QTime(10, 0), Qt::UTC).addSecs(++seconds_);
        return at.toString(QStringLiteral("yyyy-MM-ddTHH:mm:ss+00:00")).toStdString();
    };
    const auto new_id = [this] {
        return QStringLiteral("01924f6a-7c00-7000-8000-%1").arg(++ids_, 12, 16, QLatin1Char('0')).toStdString();
    };
    keeping_ = std::make_unique<SurveyKeeping>(folder_.path(), now, new_id);
    notebook_ = std::make_unique<Notebook>(*keeping_, devices_, folder_.filePath("settings.ini"));
    watch();
    QVERIFY(QTest::qWaitFor([this] { return notebook_->ready(); }, patience));
}

void Bench::watch() {
    for (ShownRows* rows : {notebook_->visits(),
                            notebook_->removedVisits(),
                            notebook_->states(),
                            notebook_->leaving()->items(),
                            notebook_->twice()->rows(),
                            notebook_->visit()->rooms(),
                            notebook_->visit()->windows(),
                            notebook_->visit()->shapes(),
                            notebook_->visit()->orders(),
                            notebook_->visit()->removedWindows(),
                            static_cast<ShownRows*>(notebook_->visit()->site()),
                            static_cast<ShownRows*>(notebook_->visit()->measuring()),
                            notebook_->fabrics()->fabrics(),
                            static_cast<ShownRows*>(notebook_->fabrics()->form()),
                            notebook_->walk()->stations(),
                            notebook_->walk()->fractions(),
                            notebook_->walk()->more(),
                            notebook_->walk()->reasons(),
                            notebook_->walk()->suspects(),
                            notebook_->walk()->history(),
                            notebook_->obstructions()->obstructions(),
                            notebook_->obstructions()->kinds(),
                            static_cast<ShownRows*>(notebook_->obstructions()->form()),
                            notebook_->hanging()->layers(),
                            static_cast<ShownRows*>(notebook_->hanging()->hardware()),
                            static_cast<ShownRows*>(notebook_->hanging()->treatment()),
                            notebook_->choices()->choices(),
                            notebook_->choices()->lines(),
                            static_cast<ShownRows*>(notebook_->choices()->form()),
                            notebook_->figures()->figures(),
                            notebook_->figures()->sizes(),
                            notebook_->figures()->why(),
                            notebook_->figures()->flags(),
                            notebook_->photos()->photos(),
                            notebook_->send()->items()}) {
        testers_.push_back(
            std::make_unique<QAbstractItemModelTester>(rows, QAbstractItemModelTester::FailureReportingMode::QtTest));
    }
}

void Bench::end() {
    testers_.clear();
    notebook_.reset();
    keeping_.reset();
}

void Bench::reopen() {
    end();
    begin();
}

void Bench::settle() {
    for (int round = 0; round < 4; ++round) {  // an answer may post again; three deep is the most
        bool answered = false;
        keeping_->post(
            notebook_.get(), [](Store&) -> Result<Done> { return Done{}; },
            [&answered](const Result<Done>&) { answered = true; });
        QVERIFY(QTest::qWaitFor([&answered] { return answered; }, patience));
    }
}

QString Bench::openNewWindow(const QString& shape) {
    notebook_->newVisit();
    const QString room = notebook_->visit()->addRoom("Parlour");
    const QString window = notebook_->visit()->addWindow(room, "South window", shape);
    settle();
    notebook_->openWindow(window);
    return window;
}

void Bench::type(const QString& keys) {
    for (const QChar key : keys) {
        notebook_->walk()->pressKey(QString(key));
    }
}

FullDisk::FullDisk() {
    std::signal(SIGXFSZ, SIG_IGN);
    rlimit limit{};
    getrlimit(RLIMIT_FSIZE, &limit);
    before_ = limit.rlim_cur;
    limit.rlim_cur = 0;
    setrlimit(RLIMIT_FSIZE, &limit);
}

FullDisk::~FullDisk() {
    rlimit limit{};
    getrlimit(RLIMIT_FSIZE, &limit);
    limit.rlim_cur = before_;
    setrlimit(RLIMIT_FSIZE, &limit);
}

void open_example(Bench& bench, const std::function<void(Survey&)>& change) {
    QFile file(QStringLiteral(TRUEHANG_SOURCE_DIR "/tests/reference/contract/survey.example.json"));
    QVERIFY(file.open(QIODevice::ReadOnly));
    const auto read = read_survey(file.readAll().toStdString());
    QVERIFY(read.ok());
    Survey survey = *read;
    if (change) {
        change(survey);
    }
    bool kept = false;
    bench.keeping().post(
        &bench.notebook(), [survey](Store& store) { return store.keep(survey, "Taken in"); },
        [&kept](const Result<Revision>& done) { kept = done.ok(); });
    QTRY_VERIFY_WITH_TIMEOUT(kept, patience);
    bench.notebook().openVisit("01924f6a-7c00-7000-8000-000000000001");
    QTRY_COMPARE_WITH_TIMEOUT(bench.notebook().screen(), QString("visit"), patience);
    bench.notebook().openWindow("parlour-south");
    bench.settle();
}

void make_visits(Bench& bench, int count) {
    bool made = false;
    bench.keeping().post(
        &bench.notebook(),
        [count](Store& store) -> Result<Done> {
            for (int i = 0; i < count; ++i) {
                Survey survey;
                survey.id = "v" + std::to_string(i);
                survey.title = "House " + std::to_string(i);
                survey.measured_at =
                    QDate(2020, 1, 1).addDays(i).toString(Qt::ISODate).toStdString() + "T09:00:00+00:00";
                if (const auto kept = store.keep(survey, "Visit made"); !kept) {
                    return kept.error();
                }
            }
            return Done{};
        },
        [&made](const Result<Done>& done) { made = done.ok(); });
    QTRY_VERIFY_WITH_TIMEOUT(made, patience);
}

QStringList column(const ShownRows* rows, const char* role) {
    QStringList all;
    for (int row = 0; row < rows->count(); ++row) {
        all << rows->value(row, role).toString();
    }
    return all;
}

QVariant value(const ShownRows* rows, const QVariant& key, const char* role) {
    return rows->value(rows->indexOf(key), QString::fromLatin1(role));
}

}  // namespace truehang::test
