// SPDX-License-Identifier: Apache-2.0
#include "marks_model.h"

#include "open_visit.h"
#include "photo_marks.h"
#include "survey/photos.h"
#include "survey/stations.h"
#include "whereabouts.h"
#include "writing.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <functional>

namespace truehang {

namespace {

constexpr std::array tools{"arrow", "line", "text", "station", "choose"};
constexpr double touch_reach = 24.0;
constexpr double shortest = 0.02;  // of the picture's side

QString kind_says(const Mark& mark) {
    if (mark.kind == "arrow") {
        return MarksModel::tr("Arrow");
    }
    if (mark.kind == "line") {
        return MarksModel::tr("Line");
    }
    if (mark.kind == "text") {
        return MarksModel::tr("Words");
    }
    return mark.kind == "station" ? MarksModel::tr("Station") : shown(mark.kind);
}

/// Changes the marks of one photo that is shown with a window.
auto changing(const QString& windowId, const QString& sha256, const std::function<bool(std::vector<Mark>&)>& change) {
    return [window = bytes(windowId), sha = bytes(sha256), change](Survey& survey) {
        Photo* const photo = photo_with(survey, window, sha);
        return photo != nullptr && change(photo->marks);
    };
}

}  // namespace

MarksModel::MarksModel(OpenVisit& open, QObject* parent)
    : QObject(parent), open_(open), marks_({"number", "kind", "says"}), stations_({"word", "says"}) {
    connect(&open_, &OpenVisit::windowChanged, this, &MarksModel::close);
    connect(&open_, &OpenVisit::changed, this, &MarksModel::show);
}

const std::vector<Mark>& MarksModel::kept() const {
    static const std::vector<Mark> none;
    const Photo* photo = photo_with(open_.survey(), bytes(open_.windowId()), bytes(photo_));
    return photo ? photo->marks : none;
}

Shape MarksModel::shape() const {
    return open_.window() ? open_.window()->shape.known().value_or(Shape::recess) : Shape::recess;
}

QString MarksModel::place() const { return QStringLiteral("mark/%1/%2/%3").arg(open_.windowId(), photo_).arg(chosen_); }

QString MarksModel::words() const {
    if (open_.place().has(place())) {
        return open_.place().text(place());
    }
    const auto& marks = kept();
    return chosen_ > 0 && chosen_ <= static_cast<int>(marks.size())
               ? shown(marks.at(static_cast<std::size_t>(chosen_ - 1)).text)
               : QString();
}

void MarksModel::setTool(const QString& tool) {
    if (std::ranges::find(tools, tool) == tools.end() || tool == tool_) {
        return;
    }
    tool_ = tool;
    chosen_ = 0;
    setFault({});
}

void MarksModel::setStation(const QString& word) {
    station_ = word;
    setFault({});
}

void MarksModel::openPhoto(const QString& sha256) {
    photo_ = sha256;
    chosen_ = 0;
    fault_.clear();
    QList<ShownRows::Row> rows;
    if (const Window* window = open_.window()) {
        for (const Station& station : walk_of(*window)) {
            rows.append({shown(station.word), shown(station.says)});
        }
    }
    stations_.setRows(rows);
    if (stations_.indexOf(station_) < 0) {
        station_ = stations_.value(0, QStringLiteral("word")).toString();
    }
    show();
}

void MarksModel::close() { openPhoto({}); }

void MarksModel::show() {
    QList<ShownRows::Row> rows;
    for (const Mark& mark : kept()) {
        const QString words = words_of(mark, shape());
        rows.append({static_cast<int>(rows.size()) + 1, shown(mark.kind),
                     words.isEmpty() ? kind_says(mark) : tr("%1: %2").arg(kind_says(mark), words)});
    }
    marks_.setRows(rows);
    chosen_ = chosen_ > marks_.count() ? 0 : chosen_;
    emit changed();
}

void MarksModel::add(Mark mark) {
    const QString draft = place();
    const bool takes_words = mark.kind != "station";
    const bool added =
        open_.edit(tr("A mark on a photo"), changing(open_.windowId(), photo_, [mark](std::vector<Mark>& marks) {
                       marks.push_back(mark);
                       return true;
                   }));
    if (added && takes_words) {
        open_.place().forget(draft);
    }
    setFault({});
}

void MarksModel::draw(QPointF from, QPointF to) {
    if (tool_ != QStringLiteral("arrow") && tool_ != QStringLiteral("line")) {
        return;
    }
    if (std::hypot(to.x() - from.x(), to.y() - from.y()) < shortest) {
        setFault(tr("Draw from one end to the other; an arrow points where the finger lifts."));
        return;
    }
    add(run_mark(bytes(tool_), from, to, words().trimmed()));
}

void MarksModel::touch(QPointF at, QSizeF shown) {
    if (tool_ == QStringLiteral("choose")) {
        choose(mark_near(kept(), at, shown, touch_reach) + 1);
        return;
    }
    const bool names = tool_ == QStringLiteral("station");
    const QString text = names ? station_ : words().trimmed();
    if (!names && tool_ != QStringLiteral("text")) {
        draw(at, at);
    } else if (text.isEmpty()) {
        setFault(tr("Write the words first, then touch where they go."));
    } else {
        add(spot_mark(bytes(tool_), at, text));
    }
}

void MarksModel::choose(int number) {
    chosen_ = number >= 1 && number <= marks_.count() ? number : 0;
    if (chosen_ > 0) {
        tool_ = QStringLiteral("choose");
    }
    setFault({});
}

void MarksModel::typingWords(const QString& words) { open_.place().setText(place(), words, true); }

void MarksModel::writeWords(const QString& words) {
    if (chosen_ == 0) {
        open_.place().setText(place(), words);
        return;
    }
    const QString draft = place();
    open_.edit(
        tr("A mark’s words: %1").arg(words),
        changing(open_.windowId(), photo_, [number = chosen_, text = bytes(words.trimmed())](std::vector<Mark>& marks) {
            Mark& mark = marks.at(static_cast<std::size_t>(number - 1));
            if (mark.text == text || mark.kind == "station") {
                return false;
            }
            mark.text = text;
            return true;
        }));
    open_.place().forget(draft);
    emit changed();
}

void MarksModel::move(QPointF by) {
    if (chosen_ == 0 || by.isNull()) {
        return;
    }
    open_.edit(tr("A mark moved"), changing(open_.windowId(), photo_, [number = chosen_, by](std::vector<Mark>& marks) {
                   if (number > static_cast<int>(marks.size())) {
                       return false;
                   }
                   Mark& mark = marks.at(static_cast<std::size_t>(number - 1));
                   Mark there = moved_by(mark, by);
                   const bool differs = there.points != mark.points;
                   mark = std::move(there);
                   return differs;
               }));
    emit changed();
}

void MarksModel::remove() {
    if (chosen_ == 0) {
        return;
    }
    const int number = std::exchange(chosen_, 0);
    open_.edit(tr("A mark taken off"), changing(open_.windowId(), photo_, [number](std::vector<Mark>& marks) {
                   if (number > static_cast<int>(marks.size())) {
                       return false;
                   }
                   marks.erase(marks.begin() + (number - 1));
                   return true;
               }));
    emit changed();
}

void MarksModel::setFault(const QString& fault) {
    fault_ = fault;
    emit changed();
}

}  // namespace truehang
