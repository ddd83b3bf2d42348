// SPDX-License-Identifier: Apache-2.0
#include "elevation_item.h"

#include "sheet/cloth_colour.h"
#include "sheet/elevation.h"

#include <QFontMetricsF>
#include <QMouseEvent>
#include <QPainter>
#include <QPainterPath>
#include <algorithm>
#include <cmath>

namespace truehang {

namespace {

constexpr double reach = 24.0;           // of a tap
constexpr double photo_strength = 0.45;  // pale enough for lines over it

QFont figureFont(const QString& family, double size, bool bold) {
    QFont font(family);
    font.setPixelSize(std::max(1, static_cast<int>(std::lround(size))));
    font.setBold(bold);
    return font;
}

QPointF at(Point point) { return {point.x, point.y}; }

double apart(QPointF a, QPointF b) { return std::hypot(a.x() - b.x(), a.y() - b.y()); }

}  // namespace

ElevationItem::ElevationItem(QQuickItem* parent) : QQuickPaintedItem(parent) {
    setAntialiasing(true);
    setAcceptedMouseButtons(Qt::LeftButton);
    connect(this, &ElevationItem::asked, this, [this] { polish(); });
    connect(this, &ElevationItem::coloursChanged, this, [this] { update(); });
}

void ElevationItem::setSource(OpenVisit* source) {
    if (source_ == source) {
        return;
    }
    if (source_) {
        disconnect(source_, nullptr, this, nullptr);
    }
    source_ = source;
    if (source_) {
        connect(source_, &OpenVisit::changed, this, [this] { polish(); });
        connect(source_, &OpenVisit::windowChanged, this, [this] { polish(); });
        connect(source_, &OpenVisit::opened, this, [this] { polish(); });
    }
    emit asked();
}

void ElevationItem::setWall(WallPhoto* wall) {
    if (wall_ == wall) {
        return;
    }
    if (wall_) {
        disconnect(wall_, nullptr, this, nullptr);
    }
    wall_ = wall;
    if (wall_) {
        connect(wall_, &WallPhoto::changed, this, [this] { update(); });
    }
    emit asked();
}

void ElevationItem::setChoices(ChoicesModel* choices) {
    if (choices_ == choices) {
        return;
    }
    if (choices_) {
        disconnect(choices_, nullptr, this, nullptr);
    }
    choices_ = choices;
    if (choices_) {
        connect(choices_, &ChoicesModel::changed, this, [this] { polish(); });
    }
    emit asked();
}

QString ElevationItem::description() const { return QString::fromStdString(elevation_.description); }

void ElevationItem::geometryChange(const QRectF& now, const QRectF& before) {
    QQuickPaintedItem::geometryChange(now, before);
    polish();
}

void ElevationItem::updatePolish() {
    Elevation made;
    const QString id = window_id_.isEmpty() && source_ ? source_->windowId() : window_id_;
    const Window* window = source_ && source_->isOpen() ? source_->window(id) : nullptr;
    const Room* room = window != nullptr ? source_->roomOf(id) : nullptr;
    if (room != nullptr && width() >= 120 && height() >= 120) {
        ElevationOptions options = elevation_options_for(source_->survey());
        options.width = width();
        options.height = height();
        options.label_size = label_size_;
        options.active_size = label_size_ + 2;
        options.dimensions = dimensions_;
        options.drawn = static_cast<Drawn>(hanging_);
        options.active_station = active_station_.toStdString();
        options.typed = typed_.toStdString();
        options.text_width = textWidth();
        const auto choice = choices_ ? choices_->asDrawn(choice_) : std::nullopt;
        const WindowFigures& figures = choice ? choice->figures : source_->figuresOf(id);
        const Window& drawn = choice ? choice->window : *window;
        made = turned_ ? side_view_of(source_->survey(), *room, drawn, figures, options)
                       : elevation_of(source_->survey(), *room, drawn, figures, options);
    }
    show(std::move(made));
}

void ElevationItem::show(Elevation made) {
    elevation_ = std::move(made);
    update();
    emit drawn();
}

TextWidth ElevationItem::textWidth() const {
    return [family = family_](std::string_view text, double size, bool bold) {
        const QString shown = QString::fromUtf8(text.data(), static_cast<qsizetype>(text.size()));
        return QFontMetricsF(figureFont(family, size, bold)).horizontalAdvance(shown);
    };
}

QColor ElevationItem::colourOf(Role role) const {
    switch (role) {
        case Role::ink:
            return ink_;
        case Role::thread:
            return thread_;
        case Role::wash:
            return wash_;
        case Role::paper:
            return paper_;
        case Role::hairline:
        case Role::guess:
        case Role::dimension:
        case Role::guide:
            return soft_;
    }
    return ink_;
}

QColor ElevationItem::colourOver(const Stroke& stroke) const {
    return QColor{QString::fromStdString(
        line_over(stroke.over, stroke.role, ink_.name().toStdString(), paper_.name().toStdString()))};
}

void ElevationItem::paintStroke(QPainter& painter, const Stroke& stroke) const {
    const QColor colour = stroke.over.empty() ? colourOf(stroke.role) : colourOver(stroke);
    const bool ground = stroke.role == Role::wash || stroke.role == Role::paper;
    if (ground && liesOnPhoto()) {
        return;
    }
    QPen pen(colour, stroke.width, Qt::SolidLine, Qt::FlatCap, Qt::MiterJoin);
    if (stroke.role == Role::guess) {
        pen.setDashPattern({4, 3});
    } else if (stroke.role == Role::guide) {
        pen.setDashPattern({1, 3});
    }
    painter.setPen(stroke.width > 0 && !ground ? pen : QPen(Qt::NoPen));
    const QColor fill = stroke.fill.empty() ? colour : QColor(QString::fromStdString(stroke.fill));
    painter.setBrush(stroke.filled || ground ? QBrush(fill) : QBrush(Qt::NoBrush));
    if (stroke.form == Form::circle && !stroke.points.empty()) {
        painter.drawEllipse(at(stroke.points.front()), stroke.radius, stroke.radius);
        return;
    }
    QPolygonF points;
    for (const Point point : stroke.points) {
        points << at(point);
    }
    if (stroke.form == Form::polygon) {
        painter.drawPolygon(points);
    } else {
        painter.drawPolyline(points);
    }
}

void ElevationItem::paintLabel(QPainter& painter, const Label& label) const {
    QPainterPath text;
    text.addText(at(label.at), figureFont(family_, label.size, label.bold), QString::fromStdString(label.text));
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(paper_, 5, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
    painter.drawPath(text);
    painter.setPen(Qt::NoPen);
    painter.setBrush(colourOf(label.role));
    painter.drawPath(text);
}

bool ElevationItem::liesOnPhoto() const { return !turned_ && wall_ && wall_->photo() != nullptr; }

/// The photo, pale, with its opening on the opening that is drawn.
void ElevationItem::paintWall(QPainter& painter) const {
    const StraightPhoto& photo = *wall_->photo();
    const auto opening = std::ranges::find_if(elevation_.strokes, [](const Stroke& stroke) {
        return stroke.part == "opening" && stroke.role == Role::wash && stroke.points.size() == 8;
    });
    if (opening == elevation_.strokes.end()) {
        return;
    }
    // Corners and middles of its sides, from the bottom left to the right.
    const QPolygonF drawn{
        {at(opening->points[0]), at(opening->points[2]), at(opening->points[4]), at(opening->points[6])}};
    const QPolygonF seen{{photo.opening[0], photo.opening[1], photo.opening[2], photo.opening[3]}};
    QTransform onto;
    if (!QTransform::quadToQuad(seen, drawn, onto)) {
        return;
    }
    painter.save();
    painter.setClipRect(boundingRect());
    painter.setOpacity(photo_strength);
    painter.setRenderHint(QPainter::SmoothPixmapTransform);
    painter.setTransform(onto, true);
    painter.drawImage(QPointF(), photo.picture);
    painter.restore();
}

void ElevationItem::paint(QPainter* painter) {
    painter->setRenderHint(QPainter::Antialiasing);
    if (liesOnPhoto()) {
        paintWall(*painter);
    }
    for (const Stroke& stroke : elevation_.strokes) {
        paintStroke(*painter, stroke);
    }
    for (const Label& label : elevation_.labels) {
        paintLabel(*painter, label);
    }
}

std::optional<QRectF> ElevationItem::boundsOf(const QString& part) const {
    QRectF bounds;
    const std::string name = part.toStdString();
    for (const Stroke& stroke : elevation_.strokes) {
        if (stroke.part == name && !stroke.points.empty()) {
            QPolygonF points;
            for (const Point point : stroke.points) {
                points << at(point);
            }
            const QRectF rectangle = points.boundingRect();
            bounds = bounds.isNull() ? rectangle : bounds.united(rectangle);
        }
    }
    return bounds.isNull() ? std::nullopt : std::optional(bounds);
}

const Window* ElevationItem::drawnWindow() const {
    return source_ ? source_->window(window_id_.isEmpty() ? source_->windowId() : window_id_) : nullptr;
}

QString ElevationItem::obstructionAt(QPointF point) const {
    const Window* window = drawnWindow();
    QString found;
    if (window == nullptr || turned_) {
        return found;
    }
    double nearest = 0.0;
    for (const Obstruction& obstruction : window->obstructions) {
        const QString id = QString::fromStdString(obstruction.id);
        const auto bounds = boundsOf(id);
        if (!bounds) {
            continue;
        }
        const double across = std::max(reach / 2, reach - bounds->width() / 2);
        const double up = std::max(reach / 2, reach - bounds->height() / 2);
        const double away = apart(bounds->center(), point);
        if (bounds->adjusted(-across, -up, across, up).contains(point) && (found.isEmpty() || away < nearest)) {
            found = id;
            nearest = away;
        }
    }
    return found;
}

void ElevationItem::mousePressEvent(QMouseEvent* event) {
    pressed_at_ = event->position();
    event->accept();
}

void ElevationItem::mouseReleaseEvent(QMouseEvent* event) {
    if (apart(event->position(), pressed_at_) <= reach) {
        pick(event->position());
    }
}

void ElevationItem::pick(QPointF point) {
    const QString obstruction = obstructionAt(point);
    if (!obstruction.isEmpty()) {
        emit obstructionPicked(obstruction);
    }
    picks_here_ = apart(point, picked_at_) <= reach / 2 ? picks_here_ + 1 : 0;
    picked_at_ = point;
    const auto station = station_near(elevation_, point.x(), point.y(), reach, picks_here_);
    if (station) {
        emit stationPicked(QString::fromStdString(*station));
    }
}

}  // namespace truehang
