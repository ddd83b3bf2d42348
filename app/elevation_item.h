// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "choices_model.h"
#include "open_visit.h"
#include "sheet/elevation.h"
#include "wall_photo.h"

#include <QColor>
#include <QPointer>
#include <QQuickPaintedItem>
#include <QString>
#include <optional>

namespace truehang {

/// A window of the open visit drawn to scale from the sheet's strokes and labels. It can be tapped: the nearest
/// station, tapped again the next one near, or what is in the way there. Sizes are device-independent pixels.
class ElevationItem : public QQuickPaintedItem {
    Q_OBJECT
    Q_PROPERTY(truehang::OpenVisit* source READ source WRITE setSource NOTIFY asked)
    /// The window drawn; empty: the open one.
    Q_PROPERTY(QString windowId MEMBER window_id_ NOTIFY asked)
    /// The station being measured and its half-typed text.
    Q_PROPERTY(QString activeStation MEMBER active_station_ NOTIFY asked)
    Q_PROPERTY(QString typed MEMBER typed_ NOTIFY asked)
    Q_PROPERTY(Hanging hanging MEMBER hanging_ NOTIFY asked)
    /// The view from the side: how far things stand out from the wall.
    Q_PROPERTY(bool turned MEMBER turned_ NOTIFY asked)
    /// The choices of the open window, and the row of them that is drawn; -1: as it hangs now.
    Q_PROPERTY(truehang::ChoicesModel* choices READ choices WRITE setChoices NOTIFY asked)
    Q_PROPERTY(int choice MEMBER choice_ NOTIFY asked)
    /// A photo of the wall that lies under the drawing where it is shown; not from the side.
    Q_PROPERTY(truehang::WallPhoto* wall READ wall WRITE setWall NOTIFY asked)
    Q_PROPERTY(bool dimensions MEMBER dimensions_ NOTIFY asked)
    Q_PROPERTY(qreal labelSize MEMBER label_size_ NOTIFY asked)
    Q_PROPERTY(QString family MEMBER family_ NOTIFY asked)
    Q_PROPERTY(QColor paper MEMBER paper_ NOTIFY coloursChanged)
    Q_PROPERTY(QColor ink MEMBER ink_ NOTIFY coloursChanged)
    Q_PROPERTY(QColor soft MEMBER soft_ NOTIFY coloursChanged)
    Q_PROPERTY(QColor thread MEMBER thread_ NOTIFY coloursChanged)
    Q_PROPERTY(QColor wash MEMBER wash_ NOTIFY coloursChanged)
    /// One or two sentences of what is drawn, for the accessible description.
    Q_PROPERTY(QString description READ description NOTIFY drawn)

public:
    /// How curtains and blinds are shown.
    enum class Hanging { Absent, Back, Shut };
    Q_ENUM(Hanging)

    explicit ElevationItem(QQuickItem* parent = nullptr);

    [[nodiscard]] OpenVisit* source() const { return source_; }
    void setSource(OpenVisit* source);
    [[nodiscard]] ChoicesModel* choices() const { return choices_; }
    void setChoices(ChoicesModel* choices);
    [[nodiscard]] WallPhoto* wall() const { return wall_; }
    void setWall(WallPhoto* wall);
    [[nodiscard]] QString description() const;
    [[nodiscard]] const Elevation& elevation() const { return elevation_; }

    void paint(QPainter* painter) override;

signals:
    void asked();
    void coloursChanged();
    void drawn();
    void stationPicked(const QString& station);
    void obstructionPicked(const QString& obstructionId);

protected:
    void updatePolish() override;
    void geometryChange(const QRectF& now, const QRectF& before) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseReleaseEvent(QMouseEvent* event) override;
    virtual void paintStroke(QPainter& painter, const Stroke& stroke) const;
    /// Draws this from now on.
    void show(Elevation made);
    /// How labels are set, and how large.
    [[nodiscard]] TextWidth textWidth() const;
    [[nodiscard]] qreal labelSize() const { return label_size_; }

    [[nodiscard]] QColor colourOf(Role role) const;
    /// The rectangle that a part's strokes take; none where nothing of it is drawn.
    [[nodiscard]] std::optional<QRectF> boundsOf(const QString& part) const;
    /// The obstruction whose target, 48 px each way at least, holds a point; the one whose middle is nearest; empty:
    /// none.
    [[nodiscard]] QString obstructionAt(QPointF at) const;
    [[nodiscard]] QPointF pressedAt() const { return pressed_at_; }
    [[nodiscard]] const Window* drawnWindow() const;
    [[nodiscard]] bool isTurned() const { return turned_; }

private:
    [[nodiscard]] QColor colourOver(const Stroke& stroke) const;
    void paintLabel(QPainter& painter, const Label& label) const;
    [[nodiscard]] bool liesOnPhoto() const;
    void paintWall(QPainter& painter) const;
    void pick(QPointF at);

    QPointer<OpenVisit> source_;
    QPointer<ChoicesModel> choices_;
    QPointer<WallPhoto> wall_;
    int choice_ = -1;
    QString window_id_, active_station_, typed_, family_;
    Hanging hanging_ = Hanging::Absent;
    bool turned_ = false;
    bool dimensions_ = true;
    qreal label_size_ = 16;
    QColor paper_, ink_, soft_, thread_, wash_;
    Elevation elevation_;
    QPointF pressed_at_;
    QPointF picked_at_;
    int picks_here_ = 0;
};

}  // namespace truehang
