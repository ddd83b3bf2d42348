// SPDX-License-Identifier: Apache-2.0
// Pairing by the workroom's text, and who is spoken to afterwards: against the receiver itself, with its own
// certificate, and against others in its place.
#include "code_pictures.h"
#include "receiver_process.h"
#include "support.h"

#include "protocol/pairing_text.h"
#include "transport/network_wire.h"

#include <QFile>
#include <QSslConfiguration>
#include <QSslKey>
#include <QSslServer>
#include <QSslSocket>
#include <QTest>
#include <algorithm>
#include <csignal>
#include <fstream>

using namespace truehang;
using namespace truehang::test;
using namespace std::chrono_literals;
using sync::NetworkWire;
using sync::Outcome;
using sync::WireFailure;
using sync::test::Receiver;
using sync::test::run_program;
using sync::test::TemporaryFolder;

class AppPinningTest : public QObject {
    Q_OBJECT

private slots:
    void onlyThePinnedCertificateIsSpokenWith();
    void nothingGoesToAnotherOneThatTheSystemTrusts();
    void aPairingTextFillsTheLines();
    void pairsByTheTextAndThenTrustsNoOther();
    void pairsByAPhotoOfThePage();
    void aTextOfAnotherWorkroomDoesntPair();
    void halfATextIsRefused();
};

namespace {

QString loopback(int port) { return QStringLiteral("https://127.0.0.1:%1").arg(port); }

/// A receiver with a certificate of its own.
struct Workroom {
    TemporaryFolder folder;
    Receiver receiver{folder.path(), {"--listen", "0.0.0.0"}};

    [[nodiscard]] QString address() const { return loopback(receiver.port()); }
    [[nodiscard]] std::string certificate() const { return (folder.path() / "own-certificate.pem").string(); }
    /// As openssl works it out.
    [[nodiscard]] QByteArray pin() const {
        auto line = run_program({"openssl", "x509", "-in", certificate(), "-noout", "-fingerprint", "-sha256"}).out;
        auto pin = QByteArray::fromStdString(line.substr(line.find('=') + 1)).trimmed().toLower();
        return pin.replace(":", "");
    }
    /// The page that shows a new code.
    [[nodiscard]] std::string page() const {
        const auto here = address().toStdString();
        return run_program({"curl", "-sS", "--max-time", "10", "--cacert", certificate(), "-X", "POST", "-H",
                            "Origin: " + here, "-d", "", here + "/devices/code"})
            .out;
    }
    /// That page as a browser shows it.
    [[nodiscard]] QImage screen() const {
        const auto file = folder.path() / "page.html";
        const auto picture = folder.path() / "page.png";
        std::ofstream(file) << page();
        const auto drawn =
            run_program({"chromium", "--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run",
                         "--user-data-dir=" + (folder.path() / "chromium").string(), "--window-size=900,1200",
                         "--screenshot=" + picture.string(), "file://" + file.string()});
        return QImage(QString::fromStdString(picture.string()));
    }
    /// The page's text, with this machine's own address.
    [[nodiscard]] QString text() const {
        const auto page = QString::fromStdString(this->page());
        const auto begin = page.indexOf(QStringLiteral("truehang:pair?"));
        QString text = page.mid(begin, page.indexOf(u'<', begin) - begin).replace("&amp;", "&");
        const auto at = text.indexOf(QStringLiteral("at=")) + 3;
        return text.replace(at, text.indexOf(u'&', at) - at, address());
    }
};

/// Stands in a workroom's place with another workroom's certificate and key, and counts what it is sent within TLS.
class Impostor : public QSslServer {
public:
    Impostor(const std::string& pem, quint16 port) {
        QFile file(QString::fromStdString(pem));
        if (!file.open(QIODevice::ReadOnly)) {
            return;
        }
        const QByteArray both = file.readAll();
        QSslConfiguration configuration = QSslConfiguration::defaultConfiguration();
        configuration.setLocalCertificate(QSslCertificate(both));
        configuration.setPrivateKey(QSslKey(both, QSsl::Ec));
        setSslConfiguration(configuration);
        connect(this, &QSslServer::startedEncryptionHandshake, this, [this](QSslSocket* socket) {
            ++handshakes_;
            connect(socket, &QSslSocket::disconnected, this, [this, socket] {
                heard_ += socket->readAll();
                ++ended_;
            });
        });
        connect(this, &QSslServer::pendingConnectionAvailable, this, [this] {
            while (QTcpSocket* socket = nextPendingConnection()) {
                connect(socket, &QTcpSocket::readyRead, this, [this, socket] {
                    heard_ += socket->readAll();
                    socket->write("HTTP/1.1 200 OK\r\nContent-Length: 2\r\n\r\n{}");
                });
                connect(socket, &QTcpSocket::disconnected, socket, &QObject::deleteLater);
            }
        });
        listen(QHostAddress::LocalHost, port);
    }
    [[nodiscard]] const QByteArray& heard() const { return heard_; }
    [[nodiscard]] int handshakes_begun() const { return handshakes_; }
    /// Connections that were given up: all that was sent over them is heard.
    [[nodiscard]] int ended() const { return ended_; }

private:
    QByteArray heard_;
    int handshakes_ = 0;
    int ended_ = 0;
};

Outcome ask(NetworkWire& wire, const QString& address) {
    sync::Request request;
    request.path = "/health";
    std::optional<Outcome> outcome;
    wire.send(sync::workroom_address(address), "a-token", request, {}, [&](const Outcome& came) { outcome = came; });
    return QTest::qWaitFor([&] { return outcome.has_value(); }, 20'000) ? *outcome : WireFailure::no_bytes;
}

int status_of(const Outcome& outcome) {
    const auto* answer = std::get_if<sync::Answer>(&outcome);
    return answer == nullptr ? 0 : answer->status;
}

bool not_trusted(const Outcome& outcome) {
    const auto* failure = std::get_if<WireFailure>(&outcome);
    return failure != nullptr && *failure == WireFailure::not_trusted;
}

}  // namespace

void AppPinningTest::onlyThePinnedCertificateIsSpokenWith() {
    const Workroom workroom;
    const auto pin = workroom.pin();
    QCOMPARE(pin.size(), 64);
    NetworkWire wire({5s, 10s, 8'000});
    QVERIFY2(not_trusted(ask(wire, workroom.address())), "made by itself, and nobody said so");
    wire.setPin(pin);
    QCOMPARE(status_of(ask(wire, workroom.address())), 200);
    auto wrong = pin;
    wrong[0] = wrong[0] == '0' ? '1' : '0';
    wire.setPin(wrong);
    QVERIFY2(not_trusted(ask(wire, workroom.address())), "the connection that was trusted isn't used again either");
    wire.setPin(pin);
    QCOMPARE(status_of(ask(wire, workroom.address())), 200);
    wire.setPin({});
    QVERIFY(not_trusted(ask(wire, workroom.address())));
    wire.setPin(pin);
    QVERIFY2(not_trusted(ask(wire, QStringLiteral("http://127.0.0.1:9"))), "without TLS nobody shows a certificate");
}

void AppPinningTest::nothingGoesToAnotherOneThatTheSystemTrusts() {
    const Workroom one;
    const Workroom other;
    const Impostor impostor(other.certificate(), 0);
    QVERIFY(impostor.isListening());
    const auto before = QSslConfiguration::defaultConfiguration();
    auto trusting = before;
    trusting.addCaCertificates(QString::fromStdString(other.certificate()));
    QSslConfiguration::setDefaultConfiguration(trusting);
    NetworkWire wire({5s, 10s, 8'000});
    QCOMPARE(status_of(ask(wire, loopback(impostor.serverPort()))), 200);
    QVERIFY2(impostor.heard().contains("a-token"), "the system trusts it, and no pin is held");
    const auto heard = impostor.heard().size();
    const auto handshakes = impostor.handshakes_begun();
    const auto ended = impostor.ended();
    NetworkWire pinned({5s, 10s, 8'000});
    pinned.setPin(one.pin());
    QVERIFY(not_trusted(ask(pinned, loopback(impostor.serverPort()))));
    QTRY_COMPARE(impostor.handshakes_begun(), handshakes + 1);
    QTRY_COMPARE(impostor.ended(), ended + 1);
    QCOMPARE(impostor.heard().size(), heard);
    QSslConfiguration::setDefaultConfiguration(before);
}

void AppPinningTest::aPairingTextFillsTheLines() {
    Bench bench;
    SendModel* send = bench.notebook().send();
    // The SHA-256 of “abc”: FIPS 180-2, appendix B.1.
    const QString pin = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad";
    const QString text = "truehang:pair?at=https://192.0.2.7:8737&code=7K2M-QX4D&pin=" + pin;
    QVERIFY(send->takePairingText("\n" + text + " "));
    QCOMPARE(send->address(), QString("https://192.0.2.7:8737"));
    QCOMPARE(send->code(), QString("7K2M-QX4D"));
    QVERIFY(send->pinLine().contains("ba78 16bf"));
    QVERIFY(!send->takePairingText("https://192.0.2.7:8737"));
    QVERIFY2(!send->pinLine().isEmpty(), "the same address as it stands in the line");
    QVERIFY(!send->takePairingText("https://192.0.2.8:8737"));
    QVERIFY2(send->pinLine().isEmpty(), "another one isn't the text's");
}

void AppPinningTest::pairsByTheTextAndThenTrustsNoOther() {
    std::optional<Workroom> workroom(std::in_place);
    const Workroom other;
    Bench bench;
    bench.openNewWindow();
    bench.settle();
    SendModel* send = bench.notebook().send();
    send->pair(workroom->text(), QString());
    QTRY_VERIFY_WITH_TIMEOUT(!send->pairing(), patience);
    QCOMPARE(send->pairFault(), QString());
    QVERIFY(send->paired());
    send->sendNow();
    QTRY_COMPARE_WITH_TIMEOUT(send->line(), QString("All at the workroom"), patience);
    bench.reopen();
    send = bench.notebook().send();
    QTRY_VERIFY_WITH_TIMEOUT(send->paired(), patience);
    bench.notebook().newVisit();
    bench.settle();
    send->sendNow();
    QTRY_COMPARE_WITH_TIMEOUT(send->line(), QString("All at the workroom"), patience);

    const auto port = static_cast<quint16>(workroom->receiver.port());
    workroom->receiver.end(SIGTERM);
    const Impostor impostor(other.certificate(), port);
    QVERIFY(impostor.isListening());
    bench.notebook().visit()->site()->leave("title", "Pilot house");
    bench.settle();
    send->sendNow();
    const auto says_so = [&] {
        return send->line().contains("certificate") ||
               send->items()->value(0, "state").toString().contains("certificate");
    };
    QTRY_VERIFY_WITH_TIMEOUT(says_so(), patience);
    QVERIFY(impostor.handshakes_begun() > 0);
    QTRY_COMPARE(impostor.ended(), impostor.handshakes_begun());
    QCOMPARE(impostor.heard(), QByteArray());
    QVERIFY(send->paired());
}

// From the screen of a receiver through a hand's photo of it to the workroom, by the address that it names itself.
void AppPinningTest::pairsByAPhotoOfThePage() {
    const Workroom workroom;
    const QImage screen = workroom.screen();
    QVERIFY(!screen.isNull());
    Bench bench;
    bench.openNewWindow();
    bench.settle();
    const QUrl photo = QUrl::fromLocalFile("/camera/1.jpg");
    bench.files->held.insert(photo, file_of(photographed(screen, {.size = {4000, 3000}, .light = 0.5, .noise = 20})));
    SendModel* send = bench.notebook().send();
    send->takePairingPicture(photo);
    QTRY_VERIFY_WITH_TIMEOUT(!send->looking(), patience);
    QCOMPARE(send->pairFault(), QString());
    QVERIFY2(send->address().endsWith(QStringLiteral(":%1").arg(workroom.receiver.port())),
             qPrintable(send->address()));
    send->pair(send->address(), send->code());
    QTRY_VERIFY_WITH_TIMEOUT(!send->pairing(), patience);
    QCOMPARE(send->pairFault(), QString());
    QVERIFY(send->paired());
    send->sendNow();
    QTRY_COMPARE_WITH_TIMEOUT(send->line(), QString("All at the workroom"), patience);
}

void AppPinningTest::aTextOfAnotherWorkroomDoesntPair() {
    const Workroom one;
    const Workroom other;
    Bench bench;
    SendModel* send = bench.notebook().send();
    auto text = one.text();
    text.replace(one.pin(), other.pin());
    send->pair(text, QString());
    QTRY_VERIFY_WITH_TIMEOUT(!send->pairing(), patience);
    QVERIFY(!send->paired());
    QVERIFY2(send->pairFault().contains("Another certificate"), qPrintable(send->pairFault()));
    send->pair(one.address(), QStringLiteral("0000-0000"));
    QTRY_VERIFY_WITH_TIMEOUT(!send->pairing(), patience);
    QVERIFY2(send->pairFault().contains("certificate"), qPrintable(send->pairFault()));
    send->pair(one.text(), QString());
    QTRY_VERIFY_WITH_TIMEOUT(send->paired(), patience);
}

void AppPinningTest::halfATextIsRefused() {
    Bench bench;
    SendModel* send = bench.notebook().send();
    send->pair(QStringLiteral("truehang:pair?at=https://192.0.2.7:8737&code=7K2"), QStringLiteral("7K2M-QX4D"));
    QVERIFY(!send->pairing());
    QVERIFY(send->pairFault().contains("whole pairing text"));
}

QTEST_GUILESS_MAIN(AppPinningTest)
#include "app_pinning_test.moc"
