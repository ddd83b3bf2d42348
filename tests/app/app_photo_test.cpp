// SPDX-License-Identifier: Apache-2.0
#include "support.h"

#include "photo_import.h"
#include "photo_segments.h"

#include <QBuffer>
#include <QCryptographicHash>
#include <QFile>
#include <QGuiApplication>
#include <QImageReader>
#include <QImageWriter>
#include <QPainter>
#include <QTest>

using namespace truehang;
using namespace truehang::test;

class AppPhotoTest : public QObject {
    Q_OBJECT

private slots:
    void allEightOrientationsComeOutUpright();
    void nothingOfPlaceOrOwnerRemains();
    void pngTextsStayBehindAndWhiteStandsBehind();
    void whatIsNotAPictureIsRefused();
    void aPhonesPictureStaysAsLargeAsItIs();
    void aPhotoOf108MegapixelsComesIn_data();
    void aPhotoOf108MegapixelsComesIn();
    void whatAJpegHoldsIsToldByItsHeader();
    void aPictureIsReadAsLargeAsMemoryAllows();
    void moreThanCanBeOpenedIsRefusedInWords();
    void thumbnailsCommentsAndWhatFollowsStayBehind();
    void whatIsSaidIsKeptOnlyWhereAskedFor();
    void damagedSegmentsAreNoHarm();
    void takenInKeptAndBroughtBack();
    void aPhotoIsOfWhatItIsSaidToBeOf();
    void aRoomsPhotoIsLikeAWindows();
    void aBrokenFileTellsWhy();
};

namespace {

QByteArray whole(const QString& path) {
    QFile file(path);
    return file.open(QIODevice::ReadOnly) ? file.readAll() : QByteArray();
}

QByteArray orientation_picture(int number) {
    return whole(QStringLiteral(TRUEHANG_SOURCE_DIR "/tests/reference/exif/test_%1.jpg").arg(number));
}

QByteArray jpeg_of(const QImage& image) {
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    image.save(&buffer, "jpeg", 95);
    return bytes;
}

/// An APP1 segment (ITU-T T.81, B.2.4.6) right after the start of the image, as cameras write Exif.
QByteArray with_segment(const QByteArray& jpeg, const QByteArray& content) {
    const auto length = static_cast<quint16>(content.size() + 2);
    QByteArray segment("\xff\xe1", 2);
    segment.append(static_cast<char>(length >> 8)).append(static_cast<char>(length & 0xff)).append(content);
    return jpeg.left(2) + segment + jpeg.mid(2);
}

/// Exif 2.32, little-endian TIFF: Artist (0x013B) and a GPS directory (0x8825) with a latitude reference.
QByteArray exif_with_place_and_owner() {
    QByteArray tiff("II*\0\x08\0\0\0", 8);
    tiff += QByteArray("\x02\0", 2);                               // two entries
    tiff += QByteArray("\x3b\x01\x02\0\x10\0\0\0\x26\0\0\0", 12);  // Artist, 16 bytes at 38
    tiff += QByteArray("\x25\x88\x04\0\x01\0\0\0\x36\0\0\0", 12);  // GPS directory at 54
    tiff += QByteArray("\0\0\0\0", 4);                             // no more directories
    tiff += QByteArray("Owner R. Oduya\0\0", 16);
    tiff += QByteArray("\x01\0\x01\0\x02\0\x02\0\0\0N\0\0\0\0\0\0\0", 18);  // GPSLatitudeRef "N"
    return QByteArray("Exif\0\0", 6) + tiff;
}

/// The markers of a JPEG up to its scan: 0xE0 and so on.
QList<int> markers_of(const QByteArray& jpeg) {
    QList<int> markers;
    qsizetype at = 2;
    while (at + 4 <= jpeg.size() && static_cast<quint8>(jpeg.at(at)) == 0xff) {
        const int marker = static_cast<quint8>(jpeg.at(at + 1));
        markers.append(marker);
        if (marker == 0xda) {
            break;
        }
        at += 2 + (static_cast<quint8>(jpeg.at(at + 2)) << 8 | static_cast<quint8>(jpeg.at(at + 3)));
    }
    return markers;
}

int distance(QRgb a, QRgb b) {
    return std::max({std::abs(qRed(a) - qRed(b)), std::abs(qGreen(a) - qGreen(b)), std::abs(qBlue(a) - qBlue(b))});
}

}  // namespace

void AppPhotoTest::allEightOrientationsComeOutUpright() {
    for (int number = 1; number <= 8; ++number) {
        const auto photo = import_photo(orientation_picture(number));
        QVERIFY2(photo.ok(), qPrintable(QString::number(number)));
        QCOMPARE(photo->width, 50);
        QCOMPARE(photo->height, 100);
        const QImage upright = QImage::fromData(photo->jpeg, "jpeg");
        // The set's description: red, green over blue, white when upright. Middles of the quadrants, JPEG's tolerance.
        QVERIFY(distance(upright.pixel(12, 25), qRgb(255, 0, 0)) < 40);
        QVERIFY(distance(upright.pixel(37, 25), qRgb(0, 255, 0)) < 140);  // "green" may be a darker one
        QVERIFY(qGreen(upright.pixel(37, 25)) > qRed(upright.pixel(37, 25)) + 60);
        QVERIFY(qBlue(upright.pixel(12, 75)) > qRed(upright.pixel(12, 75)) + 60);
        QVERIFY(distance(upright.pixel(37, 75), qRgb(255, 255, 255)) < 40);
    }
}

void AppPhotoTest::nothingOfPlaceOrOwnerRemains() {
    QImage image(64, 48, QImage::Format_RGB32);
    image.fill(Qt::darkCyan);
    const QByteArray xmp =
        QByteArray("http://ns.adobe.com/xap/1.0/\0", 29) + "<x:xmpmeta>Owner R. Oduya GPS</x:xmpmeta>";
    const QByteArray file = with_segment(with_segment(jpeg_of(image), xmp), exif_with_place_and_owner());
    QVERIFY(markers_of(file).contains(0xe1));
    QVERIFY(file.contains("Oduya"));
    const auto photo = import_photo(file);
    QVERIFY(photo.ok());
    for (const int marker : markers_of(photo->jpeg)) {
        // Only JFIF (0xE0) of the application segments, and no comment (0xFE).
        QVERIFY2(marker == 0xe0 || marker < 0xe0, qPrintable(QString::number(marker, 16)));
    }
    for (const char* trace : {"Exif", "GPS", "Oduya", "xmp", "ns.adobe", "ICC_PROFILE"}) {
        QVERIFY2(!photo->jpeg.contains(trace), trace);
    }
}

void AppPhotoTest::pngTextsStayBehindAndWhiteStandsBehind() {
    QImage image(40, 40, QImage::Format_ARGB32);
    image.fill(Qt::transparent);
    image.setText("Author", "R. Oduya");
    QByteArray png;
    QBuffer buffer(&png);
    buffer.open(QIODevice::WriteOnly);
    QVERIFY(image.save(&buffer, "png"));
    QVERIFY(png.contains("Oduya"));
    const auto photo = import_photo(png);
    QVERIFY(photo.ok());
    QVERIFY(!photo->jpeg.contains("Oduya"));
    QVERIFY(distance(QImage::fromData(photo->jpeg).pixel(20, 20), qRgb(255, 255, 255)) < 6);
}

void AppPhotoTest::whatIsNotAPictureIsRefused() {
    QCOMPARE(import_photo(QByteArray()).error().code, ErrorCode::unreadable);
    QCOMPARE(import_photo(QByteArray("a shopping list")).error().code, ErrorCode::unreadable);
    QCOMPARE(import_photo(QImage()).error().code, ErrorCode::unreadable);
    QImage image(300, 300, QImage::Format_RGB32);
    image.fill(Qt::red);
    QByteArray png;
    QBuffer buffer(&png);
    buffer.open(QIODevice::WriteOnly);
    image.save(&buffer, "png");
    QCOMPARE(import_photo(png.left(60)).error().code, ErrorCode::unreadable);
    QVERIFY(!import_photo(png.left(60)).error().text.empty());
}

void AppPhotoTest::aPhonesPictureStaysAsLargeAsItIs() {
    QImage image(6000, 3000, QImage::Format_RGB32);
    image.fill(Qt::gray);
    const auto photo = import_photo(jpeg_of(image));
    QVERIFY(photo.ok());
    QCOMPARE(photo->width, 6000);
    QCOMPARE(photo->height, 3000);
    const QImage small = thumbnail_of(photo->jpeg);
    QCOMPARE(std::max(small.width(), small.height()), thumbnail_side);
    // Derived: 120 million pixels are twice the 60 million that are kept, so each side is shorter by √2.
    QCOMPARE(kept_size({12'000, 10'000}), QSize(8485, 7071));
    QCOMPARE(kept_size({8000, 6000}), QSize(8000, 6000));
}

namespace {

/// Colours that run both ways, in few bytes a pixel: 216 MB for 108 million.
QImage large_picture(int width, int height) {
    QImage image(width, height, QImage::Format_RGB16);
    for (int y = 0; y < height; ++y) {
        auto* line = reinterpret_cast<quint16*>(image.scanLine(y));
        for (int x = 0; x < width; ++x) {
            line[x] = static_cast<quint16>((x * 31LL / width) << 11 | (y * 63LL / height) << 5 | 12);
        }
    }
    return image;
}

QByteArray jpeg_in_scans(const QImage& image, bool progressive) {
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    QImageWriter writer(&buffer, "jpeg");
    writer.setProgressiveScanWrite(progressive);
    writer.setQuality(95);
    writer.write(image);
    return bytes;
}

/// The most memory that this process had in its hands, in bytes; counted anew from `forgotten` on (proc(5), VmHWM).
qint64 most_memory() {
    for (const QByteArray& line : whole("/proc/self/status").split('\n')) {
        if (line.startsWith("VmHWM:")) {
            return line.mid(6).trimmed().split(' ').at(0).toLongLong() * 1024;
        }
    }
    return 0;
}

bool forgotten() {
    QFile file("/proc/self/clear_refs");
    return file.open(QIODevice::WriteOnly) && file.write("5") == 1;
}

}  // namespace

void AppPhotoTest::aPhotoOf108MegapixelsComesIn_data() {
    QTest::addColumn<bool>("progressive");
    QTest::addColumn<bool>("turned");
    QTest::newRow("as cameras write it") << false << false;
    QTest::newRow("turned") << false << true;
    QTest::newRow("progressive") << true << false;
}

void AppPhotoTest::aPhotoOf108MegapixelsComesIn() {
    QFETCH(bool, progressive);
    QFETCH(bool, turned);
    QByteArray file = jpeg_in_scans(large_picture(12'000, 9'000), progressive);
    // Exif 2.32, tag 0x0112, orientation 6: the top of the picture lies at the right.
    const QByteArray on_its_side("Exif\0\0MM\0*\0\0\0\x08\0\x01\x01\x12\0\x03\0\0\0\x01\0\x06\0\0\0\0\0\0", 32);
    file = turned ? with_segment(file, on_its_side) : file;
    QVERIFY(forgotten());
    const qint64 before = most_memory();
    QVERIFY(before > 0);
    const auto photo = import_photo(file);
    const qint64 taken = most_memory() - before;
    QVERIFY2(photo.ok(), photo.ok() ? "" : photo.error().text.c_str());
    // Derived: 60 of 108 million pixels, 4 : 3 as it was; √(60 000 000 · 4 / 3) = 8944.27, √(60 000 000 · 3 / 4) =
    // 6708.2.
    QCOMPARE(QSize(photo->width, photo->height), turned ? QSize(6708, 8944) : QSize(8944, 6708));
    const QImage small = thumbnail_of(photo->jpeg);
    QCOMPARE(std::max(small.width(), small.height()), thumbnail_side);
    // Red runs to the right and green downwards; turned, the right is at the bottom and the bottom at the left.
    const auto [right, below] =
        turned ? std::pair(QPoint(120, 310), QPoint(10, 160)) : std::pair(QPoint(310, 120), QPoint(160, 230));
    QVERIFY(qRed(small.pixel(right)) > 220);
    QVERIFY(qGreen(small.pixel(below)) > 220);
    qInfo("%lld MB taken for a file of %lld MB", taken / 1'000'000, qint64{file.size()} / 1'000'000);
    QVERIFY2(taken <= picture_memory_limit, qPrintable(QString::number(taken)));
}

void AppPhotoTest::whatAJpegHoldsIsToldByItsHeader() {
    // ITU-T T.81, A.1.1 and G.1.1: with colours at half the size each way, one and a half samples a pixel; each
    // coefficient is two bytes (libjpeg's JCOEF).
    QCOMPARE(jpeg_held(jpeg_in_scans(large_picture(320, 160), true)), qint64{2} * 320 * 160 * 3 / 2);
    QCOMPARE(jpeg_held(jpeg_in_scans(large_picture(320, 160), false)), qint64{0});
    QImage grey(320, 160, QImage::Format_Grayscale8);
    grey.fill(77);
    QCOMPARE(jpeg_held(jpeg_in_scans(grey, true)), qint64{2} * 320 * 160);
    const QByteArray whole = jpeg_in_scans(large_picture(64, 64), true);
    for (qsizetype size = 0; size < whole.size(); ++size) {
        QVERIFY(jpeg_held(whole.left(size)) <= 2 * 64 * 64 * 3 / 2);
    }
}

void AppPhotoTest::aPictureIsReadAsLargeAsMemoryAllows() {
    const PictureToRead camera{{16'320, 12'240}, QImage::Format_RGB32, true, 0};
    QCOMPARE(size_to_read(camera, photo_pixel_limit), kept_size(camera.size));
    // Progressive with full colours: 6 bytes a pixel are held, 648 of the limit's 838.8 MB for 108 million. At 3/8,
    // 15.2 million pixels twice at 4 bytes are 121.5 MB, at 4/8 they would be 216 MB.
    const PictureToRead progressive{{12'000, 9'000}, QImage::Format_RGB32, true, 648'000'000};
    QCOMPARE(size_to_read(progressive, photo_pixel_limit), QSize(4500, 3375));
    // The largest, read at 3/8: 126.6 million pixels and the 60 million that are kept are 746 MB.
    const PictureToRead wall{{30'000, 30'000}, QImage::Format_RGB32, true, 0};
    QCOMPARE(size_to_read(wall, photo_pixel_limit), QSize(7745, 7745));
    const PictureToRead held{{30'000, 30'000}, QImage::Format_RGB32, true, 1'800'000'000};
    QVERIFY(!size_to_read(held, photo_pixel_limit));
    // What is no JPEG is read whole: 108 million pixels of 4 bytes and the 60 million that are kept are 672 MB.
    const PictureToRead plain{{12'000, 9'000}, QImage::Format_RGB32, false, 0};
    QCOMPARE(size_to_read(plain, photo_pixel_limit), QSize(8944, 6708));
    const PictureToRead clear{{12'000, 9'000}, QImage::Format_ARGB32, false, 0};
    QVERIFY(!size_to_read(clear, photo_pixel_limit));
    QVERIFY(!size_to_read({{30'001, 10}, QImage::Format_RGB32, true, 0}, photo_pixel_limit));
}

void AppPhotoTest::moreThanCanBeOpenedIsRefusedInWords() {
    QImage image(15'000, 14'000, QImage::Format_Mono);
    image.fill(1);
    QByteArray png;
    QBuffer buffer(&png);
    buffer.open(QIODevice::WriteOnly);
    QVERIFY(image.save(&buffer, "png"));
    const auto photo = import_photo(png);
    QVERIFY(!photo.ok());
    QCOMPARE(photo.error().code, ErrorCode::out_of_range);
    QVERIFY(QString::fromStdString(photo.error().text).contains("Save a smaller copy"));
}

namespace {

/// Any marker segment (ITU-T T.81, B.2.4.6) right after the start of the image.
QByteArray with_marker(const QByteArray& jpeg, char marker, const QByteArray& content) {
    const auto length = static_cast<quint16>(content.size() + 2);
    QByteArray segment("\xff", 1);
    segment.append(marker).append(static_cast<char>(length >> 8)).append(static_cast<char>(length & 0xff));
    return jpeg.left(2) + segment + content + jpeg.mid(2);
}

/// IPTC-IIM 4.2 in a Photoshop block (APP13): by-line, data set 2:80.
QByteArray iptc_with_owner() {
    const QByteArray record = QByteArray("\x1c\x02\x50\x00\x08", 5) + "R. Oduya";
    return QByteArray("Photoshop 3.0\0", 14) + QByteArray("8BIM\x04\x04\0\0\0\0\0\x0d", 12) + record +
           QByteArray(1, '\0');
}

/// Exif 2.32, big-endian: orientation 6, and a second directory with a thumbnail (0x0201, 0x0202).
QByteArray exif_with_thumbnail(const QByteArray& thumbnail) {
    QByteArray tiff("MM\0*\0\0\0\x08", 8);
    tiff += QByteArray("\0\x01", 2);
    tiff += QByteArray("\x01\x12\0\x03\0\0\0\x01\0\x06\0\0", 12);
    tiff += QByteArray("\0\0\0\x1a", 4);  // the next directory at 26
    tiff += QByteArray("\0\x02", 2);
    tiff += QByteArray("\x02\x01\0\x04\0\0\0\x01\0\0\0\x38", 12);  // at 56
    tiff += QByteArray("\x02\x02\0\x04\0\0\0\x01\0\0", 10);
    tiff += static_cast<char>(thumbnail.size() >> 8);
    tiff += static_cast<char>(thumbnail.size() & 0xff);
    tiff += QByteArray("\0\0\0\0", 4);
    return QByteArray("Exif\0\0", 6) + tiff + thumbnail;
}

QByteArray a_picture(int width = 64, int height = 48) {
    QImage image(width, height, QImage::Format_RGB32);
    image.fill(Qt::darkCyan);
    return jpeg_of(image);
}

QByteArray says_much() {
    const QByteArray xmp = QByteArray("http://ns.adobe.com/xap/1.0/\0", 29) +
                           "<x:xmpmeta tiff:Orientation=\"6\" exif:GPSLatitude=\"56,3N\">Owner R. Oduya</x:xmpmeta>";
    QByteArray file = with_marker(a_picture(), '\xfe', "taken by R. Oduya");
    file = with_marker(file, '\xed', iptc_with_owner());
    file = with_segment(file, xmp);
    return with_segment(file, exif_with_thumbnail(a_picture(16, 12)));
}

}  // namespace

void AppPhotoTest::thumbnailsCommentsAndWhatFollowsStayBehind() {
    // A second picture after the end of the first, as multi-picture files (CIPA DC-007) have it.
    const QByteArray file = says_much() + with_segment(a_picture(32, 24), exif_with_place_and_owner());
    QCOMPARE(QImage::fromData(file).size(), QSize(64, 48));
    const auto photo = import_photo(file);
    QVERIFY(photo.ok());
    QCOMPARE(QSize(photo->width, photo->height), QSize(48, 64));  // turned upright: orientation 6
    for (const int marker : markers_of(photo->jpeg)) {
        QVERIFY2(marker == 0xe0 || marker < 0xe0, qPrintable(QString::number(marker, 16)));
    }
    for (const char* trace : {"Exif", "GPS", "Oduya", "8BIM", "ns.adobe", "taken by"}) {
        QVERIFY2(file.contains(trace), trace);  // the sample has it
        QVERIFY2(!photo->jpeg.contains(trace), trace);
    }
    // One start and one end of an image: no thumbnail within, nothing behind.
    QCOMPARE(photo->jpeg.count(QByteArray("\xff\xd8\xff", 3)), 1);
    QVERIFY(photo->jpeg.endsWith(QByteArray("\xff\xd9", 2)));
}

void AppPhotoTest::whatIsSaidIsKeptOnlyWhereAskedFor() {
    const QByteArray file = says_much();
    const auto photo = import_photo(file, SaidBeside::kept);
    QVERIFY(photo.ok());
    for (const char* trace : {"Exif", "GPSLatitude", "Oduya", "8BIM"}) {
        QVERIFY2(photo->jpeg.contains(trace), trace);
    }
    QVERIFY(!photo->jpeg.contains("tiff:Orientation=\"6\""));
    // Its pixels are upright already, and Qt's own reading of the tag turns them no further.
    QByteArray jpeg = photo->jpeg;
    QBuffer buffer(&jpeg);
    QImageReader reader(&buffer);
    reader.setAutoTransform(true);
    QCOMPARE(reader.transformation(), QImageIOHandler::Transformations(QImageIOHandler::TransformationNone));
    QCOMPARE(reader.read().size(), QSize(48, 64));

    Bench bench;
    bench.openNewWindow();
    QVERIFY(!bench.notebook().settings()->keepsPhotoOrigin());
    PhotosModel* photos = bench.notebook().photos();
    bench.files->held.insert(QUrl::fromLocalFile("/a.jpg"), file);
    photos->takeIn(QUrl::fromLocalFile("/a.jpg"));
    QTRY_COMPARE_WITH_TIMEOUT(photos->photos()->count(), 1, patience);
    bench.notebook().settings()->setKeepsPhotoOrigin(true);
    photos->takeIn(QUrl::fromLocalFile("/a.jpg"));
    QTRY_COMPARE_WITH_TIMEOUT(photos->photos()->count(), 2, patience);
    for (int row : {0, 1}) {
        QTRY_VERIFY_WITH_TIMEOUT(!photos->photos()->value(row, "picture").toUrl().isEmpty(), patience);
        const QByteArray kept = whole(photos->photos()->value(row, "picture").toUrl().toLocalFile());
        QCOMPARE(kept.contains("Oduya"), row == 1);
    }
}

void AppPhotoTest::damagedSegmentsAreNoHarm() {
    const QByteArray file = says_much();
    for (int size = 0; size < 700; ++size) {
        QVERIFY(said_beside_pixels(file.left(size)).size() <= size);
    }
    QCOMPARE(said_beside_pixels("no jpeg"), QByteArray());
    // A directory that points far beyond the segment.
    QByteArray wild = with_segment(a_picture(), QByteArray("Exif\0\0MM\0*\xff\xff\xff\xf0", 14));
    QVERIFY(said_beside_pixels(wild).contains("Exif"));
}

void AppPhotoTest::takenInKeptAndBroughtBack() {
    Bench bench;
    const QString window = bench.openNewWindow();
    PhotosModel* photos = bench.notebook().photos();
    const QUrl file = QUrl::fromLocalFile("/camera/1.jpg");
    bench.files->held.insert(file, orientation_picture(6));
    photos->takeIn(file);
    QCOMPARE(photos->coming(), 1);
    QTRY_COMPARE_WITH_TIMEOUT(photos->photos()->count(), 1, patience);
    QCOMPARE(photos->coming(), 0);
    const QString sha256 = photos->photos()->value(0, "sha256").toString();
    QTRY_VERIFY_WITH_TIMEOUT(!photos->photos()->value(0, "thumbnail").toUrl().isEmpty(), patience);
    const QByteArray stored = whole(photos->photos()->value(0, "picture").toUrl().toLocalFile());
    QCOMPARE(QString::fromLatin1(QCryptographicHash::hash(stored, QCryptographicHash::Sha256).toHex()), sha256);
    QVERIFY(!stored.contains("Exif"));
    QVERIFY(QFile::exists(photos->photos()->value(0, "thumbnail").toUrl().toLocalFile()));

    photos->typingCaption(sha256, "valve on the ri");
    bench.reopen();
    photos = bench.notebook().photos();
    QTRY_COMPARE_WITH_TIMEOUT(photos->photos()->count(), 1, patience);
    QCOMPARE(photos->photos()->value(0, "caption").toString(), QString("valve on the ri"));
    photos->setCaption(sha256, "valve on the right");
    bench.settle();
    QCOMPARE(bench.notebook().open()->window(window)->photos.at(0).caption, std::string("valve on the right"));
    QCOMPARE(bench.notebook().open()->window(window)->photos.at(0).bytes, static_cast<long long>(stored.size()));
    photos->remove(sha256);
    bench.settle();
    QCOMPARE(photos->photos()->count(), 0);
    bench.notebook().visit()->undo();
    bench.settle();
    QCOMPARE(photos->photos()->count(), 1);
}

void AppPhotoTest::aPhotoIsOfWhatItIsSaidToBeOf() {
    Bench bench;
    const QString window = bench.openNewWindow();
    const QString radiator = bench.notebook().obstructions()->add("radiator");
    bench.settle();
    PhotosModel* photos = bench.notebook().photos();
    const auto room = [&]() -> const Room& { return bench.notebook().open()->survey().rooms.at(0); };
    QCOMPARE(column(photos->subjects(), "says"), QStringList({"the window", "Radiator", "the room"}));

    photos->comesOf(radiator);
    const QUrl file = QUrl::fromLocalFile("/camera/1.jpg");
    bench.files->held.insert(file, orientation_picture(6));
    photos->takeIn(file);
    QTRY_COMPARE_WITH_TIMEOUT(photos->photos()->count(), 1, patience);
    QCOMPARE(photos->photos()->value(0, "ofSays").toString(), QString("Radiator"));
    QCOMPARE(bench.notebook().open()->window(window)->photos.at(0).obstruction, radiator.toStdString());

    const QString sha256 = photos->photos()->value(0, "sha256").toString();
    photos->give(sha256, "room");
    bench.reopen();
    photos = bench.notebook().photos();
    QTRY_COMPARE_WITH_TIMEOUT(photos->photos()->count(), 1, patience);
    QCOMPARE(photos->photos()->value(0, "ofSays").toString(), QString("the room"));
    QCOMPARE(room().photos.size(), std::size_t{1});
    QVERIFY(room().photos.at(0).obstruction.empty());
}

void AppPhotoTest::aRoomsPhotoIsLikeAWindows() {
    Bench bench;
    const QString window = bench.openNewWindow();
    PhotosModel* photos = bench.notebook().photos();
    const auto room = [&]() -> const Room& { return bench.notebook().open()->survey().rooms.at(0); };
    bench.files->held.insert(QUrl::fromLocalFile("/camera/1.jpg"), orientation_picture(6));
    photos->setComesAs("room");
    photos->takeIn(QUrl::fromLocalFile("/camera/1.jpg"));
    QTRY_COMPARE_WITH_TIMEOUT(photos->photos()->count(), 1, patience);
    const QString sha256 = photos->photos()->value(0, "sha256").toString();
    photos->setCaption(sha256, "from the door");
    photos->marks()->openPhoto(sha256);
    photos->marks()->draw({0.1, 0.1}, {0.6, 0.6});
    bench.settle();
    QCOMPARE(room().photos.at(0).caption, std::string("from the door"));
    QCOMPARE(room().photos.at(0).marks.size(), std::size_t{1});
    photos->remove(sha256);
    bench.settle();
    QVERIFY(room().photos.empty());
    bench.notebook().visit()->undo();
    bench.settle();
    QCOMPARE(photos->photos()->count(), 1);
    photos->give(sha256, "window");
    bench.settle();
    QCOMPARE(bench.notebook().open()->window(window)->photos.size(), std::size_t{1});
}

void AppPhotoTest::aBrokenFileTellsWhy() {
    Bench bench;
    bench.openNewWindow();
    PhotosModel* photos = bench.notebook().photos();
    photos->takeIn(QUrl::fromLocalFile("/not/there.jpg"));
    QVERIFY(!photos->fault().isEmpty());
    bench.files->held.insert(QUrl::fromLocalFile("/a.jpg"), "not a picture");
    photos->takeIn(QUrl::fromLocalFile("/a.jpg"));
    QVERIFY(photos->fault().isEmpty());
    QTRY_VERIFY_WITH_TIMEOUT(!photos->fault().isEmpty(), patience);
    QCOMPARE(photos->coming(), 0);
    bench.clipboard->held = QImage(30, 20, QImage::Format_RGB32);
    bench.clipboard->held.fill(Qt::blue);
    photos->paste();
    QTRY_COMPARE_WITH_TIMEOUT(photos->photos()->count(), 1, patience);
    photos->paste();
    QTRY_VERIFY_WITH_TIMEOUT(!photos->fault().isEmpty(), patience);  // the same picture is here already
    QCOMPARE(photos->photos()->count(), 1);
}

QTEST_MAIN(AppPhotoTest)
#include "app_photo_test.moc"
