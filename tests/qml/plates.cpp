// SPDX-License-Identifier: Apache-2.0
#include "plates.h"

#include <QDir>
#include <QFile>
#include <QGuiApplication>
#include <QPainter>
#include <QQmlComponent>
#include <QStyleHints>
#include <QTest>
#include <array>
#include <cstdlib>

namespace truehang::test {

namespace {

constexpr int page_width = 360;

bool is_plate(QQuickItem* item) { return item->property("control").isValid(); }
bool is_specimen(QQuickItem* item) { return item->property("act").isValid() && item->property("what").isValid(); }

void gather(QQuickItem* in, bool (*wanted)(QQuickItem*), QList<QQuickItem*>& into) {
    if (wanted(in)) {
        into << in;
        return;
    }
    for (QQuickItem* child : in->childItems()) {
        gather(child, wanted, into);
    }
}

// In place of a photo: flat, so that it stays small as a picture of a picture.
QUrl draw_picture(const QString& folder) {
    QImage picture(240, 180, QImage::Format_RGB32);
    picture.fill(QColor(196, 190, 176));
    QPainter painter(&picture);
    painter.fillRect(60, 30, 120, 100, QColor(120, 140, 150));
    painter.fillRect(110, 30, 6, 100, QColor(240, 240, 236));
    painter.end();
    const QString file = folder + QStringLiteral("/picture.png");
    picture.save(file);
    return QUrl::fromLocalFile(file);
}

bool same(QRgb one, QRgb other) {
    return std::abs(qRed(one) - qRed(other)) <= golden_tolerance &&
           std::abs(qGreen(one) - qGreen(other)) <= golden_tolerance &&
           std::abs(qBlue(one) - qBlue(other)) <= golden_tolerance;
}

}  // namespace

std::optional<Difference> difference(const QImage& one, const QImage& other) {
    if (one.size() != other.size()) {
        return Difference{{}, 0};
    }
    Difference found{{}, 0};
    for (int y = 0; y < one.height(); ++y) {
        for (int x = 0; x < one.width(); ++x) {
            if (!same(one.pixel(x, y), other.pixel(x, y))) {
                found.box |= QRect(x, y, 1, 1);
                ++found.pixels;
            }
        }
    }
    return found.pixels > 0 ? std::optional(found) : std::nullopt;
}

void pin_what_pictures_hang_on() {
    qputenv("FONTCONFIG_FILE", TRUEHANG_SOURCE_DIR "/tests/qml/golden/fonts.conf");
    qputenv("QT_QPA_PLATFORM", "offscreen");
    qputenv("QT_QUICK_BACKEND", "software");
    qputenv("QT_FONT_DPI", "96");
    qputenv("LC_ALL", "C.UTF-8");
    qputenv("TZ", "UTC");
    for (const char* name : {"QT_SCALE_FACTOR", "QT_SCREEN_SCALE_FACTORS", "QT_STYLE_OVERRIDE", "LANGUAGE"}) {
        qunsetenv(name);
    }
}

QImage stacked(const std::vector<StatePicture>& pieces) {
    int height = 0;
    for (const StatePicture& piece : pieces) {
        height += piece.picture.height();
    }
    QImage all(page_width, height, QImage::Format_RGB32);
    all.fill(Qt::white);
    QPainter painter(&all);
    int y = 0;
    for (const StatePicture& piece : pieces) {
        painter.drawImage(0, y, piece.picture);
        y += piece.picture.height();
    }
    return all;
}

Plates::Plates()
    : scene_({page_width, 760}),
      form_({[](const QString&, const QString&) {},
             [](const QString& field, const QString& text) {
                 return field == "left" && text == "12o" ? QStringLiteral("12o can’t be read as a length.") : QString();
             },
             [](const QString&, const QString&) { return QString(); }}) {
    QGuiApplication::styleHints()->setCursorFlashTime(0);
    scene_.openWindow("Pilot house", {});
    scene_.openWindow("Pilot house", scene_.notebook().visit()->windows()->value(0, "title").toString());
    ObstructionsModel& obstructions = *scene_.notebook().obstructions();
    obstructions.edit(obstructions.obstructions()->value(0, "obstructionId").toString());
    WalkModel& walk = *scene_.notebook().walk();
    walk.jumpTo(walk.stations()->value(2, "station").toString());
    fillForm();
    for (QQuickItem* item : scene_.window().contentItem()->childItems()) {
        item->setVisible(false);
    }
    QQmlComponent makes(&scene_.engine());
    makes.setData("import Truehang.Gallery; Gallery { anchors.fill: parent }", {});
    made_.reset(makes.createWithInitialProperties({{"notebook", QVariant::fromValue(&scene_.notebook())},
                                                   {"form", QVariant::fromValue(&form_)},
                                                   {"picture", draw_picture(scene_.bench().folder())},
                                                   {"parent", QVariant::fromValue(scene_.window().contentItem())}}));
    gallery_ = qobject_cast<QQuickItem*>(made_.get());
    if (gallery_ == nullptr) {
        qFatal("%s", qPrintable(makes.errorString()));
    }
    gallery_->setParentItem(scene_.window().contentItem());
    gather(gallery_, is_plate, plates_);
    nowhere_ = new QQuickItem(scene_.window().contentItem());
    scene_.settle();
}

void Plates::fillForm() {
    const auto choice = [](const char* word, const char* says) {
        return QVariantMap{{"word", QString(word)}, {"says", QString(says)}};
    };
    const QVariantList kinds{choice("electric", "electric heater"), choice("water", "radiator")};
    form_.setFields(
        {{"name", "Name", "text", "", "", "", {}, "as the client calls it", {}},
         {"left", "From the left edge", "length", "120", "mm", "", {}, "", {}},
         {"kind", "Kind", "choice", "electric heater", "", "electric", kinds, "", {"Keep cloth clear of it."}}});
    form_.leave("left", "12o");
}

QStringList Plates::controls() const {
    QStringList all;
    for (const QQuickItem* plate : plates_) {
        all << plate->property("control").toString();
    }
    return all;
}

bool Plates::pictured(const QString& control, const GalleryLook& look) {
    static const QStringList handed{"Keypad", "NextAction", "Screen"};
    return QLatin1String(look.hand) != QLatin1String("left") || handed.contains(control);
}

void Plates::dress(const GalleryLook& look) {
    Settings& settings = *scene_.notebook().settings();
    settings.setLook(QLatin1String(look.look));
    settings.setTextScale(look.letters);
    settings.setHand(QLatin1String(look.hand));
    gallery_->setProperty("fromRight", look.from_right);
    scene_.settle();
}

void Plates::show(const QString& control) {
    for (QQuickItem* plate : plates_) {
        plate->setVisible(plate->property("control").toString() == control);
        shown_ = plate->isVisible() ? plate : shown_;
    }
    scene_.settle();
    scene_.window().resize(page_width, static_cast<int>(std::ceil(shown_->mapToScene({0, shown_->height()}).y())));
    scene_.settle();
    waitForPictures();
}

void Plates::showAll(QSize size) {
    for (QQuickItem* plate : plates_) {
        plate->setVisible(true);
    }
    scene_.window().resize(size);
    scene_.settle();
}

void Plates::waitForPictures() {
    static constexpr int loading = 2;  // QQuickImageBase::Loading
    const auto loaded = [this] {
        const QList<QQuickItem*> all = scene_.items();
        return std::none_of(all.begin(), all.end(), [](const QQuickItem* item) {
            return item->inherits("QQuickImage") && item->property("status").toInt() == loading;
        });
    };
    if (!QTest::qWaitFor(loaded, patience)) {
        qFatal("a picture doesn't come");
    }
    scene_.settle();
}

QList<QQuickItem*> Plates::specimens() const {
    QList<QQuickItem*> found;
    gather(shown_, is_specimen, found);
    return found;
}

QList<std::pair<QString, QString>> Plates::states() const {
    QList<std::pair<QString, QString>> all;
    for (const QQuickItem* specimen : specimens()) {
        all << std::pair(specimen->property("what").toString(), specimen->property("act").toString());
    }
    return all;
}

QQuickItem* Plates::firstTouched(QQuickItem* in) {
    if ((in->inherits("truehang::PressItem") || in->inherits("QQuickTextInput")) && in->isVisible()) {
        return in;
    }
    for (QQuickItem* child : in->childItems()) {
        if (QQuickItem* found = firstTouched(child)) {
            return found;
        }
    }
    return nullptr;
}

QRect Plates::placeOf(QQuickItem* specimen) {
    const auto* place = specimen->property("place").value<QQuickItem*>();
    const QPointF top = place->mapToScene({0, 0});
    return {0, qRound(top.y()), page_width, qRound(top.y() + place->height()) - qRound(top.y())};
}

QImage Plates::under(QQuickItem* specimen, const QString& act) {
    QQuickItem* touched = firstTouched(specimen);
    if (touched == nullptr) {
        qFatal("nothing to touch in %s", qPrintable(specimen->property("what").toString()));
    }
    QQuickWindow& window = scene_.window();
    const QPoint at = scene_.seen(touched).center().toPoint();
    if (act == "press") {
        QTest::mousePress(&window, Qt::LeftButton, {}, at);
    } else {
        touched->forceActiveFocus(Qt::TabFocusReason);
    }
    scene_.settle();
    const QImage whole = window.grabWindow();
    if (act == "press") {
        QTest::mouseMove(&window, {1, 1});
        QTest::mouseRelease(&window, Qt::LeftButton, {}, {1, 1});
    }
    nowhere_->forceActiveFocus();
    scene_.settle();
    return whole;
}

std::vector<StatePicture> Plates::taken() {
    nowhere_->forceActiveFocus();
    scene_.settle();
    const QImage still = scene_.window().grabWindow();
    std::vector<StatePicture> pieces;
    for (QQuickItem* specimen : specimens()) {
        if (!QRect({0, 0}, still.size()).contains(placeOf(specimen))) {
            qFatal("%s isn't seen whole", qPrintable(specimen->property("what").toString()));
        }
        const QString act = specimen->property("act").toString();
        const QImage whole = act.isEmpty() ? still : under(specimen, act);
        pieces.push_back({specimen->property("what").toString(),
                          whole.copy(placeOf(specimen)).convertToFormat(QImage::Format_RGB32)});
    }
    return pieces;
}

}  // namespace truehang::test
