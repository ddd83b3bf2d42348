// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "devices.h"
#include "notebook.h"
#include "survey_keeping.h"

#include <QQmlApplicationEngine>
#include <QQuickWindow>
#include <QString>
#include <atomic>
#include <memory>

namespace truehang::walk {

/// The program as `main` wires it, on a clock that goes one second on at each look and on ids that count up, so that a
/// walk comes out the same each time.
class Program {
public:
    explicit Program(QString data);
    ~Program();
    Program(const Program&) = delete;
    Program& operator=(const Program&) = delete;

    /// Opens it on the folder. Throws where the first page can't be loaded.
    void open();
    /// Ends it: window, engine and all; what is in the folder stays.
    void end();
    /// Returns once everything that was handed to the disk so far is answered and the window laid out.
    void settle();
    [[nodiscard]] QQuickWindow& window() const { return *window_; }

private:
    QString data_;
    std::atomic<int> seconds_{0};
    std::atomic<int> ids_{0};
    Devices devices_;
    std::unique_ptr<SurveyKeeping> keeping_;
    std::unique_ptr<Notebook> notebook_;
    std::unique_ptr<QQmlApplicationEngine> engine_;
    QQuickWindow* window_ = nullptr;
};

/// Everything that Qt and QML warned of since it was last asked.
[[nodiscard]] QStringList take_warnings();
void listen_for_warnings();

}  // namespace truehang::walk
