// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "photo_tape_model.h"

#include <QColor>
#include <QPointer>
#include <QQuickPaintedItem>

namespace truehang {

/// What was tapped on a photo, over its picture: it must lie exactly on the picture as it is shown. A finger that comes
/// down or is drawn aims; so do keys: arrows by a hundredth of the picture, with Shift by one of its pixels, Return
/// sets the corner, Escape gives up. Sizes are device-independent pixels.
class TapsItem : public QQuickPaintedItem {
    Q_OBJECT
    Q_PROPERTY(truehang::PhotoTapeModel* tape READ tape WRITE setTape NOTIFY asked)
    Q_PROPERTY(QColor paper MEMBER paper_ NOTIFY asked)
    Q_PROPERTY(QColor thread MEMBER thread_ NOTIFY asked)
    Q_PROPERTY(QColor ink MEMBER ink_ NOTIFY asked)

public:
    explicit TapsItem(QQuickItem* parent = nullptr);

    [[nodiscard]] PhotoTapeModel* tape() const { return tape_; }
    void setTape(PhotoTapeModel* tape);

    void paint(QPainter* painter) override;

signals:
    void asked();

protected:
    void mousePressEvent(QMouseEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void mouseReleaseEvent(QMouseEvent* event) override;
    void mouseUngrabEvent() override;
    void keyPressEvent(QKeyEvent* event) override;
    void focusInEvent(QFocusEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;

private:
    void aim(QPointF point);
    [[nodiscard]] QPointF shownAt(QPointF share) const;
    void paintQuad(QPainter& painter, const TappedCorners& corners, bool asked_for) const;
    void paintCross(QPainter& painter, QPointF at) const;

    QPointer<PhotoTapeModel> tape_;
    QColor paper_, thread_, ink_;
};

}  // namespace truehang
