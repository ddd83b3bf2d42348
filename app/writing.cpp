// SPDX-License-Identifier: Apache-2.0
#include "writing.h"

#include "units/saying.h"

#include <QCoreApplication>
#include <QLocale>
#include <QRegularExpression>
#include <cmath>

namespace truehang {

char decimal_mark() { return QLocale().decimalPoint() == QStringLiteral(",") ? ',' : '.'; }

LengthUnit entry_unit(const Survey& survey) {
    if (!survey.entry_unit) {
        return LengthUnit::mm;
    }
    return length_unit(*survey.entry_unit).value_or(LengthUnit::mm);
}

LengthStyle length_style(const Survey& survey) {
    LengthStyle style;
    style.unit = entry_unit(survey);
    style.decimal = decimal_mark();
    return style;
}

QString shown(const Survey& survey, const std::optional<Length>& length) {
    if (!length) {
        return {};
    }
    if (length->mm() < 0) {
        return QStringLiteral("\u2212") + shown(write_length(-*length, length_style(survey)));
    }
    return shown(write_length(*length, length_style(survey)));
}

QString shown(const std::optional<double>& number) {
    if (!number) {
        return {};
    }
    QString text = QString::number(*number, 'g', 10);
    return text.replace(QLatin1Char('.'), QLatin1Char(decimal_mark()));
}

Result<std::optional<Length>> read_field_length(const Survey& survey, const QString& typed, bool may_be_negative) {
    QString text = typed.trimmed();
    if (text.isEmpty()) {
        return std::optional<Length>();
    }
    const bool negative = text.startsWith(QLatin1Char('-')) || text.startsWith(QChar(0x2212));
    if (negative) {
        if (!may_be_negative) {
            return Error{ErrorCode::out_of_range,
                         {},
                         bytes(QCoreApplication::translate("writing", "This can’t be below zero."))};
        }
        text.remove(0, 1);
    }
    const auto read = read_length(bytes(text), entry_unit(survey));
    if (!read) {
        return read.error();
    }
    return std::optional(negative ? -read->length : read->length);
}

Result<std::optional<double>> read_field_number(const QString& typed, double least, double most) {
    QString text = typed.trimmed();
    if (text.isEmpty()) {
        return std::optional<double>();
    }
    bool understood = false;
    const double number = text.replace(QLatin1Char(','), QLatin1Char('.')).toDouble(&understood);
    if (!understood || !std::isfinite(number)) {
        return Error{ErrorCode::unreadable,
                     {},
                     bytes(QCoreApplication::translate("writing", "A number is understood here, as 1.5 or 1,5."))};
    }
    if (number < least || number > most) {
        return Error{ErrorCode::out_of_range,
                     {},
                     bytes(QCoreApplication::translate("writing", "Between %1 and %2 is understood here.")
                               .arg(shown(std::optional(least)), shown(std::optional(most))))};
    }
    return std::optional(number);
}

Result<std::optional<Coordinates>> read_coordinates(const QString& typed) {
    static const QRegularExpression pair(
        QStringLiteral(R"(^([+-]?\d+(?:[.,]\d+)?)\s*°?\s*([NS]?)\s*[,;\s]\s*([+-]?\d+(?:[.,]\d+)?)\s*°?\s*([EWO]?)$)"),
        QRegularExpression::CaseInsensitiveOption);
    QString text = typed.trimmed();
    if (text.isEmpty()) {
        return std::optional<Coordinates>();
    }
    const auto found = pair.match(text.replace(QChar(0x2212), QLatin1Char('-')));
    const auto number = [&](int part, const QString& negative) {
        const double read = found.captured(part).replace(QLatin1Char(','), QLatin1Char('.')).toDouble();
        return found.captured(part + 1).toUpper() == negative ? -read : read;
    };
    const Coordinates read{number(1, QStringLiteral("S")), number(3, QStringLiteral("W"))};
    if (!found.hasMatch() || std::abs(read.latitude) > 90.0 || std::abs(read.longitude) > 180.0) {
        return Error{ErrorCode::unreadable,
                     {},
                     bytes(QCoreApplication::translate(
                         "writing", "Latitude and longitude in degrees are understood here, as 54.6, -1.1."))};
    }
    return std::optional(read);
}

QString within_sentence(const QString& says) {
    const Language* language = spoken();
    const bool lowers = language == nullptr || language->lowers_within();
    return says.isEmpty() || !lowers ? says : says.left(1).toLower() + says.mid(1);
}

}  // namespace truehang
