// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "marks_model.h"
#include "open_visit.h"

#include <QColor>
#include <QPointer>
#include <QQuickPaintedItem>
#include <optional>

namespace truehang {

/// The marks of a photo over its picture; it must lie exactly on the picture as it is shown. With `marks` a finger
/// draws on it, and so do keys: arrows move a cross (Shift: ten steps), Return or Space sets an end, the words or the
/// station there; a chosen mark is moved itself. Sizes are device-independent pixels.
class MarksItem : public QQuickPaintedItem {
    Q_OBJECT
    Q_PROPERTY(truehang::OpenVisit* source READ source WRITE setSource NOTIFY asked)
    Q_PROPERTY(QString photo MEMBER photo_ NOTIFY asked)
    /// What draws here; null: the marks are only shown.
    Q_PROPERTY(truehang::MarksModel* marks READ marks WRITE setMarks NOTIFY asked)
    Q_PROPERTY(qreal labelSize MEMBER label_size_ NOTIFY asked)
    Q_PROPERTY(QString family MEMBER family_ NOTIFY asked)
    Q_PROPERTY(QColor paper MEMBER paper_ NOTIFY asked)
    Q_PROPERTY(QColor thread MEMBER thread_ NOTIFY asked)
    Q_PROPERTY(QColor ink MEMBER ink_ NOTIFY asked)

public:
    explicit MarksItem(QQuickItem* parent = nullptr);

    [[nodiscard]] OpenVisit* source() const { return source_; }
    void setSource(OpenVisit* source);
    [[nodiscard]] MarksModel* marks() const { return marks_; }
    void setMarks(MarksModel* marks);

    void paint(QPainter* painter) override;

signals:
    void asked();

protected:
    void mousePressEvent(QMouseEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void mouseReleaseEvent(QMouseEvent* event) override;
    void mouseUngrabEvent() override;
    void keyPressEvent(QKeyEvent* event) override;
    void keyReleaseEvent(QKeyEvent* event) override;
    void focusInEvent(QFocusEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;

private:
    [[nodiscard]] bool draws() const;
    [[nodiscard]] bool movesChosen() const;
    void set();
    void letGo();
    void paintCross(QPainter& painter) const;
    [[nodiscard]] QPointF shareOf(QPointF point) const;
    [[nodiscard]] QPointF shownAt(QPointF share) const;
    void paintMark(QPainter& painter, const Mark& mark, Shape shape, bool chosen) const;
    void paintRun(QPainter& painter, QPointF from, QPointF to, bool arrow, bool chosen) const;
    void paintWords(QPainter& painter, const QString& words, QPointF beside, bool chosen) const;

    QPointer<OpenVisit> source_;
    QPointer<MarksModel> marks_;
    QString photo_, family_;
    qreal label_size_ = 16;
    QColor paper_, thread_, ink_;
    std::optional<QPointF> pressed_at_;
    QPointF now_at_;
    QPointF cross_{0.5, 0.5};      ///< where the keys are, a fraction of the picture
    std::optional<QPointF> from_;  ///< the end that was set by a key
    QPointF moved_;                ///< how far the chosen mark was moved since a key went down
};

}  // namespace truehang
