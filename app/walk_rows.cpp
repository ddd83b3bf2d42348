// SPDX-License-Identifier: Apache-2.0
#include "walk_rows.h"

#include "writing.h"

#include <QCoreApplication>
#include <QRegularExpression>
#include <algorithm>
#include <array>

namespace truehang {

namespace {

QString walk_rows_text(const char* source) { return QCoreApplication::translate("walk", source); }

struct Reason {
    const char* word;
    const char* says;
};
constexpr std::array<Reason, 5> reasons{{
    {"too-high", QT_TRANSLATE_NOOP("walk", "Too high to reach safely")},
    {"in-the-way", QT_TRANSLATE_NOOP("walk", "Something stands in the way")},
    {"not-there", QT_TRANSLATE_NOOP("walk", "There is no such edge here")},
    {"not-allowed", QT_TRANSLATE_NOOP("walk", "The client doesn’t want it touched")},
    {"later", QT_TRANSLATE_NOOP("walk", "On the next visit")},
}};

/// Vulgar fractions that Unicode has a sign for.
QString fraction_sign(int part, int of) {
    static const std::array<std::pair<const char*, const char*>, 7> signs{
        {{"1/8", "⅛"}, {"1/4", "¼"}, {"3/8", "⅜"}, {"1/2", "½"}, {"5/8", "⅝"}, {"3/4", "¾"}, {"7/8", "⅞"}}};
    const QString key = QStringLiteral("%1/%2").arg(part).arg(of);
    for (const auto& [text, sign] : signs) {
        if (key == QLatin1String(text)) {
            return QString::fromUtf8(sign);
        }
    }
    return key;
}

}  // namespace

QList<ShownRows::Row> reason_rows() {
    QList<ShownRows::Row> rows;
    for (const Reason& reason : reasons) {
        rows.append({QLatin1String(reason.word), walk_rows_text(reason.says)});
    }
    return rows;
}

QString reason_shown(const Window& window, const QString& station) {
    const auto given =
        std::ranges::find_if(window.not_taken, [&](const NotTaken& n) { return shown(n.station) == station; });
    if (given == window.not_taken.end()) {
        return {};
    }
    const auto known = std::ranges::find_if(reasons, [&](const Reason& r) { return given->reason == r.word; });
    return known == reasons.end() ? shown(given->reason) : walk_rows_text(known->says);
}

QList<ShownRows::Row> fraction_rows(int denominator) {
    QList<ShownRows::Row> rows;
    for (int part = 1; part < denominator; ++part) {
        int lowest = part;
        int of = denominator;
        while (lowest % 2 == 0) {
            lowest /= 2;
            of /= 2;
        }
        rows.append({QStringLiteral("%1/%2").arg(lowest).arg(of), fraction_sign(lowest, of)});
    }
    return rows;
}

QString without_unit(const QString& typed) {
    static const QRegularExpression unit(QStringLiteral("\\s*(mm|cm|m|in|°)$"));
    return QString(typed).remove(unit);
}

QString with_unit(const QString& typed, const QString& bare, LengthUnit entry) {
    if (typed.isEmpty()) {
        return QStringLiteral("%1 %2").arg(bare, shown(word_of(entry)));
    }
    const bool written =
        without_unit(typed) != typed || typed.contains(QLatin1Char('"')) || typed.contains(QLatin1Char('\''));
    return written ? typed : QStringLiteral("%1 %2").arg(typed, shown(word_of(entry)));
}

}  // namespace truehang
