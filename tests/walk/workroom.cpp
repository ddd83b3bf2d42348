// SPDX-License-Identifier: Apache-2.0
#include "workroom.h"

#include <SQLiteCpp/Database.h>
#include <SQLiteCpp/Statement.h>
#include <QCoreApplication>
#include <QDir>
#include <QNetworkAccessManager>
#include <QNetworkReply>
#include <QSignalSpy>
#include <QTest>
#include <stdexcept>
#include <utility>

namespace truehang::walk {

namespace {

constexpr int patience = 60'000;  // milliseconds, reached only where something never comes

QString program() { return QCoreApplication::applicationDirPath() + QStringLiteral("/truehang-workroom"); }

}  // namespace

Workroom::Workroom(QString data) : data_(std::move(data)) {
    // What an earlier walk left there is of the same survey, and may be another program's.
    QDir(data_).removeRecursively();
    process_.setProcessChannelMode(QProcess::ForwardedErrorChannel);
    process_.start(program(), {QStringLiteral("serve"), QStringLiteral("--data"), data_, QStringLiteral("--port"),
                               QStringLiteral("0")});
    QStringList lines;
    while (lines.size() < 2 && process_.waitForReadyRead(patience)) {
        while (process_.canReadLine()) {
            lines << QString::fromUtf8(process_.readLine()).trimmed();
        }
    }
    if (lines.size() < 2) {
        throw std::runtime_error("the workroom didn't start: " + process_.errorString().toStdString());
    }
    address_ = lines.at(0).section(QStringLiteral("://"), 1);
    code_ = lines.at(1).section(QStringLiteral(": "), 1);
}

Workroom::~Workroom() {
    process_.terminate();
    if (!process_.waitForFinished(10'000)) {
        process_.kill();
        process_.waitForFinished();
    }
}

QByteArray Workroom::page(const QString& path) const {
    QNetworkAccessManager network;
    QNetworkRequest request(QUrl(QStringLiteral("http://%1%2").arg(address_, path)));
    request.setTransferTimeout(patience);
    const std::unique_ptr<QNetworkReply> reply(network.get(request));
    if (!QTest::qWaitFor([&] { return reply->isFinished(); }, patience) || reply->error() != QNetworkReply::NoError) {
        throw std::runtime_error("the workroom's page " + path.toStdString() + ": " +
                                 reply->errorString().toStdString());
    }
    return reply->readAll();
}

QByteArray Workroom::received() const {
    const SQLite::Database kept((data_ + QStringLiteral("/workroom.sqlite")).toStdString(), SQLite::OPEN_READONLY);
    SQLite::Statement newest(kept, "SELECT bytes FROM revision ORDER BY revision DESC LIMIT 1");
    if (!newest.executeStep()) {
        throw std::runtime_error("the workroom has received no survey");
    }
    const SQLite::Column bytes = newest.getColumn(0);
    return {static_cast<const char*>(bytes.getBlob()), bytes.getBytes()};
}

QByteArray Workroom::asked(const QStringList& words) {
    QProcess command;
    command.setProcessChannelMode(QProcess::ForwardedErrorChannel);
    command.start(program(), words);
    if (!command.waitForFinished(patience) || command.exitCode() != 0) {
        throw std::runtime_error("truehang-workroom " + words.join(QLatin1Char(' ')).toStdString() + " failed");
    }
    return command.readAllStandardOutput();
}

}  // namespace truehang::walk
