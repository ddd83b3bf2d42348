// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <QColor>
#include <QList>
#include <QPointF>
#include <QQuickPaintedItem>
#include <QVariantList>

namespace truehang {

/// A box to sign in with finger or mouse. What is drawn is kept as points that are fractions of the box, and can be
/// shown again in a box of any size. It takes as many points as a survey document holds.
class SignatureItem : public QQuickPaintedItem {
    Q_OBJECT
    /// Lists of points, one a stroke.
    Q_PROPERTY(QVariantList strokes READ strokes WRITE setStrokes NOTIFY strokesChanged)
    Q_PROPERTY(bool blank READ isBlank NOTIFY strokesChanged)
    /// Its width over its height.
    Q_PROPERTY(qreal aspect READ aspect NOTIFY aspectChanged)
    /// Nothing can be drawn: it shows what was.
    Q_PROPERTY(bool fixed MEMBER fixed_ NOTIFY fixedChanged)
    Q_PROPERTY(QColor ink MEMBER ink_ NOTIFY inkChanged)

public:
    explicit SignatureItem(QQuickItem* parent = nullptr);

    [[nodiscard]] QVariantList strokes() const;
    void setStrokes(const QVariantList& strokes);
    [[nodiscard]] bool isBlank() const { return strokes_.isEmpty(); }
    [[nodiscard]] qreal aspect() const { return height() > 0 ? width() / height() : 0; }

    Q_INVOKABLE void clear();

    void paint(QPainter* painter) override;

signals:
    void strokesChanged();
    /// A stroke was drawn to its end, or all were wiped off.
    void drawn();
    void aspectChanged();
    void fixedChanged();
    void inkChanged();

protected:
    void geometryChange(const QRectF& now, const QRectF& before) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void mouseReleaseEvent(QMouseEvent* event) override;
    void mouseUngrabEvent() override;

private:
    void add(QPointF at);

    QList<QList<QPointF>> strokes_;
    qsizetype points_ = 0;
    bool drawing_ = false;
    bool fixed_ = false;
    QColor ink_;
};

}  // namespace truehang
