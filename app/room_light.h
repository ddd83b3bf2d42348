// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <QObject>

namespace truehang {

class LightDevice;
class Settings;

/// Whether the room is dim, for the look that goes by it. The sensor runs only while that look is chosen.
class RoomLight : public QObject {
    Q_OBJECT
    /// There is a sensor that tells.
    Q_PROPERTY(bool offered READ offered CONSTANT)
    /// The room is dim: below 20 lux until it is above 60, so that a passing shadow turns nothing over (common
    /// practice, no source). False while nothing was told.
    Q_PROPERTY(bool dim READ dim NOTIFY changed)

public:
    /// Both must outlive it.
    RoomLight(const Settings& settings, LightDevice& device, QObject* parent = nullptr);
    ~RoomLight() override;

    [[nodiscard]] bool offered() const;
    [[nodiscard]] bool dim() const { return dim_; }

signals:
    void changed();

private:
    void follow();
    void take(double lux);

    const Settings& settings_;
    LightDevice& device_;
    bool watching_ = false;
    bool dim_ = false;
};

}  // namespace truehang
