// SPDX-License-Identifier: Apache-2.0
#include "start.h"

#include "store/uuid7.h"

#include <QDateTime>
#include <QFont>
#include <QFontDatabase>
#include <QGuiApplication>
#include <QRandomGenerator>
#include <QResource>
#include <future>
#include <memory>
#include <mutex>

void qml_register_types_Truehang();

namespace truehang {

namespace {

/// Qt's font database locks for itself.
void load_fonts() {
    for (const char* font : {"Lato-Regular", "Lato-Bold", "GentiumPlus-Regular"}) {
        const QResource file(QLatin1String(face_folder) + QStringLiteral("fonts/%1.ttf").arg(QLatin1String(font)));
        Q_ASSERT(file.isValid() && file.compressionAlgorithm() == QResource::NoCompression);
        QFontDatabase::addApplicationFontFromData(
            QByteArray::fromRawData(reinterpret_cast<const char*>(file.data()), static_cast<qsizetype>(file.size())));
    }
}

}  // namespace

std::shared_future<void> make_face_known() {
    qml_register_types_Truehang();
    QGuiApplication::setFont(QFont(QStringLiteral("Lato")));
    static const std::shared_future<void> fonts = std::async(load_fonts);
    return fonts;
}

std::string system_time() {
    const QDateTime now = QDateTime::currentDateTime();
    return now.toOffsetFromUtc(now.offsetFromUtc()).toString(Qt::ISODate).toStdString();
}

std::function<std::string()> system_ids() {
    const auto maker =
        std::make_shared<IdMaker>([] { return static_cast<std::uint64_t>(QDateTime::currentMSecsSinceEpoch()); },
                                  [] { return QRandomGenerator::system()->generate64(); });
    const auto guard = std::make_shared<std::mutex>();
    return [maker, guard] {
        const std::lock_guard lock(*guard);
        return (*maker)();
    };
}

}  // namespace truehang
