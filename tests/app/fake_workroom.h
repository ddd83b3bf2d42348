// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <QByteArray>
#include <QHash>
#include <QList>
#include <QTcpServer>
#include <QTcpSocket>
#include <functional>

namespace truehang::test {

/// One request as it came over the wire.
struct Heard {
    QByteArray method;
    QByteArray path;
    QByteArray head;  ///< the whole head, as sent
    QByteArray body;
};

/// A server on loopback that hears whole requests and answers as the test says.
class FakeWorkroom : public QTcpServer {
    Q_OBJECT

public:
    using Answers = std::function<void(QTcpSocket&, const Heard&)>;

    explicit FakeWorkroom(Answers answers) : answers_(std::move(answers)) {
        listen(QHostAddress::LocalHost);
        connect(this, &QTcpServer::newConnection, this, [this] {
            while (QTcpSocket* socket = nextPendingConnection()) {
                connect(socket, &QTcpSocket::readyRead, this, [this, socket] { hear(*socket); });
                connect(socket, &QTcpSocket::disconnected, socket, &QObject::deleteLater);
            }
        });
    }

    [[nodiscard]] QString address() const { return QStringLiteral("127.0.0.1:%1").arg(serverPort()); }
    [[nodiscard]] const QList<Heard>& heard() const { return heard_; }

    static void answer(QTcpSocket& socket, int status, const QByteArray& body, const QByteArray& headers = {}) {
        socket.write("HTTP/1.1 " + QByteArray::number(status) +
                     " Said\r\nContent-Length: " + QByteArray::number(body.size()) + "\r\n" + headers + "\r\n" + body);
    }

private:
    void hear(QTcpSocket& socket) {
        QByteArray& come = come_[&socket];
        come += socket.readAll();
        const auto end = come.indexOf("\r\n\r\n");
        if (end < 0) {
            return;
        }
        Heard heard;
        heard.head = come.left(end);
        qsizetype length = 0;
        for (const QByteArray& line : heard.head.split('\n')) {
            if (line.toLower().startsWith("content-length:")) {
                length = line.mid(15).trimmed().toLongLong();
            }
        }
        if (come.size() < end + 4 + length) {
            return;
        }
        const QList<QByteArray> words = heard.head.left(heard.head.indexOf("\r\n")).split(' ');
        heard.method = words.value(0);
        heard.path = words.value(1);
        heard.body = come.mid(end + 4, length);
        come.remove(0, end + 4 + length);
        heard_.append(heard);
        answers_(socket, heard);
    }

    Answers answers_;
    QHash<QTcpSocket*, QByteArray> come_;
    QList<Heard> heard_;
};

}  // namespace truehang::test
