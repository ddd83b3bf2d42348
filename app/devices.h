// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "units/result.h"

#include <QByteArray>
#include <QImage>
#include <QUrl>
#include <functional>
#include <memory>
#include <optional>

// What the program asks of the phone, behind interfaces: tests put recorded answers in their place. All calls and
// answers on the interface's thread; no call waits.

namespace truehang {

/// A place on earth: degrees (WGS 84), and what its accuracy is thought to be, metres.
struct PositionFix {
    double latitude = 0.0;
    double longitude = 0.0;
    std::optional<double> accuracy_m;
    std::optional<double> elevation_m;
};

class PositionDevice {
public:
    virtual ~PositionDevice() = default;
    /// Asks once. The answer comes later, once: a fix, or none where there is no position here.
    virtual void ask(std::function<void(const std::optional<PositionFix>&)> then) = 0;
    /// No answer is wanted any more.
    virtual void cancel() = 0;
};

class CameraDevice {
public:
    virtual ~CameraDevice() = default;
    /// The page that shows the camera; empty where there is none.
    [[nodiscard]] virtual QUrl source() const = 0;
};

class FileDevice {
public:
    virtual ~FileDevice() = default;
    /// The bytes of a chosen file, at most `most` of them; a larger file is an error.
    [[nodiscard]] virtual Result<QByteArray> read(const QUrl& file, qint64 most) = 0;
    /// Writes the whole file or leaves what stood there.
    [[nodiscard]] virtual Result<Done> write(const QUrl& file, const QByteArray& bytes) = 0;
    /// Where a person looks for documents.
    [[nodiscard]] virtual QUrl documents() const = 0;
};

class ShareDevice {
public:
    virtual ~ShareDevice() = default;
    /// Hands a file to the system's own sharing; false where the system has none.
    virtual bool share(const QUrl& file) = 0;
};

class ClipboardDevice {
public:
    virtual ~ClipboardDevice() = default;
    [[nodiscard]] virtual bool hasPicture() const = 0;
    [[nodiscard]] virtual QImage picture() const = 0;
};

class VoiceDevice {
public:
    virtual ~VoiceDevice() = default;
    [[nodiscard]] virtual bool isThere() = 0;
    /// Says this now; what was being said before it ends.
    virtual void say(const QString& words) = 0;
};

class LightDevice {
public:
    virtual ~LightDevice() = default;
    /// There is a sensor for the light around.
    [[nodiscard]] virtual bool isThere() = 0;
    /// Tells the illuminance in lux from here on whenever it changes.
    virtual void watch(std::function<void(double lux)> then) = 0;
    virtual void stop() = 0;
};

/// Which way the phone’s upper edge points, degrees from magnetic north, as good as it tells, and the strength of the
/// field that it feels, nT.
struct CompassFix {
    double magnetic_deg = 0.0;
    std::optional<double> u_deg;
    std::optional<double> field_nt;
};

class CompassDevice {
public:
    virtual ~CompassDevice() = default;
    [[nodiscard]] virtual bool isThere() = 0;
    /// Tells it from here on whenever it changes.
    virtual void watch(std::function<void(const CompassFix&)> then) = 0;
    virtual void stop() = 0;
};

/// One of each; none is null.
struct Devices {
    std::unique_ptr<PositionDevice> position;
    std::unique_ptr<CameraDevice> camera;
    std::unique_ptr<FileDevice> files;
    std::unique_ptr<ShareDevice> share;
    std::unique_ptr<ClipboardDevice> clipboard;
    std::unique_ptr<VoiceDevice> voice;
    std::unique_ptr<LightDevice> light;
    std::unique_ptr<CompassDevice> compass;
};

/// This system's own.
[[nodiscard]] Devices system_devices();

}  // namespace truehang
