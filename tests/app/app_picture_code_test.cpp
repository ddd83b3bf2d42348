// SPDX-License-Identifier: Apache-2.0
#include "code_pictures.h"
#include "photo_import.h"
#include "picture_code.h"
#include "send_model.h"
#include "support.h"

#include <QPainter>
#include <QRandomGenerator>
#include <QSignalSpy>
#include <QTest>

using namespace truehang;
using namespace truehang::test;

namespace {

QImage grain(QSize size) {
    QImage picture(size, QImage::Format_RGB32);
    QRandomGenerator chance(3);
    chance.fillRange(reinterpret_cast<quint32*>(picture.bits()), picture.sizeInBytes() / 4);
    return picture;
}

QImage plain(QSize size) {
    QImage picture(size, QImage::Format_RGB32);
    picture.fill(Qt::gray);
    return picture;
}

/// Two flat things beside each other.
QImage beside(const QImage& left, const QImage& right) {
    QImage both(left.width() + right.width(), std::max(left.height(), right.height()), QImage::Format_RGB32);
    both.fill(Qt::white);
    QPainter painter(&both);
    painter.drawImage(0, 0, left);
    painter.drawImage(left.width(), 0, right);
    return both;
}

/// Puts the file where the phone finds it, and waits until it is looked through: what is said then.
QString look_through(Bench& bench, const QByteArray& file) {
    SendModel* send = bench.notebook().send();
    bench.files->held.insert(QUrl::fromLocalFile("/code"), file);
    send->takePairingPicture(QUrl::fromLocalFile("/code"));
    [&] { QTRY_VERIFY_WITH_TIMEOUT(!send->looking(), patience); }();
    return send->pairFault();
}

}  // namespace

/// The code of a workroom's page, read from pictures of it.
class AppPictureCodeTest : public QObject {
    Q_OBJECT

private slots:
    static void drawnPicturesAreRead() {
        for (const int module : {1, 2, 3, 8, 20}) {
            QCOMPARE(codes_in(picture_of(pairing_text, module)), QStringList(pairing_text));
        }
        for (const int turned : {30, 90, 180, 270}) {
            const QImage picture = picture_of(pairing_text).transformed(QTransform().rotate(turned));
            QCOMPARE(codes_in(picture), QStringList(pairing_text));
        }
        QImage bare = picture_of(pairing_text).convertToFormat(QImage::Format_ARGB32);
        bare.setAlphaChannel(bare.createMaskFromColor(qRgb(0, 0, 0)));
        QCOMPARE(qAlpha(bare.pixel(0, 0)), 0);
        QCOMPARE(codes_in(file_of(bare, "png")).value(), QStringList(pairing_text));
    }

    static void photosOfItAreRead_data() {
        QTest::addColumn<Shot>("shot");
        QTest::newRow("in good light") << Shot{};
        for (const int turned : {90, 180, 270}) {
            QTest::newRow(qPrintable(QStringLiteral("turned by %1").arg(turned))) << Shot{.turned = turned};
        }
        QTest::newRow("in a dark room") << Shot{.light = 0.25, .noise = 15};
        QTest::newRow("grainy") << Shot{.share = 0.7, .noise = 40};
        QTest::newRow("not quite sharp") << Shot{.blur = 3};
        QTest::newRow("of a phone, dark, grainy, not sharp")
            << Shot{.size = {4000, 3000}, .share = 0.3, .light = 0.25, .noise = 40, .blur = 3};
        QTest::newRow("of a phone, from far") << Shot{.size = {4000, 3000}, .share = 0.15, .noise = 15};
        QTest::newRow("of 48 million pixels") << Shot{.size = {8000, 6000}, .share = 0.2, .light = 0.5, .noise = 30};
    }
    static void photosOfItAreRead() {
        QFETCH(Shot, shot);
        const auto codes = codes_in(file_of(photographed(picture_of(pairing_text), shot)));
        QVERIFY2(codes.ok(), qPrintable(QString::fromStdString(codes.ok() ? "" : codes.error().text)));
        QCOMPARE(*codes, QStringList(pairing_text));
    }

    static void whereNoneIsNoneIsRead() {
        QCOMPARE(codes_in(QImage()), QStringList());
        for (const QSize size : {QSize(1, 1), QSize(3, 200), QSize(640, 480)}) {
            QCOMPARE(codes_in(plain(size)), QStringList());
            QCOMPARE(codes_in(grain(size)), QStringList());
        }
        const QImage whole = picture_of(pairing_text);
        QCOMPARE(codes_in(whole.copy(0, 0, whole.width() / 2, whole.height())), QStringList());
    }

    // A made-up picture can't end the program either.
    static void aCodeThatCountsWronglyIsNone() { QCOMPARE(codes_in(picture_of_a_broken_count()), QStringList()); }

    static void everyCodeInAPictureIsRead() {
        const QStringList codes = codes_in(beside(picture_of("https://example.org/sheet"), picture_of(pairing_text)));
        QCOMPARE(codes.size(), 2);
        QVERIFY(codes.contains(pairing_text) && codes.contains("https://example.org/sheet"));
    }

    static void whatIsNoPictureIsRefused() {
        const QByteArray jpeg = file_of(picture_of(pairing_text));
        QCOMPARE(codes_in(QByteArray("not a picture")).error().code, ErrorCode::unreadable);
        QCOMPARE(codes_in(QByteArray()).error().code, ErrorCode::unreadable);
        QCOMPARE(codes_in(file_of(plain({30'001, 2}), "png")).error().code, ErrorCode::out_of_range);
        QCOMPARE(codes_in(QByteArray(photo_file_limit + 1, ' ')).error().code, ErrorCode::out_of_range);
        for (int tenth = 0; tenth < 10; ++tenth) {
            const auto codes = codes_in(
                jpeg.first(jpeg.size() * tenth / 10));  // what is there may be enough, but nothing else is read
            QVERIFY(!codes.ok() || codes->isEmpty() || *codes == QStringList(pairing_text));
        }
    }

    static void aPictureFillsWhatATextWould() {
        Bench bench;
        SendModel* send = bench.notebook().send();
        const QSignalSpy took(send, &SendModel::tookPairingText);
        const QImage page = beside(picture_of("https://192.0.2.7:8737/sheet/Q9W1-DFWF-077Y"), picture_of(pairing_text));
        bench.files->held.insert(QUrl::fromLocalFile("/code"), file_of(photographed(page, {.share = 0.7})));
        send->takePairingPicture(QUrl::fromLocalFile("/code"));
        QVERIFY2(send->looking(), "not on the interface's thread");
        QTRY_COMPARE_WITH_TIMEOUT(took.size(), 1, patience);
        QVERIFY(!send->looking());
        QCOMPARE(send->pairFault(), QString());
        QCOMPARE(send->address(), QString("https://192.0.2.7:8737"));
        QCOMPARE(send->code(), QString("7K2M-QX4D"));
        QVERIFY(send->pinLine().contains("ba78 16bf"));
        QVERIFY2(!send->paired() && !send->pairing(), "who is meant is looked at first");
    }

    static void whatCantBeReadSaysWhatToDo() {
        Bench bench;
        SendModel* send = bench.notebook().send();
        QVERIFY(send->takePairingText(pairing_text));
        const QSignalSpy took(send, &SendModel::tookPairingText);
        QVERIFY(look_through(bench, "not a picture").contains("Choose a JPEG or PNG"));
        QVERIFY(look_through(bench, file_of(plain({640, 480}))).contains("Take it again"));
        QVERIFY(look_through(bench, file_of(picture_of("https://example.org"))).contains("isn’t one for pairing"));
        QVERIFY(look_through(bench, file_of(picture_of("truehang:pair?at=x"))).contains("isn’t one for pairing"));
        send->takePairingPicture(QUrl::fromLocalFile("/not/there"));
        QCOMPARE(send->pairFault(), QString("There is no such file."));
        QVERIFY(!send->looking());
        QCOMPARE(took.size(), 0);
        QCOMPARE(send->code(), QString("7K2M-QX4D"));  // what was told before is still there
        QCOMPARE(look_through(bench, file_of(picture_of(pairing_text))), QString());
    }
};

QTEST_MAIN(AppPictureCodeTest)
#include "app_picture_code_test.moc"
