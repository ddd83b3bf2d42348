// SPDX-License-Identifier: Apache-2.0
#include "signature_item.h"

#include "document/limits.h"

#include <QMouseEvent>
#include <QPainter>
#include <QPen>
#include <algorithm>
#include <cmath>
#include <utility>

namespace truehang {

namespace {

constexpr double nib = 2.4;
constexpr double least_step = 1.5;  // px between two points of a stroke
constexpr double grain = 10'000;    // fractions are kept to a ten-thousandth of the box

double kept(double share) { return std::clamp(std::round(share * grain) / grain, 0.0, 1.0); }

}  // namespace

SignatureItem::SignatureItem(QQuickItem* parent) : QQuickPaintedItem(parent) {
    setAntialiasing(true);
    setAcceptedMouseButtons(Qt::LeftButton);
    connect(this, &SignatureItem::inkChanged, this, [this] { update(); });
    connect(this, &SignatureItem::strokesChanged, this, [this] { update(); });
}

QVariantList SignatureItem::strokes() const {
    QVariantList list;
    for (const auto& stroke : strokes_) {
        QVariantList points;
        for (const QPointF point : stroke) {
            points.append(point);
        }
        list.append(QVariant(points));
    }
    return list;
}

void SignatureItem::setStrokes(const QVariantList& strokes) {
    strokes_.clear();
    points_ = 0;
    for (const QVariant& stroke : strokes) {
        QList<QPointF> points;
        for (const QVariant& point : stroke.toList()) {
            points.append(point.toPointF());
        }
        points_ += points.size();
        strokes_.append(points);
    }
    emit strokesChanged();
}

void SignatureItem::clear() {
    setStrokes({});
    emit drawn();
}

void SignatureItem::geometryChange(const QRectF& now, const QRectF& before) {
    QQuickPaintedItem::geometryChange(now, before);
    emit aspectChanged();
}

void SignatureItem::add(QPointF at) {
    if (points_ >= static_cast<qsizetype>(document_limits::signature_points) || width() <= 0 || height() <= 0) {
        return;
    }
    const QPointF share(kept(at.x() / width()), kept(at.y() / height()));
    QList<QPointF>& stroke = strokes_.last();
    if (!stroke.isEmpty()) {
        const QPointF by = share - stroke.last();
        if (std::hypot(by.x() * width(), by.y() * height()) < least_step) {
            return;
        }
    }
    stroke.append(share);
    ++points_;
    emit strokesChanged();
}

void SignatureItem::mousePressEvent(QMouseEvent* event) {
    if (fixed_ || strokes_.size() >= static_cast<qsizetype>(document_limits::signature_strokes)) {
        event->ignore();
        return;
    }
    drawing_ = true;
    setKeepMouseGrab(true);  // a page that scrolls would take the stroke away
    strokes_.append(QList<QPointF>());
    add(event->position());
}

void SignatureItem::mouseMoveEvent(QMouseEvent* event) {
    if (drawing_) {
        add(event->position());
    }
}

void SignatureItem::mouseReleaseEvent(QMouseEvent* event) {
    if (drawing_) {
        add(event->position());
    }
    mouseUngrabEvent();
}

void SignatureItem::mouseUngrabEvent() {
    const bool was_drawing = std::exchange(drawing_, false);
    setKeepMouseGrab(false);
    if (!strokes_.isEmpty() && strokes_.last().isEmpty()) {
        strokes_.removeLast();
        emit strokesChanged();
    }
    if (was_drawing) {
        emit drawn();
    }
}

void SignatureItem::paint(QPainter* painter) {
    painter->setRenderHint(QPainter::Antialiasing);
    painter->setPen(QPen(ink_, nib, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
    for (const auto& stroke : strokes_) {
        QPolygonF line;
        for (const QPointF point : stroke) {
            line << QPointF(point.x() * width(), point.y() * height());
        }
        if (line.size() == 1) {
            painter->drawPoint(line.first());
        } else {
            painter->drawPolyline(line);
        }
    }
}

}  // namespace truehang
