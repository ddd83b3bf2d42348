// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "units/length.h"

#include <optional>
#include <string>
#include <vector>

// What is cut for one layer. Lengths that are cut are whole millimetres, rounded up.

namespace truehang {

struct Cloth {
    std::string fabric;
    double widths_each = 0.0;        ///< in steps of 1/2 for a pair
    int widths = 0;                  ///< cut for the window
    std::optional<double> fullness;  ///< reached; none for a blind
    Length flat;                     ///< of one curtain, on the table
    Length cut_drop;
    Length length;                     ///< the total of its drops
    std::optional<Length> railroaded;  ///< total where the cloth may be turned sideways and that takes less
};

struct Lining {
    std::string fabric;
    double widths_each = 0.0;
    int widths = 0;
    Length flat;
    Length cut_drop;
    Length length;
};

struct Tabs {
    Length cut_length;
    Length hang;  ///< pole's centre line to the curtain's top edge
    int each = 0;
    Length spacing;  ///< centre to centre, on the flat
    Length cut_width;
    Length length;  ///< cloth added to the order
};

struct Eyelets {
    int each = 0;
    Length spacing;
    Length first;  ///< its centre from the edge, on the flat
};

struct Weights {
    int each = 0;
};

struct Blind {
    int rods = 0;
    Length fold;
    Length up;  ///< its depth drawn up
};

struct PelmetFigures {
    Length depth, face;
    int widths = 0;
    Length cut_drop, length;
};

/// Pieces of one kind cut from one fabric for a layer. `total` is the length they take off the roll, exact.
struct Piece {
    std::string fabric;
    std::string what;  ///< drops, tabs, facing, pelmet, half repeat
    Length length;     ///< of one
    int count = 0;
    Length total;
};

}  // namespace truehang
