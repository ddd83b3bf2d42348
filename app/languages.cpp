// SPDX-License-Identifier: Apache-2.0
#include "languages.h"

#include "units/saying.h"
#include "writing.h"

#include <QCoreApplication>
#include <QFile>
#include <QLocale>
#include <QTranslator>
#include <map>
#include <memory>

namespace truehang {

namespace {

QString here(const QString& file) { return QStringLiteral(":/truehang/words/") + file; }

/// The core's words for a language, read once and kept: whatever was said may still be looked at. Null for English.
const Language* core_words(const QString& language) {
    static std::map<QString, std::unique_ptr<const Language>> kept;
    QFile file(here(language + QStringLiteral(".txt")));
    if (!kept.contains(language) && file.open(QIODevice::ReadOnly)) {
        auto read = Language::read(file.readAll().toStdString());
        if (read) {
            kept[language] = std::make_unique<const Language>(std::move(read).value());
        } else {
            qWarning("%s: %s: %s", qPrintable(file.fileName()), read.error().where.c_str(), read.error().text.c_str());
        }
    }
    const auto found = kept.find(language);
    return found == kept.end() ? nullptr : found->second.get();
}

QTranslator& catalogue() {
    static QTranslator screens;
    return screens;
}

/// "de" of "de_AT"; "en" where the system speaks something else.
QString spoken_by_system() {
    const QString word = QLocale::system().name().section(QLatin1Char('_'), 0, 0);
    return language_words().contains(word) ? word : language_words().front();
}

}  // namespace

QStringList language_words() { return {QStringLiteral("en"), QStringLiteral("de")}; }

void speak(const QString& language) {
    const bool chosen = language_words().contains(language);
    const QString word = chosen ? language : spoken_by_system();
    QLocale::setDefault(chosen && word != spoken_by_system() ? QLocale(word) : QLocale::system());
    QCoreApplication::removeTranslator(&catalogue());
    if (catalogue().load(here(word + QStringLiteral(".qm")))) {
        QCoreApplication::installTranslator(&catalogue());
    }
    speak(core_words(word));
}

QString own_name(const QString& language) {
    return language == QStringLiteral("de") ? QStringLiteral("Deutsch") : QStringLiteral("English");
}

}  // namespace truehang
