// SPDX-License-Identifier: Apache-2.0
#include "figure_rows.h"

#include "units/angle_text.h"

#include "sheet/working_words.h"
#include "survey/stations.h"
#include "units/saying.h"
#include "writing.h"

#include <QCoreApplication>
#include <algorithm>

namespace truehang {

namespace {

QString figures_words(const char* source) { return QCoreApplication::translate("figures", source); }

bool has_trace(const WindowFigures& worked, const QString& layer, const QString& figure) {
    return std::ranges::any_of(worked.trace, [&](const Trace& trace) {
        return shown(trace.layer) == layer && shown(trace.figure) == figure && !trace.steps.empty();
    });
}

/// A plumb line's mark, as `sill.left`: what it is called as a height above the floor; empty where it is no such mark.
QString height_says(const QString& name) {
    static const QHash<QString, const char*> marks{
        {QStringLiteral("floor"), QT_TRANSLATE_NOOP("figures", "Floor")},
        {QStringLiteral("sill"), QT_TRANSLATE_NOOP("figures", "Sill above the floor")},
        {QStringLiteral("head"), QT_TRANSLATE_NOOP("figures", "Head above the floor")},
        {QStringLiteral("pole"), QT_TRANSLATE_NOOP("figures", "Pole centre above the floor")},
        {QStringLiteral("ceiling"), QT_TRANSLATE_NOOP("figures", "Ceiling above the floor")},
        {QStringLiteral("level"), QT_TRANSLATE_NOOP("figures", "Level line above the floor")}};
    static const QHash<QString, const char*> lines{{QStringLiteral("left"), QT_TRANSLATE_NOOP("figures", "left")},
                                                   {QStringLiteral("centre"), QT_TRANSLATE_NOOP("figures", "centre")},
                                                   {QStringLiteral("right"), QT_TRANSLATE_NOOP("figures", "right")}};
    const char* mark = marks.value(name.section(QLatin1Char('.'), 0, 0));
    if (mark == nullptr) {
        return {};
    }
    const char* line = lines.value(name.section(QLatin1Char('.'), 1));
    return line == nullptr ? figures_words(mark)
                           : QStringLiteral("%1, %2").arg(figures_words(mark), figures_words(line));
}

}  // namespace

QString station_says(const Window& window, std::string_view station) {
    const auto named = window.shape.known() ? find_station(*window.shape.known(), station) : std::nullopt;
    return named ? shown(station_words(*named)) : shown(station);
}

FigureWriter::FigureWriter(const Survey& survey, const Window& window)
    : survey_(survey), window_(window), style_{entry_unit(survey), decimal_mark()} {}

void FigureWriter::add(QList<ShownRows::Row>& rows, const Layered& in, const QString& path, const QString& label,
                       const QString& figure, const QString& unit, const QString& plus_minus) const {
    const QString key = in.id.isEmpty() ? path : in.id + QLatin1Char('/') + path;
    QString spoken = QStringLiteral("%1: %2").arg(label, figure);
    for (const QString& part : {unit, plus_minus}) {
        spoken += part.isEmpty() ? QString() : QLatin1Char(' ') + part;
    }
    rows.append({key, label, figure, unit, plus_minus, in.title, has_trace(*in.worked, in.id, path), spoken});
}

void FigureWriter::addLength(QList<ShownRows::Row>& rows, const Layered& in, const QString& path, Length length,
                             Length u) const {
    add(rows, in, path, shown(figure_text(bytes(path))), shown(written(length, style_)), shown(word_of(style_.unit)),
        shown(plus_minus(u, style_)));
}

void FigureWriter::addCount(QList<ShownRows::Row>& rows, const Layered& in, const QString& path, int count) const {
    add(rows, in, path, shown(figure_text(bytes(path))), QString::number(count), {});
}

QString FigureWriter::clothName(const std::string& id) const {
    const auto fabric = std::ranges::find(survey_.fabrics, id, &Fabric::id);
    return fabric == survey_.fabrics.end() ? shown(id) : shown(short_name(*fabric));
}

void FigureWriter::addDrops(QList<ShownRows::Row>& rows, const Layered& in, const Finished& finished) const {
    for (const DropThere& there : finished.drops) {
        addLength(rows, in, QStringLiteral("finished.drops_mm.") + shown(there.line), there.drop, there.u);
    }
}

/// What was planned before the pole was up, where that was something else.
void FigureWriter::addPlanned(QList<ShownRows::Row>& rows, const Layered& in, const Finished& finished) const {
    if (!finished.planned) {
        return;
    }
    const Planned& planned = *finished.planned;
    if (planned.width != finished.width) {
        addLength(rows, in, QStringLiteral("finished.planned.width_mm"), planned.width);
    }
    addLength(rows, in, QStringLiteral("finished.planned.drop_mm"), planned.drop);
    const bool shorter = planned.longer < Length();
    const Length by = shorter ? -planned.longer : planned.longer;
    add(rows, in, QStringLiteral("finished.planned.longer_mm"),
        figures_words(shorter ? QT_TRANSLATE_NOOP("figures", "Shorter than planned by")
                              : QT_TRANSLATE_NOOP("figures", "Longer than planned by")),
        shown(written(by, style_)), shown(word_of(style_.unit)));
    if (planned.cut_drop) {
        addLength(rows, in, QStringLiteral("finished.planned.cut_drop_mm"), *planned.cut_drop);
    }
    if (planned.short_by) {
        addLength(rows, in, QStringLiteral("finished.planned.short_by_mm"), *planned.short_by);
    } else if (planned.hem_left) {
        addLength(rows, in, QStringLiteral("finished.planned.hem_left_mm"), *planned.hem_left);
    }
}

/// The run round the corners, and where along it each bend stands.
void FigureWriter::addRun(QList<ShownRows::Row>& rows, const Layered& in, const LayerFigures& layer) const {
    if (!layer.run) {
        return;
    }
    addLength(rows, in, QStringLiteral("run.length_mm"), layer.run->length.value, layer.run->length.u);
    int number = 0;
    for (const Bend& bend : layer.run->bends) {
        ++number;
        const QString label =
            layer.has_joints ? figures_words(QT_TRANSLATE_NOOP("figures", "Elbow joint %1, of %2°, from the left end"))
                             : figures_words(QT_TRANSLATE_NOOP("figures", "Bend %1, of %2°, from the left end"));
        add(rows, in, QStringLiteral("run.bends.%1.at_mm").arg(number),
            label.arg(QString::number(number), shown(write_angle(bend.angle, style_.decimal))),
            shown(written(bend.at, style_)), shown(word_of(style_.unit)));
    }
}

/// A shaped top's drops at its two edges, and at the longest between them; its whole table is the making sheet's.
void FigureWriter::addTop(QList<ShownRows::Row>& rows, const Layered& in, const CurtainTop& top) const {
    if (top.table.empty()) {
        return;
    }
    const QString curtain = top.side == "left"    ? figures_words(QT_TRANSLATE_NOOP("figures", "Left curtain"))
                            : top.side == "right" ? figures_words(QT_TRANSLATE_NOOP("figures", "Right curtain"))
                                                  : figures_words(QT_TRANSLATE_NOOP("figures", "Curtain"));
    const auto drop = [&](const char* place, const QString& says, const TopPoint& point) {
        add(rows, in, QStringLiteral("top.%1.%2").arg(shown(top.side), QLatin1String(place)),
            QStringLiteral("%1, %2").arg(curtain, says), shown(written(point.drop, style_)),
            shown(word_of(style_.unit)));
    };
    const TopPoint& longest = *std::ranges::max_element(top.table, {}, &TopPoint::drop);
    drop("from", figures_words(QT_TRANSLATE_NOOP("figures", "drop at its left edge")), top.table.front());
    if (longest.drop > top.table.front().drop && longest.drop > top.table.back().drop) {
        drop("longest",
             figures_words(QT_TRANSLATE_NOOP("figures", "longest drop, %1 across"))
                 .arg(shown(written(longest.hung, style_))),
             longest);
    }
    drop("to", figures_words(QT_TRANSLATE_NOOP("figures", "drop at its right edge")), top.table.back());
}

void FigureWriter::addCloth(QList<ShownRows::Row>& rows, const Layered& in, const LayerFigures& layer) const {
    const QString unit = shown(word_of(style_.unit));
    if (layer.cloth) {
        const Cloth& cloth = *layer.cloth;
        if (cloth.fullness) {
            add(rows, in, QStringLiteral("cloth.fullness"), shown(figure_text("cloth.fullness")),
                shown(number_text(*cloth.fullness, 2, style_)), figures_words(QT_TRANSLATE_NOOP("figures", "×")));
        }
        addCount(rows, in, QStringLiteral("cloth.widths"), cloth.widths);
        addLength(rows, in, QStringLiteral("cloth.cut_drop_mm"), cloth.cut_drop);
        add(rows, in, QStringLiteral("cloth.length_mm"),
            figures_words(QT_TRANSLATE_NOOP("figures", "%1, for this window")).arg(clothName(cloth.fabric)),
            shown(written(cloth.length, style_)), unit);
    }
    const auto lined = [&](const std::optional<Lining>& lining, const QString& path) {
        if (lining) {
            addLength(rows, in, path + QStringLiteral(".cut_drop_mm"), lining->cut_drop);
            add(rows, in, path + QStringLiteral(".length_mm"),
                figures_words(QT_TRANSLATE_NOOP("figures", "%1, for this window")).arg(clothName(lining->fabric)),
                shown(written(lining->length, style_)), unit);
        }
    };
    lined(layer.lining, QStringLiteral("lining"));
    lined(layer.making.second_lining, QStringLiteral("second_lining"));
    lined(layer.interlining, QStringLiteral("interlining"));
}

void FigureWriter::addParts(QList<ShownRows::Row>& rows, const Layered& in, const LayerFigures& layer) const {
    if (layer.tabs) {
        addCount(rows, in, QStringLiteral("tabs.each"), layer.tabs->each);
        addLength(rows, in, QStringLiteral("tabs.cut_length_mm"), layer.tabs->cut_length);
    }
    if (layer.eyelets) {
        addCount(rows, in, QStringLiteral("eyelets.each"), layer.eyelets->each);
    }
    addMaking(rows, in, layer.making);
    if (layer.weights) {
        addCount(rows, in, QStringLiteral("weights.each"), layer.weights->each);
    }
    if (layer.blind) {
        addCount(rows, in, QStringLiteral("blind.rods"), layer.blind->rods);
        addLength(rows, in, QStringLiteral("blind.fold_mm"), layer.blind->fold);
        addLength(rows, in, QStringLiteral("blind.up_mm"), layer.blind->up);
    }
    if (layer.pelmet) {
        addLength(rows, in, QStringLiteral("pelmet.depth_mm"), layer.pelmet->depth);
        addLength(rows, in, QStringLiteral("pelmet.face_mm"), layer.pelmet->face);
    }
    const auto mass = [&](const std::optional<Mass>& kg, const QString& path) {
        if (kg) {
            const QString text = shown(mass_text(*kg, style_));
            add(rows, in, path, shown(figure_text(bytes(path))), text.section(QLatin1Char(' '), 0, 0),
                text.section(QLatin1Char(' '), 1));
        }
    };
    mass(layer.mass, QStringLiteral("mass_kg"));
    mass(layer.bracket_mass, QStringLiteral("bracket_kg"));
}

void FigureWriter::addMaking(QList<ShownRows::Row>& rows, const Layered& in, const Making& making) const {
    if (making.pleats) {
        addCount(rows, in, QStringLiteral("pleats.each"), making.pleats->each);
        addLength(rows, in, QStringLiteral("pleats.pleat_mm"), making.pleats->pleat);
        addLength(rows, in, QStringLiteral("pleats.space_mm"), making.pleats->space);
    }
    if (making.hooks) {
        addCount(rows, in, QStringLiteral("hooks.each"), making.hooks->each);
    }
    if (making.tie_back && making.tie_back->height) {
        addLength(rows, in, QStringLiteral("tie_back.height_mm"), *making.tie_back->height);
    }
    if (making.tie_back && making.tie_back->length) {
        addLength(rows, in, QStringLiteral("tie_back.length_mm"), *making.tie_back->length);
    }
    if (making.tie_back && making.tie_back->cut_length) {
        addLength(rows, in, QStringLiteral("tie_back.cut_length_mm"), *making.tie_back->cut_length);
    }
}

QList<ShownRows::Row> FigureWriter::figures(const WindowFigures& worked) const {
    QList<ShownRows::Row> rows;
    int number = 0;
    for (const LayerFigures& layer : worked.layers) {
        ++number;
        const Layered in{
            worked.layered ? shown(layer.id) : QString(),
            worked.layered ? figures_words(QT_TRANSLATE_NOOP("figures", "Layer %1")).arg(number) : QString(), &worked};
        if (layer.finished) {
            addCount(rows, in, QStringLiteral("finished.curtains"), layer.finished->curtains);
            addLength(rows, in, QStringLiteral("finished.width_mm"), layer.finished->width, layer.finished->width_u);
            addLength(rows, in, QStringLiteral("finished.drop_mm"), layer.finished->drop, layer.finished->drop_u);
            addDrops(rows, in, *layer.finished);
            addPlanned(rows, in, *layer.finished);
        }
        addRun(rows, in, layer);
        for (const CurtainTop& top : layer.tops) {
            addTop(rows, in, top);
        }
        addCloth(rows, in, layer);
        addParts(rows, in, layer);
    }
    return rows;
}

QList<ShownRows::Row> FigureWriter::sizes(const WindowFigures& worked) const {
    QList<ShownRows::Row> rows;
    const Layered in{{}, {}, &worked};
    for (const Size& size : worked.sizes) {
        const QString path = QStringLiteral("sizes.") + shown(size.name);
        QString label = station_says(window_, size.name);
        if (const QString height = height_says(shown(size.name)); label == shown(size.name) && !height.isEmpty()) {
            label = height;
        }
        if (!size.rests_on.empty()) {
            label =
                figures_words(QT_TRANSLATE_NOOP("figures", "%1, rests on a reading that wasn’t measured")).arg(label);
        }
        if (size.angle) {
            add(rows, in, path, label, shown(write_angle(*size.angle, style_.decimal)), QStringLiteral("°"),
                size.angle_u ? shown("± " + write_angle(Angle::degrees(2.0 * size.angle_u->degrees()), style_.decimal))
                             : QString());
            continue;
        }
        add(rows, in, path, label, shown(written(size.value, style_)), shown(word_of(style_.unit)),
            shown(plus_minus(size.u, style_)));
    }
    return rows;
}

QList<ShownRows::Row> FigureWriter::steps(const WindowFigures& worked, const QString& path) const {
    const auto slash = path.indexOf(QLatin1Char('/'));
    const QString layer = slash < 0 ? QString() : path.left(slash);
    const QString figure = path.mid(slash + 1);
    QList<ShownRows::Row> rows;
    for (const Trace& trace : worked.trace) {
        if (shown(trace.figure) != figure || shown(trace.layer) != layer) {
            continue;
        }
        for (const TraceStep& step : trace.steps) {
            QString value;
            if (step.mm) {
                value = QStringLiteral("%1 %2").arg(shown(written(Length::mm(*step.mm), style_)),
                                                    shown(word_of(style_.unit)));
            } else if (step.count) {
                value = truehang::shown(step.count);
            } else if (step.ratio) {
                value = shown(number_text(*step.ratio, 4, style_));
            }
            const QString what = shown(worded(step.what));
            QStringList from;
            for (const std::string& one : step.from) {
                const QString source = shown(source_in_words(one, window_));
                if (source != what) {  // a step named after its source says it once
                    from.append(source);
                }
            }
            rows.append({static_cast<int>(rows.size()), what, value, from.join(QStringLiteral(", ")),
                         QStringLiteral("%1: %2").arg(what, value)});
        }
    }
    return rows;
}

}  // namespace truehang
