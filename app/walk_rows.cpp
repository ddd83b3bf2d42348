// SPDX-License-Identifier: Apache-2.0
#include "walk_rows.h"

#include "writing.h"

#include <QCoreApplication>
#include <QRegularExpression>
#include <algorithm>
#include <array>

namespace truehang {

namespace {

QString translated(const char* source) { return QCoreApplication::translate("walk", source); }

struct Reason {
    const char* word;
    const char* says;
};
constexpr std::array<Reason, 5> reasons{{
    {"too-high", QT_TRANSLATE_NOOP("walk", "Too high to reach safely")},
    {"in-the-way", QT_TRANSLATE_NOOP("walk", "Something stands in the way")},
    {"not-there", QT_TRANSLATE_NOOP("walk", "There is no such edge here")},
    {"not-allowed", QT_TRANSLATE_NOOP("walk", "The client doesn't want it touched")},
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

/// The networks a station's reading may take part in.
bool concerns(const std::string& network, const Station& station) {
    switch (station.kind) {
        case StationKind::height:
            if (network == "opening") {
                return station.word.starts_with("opening.");
            }
            if (network == "plumb") {
                return true;
            }
            return network.starts_with("plumb.") && (!station.line || network.substr(6) == word_of(*station.line));
        case StationKind::width:
            return network == "opening" || (network == "wall" && station.word == "opening.width.top");
        case StationKind::diagonal:
            return network == "opening";
        case StationKind::wall:
            return network == "wall";
        default:
            return false;
    }
}

}  // namespace

QList<ShownRows::Row> reason_rows() {
    QList<ShownRows::Row> rows;
    for (const Reason& reason : reasons) {
        rows.append({QLatin1String(reason.word), translated(reason.says)});
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
    return known == reasons.end() ? shown(given->reason) : translated(known->says);
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

LineUnderNumber line_under_number(const WindowFigures& worked, const Station& station) {
    const std::string word(station.word);
    for (const Flag& flag : worked.flags) {
        if (flag.code == "does-not-add-up" && std::ranges::count(flag.stations, word) > 0) {
            return {shown(flag.text), QStringLiteral("differs")};
        }
    }
    for (const Check& check : worked.checks) {
        if (check.redundancy > 0 && concerns(check.network, station)) {
            return check.adds_up ? LineUnderNumber{translated("Adds up"), QStringLiteral("adds-up")}
                                 : LineUnderNumber{translated("Doesn't add up"), QStringLiteral("differs")};
        }
    }
    return {{}, QStringLiteral("quiet")};
}

QList<ShownRows::Row> suspect_rows(const Flag& flag, const LengthStyle& style,
                                   const std::function<QString(const QString&)>& says,
                                   const std::function<const Reading*(std::string_view)>& kept) {
    QList<ShownRows::Row> rows;
    const auto add = [&](const QString& station, const QString& figure, const QString& why, const QString& likely) {
        rows.append({station, says(station), figure, why, likely,
                     QStringLiteral("%1: %2. %3 %4").arg(says(station), figure, why, likely)});
    };
    for (const Suspect& suspect : flag.suspects) {
        const QString was = shown(write_length(suspect.was, style));
        const QString figure =
            suspect.proposed ? translated("%1, perhaps %2").arg(was, shown(write_length(*suspect.proposed, style)))
                             : was;
        const QString why = suspect.proposed ? shown(suspect.slip).replace(QLatin1Char('-'), QLatin1Char(' '))
                                             : translated("no slip explains it");
        add(shown(suspect.station), figure, why, {});
    }
    if (flag.suspects.empty()) {
        for (const auto& station : flag.stations) {
            const Reading* reading = kept(station);
            add(shown(station), reading && reading->value ? shown(write_length(*reading->value, style)) : QString(), {},
                {});
        }
    }
    return rows;
}

QPair<QString, QString> first_sentence(const QString& text) {
    const auto stop = text.indexOf(QStringLiteral(". "));
    if (stop < 0) {
        return {text.endsWith(QLatin1Char('.')) ? text.chopped(1) : text, {}};
    }
    return {text.left(stop), text.mid(stop + 2)};
}

}  // namespace truehang
