// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <QObject>
#include <QString>

namespace truehang {

class Settings;
class VoiceDevice;
class WalkModel;

/// Says the walk aloud while the settings ask for it and there is a voice: what was typed is read back, then the next
/// station, or what doesn't add up. For eyes that are on the tape.
class WalkAloud : public QObject {
    Q_OBJECT
    /// There is a voice here at all.
    Q_PROPERTY(bool offered READ offered CONSTANT)

public:
    /// All must outlive it.
    WalkAloud(const WalkModel& walk, const Settings& settings, VoiceDevice& voice, QObject* parent = nullptr);

    [[nodiscard]] bool offered() const;

    /// The number and its unit as they are said: "48 3/8 inches".
    [[nodiscard]] static QString spokenFigure(const QString& figure);

public slots:
    void say();

private:
    void readBack(const QString& figure);
    void showDiffering();

    const WalkModel& walk_;
    const Settings& settings_;
    VoiceDevice& voice_;
    QString read_back_;
    bool differed_ = false;
};

}  // namespace truehang
