// SPDX-License-Identifier: Apache-2.0
#include "scene.h"

#include "demo.h"
#include "start.h"

#include <QAccessible>
#include <QDir>
#include <QMutex>
#include <QQmlComponent>
#include <QTest>
#include <cmath>

namespace truehang::test {

namespace {

QMutex heard_guard;
QStringList heard;

void hear(QtMsgType type, const QMessageLogContext&, const QString& message) {
    // The platform's own remark on rounding, which no project's file causes.
    if (type == QtDebugMsg || type == QtInfoMsg || message.contains(QLatin1String("This plugin does not support"))) {
        return;
    }
    const QMutexLocker locked(&heard_guard);
    heard << message;
    std::fprintf(stderr, "%s\n", qPrintable(message));
}

void collect(QQuickItem* item, QList<QQuickItem*>& into) {
    if (!item->isVisible() || item->opacity() <= 0) {
        return;
    }
    into << item;
    for (QQuickItem* child : item->childItems()) {
        collect(child, into);
    }
}

bool is_undoing(const QString& name) {
    return name == "undo" || name == "redo" || name.startsWith("Remove ") || name.startsWith("Take it ") ||
           (name.startsWith("Take ") && name.contains(" out")) || (name.startsWith("take ") && name.endsWith(" out"));
}

double light_of(double part) { return part <= 0.04045 ? part / 12.92 : std::pow((part + 0.055) / 1.055, 2.4); }

double luminance(const QColor& colour) {
    return 0.2126 * light_of(colour.redF()) + 0.7152 * light_of(colour.greenF()) + 0.0722 * light_of(colour.blueF());
}

bool inside(const QQuickItem* item, const QQuickItem* other) {
    for (const QQuickItem* above = item; above != nullptr; above = above->parentItem()) {
        if (above == other) {
            return true;
        }
    }
    return false;
}

}  // namespace

double contrast(const QColor& one, const QColor& other) {
    const double a = luminance(one);
    const double b = luminance(other);
    return (std::max(a, b) + 0.05) / (std::min(a, b) + 0.05);
}

QString nameOf(QQuickItem* item) {
    QAccessibleInterface* heard_as = QAccessible::queryAccessibleInterface(item);
    return heard_as != nullptr ? heard_as->text(QAccessible::Name) : QString();
}

Scene::Scene(QSize size, Visits visits, const std::function<void(const QString& folder)>& meanwhile)
    : finger_(QTest::createTouchDevice()) {
    {
        const QMutexLocker locked(&heard_guard);
        heard.clear();
    }
    qInstallMessageHandler(hear);
    if (visits == Visits::demo) {
        import_demo(bench_.keeping(), QStringLiteral(TRUEHANG_SOURCE_DIR "/demo-surveys"));
        bench_.settle();
    }
    if (meanwhile) {
        bench_.end();
        meanwhile(bench_.folder());
    }
    bench_.reopen();
    make_face_known().wait();
    engine_ = std::make_unique<QQmlApplicationEngine>();
    const QString face = QStringLiteral(TRUEHANG_FACE);
    if (!face.startsWith(QLatin1String("qrc:"))) {
        engine_->addImportPath(QUrl(face + "../..").toLocalFile());
    }
    engine_->setInitialProperties({{QStringLiteral("notebook"), QVariant::fromValue(&bench_.notebook())}});
    engine_->load(QUrl(face + QStringLiteral("Main.qml")));
    if (engine_->rootObjects().isEmpty()) {
        qFatal("Main.qml can't be loaded");
    }
    window_ = qobject_cast<QQuickWindow*>(engine_->rootObjects().first());
    QQmlComponent asks(engine_.get());
    asks.setData("import QtQml; import Truehang.Face; QtObject { readonly property QtObject theme: Theme }", {});
    const std::unique_ptr<QObject> asked(asks.create());
    theme_ = asked ? asked->property("theme").value<QObject*>() : nullptr;
    window_->resize(size);
    window_->show();
    window_->requestActivate();
    settle();
}

Scene::~Scene() {
    engine_.reset();
    qInstallMessageHandler(nullptr);
}

QStringList Scene::warnings() {
    const QMutexLocker locked(&heard_guard);
    return heard;
}

void Scene::settle() {
    bench_.settle();
    QCoreApplication::processEvents();
    (void)window_->grabWindow();  // lays out what waits for the next frame
    QCoreApplication::processEvents();
}

void Scene::openWindow(const QString& visit, const QString& window) {
    const ShownRows* visits = notebook().visits();
    for (int row = 0; row < visits->count(); ++row) {
        if (visits->value(row, "title").toString() == visit) {
            notebook().openVisit(visits->value(row, "visitId").toString());
        }
    }
    settle();
    const ShownRows* windows = notebook().visit()->windows();
    for (int row = 0; row < windows->count(); ++row) {
        if (windows->value(row, "title").toString() == window) {
            notebook().openWindow(windows->value(row, "windowId").toString());
        }
    }
    settle();
}

QList<QQuickItem*> Scene::items() const {
    QList<QQuickItem*> all;
    collect(window_->contentItem(), all);
    return all;
}

QList<QQuickItem*> Scene::targets() const {
    QList<QQuickItem*> found;
    for (QQuickItem* item : items()) {
        const QVariant asks = item->property("canAsk");  // a figure that can't be asked is a button in name only
        const bool acts = !asks.isValid() || asks.toBool();
        if (acts && item->isEnabled() && (item->inherits("truehang::PressItem") || item->inherits("QQuickTextInput"))) {
            found << item;
        }
    }
    return found;
}

QList<QQuickItem*> Scene::texts() const {
    QList<QQuickItem*> found;
    for (QQuickItem* item : items()) {
        if (item->inherits("QQuickText") && !item->property("text").toString().isEmpty()) {
            found << item;
        }
    }
    return found;
}

QStringList Scene::names() const {
    QStringList all;
    for (QQuickItem* item : items()) {
        const QString name = nameOf(item);
        if (!name.isEmpty()) {
            all << name;
        }
    }
    return all;
}

QQuickItem* Scene::find(const QString& name) const {
    QQuickItem* found = nullptr;
    for (QQuickItem* item : items()) {
        const bool target = item->inherits("truehang::PressItem") || item->inherits("QQuickTextInput");
        if (nameOf(item) == name && (target || found == nullptr)) {
            found = item;
            if (target) {
                break;
            }
        }
    }
    return found;
}

bool Scene::isChosen(const QString& name) const {
    for (QQuickItem* item : items()) {
        QAccessibleInterface* heard_as = QAccessible::queryAccessibleInterface(item);
        if (heard_as != nullptr && heard_as->text(QAccessible::Name) == name && heard_as->state().checked) {
            return true;
        }
    }
    return false;
}

QRectF Scene::seen(const QQuickItem* item) const {
    const QRectF own = item->inherits("QQuickText") ? item->boundingRect() : QRectF(QPointF(), item->size());
    QRectF rectangle = item->mapRectToScene(own);
    for (const QQuickItem* above = item->parentItem(); above != nullptr; above = above->parentItem()) {
        if (above->clip()) {
            rectangle &= above->mapRectToScene(above->boundingRect());
        }
    }
    return rectangle & QRectF(QPointF(), window_->size());
}

void Scene::sizesAndLooks() {
    QTest::addColumn<QSize>("size");
    QTest::addColumn<QByteArray>("look");
    QTest::addColumn<double>("scale");
    QTest::newRow("phone") << QSize(360, 760) << QByteArray("light") << 1.0;
    QTest::newRow("phone, dark") << QSize(360, 760) << QByteArray("dark") << 1.0;
    QTest::newRow("phone, largest letters") << QSize(360, 760) << QByteArray("light") << 2.0;
    QTest::newRow("tablet") << QSize(1024, 768) << QByteArray("light") << 1.0;
    QTest::newRow("tablet, dark") << QSize(1024, 768) << QByteArray("dark") << 1.0;
}

void Scene::dress(const QByteArray& look, double scale) {
    notebook().settings()->setLook(QLatin1String(look));
    notebook().settings()->setTextScale(scale);
    settle();
}

bool Scene::touch(const QString& name) {
    const QQuickItem* item = find(name);
    if (item == nullptr || seen(item).isEmpty()) {
        return false;
    }
    const QPoint middle = seen(item).center().toPoint();
    QTest::touchEvent(window_, finger_.get()).press(0, middle, window_);
    QTest::touchEvent(window_, finger_.get()).release(0, middle, window_);
    settle();
    return true;
}

bool Scene::click(const QString& name) {
    const QQuickItem* item = find(name);
    if (item == nullptr || seen(item).isEmpty()) {
        return false;
    }
    QTest::mouseClick(window_, Qt::LeftButton, {}, seen(item).center().toPoint());
    settle();
    return true;
}

bool Scene::reach(const QString& name) {
    QQuickItem* item = find(name);
    if (item == nullptr) {
        return false;
    }
    item->forceActiveFocus(Qt::TabFocusReason);
    settle();
    return touch(name);
}

bool Scene::chooseInDialog(const QString& file) {
    for (QQuickItem* item : items()) {
        if (!QByteArray(item->metaObject()->className()).startsWith("FileChooser")) {
            continue;
        }
        const QObjectList dialogs = item->children();
        const bool chose = QMetaObject::invokeMethod(item, "chose", Q_ARG(QUrl, QUrl::fromLocalFile(file)));
        for (QObject* dialog : dialogs) {
            if (QByteArray(dialog->metaObject()->className()).contains("FileDialog")) {
                QMetaObject::invokeMethod(dialog, "close");
            }
        }
        return chose && !dialogs.isEmpty();
    }
    return false;
}

void Scene::key(Qt::Key key, const QString& text, Qt::KeyboardModifiers modifiers) {
    QTest::sendKeyEvent(QTest::Click, window_, key, text, modifiers);
    settle();
}

void Scene::typeOnKeyboard(const QString& text) {
    for (const QChar character : text) {
        QTest::keyClick(window_, character.toLatin1());
    }
    settle();
}

void Scene::grab(const QString& name) {
    const QString folder = qEnvironmentVariable("TRUEHANG_PICTURES");
    if (!folder.isEmpty()) {
        QDir().mkpath(folder);
        window_->grabWindow().save(folder + QLatin1Char('/') + name + QStringLiteral(".png"));
    }
}

void Scene::grabDressed(const QString& name) {
    const Settings& settings = *notebook().settings();
    grab(QStringLiteral("%1-%2-%3-%4").arg(name).arg(window_->width()).arg(settings.textScale()).arg(settings.look()));
}

void Scene::faultsOfTexts(QStringList& faults) const {
    const QList<QQuickItem*> all = texts();
    QList<std::pair<QRectF, QString>> laid;
    for (const QQuickItem* text : all) {
        const QString words = text->property("text").toString();
        const QRectF shown = seen(text);
        if (shown.isEmpty()) {
            continue;
        }
        if (text->property("truncated").toBool()) {
            faults << QStringLiteral("cut off: %1").arg(words);
        }
        if (text->property("contentWidth").toReal() > text->width() + 1.5) {
            faults << QStringLiteral("wider than its place: %1").arg(words);
        }
        if (text->property("contentHeight").toReal() > text->height() + 1.5 + text->height() * 0.2) {
            faults << QStringLiteral("higher than its place: %1").arg(words);
        }
        const QRectF whole = text->mapRectToScene(text->boundingRect());
        if (whole.left() < -1 || whole.right() > window_->width() + 1) {
            faults << QStringLiteral("beyond the page: %1").arg(words);
        }
        for (const auto& [other, said] : laid) {
            const QRectF common = other & shown;
            if (common.width() > 2 && common.height() > 3) {
                faults << QStringLiteral("on each other: %1 / %2").arg(said, words);
            }
        }
        laid << std::pair(shown, words);
    }
}

void Scene::faultsOfTargets(QStringList& faults) const {
    const QList<QQuickItem*> all = targets();
    for (QQuickItem* target : all) {
        const QString name = nameOf(target);
        if (name.isEmpty()) {
            faults << QStringLiteral("a target without a name: %1").arg(target->metaObject()->className());
        }
        if (target->width() < 48 || target->height() < 48) {
            faults << QStringLiteral("%1 is %2 x %3").arg(name).arg(target->width()).arg(target->height());
        }
        for (QQuickItem* other : all) {
            if (other == target || inside(other, target) || inside(target, other) || seen(target).isEmpty()) {
                continue;
            }
            const double near = is_undoing(name) ? 12.0 : 0.0;
            const QRectF room = seen(target).adjusted(-near, -near, near, near);
            const QRectF common = room & seen(other);
            if (common.width() > 0.5 && common.height() > 0.5) {
                faults << QStringLiteral("%1 is too near to %2").arg(name, nameOf(other));
            }
        }
    }
}

QStringList Scene::faultsOfLayout() const {
    QStringList faults;
    faultsOfTexts(faults);
    faultsOfTargets(faults);
    faults.removeDuplicates();
    return faults;
}

}  // namespace truehang::test
