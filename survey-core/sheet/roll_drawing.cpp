// SPDX-License-Identifier: Apache-2.0
#include "sheet/roll_drawing.h"

#include "sheet/elevation.h"
#include "units/saying.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace truehang {

namespace {

constexpr double paper_width = 180.0;
constexpr double strip_height = 9.0;
constexpr double strip_step = 15.0;
constexpr double least_strip_mm = 5000.0;
constexpr double most_strips = 5.0;
constexpr double label_size = 3.4;
constexpr double hatch_step = 2.0;
constexpr double least_drawn = 1.0;  ///< so that a join is seen
constexpr double longest_arrow = 6.0;
constexpr double least_arrow = 2.0;

/// Lays the roll out in strips of one length.
class StripDrawer {
public:
    StripDrawer(Elevation& drawing, double roll_mm)
        : drawing_(drawing),
          roll_(std::max(roll_mm, 1.0)),
          strip_(std::max(least_strip_mm, std::ceil(roll_ / most_strips / 1000.0) * 1000.0)),
          scale_(paper_width / strip_) {}

    [[nodiscard]] int strips() const { return static_cast<int>(std::ceil(roll_ / strip_ - 1e-9)); }

    void cloth() {
        spans(0.0, roll_, [&](int strip, double from, double to) {
            rectangle(strip, from, to, Role::hairline, 0.25);
            mark(strip, from * scale_, strip * strip_);
        });
        mark(strips() - 1, (roll_ - (strips() - 1) * strip_) * scale_, roll_);
    }

    void piece(const RollCut& cut, int number, bool one_way) {
        double widest = 0.0;
        Point middle;
        const double lacks = std::max(0.0, least_drawn / scale_ - (cut.end - cut.start).mm());
        spans(cut.start.mm(), cut.end.mm() + lacks, [&](int strip, double from, double to) {
            rectangle(strip, from, to, Role::ink, 0.4);
            if (cut.left_out && cut.what != "left over") {
                hatch(strip, from * scale_, to * scale_);
            }
            if (to - from > widest) {
                widest = to - from;
                middle = {(from + to) / 2.0 * scale_, top(strip) + strip_height / 2.0 + label_size * 0.36};
            }
        });
        if (one_way && !cut.left_out) {
            arrow(middle.x, middle.y + 2.2, std::min(longest_arrow, widest * scale_ - 1.0));
        }
        const std::string text = number > 0 ? std::to_string(number) : std::string();
        const double wide = plain_text_width(text, label_size, true);
        if (!text.empty() && widest * scale_ > wide + 0.6) {
            drawing_.labels.push_back(
                {.text = text, .at = {middle.x - wide / 2.0, middle.y}, .size = label_size, .bold = true});
        }
    }

private:
    static double top(int strip) { return 4.5 + strip * strip_step; }

    template <class Draw>
    void spans(double from, double to, const Draw& draw) const {
        for (int strip = 0; strip < strips(); ++strip) {
            const double low = std::max(from - strip * strip_, 0.0);
            const double high = std::min(to - strip * strip_, strip_);
            if (high > low) {
                draw(strip, low, high);
            }
        }
    }
    void rectangle(int strip, double from, double to, Role role, double width) {
        const double y = top(strip);
        drawing_.strokes.push_back({.form = Form::polygon,
                                    .role = role,
                                    .points = {{from * scale_, y},
                                               {to * scale_, y},
                                               {to * scale_, y + strip_height},
                                               {from * scale_, y + strip_height}},
                                    .width = width});
    }
    /// Points to the roll's outer end.
    void arrow(double middle, double y, double length) {
        if (length < least_arrow) {
            return;
        }
        const double tip = middle - length / 2.0;
        drawing_.strokes.push_back(
            {.points = {{tip, y}, {middle + length / 2.0, y}}, .width = 0.35, .part = "one-way"});
        drawing_.strokes.push_back({.form = Form::polygon,
                                    .points = {{tip, y}, {tip + 1.4, y - 0.8}, {tip + 1.4, y + 0.8}},
                                    .width = 0.2,
                                    .filled = true,
                                    .part = "one-way"});
    }
    void hatch(int strip, double left, double right) {
        const double y = top(strip);
        for (double x = left; x < right - 0.2; x += hatch_step) {
            const double reach = std::min(hatch_step, right - x);
            drawing_.strokes.push_back(
                {.role = Role::hairline, .points = {{x, y + strip_height}, {x + reach, y}}, .width = 0.25});
        }
    }
    /// The metres at a strip's end, over it.
    void mark(int strip, double x, double mm) {
        const std::string text = fmt::format("{:g} m", std::round(mm / 10.0) / 100.0);
        const double wide = plain_text_width(text, 2.9, false);
        drawing_.labels.push_back(
            {.text = text,
             .at = {std::clamp(x - (x > 1.0 ? wide : 0.0), 0.0, paper_width - wide), top(strip) - 1.0},
             .size = 2.9});
    }

    Elevation& drawing_;
    double roll_;
    double strip_;
    double scale_;
};

}  // namespace

Elevation roll_drawing(const RollCuts& roll, Length length, bool one_way) {
    Elevation drawing;
    drawing.width = paper_width;
    drawing.title = say("The roll from its outer end");
    const auto pieces = std::ranges::count_if(roll.cuts, [](const RollCut& cut) { return !cut.left_out; });
    drawing.description =
        say("{} cuts along {:g} m, numbered as in the list.", pieces, std::round(length.mm() / 10.0) / 100.0);
    if (one_way) {
        drawing.description += " " + say("The arrows point to the tops, all one way.");
    }
    StripDrawer drawer(drawing, length.mm());
    drawing.height = drawer.strips() * strip_step;
    drawer.cloth();
    const auto shown = shown_cuts(roll, {});
    for (std::size_t i = 0; i < roll.cuts.size(); ++i) {
        drawer.piece(roll.cuts[i], shown[i].number, one_way);
    }
    return drawing;
}

}  // namespace truehang
