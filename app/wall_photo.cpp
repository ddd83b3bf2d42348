// SPDX-License-Identifier: Apache-2.0
#include "wall_photo.h"

#include "adjust/photo_check.h"
#include "open_visit.h"
#include "survey_keeping.h"
#include "work_aside.h"
#include "writing.h"

#include <QImageReader>

namespace truehang {

namespace {

constexpr int read_px = 3000;  // of the longer side: more than the drawing shows

/// The photo upright, no larger than is needed; null where it can’t be read.
QImage upright_picture(const QString& file) {
    QImageReader reader(file);
    reader.setAutoTransform(true);
    if (const QSize size = reader.size(); size.isValid() && std::max(size.width(), size.height()) > read_px) {
        reader.setScaledSize(size.scaled(read_px, read_px, Qt::KeepAspectRatio));
    }
    return reader.read();
}

}  // namespace

WallPhoto::WallPhoto(OpenVisit& open, QObject* parent) : QObject(parent), open_(open) {
    connect(&open_, &OpenVisit::windowChanged, this, [this] {
        shown_ = false;
        look();
    });
    connect(&open_, &OpenVisit::changed, this, &WallPhoto::look);
}

void WallPhoto::setShown(bool shown) {
    if (shown != shown_) {
        shown_ = shown;
        trouble_.clear();
        if (shown_ && shape_ && !straight_) {
            straighten();
        }
        emit changed();
    }
}

/// The first photo of the window that can be worked as a tape; straightened anew where its corners were tapped again.
void WallPhoto::look() {
    QString sha256;
    std::optional<PhotoShape> shape;
    const Window* window = open_.window();
    if (window != nullptr && has_four_corners(window->shape.known().value_or(Shape::recess))) {
        for (const Photo& photo : window->photos) {
            auto worked = photo.plane ? photo_shape(*photo.plane) : Result<PhotoShape>(Error{});
            if (worked) {
                sha256 = truehang::shown(photo.sha256);
                shape = std::move(worked).value();
                break;
            }
        }
    }
    const bool same = sha256 == sha256_ && shape.has_value() == shape_.has_value() &&
                      (!shape || (shape->homography == shape_->homography && shape->opening == shape_->opening &&
                                  shape->lens_2 == shape_->lens_2 && shape->lens_4 == shape_->lens_4));
    if (same) {
        return;
    }
    ++turn_;
    sha256_ = sha256;
    shape_ = std::move(shape);
    straight_.reset();
    if (shown_ && shape_) {
        straighten();
    }
    emit changed();
}

void WallPhoto::straighten() {
    const int turn = ++turn_;
    open_.keeping().post(
        this, [sha = bytes(sha256_)](Store& store) { return store.photo_file(sha); },
        [this, turn, shape = *shape_](const Result<std::filesystem::path>& found) {
            if (turn != turn_) {
                return;
            }
            if (!found) {
                trouble_ = tr("The photo itself isn’t on this phone.");
                emit changed();
                return;
            }
            const QString file = QString::fromStdString(found->string());
            aside(
                this,
                [file, shape] {
                    const QImage picture = upright_picture(file);
                    return picture.isNull() ? StraightPhoto() : straightened(picture, shape);
                },
                [this, turn](const StraightPhoto& straight) {
                    if (turn != turn_) {
                        return;
                    }
                    if (straight.picture.isNull()) {
                        trouble_ = tr("The photo can’t be read.");
                    } else {
                        straight_ = straight;
                    }
                    emit changed();
                });
        });
}

}  // namespace truehang
