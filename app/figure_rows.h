// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "figures/figures.h"
#include "sheet/words.h"
#include "shown_rows.h"
#include "survey/survey.h"

#include <QString>

namespace truehang {

/// What a station of this window is called; its word where the shape has none of that name.
[[nodiscard]] QString station_says(const Window& window, std::string_view station);

/// Writes one window's figures as rows: `path`, `label`, `figure`, `unit`, `plusMinus`, `layerTitle`, `asks`, `spoken`.
/// A path is the figure's place in the figures document, with its layer's id and a slash before it where the window is
/// layered.
class FigureWriter {
public:
    FigureWriter(const Survey& survey, const Window& window);

    [[nodiscard]] QList<ShownRows::Row> figures(const WindowFigures& worked) const;
    [[nodiscard]] QList<ShownRows::Row> sizes(const WindowFigures& worked) const;
    /// How the figure at `path` came about: `step`, `what`, `figure`, `from`, `spoken`.
    [[nodiscard]] QList<ShownRows::Row> steps(const WindowFigures& worked, const QString& path) const;

private:
    struct Layered {
        QString id;
        QString title;
        const WindowFigures* worked = nullptr;
    };

    void add(QList<ShownRows::Row>& rows, const Layered& in, const QString& path, const QString& label,
             const QString& figure, const QString& unit, const QString& plus_minus = {}) const;
    void addLength(QList<ShownRows::Row>& rows, const Layered& in, const QString& path, Length length,
                   Length u = Length()) const;
    void addCount(QList<ShownRows::Row>& rows, const Layered& in, const QString& path, int count) const;
    void addDrops(QList<ShownRows::Row>& rows, const Layered& in, const Finished& finished) const;
    void addPlanned(QList<ShownRows::Row>& rows, const Layered& in, const Finished& finished) const;
    void addRun(QList<ShownRows::Row>& rows, const Layered& in, const LayerFigures& layer) const;
    void addTop(QList<ShownRows::Row>& rows, const Layered& in, const CurtainTop& top) const;
    void addCloth(QList<ShownRows::Row>& rows, const Layered& in, const LayerFigures& layer) const;
    void addMaking(QList<ShownRows::Row>& rows, const Layered& in, const Making& making) const;
    void addParts(QList<ShownRows::Row>& rows, const Layered& in, const LayerFigures& layer) const;
    [[nodiscard]] QString clothName(const std::string& id) const;

    const Survey& survey_;
    const Window& window_;
    SheetStyle style_;
};

}  // namespace truehang
