// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "sheet/paper.h"
#include "sheet/sheet.h"
#include "sheet/stamp.h"

#include <QColor>
#include <QFont>
#include <QPainter>
#include <QString>
#include <functional>
#include <optional>
#include <span>

namespace truehang {

/// Sets sheets on pages of A4 or US Letter. Units are tenths of a millimetre.
class SheetPainter {
public:
    /// `stamp` stands at the head of each sheet; `new_page` ends the page that is painted and begins the next.
    SheetPainter(QPainter& painter, Paper paper, std::optional<SheetStamp> stamp, std::function<void()> new_page);

    /// Paints a sheet from the top of the page that is begun, and says how many pages it took. `pages` is how many its
    /// foot says there are.
    int paint(const Sheet& sheet, int pages);

private:
    struct Column {
        double left = 0, right = 0;
    };

    void beginPage();
    void paintFoot();
    void makeRoom(double height);
    double text(const QString& words, double left, double right, const QFont& font, const QColor& colour,
                Qt::Alignment side = Qt::AlignLeft);
    void rule(double left, double right);
    void paintHead();
    double paintStamp(double top);
    void paintProvisional();
    std::size_t paintDrawing(const SheetDrawing& drawing, std::size_t at);
    void paintElevation(const Elevation& drawing, double left, double top);
    void paintPart(const SheetBlock& block) { paintBlock(block, text_left_, text_right_); }
    void paintPart(const SheetDrawing&) {}  // painted with what stands beside it
    void paintPart(const SheetMinds& minds);
    void paintPart(const SheetWords& words);
    void paintPart(const SheetWorkings& workings);
    void paintBlock(const SheetBlock& block, double left, double right);
    void paintColumns(const SheetBlock& block, const std::vector<Column>& columns);
    void paintRun(const SheetBlock& block, double left, double right);
    double paintRow(const SheetRow& row, const std::vector<Column>& columns);
    void paintMind(const SheetMind& mind);
    void paintShape(FlagShape shape, double left, double top);
    void paintTitle(const QString& title, double room);
    [[nodiscard]] double rowHeight(const SheetRow& row, const std::vector<Column>& columns) const;
    [[nodiscard]] std::vector<Column> columnsOf(const SheetBlock& block, double left, double right) const;
    [[nodiscard]] double heightOf(const QString& words, double width, const QFont& font) const;

    QPainter& painter_;
    std::optional<SheetStamp> stamp_;
    std::function<void()> new_page_;
    double text_left_, text_right_, page_bottom_, page_height_;
    const Sheet* sheet_ = nullptr;
    int page_ = 0;
    int pages_ = 0;
    double y_ = 0;
};

}  // namespace truehang
