// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "thread_mark.h"

#include <QAbstractItemModel>
#include <QColor>
#include <QPointer>
#include <QQuickPaintedItem>
#include <vector>

namespace truehang {

/// The thread in the margin, drawn only: one mark a row of `rows` (roles `mark`, a ThreadMark, and, where it is there,
/// `current`, which puts the needle), or the single `mark` where no rows are given. The stitches grow shorter as rows
/// grow many, so that all of them are seen. Sizes are device-independent pixels.
class ThreadItem : public QQuickPaintedItem {
    Q_OBJECT
    Q_PROPERTY(QAbstractItemModel* rows READ rows WRITE setRows NOTIFY marksChanged)
    Q_PROPERTY(truehang::thread_mark::Mark mark READ mark WRITE setMark NOTIFY marksChanged)
    Q_PROPERTY(QColor thread MEMBER thread_ WRITE setThread NOTIFY coloursChanged)
    Q_PROPERTY(QColor soft MEMBER soft_ WRITE setSoft NOTIFY coloursChanged)
    Q_PROPERTY(QColor ink MEMBER ink_ WRITE setInk NOTIFY coloursChanged)
    /// Where the first mark stands, and the most that two marks are apart.
    Q_PROPERTY(qreal firstAt MEMBER first_at_ NOTIFY marksChanged)
    Q_PROPERTY(qreal pitch MEMBER pitch_ NOTIFY marksChanged)

public:
    explicit ThreadItem(QQuickItem* parent = nullptr);

    [[nodiscard]] QAbstractItemModel* rows() const { return rows_; }
    void setRows(QAbstractItemModel* rows);
    [[nodiscard]] thread_mark::Mark mark() const { return mark_; }
    void setMark(thread_mark::Mark mark);
    void setThread(const QColor& colour);
    void setSoft(const QColor& colour);
    void setInk(const QColor& colour);

    void paint(QPainter* painter) override;

signals:
    void marksChanged();
    void coloursChanged();

private:
    struct Stitch {
        thread_mark::Mark mark = thread_mark::Mark::ToDo;
        bool current = false;
    };

    [[nodiscard]] std::vector<Stitch> stitches() const;
    void paintMark(QPainter& painter, const Stitch& stitch, QPointF top, qreal length) const;
    void paintLine(QPainter& painter, QPointF top, qreal length) const;
    void paintLooseEnd(QPainter& painter, QPointF top, qreal length) const;
    void paintLoop(QPainter& painter, QPointF top, qreal length) const;
    void paintHole(QPainter& painter, QPointF at) const;
    void paintNeedle(QPainter& painter, QPointF eye) const;

    QPointer<QAbstractItemModel> rows_;
    thread_mark::Mark mark_ = thread_mark::Mark::ToDo;
    QColor thread_, soft_, ink_;
    qreal first_at_ = 0;
    qreal pitch_ = 36;
};

}  // namespace truehang
