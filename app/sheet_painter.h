// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "sheet/elevation.h"
#include "sheet/measure_sheet.h"

#include <QColor>
#include <QFont>
#include <QPainter>
#include <QString>
#include <functional>

namespace truehang {

/// Sets one sheet on A4 pages. Units are tenths of a millimetre, 2100 × 2970 a page.
class SheetPainter {
public:
    /// `new_page` ends the page that is painted and begins the next.
    SheetPainter(QPainter& painter, std::function<void()> new_page);

    /// The options with which the sheet's drawing is to be made.
    [[nodiscard]] static ElevationOptions drawingOptions(const Survey& survey);

    void paint(const MeasureSheet& sheet, const Elevation& drawing);

private:
    struct Column {
        double left = 0, right = 0;
    };

    void beginPage();
    void makeRoom(double height);
    double text(const QString& words, double left, double right, const QFont& font, const QColor& colour,
                Qt::Alignment side = Qt::AlignLeft);
    void rule(double left, double right);
    void paintHead(const MeasureSheet& sheet);
    void paintDrawing(const Elevation& drawing, double left, double top);
    void paintBlock(const SheetBlock& block, double left, double right);
    double paintRow(const SheetRow& row, const std::vector<Column>& columns);
    void paintMind(const SheetMind& mind);
    void paintShape(FlagShape shape, double left, double top);
    void paintWorkings(const MeasureSheet& sheet);
    [[nodiscard]] std::vector<Column> columnsOf(const SheetBlock& block, double left, double right) const;
    [[nodiscard]] double heightOf(const QString& words, double width, const QFont& font) const;

    QPainter& painter_;
    std::function<void()> new_page_;
    double y_ = 0;
};

}  // namespace truehang
