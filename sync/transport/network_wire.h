// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "outbox/wire.h"

#include <QByteArray>
#include <QNetworkAccessManager>
#include <QObject>
#include <QUrl>
#include <chrono>
#include <functional>
#include <variant>

namespace truehang::sync {

/// How long a request may take.
struct WireTimes {
    std::chrono::milliseconds still{30'000};   ///< without a byte either way
    std::chrono::milliseconds total{120'000};  ///< in all, for a request without a body
    qint64 slowest = 8'000;                    ///< bytes a second: a body lengthens the total by its size over this
};

/// What came of one request: an answer, a failure, or `std::monostate` where it was called off here.
using Outcome = std::variant<std::monostate, Answer, WireFailure>;

/// Requests of the protocol over HTTP, one at a time, on Qt Network. Redirects aren't followed, nothing is cached, no
/// cookie is kept.
class NetworkWire : public QObject {
    Q_OBJECT

public:
    using Then = std::function<void(const Outcome&)>;

    explicit NetworkWire(WireTimes times = {}, QObject* parent = nullptr);
    ~NetworkWire() override;

    /// Sends `request` with `body` to the workroom at `address` (scheme, host, port). `then` is called once, later,
    /// unless this object ends before.
    void send(const QUrl& address, const QByteArray& token, const Request& request, const QByteArray& body, Then then);
    /// From the next request on nothing is sent but over TLS to who shows the certificate with this SHA-256 (of its
    /// DER, in lower-case hexadecimal); its names, dates and issuer then don't matter. Empty: one that the system
    /// trusts. Anything else is `not_trusted`, and got nothing.
    void setPin(const QByteArray& pin);
    /// Ends the request under way, if there is one; its outcome is `std::monostate`.
    void callOff();

private:
    class Exchange;
    [[nodiscard]] std::chrono::milliseconds total_for(const Request& request, qint64 body) const;

    QNetworkAccessManager network_;
    WireTimes times_;
    QByteArray pin_;
    Exchange* under_way_ = nullptr;
};

/// The address that a person typed as a URL: "192.0.2.7:8080", "workroom.example.org", "http://…", "https://…". Without
/// a scheme http is taken. Invalid where it can't be one.
[[nodiscard]] QUrl workroom_address(const QString& typed);

}  // namespace truehang::sync
