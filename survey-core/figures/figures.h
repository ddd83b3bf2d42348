// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "cloth/pieces.h"
#include "sizing/finish.h"
#include "survey/findings.h"
#include "survey/survey.h"
#include "units/plan_point.h"

#include <optional>
#include <string>
#include <vector>

// The figures of a survey (format truehang.figures/1): the one call that phone, page, paper and command make.
// Lengths that are cut or finished are whole millimetres already.

namespace truehang {

struct Size {
    std::string name;  ///< a station, or a mark with its plumb line (`sill.left`): height above the floor there
    Length value;
    Length u;                           ///< one standard uncertainty
    std::vector<std::string> rests_on;  ///< stations of readings that weren't measured
    std::optional<Angle> angle{};       ///< of an angle, in place of `value`
    std::optional<Angle> angle_u{};     ///< of an angle, in place of `u`
};

/// What a network says of one of its readings.
struct CheckedReading {
    std::string station;
    double residual = 0.0;    ///< adjusted less read, mm (degrees for an angle)
    double redundancy = 0.0;  ///< the share of a slip that shows, 0 to 1
    double w = 0.0;           ///< normalised residual
    double least_slip = 0.0;  ///< the least that is found in four of five cases, mm (degrees); 0: none is ever found
    double moves_drop = 0.0;  ///< how far that slip, unnoticed, would move the finished drop, mm
};

struct Check {
    std::string network;
    int redundancy = 0;
    double chi2 = 0.0;
    double limit = 0.0;  ///< chi-square quantile at 0.999
    bool adds_up = true;
    Length off_by{};                         ///< the largest misclosure that one reading would have to answer for
    Length explained{};                      ///< what tape and edges explain of it
    std::optional<Angle> off_by_angle{};     ///< in place of `off_by`, where it is an angle's
    std::optional<Angle> explained_angle{};  ///< in place of `explained`
    std::vector<CheckedReading> readings{};  ///< in the contract's order
};

struct NextReading {
    std::string station;
    std::string why;
};

/// The finished drop at one plumb line, where the hem follows what it hangs from.
struct DropThere {
    std::string line;  ///< left, centre, right
    Length drop;       ///< whole mm
    Length u;
    std::vector<std::string> curtains;  ///< of a pair, whose line it is: left, right, of the centre both
};

/// What was planned before the pole was up, and what has become of it.
struct Planned {
    Length width, drop;              ///< of each curtain, whole mm
    Length longer;                   ///< the finished drop now, less the planned one
    std::optional<Length> cut_drop;  ///< that the cloth was to be cut to
    std::optional<Length> hem_left;  ///< cloth in the hem of what was cut so, once it hangs as it should now
    std::optional<Length>
        short_by;      ///< that the cut drop lacks for a hem as the house makes it; none where a hem is left
    std::string says;  ///< what to change, for the making sheet; empty where nothing is to change
};

struct Finished {
    int curtains = 0;
    Length width, drop;                ///< of each, whole mm; of several drops the longest
    Length width_u, drop_u;            ///< one standard uncertainty
    std::vector<DropThere> drops{};    ///< where the hem follows floor or sill; empty else
    std::optional<Planned> planned{};  ///< where a pole that is up was measured again
};

/// One curtain whose top is shaped.
struct CurtainTop {
    std::string side;               ///< left, right; of one curtain alone single
    std::vector<TopPoint> table;    ///< every 100 mm, corners, the longest and the edges
    std::vector<TopPoint> outline;  ///< the same edge at least every 10 mm, to be drawn at its true size
};

struct LayerFigures {
    std::string id;  ///< empty where the window isn't layered
    std::optional<Finished> finished;
    std::optional<Cloth> cloth;
    std::optional<Lining> lining, interlining;
    std::optional<Tabs> tabs;
    std::optional<Eyelets> eyelets;
    std::optional<Weights> weights;
    std::optional<Blind> blind;
    std::optional<PelmetFigures> pelmet;
    std::optional<Mass> mass, bracket_mass;
    Making making{};                       ///< second lining, pleats, hooks, tie-backs, haberdashery, load
    std::optional<Length> covers_glass{};  ///< drawn back, at each side of a pair, else at the one side
    std::optional<BentRun> run{};          ///< of hardware bent round the corners
    bool has_joints = false;               ///< the run is a pole's: an elbow joint stands at each bend
    std::vector<CurtainTop> tops{};        ///< where the top is shaped: one a curtain, from left to right
};

struct WindowFigures {
    std::string id;
    std::string room;
    std::string form{};  ///< of an arch with ordinates: `semicircle`, `segmental`, `three-centred` or `ordinates`
    std::vector<PlanPoint> plan{};  ///< of a bay or corner from above: its corners, outer edges included
    std::vector<Size> sizes;
    std::vector<Check> checks;
    std::optional<NextReading> next;
    std::string nothing_more;  ///< why no reading is asked for; empty where one is
    bool layered = false;
    std::vector<LayerFigures> layers;  ///< one, with no id, where not layered and something hangs there
    std::vector<Flag> flags;
    std::vector<Trace> trace;
};

struct Cut {
    std::string window;
    std::string what;  ///< drops, tabs, facing, pelmet, lining …
    Length length;     ///< of one
    int count = 0;
    std::string layer;
};

struct Order {
    std::string fabric;
    Length length;         ///< sum of the cuts
    double order_m = 0.0;  ///< up to the step it is sold by
    std::vector<Cut> cuts;
    bool provisional = false;  ///< a window it rests on has a stop or remeasure flag
};

/// So many pieces of one length.
struct CutToLength {
    int count = 0;
    Length each;
};

/// Something bought beside the cloth, over the house.
struct Haberdashery {
    std::string what;
    int count = 0;                      ///< 0: bought by length
    Length length{};                    ///< in all, whole mm
    double order_m = 0.0;               ///< up to the step that it is sold by
    std::vector<CutToLength> pieces{};  ///< where a number is cut to lengths, longest first
};

struct Figures {
    std::string survey;
    std::optional<long long> revision;
    std::vector<WindowFigures> windows;
    std::vector<Order> orders;
    std::vector<Haberdashery> haberdashery;
    std::vector<Flag> flags{};  ///< of no window: the whole visit’s, its rooms’, its cloths’
};

/// Works every window of a survey: sizes, checks, what hangs there, flags and trace, and the orders over the house.
/// Never fails: what can't be worked is null in its place, with the flag that says why. Rules: the trade rules 1 to 10.
[[nodiscard]] Figures work_out(const Survey& survey);

/// One window alone, as the phone asks while it is being measured; the same figures as in the whole.
[[nodiscard]] WindowFigures work_out_window(const Survey& survey, const Room& room, const Window& window);

}  // namespace truehang
