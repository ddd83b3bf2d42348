// SPDX-License-Identifier: Apache-2.0
#include "photo_tape_model.h"

#include "adjust/photo_check.h"
#include "document/limits.h"
#include "figure_rows.h"
#include "open_visit.h"
#include "survey/counted.h"
#include "survey/photos.h"
#include "units/length_text.h"
#include "whereabouts.h"
#include "writing.h"

#include <QImageReader>
#include <algorithm>
#include <cmath>
#include <functional>

namespace truehang {

namespace {

constexpr std::size_t corner_count = 4;
/// A4 by ISO 216, Letter as 8 1/2 by 11 inches; upright.
constexpr Length a4_width = Length::mm(210.0);
constexpr Length a4_height = Length::mm(297.0);
constexpr Length letter_width = Length::inches(8.5);
constexpr Length letter_height = Length::inches(11.0);

bool is_size(const FlatSheet& sheet, Length width, Length height) {
    const auto same = [](Length a, Length b) { return std::abs((a - b).mm()) < 0.05; };
    return (same(sheet.width, width) && same(sheet.height, height)) ||
           (same(sheet.width, height) && same(sheet.height, width));
}

/// The corners of a block: 0 the first sheet, 1 the opening, from 2 on further sheets.
TappedCorners* block_of(PhotoPlane& plane, std::size_t block) {
    if (block == 1) {
        return &plane.opening;
    }
    const std::size_t sheet = block == 0 ? 0 : block - 1;
    return sheet < plane.sheets.size() ? &plane.sheets[sheet].corners : nullptr;
}

/// The taps of a corner, by its number; null where there is no such corner.
Taps* taps_of(PhotoPlane& plane, std::size_t number) {
    TappedCorners* const corners = block_of(plane, number / corner_count);
    if (corners == nullptr) {
        return nullptr;
    }
    corners->resize(std::max(corners->size(), corner_count));
    return &(*corners)[number % corner_count];
}

std::size_t corners_in(const PhotoPlane& plane) { return corner_count * (plane.sheets.size() + 1); }

std::vector<std::size_t> taps_in(PhotoPlane plane) {
    std::vector<std::size_t> counts;
    for (std::size_t number = 0; number < corners_in(plane); ++number) {
        counts.push_back(taps_of(plane, number)->size());
    }
    return counts;
}

QString corner_says(const PhotoPlane& plane, std::size_t number) {
    const std::size_t block = number / corner_count;
    const QString of = block == 1                 ? PhotoTapeModel::tr("The opening")
                       : plane.sheets.size() == 1 ? PhotoTapeModel::tr("The sheet")
                                                  : PhotoTapeModel::tr("Sheet %1").arg(block == 0 ? 1 : block);
    const std::array<QString, corner_count> where{
        PhotoTapeModel::tr("%1, top left"), PhotoTapeModel::tr("%1, top right"), PhotoTapeModel::tr("%1, bottom right"),
        PhotoTapeModel::tr("%1, bottom left")};
    return where.at(number % corner_count).arg(of);
}

QString spoken_corner(const QString& says, std::size_t taps) {
    return taps == 0   ? PhotoTapeModel::tr("%1: not tapped yet").arg(says)
           : taps == 1 ? PhotoTapeModel::tr("%1: tapped once").arg(says)
                       : PhotoTapeModel::tr("%1: tapped %2 times").arg(says).arg(taps);
}

/// Of an upright picture, from its file's head; none where it isn't there.
QSize size_of(const QUrl& picture) {
    if (picture.isEmpty()) {
        return {};
    }
    QImageReader reader(picture.toLocalFile());
    const QSize size = reader.size();
    return reader.transformation().testFlag(QImageIOHandler::TransformationRotate90) ? size.transposed() : size;
}

QString key_of(std::size_t number) { return QString::number(number); }

}  // namespace

PhotoTapeModel::PhotoTapeModel(OpenVisit& open, QObject* parent)
    : QObject(parent),
      open_(open),
      corners_({"key", "says", "spoken"}),
      sizes_({"station", "says", "figure", "unit", "taped"}) {
    connect(&open_, &OpenVisit::windowChanged, this, &PhotoTapeModel::close);
    connect(&open_, &OpenVisit::changed, this, &PhotoTapeModel::show);
}

const PhotoPlane* PhotoTapeModel::stored() const {
    const Photo* photo = photo_with(open_.survey(), bytes(open_.windowId()), bytes(photo_));
    return photo != nullptr && photo->plane ? &*photo->plane : nullptr;
}

PhotoPlane PhotoTapeModel::kept() const {
    const PhotoPlane* stored_plane = stored();
    PhotoPlane plane = stored_plane != nullptr ? *stored_plane : PhotoPlane{};
    if (plane.width_px < 1 || plane.height_px < 1) {
        plane.width_px = pixels_.width();
        plane.height_px = pixels_.height();
    }
    if (plane.sheets.empty()) {
        plane.sheets.push_back({a4_width, a4_height, {}, {}});
    }
    return plane;
}

bool PhotoTapeModel::used() const { return stored() != nullptr; }

bool PhotoTapeModel::fits() const {
    const Window* window = open_.window();
    return window != nullptr && window->shape.known() && has_four_corners(*window->shape.known());
}

QString PhotoTapeModel::corner() const { return key_of(asked_); }

QString PhotoTapeModel::asks() const { return photo_.isEmpty() ? QString() : corner_says(kept(), asked_); }

bool PhotoTapeModel::complete() const {
    return !tapped_.empty() && std::ranges::none_of(tapped_, [](std::size_t taps) { return taps == 0; });
}

QString PhotoTapeModel::unit() const { return truehang::shown(word_of(entry_unit(open_.survey()))); }

void PhotoTapeModel::openPhoto(const QString& sha256, const QUrl& picture) {
    photo_ = sha256;
    aimed_ = own_ = false;
    asked_ = 0;
    sheet_fault_.clear();
    tapped_.clear();
    pixels_ = size_of(picture);
    if (!photo_.isEmpty()) {
        const auto taps = taps_in(kept());
        const auto first = std::ranges::find(taps, 0U);
        asked_ = first == taps.end() ? 0 : static_cast<std::size_t>(first - taps.begin());
    }
    show();
}

void PhotoTapeModel::close() { openPhoto({}, {}); }

/// A tap that was undone is asked for again.
void PhotoTapeModel::followUndo(const PhotoPlane& plane) {
    const auto taps = taps_in(plane);
    for (std::size_t number = 0; number < std::min(taps.size(), tapped_.size()); ++number) {
        if (taps[number] < tapped_[number]) {
            asked_ = number;
            aimed_ = false;
            break;
        }
    }
    tapped_ = taps;
    asked_ = asked_ < taps.size() ? asked_ : 0;
}

void PhotoTapeModel::show() {
    trouble_.clear();
    disagrees_.clear();
    QList<ShownRows::Row> rows;
    if (!photo_.isEmpty() && open_.window() != nullptr) {
        const PhotoPlane plane = kept();
        followUndo(plane);
        for (std::size_t number = 0; number < tapped_.size(); ++number) {
            const QString says = corner_says(plane, number);
            rows.append({key_of(number), says, spoken_corner(says, tapped_[number])});
        }
        showSizes(plane);
    } else {
        sizes_.setRows({});
    }
    corners_.setRows(rows);
    emit changed();
}

void PhotoTapeModel::showSizes(const PhotoPlane& plane) {
    QList<ShownRows::Row> rows;
    const auto shape = photo_shape(plane);
    const bool opening_tapped =
        std::all_of(tapped_.begin(), tapped_.begin() + 2 * corner_count, [](std::size_t taps) { return taps > 0; });
    if (!shape && opening_tapped) {
        trouble_ = truehang::shown(shape.error().text);
    }
    const auto together = shape ? photos_together({*shape}) : Error{};
    if (together) {
        const Window& window = *open_.window();
        const auto readings = counted_readings(window, window.shape.known().value_or(Shape::recess));
        for (const PhotoSize& size : together->sizes()) {
            const LengthStyle style = length_style(open_.survey());
            LengthStyle with_unit = style;
            with_unit.with_unit = true;
            const CountedReading* reading = find_counted(readings, size.station);
            const auto rounded = [](Length length) { return Length::mm(std::round(length.mm())); };
            rows.append({truehang::shown(size.station), station_says(window, size.station),
                         truehang::shown(write_length(rounded(size.value), style)),
                         truehang::shown("± " + write_length(rounded(2.0 * size.u), with_unit)),
                         reading == nullptr || !reading->measured
                             ? QString()
                             : tr("tape: %1").arg(truehang::shown(open_.survey(), reading->value))});
        }
    }
    sizes_.setRows(rows);
    for (const Flag& flag : open_.figuresOf(open_.windowId()).flags) {
        disagrees_ = flag.check == photo_network_name ? truehang::shown(flag.text) : disagrees_;
    }
}

void PhotoTapeModel::aimAt(QPointF at) {
    if (photo_.isEmpty() || !std::isfinite(at.x()) || !std::isfinite(at.y())) {
        return;
    }
    aim_ = {std::clamp(at.x(), 0.0, 1.0), std::clamp(at.y(), 0.0, 1.0)};
    aimed_ = true;
    emit changed();
}

void PhotoTapeModel::nudge(int right, int down) {
    const PhotoPlane plane = kept();
    if (aimed_ && plane.width_px > 0 && plane.height_px > 0) {
        aimAt(aim_ + QPointF(right / static_cast<double>(plane.width_px), down / static_cast<double>(plane.height_px)));
    }
}

void PhotoTapeModel::lower() {
    aimed_ = false;
    emit changed();
}

void PhotoTapeModel::edit(const QString& says, const std::function<bool(PhotoPlane&)>& change) {
    open_.edit(says, [window = bytes(open_.windowId()), sha = bytes(photo_), start = kept(), change](Survey& survey) {
        Photo* const photo = photo_with(survey, window, sha);
        if (photo == nullptr) {
            return false;
        }
        PhotoPlane plane = photo->plane.value_or(start);
        if (plane.sheets.empty()) {
            plane.sheets = start.sheets;
        }
        if (plane.width_px < 1 || plane.height_px < 1) {
            plane.width_px = start.width_px;
            plane.height_px = start.height_px;
        }
        if (!change(plane)) {
            return false;
        }
        photo->plane = std::move(plane);
        return true;
    });
}

void PhotoTapeModel::set() {
    if (!aimed_ || photo_.isEmpty()) {
        return;
    }
    const std::size_t number = asked_;
    const auto next = std::ranges::find(tapped_, 0U);
    const bool was_tapped = tapped_[number] > 0;
    aimed_ = false;
    edit(tr("A corner on a photo: %1").arg(asks()), [number, at = aim_](PhotoPlane& plane) {
        Taps* const taps = taps_of(plane, number);
        if (taps == nullptr || taps->size() >= document_limits::taps) {
            return false;
        }
        taps->emplace_back(at.x(), at.y());
        return true;
    });
    const auto untapped = std::ranges::find(tapped_, 0U);
    if (!was_tapped && next != tapped_.end() && untapped != tapped_.end()) {
        asked_ = static_cast<std::size_t>(untapped - tapped_.begin());
    }
    emit changed();
}

void PhotoTapeModel::choose(const QString& corner) {
    const int row = corners_.indexOf(corner);
    if (row >= 0) {
        asked_ = static_cast<std::size_t>(row);
        aimed_ = false;
        sheet_fault_.clear();
        emit changed();
    }
}

void PhotoTapeModel::forgetTaps() {
    edit(tr("Taps taken back: %1").arg(asks()), [number = asked_](PhotoPlane& plane) {
        Taps* const taps = taps_of(plane, number);
        const bool had = taps != nullptr && !taps->empty();
        if (had) {
            taps->clear();
        }
        return had;
    });
}

std::size_t PhotoTapeModel::sheetInHand() const {
    const std::size_t block = asked_ / corner_count;
    return block < 2 ? 0 : block - 1;
}

QString PhotoTapeModel::sheetSize() const {
    const PhotoPlane plane = kept();
    const FlatSheet& sheet = plane.sheets[std::min(sheetInHand(), plane.sheets.size() - 1)];
    return own_                                          ? QStringLiteral("own")
           : is_size(sheet, a4_width, a4_height)         ? QStringLiteral("a4")
           : is_size(sheet, letter_width, letter_height) ? QStringLiteral("letter")
                                                         : QStringLiteral("own");
}

QString PhotoTapeModel::sheetLies() const {
    const PhotoPlane plane = kept();
    const FlatSheet& sheet = plane.sheets[std::min(sheetInHand(), plane.sheets.size() - 1)];
    return sheet.width > sheet.height ? QStringLiteral("across") : QStringLiteral("upright");
}

QString PhotoTapeModel::place(bool width) const {
    return QStringLiteral("sheet/%1/%2/%3/%4")
        .arg(open_.windowId(), photo_)
        .arg(sheetInHand())
        .arg(width ? QStringLiteral("width") : QStringLiteral("height"));
}

QString PhotoTapeModel::sheetSide(bool width) const {
    if (open_.place().has(place(width))) {
        return open_.place().text(place(width));
    }
    const PhotoPlane plane = kept();
    const FlatSheet& sheet = plane.sheets[std::min(sheetInHand(), plane.sheets.size() - 1)];
    return truehang::shown(open_.survey(), width ? sheet.width : sheet.height);
}

void PhotoTapeModel::setSheet(const QString& says, Length width, Length height) {
    sheet_fault_.clear();
    edit(says, [number = sheetInHand(), width, height](PhotoPlane& plane) {
        if (number >= plane.sheets.size()) {
            return false;
        }
        FlatSheet& sheet = plane.sheets[number];
        const bool differs = sheet.width != width || sheet.height != height;
        sheet.width = width;
        sheet.height = height;
        return differs;
    });
    emit changed();
}

void PhotoTapeModel::chooseSize(const QString& word) {
    own_ = word == QStringLiteral("own");
    const bool across = sheetLies() == QStringLiteral("across");
    if (word == QStringLiteral("a4")) {
        setSheet(tr("The sheet is A4"), across ? a4_height : a4_width, across ? a4_width : a4_height);
    } else if (word == QStringLiteral("letter")) {
        setSheet(tr("The sheet is Letter"), across ? letter_height : letter_width,
                 across ? letter_width : letter_height);
    }
    emit changed();
}

void PhotoTapeModel::chooseLies(const QString& word) {
    const PhotoPlane plane = kept();
    const FlatSheet& sheet = plane.sheets[std::min(sheetInHand(), plane.sheets.size() - 1)];
    if (word != sheetLies()) {
        setSheet(tr("The sheet lies the other way"), sheet.height, sheet.width);
    }
}

void PhotoTapeModel::typingSide(bool width, const QString& text) { open_.place().setText(place(width), text, true); }

void PhotoTapeModel::writeSide(bool width, const QString& text) {
    const auto read = read_field_length(open_.survey(), text);
    if (!read || !*read || (*read)->mm() <= 0.0) {
        sheet_fault_ = read ? tr("Say how long it is.") : fault_of(read);
        emit changed();
        return;
    }
    const PhotoPlane plane = kept();
    const FlatSheet& sheet = plane.sheets[std::min(sheetInHand(), plane.sheets.size() - 1)];
    const Length side = **read;
    open_.place().forget(place(width));
    setSheet(tr("The sheet’s size: %1").arg(text), width ? side : sheet.width, width ? sheet.height : side);
}

void PhotoTapeModel::addSheet() {
    const std::size_t number = corners_in(kept());
    edit(tr("One more sheet on a photo"), [](PhotoPlane& plane) {
        if (plane.sheets.size() >= document_limits::sheets) {
            return false;
        }
        plane.sheets.push_back({plane.sheets.front().width, plane.sheets.front().height, {}, {}});
        return true;
    });
    choose(key_of(number));
}

void PhotoTapeModel::takeOff() {
    aimed_ = own_ = false;
    open_.edit(tr("A photo is no tape"), [window = bytes(open_.windowId()), sha = bytes(photo_)](Survey& survey) {
        Photo* const photo = photo_with(survey, window, sha);
        const bool had = photo != nullptr && photo->plane.has_value();
        if (had) {
            photo->plane.reset();
        }
        return had;
    });
}

}  // namespace truehang
