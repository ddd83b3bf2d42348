// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "survey/words.h"
#include "units/length.h"
#include "units/length_text.h"

#include <map>
#include <optional>
#include <string>
#include <utility>
#include <vector>

// The survey as the document has it (format truehang.survey/1): what was measured, asked for and agreed. Lengths carry
// their unit in their type; an absent key is an empty optional, string or list; a key this version doesn't know stands
// in `extra` of the object it stood in, as JSON text, and is written back.

namespace truehang {

/// Unknown keys of one JSON object: name and value as JSON text, in the order they stood.
using Extra = std::vector<std::pair<std::string, std::string>>;

struct Tape {
    std::optional<Word<TapeClass>> accuracy;  ///< `class`; none: II
    std::optional<Length> length;
    std::optional<Length> graduation;  ///< none: 1 mm
    std::optional<Length> case_length;
    Extra extra;
};

/// House rules: numbers by key (mm, shares and counts as the key's name says), `head_mm` by heading.
struct HouseRuleEntries {
    std::string name;
    std::optional<long long> version;       ///< 1 and up, of the document they came from
    std::string date;                       ///< `YYYY-MM-DD`, when they were set
    std::map<std::string, double> numbers;  ///< known and unknown keys alike whose value is a number
    std::map<std::string, double> head_mm;  ///< by heading word
    Extra extra;                            ///< unknown keys whose value isn't a number
};

struct Mark {
    std::string kind;  ///< arrow, line, text, station
    std::vector<std::pair<std::string, std::pair<double, double>>>
        points;  ///< named points, fractions of the upright picture
    std::string text;
    Extra extra;
};

/// Where one corner was tapped, once or several times: fractions of the upright picture.
using Taps = std::vector<std::pair<double, double>>;
/// Of something with four corners, clockwise in the picture from its top left: at most four; one that isn’t tapped yet
/// has no taps, or isn’t there.
using TappedCorners = std::vector<Taps>;

/// A sheet of known size that lies flat on the wall.
struct FlatSheet {
    Length width;   ///< from its first corner to its second
    Length height;  ///< from its second corner to its third
    TappedCorners corners;
    Extra extra;
};

/// A photo as a rough tape: what was tapped on it, all in one plane. The sizes follow from it and aren’t kept.
struct PhotoPlane {
    long long width_px = 0, height_px = 0;  ///< of the upright picture as it was tapped
    std::vector<FlatSheet> sheets;
    TappedCorners opening;
    Extra extra;
};

struct Photo {
    std::string sha256;
    std::string media_type;
    long long bytes = 0;
    std::string caption;
    std::string obstruction;  ///< id of the window's obstruction that it shows; empty, or none there: the window's own
    std::vector<Mark> marks;
    std::optional<PhotoPlane> plane;
    Extra extra;
};

struct Fabric {
    std::string id;
    std::optional<Word<FabricRole>> role;
    std::string name;
    Length width;
    Length selvedge;
    Length repeat;  ///< along the roll; zero: none
    std::optional<Word<Match>> match;
    std::optional<Length> repeat_across;
    std::optional<Length> skew;
    std::optional<bool> one_way;
    std::optional<bool> railroad;
    std::optional<double> mass_gsm;
    double shrinkage_pct = 0.0;  ///< 0 to 50, along the length
    std::optional<int> blue_wool;
    std::optional<double> price_per_m;
    std::string currency;
    std::string colour;          ///< sRGB, `#rrggbb`, to draw it with; another text is kept and drawn as none
    std::optional<Photo> photo;  ///< of the cloth itself, to draw it with
    Extra extra;
};

struct Reading {
    std::string id;
    std::string station;
    std::optional<Length> value;  ///< a length station's value
    std::optional<Angle> angle;   ///< an angle station's value
    std::string typed;
    std::string taken_at;  ///< RFC 3339 as written
    std::string replaces;
    std::optional<Word<How>> how;      ///< none: measured
    std::optional<Length> u;           ///< `u_mm`, of an estimate
    std::optional<Angle> angle_u{};    ///< `u_deg`, of an estimated angle
    std::optional<Word<Stage>> stage;  ///< none: planned
    Extra extra;
};

struct NotTaken {
    std::string station;
    std::string reason;
    Extra extra;
};

struct Obstruction {
    std::string id;
    std::optional<Word<ObstructionKind>> kind;
    std::optional<Length> left;  ///< from the opening's left edge, negative to the left of it
    std::optional<Length> width;
    std::optional<Length> bottom;  ///< above the finished floor
    std::optional<Length> height;
    std::optional<Length> depth;  ///< out from the wall face
    std::string note;
    Extra extra;
};

struct Hardware {
    std::string name;                        ///< what the surveyor or the maker calls it
    std::optional<Word<HardwareKind>> kind;  ///< none: pole
    std::optional<Word<Supply>> supply;
    std::optional<Word<Hang>> hang;    ///< none: level
    std::optional<Word<Run>> run;      ///< none: straight
    std::optional<Word<Stage>> stage;  ///< fixed: it is up; none: planned
    std::optional<Length> diameter;
    std::optional<Length> length;      ///< without finials
    std::optional<Length> left;        ///< from the opening's left edge; none: centred
    std::optional<Length> projection;  ///< wall face to centre line
    std::optional<Length> finial;
    std::optional<int> brackets;
    std::vector<Length> bracket_at;  ///< from its left end
    Length return_depth;             ///< `return_mm`
    Length overlap;                  ///< in all, once
    std::optional<Mass> mass;
    std::optional<Mass> rated;          ///< `rated_kg`: what its maker says all of it carries
    std::optional<Mass> bracket_rated;  ///< `bracket_rated_kg`: what its maker says one bracket carries
    std::optional<Mass> fixing_rated;   ///< `fixing_rated_kg`: what the fixings of one bracket hold in this wall
    Extra extra;
};

struct TieBackAsked {
    std::optional<Word<TieBackKind>> kind;  ///< none: a tie-back
    std::optional<Length> height;           ///< above the floor; none: by house rule
    std::optional<Length> length;           ///< of a tie-back, eye to eye; none: round the drawn-back curtain
    Extra extra;
};

/// What the surveyor chose where two answers lay near one another. It holds while it is one of the answers.
struct Decided {
    std::optional<double> widths_each;  ///< of the face cloth, in one curtain or blind
    std::optional<double> repeats;      ///< in one drop of the face cloth; halves in a half-drop match
    Extra extra;

    friend bool operator==(const Decided&, const Decided&) = default;
};

struct PelmetAsked {
    std::optional<Length> depth;
    Length return_depth;
    Extra extra;
};

struct Treatment {
    std::optional<Word<Heading>> heading;
    std::optional<Word<Fit>> fit;
    std::optional<Word<Layout>> layout;  ///< none: pair
    std::optional<double> fullness;      ///< none: the heading's own
    std::optional<Word<HemAt>> length;   ///< none: floor
    std::optional<Length> bottom;        ///< for `given`, above the floor
    std::optional<std::string> fabric, lining, interlining, second_lining;
    std::optional<Word<LiningHung>> lining_hung;  ///< none: sewn in
    std::optional<Word<TopEdge>> top;             ///< none: straight
    std::optional<Word<DropsAt>> drops;           ///< none: one
    std::optional<Length> tab_cut;
    std::optional<PelmetAsked> pelmet;
    std::optional<TieBackAsked> tie_back;
    std::optional<Word<Operation>> operation;  ///< none: not known, which counts as corded on a blind
    std::optional<Word<WeightKind>> weights;   ///< none: steel or chain
    std::optional<Decided> decided;
    Extra extra;
};

/// What hangs on a window: one of these, or several from glass to room.
struct Layer {
    std::string id;
    std::optional<Hardware> hardware;
    std::optional<Treatment> treatment;
    Extra extra;
};

/// One look at which way a window faces: a compass, an edge’s shadow on the sill, or the street’s line on a plan.
struct BearingTaken {
    std::string id;
    std::optional<Word<BearingFrom>> from;
    std::string taken_at;              ///< RFC 3339
    std::optional<Angle> magnetic;     ///< of a compass, from magnetic north
    std::optional<double> field_nt;    ///< of a compass: the strength that it felt
    std::optional<Angle> bearing;      ///< of a plan, from true north
    std::optional<Angle> street;       ///< of a plan, in place of `bearing`: the line of the street
    std::optional<Word<Looks>> looks;  ///< to which side of that line the window looks
    std::optional<Angle> u;            ///< `u_deg`, of a compass or a plan; none: by the way it was taken
    std::optional<Length> depth;       ///< of a shadow: from the edge’s foot straight into the room
    std::vector<Length> to_left;       ///< at that depth: the shadow’s edges to the left of what throws them
    std::optional<Length> reading_u;   ///< `u_mm`, of each of them; none: 1 mm
    std::optional<double> clock_s;     ///< one standard uncertainty of the time; none: 30 s
    Extra extra;
};

/// Something that stands before the sky outside, as seen from the middle of the window.
struct SkylinePart {
    std::string id;
    std::optional<Word<SkylineKind>> kind;  ///< none: a house
    std::optional<Angle> from, to;          ///< from straight out, to the left negative, -90 to 90
    std::optional<Angle> height;            ///< of its top above the level, 0 to 90
    Extra extra;
};

/// What a window looks out on, and through.
struct Outlook {
    std::optional<Length> glass_width, glass_height;  ///< none: the opening
    std::optional<Length> outer_depth;                ///< how far the glass stands back outside; none: 100 mm
    std::vector<BearingTaken> bearings;
    std::vector<SkylinePart> skyline;
    Extra extra;
};

struct Window {
    std::string id;
    std::string name;
    Word<Shape> shape;
    std::optional<Angle> bearing;  ///< counts where `outlook` has none
    std::string bearing_from;
    std::optional<Outlook> outlook;
    std::vector<Reading> readings;
    std::vector<NotTaken> not_taken;
    std::vector<Obstruction> obstructions;
    std::vector<Photo> photos;
    std::string notes;
    bool layered = false;  ///< the document has `layers`; else `layers` holds at most one, with no id
    std::vector<Layer> layers;
    Extra extra;
};

/// How large a room is, for its daylight.
struct Interior {
    std::optional<Length> width, depth, height;  ///< along the window’s wall, away from it, floor to ceiling
    std::optional<Word<Surfaces>> surfaces;      ///< none: middling
    Extra extra;
};

struct Room {
    std::string id;
    std::string name;
    std::string wall;
    std::string use;
    std::optional<bool> young_children;  ///< none: unknown, which counts as yes
    std::vector<std::string> heat;
    std::optional<Interior> interior;
    std::vector<Photo> photos;  ///< of the room itself
    std::vector<Window> windows;
    Extra extra;
};

struct Client {
    std::string name, phone, email;
    Extra extra;
};

struct Site {
    std::string address;
    std::optional<double> latitude, longitude;  ///< degrees
    std::optional<double> accuracy_m, elevation_m;
    Extra extra;
};

/// A signature as it was drawn: the strokes of a finger as points, fractions of their box, x to the right, y down.
struct Signature {
    std::optional<double> aspect;  ///< the box’s width over its height; none: 3
    std::vector<std::vector<std::pair<double, double>>> strokes;
    Extra extra;
};

/// One cloth of what was agreed for a layer.
struct AgreedCloth {
    std::string fabric;  ///< id
    std::string name;
    Length length;
    std::optional<double> cost;  ///< at its price by the metre, where there was one
    std::string currency;
    Extra extra;
};

/// What was agreed for one layer of one window, as it was worked then. Later figures don’t change it.
struct AgreedLayer {
    std::string window, layer;  ///< ids; no layer where the window isn’t layered
    std::string title;          ///< "Parlour, south window"
    std::string says;           ///< what hangs there, in the trade’s words
    std::optional<Word<Heading>> heading;
    int curtains = 0;
    Length width, drop;  ///< finished, of each
    std::vector<AgreedCloth> cloths;
    Extra extra;
};

/// The frozen copy that a client put their name to.
struct Agreed {
    std::string rules;  ///< the name of the house rules
    std::optional<long long> revision;
    std::vector<AgreedLayer> layers;
    std::string digest;  ///< SHA-256 of the rest of it, written on one line
    Extra extra;
};

struct SignedOff {
    std::string by;
    std::string at;  ///< RFC 3339
    std::optional<Signature> signature;
    std::optional<Agreed> agreed;
    Extra extra;
};

/// One thing that two people changed differently, and neither change was lost: it stands in the document as one of
/// them has it, and what the others have stands here, until a person settles it by taking this away.
struct ChangedTwice {
    /// Where, as a JSON pointer (RFC 6901) with ids in place of indexes and windows straight under the survey:
    /// `/windows/w1/notes`, `/windows/w1/layers/#1/treatment/length+bottom_mm` (keys that are changed together, the
    /// value an object of them), `/rooms` (the order of a list: ids of those that don’t stand in their own order).
    std::string at;
    /// All that it was changed to, what stands in the document among them: JSON text, none where the key isn’t there.
    std::vector<std::optional<std::string>> values;
    bool removed = false;  ///< in place of `values`: one took it out while another changed it, so it was kept
    /// Settled by two in two ways, or by one while another changed it: to be settled once more. Of what is so already
    /// it turns false when that happens yet again: it tells such an entry from the one that was settled.
    bool again = false;
    Extra extra;
};

struct Survey {
    std::string id;
    std::optional<long long> revision;
    /// SHA-256 of the documents that this one was made from, as they were sent or handed on, newest first; none: not
    /// told. It belongs to the sending, not to what was measured.
    std::optional<std::vector<std::string>> parents;
    std::string title;
    std::optional<Client> client;
    std::optional<Site> site;
    std::string measured_by;
    std::string measured_at;
    std::string time_zone;
    std::optional<std::string> entry_unit;  ///< a word of LengthUnit; none: mm
    std::optional<Tape> tape;
    HouseRuleEntries rules;
    std::vector<Fabric> fabrics;
    std::vector<Room> rooms;
    std::optional<SignedOff> signed_off;
    std::vector<ChangedTwice> changed_twice;
    Extra extra;
};

}  // namespace truehang
