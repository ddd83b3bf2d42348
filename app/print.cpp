// SPDX-License-Identifier: Apache-2.0
#include "print.h"

#include "figures/figures.h"
#include "sheet/elevation.h"
#include "sheet/measure_sheet.h"
#include "sheet_painter.h"
#include "writing.h"

#include <QCoreApplication>
#include <QPageLayout>
#include <QPageSize>
#include <QPainter>
#include <QPdfWriter>
#include <algorithm>

namespace truehang {

namespace {

constexpr int tenths_a_millimetre = 254;  // dots an inch: 10 are 1 mm

struct Place {
    const Room* room = nullptr;
    const Window* window = nullptr;
    std::size_t index = 0;
};

Place find_window(const Survey& survey, const QString& id) {
    std::size_t index = 0;
    for (const Room& room : survey.rooms) {
        for (const Window& window : room.windows) {
            if (shown(window.id) == id) {
                return {&room, &window, index};
            }
            ++index;
        }
    }
    return {};
}

Error unwritten(const QString& file) {
    return {ErrorCode::io, file.toStdString(),
            QCoreApplication::translate("print", "The file can't be written.").toStdString()};
}

}  // namespace

Result<Done> print_sheet(const Survey& survey, const QString& windowId, const QString& file) {
    const Place place = find_window(survey, windowId);
    if (!place.window) {
        return Error{ErrorCode::missing, bytes(windowId),
                     QCoreApplication::translate("print", "The survey has no window of this id.").toStdString()};
    }
    const Figures figures = work_out(survey);
    QPdfWriter pdf(file);
    pdf.setResolution(tenths_a_millimetre);
    pdf.setPageSize(QPageSize(QPageSize::A4));
    pdf.setPageMargins(QMarginsF(0, 0, 0, 0));
    pdf.setTitle(shown(survey.title));
    pdf.setCreator(QStringLiteral("Truehang"));
    QPainter painter;
    if (!painter.begin(&pdf)) {
        return unwritten(file);
    }
    painter.setRenderHint(QPainter::Antialiasing);
    SheetPainter sheets(painter, [&pdf] { pdf.newPage(); });
    const SheetStyle style{LengthUnit::mm, decimal_mark()};
    const Elevation drawing = elevation_of(survey, *place.room, *place.window, figures.windows[place.index],
                                           SheetPainter::drawingOptions(survey));
    const std::size_t layers = std::max<std::size_t>(1, figures.windows[place.index].layers.size());
    for (std::size_t layer = 0; layer < layers; ++layer) {
        if (layer > 0) {
            pdf.newPage();
        }
        sheets.paint(measure_sheet(survey, figures, place.index, layer, style), drawing);
    }
    return painter.end() ? Result<Done>(Done{}) : Result<Done>(unwritten(file));
}

}  // namespace truehang
