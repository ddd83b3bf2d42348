// SPDX-License-Identifier: Apache-2.0
#include "print.h"

#include "figures/figures.h"
#include "sheet_painter.h"
#include "writing.h"

#include <QBuffer>
#include <QCoreApplication>
#include <QLocale>
#include <QPageLayout>
#include <QPageSize>
#include <QPainter>
#include <QPdfWriter>
#include <algorithm>
#include <iterator>

namespace truehang {

namespace {

constexpr int tenths_a_millimetre = 254;  // dots an inch: 10 are 1 mm

Error unwritten(const QString& file) {
    return {ErrorCode::io, file.toStdString(),
            QCoreApplication::translate("print", "The file can’t be written.").toStdString()};
}

bool has_window(const Survey& survey, const QString& id) {
    return std::ranges::any_of(survey.rooms, [&](const Room& room) {
        return std::ranges::any_of(room.windows, [&](const Window& window) { return shown(window.id) == id; });
    });
}

void prepare(QPdfWriter& pdf, const Survey& survey, Paper paper) {
    pdf.setResolution(tenths_a_millimetre);
    pdf.setPageSize(QPageSize(paper == Paper::letter ? QPageSize::Letter : QPageSize::A4));
    pdf.setPageMargins(QMarginsF(0, 0, 0, 0));
    pdf.setTitle(shown(survey.title));
    pdf.setCreator(QStringLiteral("Truehang"));
}

/// Counts sheets as they are painted, twice each.
class Painted {
public:
    Painted(const LongWork& work, std::size_t sheets) : work_(work), all_(2.0 * static_cast<double>(sheets)) {}

    /// False: leave off before the next one.
    [[nodiscard]] bool goes_on() {
        if (work_.on_progress) {
            work_.on_progress(done_ / all_);
        }
        done_ += 1.0;
        return !stopped();
    }
    [[nodiscard]] bool stopped() const { return work_.stopped && work_.stopped(); }

private:
    const LongWork& work_;
    double all_;
    double done_ = 0.0;
};

/// Paints the sheets, and gives how many pages each took; nothing where the device won't have it, or it was stopped.
/// `pages` is what their feet say, none at the first time through.
std::optional<std::vector<int>> paint_all(QPdfWriter& pdf, const std::vector<Sheet>& sheets, const PrintAsked& asked,
                                          const std::vector<int>& pages, Painted& painted) {
    QPainter painter;
    if (!painter.begin(&pdf)) {
        return std::nullopt;
    }
    painter.setRenderHint(QPainter::Antialiasing);
    SheetPainter setter(painter, *asked.paper, asked.stamp, [&pdf] { pdf.newPage(); });
    std::vector<int> taken;
    for (std::size_t i = 0; i < sheets.size() && painted.goes_on(); ++i) {
        if (i > 0) {
            pdf.newPage();
        }
        taken.push_back(setter.paint(sheets[i], i < pages.size() ? pages[i] : 0));
    }
    return painter.end() && taken.size() == sheets.size() ? std::optional(taken) : std::nullopt;
}

}  // namespace

Paper locale_paper() { return paper_of_locale(QLocale::system().name().toStdString()); }

Result<bool> print_sheets(const Survey& survey, const PrintAsked& given, const QString& file, const LongWork& work) {
    PrintAsked asked = given;
    asked.paper = given.paper.value_or(locale_paper());
    if (!asked.window.isEmpty() && !has_window(survey, asked.window)) {
        return Error{ErrorCode::missing, bytes(asked.window),
                     QCoreApplication::translate("print", "The survey has no window of this id.").toStdString()};
    }
    SheetStyle style = sheet_style_for(survey);
    style.unit = asked.unit.value_or(style.unit);
    style.decimal = decimal_mark();
    const Figures figures = work_out(survey);
    std::vector<Sheet> sheets;
    for (const SheetKind kind : asked.kinds) {
        std::ranges::move(sheets_of(survey, figures, {kind, {}, bytes(asked.window), {}}, style),
                          std::back_inserter(sheets));
    }
    if (sheets.empty()) {
        return Error{
            ErrorCode::missing, bytes(asked.window),
            QCoreApplication::translate("print", "Nothing is worked yet that such a sheet could say.").toStdString()};
    }
    QBuffer scratch;
    scratch.open(QIODevice::WriteOnly);
    QPdfWriter counted(&scratch);
    prepare(counted, survey, *asked.paper);
    Painted painted(work, sheets.size());
    const auto pages = paint_all(counted, sheets, asked, {}, painted);
    QPdfWriter pdf(file);
    prepare(pdf, survey, *asked.paper);
    const bool written = pages && paint_all(pdf, sheets, asked, *pages, painted);
    return written || painted.stopped() ? Result<bool>(written) : Result<bool>(unwritten(file));
}

Result<bool> print_sheet(const Survey& survey, const QString& windowId, const QString& file) {
    return print_sheets(survey, {.window = windowId}, file);
}

}  // namespace truehang
