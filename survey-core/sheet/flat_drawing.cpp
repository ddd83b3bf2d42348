// SPDX-License-Identifier: Apache-2.0
#include "sheet/flat_drawing.h"

#include "sheet/dimension_lines.h"
#include "sheet/drawing_board.h"
#include "sheet/paper.h"
#include "units/saying.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace truehang {

namespace {

constexpr double paper_height = 82.0;
constexpr double blind_height = 96.0;
constexpr double room_beside = 23.0;  ///< room for the drop and the cut drop
constexpr double room_above = 7.0;
constexpr double room_below = 21.0;
constexpr double corner_scale = 0.25;

/// Draws one piece flat on the table; x from its left finished edge, y from its finished bottom edge.
class FlatDrawer {
public:
    FlatDrawer(Elevation& drawing, const FlatPiece& piece, const SheetStyle& style)
        : piece_(piece),
          style_(style),
          flat_(std::max(1.0, piece.flat.mm())),
          drop_(std::max(1.0, piece.drop.mm())),
          over_(std::max(piece.head.mm(), piece.tabs.empty() ? 0.0 : 0.6 * piece.tab_hang.mm())),
          scale_(std::min((column_width - 2.0 * room_beside) / (flat_ + 2.0 * piece.side_turn.mm()),
                          (drawing.height - room_above - room_below) / (drop_ + piece.hem.mm() + over_))),
          board_(drawing, zero(), scale_, px_in_mm),
          lines_(drawing) {}

    void draw() {
        turnings();
        lining();
        joins();
        board_.rectangle(Role::ink, stroke_px::strong, {0.0, 0.0}, {flat_, drop_}, "finished");
        tabs();
        eyelets();
        pleats();
        weights();
        rods();
        one_way();
        dimensions();
    }

private:
    [[nodiscard]] Point zero() const {
        const double tall = (drop_ + over_) * scale_;
        return {(column_width - flat_ * scale_) / 2.0, room_above + tall};
    }
    /// From the left, of a place that is counted from the leading edge.
    [[nodiscard]] double x(Length from_leading) const {
        return piece_.leading_right ? flat_ - from_leading.mm() : from_leading.mm();
    }

    void turnings() {
        board_.rectangle(Role::guess, stroke_px::fine, {-piece_.side_turn.mm(), -piece_.hem.mm()},
                         {flat_ + piece_.side_turn.mm(), drop_ + piece_.head.mm()}, "cut");
        const double hem = piece_.hem.mm() / 2.0;
        board_.line(Role::hairline, stroke_px::hair, {0.0, hem}, {flat_, hem}, "hem");
    }
    void lining() {
        if (piece_.lining_inset && piece_.lining_rise) {
            const double in = piece_.lining_inset->mm();
            board_.polyline(Role::guide, stroke_px::ink,
                            {{in, drop_},
                             {in, piece_.lining_rise->mm()},
                             {flat_ - in, piece_.lining_rise->mm()},
                             {flat_ - in, drop_}},
                            "lining");
        }
    }
    void joins() {
        for (const Length at : piece_.joins) {
            board_.line(Role::hairline, stroke_px::ink, {x(at), 0.0}, {x(at), drop_}, "join");
            lines_.words(board_.at({x(at), 0.0}).x, board_.at({0.0, drop_ * 0.62}).y, say("join"));
        }
    }
    void tabs() {
        const double half = piece_.tab_width.mm() / 2.0;
        for (const Length at : piece_.tabs) {
            board_.rectangle(Role::ink, stroke_px::fine, {x(at) - half, drop_},
                             {x(at) + half, drop_ + 0.6 * piece_.tab_hang.mm()}, "tab");
        }
    }
    void eyelets() {
        for (const Length at : piece_.eyelets) {
            board_.circle(Role::ink, stroke_px::fine, {x(at), drop_ - piece_.eyelet_top.mm()},
                          std::max(piece_.eyelet_inner.mm() / 2.0, board_.mm_of_px(2.0)), "eyelet");
        }
    }
    /// Each pleat's cloth along the top, as two lines that are brought together.
    void pleats() {
        const double half = piece_.pleat.mm() / 2.0;
        const double low = drop_ - board_.mm_of_px(18.0);
        for (const Length at : piece_.pleats) {
            for (const double side : {x(at) - half, x(at) + half}) {
                board_.line(Role::ink, stroke_px::fine, {side, drop_}, {side, low}, "pleat");
            }
            board_.line(Role::hairline, stroke_px::hair, {x(at) - half, low}, {x(at) + half, low}, "pleat");
        }
    }
    void weights() {
        for (const Length at : piece_.weights) {
            const double half = board_.mm_of_px(2.4);
            const double middle = std::clamp(x(at), 1.6 * half, flat_ - 1.6 * half);
            board_.rectangle(Role::ink, stroke_px::fine, {middle - half, half}, {middle + half, 3.0 * half}, "weight",
                             true);
        }
    }
    void rods() {
        for (const Length at : piece_.rods) {
            board_.line(Role::hairline, stroke_px::ink, {0.0, at.mm()}, {flat_, at.mm()}, "rod");
        }
    }

    /// An arrow to the top where no join runs.
    void one_way() {
        if (!piece_.one_way) {
            return;
        }
        const auto room = [&](double share) {
            double least = flat_;
            for (const Length at : piece_.joins) {
                least = std::min(least, std::abs(x(at) - share * flat_));
            }
            return least;
        };
        const double middle = flat_ * std::ranges::max(std::array{0.5, 0.3, 0.7}, {}, room);
        const double low = drop_ * 0.3;
        const double high = drop_ * 0.5;
        const double head = board_.mm_of_px(5.0);
        board_.line(Role::ink, stroke_px::ink, {middle, low}, {middle, high}, "one-way");
        board_.polygon(Role::ink, stroke_px::fine,
                       {{middle, high}, {middle - head, high - 2.0 * head}, {middle + head, high - 2.0 * head}},
                       "one-way", true);
        lines_.words(board_.at({middle, 0.0}).x, board_.at({0.0, high}).y - 3.0, say("top"));
        lines_.words(board_.at({middle, 0.0}).x, board_.at({0.0, low}).y + 3.0, say("one way"));
    }

    void dimensions() {
        const Point low_left = board_.at({0.0, 0.0});
        const Point high_right = board_.at({flat_, drop_});
        const double out = board_.at({-piece_.side_turn.mm(), 0.0}).x;
        const double out_right = board_.at({flat_ + piece_.side_turn.mm(), 0.0}).x;
        const double cut_low = board_.at({0.0, -piece_.hem.mm()}).y;
        const double cut_high = board_.at({0.0, drop_ + piece_.head.mm()}).y;
        lines_.up(high_right.y, low_left.y, out - 8.0, low_left.x, written(piece_.drop, style_));
        lines_.up(cut_high, cut_low, out_right + 4.0, out_right, say("cut {}", written_cut(piece_.cut_drop, style_)));
        lines_.across(low_left.x, high_right.x, cut_low + 5.0, low_left.y, written(piece_.flat, style_));
        lines_.across(out, out_right, cut_low + 10.5, cut_low, say("cut {}", written_cut(piece_.cut_across, style_)));
        if (piece_.blind) {
            return;
        }
        const double edge_y = cut_low + 16.5;
        const double leading = piece_.leading_right ? high_right.x : low_left.x;
        const double outer = piece_.leading_right ? low_left.x : high_right.x;
        lines_.words(leading, edge_y, say("leading edge"));
        lines_.words(outer, edge_y, say("outer edge"));
    }

    const FlatPiece& piece_;
    const SheetStyle& style_;
    double flat_, drop_;
    double over_;  ///< what stands over the finished top edge
    double scale_;
    DrawingBoard board_;
    DimensionLines lines_;
};

/// Draws the lower left corner from the back; x from the finished side, y from the finished bottom edge.
class CornerDrawer {
public:
    CornerDrawer(Elevation& drawing, const FlatPiece& piece, const SheetStyle& style)
        : piece_(piece),
          style_(style),
          hem_(piece.hem.mm() / 2.0),
          board_(drawing, {21.0, drawing.height - 9.0}, corner_scale, px_in_mm),
          lines_(drawing, 3.4) {}

    void draw(double height) {
        const double top = (height - 9.0 - 2.0) / corner_scale;
        const double far = (column_width - 21.0 - 26.0) / corner_scale;
        board_.polyline(Role::ink, stroke_px::strong, {{0.0, top}, {0.0, 0.0}, {far, 0.0}}, "finished");
        board_.line(Role::hairline, stroke_px::ink, {piece_.side_turn.mm(), hem_}, {piece_.side_turn.mm(), top},
                    "turn");
        board_.line(Role::hairline, stroke_px::ink, {0.0, hem_}, {far, hem_}, "hem");
        // The mitre of a turned corner.
        board_.line(Role::hairline, stroke_px::fine, {0.0, 0.0}, {piece_.side_turn.mm(), hem_}, "mitre");
        lines_.up(y(hem_), y(0.0), 9.0, x(0.0), written(Length::mm(hem_), style_));
        lines_.across(x(0.0), x(piece_.side_turn.mm()), 3.2, y(top) + 6.0, written(piece_.side_turn, style_));
        lining(top, far);
    }

private:
    [[nodiscard]] double x(double mm) const { return board_.at({mm, 0.0}).x; }
    [[nodiscard]] double y(double mm) const { return board_.at({0.0, mm}).y; }

    void lining(double top, double far) {
        if (!piece_.lining_inset || !piece_.lining_rise) {
            return;
        }
        const double in = piece_.lining_inset->mm();
        const double rise = piece_.lining_rise->mm();
        const double hem = rise + piece_.lining_hem.mm() / 2.0;
        board_.polyline(Role::guess, stroke_px::ink, {{in, top}, {in, rise}, {far, rise}}, "lining");
        board_.line(Role::guess, stroke_px::fine, {in, hem}, {far, hem}, "lining hem");
        const double right = x(far);
        lines_.up(y(rise), y(0.0), right + 4.0, right, say("{} rise", written(*piece_.lining_rise, style_)));
        lines_.up(y(hem), y(rise), right + 4.0, right, say("{} hem", written(Length::mm(hem - rise), style_)));
        lines_.across(x(0.0), x(in), y(0.0) + 4.0, y(0.0), written(*piece_.lining_inset, style_));
        lines_.words_from(x(in) + 3.0, y(0.0) + 5.6, say("lining, dashed"));
    }

    const FlatPiece& piece_;
    const SheetStyle& style_;
    double hem_;
    DrawingBoard board_;
    DimensionLines lines_;
};

}  // namespace

Elevation flat_drawing(const FlatPiece& piece, const SheetStyle& style) {
    Elevation drawing;
    drawing.width = column_width;
    drawing.height = piece.blind ? blind_height : paper_height;
    drawing.title = piece.blind ? say("The blind, flat on the table") : say("The curtain, flat on the table");
    drawing.description = say("From the front, to scale: finished {} by {}; what is turned in is dashed.",
                              written(piece.flat, style), written(piece.drop, style));
    FlatDrawer(drawing, piece, style).draw();
    return drawing;
}

Elevation corner_drawing(const FlatPiece& piece, const SheetStyle& style) {
    Elevation drawing;
    const double highest =
        std::max(piece.hem.mm() / 2.0, piece.lining_rise.value_or(Length()).mm() + piece.lining_hem.mm() / 2.0);
    drawing.width = column_width;
    drawing.height = std::clamp((highest + 40.0) * corner_scale + 11.0, 34.0, 80.0);
    drawing.title = say("A lower corner, from the back");
    drawing.description = say("At 1 : 4: hem {} deep, double; side turned in {}.", written(piece.hem / 2.0, style),
                              written(piece.side_turn, style));
    CornerDrawer(drawing, piece, style).draw(drawing.height);
    return drawing;
}

}  // namespace truehang
