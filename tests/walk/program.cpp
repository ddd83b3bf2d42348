// SPDX-License-Identifier: Apache-2.0
#include "program.h"

#include <QMutex>
#include <QTest>
#include <cstdio>
#include <stdexcept>
#include <utility>

namespace truehang::walk {

namespace {

constexpr int patience = 60'000;  // milliseconds, reached only where something never comes

QMutex heard_guard;
QStringList heard;

void hear(QtMsgType type, const QMessageLogContext&, const QString& message) {
    // What the platform says of the machine it runs on; no file of the project causes it.
    const bool of_the_machine = message.contains(QLatin1String("This plugin does not support")) ||
                                message.startsWith(QLatin1String("QStandardPaths:"));
    if (type == QtDebugMsg || type == QtInfoMsg || of_the_machine) {
        return;
    }
    const QMutexLocker locked(&heard_guard);
    heard << message;
    std::fprintf(stderr, "warning: %s\n", qPrintable(message));
}

/// A house with walls too thick for a position.
class NoPosition : public PositionDevice {
public:
    void ask(std::function<void(const std::optional<PositionFix>&)> then) override {
        QMetaObject::invokeMethod(
            &here_, [then = std::move(then)] { then({}); }, Qt::QueuedConnection);
    }
    void cancel() override {}

private:
    QObject here_;
};

}  // namespace

QStringList take_warnings() {
    const QMutexLocker locked(&heard_guard);
    return std::exchange(heard, {});
}

void listen_for_warnings() { qInstallMessageHandler(hear); }

Program::Program(QString data) : data_(std::move(data)), devices_(system_devices()) {
    devices_.position = std::make_unique<NoPosition>();
}

Program::~Program() { end(); }

void Program::open() {
    const auto now = [this] {
        const int second = ++seconds_;
        return QStringLiteral("2026-03-14T%1:%2:%3+00:00")
            .arg(10 + second / 3600, 2, 10, QLatin1Char('0'))
            .arg(second / 60 % 60, 2, 10, QLatin1Char('0'))
            .arg(second % 60, 2, 10, QLatin1Char('0'))
            .toStdString();
    };
    const auto new_id = [this] {
        return QStringLiteral("01924f6a-7c00-7000-8000-%1").arg(++ids_, 12, 16, QLatin1Char('0')).toStdString();
    };
    keeping_ = std::make_unique<SurveyKeeping>(data_, now, new_id);
    notebook_ = std::make_unique<Notebook>(*keeping_, devices_, data_ + QStringLiteral("/settings.ini"));
    engine_ = std::make_unique<QQmlApplicationEngine>();
    engine_->setInitialProperties({{QStringLiteral("notebook"), QVariant::fromValue(notebook_.get())}});
    engine_->load(QUrl(QStringLiteral("qrc:/qt-project.org/imports/Truehang/Face/Main.qml")));
    window_ = engine_->rootObjects().isEmpty() ? nullptr : qobject_cast<QQuickWindow*>(engine_->rootObjects().first());
    if (window_ == nullptr) {
        throw std::runtime_error("Main.qml can't be loaded");
    }
    window_->resize(360, 760);
    window_->requestActivate();
    if (!QTest::qWaitForWindowActive(window_, patience)) {
        throw std::runtime_error("the window doesn't open");
    }
    settle();
}

void Program::end() {
    window_ = nullptr;
    engine_.reset();
    notebook_.reset();
    keeping_.reset();
}

void Program::settle() {
    for (int round = 0; round < 3; ++round) {  // an answer may hand over more
        bool answered = false;
        keeping_->post(
            notebook_.get(), [](Store&) -> Result<Done> { return Done{}; },
            [&answered](const Result<Done>&) { answered = true; });
        if (!QTest::qWaitFor([&answered] { return answered; }, patience)) {
            throw std::runtime_error("the disk doesn't answer");
        }
        (void)window_->grabWindow();  // lays out what waits for the next frame
        QCoreApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete);
        QCoreApplication::processEvents();
    }
}

}  // namespace truehang::walk
