// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "devices.h"
#include "notebook.h"
#include "survey_keeping.h"

#include <QAbstractItemModelTester>
#include <QMap>
#include <QTemporaryDir>
#include <atomic>
#include <chrono>
#include <memory>
#include <vector>

namespace truehang::test {

/// The longest that a test waits for something that comes, milliseconds: reached only where it never does.
inline constexpr int patience = 60'000;

/// A position device that answers when told to.
class RecordedPosition : public PositionDevice {
public:
    void ask(std::function<void(const std::optional<PositionFix>&)> then) override { then_ = std::move(then); }
    void cancel() override { then_ = {}; }
    [[nodiscard]] bool asked() const { return static_cast<bool>(then_); }
    void answer(const std::optional<PositionFix>& fix) { std::exchange(then_, {})(fix); }

private:
    std::function<void(const std::optional<PositionFix>&)> then_;
};

/// None, unless a page that shows one is put here.
class NoCamera : public CameraDevice {
public:
    QUrl page;
    [[nodiscard]] QUrl source() const override { return page; }
};

/// Files in memory.
class RecordedFiles : public FileDevice {
public:
    QMap<QUrl, QByteArray> held;
    [[nodiscard]] Result<QByteArray> read(const QUrl& file, qint64 most) override;
    [[nodiscard]] Result<Done> write(const QUrl& file, const QByteArray& bytes) override;
    QUrl folder = QUrl::fromLocalFile("/documents");
    [[nodiscard]] QUrl documents() const override { return folder; }
};

class NoShare : public ShareDevice {
public:
    bool share(const QUrl&) override { return false; }
};

class RecordedClipboard : public ClipboardDevice {
public:
    QImage held;
    [[nodiscard]] bool hasPicture() const override { return !held.isNull(); }
    [[nodiscard]] QImage picture() const override { return held; }
};

class RecordedVoice : public VoiceDevice {
public:
    QStringList said;
    [[nodiscard]] bool isThere() override { return true; }
    void say(const QString& words) override { said.append(words); }
};

class RecordedLight : public LightDevice {
public:
    [[nodiscard]] bool isThere() override { return true; }
    void watch(std::function<void(double lux)> then) override { tell = std::move(then); }
    void stop() override { tell = {}; }
    std::function<void(double lux)> tell;  ///< empty: nobody watches
};

class RecordedCompass : public CompassDevice {
public:
    [[nodiscard]] bool isThere() override { return there; }
    void watch(std::function<void(const CompassFix&)> then) override { tell = std::move(then); }
    void stop() override { tell = {}; }
    bool there = true;
    std::function<void(const CompassFix&)> tell;  ///< empty: nobody watches
};

/// Folder, recorded devices, store and notebook; `reopen` ends the last two and starts them again on the same folder.
class Bench {
public:
    Bench();

    void reopen();
    /// Ends the program.
    void end();
    [[nodiscard]] Notebook& notebook() { return *notebook_; }
    [[nodiscard]] SurveyKeeping& keeping() { return *keeping_; }
    [[nodiscard]] QString folder() const { return folder_.path(); }
    /// Waits until everything posted so far is answered.
    void settle();
    /// A visit with one room and one window of this shape, opened at its walk; the window's id.
    QString openNewWindow(const QString& shape = "recess");
    /// Puts the clock forward.
    void pass(std::chrono::seconds time) { seconds_ += static_cast<int>(time.count()); }
    /// Presses each character as a key.
    void type(const QString& keys);

    RecordedPosition* position = nullptr;
    NoCamera* camera = nullptr;
    RecordedFiles* files = nullptr;
    RecordedClipboard* clipboard = nullptr;
    RecordedVoice* voice = nullptr;
    RecordedLight* light = nullptr;
    RecordedCompass* compass = nullptr;

private:
    void begin();
    /// Puts every model under the model tester.
    void watch();

    QTemporaryDir folder_;
    std::atomic<int> seconds_{0};
    std::atomic<int> ids_{0};
    Devices devices_;
    std::unique_ptr<SurveyKeeping> keeping_;
    std::unique_ptr<Notebook> notebook_;
    std::vector<std::unique_ptr<QAbstractItemModelTester>> testers_;
};

/// While it lives, no file of this process can grow: every write to the disk fails (RLIMIT_FSIZE).
class FullDisk {
public:
    FullDisk();
    ~FullDisk();
    FullDisk(const FullDisk&) = delete;
    FullDisk& operator=(const FullDisk&) = delete;

private:
    unsigned long before_ = 0;
};

/// Puts the contract's example into the store, changed so, and opens its window.
void open_example(Bench& bench, const std::function<void(Survey&)>& change = {});

/// Visits `v0` … straight in the store, each on a day of its own, `v0` the oldest.
void make_visits(Bench& bench, int count);

/// A role of every row, as text.
[[nodiscard]] QStringList column(const ShownRows* rows, const char* role);

/// The value of a role in the row with this key.
[[nodiscard]] QVariant value(const ShownRows* rows, const QVariant& key, const char* role);

}  // namespace truehang::test
