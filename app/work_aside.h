// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "store/visit_file.h"

#include <QCoreApplication>
#include <QObject>
#include <QPointer>
#include <QThreadPool>
#include <atomic>
#include <functional>
#include <memory>
#include <thread>
#include <utility>

namespace truehang {

/// Does `work` on a thread of the pool, then `then` with its result on the thread of `owner`, if it is there still.
template <class Work, class Then>
void aside(QObject* owner, Work work, Then then) {
    QThreadPool::globalInstance()->start([still = QPointer(owner), work = std::move(work), then = std::move(then)] {
        auto result = work();
        QMetaObject::invokeMethod(
            QCoreApplication::instance(),
            [still, then, result = std::move(result)] {
                if (still) {
                    then(result);
                }
            },
            Qt::QueuedConnection);
    });
}

/// Long work on a thread of its own, one piece after the other: how far it is comes as events, and it can be stopped.
class WorkAside : public QObject {
    Q_OBJECT

public:
    using QObject::QObject;
    /// Stops what is going on and waits for its end.
    ~WorkAside() override {
        stop();
        join();
    }

    /// The pieces that follow aren't stopped yet.
    void begin() {
        stopped_ = false;
        percent_ = -1;
    }
    void stop() { stopped_ = true; }
    [[nodiscard]] bool stopped() const { return stopped_; }

    /// Runs `work(const LongWork&)` aside, then `then` with its result on the thread of this object, unless this object
    /// has gone by then. Called after the piece before has answered.
    template <class Work, class Then>
    void run(Work work, Then then) {
        join();
        thread_ = std::thread([this, work = std::move(work), then = std::move(then)] {
            const auto result = std::make_shared<std::invoke_result_t<const Work&, const LongWork&>>(work(watched()));
            answer([result, then] { then(std::move(*result)); });
        });
    }

signals:
    /// Whole hundredths of the piece.
    void progressed(int percent);

private:
    LongWork watched() {
        return {[this](double done) { tell(static_cast<int>(100.0 * done)); }, [this] { return stopped_.load(); }};
    }
    void tell(int percent) {
        if (percent_.exchange(percent) != percent) {
            answer([this, percent] { emit progressed(percent); });
        }
    }
    void answer(std::function<void()> with) { QMetaObject::invokeMethod(this, std::move(with), Qt::QueuedConnection); }
    void join() {
        if (thread_.joinable()) {
            thread_.join();
        }
    }

    std::thread thread_;
    std::atomic<bool> stopped_ = false;
    std::atomic<int> percent_ = -1;
};

}  // namespace truehang
