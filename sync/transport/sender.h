// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "outbox/outbox.h"
#include "transport/network_wire.h"

#include <QObject>
#include <QTimer>

namespace truehang::sync {

/// Drives an outbox over a wire: sends what it asks for, hands back what came, wakes it when it asked to be woken.
class Sender : public QObject {
    Q_OBJECT

public:
    /// Gives the stored bytes of an item, later, or none where they can't be read.
    using BytesOf = std::function<void(const Item& item, std::function<void(const std::optional<QByteArray>&)> then)>;

    /// All but `clock` and `bytes_of` must outlive it. `clock` is the outbox's own.
    Sender(Outbox& outbox, NetworkWire& wire, Outbox::Clock clock, BytesOf bytes_of, QObject* parent = nullptr);

    /// Where to send, and the token for it. An invalid address stops sending.
    void setWorkroom(const QUrl& address, const QByteArray& token);
    [[nodiscard]] bool busy() const { return busy_; }

public slots:
    /// Asks the outbox what to do; to be called when items came, the network came back, or a person asked.
    void go();
    /// Ends what is under way without blaming anyone.
    void callOff();

signals:
    /// An item or the link stands differently.
    void moved();

private:
    void send(const Request& request, const QByteArray& body);
    void send_stored(const Request& request, const QByteArray& bytes);
    void have_no_bytes(const Request& request);

    Outbox& outbox_;
    NetworkWire& wire_;
    Outbox::Clock clock_;
    BytesOf bytes_of_;
    QUrl address_;
    QByteArray token_;
    QTimer wake_;
    /// The bytes of the item that goes in pieces, so that they are read once.
    struct Held {
        std::string sha256;
        QByteArray bytes;
    };
    Held held_;
    bool busy_ = false;
};

}  // namespace truehang::sync
