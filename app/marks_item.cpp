// SPDX-License-Identifier: Apache-2.0
#include "marks_item.h"

#include "arrow_keys.h"
#include "photo_marks.h"
#include "survey/photos.h"

#include <QFontMetricsF>
#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>
#include <QPainterPath>
#include <algorithm>
#include <cmath>
#include <utility>

namespace truehang {

namespace {

constexpr double drag_starts = 8.0;
constexpr double barb = 14.0;
constexpr double line_width = 3.0;
constexpr double halo_width = 7.0;
constexpr double gap = 6.0;
constexpr double step = 0.01;  // of the picture, an arrow key
constexpr int far_steps = 10;
constexpr double cross_arm = 12.0;

std::optional<QPointF> way_of(const QKeyEvent& key) {
    const double far = (key.modifiers() & Qt::ShiftModifier) != 0 ? step * far_steps : step;
    const auto way = way_of_arrow(key.key());
    return way ? std::optional(far * QPointF(*way)) : std::nullopt;
}

}  // namespace

MarksItem::MarksItem(QQuickItem* parent) : QQuickPaintedItem(parent) {
    setAntialiasing(true);
    connect(this, &MarksItem::asked, this, [this] { update(); });
}

void MarksItem::setSource(OpenVisit* source) {
    if (source_ == source) {
        return;
    }
    if (source_) {
        disconnect(source_, nullptr, this, nullptr);
    }
    source_ = source;
    if (source_) {
        connect(source_, &OpenVisit::changed, this, [this] { update(); });
        connect(source_, &OpenVisit::windowChanged, this, [this] { update(); });
    }
    emit asked();
}

void MarksItem::setMarks(MarksModel* marks) {
    if (marks_ == marks) {
        return;
    }
    if (marks_) {
        disconnect(marks_, nullptr, this, nullptr);
    }
    marks_ = marks;
    setAcceptedMouseButtons(marks_ ? Qt::LeftButton : Qt::NoButton);
    setActiveFocusOnTab(marks_ != nullptr);
    if (marks_) {
        connect(marks_, &MarksModel::changed, this, [this] { update(); });
    }
    emit asked();
}

QPointF MarksItem::shareOf(QPointF point) const {
    return {point.x() / std::max(1.0, width()), point.y() / std::max(1.0, height())};
}

QPointF MarksItem::shownAt(QPointF share) const { return {share.x() * width(), share.y() * height()}; }

void MarksItem::paint(QPainter* painter) {
    const Window* window = source_ ? source_->window() : nullptr;
    if (window == nullptr) {
        return;
    }
    painter->setRenderHint(QPainter::Antialiasing);
    if (const Photo* photo = photo_with(source_->survey(), window->id, photo_.toStdString())) {
        const Shape shape = window->shape.known().value_or(Shape::recess);
        const int chosen = marks_ ? marks_->chosen() : 0;
        int number = 0;
        for (const Mark& mark : photo->marks) {
            const bool is_chosen = ++number == chosen;
            paintMark(*painter, is_chosen ? moved_by(mark, moved_) : mark, shape, is_chosen);
        }
    }
    if (pressed_at_ && draws()) {
        paintRun(*painter, *pressed_at_, now_at_, marks_->tool() == QStringLiteral("arrow"), false);
    }
    if (marks_ && hasActiveFocus()) {
        paintCross(*painter);
    }
}

/// Where the keys are, and the run that they draw.
void MarksItem::paintCross(QPainter& painter) const {
    if (from_ && draws()) {
        paintRun(painter, shownAt(*from_), shownAt(cross_), marks_->tool() == QStringLiteral("arrow"), false);
    }
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(ink_, line_width));
    painter.drawRect(QRectF(0, 0, width(), height()).adjusted(1.5, 1.5, -1.5, -1.5));
    if (movesChosen()) {
        return;
    }
    const QPointF at = shownAt(cross_);
    for (const auto& pen : {QPen(paper_, halo_width), QPen(ink_, line_width)}) {
        painter.setPen(pen);
        painter.drawLine(at - QPointF(cross_arm, 0), at + QPointF(cross_arm, 0));
        painter.drawLine(at - QPointF(0, cross_arm), at + QPointF(0, cross_arm));
    }
}

void MarksItem::paintMark(QPainter& painter, const Mark& mark, Shape shape, bool chosen) const {
    const QString words = words_of(mark, shape);
    if (is_run(mark)) {
        const QPointF from = shownAt(*point_of(mark, "from"));
        paintRun(painter, from, shownAt(*point_of(mark, "to")), mark.kind == "arrow", chosen);
        paintWords(painter, words, from, chosen);
    } else if (is_spot(mark)) {
        const QPointF at = shownAt(*point_of(mark, "at"));
        painter.setPen(QPen(paper_, 2.0));
        painter.setBrush(chosen ? ink_ : thread_);
        painter.drawEllipse(at, 5.0, 5.0);
        paintWords(painter, words, at, chosen);
    }
}

void MarksItem::paintRun(QPainter& painter, QPointF from, QPointF to, bool arrow, bool chosen) const {
    QPainterPath path(from);
    path.lineTo(to);
    if (arrow) {
        const auto [left, right] = barbs_of(from, to, barb);
        path.moveTo(left);
        path.lineTo(to);
        path.lineTo(right);
    }
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(paper_, halo_width, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
    painter.drawPath(path);
    painter.setPen(QPen(chosen ? ink_ : thread_, line_width, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
    painter.drawPath(path);
    if (chosen) {
        painter.setBrush(paper_);
        painter.setPen(QPen(ink_, 2.0));
        painter.drawEllipse(from, 5.0, 5.0);
        painter.drawEllipse(to, 5.0, 5.0);
    }
}

/// Beside a point and within the picture, on a ground of paper.
void MarksItem::paintWords(QPainter& painter, const QString& words, QPointF beside, bool chosen) const {
    if (words.isEmpty()) {
        return;
    }
    QFont font(family_);
    font.setPixelSize(std::max(1, static_cast<int>(std::lround(label_size_))));
    const QFontMetricsF metrics(font);
    const double most = std::max(20.0, width() - 2 * gap);
    const QString fits = metrics.elidedText(words, Qt::ElideRight, most - 2 * gap);
    const QSizeF size(metrics.horizontalAdvance(fits) + 2 * gap, metrics.height() + gap);
    const double x = std::clamp(beside.x() + gap * 1.5, 0.0, std::max(0.0, width() - size.width()));
    const double y = std::clamp(beside.y() - size.height() - gap, 0.0, std::max(0.0, height() - size.height()));
    const QRectF box(QPointF(x, y), size);
    painter.setPen(chosen ? QPen(ink_, 2.0) : QPen(Qt::NoPen));
    painter.setBrush(paper_);
    painter.drawRect(box);
    painter.setPen(ink_);
    painter.setFont(font);
    painter.drawText(box, Qt::AlignCenter, fits);
}

void MarksItem::mousePressEvent(QMouseEvent* event) {
    pressed_at_ = now_at_ = event->position();
    setKeepMouseGrab(true);
    event->accept();
}

void MarksItem::mouseMoveEvent(QMouseEvent* event) {
    now_at_ = event->position();
    update();
}

void MarksItem::mouseReleaseEvent(QMouseEvent* event) {
    if (!pressed_at_ || !marks_) {
        return;
    }
    const QPointF from = *pressed_at_;
    const QPointF to = event->position();
    mouseUngrabEvent();
    if (std::hypot(to.x() - from.x(), to.y() - from.y()) > drag_starts && draws()) {
        marks_->draw(shareOf(from), shareOf(to));
        return;
    }
    marks_->touch(shareOf(to), QSizeF(width(), height()));
}

void MarksItem::mouseUngrabEvent() {
    pressed_at_.reset();
    setKeepMouseGrab(false);
    update();
}

bool MarksItem::draws() const {
    return marks_ && (marks_->tool() == QStringLiteral("arrow") || marks_->tool() == QStringLiteral("line"));
}

bool MarksItem::movesChosen() const { return marks_ && marks_->chosen() > 0; }

void MarksItem::keyPressEvent(QKeyEvent* event) {
    const auto way = way_of(*event);
    if (way && movesChosen()) {
        moved_ += *way;
    } else if (way && marks_) {
        cross_ = {std::clamp(cross_.x() + way->x(), 0.0, 1.0), std::clamp(cross_.y() + way->y(), 0.0, 1.0)};
    } else if (event->key() == Qt::Key_Escape && from_) {
        from_.reset();
    } else if (marks_ &&
               (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter || event->key() == Qt::Key_Space)) {
        if (!event->isAutoRepeat()) {
            set();
        }
    } else if (movesChosen() && event->key() == Qt::Key_Delete) {
        marks_->remove();
    } else {
        event->ignore();
    }
    update();
}

/// What a key sets at the cross.
void MarksItem::set() {
    if (!draws()) {
        marks_->touch(cross_, QSizeF(width(), height()));
    } else if (!from_) {
        from_ = cross_;
    } else {
        marks_->draw(*std::exchange(from_, std::nullopt), cross_);
    }
}

void MarksItem::keyReleaseEvent(QKeyEvent* event) {
    if (way_of(*event) && !event->isAutoRepeat()) {
        letGo();
    } else {
        event->ignore();
    }
}

/// All that the arrows moved it is one edit.
void MarksItem::letGo() {
    const QPointF by = std::exchange(moved_, QPointF());
    if (marks_) {
        marks_->move(by);
    }
}

void MarksItem::focusInEvent(QFocusEvent* event) {
    QQuickPaintedItem::focusInEvent(event);
    update();
}

void MarksItem::focusOutEvent(QFocusEvent* event) {
    QQuickPaintedItem::focusOutEvent(event);
    from_.reset();
    letGo();
    update();
}

}  // namespace truehang
