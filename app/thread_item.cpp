// SPDX-License-Identifier: Apache-2.0
#include "thread_item.h"

#include <QPainter>
#include <QPainterPath>
#include <algorithm>

namespace truehang {

namespace {
constexpr qreal longest_stitch = 16;
constexpr qreal stitch_width = 3.2;
constexpr qreal beside = 4;  // half of what two stitches of one row are apart
constexpr qreal hole_radius = 1.8;
}  // namespace

ThreadItem::ThreadItem(QQuickItem* parent) : QQuickPaintedItem(parent) {
    setAntialiasing(true);
    connect(this, &ThreadItem::marksChanged, this, [this] { update(); });
    connect(this, &ThreadItem::coloursChanged, this, [this] { update(); });
}

void ThreadItem::setRows(QAbstractItemModel* rows) {
    if (rows_ == rows) {
        return;
    }
    if (rows_) {
        disconnect(rows_, nullptr, this, nullptr);
    }
    rows_ = rows;
    if (rows_) {
        const auto again = [this] { update(); };
        connect(rows_, &QAbstractItemModel::dataChanged, this, again);
        connect(rows_, &QAbstractItemModel::rowsInserted, this, again);
        connect(rows_, &QAbstractItemModel::rowsRemoved, this, again);
        connect(rows_, &QAbstractItemModel::rowsMoved, this, again);
        connect(rows_, &QAbstractItemModel::modelReset, this, again);
    }
    emit marksChanged();
}

void ThreadItem::setMark(thread_mark::Mark mark) {
    if (mark_ != mark) {
        mark_ = mark;
        emit marksChanged();
    }
}

void ThreadItem::setThread(const QColor& colour) {
    thread_ = colour;
    emit coloursChanged();
}

void ThreadItem::setSoft(const QColor& colour) {
    soft_ = colour;
    emit coloursChanged();
}

void ThreadItem::setInk(const QColor& colour) {
    ink_ = colour;
    emit coloursChanged();
}

std::vector<ThreadItem::Stitch> ThreadItem::stitches() const {
    if (!rows_) {
        return {Stitch{mark_, false}};
    }
    const auto names = rows_->roleNames();
    const int mark_role = names.key("mark", -1);
    const int current_role = names.key("current", -1);
    std::vector<Stitch> marks;
    for (int row = 0; row < rows_->rowCount(); ++row) {
        const QModelIndex at = rows_->index(row, 0);
        marks.push_back({static_cast<thread_mark::Mark>(rows_->data(at, mark_role).toInt()),
                         current_role >= 0 && rows_->data(at, current_role).toBool()});
    }
    return marks;
}

void ThreadItem::paint(QPainter* painter) {
    const auto marks = stitches();
    if (marks.empty()) {
        return;
    }
    painter->setRenderHint(QPainter::Antialiasing);
    const qreal room = height() - first_at_;
    const qreal step = std::min(pitch_, room / static_cast<qreal>(marks.size()));
    const qreal length = std::min(longest_stitch, step * 0.45);
    qreal y = first_at_;
    for (const Stitch& stitch : marks) {
        paintMark(*painter, stitch, {width() / 2, y}, length);
        y += step;
    }
}

void ThreadItem::paintLine(QPainter& painter, QPointF top, qreal length) const {
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(thread_, stitch_width, Qt::SolidLine, Qt::RoundCap));
    painter.drawLine(top + QPointF(0, stitch_width / 2), top + QPointF(0, length - stitch_width / 2));
}

void ThreadItem::paintHole(QPainter& painter, QPointF at) const {
    painter.setPen(Qt::NoPen);
    painter.setBrush(soft_);
    painter.drawEllipse(at, hole_radius, hole_radius);
}

void ThreadItem::paintNeedle(QPainter& painter, QPointF eye) const {
    constexpr qreal needle = 22;
    QPainterPath path(eye);
    path.cubicTo(eye + QPointF(3.4, 2), eye + QPointF(2.6, 10), eye + QPointF(0, needle));
    path.cubicTo(eye + QPointF(-2.6, 10), eye + QPointF(-3.4, 2), eye);
    path.addEllipse(eye + QPointF(0, 5), 0.9, 2.6);
    painter.setPen(Qt::NoPen);
    painter.setBrush(ink_);
    painter.drawPath(path);
}

void ThreadItem::paintLooseEnd(QPainter& painter, QPointF top, qreal length) const {
    QPainterPath loose(top + QPointF(0, 1));
    loose.cubicTo(top + QPointF(0, length * 0.8), top + QPointF(10, length * 0.35), top + QPointF(10, length));
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(thread_, stitch_width - 0.6, Qt::SolidLine, Qt::RoundCap));
    painter.drawPath(loose);
}

void ThreadItem::paintLoop(QPainter& painter, QPointF top, qreal length) const {
    const qreal radius = std::min(8.0, length / 2 + 1);
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(thread_, stitch_width - 0.4, Qt::SolidLine, Qt::RoundCap));
    const QPointF centre = top + QPointF(0, length / 2);
    painter.drawArc(QRectF(centre - QPointF(radius, radius), centre + QPointF(radius, radius)), 80 * 16, 300 * 16);
}

void ThreadItem::paintMark(QPainter& painter, const Stitch& stitch, QPointF top, qreal length) const {
    const bool unsewn = stitch.mark == thread_mark::Mark::ToDo || stitch.mark == thread_mark::Mark::UnderWay;
    if (stitch.current) {
        if (unsewn) {
            paintLine(painter, top - QPointF(0, 3), 7);
            paintNeedle(painter, top + QPointF(0, 1));
            return;
        }
        paintNeedle(painter, top + QPointF(beside + 4, -3));
    }
    const QPointF left(-beside, 0);
    const QPointF right(beside, 0);
    const QPointF foot(0, length - hole_radius);
    switch (stitch.mark) {
        case thread_mark::Mark::ToDo:
            paintHole(painter, top + QPointF(0, hole_radius));
            paintHole(painter, top + foot);
            break;
        case thread_mark::Mark::UnderWay:
            paintHole(painter, top + foot);
            paintLooseEnd(painter, top, length);
            break;
        case thread_mark::Mark::Kept:
            paintLine(painter, top, length);
            break;
        case thread_mark::Mark::HalfThere:
            paintLine(painter, top + left, length);
            paintLine(painter, top + right, length * 0.6);
            paintHole(painter, top + right + foot);
            break;
        case thread_mark::Mark::There:
            paintLine(painter, top + left, length);
            paintLine(painter, top + right, length);
            break;
        case thread_mark::Mark::Asked:
            paintLoop(painter, top, length);
            break;
    }
}

}  // namespace truehang
