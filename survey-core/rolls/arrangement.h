// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "rolls/rows.h"

#include <compare>
#include <cstdint>
#include <optional>
#include <tuple>
#include <vector>

namespace truehang::laying {

/// Whole numbers of a linear congruential row (D. E. Knuth, The Art of Computer Programming 2, 3.3.4; his MMIX).
class Draws {
public:
    std::uint32_t next() {
        state_ = state_ * 6364136223846793005U + 1442695040888963407U;
        return static_cast<std::uint32_t>(state_ >> 32U);
    }
    /// 0 up to `count` less one.
    std::size_t below(std::size_t count) {
        return static_cast<std::size_t>((static_cast<std::uint64_t>(next()) * count) >> 32U);
    }
    /// In thousandths, spread like the logarithm to base 2 of one over a chance; a straight line between whole powers.
    Um patience();

private:
    std::uint64_t state_ = 1;
};

/// What is to be least: windows left out, then split rooms, then cloth.
struct Taken {
    int out = 0;
    int split = 0;  ///< rooms over several lots
    Um used = 0;
    Um missing = 0;  ///< length of the windows left out; decides nothing
    friend auto operator<=>(const Taken& a, const Taken& b) {
        return std::tie(a.out, a.split, a.used) <=> std::tie(b.out, b.split, b.used);
    }
    friend bool operator==(const Taken& a, const Taken& b) { return a <=> b == 0; }
};

/// Where everything lies.
struct Arranged {
    std::vector<Row> rows;  ///< by roll
    std::vector<Reckoned> reckoned;
    std::vector<int> lot_of;  ///< by window
    Taken taken;
};

/// Every window in a lot, or in none, and its runs in rows along that lot's rolls. A change is tried, then settled or
/// undone. Used by the files of this folder alone.
class Arrangement {
public:
    explicit Arrangement(const LotsProblem& problem);

    [[nodiscard]] int lot_of(std::size_t window) const { return at_.lot_of[window]; }
    [[nodiscard]] int lot_of_run(std::size_t run) const {
        return at_.lot_of[static_cast<std::size_t>(lines_.window_of(static_cast<int>(run)))];
    }
    [[nodiscard]] std::size_t roll_of(std::size_t run) const { return static_cast<std::size_t>(roll_of_[run]); }
    [[nodiscard]] const std::vector<Run>& runs() const { return lines_.runs(); }
    [[nodiscard]] const Row& row(std::size_t roll) const { return at_.rows[roll]; }
    [[nodiscard]] long steps() const { return steps_; }

    [[nodiscard]] const Arranged& arranged() const { return at_; }
    /// False where the plan can't be read as rows; loose pieces aren't read.
    bool read(const LotsPlan& plan);
    void go_to(const Arranged& arranged);
    /// What it takes, then the lots in use, then the longest useful remnant, negative: less is better.
    [[nodiscard]] std::tuple<Taken, int, Um> key() const;

    /// The row, to be changed; it is reckoned by `holds`.
    Row& change(std::size_t roll);
    /// Whether what was changed can be laid.
    bool holds();
    void take_out(std::size_t window);
    /// Run by run where each takes least; false where one fits nowhere. What was changed before must hold.
    bool put_in(std::size_t window, int lot);
    bool insert_best(int run, int lot);
    /// Takes all runs off a roll.
    Row clear(std::size_t roll);
    /// What it takes with the changes.
    [[nodiscard]] Taken tried() const;
    void settle();
    void undo();
    /// Now and then a place is overlooked by `insert_best`, so that it isn't the same one every time.
    void overlooks(bool some) { overlooks_ = some; }
    Draws& draws() { return draws_; }

    /// Nothing where a loose piece finds no place.
    [[nodiscard]] std::optional<LotsPlan> laid_out() const;

private:
    struct Saved {
        std::size_t roll = 0;
        Row row;
        Reckoned reckoned;
    };
    void note_rolls(std::size_t roll);
    /// Counts windows left out and split rooms.
    void count_lots(Taken& taken) const;
    void insert(std::size_t roll, std::size_t place, int run);
    [[nodiscard]] Laid laid_lot(std::size_t lot) const;

    const LotsProblem& problem_;
    Rows lines_;
    Arranged at_;
    std::vector<int> roll_of_;  ///< by run
    long steps_ = 0;
    Draws draws_;
    bool overlooks_ = false;
    std::vector<Saved> saved_;  ///< the first `touched_` of them
    std::size_t touched_ = 0;
    std::vector<int> lots_before_;
    bool lots_changed_ = false;
    Row tried_;
};

/// Rooms over several lots.
[[nodiscard]] int split_rooms(const LotsProblem& problem, const std::vector<int>& lot_of);

}  // namespace truehang::laying
