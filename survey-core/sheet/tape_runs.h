// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "sheet/drawing_board.h"
#include "sheet/elevation.h"
#include "sheet/label_placing.h"
#include "sheet/shape_runs.h"
#include "sheet/window_outline.h"
#include "survey/counted.h"

#include <algorithm>
#include <array>
#include <optional>
#include <string>
#include <vector>

namespace truehang {

/// The tapes of a window's drawing: where each station runs, which are drawn, and the labels that they want. Heights
/// stand in columns beside the opening, the parts nearest to it, each column so many px further out.
class Tapes {
public:
    Tapes(const Window& window, const WindowFigures& figures, const WindowOutline& outline,
          const ElevationOptions& options);

    /// The room that columns and their labels need beside the opening, in target units.
    [[nodiscard]] double left_margin() const { return capped_margin(Line::left); }
    [[nodiscard]] double right_margin() const { return capped_margin(Line::right); }

    /// Adds every tape's run, draws those that are measured or being measured, and returns the labels they want. `plan`
    /// is the board of a bay's plan, or null.
    [[nodiscard]] std::vector<WantedLabel> draw(DrawingBoard& board, const DrawingBoard* plan,
                                                Elevation& elevation) const;

private:
    static constexpr std::size_t column_count = 5;
    struct Tape {
        Station station;
        const CountedReading* reading = nullptr;
        bool active = false;
        bool doubtful = false;  ///< the likeliest of those that may be at fault
        bool differs = false;   ///< one of those that don't add up
        [[nodiscard]] bool stands_out() const { return active || doubtful; }
    };
    /// A tape with its place on the drawing.
    struct Run {
        TapeRun tape;
        std::optional<PlacedRun> placed{};
    };

    void add(const Station& station);
    void measure_labels();
    void set_columns();
    void set_columns_of(std::size_t line, const std::array<bool, column_count>& in_use, bool roomy);
    [[nodiscard]] bool is_shown(const Tape& tape) const;
    [[nodiscard]] double label_px(const Tape& tape) const;
    [[nodiscard]] std::string text_of(const Tape& tape) const;
    [[nodiscard]] std::string says_of(const Tape& tape) const;
    [[nodiscard]] double margin(Line side) const;
    [[nodiscard]] double most_room() const;
    [[nodiscard]] double capped_margin(Line side) const;
    [[nodiscard]] Line line_of(const Station& station) const;
    [[nodiscard]] double column_px(Line line, const Station& station) const;
    [[nodiscard]] bool is_reachable(const Station& station, const std::vector<Station>& walk) const;
    [[nodiscard]] Run run_of(const DrawingBoard& board, const DrawingBoard* plan, const Tape& tape) const;
    [[nodiscard]] TapeRun height_run(const DrawingBoard& board, const Station& station) const;
    [[nodiscard]] TapeRun across_run(const DrawingBoard& board, const Station& station) const;
    [[nodiscard]] TapeRun wall_run(const DrawingBoard& board, const Station& station) const;
    [[nodiscard]] TapeRun out_of_plane_run(const DrawingBoard& board, const Station& station) const;
    [[nodiscard]] Spot mark_spot(PlumbMark mark, Line line) const;
    void draw_tape(const DrawingBoard& board, Elevation& elevation, const Tape& tape, const Run& run) const;
    [[nodiscard]] WantedLabel label_for(const Tape& tape, const Run& run, const DrawingBoard& board) const;

    const WindowOutline& outline_;
    const ElevationOptions& options_;
    std::vector<CountedReading> readings_;
    std::vector<std::string> doubtful_, differing_;
    std::vector<Tape> tapes_;
    std::array<std::array<double, column_count>, 3>
        columns_px_{};                   ///< by line: where each column in use stands, else -1
    std::array<double, 3> last_px_{};    ///< by line: the outermost column in use, else 0
    std::array<double, 3> widest_px_{};  ///< by line: the widest label of its heights
};

}  // namespace truehang
