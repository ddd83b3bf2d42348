// SPDX-License-Identifier: Apache-2.0
#include "devices.h"

#include <QClipboard>
#include <QCompass>
#include <QDesktopServices>
#include <QFile>
#include <QFileInfo>
#include <QGeoPositionInfo>
#include <QGeoPositionInfoSource>
#include <QGuiApplication>
#include <QLightReading>
#include <QLightSensor>
#include <QMagnetometer>
#include <QMimeData>
#include <QSaveFile>
#include <QStandardPaths>
#include <QTextToSpeech>

#include <QCoreApplication>
#include <cmath>

namespace truehang {

namespace {

constexpr int position_timeout_ms = 30'000;

QString devices_words(const char* source) { return QCoreApplication::translate("devices", source); }

/// Qt Positioning, asked for when first needed: start-up doesn't wait for it.
class SystemPosition : public PositionDevice {
public:
    void ask(std::function<void(const std::optional<PositionFix>&)> then) override {
        then_ = std::move(then);
        source_.reset(QGeoPositionInfoSource::createDefaultSource(nullptr));
        if (!source_) {
            QMetaObject::invokeMethod(
                &here_, [this] { answer({}); }, Qt::QueuedConnection);
            return;
        }
        QObject::connect(
            source_.get(), &QGeoPositionInfoSource::positionUpdated, &here_,
            [this](const QGeoPositionInfo& fix) { answer(fix_of(fix)); }, Qt::QueuedConnection);
        QObject::connect(
            source_.get(), &QGeoPositionInfoSource::errorOccurred, &here_, [this] { answer({}); },
            Qt::QueuedConnection);
        source_->requestUpdate(position_timeout_ms);
    }

    void cancel() override {
        then_ = {};
        source_.reset();
    }

private:
    static std::optional<PositionFix> fix_of(const QGeoPositionInfo& fix) {
        if (!fix.isValid()) {
            return {};
        }
        PositionFix place{fix.coordinate().latitude(), fix.coordinate().longitude(), {}, {}};
        if (fix.hasAttribute(QGeoPositionInfo::HorizontalAccuracy)) {
            place.accuracy_m = fix.attribute(QGeoPositionInfo::HorizontalAccuracy);
        }
        if (fix.coordinate().type() == QGeoCoordinate::Coordinate3D) {
            place.elevation_m = fix.coordinate().altitude();
        }
        return place;
    }

    void answer(const std::optional<PositionFix>& fix) {
        const auto then = std::exchange(then_, {});
        source_.reset();
        if (then) {
            then(fix);
        }
    }

    QObject here_;
    std::unique_ptr<QGeoPositionInfoSource> source_;
    std::function<void(const std::optional<PositionFix>&)> then_;
};

class SystemCamera : public CameraDevice {
public:
    [[nodiscard]] QUrl source() const override {
        const QString page = QStringLiteral(":/qt-project.org/imports/Truehang/Face/pages/CameraPanel.qml");
        return QFile::exists(page) ? QUrl(QStringLiteral("qrc") + page) : QUrl();
    }
};

class SystemFiles : public FileDevice {
public:
    [[nodiscard]] Result<QByteArray> read(const QUrl& file, qint64 most) override {
        QFile opened(file.isLocalFile() ? file.toLocalFile() : file.toString());
        if (!opened.open(QIODevice::ReadOnly)) {
            return Error{ErrorCode::io, opened.fileName().toStdString(),
                         devices_words(QT_TRANSLATE_NOOP("devices", "The file can’t be opened: %1"))
                             .arg(opened.errorString())
                             .toStdString()};
        }
        QByteArray bytes = opened.read(most + 1);
        if (bytes.size() > most) {
            return Error{ErrorCode::out_of_range, opened.fileName().toStdString(),
                         devices_words(QT_TRANSLATE_NOOP("devices", "The file is too large.")).toStdString()};
        }
        return bytes;
    }

    [[nodiscard]] Result<Done> write(const QUrl& file, const QByteArray& bytes) override {
        QSaveFile opened(file.isLocalFile() ? file.toLocalFile() : file.toString());
        if (!opened.open(QIODevice::WriteOnly) || opened.write(bytes) != bytes.size() || !opened.flush() ||
            !opened.commit()) {
            return Error{ErrorCode::io, opened.fileName().toStdString(),
                         devices_words(QT_TRANSLATE_NOOP("devices", "The file can’t be written: %1"))
                             .arg(opened.errorString())
                             .toStdString()};
        }
        return Done{};
    }

    [[nodiscard]] QUrl documents() const override {
        return QUrl::fromLocalFile(QStandardPaths::writableLocation(QStandardPaths::DocumentsLocation));
    }
};

class SystemShare : public ShareDevice {
public:
    bool share(const QUrl& file) override { return QDesktopServices::openUrl(file.adjusted(QUrl::RemoveFilename)); }
};

class SystemClipboard : public ClipboardDevice {
public:
    [[nodiscard]] bool hasPicture() const override {
        const QMimeData* held = QGuiApplication::clipboard()->mimeData();
        return held && held->hasImage();
    }
    [[nodiscard]] QImage picture() const override { return QGuiApplication::clipboard()->image(); }
};

/// Qt's speech, asked for when first needed. Its engine for tests says nothing aloud, and doesn't count.
class SystemVoice : public VoiceDevice {
public:
    [[nodiscard]] bool isThere() override {
        QStringList engines = QTextToSpeech::availableEngines();
        engines.removeAll(QStringLiteral("mock"));
        return !engines.isEmpty();
    }

    void say(const QString& words) override {
        if (!speech_ && isThere()) {
            speech_ = std::make_unique<QTextToSpeech>();
        }
        if (speech_) {
            speech_->stop();
            speech_->say(words);
        }
    }

private:
    std::unique_ptr<QTextToSpeech> speech_;
};

class SystemLight : public LightDevice {
public:
    [[nodiscard]] bool isThere() override {
        return !QSensor::defaultSensorForType(QByteArrayLiteral("QLightSensor")).isEmpty();
    }

    void watch(std::function<void(double lux)> then) override {
        sensor_ = std::make_unique<QLightSensor>();
        QObject::connect(sensor_.get(), &QSensor::readingChanged, sensor_.get(),
                         [this, then = std::move(then)] { then(sensor_->reading()->lux()); });
        sensor_->start();
    }

    void stop() override { sensor_.reset(); }

private:
    std::unique_ptr<QLightSensor> sensor_;
};

constexpr double nt_per_tesla = 1e9;
/// What a compass that calls itself well set, or not, is good for: common practice, no source.
constexpr double well_set_deg = 8.0;
constexpr double badly_set_deg = 20.0;

class SystemCompass : public CompassDevice {
public:
    [[nodiscard]] bool isThere() override {
        return !QSensor::defaultSensorForType(QByteArrayLiteral("QCompass")).isEmpty();
    }

    void watch(std::function<void(const CompassFix&)> then) override {
        field_ = std::make_unique<QMagnetometer>();
        field_->start();
        sensor_ = std::make_unique<QCompass>();
        QObject::connect(sensor_.get(), &QSensor::readingChanged, sensor_.get(),
                         [this, then = std::move(then)] { then(fix()); });
        sensor_->start();
    }

    void stop() override {
        sensor_.reset();
        field_.reset();
    }

private:
    [[nodiscard]] CompassFix fix() const {
        const QCompassReading& compass = *sensor_->reading();
        CompassFix fix;
        fix.magnetic_deg = compass.azimuth();
        fix.u_deg = compass.calibrationLevel() >= 0.5 ? well_set_deg : badly_set_deg;
        if (const QMagnetometerReading* felt = field_->reading(); felt != nullptr && felt->timestamp() > 0) {
            fix.field_nt = nt_per_tesla * std::hypot(felt->x(), felt->y(), felt->z());
        }
        return fix;
    }

    std::unique_ptr<QCompass> sensor_;
    std::unique_ptr<QMagnetometer> field_;
};

}  // namespace

Devices system_devices() {
    return {std::make_unique<SystemPosition>(), std::make_unique<SystemCamera>(),    std::make_unique<SystemFiles>(),
            std::make_unique<SystemShare>(),    std::make_unique<SystemClipboard>(), std::make_unique<SystemVoice>(),
            std::make_unique<SystemLight>(),    std::make_unique<SystemCompass>()};
}

}  // namespace truehang
