// SPDX-License-Identifier: Apache-2.0
#include "sheet/planned_roll.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace truehang {

namespace {

// All in mm of the target.
constexpr double margin = 3.0;
constexpr double room_above = 6.0;  ///< the bar, for the marks that are cut at
constexpr double room_below = 7.5;  ///< the bar, for the metres
constexpr double heavy = 0.5;
constexpr double fine = 0.2;
constexpr double strip_label = 2.9;
constexpr double number_size = 3.6;
constexpr double strip_hatch = 1.6;
constexpr double least_flaw = 1.0;  ///< so that it is seen
constexpr double least_height = 12.0;
constexpr double most_height = 60.0;

std::size_t letters(const std::string& text) {
    return static_cast<std::size_t>(
        std::ranges::count_if(text, [](char c) { return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U; }));
}

/// An advance that whole words of Lato stay room_below.
double about(const std::string& text, double size) { return 0.58 * size * static_cast<double>(letters(text)); }

/// The text as far as it fits, with a sign that it goes on; empty where that says nothing.
std::string fitting(const std::string& text, double size, double room) {
    if (about(text, size) <= room) {
        return text;
    }
    const auto fits = static_cast<std::size_t>(std::max(0.0, room / (0.58 * size)));
    if (fits < 4) {
        return {};
    }
    std::string cut;
    for (const char each : text) {
        const bool starts = (static_cast<unsigned char>(each) & 0xC0U) != 0x80U;
        if (starts && letters(cut) + 1 >= fits) {
            break;
        }
        cut += each;
    }
    while (cut.ends_with(' ') || cut.ends_with(',')) {
        cut.pop_back();
    }
    return cut + "…";
}

class RollBoard {
public:
    RollBoard(const Roll& roll, const PlannedRoll& plan, const PlannedRollOptions& options)
        : roll_(roll), plan_(plan), options_(options) {
        drawn_.width = options.width;
        drawn_.scale = (options.width - 2.0 * margin) / options.row.mm();
        height_ = std::clamp(options.cloth_width.mm() * drawn_.scale, least_height, most_height);
        rows_ = std::max(1, static_cast<int>(std::ceil(roll.length.mm() / options.row.mm() - 1e-9)));
        drawn_.height = rows_ * (room_above + height_ + room_below);
    }

    Elevation draw(const std::vector<DrawnPiece>& pieces) {
        for (std::size_t i = 0; i < plan_.cuts.size(); ++i) {
            wash(plan_.cuts[i], pieces[i].half);
        }
        for (const Remnant& remnant : plan_.remnants) {
            left_over(remnant);
        }
        for (const RollFlaw& flaw : roll_.flaws) {
            hatch(flaw);
        }
        for (int row = 0; row < rows_; ++row) {
            cloth_edges(row);
        }
        for (std::size_t i = 0; i < plan_.cuts.size(); ++i) {
            cut_lines(plan_.cuts[i], pieces[i].half);
            name(plan_.cuts[i], pieces[i], static_cast<int>(i) + 1);
        }
        for (const RollJoin& join : roll_.joins) {
            double_line(join.at.mm());
        }
        cut_marks(pieces);
        return std::move(drawn_);
    }

private:
    struct Box {
        double left, right, top, bottom;
    };

    [[nodiscard]] double row_mm() const { return options_.row.mm(); }
    [[nodiscard]] double top_of(int row) const { return row * (room_above + height_ + room_below) + room_above; }
    [[nodiscard]] double x_of(int row, double at) const { return margin + (at - row * row_mm()) * drawn_.scale; }
    /// The row that a place lies in; an end lies in the row that it ends.
    [[nodiscard]] int row_of(double at, bool end) const {
        const double rows = at / row_mm();
        const int row = static_cast<int>(end ? std::ceil(rows - 1e-9) - 1 : std::floor(rows + 1e-9));
        return std::clamp(row, 0, rows_ - 1);
    }

    /// The parts of a stretch, one for each row that it lies in.
    [[nodiscard]] std::vector<Box> boxes(Length from, Length to) const {
        std::vector<Box> found;
        for (int row = row_of(from.mm(), false); row <= row_of(to.mm(), true); ++row) {
            const double left = std::max(from.mm(), row * row_mm());
            const double right = std::min(to.mm(), (row + 1) * row_mm());
            found.push_back({x_of(row, left), x_of(row, right), top_of(row), top_of(row) + height_});
        }
        return found;
    }

    void halve(Box& box, bool half, bool beside) const {
        const double middle = (box.top + box.bottom) / 2.0;
        box.top = half && beside ? middle : box.top;
        box.bottom = half && !beside ? middle : box.bottom;
    }

    void line(Point from, Point to, Role role, double width) {
        drawn_.strokes.push_back({.form = Form::line, .role = role, .points = {from, to}, .width = width});
    }

    void polygon(const Box& box, Role role, double width) {
        drawn_.strokes.push_back(
            {.form = Form::polygon,
             .role = role,
             .points = {{box.left, box.top}, {box.right, box.top}, {box.right, box.bottom}, {box.left, box.bottom}},
             .width = width});
    }

    void label(std::string text, Point at, double size, bool bold = false) {
        drawn_.labels.push_back({.text = std::move(text), .at = at, .size = size, .bold = bold});
    }

    void wash(const PlannedCut& cut, bool half) {
        for (Box box : boxes(cut.from, cut.to)) {
            halve(box, half, cut.beside);
            polygon(box, Role::wash, 0.0);
        }
    }

    void left_over(const Remnant& remnant) {
        for (const Box& box : boxes(remnant.from, remnant.to)) {
            const Box inner{box.left + 0.7, box.right - 0.7, box.top + 1.0, box.bottom - 1.0};
            if (inner.right > inner.left) {
                polygon(inner, Role::guess, 0.25);
            }
            const std::string text =
                fitting(remnant.useful ? "left over, keep" : "left over", strip_label, inner.right - inner.left - 2.0);
            if (!text.empty()) {
                label(text, {inner.left + 1.0, inner.top + 4.0}, strip_label);
            }
        }
    }

    void hatch(const RollFlaw& flaw) {
        for (Box box : boxes(flaw.from, flaw.to)) {
            const double lacks = std::max(0.0, least_flaw - (box.right - box.left)) / 2.0;
            box.left -= lacks;
            box.right += lacks;
            polygon(box, Role::paper, 0.0);
            const double high = box.bottom - box.top;
            for (double x = box.left - high + strip_hatch; x < box.right; x += strip_hatch) {
                const double first = std::max(x, box.left);
                const double last = std::min(x + high, box.right);
                line({first, box.bottom - (first - x)}, {last, box.bottom - (last - x)}, Role::ink, fine);
            }
            line({box.left, box.top}, {box.left, box.bottom}, Role::ink, fine);
            line({box.right, box.top}, {box.right, box.bottom}, Role::ink, fine);
        }
    }

    void cloth_edges(int row) {
        const double from = row * row_mm();
        const double to = std::min(roll_.length.mm(), from + row_mm());
        const Box box{x_of(row, from), x_of(row, to), top_of(row), top_of(row) + height_};
        line({box.left, box.top}, {box.right, box.top}, Role::ink, heavy);
        line({box.left, box.bottom}, {box.right, box.bottom}, Role::ink, heavy);
        if (row == 0) {
            line({box.left, box.top}, {box.left, box.bottom}, Role::ink, heavy);
        }
        if (row == rows_ - 1) {
            line({box.right, box.top}, {box.right, box.bottom}, Role::ink, heavy);
        }
        for (int metre = static_cast<int>(std::lround(from / 1000.0)); metre * 1000.0 <= to + 1e-6; ++metre) {
            const double x = x_of(row, metre * 1000.0);
            line({x, box.bottom}, {x, box.bottom + 1.5}, Role::ink, fine);
            const std::string text = metre == 0 || metre % 5 == 0 ? fmt::format("{} m", metre) : std::to_string(metre);
            label(text, {x - about(text, strip_label) / 2.0, box.bottom + 4.6}, strip_label);
        }
    }

    void cut_lines(const PlannedCut& cut, bool half) {
        for (const bool end : {false, true}) {
            const double at = (end ? cut.to : cut.from).mm();
            const int row = row_of(at, end);
            Box box{x_of(row, at), 0.0, top_of(row), top_of(row) + height_};
            halve(box, half, cut.beside);
            line({box.left, box.top}, {box.left, box.bottom}, Role::ink, heavy);
        }
        for (const Box& box : boxes(cut.from, cut.to)) {
            const double middle = (box.top + box.bottom) / 2.0;
            if (half) {
                line({box.left, middle}, {box.right, middle}, Role::ink, fine);
            }
        }
    }

    void name(const PlannedCut& cut, const DrawnPiece& piece, int number) {
        auto parts = boxes(cut.from, cut.to);
        auto& box = *std::ranges::max_element(parts, {}, [](const Box& each) { return each.right - each.left; });
        halve(box, piece.half, cut.beside);
        const double room = box.right - box.left - 1.6;
        const std::string text = std::to_string(number);
        const double size = about(text, number_size) <= room + 0.6 ? number_size : 2.2;
        double y = box.top + 1.0 + size;
        const double left = size < number_size ? (box.left + box.right - about(text, size)) / 2.0 : box.left + 1.0;
        label(text, {left, y}, size, true);
        for (const std::string& each : piece.lines) {
            y += strip_label + 0.6;
            const std::string fits = fitting(each, strip_label, room);
            if (!fits.empty() && y < box.bottom - 0.6) {
                label(fits, {box.left + 1.0, y}, strip_label);
            }
        }
    }

    void double_line(double at) {
        const int row = row_of(at, false);
        const double x = x_of(row, at);
        for (const double beside : {-0.5, 0.5}) {
            line({x + beside, top_of(row) - 1.5}, {x + beside, top_of(row) + height_ + 1.5}, Role::ink, 0.3);
        }
    }

    /// The running mark at each cut, left out where it would lie on the one before it.
    void cut_marks(const std::vector<DrawnPiece>& pieces) {
        std::vector<std::pair<double, std::string>> marks;
        for (std::size_t i = 0; i < plan_.cuts.size(); ++i) {
            marks.emplace_back(plan_.cuts[i].to.mm(), pieces[i].mark);
        }
        std::ranges::sort(marks);
        double free = 0.0;
        int in_row = -1;
        for (const auto& [mark, text] : marks) {
            const int row = row_of(mark, true);
            free = row == in_row ? free : 0.0;
            in_row = row;
            const double x = x_of(row, mark);
            const double wide = about(text, strip_label);
            const double left = std::min(x - wide / 2.0, options_.width - wide);
            line({x, top_of(row) - 1.5}, {x, top_of(row)}, Role::ink, fine);
            if (left >= free) {
                label(text, {left, top_of(row) - 2.0}, strip_label);
                free = left + wide + 1.0;
            }
        }
    }

    const Roll& roll_;
    const PlannedRoll& plan_;
    const PlannedRollOptions& options_;
    Elevation drawn_;
    double height_ = 0.0;
    int rows_ = 1;
};

}  // namespace

Elevation planned_roll_drawing(const Roll& roll, const PlannedRoll& plan, const std::vector<DrawnPiece>& pieces,
                               const PlannedRollOptions& options) {
    auto drawn = RollBoard(roll, plan, options).draw(pieces);
    drawn.title = "Roll " + roll.id;
    drawn.description = fmt::format("{} unrolled, to scale: {}, {}, {}. The table room_below says where each is cut.",
                                    said_length(roll.length, LengthUnit::m),
                                    counted(static_cast<int>(plan.cuts.size()), "piece", "pieces"),
                                    counted(static_cast<int>(roll.flaws.size()), "flaw", "flaws"),
                                    counted(static_cast<int>(roll.joins.size()), "join", "joins"));
    return drawn;
}

}  // namespace truehang
