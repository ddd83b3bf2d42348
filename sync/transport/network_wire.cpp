// SPDX-License-Identifier: Apache-2.0
#include "transport/network_wire.h"

#include "protocol/limits.h"

#include <QCryptographicHash>
#include <QNetworkReply>
#include <QNetworkRequest>
#include <QPointer>
#include <QSslCertificate>
#include <QSslConfiguration>
#include <QTimer>

namespace truehang::sync {

/// One request and what has come of it so far; it deletes itself.
class NetworkWire::Exchange : public QObject {
public:
    Exchange(NetworkWire& wire, QNetworkReply* reply, Then then, std::chrono::milliseconds total, qint64 most)
        : QObject(&wire), wire_(wire), reply_(reply), then_(std::move(then)), pin_(wire.pin_), most_(most) {
        reply_->setParent(this);
        if (!pin_.isEmpty()) {
            connect(reply_, &QNetworkReply::sslErrors, this, [this] {
                if (shows_pin()) {
                    reply_->ignoreSslErrors();
                }
            });
            // Nothing of the request has been sent when this is heard: Qt waits for it.
            connect(reply_, &QNetworkReply::encrypted, this, [this] {
                if (!shows_pin()) {
                    another_ = true;
                    reply_->abort();
                }
            });
        }
        connect(reply_, &QNetworkReply::uploadProgress, this,
                [this](qint64 sent, qint64) { began_ = began_ || sent > 0; });
        connect(reply_, &QNetworkReply::readyRead, this, &Exchange::take);
        connect(reply_, &QNetworkReply::finished, this, &Exchange::finish);
        deadline_.setSingleShot(true);
        connect(&deadline_, &QTimer::timeout, this, [this] { reply_->abort(); });
        deadline_.start(total);
    }

    void callOff() {
        called_off_ = true;
        reply_->abort();
    }

private:
    [[nodiscard]] bool shows_pin() const {
        const QSslCertificate leaf = reply_->sslConfiguration().peerCertificate();
        return !leaf.isNull() && leaf.digest(QCryptographicHash::Sha256).toHex() == pin_;
    }

    void take() {
        content_ += reply_->readAll();
        if (content_.size() > most_) {
            content_.truncate(most_);
            cut_off_ = true;
            reply_->abort();
        }
    }

    void finish() {
        if (wire_.under_way_ == this) {
            wire_.under_way_ = nullptr;
        }
        const auto then = std::exchange(then_, {});
        deleteLater();
        if (then) {
            then(outcome());
        }
    }

    [[nodiscard]] Outcome outcome() const {
        if (called_off_) {
            return std::monostate();
        }
        if (another_) {
            return WireFailure::not_trusted;
        }
        const QVariant status = reply_->attribute(QNetworkRequest::HttpStatusCodeAttribute);
        const auto error = reply_->error();
        const bool from_server = error == QNetworkReply::NoError || error > QNetworkReply::UnknownProxyError;
        if (status.isValid() && (from_server || cut_off_) && error != QNetworkReply::ProtocolFailure) {
            return answer(status.toInt());
        }
        switch (error) {
            case QNetworkReply::SslHandshakeFailedError:
                return WireFailure::not_trusted;
            case QNetworkReply::ConnectionRefusedError:
            case QNetworkReply::HostNotFoundError:
            case QNetworkReply::TemporaryNetworkFailureError:
            case QNetworkReply::ProxyConnectionRefusedError:
            case QNetworkReply::ProxyNotFoundError:
            case QNetworkReply::ProxyTimeoutError:
                return began_ ? WireFailure::broken_off : WireFailure::not_reached;
            default:
                return WireFailure::broken_off;
        }
    }

    [[nodiscard]] Answer answer(int status) const {
        Answer came;
        came.status = status;
        for (const auto& [name, value] : reply_->rawHeaderPairs()) {
            came.headers.emplace_back(name.toStdString(), value.toStdString());
        }
        came.content = content_.toStdString();
        return came;
    }

    NetworkWire& wire_;
    QNetworkReply* reply_;
    Then then_;
    QByteArray pin_;
    QTimer deadline_;
    QByteArray content_;
    bool another_ = false;  ///< a certificate was shown that isn't the pinned one
    bool began_ = false;
    qint64 most_;  ///< bytes of the answer that are read
    bool cut_off_ = false;
    bool called_off_ = false;
};

NetworkWire::NetworkWire(WireTimes times, QObject* parent) : QObject(parent), times_(times) {
    network_.setAutoDeleteReplies(false);
    network_.setRedirectPolicy(QNetworkRequest::ManualRedirectPolicy);
}

NetworkWire::~NetworkWire() = default;

/// Longer where much is sent or may come.
std::chrono::milliseconds NetworkWire::total_for(const Request& request, qint64 body) const {
    const qint64 coming = request.answer_most > answer_limit ? static_cast<qint64>(request.answer_most) : 0;
    return times_.total + std::chrono::seconds(std::max(body, coming) / std::max<qint64>(times_.slowest, 1));
}

void NetworkWire::send(const QUrl& address, const QByteArray& token, const Request& request, const QByteArray& body,
                       Then then) {
    if (!pin_.isEmpty() && address.scheme() != QStringLiteral("https")) {
        QTimer::singleShot(0, this, [then = std::move(then)] { then(WireFailure::not_trusted); });
        return;
    }
    QByteArray target = address.toEncoded(QUrl::RemovePath | QUrl::RemoveQuery | QUrl::RemoveFragment);
    target += QByteArray::fromStdString(request.path);
    QNetworkRequest asked(QUrl::fromEncoded(target));
    for (const auto& [name, value] : request.headers) {
        asked.setRawHeader(QByteArray::fromStdString(name), QByteArray::fromStdString(value));
    }
    if (request.with_token) {
        asked.setRawHeader("Authorization", "Bearer " + token);
    }
    asked.setAttribute(QNetworkRequest::Http2AllowedAttribute, false);
    asked.setAttribute(QNetworkRequest::CookieLoadControlAttribute, QNetworkRequest::Manual);
    asked.setAttribute(QNetworkRequest::CookieSaveControlAttribute, QNetworkRequest::Manual);
    asked.setAttribute(QNetworkRequest::CacheLoadControlAttribute, QNetworkRequest::AlwaysNetwork);
    asked.setTransferTimeout(static_cast<int>(times_.still.count()));
    QNetworkReply* reply = nullptr;
    switch (request.method) {
        case Method::get:
            reply = network_.get(asked);
            break;
        case Method::head:
            reply = network_.head(asked);
            break;
        case Method::put:
            reply = network_.put(asked, body);
            break;
        case Method::post:
            reply = network_.post(asked, body);
            break;
        case Method::patch:
            reply = network_.sendCustomRequest(asked, "PATCH", body);
            break;
    }
    under_way_ = new Exchange(*this, reply, std::move(then), total_for(request, body.size()),
                              static_cast<qint64>(request.answer_most));
}

void NetworkWire::setPin(const QByteArray& pin) {
    if (pin != pin_) {
        network_.clearConnectionCache();  // a connection that is held open was trusted otherwise
        pin_ = pin;
    }
}

void NetworkWire::callOff() {
    if (under_way_) {
        under_way_->callOff();
    }
}

QUrl workroom_address(const QString& typed) {
    const QString text = typed.trimmed();
    const bool has_scheme = text.contains(QStringLiteral("://"));
    QUrl url(has_scheme ? text : QStringLiteral("http://") + text, QUrl::StrictMode);
    const bool known = url.scheme() == QStringLiteral("http") || url.scheme() == QStringLiteral("https");
    if (text.isEmpty() || !url.isValid() || !known || url.host().isEmpty() || !url.userInfo().isEmpty()) {
        return {};
    }
    url.setPath({});
    url.setQuery(QString());
    url.setFragment({});
    return url;
}

}  // namespace truehang::sync
