// SPDX-License-Identifier: Apache-2.0
#include "settings.h"

#include "languages.h"
#include "writing.h"

#include <QSettings>
#include <algorithm>
#include <array>

namespace truehang {

namespace {

constexpr auto hand_key = "hand";
constexpr auto look_key = "look";
constexpr auto text_key = "text-scale";
constexpr auto language_key = "language";
constexpr auto inch_key = "inch-denominator";
constexpr auto aloud_key = "aloud";
constexpr auto photo_origin_key = "photos/origin";
constexpr std::array<qreal, 4> text_scales{1.0, 1.25, 1.5, 2.0};

}  // namespace

Settings::Settings(const QString& file, QObject* parent)
    : QObject(parent), file_(new QSettings(file, QSettings::IniFormat, this)) {}

Settings::~Settings() = default;

QString Settings::hand() const {
    return file_->value(hand_key).toString() == QStringLiteral("left") ? QStringLiteral("left")
                                                                       : QStringLiteral("right");
}

void Settings::setHand(const QString& hand) { set(hand_key, hand, hand != this->hand()); }

QString Settings::look() const {
    const QString look = file_->value(look_key).toString();
    static const QStringList looks{QStringLiteral("light"), QStringLiteral("dark"), QStringLiteral("room")};
    return looks.contains(look) ? look : QStringLiteral("system");
}

void Settings::setLook(const QString& look) { set(look_key, look, look != this->look()); }

qreal Settings::textScale() const {
    const qreal scale = file_->value(text_key, 1.0).toReal();
    return std::ranges::count(text_scales, scale) > 0 ? scale : 1.0;
}

void Settings::setTextScale(qreal scale) { set(text_key, scale, !qFuzzyCompare(scale, textScale())); }

QString Settings::language() const {
    const QString language = file_->value(language_key).toString();
    return language_words().contains(language) ? language : QStringLiteral("system");
}

void Settings::setLanguage(const QString& language) {
    if (language != this->language()) {
        set(language_key, language, true);
        emit languageChanged();
    }
}

QVariantList Settings::languages() const {
    QVariantList all;
    for (const QString& word : language_words()) {
        all.append(QVariantMap{{QStringLiteral("word"), word}, {QStringLiteral("says"), own_name(word)}});
    }
    all.append(
        QVariantMap{{QStringLiteral("word"), QStringLiteral("system")}, {QStringLiteral("says"), tr("as the system")}});
    return all;
}

int Settings::inchDenominator() const { return file_->value(inch_key, 8).toInt() == 16 ? 16 : 8; }

void Settings::setInchDenominator(int denominator) { set(inch_key, denominator, denominator != inchDenominator()); }

bool Settings::aloud() const { return file_->value(aloud_key, false).toBool(); }
void Settings::setAloud(bool aloud) { set(aloud_key, aloud, aloud != this->aloud()); }
bool Settings::keepsPhotoOrigin() const { return file_->value(photo_origin_key, false).toBool(); }

void Settings::setKeepsPhotoOrigin(bool keeps) { set(photo_origin_key, keeps, keeps != keepsPhotoOrigin()); }

QString Settings::decimalMark() const { return QString(QLatin1Char(decimal_mark())); }

void Settings::set(const char* key, const QVariant& value, bool differs) {
    if (differs) {
        file_->setValue(key, value);
        file_->sync();
        emit changed();
    }
}

}  // namespace truehang
