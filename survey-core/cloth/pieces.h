// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "units/length.h"

#include <optional>
#include <string>
#include <vector>

// What is cut for one layer. Lengths that are cut are whole millimetres, rounded up.

namespace truehang {

/// The other answer where the cloth lies on an edge.
struct ClothEdge {
    std::string when;                 ///< "the width is 12 mm more"
    std::optional<double> repeats{};  ///< in a drop, where that is what differs
    double widths_each = 0.0;
    int widths = 0;
    Length cut_drop;
    Length length;
    std::optional<Length> railroaded;
};

struct Cloth {
    std::string fabric;
    double widths_each = 0.0;        ///< in steps of 1/2 for a pair
    int widths = 0;                  ///< cut for the window
    std::optional<double> fullness;  ///< reached; none for a blind
    Length flat;                     ///< of one curtain, on the table
    Length cut_drop;
    Length length;                     ///< the total of its drops
    double repeats = 0.0;              ///< in one drop; 0: cut without regard to a pattern
    std::optional<Length> railroaded;  ///< total where the cloth may be turned sideways and that takes less
    std::vector<Length> joins{};       ///< of one curtain, from its leading edge; of a blind, from its left edge
    bool one_way = false;              ///< all pieces the same way up
    std::vector<ClothEdge> edges{};    ///< one for each flag `on-the-edge` or `edge-decided`
};

struct Lining {
    std::string fabric;
    double widths_each = 0.0;
    int widths = 0;
    Length flat;
    Length cut_drop;
    Length length;
    bool separate = false;  ///< hangs on its own tape beside the curtain
};

struct Tabs {
    Length cut_length;
    Length hang;  ///< pole's centre line to the curtain's top edge
    int each = 0;
    Length spacing;  ///< centre to centre, on the flat
    Length cut_width;
    Length length;                    ///< cloth added to the order
    std::vector<Length> positions{};  ///< centres from the leading edge, on the flat
};

struct Eyelets {
    int each = 0;
    Length spacing;
    Length first;                     ///< its centre from the edge, on the flat
    std::vector<Length> positions{};  ///< centres from the leading edge, on the flat
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

/// Pleats of one curtain, on the flat. Its return and overlap stay unpleated.
struct Pleats {
    int each = 0;
    Length pleat;                   ///< cloth taken by one
    Length space;                   ///< between two
    std::vector<Length> positions;  ///< centres from the leading edge
};

/// Hooks of a heading that hangs by hooks.
struct Hooks {
    int each = 0;
    int in_all = 0;
    Length spacing;  ///< when hung
};

struct TieBack {
    std::string kind;                  ///< tie-back or holdback
    std::optional<Length> height;      ///< above the floor; none where the readings don’t reach to it
    std::optional<Length> length;      ///< of a tie-back, eye to eye
    int count = 0;                     ///< for the window
    std::optional<Length> cut_length;  ///< of one of its pieces, two to a tie-back
    std::optional<Length> cut_width;
};

/// Something bought beside the cloth, for one layer: by number, by length, or so many of a length each.
struct Bought {
    std::string what;
    int count = 0;    ///< 0: bought by length
    Length length{};  ///< in all
    Length each{};    ///< of one, where a number is cut to a length
};

/// What is known of the load and what isn’t. It never says that a fixing holds.
struct Load {
    std::optional<Mass> bracket;         ///< on the worst bracket
    std::vector<std::string> not_known;  ///< what would have to be known
};

/// What the workroom makes up beside the cloth itself.
struct Making {
    std::optional<Lining> second_lining;
    std::optional<Pleats> pleats;
    std::optional<Hooks> hooks;
    std::optional<TieBack> tie_back;
    std::vector<Bought> bought;
    std::optional<Load> load;
};

/// Pieces of one kind cut from one fabric for a layer. `total` is the length they take off the roll, exact.
struct Piece {
    std::string fabric;
    std::string what;  ///< drops, tabs, facing, pelmet, tie-backs, half repeat
    Length length;     ///< of one
    int count = 0;
    Length total;
    Length least{};        ///< of one before whole repeats, where it is cut to the pattern
    bool matched = false;  ///< cut to the pattern
};

}  // namespace truehang
