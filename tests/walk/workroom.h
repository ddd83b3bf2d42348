// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <QByteArray>
#include <QProcess>
#include <QString>

namespace truehang::walk {

/// The workroom's own program beside this one, receiving on a loopback port of its own.
class Workroom {
public:
    /// Throws where it doesn't start.
    explicit Workroom(QString data);
    ~Workroom();
    Workroom(const Workroom&) = delete;
    Workroom& operator=(const Workroom&) = delete;

    /// "127.0.0.1:PORT" and the code that pairs one device.
    [[nodiscard]] QString address() const { return address_; }
    [[nodiscard]] QString code() const { return code_; }
    /// A page of it. Throws where it isn't answered with 200.
    [[nodiscard]] QByteArray page(const QString& path) const;
    /// The newest survey document that it received, byte for byte.
    [[nodiscard]] QByteArray received() const;
    /// Standard output of `truehang-workroom WORDS`. Throws where it fails.
    [[nodiscard]] static QByteArray asked(const QStringList& words);

private:
    QString data_;
    QProcess process_;
    QString address_;
    QString code_;
};

}  // namespace truehang::walk
