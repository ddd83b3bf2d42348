// SPDX-License-Identifier: Apache-2.0
#include "choice_lines.h"

#include "sheet/words.h"
#include "writing.h"

#include <QCoreApplication>
#include <QStringList>
#include <algorithm>
#include <functional>

namespace truehang {

namespace {

QString choices_words(const char* source) { return QCoreApplication::translate("choices", source); }

/// Writes the cells of one survey's choices.
class CellWriter {
public:
    explicit CellWriter(const Survey& survey) : survey_(survey), style_{entry_unit(survey), decimal_mark()} {}

    [[nodiscard]] QString widths(const Choice& choice) const {
        const auto& cloth = choice.figures.cloth;
        if (!cloth) {
            return choices_words(QT_TRANSLATE_NOOP("choices", "not known"));
        }
        return choices_words(QT_TRANSLATE_NOOP("choices", "%1, %2 in each"))
            .arg(QString::number(cloth->widths), truehang::shown(std::optional(cloth->widths_each)));
    }

    [[nodiscard]] QString fullness(const Choice& choice) const {
        const auto& cloth = choice.figures.cloth;
        return cloth && cloth->fullness ? choices_words(QT_TRANSLATE_NOOP("choices", "%1 ×"))
                                              .arg(shown(number_text(*cloth->fullness, 2, style_)))
                                        : choices_words(QT_TRANSLATE_NOOP("choices", "none"));
    }

    [[nodiscard]] QString cloths(const Choice& choice) const {
        QStringList parts;
        for (const ClothTaken& taken : choice.cloths) {
            parts.append(choices_words(QT_TRANSLATE_NOOP("choices", "%1: %2\u00a0m"))
                             .arg(name(taken.fabric), shown(number_text(taken.length.metres(), 2, style_))));
        }
        return parts.isEmpty() ? choices_words(QT_TRANSLATE_NOOP("choices", "nothing can be cut"))
                               : parts.join(QLatin1Char('\n'));
    }

    [[nodiscard]] QString cost(const Choice& choice) const {
        QStringList parts;
        for (const Money& sum : choice.cost) {
            parts.append(money(sum));
        }
        for (const ClothTaken& taken : choice.cloths) {
            if (!taken.cost) {
                parts.append(choices_words(QT_TRANSLATE_NOOP("choices", "%1: no price")).arg(name(taken.fabric)));
            }
        }
        return parts.join(QLatin1Char('\n'));
    }

    [[nodiscard]] QString making(const Choice& choice) const {
        return choice.making ? money(*choice.making) : QString();
    }

    [[nodiscard]] QString glass(const Choice& choice) const {
        const auto& covered = choice.figures.covers_glass;
        if (!covered) {
            return choices_words(QT_TRANSLATE_NOOP("choices", "not known"));
        }
        const std::string text = written(*covered, style_);
        if (text == written(Length(), style_)) {
            return choices_words(QT_TRANSLATE_NOOP("choices", "none"));
        }
        const bool pair = choice.figures.finished && choice.figures.finished->curtains == 2;
        return (pair ? choices_words(QT_TRANSLATE_NOOP("choices", "%1 %2 each side"))
                     : choices_words(QT_TRANSLATE_NOOP("choices", "%1 %2")))
            .arg(shown(text), shown(word_of(style_.unit)));
    }

    [[nodiscard]] QString mass(const Choice& choice) const {
        return choice.figures.mass ? shown(mass_text(*choice.figures.mass, style_))
                                   : choices_words(QT_TRANSLATE_NOOP("choices", "not known"));
    }

private:
    [[nodiscard]] QString name(const std::string& id) const {
        const auto fabric = std::ranges::find(survey_.fabrics, id, &Fabric::id);
        return fabric == survey_.fabrics.end() ? shown(id) : shown(short_name(*fabric));
    }

    [[nodiscard]] QString money(const Money& sum) const {
        return QStringLiteral("%1 %2").arg(shown(number_text(sum.amount, 2, style_)), shown(sum.currency)).trimmed();
    }

    const Survey& survey_;
    SheetStyle style_;
};

using Cell = QString (CellWriter::*)(const Choice&) const;

}  // namespace

bool has_sums(const std::vector<Choice>& choices) {
    return std::ranges::any_of(choices, [](const Choice& one) { return !one.cost.empty() || one.making; });
}

QList<ShownRows::Row> choice_lines(const Survey& survey, const std::vector<Choice>& choices) {
    const CellWriter writer(survey);
    QList<ShownRows::Row> rows;
    const auto add = [&](const char* line, const char* label, Cell cell) {
        QStringList cells;
        for (const Choice& choice : choices) {
            cells.append((writer.*cell)(choice));
        }
        rows.append({QLatin1String(line), choices_words(label), cells});
    };
    add("widths", QT_TRANSLATE_NOOP("choices", "Widths"), &CellWriter::widths);
    add("fullness", QT_TRANSLATE_NOOP("choices", "Fullness"), &CellWriter::fullness);
    add("cloth", QT_TRANSLATE_NOOP("choices", "Cloth"), &CellWriter::cloths);
    if (std::ranges::any_of(choices, [](const Choice& one) { return !one.cost.empty(); })) {
        add("cost", QT_TRANSLATE_NOOP("choices", "Cloth, in money"), &CellWriter::cost);
    }
    if (std::ranges::any_of(choices, [](const Choice& one) { return one.making.has_value(); })) {
        add("making", QT_TRANSLATE_NOOP("choices", "Making, by the width"), &CellWriter::making);
    }
    add("glass", QT_TRANSLATE_NOOP("choices", "Glass covered when open"), &CellWriter::glass);
    add("mass", QT_TRANSLATE_NOOP("choices", "Weight"), &CellWriter::mass);
    return rows;
}

}  // namespace truehang
