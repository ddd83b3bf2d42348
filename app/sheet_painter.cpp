// SPDX-License-Identifier: Apache-2.0
#include "sheet_painter.h"

#include "sheet/cloth_colour.h"
#include "writing.h"

#include <QFontMetricsF>
#include <QPainterPath>
#include <QPolygonF>
#include <algorithm>
#include <qrcodegen/QrCode.hpp>

namespace truehang {

namespace {

constexpr double page_top = 120;
constexpr double left_margin = 175;
constexpr double right_margin = 125;
constexpr double foot_height = 130;
constexpr double thread_at = 95;
constexpr double beside_gap = 80;
constexpr double column_gap = 30;
constexpr double stamp_width = 640;
constexpr double picture_code_side = 200;  // 20 mm: modules of half a millimetre
constexpr double a_millimetre = 10;        // of what a drawing is in

struct PageSize {
    double width, height;
};
PageSize size_of(Paper paper) { return paper == Paper::letter ? PageSize{2159, 2794} : PageSize{2100, 2970}; }

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
QFont foot() { return face("Lato", 31); }
QFont loud() { return face("Lato", 50, true); }
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

/// One row of nothing but numbers, set as a line of text: the centres of tabs.
bool is_run(const SheetBlock& block) {
    return block.rows.size() == 1 && block.columns.empty() &&
           std::ranges::all_of(block.rows[0].cells, &SheetCell::number);
}

void paint_stroke(QPainter& painter, const Stroke& stroke) {
    const bool ground = stroke.role == Role::wash || stroke.role == Role::paper;
    const QColor line = stroke.over.empty() ? colour_of(stroke.role)
                                            : QColor(shown(line_over(stroke.over, stroke.role, ink.name().toStdString(),
                                                                     QColor(Qt::white).name().toStdString())));
    const QColor fill = stroke.fill.empty() ? line : QColor(shown(stroke.fill));
    QPen pen(line, a_millimetre * stroke.width, Qt::SolidLine, Qt::FlatCap, Qt::MiterJoin);
    if (stroke.role == Role::guess) {
        pen.setDashPattern({4, 3});
    } else if (stroke.role == Role::guide) {
        pen.setDashPattern({1, 3});
    }
    painter.setPen(stroke.width > 0 && !ground ? pen : QPen(Qt::NoPen));
    painter.setBrush(stroke.filled || ground ? QBrush(fill) : QBrush(Qt::NoBrush));
    QPolygonF points;
    for (const Point point : stroke.points) {
        points << a_millimetre * QPointF(point.x, point.y);
    }
    if (stroke.form == Form::circle && !points.isEmpty()) {
        painter.drawEllipse(points.front(), a_millimetre * stroke.radius, a_millimetre * stroke.radius);
    } else if (stroke.form == Form::polygon) {
        painter.drawPolygon(points);
    } else {
        painter.drawPolyline(points);
    }
}

void paint_label(QPainter& painter, const Label& label) {
    const QFont font = face("Lato", static_cast<int>(a_millimetre * label.size), label.bold);
    const QPointF at = a_millimetre * QPointF(label.at.x, label.at.y);
    QPainterPath halo;
    halo.addText(at, font, shown(label.text));
    painter.strokePath(halo, QPen(Qt::white, 13, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
    painter.setFont(font);
    painter.setPen(colour_of(label.role));
    painter.drawText(at, shown(label.text));
}

/// An address that may be broken after each of its parts, and nowhere else.
QString breakable(QString address) {
    return address.replace(QLatin1Char('/'), QStringLiteral("/\u200b"))
        .replace(QLatin1Char('-'), QStringLiteral("-\u2060"));
}

/// A text as a QR code (ISO/IEC 18004, error correction M), the light edge that it needs within the box.
void paint_picture_code(QPainter& painter, const std::string& words, const QRectF& box) {
    constexpr int quiet_zone = 4;
    const auto code = qrcodegen::QrCode::encodeText(words.c_str(), qrcodegen::QrCode::Ecc::MEDIUM);
    const double module = box.width() / (code.getSize() + 2 * quiet_zone);
    QPainterPath dark;
    for (int y = 0; y < code.getSize(); ++y) {
        for (int x = 0; x < code.getSize(); ++x) {
            if (code.getModule(x, y)) {
                dark.addRect(box.left() + module * (x + quiet_zone), box.top() + module * (y + quiet_zone), module,
                             module);
            }
        }
    }
    painter.fillPath(dark, Qt::black);
}

}  // namespace

SheetPainter::SheetPainter(QPainter& painter, Paper paper, std::optional<SheetStamp> stamp,
                           std::function<void()> new_page)
    : painter_(painter),
      stamp_(std::move(stamp)),
      new_page_(std::move(new_page)),
      text_left_(left_margin),
      text_right_(size_of(paper).width - right_margin),
      page_bottom_(size_of(paper).height - foot_height),
      page_height_(size_of(paper).height) {}

int SheetPainter::paint(const Sheet& sheet, int pages) {
    sheet_ = &sheet;
    page_ = 0;
    pages_ = pages;
    beginPage();
    paintHead();
    for (std::size_t at = 0; at < sheet.parts.size(); ++at) {
        if (const auto* drawing = std::get_if<SheetDrawing>(&sheet.parts[at])) {
            at = paintDrawing(*drawing, at);
        } else {
            std::visit([this](const auto& part) { paintPart(part); }, sheet.parts[at]);
        }
    }
    return page_;
}

void SheetPainter::beginPage() {
    ++page_;
    y_ = page_top;
    painter_.setPen(QPen(thread, 11, Qt::SolidLine, Qt::FlatCap));
    for (double stitch = page_top - 30; stitch < page_bottom_; stitch += 82) {
        painter_.drawLine(QPointF(thread_at, stitch), QPointF(thread_at, stitch + 32));
    }
    paintFoot();
    if (page_ > 1) {
        y_ += text(QObject::tr("%1: %2, continued").arg(shown(title_of(sheet_->kind)), shown(sheet_->title)),
                   text_left_, text_right_, bold_body(), ink) +
              20;
    }
}

void SheetPainter::paintFoot() {
    const double top = y_;
    y_ = page_height_ - foot_height + 40;
    const QString page = pages_ > 0 ? QObject::tr("page %1 of %2").arg(page_).arg(pages_) : QString();
    text(page, text_right_ - 400, text_right_, foot(), ink, Qt::AlignRight);
    const QString whose =
        QStringLiteral("%1: %2. %3").arg(shown(title_of(sheet_->kind)), shown(sheet_->title), shown(sheet_->corner));
    painter_.drawText(QPointF(text_left_, y_ + QFontMetricsF(foot()).ascent()),
                      QFontMetricsF(foot()).elidedText(whose, Qt::ElideRight, text_right_ - text_left_ - 420));
    y_ = top;
}

void SheetPainter::makeRoom(double height) {
    if (y_ + height > page_bottom_) {
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

void SheetPainter::paintHead() {
    const QString corner = shown(title_of(sheet_->kind)) + QLatin1Char('\n') + shown(sheet_->corner);
    const double wide = std::max(QFontMetricsF(body()).horizontalAdvance(shown(title_of(sheet_->kind))),
                                 QFontMetricsF(body()).horizontalAdvance(shown(sheet_->corner)));
    const double corner_left = text_right_ - std::min(wide + 10, 700.0);
    const double top = y_;
    const double lower = QFontMetricsF(title()).ascent() - QFontMetricsF(body()).ascent();
    y_ += lower;
    const double corner_height = lower + text(corner, corner_left, text_right_, body(), ink, Qt::AlignRight);
    y_ = top;
    y_ += std::max(text(shown(sheet_->title), text_left_, corner_left - 20, title(), ink), corner_height) + 12;
    const double stamp_bottom = paintStamp(y_);
    const double right = stamp_ ? text_right_ - stamp_width - column_gap : text_right_;
    for (const auto& line : sheet_->heading) {
        y_ += text(shown(line), text_left_, right, body(), ink) + 4;
    }
    y_ = std::max(y_, stamp_bottom);
    paintProvisional();
    for (const SheetMind& mind : sheet_->first) {
        y_ += 10;
        paintMind(mind);
    }
    y_ += 26;
}

/// At the right, from `top` down, beside the heading; where it ends.
double SheetPainter::paintStamp(double top) {
    if (!stamp_) {
        return top;
    }
    const double before = std::exchange(y_, top);
    const double left = text_right_ - stamp_width;
    double right = text_right_;
    double bottom = top;
    if (!stamp_->address.empty()) {
        const QRectF picture(text_right_ - picture_code_side, top, picture_code_side, picture_code_side);
        paint_picture_code(painter_, stamp_->address, picture);
        right = picture.left() - 10;
        bottom = picture.bottom();
    }
    QStringList lines{shown(which_revision(*stamp_))};
    if (!stamp_->code.empty()) {
        lines.prepend(QObject::tr("Sheet %1").arg(shown(stamp_->code)));
    }
    if (!stamp_->address.empty()) {
        lines.append(QObject::tr("Current? %1").arg(breakable(shown(stamp_->address))));
    }
    y_ += text(lines.join(QLatin1Char('\n')), left, right, foot(), soft, Qt::AlignRight);
    return std::max(bottom, std::exchange(y_, before));
}

/// Between two heavy bars, so that nobody cuts before reading it.
void SheetPainter::paintProvisional() {
    if (sheet_->provisional.empty()) {
        return;
    }
    const auto bar = [this] {
        painter_.fillRect(QRectF(text_left_, y_, text_right_ - text_left_, 14), ink);
        y_ += 14;
    };
    y_ += 16;
    bar();
    y_ += 10;
    y_ += text(shown(sheet_->provisional), text_left_, text_right_, loud(), ink) + 10;
    bar();
    y_ += 6;
}

/// A drawing and the blocks beside it; the index of the last part that was painted.
std::size_t SheetPainter::paintDrawing(const SheetDrawing& drawing, std::size_t at) {
    const double height = a_millimetre * drawing.drawing.height;
    makeRoom(height + (drawing.title.empty() ? 0 : 100));
    if (!drawing.title.empty()) {
        y_ += text(shown(drawing.title), text_left_, text_right_, block_title(), ink) + 10;
    }
    const double top = y_;
    paintElevation(drawing.drawing, text_left_, top);
    const double left = text_left_ + a_millimetre * drawing.drawing.width + beside_gap;
    for (; at + 1 < sheet_->parts.size(); ++at) {
        const auto* block = std::get_if<SheetBlock>(&sheet_->parts[at + 1]);
        if (!block || !block->beside) {
            break;
        }
        paintBlock(*block, left, text_right_);
    }
    y_ = std::max(y_, top + height) + 26;
    return at;
}

void SheetPainter::paintElevation(const Elevation& drawing, double left, double top) {
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
    std::vector<bool> words(count, true);
    for (std::size_t at = 0; at < block.columns.size(); ++at) {
        wanted[at] = QFontMetricsF(body()).horizontalAdvance(shown(block.columns[at])) + 12;
    }
    for (const SheetRow& row : block.rows) {
        for (std::size_t at = 0; at < row.cells.size(); ++at) {
            const SheetCell& cell = row.cells[at];
            const QFont font = cell.number ? figure() : body();
            wanted[at] = std::max(wanted[at], QFontMetricsF(font).horizontalAdvance(shown(cell.text)) + 12);
            words[at] = words[at] && !cell.number;
        }
    }
    double room = right - left - column_gap * (static_cast<double>(count) - 1);
    double later = 0;  // what the words want that have no room yet
    int sharing = 0;
    for (std::size_t at = 0; at < count; ++at) {
        room -= words[at] ? 0 : wanted[at];
        sharing += words[at] ? 1 : 0;
        later += words[at] ? wanted[at] : 0;
    }
    std::vector<Column> columns;  // numbers never wrap; words share what is left, the last all that remains
    double from = left;
    for (std::size_t at = 0; at < count; ++at) {
        double taken = wanted[at];
        if (words[at]) {
            later -= wanted[at];
            taken = sharing == 1 ? room : std::min(wanted[at], std::max(room / sharing, room - later));
            room -= taken;
            --sharing;
        }
        columns.push_back({from, from + taken});
        from += taken + column_gap;
    }
    return columns;
}

void SheetPainter::paintTitle(const QString& words, double room) {
    makeRoom(room);
    y_ += text(words, text_left_, text_right_, block_title(), ink) + 8;
}

void SheetPainter::paintBlock(const SheetBlock& block, double left, double right) {
    const auto columns = columnsOf(block, left, right);
    // A short table stays whole; a long one begins with its head and two rows.
    double height = block.columns.empty() ? 90 : 160;
    for (std::size_t i = 0; i < block.rows.size() && (block.rows.size() <= 8 || i < 2); ++i) {
        height += rowHeight(block.rows[i], columns) + 18;
    }
    if (!block.beside) {
        makeRoom(height);
    }
    y_ += text(shown(block.title), left, right, block_title(), ink) + 8;
    if (is_run(block)) {
        paintRun(block, left, right);
        return;
    }
    paintColumns(block, columns);
    for (const SheetRow& row : block.rows) {
        if (y_ + rowHeight(row, columns) + 18 > page_bottom_) {
            new_page_();
            beginPage();
            paintColumns(block, columns);
        }
        rule(left, right);
        y_ += 10;
        y_ += paintRow(row, columns) + 8;
    }
    if (!block.note.empty()) {
        makeRoom(heightOf(shown(block.note), right - left, body()));
        y_ += text(shown(block.note), left, right, body(), soft) + 4;
    }
    y_ += 26;
}

void SheetPainter::paintColumns(const SheetBlock& block, const std::vector<Column>& columns) {
    if (block.columns.empty() || columns.empty()) {
        return;
    }
    rule(columns.front().left, columns.back().right);
    y_ += 10;
    double height = 0;
    for (std::size_t at = 0; at < block.columns.size() && at < columns.size(); ++at) {
        const bool over_numbers = at > 0 && std::ranges::any_of(block.rows, [at](const SheetRow& row) {
                                      return at < row.cells.size() && row.cells[at].number;
                                  });
        height = std::max(height, text(shown(block.columns[at]), columns[at].left, columns[at].right, body(), soft,
                                       over_numbers ? Qt::AlignRight : Qt::AlignLeft));
    }
    y_ += height + 8;
}

/// Numbers in a line, as many as fit, and the note after the last.
void SheetPainter::paintRun(const SheetBlock& block, double left, double right) {
    const QFontMetricsF metrics(figure());
    double x = left;
    const auto next = [&](double wide) {
        if (x + wide > right) {
            x = left;
            y_ += metrics.height() + 6;
        }
    };
    painter_.setPen(ink);
    for (const SheetCell& cell : block.rows.front().cells) {
        const double wide = metrics.horizontalAdvance(shown(cell.text));
        next(wide);
        painter_.setFont(figure());
        painter_.drawText(QPointF(x, y_ + metrics.ascent()), shown(cell.text));
        x += wide + 45;
    }
    next(QFontMetricsF(body()).horizontalAdvance(shown(block.note)));
    painter_.setFont(body());
    painter_.setPen(soft);
    painter_.drawText(QPointF(x, y_ + metrics.ascent()), shown(block.note));
    y_ += metrics.height() + 32;
}

double SheetPainter::rowHeight(const SheetRow& row, const std::vector<Column>& columns) const {
    double height = 0;
    for (std::size_t at = 0; at < row.cells.size() && at < columns.size(); ++at) {
        const SheetCell& cell = row.cells[at];
        const double lower = cell.number ? 0 : QFontMetricsF(figure()).ascent() - QFontMetricsF(body()).ascent();
        height = std::max(height, lower + heightOf(shown(cell.text), columns[at].right - columns[at].left,
                                                   cell.number ? figure() : body()));
    }
    return height;
}

double SheetPainter::paintRow(const SheetRow& row, const std::vector<Column>& columns) {
    const bool has_number = std::ranges::any_of(row.cells, &SheetCell::number);
    // Words stand on the figures' line.
    const double lower = has_number ? QFontMetricsF(figure()).ascent() - QFontMetricsF(body()).ascent() : 0;
    const double top = y_;
    double height = QFontMetricsF(body()).height();
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

void SheetPainter::paintPart(const SheetMinds& minds) {
    paintTitle(shown(minds.title), 200);
    for (const SheetMind& mind : minds.minds) {
        paintMind(mind);
    }
    y_ += 16;
}

void SheetPainter::paintPart(const SheetWords& words) {
    if (!words.title.empty()) {
        paintTitle(shown(words.title), 160);
    }
    for (const std::string& line : words.lines) {
        makeRoom(heightOf(shown(line), text_right_ - text_left_, body()));
        y_ += text(shown(line), text_left_, text_right_, body(), ink) + 8;
    }
    y_ += 20;
}

void SheetPainter::paintMind(const SheetMind& mind) {
    const QString words = QStringLiteral("%1. %2").arg(shown(mind.word), shown(mind.text));
    const double left = text_left_ + 70;
    makeRoom(heightOf(words, text_right_ - left, body()) + 20);
    paintShape(mind.shape, text_left_ + 4, y_ + 4);
    const QString word = shown(mind.word) + QLatin1Char('.');
    painter_.setFont(bold_body());
    painter_.setPen(ink);
    painter_.drawText(QPointF(left, y_ + QFontMetricsF(bold_body()).ascent()), word);
    const double indent = QFontMetricsF(bold_body()).horizontalAdvance(word + QLatin1Char(' '));
    y_ += text(shown(mind.text), left + indent, text_right_, body(), ink) + 14;
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

void SheetPainter::paintPart(const SheetWorkings& workings) {
    paintTitle(shown(workings.title), 300);
    for (const SheetWorking& working : workings.workings) {
        QStringList steps;
        for (const auto& step : working.steps) {
            steps.append(shown(step));
        }
        const QString words = steps.join(QStringLiteral("; "));
        const double left = text_left_ + 470;
        makeRoom(heightOf(words, text_right_ - left, body()) + 24);
        rule(text_left_, text_right_);
        y_ += 8;
        const double name = text(shown(working.title), text_left_, left - 20, body(), ink);
        y_ += std::max(name, text(words, left, text_right_, body(), ink)) + 8;
    }
}

}  // namespace truehang
