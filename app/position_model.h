// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <QObject>
#include <optional>

namespace truehang {

class OpenVisit;
struct Devices;
struct PositionFix;

/// Where the site is, asked for once, on request.
class PositionModel : public QObject {
    Q_OBJECT
    Q_PROPERTY(State state READ state NOTIFY changed)
    /// "Asking where we are", "54.60000, -1.10000, within 12 m", "No position here".
    Q_PROPERTY(QString says READ says NOTIFY changed)

public:
    enum class State { Quiet, Asking, Here, NoPosition };
    Q_ENUM(State)

    PositionModel(OpenVisit& open, Devices& devices, QObject* parent = nullptr);

    [[nodiscard]] State state() const { return state_; }
    [[nodiscard]] QString says() const;

    /// Asks once; what comes is kept with the site of the open visit.
    Q_INVOKABLE void ask();
    Q_INVOKABLE void cancel();
    /// Takes the position off the site; undo brings it back.
    Q_INVOKABLE void forget();

signals:
    void changed();

private:
    void setState(State state);
    void take(const std::optional<PositionFix>& fix);

    OpenVisit& open_;
    Devices& devices_;
    State state_ = State::Quiet;
};

}  // namespace truehang
