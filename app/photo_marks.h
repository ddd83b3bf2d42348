// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "survey/survey.h"

#include <QPointF>
#include <QSizeF>
#include <QString>
#include <optional>
#include <vector>

// The marks of a photo: kinds `arrow` and `line` run `from` a point `to` another, `text` and `station` stand `at` one.
// Points are fractions of the upright picture, from its upper left corner.

namespace truehang {

/// A mark's kinds that can be drawn; other words travel on unchanged and aren't drawn.
[[nodiscard]] bool is_run(const Mark& mark);
[[nodiscard]] bool is_spot(const Mark& mark);

/// A point of a mark; none where it hasn't one of that name.
[[nodiscard]] std::optional<QPointF> point_of(const Mark& mark, const char* name);

/// What stands beside it: its text, or for a station what that runs between ("Sill to head, left").
[[nodiscard]] QString words_of(const Mark& mark, Shape shape);

/// A mark of a kind; its points are held within the picture.
[[nodiscard]] Mark run_mark(const std::string& kind, QPointF from, QPointF to, const QString& text);
[[nodiscard]] Mark spot_mark(const std::string& kind, QPointF at, const QString& text);

/// The same mark further on, held within the picture as a whole.
[[nodiscard]] Mark moved_by(Mark mark, QPointF by);

/// The mark that lies nearest to a point, within `reach`, on a picture shown at this size (the same units as `reach`);
/// the last drawn of those that lie alike. -1: none.
[[nodiscard]] int mark_near(const std::vector<Mark>& marks, QPointF point, QSizeF shown, double reach);

/// The two ends of an arrow's barbs at its tip, for a line shown so.
[[nodiscard]] std::pair<QPointF, QPointF> barbs_of(QPointF from, QPointF tip, double length);

}  // namespace truehang
