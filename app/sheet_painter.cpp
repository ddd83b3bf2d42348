// SPDX-License-Identifier: Apache-2.0
#include "sheet_painter.h"

#include "writing.h"

#include <QFontMetricsF>
#include <QPainterPath>
#include <QPolygonF>
#include <algorithm>

namespace truehang {

namespace {

constexpr double page_bottom = 2860;
constexpr double page_top = 120;
constexpr double text_left = 175;
constexpr double text_right = 1975;
constexpr double thread_at = 95;
constexpr double drawing_width = 970;
constexpr double drawing_height = 860;
constexpr double side_left = 1225;

// The light look: paper is white, so that ink is saved.
const QColor ink(0x17, 0x24, 0x2d);
const QColor soft(0x4d, 0x5b, 0x64);
const QColor thread(0x9b, 0x20, 0x38);
const QColor hair(0xc6, 0xd0, 0xd6);
const QColor wash(0xec, 0xee, 0xe8);

QFont face(const char* family, int tenths, bool bold = false) {
    QFont font{QString::fromLatin1(family)};
    font.setPixelSize(tenths);
    font.setBold(bold);
    font.setHintingPreference(QFont::PreferNoHinting);
    font.setStyleStrategy(QFont::PreferOutline);
    font.setLetterSpacing(QFont::AbsoluteSpacing, 0.02);  // any spacing sets no ligatures: the text reads back whole
    return font;
}

QFont body() { return face("Lato", 36); }
QFont bold_body() { return face("Lato", 36, true); }
QFont figure() { return face("Lato", 44); }
QFont title() { return face("Gentium Plus", 76); }
QFont block_title() { return face("Gentium Plus", 50); }

QColor colour_of(Role role) {
    switch (role) {
        case Role::ink:
            return ink;
        case Role::thread:
            return thread;
        case Role::wash:
            return wash;
        case Role::paper:
            return Qt::white;
        default:
            return soft;
    }
}

double text_width(std::string_view text, double size, bool bold) {
    return QFontMetricsF(face("Lato", static_cast<int>(size), bold)).horizontalAdvance(shown(text));
}

void paint_stroke(QPainter& painter, const Stroke& stroke) {
    const bool ground = stroke.role == Role::wash || stroke.role == Role::paper;
    QPen pen(colour_of(stroke.role), stroke.width, Qt::SolidLine, Qt::FlatCap, Qt::MiterJoin);
    if (stroke.role == Role::guess) {
        pen.setDashPattern({4, 3});
    } else if (stroke.role == Role::guide) {
        pen.setDashPattern({1, 3});
    }
    painter.setPen(stroke.width > 0 && !ground ? pen : QPen(Qt::NoPen));
    painter.setBrush(stroke.filled || ground ? QBrush(colour_of(stroke.role)) : QBrush(Qt::NoBrush));
    QPolygonF points;
    for (const Point point : stroke.points) {
        points << QPointF(point.x, point.y);
    }
    if (stroke.form == Form::circle && !points.isEmpty()) {
        painter.drawEllipse(points.front(), stroke.radius, stroke.radius);
    } else if (stroke.form == Form::polygon) {
        painter.drawPolygon(points);
    } else {
        painter.drawPolyline(points);
    }
}

void paint_label(QPainter& painter, const Label& label) {
    const QFont font = face("Lato", static_cast<int>(label.size), label.bold);
    QPainterPath halo;
    halo.addText(QPointF(label.at.x, label.at.y), font, shown(label.text));
    painter.strokePath(halo, QPen(Qt::white, 13, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
    painter.setFont(font);
    painter.setPen(colour_of(label.role));
    painter.drawText(QPointF(label.at.x, label.at.y), shown(label.text));
}

}  // namespace

SheetPainter::SheetPainter(QPainter& painter, std::function<void()> new_page)
    : painter_(painter), new_page_(std::move(new_page)) {}

ElevationOptions SheetPainter::drawingOptions(const Survey& survey) {
    ElevationOptions options = elevation_options_for(survey);
    options.width = drawing_width;
    options.height = drawing_height;
    options.pixel = 254.0 / 96.0;
    options.label_size = 13;
    options.active_size = 13;
    options.drawn = Drawn::back;
    options.length_style.decimal = decimal_mark();
    options.text_width = text_width;
    return options;
}

void SheetPainter::paint(const MeasureSheet& sheet, const Elevation& drawing) {
    beginPage();
    paintHead(sheet);
    const double top = y_;
    paintDrawing(drawing, text_left, top);
    std::size_t next = 0;
    while (next < sheet.blocks.size() && (sheet.blocks[next].key == "finished" || sheet.blocks[next].key == "hang")) {
        paintBlock(sheet.blocks[next], side_left, text_right);
        ++next;
    }
    y_ = std::max(y_, top + drawing_height) + 30;
    for (; next < sheet.blocks.size(); ++next) {
        paintBlock(sheet.blocks[next], text_left, text_right);
    }
    if (!sheet.mind.empty()) {
        makeRoom(200);
        y_ += text(QObject::tr("Mind"), text_left, text_right, block_title(), ink) + 10;
        for (const SheetMind& mind : sheet.mind) {
            paintMind(mind);
        }
    }
    paintWorkings(sheet);
}

void SheetPainter::beginPage() {
    y_ = page_top;
    painter_.setPen(QPen(thread, 11, Qt::SolidLine, Qt::FlatCap));
    for (double stitch = page_top - 30; stitch < page_bottom; stitch += 82) {
        painter_.drawLine(QPointF(thread_at, stitch), QPointF(thread_at, stitch + 32));
    }
}

void SheetPainter::makeRoom(double height) {
    if (y_ + height > page_bottom) {
        new_page_();
        beginPage();
    }
}

double SheetPainter::heightOf(const QString& words, double width, const QFont& font) const {
    return QFontMetricsF(font)
        .boundingRect(QRectF(0, 0, width, 10'000), static_cast<int>(Qt::TextWordWrap), words)
        .height();
}

double SheetPainter::text(const QString& words, double left, double right, const QFont& font, const QColor& colour,
                          Qt::Alignment side) {
    const double height = heightOf(words, right - left, font);
    painter_.setFont(font);
    painter_.setPen(colour);
    painter_.drawText(QRectF(left, y_, right - left, height + 4), static_cast<int>(side) | Qt::TextWordWrap, words);
    return height;
}

void SheetPainter::rule(double left, double right) {
    painter_.setPen(QPen(hair, 3));
    painter_.drawLine(QPointF(left, y_), QPointF(right, y_));
}

void SheetPainter::paintHead(const MeasureSheet& sheet) {
    const double corner = QFontMetricsF(body()).horizontalAdvance(shown(sheet.corner)) + 10;
    const double corner_left = text_right - std::min(corner, 700.0);
    const double lower = QFontMetricsF(title()).ascent() - QFontMetricsF(body()).ascent();
    y_ += lower;
    text(shown(sheet.corner), corner_left, text_right, body(), ink, Qt::AlignRight);
    y_ -= lower;
    y_ += text(shown(sheet.title), text_left, corner_left - 20, title(), ink) + 12;
    for (const auto& line : sheet.heading) {
        y_ += text(shown(line), text_left, text_right, body(), ink) + 4;
    }
    for (const std::string& line : {sheet.description, sheet.notes}) {
        if (!line.empty()) {
            y_ += text(shown(line), text_left, text_right, body(), ink) + 4;
        }
    }
    if (!sheet.provisional_text.empty()) {
        y_ += text(shown(sheet.provisional_text), text_left, text_right, bold_body(), ink) + 4;
    }
    y_ += 26;
}

void SheetPainter::paintDrawing(const Elevation& drawing, double left, double top) {
    painter_.save();
    painter_.translate(left, top);
    for (const Stroke& stroke : drawing.strokes) {
        paint_stroke(painter_, stroke);
    }
    for (const Label& label : drawing.labels) {
        paint_label(painter_, label);
    }
    painter_.restore();
}

std::vector<SheetPainter::Column> SheetPainter::columnsOf(const SheetBlock& block, double left, double right) const {
    std::size_t count = block.columns.size();
    for (const SheetRow& row : block.rows) {
        count = std::max(count, row.cells.size());
    }
    std::vector<double> wanted(count, 0);
    for (const SheetRow& row : block.rows) {
        for (std::size_t at = 0; at < row.cells.size(); ++at) {
            const SheetCell& cell = row.cells[at];
            wanted[at] = std::max(
                wanted[at], QFontMetricsF(cell.number ? figure() : body()).horizontalAdvance(shown(cell.text)) + 12);
        }
    }
    for (std::size_t at = 0; at < block.columns.size(); ++at) {
        wanted[at] = std::max(wanted[at], QFontMetricsF(body()).horizontalAdvance(shown(block.columns[at])) + 12);
    }
    const bool ends_in_numbers = count > 0 && std::ranges::all_of(block.rows, [&](const SheetRow& row) {
                                     return row.cells.size() < count || row.cells.back().number;
                                 });
    std::vector<Column> columns;
    double at = left;
    for (std::size_t number = 0; number < count; ++number) {
        const bool last = number + 1 == count && !ends_in_numbers;
        const double most = last ? right - at : std::min(wanted[number], 0.45 * (right - left));
        columns.push_back({at, std::min(at + most, right)});
        at += most + 30;
    }
    return columns;
}

void SheetPainter::paintBlock(const SheetBlock& block, double left, double right) {
    makeRoom(220);
    y_ += text(shown(block.title), left, right, block_title(), ink) + 8;
    const auto columns = columnsOf(block, left, right);
    if (!block.columns.empty()) {
        rule(left, right);
        y_ += 10;
        double height = 0;
        for (std::size_t at = 0; at < block.columns.size() && at < columns.size(); ++at) {
            const bool over_numbers =
                at > 0 && !block.rows.empty() && at < block.rows[0].cells.size() && block.rows[0].cells[at].number;
            height = std::max(height, text(shown(block.columns[at]), columns[at].left, columns[at].right, body(), soft,
                                           over_numbers ? Qt::AlignRight : Qt::AlignLeft));
        }
        y_ += height + 8;
    }
    for (const SheetRow& row : block.rows) {
        makeRoom(90);
        rule(left, right);
        y_ += 10;
        y_ += paintRow(row, columns) + 8;
    }
    y_ += 26;
}

double SheetPainter::paintRow(const SheetRow& row, const std::vector<Column>& columns) {
    const bool has_number = std::ranges::any_of(row.cells, &SheetCell::number);
    // Words stand on the figures' line.
    const double lower = has_number ? QFontMetricsF(figure()).ascent() - QFontMetricsF(body()).ascent() : 0;
    const double top = y_;
    double height = 0;
    for (std::size_t at = 0; at < row.cells.size() && at < columns.size(); ++at) {
        const SheetCell& cell = row.cells[at];
        const bool to_the_right = cell.number && at > 0;
        y_ = cell.number ? top : top + lower;
        const double taken = text(shown(cell.text), columns[at].left, columns[at].right,
                                  cell.number ? figure() : body(), ink, to_the_right ? Qt::AlignRight : Qt::AlignLeft);
        height = std::max(height, taken + (cell.number ? 0 : lower));
    }
    y_ = top;
    return height;
}

void SheetPainter::paintMind(const SheetMind& mind) {
    const QString words = QStringLiteral("%1. %2").arg(shown(mind.word), shown(mind.text));
    const double left = text_left + 70;
    makeRoom(heightOf(words, text_right - left, body()) + 20);
    paintShape(mind.shape, text_left + 4, y_ + 4);
    const QString word = shown(mind.word) + QLatin1Char('.');
    painter_.setFont(bold_body());
    painter_.setPen(ink);
    painter_.drawText(QPointF(left, y_ + QFontMetricsF(bold_body()).ascent()), word);
    const double indent = QFontMetricsF(bold_body()).horizontalAdvance(word + QLatin1Char(' '));
    y_ += text(shown(mind.text), left + indent, text_right, body(), ink) + 14;
}

void SheetPainter::paintShape(FlagShape shape, double left, double top) {
    const QRectF box(left, top, 38, 38);
    painter_.setPen(QPen(ink, 5));
    painter_.setBrush(Qt::NoBrush);
    switch (shape) {
        case FlagShape::triangle:
            painter_.drawPolygon(QPolygonF({{box.center().x(), box.top()}, box.bottomRight(), box.bottomLeft()}));
            break;
        case FlagShape::circle:
            painter_.drawEllipse(box);
            break;
        case FlagShape::square:
            painter_.drawRect(box);
            break;
        case FlagShape::broken_circle:
            painter_.drawArc(box, 20 * 16, 120 * 16);
            painter_.drawArc(box, 200 * 16, 120 * 16);
            break;
        case FlagShape::bar:
            painter_.fillRect(QRectF(box.left(), box.center().y() - 7, box.width(), 14), ink);
            break;
    }
}

void SheetPainter::paintWorkings(const MeasureSheet& sheet) {
    if (sheet.workings.empty()) {
        return;
    }
    makeRoom(300);
    y_ += 20;
    y_ += text(QObject::tr("How it was worked out"), text_left, text_right, block_title(), ink) + 8;
    for (const SheetWorking& working : sheet.workings) {
        QStringList steps;
        for (const auto& step : working.steps) {
            steps.append(shown(step));
        }
        const QString words = steps.join(QStringLiteral("; "));
        const double left = text_left + 470;
        makeRoom(heightOf(words, text_right - left, body()) + 24);
        rule(text_left, text_right);
        y_ += 8;
        const double name = text(shown(working.title), text_left, left - 20, body(), ink);
        y_ += std::max(name, text(words, left, text_right, body(), ink)) + 8;
    }
}

}  // namespace truehang
