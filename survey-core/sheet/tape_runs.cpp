// SPDX-License-Identifier: Apache-2.0
#include "sheet/tape_runs.h"

#include "sheet/words.h"
#include "units/angle_text.h"
#include "units/saying.h"

#include <algorithm>
#include <cmath>

namespace truehang {

namespace {

constexpr double first_column_px = 17.0;
constexpr double column_step_px = 20.0;
constexpr double tick_px = 4.0;
constexpr double label_gap_px = 17.0;       ///< a label's halo and the gaps to both sides of it
constexpr double least_gap_px = 13.0;       ///< the same where many facets need the width themselves
constexpr double outer_px = 10.0;           ///< from the outermost column to the target's edge, at the least
constexpr double most_margin = 0.26;        ///< the share of the target's width that one side's columns may take
constexpr double most_margin_alone = 0.34;  ///< the same where the other side has none
constexpr double least_share = 0.75;  ///< the drawing may become this small for labels to stand beside their tapes
constexpr double beside_mm = 150.0;   ///< of wall, at the side without columns

/// No tape has confirmed it: it never stands as if one had.
bool is_proposed(const CountedReading* reading) {
    return reading != nullptr && reading->reading->how && reading->reading->how->is(How::proposed);
}

std::size_t column_of(Line line) { return static_cast<std::size_t>(line); }

/// The column of a height beside the opening: its parts, the pole's, pole to floor, floor to ceiling, the level line.
std::size_t column_group(const Station& station) {
    if (station.word.starts_with("pole.floor")) {
        return 2;
    }
    if (station.word.starts_with("pole.")) {
        return 1;
    }
    if (station.word.starts_with("ceiling.")) {
        return 3;
    }
    return station.word.starts_with("level.") ? 4 : 0;
}

int importance_of(std::string_view word) {
    constexpr std::array<std::string_view, 17> order{
        "opening.depth", "opening.diagonal", "level.",    "sill.",  "mouth.", "ceiling.", "wall.", "above.", "pole.",
        "below.",        "opening.",         "ordinate.", "gable.", "arch.",  "corner.",  "bay.",  "facet."};
    if (word.starts_with("corner.") && word.ends_with(".depth")) {
        return 1;
    }
    for (std::size_t i = 0; i < order.size(); ++i) {
        if (word.starts_with(order[i])) {
            const bool middle = word == "opening.width.middle";
            return static_cast<int>(i) * 2 + (middle ? 1 : 0);
        }
    }
    return 0;
}

/// All stations of the readings that don't add up.
std::vector<std::string> differing_stations(const WindowFigures& figures) {
    std::vector<std::string> stations;
    for (const Flag& flag : figures.flags) {
        if (flag.code == "does-not-add-up") {
            stations.insert(stations.end(), flag.stations.begin(), flag.stations.end());
        }
    }
    return stations;
}

/// Of these the likeliest suspect, else all that are named.
std::vector<std::string> doubtful_stations(const WindowFigures& figures) {
    std::vector<std::string> stations;
    for (const Flag& flag : figures.flags) {
        if (flag.code != "does-not-add-up") {
            continue;
        }
        if (!flag.suspects.empty()) {
            stations.push_back(flag.suspects.front().station);
        } else {
            stations.insert(stations.end(), flag.stations.begin(), flag.stations.end());
        }
    }
    return stations;
}

}  // namespace

Tapes::Tapes(const Window& window, const WindowFigures& figures, const WindowOutline& outline,
             const ElevationOptions& options)
    : outline_(outline),
      options_(options),
      doubtful_(doubtful_stations(figures)),
      differing_(differing_stations(figures)) {
    const auto shape = window.shape.known();
    if (!shape || !outline.worked) {
        return;
    }
    readings_ = counted_readings(window, *shape);
    const auto walk = walk_of(window);
    for (const Station& station : stations_of(*shape)) {
        if (is_reachable(station, walk)) {
            add(station);
        }
    }
    set_columns();
}

/// What can be tapped: all that the walk asks for, and of the rest what lies on the drawing anyhow.
bool Tapes::is_reachable(const Station& station, const std::vector<Station>& walk) const {
    if (!has_place(outline_, station.word)) {
        return false;
    }
    const bool walked = std::ranges::find(walk, station.word, &Station::word) != walk.end();
    const bool seldom = station.word.starts_with("pole.") || station.word.starts_with("level.") ||
                        station.word.starts_with("ordinate.");
    return walked || !seldom || station.word == options_.active_station;
}

void Tapes::add(const Station& station) {
    Tape tape{.station = station, .reading = find_counted(readings_, station.word)};
    tape.active = station.word == options_.active_station;
    tape.doubtful = std::ranges::find(doubtful_, station.word) != doubtful_.end();
    tape.differs = std::ranges::find(differing_, station.word) != differing_.end();
    tapes_.push_back(tape);
}

Line Tapes::line_of(const Station& station) const { return station.line.value_or(outline_.pole_line); }

bool Tapes::is_shown(const Tape& tape) const { return tape.active || (tape.reading != nullptr && options_.dimensions); }

double Tapes::label_px(const Tape& tape) const {
    const double size = (tape.active ? options_.active_size : options_.label_size) * options_.pixel;
    return options_.text_width(text_of(tape), size, tape.stands_out()) / options_.pixel;
}

void Tapes::measure_labels() {
    for (const Tape& tape : tapes_) {
        if (is_shown(tape) && tape.station.kind == StationKind::height) {
            double& widest = widest_px_[column_of(line_of(tape.station))];
            widest = std::max(widest, label_px(tape));
        }
    }
}

/// Columns from the opening outward. Where there is room, one that runs beside the labels of others stands outside
/// them.
void Tapes::set_columns_of(std::size_t line, const std::array<bool, column_count>& in_use, bool roomy) {
    columns_px_[line].fill(-1.0);
    last_px_[line] = 0.0;
    // Many columns stand closer rather than that the window becomes small.
    const double room = options_.width / options_.pixel * most_margin - first_column_px - outer_px;
    const auto count = static_cast<double>(std::ranges::count(in_use, true));
    const double narrow = std::min(column_step_px, std::max(4.0, room / std::max(1.0, count - 1.0)));
    for (std::size_t group = 0; group < column_count; ++group) {
        if (!in_use[group]) {
            continue;
        }
        const bool long_tape = group >= 2;
        const double step = roomy && long_tape ? widest_px_[line] + label_gap_px : narrow;
        last_px_[line] += last_px_[line] == 0.0 ? first_column_px : step;
        columns_px_[line][group] = last_px_[line];
    }
}

void Tapes::set_columns() {
    measure_labels();
    std::array<std::array<bool, column_count>, 3> in_use{};
    for (const Tape& tape : tapes_) {
        if (is_shown(tape) && tape.station.kind == StationKind::height) {
            in_use[column_of(line_of(tape.station))][column_group(tape.station)] = true;
        }
    }
    for (const Line line : all_lines) {
        set_columns_of(column_of(line), in_use[column_of(line)], line != Line::centre);
        if (margin(line) > most_room()) {
            set_columns_of(column_of(line), in_use[column_of(line)], false);
        }
    }
}

double Tapes::column_px(Line line, const Station& station) const {
    const auto group = column_group(station);
    const double at = columns_px_[column_of(line)][group];
    if (at >= 0.0) {
        return at;
    }
    const double last = std::max(last_px_[column_of(line)], first_column_px - column_step_px);
    const auto columns_out = 1 + group / 2;  // two kinds of tape share a column
    return last + column_step_px * static_cast<double>(columns_out);
}

double Tapes::margin(Line side) const {
    const double last = last_px_[column_of(side)];
    if (last == 0.0) {
        return 10.0 * options_.pixel;
    }
    const double gap = outline_.facets.size() > 3 ? least_gap_px : label_gap_px;
    return (last + widest_px_[column_of(side)] + gap) * options_.pixel;
}

/// What one side's columns may take: a share of the width, or what a tall drawing leaves beside the opening, were it a
/// quarter smaller than its height allows.
double Tapes::most_room() const {
    if (outline_.facets.size() > 3) {
        return options_.width * most_margin;
    }
    const double tall = outline_.at(outline_.ceiling, outline_.left_x[2]) - outline_.at(outline_.floor, 0.0);
    const double scale = least_share * options_.height / std::max(1.0, tall);
    const double left = options_.width - (outline_.width() + beside_mm) * scale - outer_px * options_.pixel;
    const bool both = last_px_[column_of(Line::left)] > 0.0 && last_px_[column_of(Line::right)] > 0.0;
    return both ? std::max(options_.width * most_margin, left / 2.0)
                : std::max(options_.width * most_margin_alone, left);
}

double Tapes::capped_margin(Line side) const { return std::min(margin(side), most_room()); }

std::string Tapes::text_of(const Tape& tape) const {
    if (tape.active && !options_.typed.empty()) {
        return tape.station.is_angle() ? options_.typed + "°" : options_.typed;
    }
    if (tape.reading == nullptr) {
        return {};
    }
    const std::string text = tape.station.is_angle() ? write_angle(tape.reading->angle.value_or(Angle()),
                                                                   options_.length_style.decimal, true)
                                                     : write_length(tape.reading->value, options_.length_style);
    return text + (is_proposed(tape.reading) ? " " + say("proposed") : "");
}

std::string Tapes::says_of(const Tape& tape) const {
    LengthStyle style = options_.length_style;
    style.with_unit = true;
    std::string says = station_words(tape.station);
    if (tape.reading != nullptr) {
        says +=
            ": " + (tape.station.is_angle() ? write_angle(tape.reading->angle.value_or(Angle()), style.decimal, true)
                                            : write_length(tape.reading->value, style));
    } else {
        says += ": " + say("not measured yet");
    }
    says += is_proposed(tape.reading) ? ", " + say("proposed") : "";
    if (tape.active) {
        says +=
            "; " + (options_.typed.empty() ? say("being measured") : say("being measured, {} typed", options_.typed));
    }
    return says;
}

Spot Tapes::mark_spot(PlumbMark mark, Line line) const {
    const double u = line == Line::left ? 0.0 : line == Line::right ? 1.0 : 0.5;
    const double x = outline_.x_of(line);
    // In the middle of its facet, or under the crown.
    const bool on_its_own = outline_.is_folded() || (outline_.is_peaked() && line == Line::centre);
    switch (mark) {
        case PlumbMark::floor:
            return {x, outline_.at(outline_.floor, x)};
        case PlumbMark::sill:
            return on_its_own ? Spot{x, outline_.at(outline_.sill, x)} : outline_.spot(u, 0.0);
        case PlumbMark::head:
            return on_its_own ? Spot{x, outline_.at(outline_.head, x)} : outline_.spot(u, 1.0);
        case PlumbMark::ceiling:
            return {x, outline_.at(outline_.ceiling, x)};
        case PlumbMark::pole:
            return {x, outline_.at(outline_.pole, x)};
        case PlumbMark::level:
            break;
    }
    return {x, outline_.at(outline_.level, x)};
}

TapeRun Tapes::height_run(const DrawingBoard& board, const Station& station) const {
    const Line line = line_of(station);
    const double away = board.mm_of_px(column_px(line, station));
    double x = 0.0;
    if (line == Line::left) {
        x = std::min({outline_.left_x[0], outline_.left_x[1], outline_.left_x[2]}) - away;
    } else if (line == Line::right) {
        x = std::max({outline_.right_x[0], outline_.right_x[1], outline_.right_x[2]}) + away;
    } else {
        x = outline_.x_of(Line::centre) + away - board.mm_of_px(first_column_px - 9.0);
    }
    TapeRun run;
    const auto from = mark_spot(station.from, line);
    const auto to = mark_spot(station.to, line);
    run.edge = {board.at(from), board.at(to)};
    // Floor and ceiling are met where the tape stands, so that its ends lie on their slopes.
    const auto height_at = [&](PlumbMark mark, double mark_height) {
        return mark == PlumbMark::floor     ? outline_.at(outline_.floor, x)
               : mark == PlumbMark::ceiling ? outline_.at(outline_.ceiling, x)
                                            : mark_height;
    };
    run.run = {board.at({x, height_at(station.from, from.second)}), board.at({x, height_at(station.to, to.second)})};
    return run;
}

TapeRun Tapes::across_run(const DrawingBoard& board, const Station& station) const {
    TapeRun run;
    if (station.kind == StationKind::diagonal) {
        const bool rising = station.word.ends_with("rising");
        run.run = {board.at(outline_.spot(0.0, rising ? 0.0 : 1.0)), board.at(outline_.spot(1.0, rising ? 1.0 : 0.0))};
        run.edge = run.run;
        return run;
    }
    const bool top = station.word.ends_with("top");
    const bool bottom = station.word.ends_with("bottom");
    const double v = top ? 0.86 : bottom ? 0.14 : 0.5;
    const double edge = top ? 1.0 : bottom ? 0.0 : 0.5;
    run.run = {board.at(outline_.spot(0.0, v)), board.at(outline_.spot(1.0, v))};
    run.edge = {board.at(outline_.spot(0.0, edge)), board.at(outline_.spot(1.0, edge))};
    return run;
}

TapeRun Tapes::wall_run(const DrawingBoard& board, const Station& station) const {
    const double unknown = board.mm_of_px(24.0);
    const double left = outline_.stop_left.value_or(outline_.left_x[2] - unknown);
    const double right = outline_.stop_right.value_or(outline_.right_x[2] + unknown);
    const bool total = station.word == "wall.total";
    const double from = station.word == "wall.right" ? outline_.right_x[2] : left;
    const double to = station.word == "wall.left" ? outline_.left_x[2] : right;
    const double y = outline_.at(outline_.pole, outline_.x_of(Line::centre));
    const double over = board.mm_of_px(total ? 10.0 : -10.0);
    TapeRun run;
    run.run = {board.at({from, y + over}), board.at({to, y + over})};
    run.edge = {board.at({from, y}), board.at({to, y})};
    return run;
}

/// What runs out of the picture is drawn aslant, as a short tape.
TapeRun Tapes::out_of_plane_run(const DrawingBoard& board, const Station& station) const {
    const bool depth = station.kind == StationKind::depth;
    const Point corner = board.at(depth ? outline_.spot(1.0, 1.0) : outline_.spot(1.0, 0.0));
    const double reach = board.px(15.0);
    TapeRun run;
    run.run = {corner, depth ? Point{corner.x - reach, corner.y + reach} : Point{corner.x + reach, corner.y + reach}};
    run.edge = run.run;
    return run;
}

Tapes::Run Tapes::run_of(const DrawingBoard& board, const DrawingBoard* plan, const Tape& tape) const {
    Run run{.tape = {}, .placed = placed_run(board, plan, outline_, tape.station.word)};
    if (run.placed) {
        run.tape.run = run.placed->run;
        run.tape.edge = run.placed->edge;
    } else {
        switch (tape.station.kind) {
            case StationKind::height:
                run.tape = height_run(board, tape.station);
                break;
            case StationKind::wall:
                run.tape = wall_run(board, tape.station);
                break;
            case StationKind::depth:
            case StationKind::projection:
                run.tape = out_of_plane_run(board, tape.station);
                break;
            default:
                run.tape = across_run(board, tape.station);
                break;
        }
    }
    run.tape.station = std::string(tape.station.word);
    run.tape.says = says_of(tape);
    run.tape.measured = tape.reading != nullptr;
    return run;
}

void Tapes::draw_tape(const DrawingBoard& board, Elevation& elevation, const Tape& tape, const Run& run) const {
    const bool thread = tape.stands_out() || tape.differs;
    const Role role = thread ? Role::thread : Role::dimension;
    const double width = board.px(tape.active     ? stroke_px::heavy
                                  : tape.doubtful ? stroke_px::strong
                                  : tape.differs  ? stroke_px::fine
                                                  : stroke_px::hair);
    const auto add = [&](Role as, double stroke_width, std::vector<Point> points) {
        elevation.strokes.push_back({.form = points.size() > 2 ? Form::polyline : Form::line,
                                     .role = as,
                                     .points = std::move(points),
                                     .width = stroke_width,
                                     .part = "tape",
                                     .station = run.tape.station});
    };
    if (run.placed && !run.placed->arc.empty()) {
        add(role, width, run.placed->arc);
        return;
    }
    const Point a = run.tape.run[0];
    const Point b = run.tape.run[1];
    if (tape.active && tape.station.kind == StationKind::height) {
        add(Role::guide, board.px(stroke_px::fine), {a, {run.tape.edge[0].x, a.y}});
        add(Role::guide, board.px(stroke_px::fine), {b, {run.tape.edge[1].x, b.y}});
    }
    add(role, width, {a, b});
    const double length = std::hypot(b.x - a.x, b.y - a.y);
    if (length <= 0.0) {
        return;
    }
    const double nx = -(b.y - a.y) / length * board.px(tick_px);
    const double ny = (b.x - a.x) / length * board.px(tick_px);
    for (const Point end : {a, b}) {
        add(role, std::min(width, board.px(stroke_px::strong)), {{end.x - nx, end.y - ny}, {end.x + nx, end.y + ny}});
    }
}

WantedLabel Tapes::label_for(const Tape& tape, const Run& run, const DrawingBoard& board) const {
    WantedLabel label;
    label.text = text_of(tape);
    label.station = run.tape.station;
    label.from = run.tape.run[0];
    label.to = run.tape.run[1];
    label.size = board.px(tape.active ? options_.active_size : options_.label_size);
    label.bold = tape.stands_out();
    label.role = label.bold ? Role::thread : Role::ink;
    label.importance = importance_of(run.tape.station) + (tape.doubtful ? 100 : 0);
    label.must = tape.active;
    label.over_own = !label.bold && tape.station.kind != StationKind::height;
    const Line line = line_of(tape.station);
    label.outward = tape.station.kind == StationKind::height && line != Line::left ? 1.0 : -1.0;
    if (run.placed) {
        label.outward = run.placed->outward;
        label.over_own = run.placed->over_own && (!label.bold || run.placed->label);
        if (run.placed->label) {
            label.from = (*run.placed->label)[0];
            label.to = (*run.placed->label)[1];
        }
    }
    return label;
}

std::vector<WantedLabel> Tapes::draw(DrawingBoard& board, const DrawingBoard* plan, Elevation& elevation) const {
    std::vector<WantedLabel> wanted;
    for (const Tape& tape : tapes_) {
        const Run run = run_of(board, plan, tape);
        if (is_shown(tape)) {
            draw_tape(board, elevation, tape, run);
            if (!text_of(tape).empty()) {
                wanted.push_back(label_for(tape, run, board));
            }
        }
        elevation.runs.push_back(run.tape);
    }
    return wanted;
}

}  // namespace truehang
