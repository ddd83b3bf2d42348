// SPDX-License-Identifier: Apache-2.0
#include "figures_model.h"

#include "figure_rows.h"
#include "open_visit.h"
#include "sheet/sheet_head.h"
#include "sheet/words.h"
#include "survey/stations.h"
#include "units/saying.h"
#include "writing.h"

#include <algorithm>

namespace truehang {

FiguresModel::FiguresModel(OpenVisit& open, QObject* parent)
    : QObject(parent),
      open_(open),
      figures_({"path", "label", "figure", "unit", "plusMinus", "layerTitle", "asks", "spoken"}),
      sizes_({"path", "label", "figure", "unit", "plusMinus", "layerTitle", "asks", "spoken"}),
      why_({"step", "what", "figure", "from", "spoken"}),
      flags_({"flag", "code", "severity", "word", "shape", "text", "station", "spoken"}) {
    connect(&open_, &OpenVisit::windowChanged, this, [this] {
        ask({});
        show();
    });
    connect(&open_, &OpenVisit::changed, this, &FiguresModel::show);
    show();
}

QString FiguresModel::windowTitle() const { return open_.titleOf(open_.windowId()); }

QString FiguresModel::summary() const {
    const Window* window = open_.window();
    const SheetStyle style{entry_unit(open_.survey()), decimal_mark()};
    QStringList parts;
    if (window) {
        for (const Layer& layer : window->layers) {
            parts.append(shown(treatment_text(layer, style)));
        }
    }
    return parts.isEmpty() ? tr("Nothing hangs here yet") : parts.join(QLatin1Char('\n'));
}

void FiguresModel::show() {
    next_station_.clear();
    next_says_.clear();
    if (!open_.window()) {
        figures_.setRows({});
        sizes_.setRows({});
        flags_.setRows({});
        showWhy();
        emit changed();
        return;
    }
    const WindowFigures& worked = open_.figuresOf(open_.windowId());
    const FigureWriter writer{open_.survey(), *open_.window()};
    figures_.setRows(writer.figures(worked));
    sizes_.setRows(writer.sizes(worked));
    showFlags(worked);
    std::string next = worked.next ? worked.next->station : std::string();
    if (next.empty() && figures_.rowCount() == 0) {  // nothing hangs here yet: go on with the walk
        const auto station = next_in_walk(*open_.window());
        next = station ? std::string(station->word) : std::string();
    }
    if (!next.empty()) {
        next_station_ = shown(next);
        const auto& readings = open_.window()->readings;
        const bool again = std::ranges::count(readings, next, &Reading::station) > 0;
        next_says_ = (again ? tr("Measure again: %1") : tr("Measure %1"))
                         .arg(within_sentence(station_says(*open_.window(), next)));
    }
    showWhy();
    emit changed();
}

void FiguresModel::showFlags(const WindowFigures& worked) {
    QList<ShownRows::Row> rows;
    const auto add = [&rows](Severity severity, const QString& code, const QString& text, const QString& station) {
        const QString word = shown(worded(flag_word(severity)));
        rows.append({static_cast<int>(rows.size()), code, shown(word_of(severity)), word,
                     shown(word_of(shape_of(severity))), text, station, QStringLiteral("%1. %2").arg(word, text)});
    };
    for (const Severity severity :
         {Severity::stop, Severity::remeasure, Severity::decide, Severity::caution, Severity::note}) {
        for (const Flag& flag : worked.flags) {
            if (flag.severity == severity) {
                add(severity, shown(flag.code), shown(flag.text),
                    flag.stations.empty() ? QString() : shown(flag.stations.front()));
            }
        }
    }
    QStringList said;  // a cloth of two layers is said once
    for (const LayerFigures& layer : worked.layers) {
        for (const SheetMind& mind : one_way_minds(open_.survey(), layer)) {
            if (!said.contains(shown(mind.text))) {
                said.append(shown(mind.text));
                add(mind.severity, shown(mind.code), shown(mind.text), {});
            }
        }
    }
    flags_.setRows(rows);
}

QString FiguresModel::askedLabel() const {
    const int row = figures_.indexOf(asked_);
    return row >= 0 ? figures_.value(row, QStringLiteral("label")).toString()
                    : sizes_.value(sizes_.indexOf(asked_), QStringLiteral("label")).toString();
}

QString FiguresModel::nextStation() const { return next_station_; }
QString FiguresModel::nextSays() const { return next_says_; }

QString FiguresModel::plusMinusSays() const {
    const auto has = [](const ShownRows& rows) {
        for (int row = 0; row < rows.count(); ++row) {
            if (!rows.value(row, QStringLiteral("plusMinus")).toString().isEmpty()) {
                return true;
            }
        }
        return false;
    };
    return has(figures_) || has(sizes_) ? tr("± is twice the standard uncertainty") : QString();
}

void FiguresModel::ask(const QString& path) {
    asked_ = asked_ == path ? QString() : path;
    showWhy();
    emit askedChanged();
}

void FiguresModel::showWhy() {
    QList<ShownRows::Row> rows;
    if (!asked_.isEmpty() && open_.window()) {
        const FigureWriter writer{open_.survey(), *open_.window()};
        rows = writer.steps(open_.figuresOf(open_.windowId()), asked_);
    }
    why_.setRows(rows);
}

}  // namespace truehang
