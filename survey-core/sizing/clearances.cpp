// SPDX-License-Identifier: Apache-2.0
#include "sizing/clearances.h"

#include "units/length_text.h"
#include "units/rounding.h"
#include "units/saying.h"

#include <algorithm>

namespace truehang {

namespace {

constexpr double eps = whole_tolerance;

/// A length in the surveyor's own unit.
std::string said(const LayerContext& layer, Length length) { return said_length(length, layer.measured.entry_unit); }

std::string name_of(const Obstruction& obstruction) {
    if (!obstruction.kind || obstruction.kind->is(ObstructionKind::other)) {
        return say("obstruction");
    }
    std::string name = obstruction.kind->text();
    std::ranges::replace(name, '-', ' ');
    return worded(name);
}

void flag_ceiling(const LayerContext& layer, Findings& findings) {
    constexpr double clear_of_ceiling = 20.0;  // over the pole's upper edge (trade rules, section 8)
    if (layer.asked.is_blind() || layer.asked.is_shaped()) {
        return;
    }
    for (const Line line : all_lines) {
        const auto gap = layer.measured.plumb.between(line, PlumbMark::pole, PlumbMark::ceiling);
        if (gap && gap->value.mm() < layer.asked.diameter().mm() / 2.0 + clear_of_ceiling - eps) {
            findings.flag("pole-near-ceiling", Severity::decide,
                          say("The pole’s centre is {} below the ceiling: too near for the pole and its brackets. "
                              "Lower it, or choose brackets made for it.",
                              said(layer, gap->value)),
                          {"pole." + std::string(word_of(line)), "ceiling." + std::string(word_of(line))});
            return;
        }
    }
}

bool is_inside(const LayerContext& layer) {
    return layer.asked.is_inside_blind() || std::ranges::any_of(layer.measured.readings, [](const CountedReading& r) {
               return r.station.word.starts_with("pole.below");
           });
}

/// The least and the largest height of a mark above the floor on the three lines.
struct Band {
    Length low, high;
};

std::optional<Band> band_of(const LayerContext& layer, PlumbMark mark) {
    std::optional<Band> band;
    for (const Line line : all_lines) {
        if (const auto height = layer.measured.plumb.height(line, mark)) {
            const Length at = height->value;
            band = band ? Band{std::min(band->low, at), std::max(band->high, at)} : Band{at, at};
        }
    }
    return band;
}

bool is_bent(Shape shape) { return shape == Shape::bay || shape == Shape::corner; }

/// What rests on the one width that a bay or corner hasn't got, or on the width at the pole where it narrows.
void flag_shape(const LayerContext& layer, Findings& findings) {
    if (is_bent(layer.measured.shape)) {
        findings.flag(
            "not-checked", Severity::note,
            say("Whether the track’s ends clear the wall, what it meets on its way and how much glass the drawn-back "
                "curtains cover isn’t checked round a bay or corner."));
    } else if (is_inside(layer) && (layer.measured.shape == Shape::arch || layer.measured.shape == Shape::gable)) {
        findings.flag(
            "not-checked", Severity::note,
            say("Whether the pole fits between the sides at its own height wasn’t checked: the opening narrows above "
                "where its width was measured."));
    }
}

void flag_inside_ends(const LayerContext& layer, Findings& findings) {
    const auto least = layer.measured.least_width();
    const Length needed = *layer.asked.hardware->length + 2.0 * layer.asked.hardware->finial.value_or(Length());
    if (least && needed.mm() > least->value.mm() + eps) {
        findings.flag("finial-fouls", Severity::decide,
                      say("The pole with its finials is {} long, and the recess is {} wide.", said(layer, needed),
                          said(layer, least->value)));
    }
}

/// A stop counts as asked for once the surveyor has measured along the wall at all, or said that it can't be reached.
bool wall_was_asked(const LayerContext& layer) {
    const bool taken = std::ranges::any_of(layer.measured.readings,
                                           [](const CountedReading& r) { return r.station.kind == StationKind::wall; });
    return taken || std::ranges::any_of(layer.window.not_taken,
                                        [](const NotTaken& n) { return n.station.starts_with("wall."); });
}

void flag_ends(const LayerContext& layer, const HungAt& hung, Findings& findings) {
    if (is_inside(layer)) {
        flag_inside_ends(layer, findings);
        return;
    }
    const auto width = layer.measured.wall_width();
    const Estimate* left = layer.measured.spans.find("wall.left");
    const Estimate* right = layer.measured.spans.find("wall.right");
    std::vector<std::string> unknown;
    if (left == nullptr) {
        unknown.emplace_back("wall.left");
    } else if ((*hung.left - hung.finial).mm() < -left->value.mm() - eps) {
        findings.flag("finial-fouls", Severity::decide,
                      say("On the left the pole with its finial passes what stops it by {}.",
                          said(layer, -left->value - (*hung.left - hung.finial))),
                      {"wall.left"});
    }
    if (right == nullptr) {
        unknown.emplace_back("wall.right");
    } else if (width && (*hung.right + hung.finial).mm() > (width->value + right->value).mm() + eps) {
        findings.flag("finial-fouls", Severity::decide,
                      say("On the right the pole with its finial passes what stops it by {}.",
                          said(layer, *hung.right + hung.finial - width->value - right->value)),
                      {"wall.right"});
    }
    if (!unknown.empty() && wall_was_asked(layer)) {
        findings.flag("not-checked", Severity::note,
                      say("Whether the pole’s ends clear the wall wasn’t checked: the wall isn’t measured there."),
                      unknown);
    }
}

bool overlaps(double a0, double a1, double b0, double b1) { return a0 < b1 - eps && b0 < a1 - eps; }

struct Box {
    double left, right, bottom, top;
};

/// An edge that wasn't measured is taken to reach without end.
Box box_of(const Obstruction& obstruction) {
    constexpr double far = 1e9;
    Box box{-far, far, -far, far};
    if (obstruction.left && obstruction.width) {
        box.left = obstruction.left->mm();
        box.right = box.left + obstruction.width->mm();
    }
    if (obstruction.bottom && obstruction.height) {
        box.bottom = obstruction.bottom->mm();
        box.top = box.bottom + obstruction.height->mm();
    }
    return box;
}

bool meets_pole(const LayerContext& layer, const HungAt& hung, const Obstruction& obstruction) {
    if (!hung.pole_low || !hung.left) {
        return false;
    }
    const Box box = box_of(obstruction);
    const double r = layer.asked.diameter().mm() / 2.0;
    const double back = hung.projection ? hung.projection->mm() - r : 0.0;
    return overlaps(box.left, box.right, (*hung.left - hung.finial).mm(), (*hung.right + hung.finial).mm()) &&
           overlaps(box.bottom, box.top, hung.pole_low->mm() - r, hung.pole_high->mm() + r) &&
           (!obstruction.depth || obstruction.depth->mm() > back + eps);
}

void flag_obstructions(const LayerContext& layer, const HungAt& hung, Findings& findings) {
    for (const Obstruction& obstruction : layer.window.obstructions) {
        if (meets_pole(layer, hung, obstruction)) {
            findings.flag("hardware-fouls", Severity::decide, say("The pole meets the {}.", name_of(obstruction)), {},
                          obstruction.id);
        }
        if (hung.projection && obstruction.depth && hung.left && hung.top && hung.bottom &&
            may_lie_behind(obstruction, hung) && obstruction.depth->mm() > hung.projection->mm() + eps) {
            findings.flag("curtain-fouls", Severity::decide,
                          say("The {} stands out {}, further than the curtain hangs off the wall ({}).",
                              name_of(obstruction), said(layer, *obstruction.depth), said(layer, *hung.projection)),
                          {}, obstruction.id);
        }
    }
}

/// Whether the cloth hangs past the sill: by the length asked for, of a given bottom edge by the heights.
bool hangs_past_sill(const LayerContext& layer, const HungAt& hung) {
    if (layer.asked.hem_at != HemAt::given) {
        return layer.asked.hem_at != HemAt::sill;
    }
    const auto sill = band_of(layer, PlumbMark::sill);
    return sill && hung.bottom && hung.bottom->mm() <= sill->low.mm() + eps;
}

/// A sill board stands in the way of whatever hangs past it.
void flag_sill_board(const LayerContext& layer, const HungAt& hung, Findings& findings) {
    constexpr double clear_of_sill = 10.0;
    const Estimate* board = layer.measured.spans.find("sill.projection");
    if (board == nullptr || !hung.projection || is_inside(layer) ||
        board->value.mm() + clear_of_sill <= hung.projection->mm() + eps) {
        return;
    }
    if (hangs_past_sill(layer, hung)) {
        findings.flag("curtain-fouls", Severity::decide,
                      say("The sill board stands out {}, and the curtain hangs {} off the wall: it would lie on "
                          "the board.",
                          said(layer, board->value), said(layer, *hung.projection)),
                      {"sill.projection"});
    }
}

void flag_heading(const LayerContext& layer, Findings& findings) {
    const LayerAsked& asked = layer.asked;
    if (asked.hardware == nullptr) {
        return;
    }
    const bool is_rod = asked.hardware_kind == HardwareKind::pole || asked.hardware_kind == HardwareKind::wire;
    if (asked.is_shaped()) {
        if (is_rod) {
            findings.flag("heading-hardware", Severity::decide,
                          say("A {} can’t follow the shaped top. Fix it to a board cut to the shape, with "
                              "hook-and-loop, or to a track bent to it.",
                              worded(Word<HardwareKind>::word_for(asked.hardware_kind))));
        }
    } else if (asked.is_bent() && asked.hardware_kind == HardwareKind::wire) {
        findings.flag(
            "heading-hardware", Severity::decide,
            say("A wire runs straight from end to end. Round a corner choose a track, or a pole with joints."));
    } else if (!suits(asked.heading, asked.hardware_kind)) {
        findings.flag("heading-hardware", Severity::decide,
                      say("A {} heading can’t hang from a {}. Choose another heading or other hardware.",
                          worded(Word<Heading>::word_for(asked.heading)),
                          worded(Word<HardwareKind>::word_for(asked.hardware_kind))));
    } else if (asked.heading == Heading::eyelet && layer.rules.eyelet_inner - asked.diameter().mm() < 10.0 - eps) {
        findings.flag("heading-hardware", Severity::decide,
                      say("An eyelet of {} runs badly on a pole of {}: it wants {} to spare.",
                          said(layer, Length::mm(layer.rules.eyelet_inner)), said(layer, asked.diameter()),
                          said(layer, Length::mm(10.0))));
    }
}

/// Whether a bracket stands where a curtain of a pair has to pass. Without places, three stand at the ends and the
/// middle.
bool spans_a_bracket(const Hardware& hardware, const std::optional<Length>& along) {
    constexpr double at_the_join = 50.0;
    if (hardware.bracket_at.size() < 3) {
        return hardware.brackets.value_or(0) > 3;
    }
    auto places = hardware.bracket_at;
    std::ranges::sort(places);
    const double middle = along ? along->mm() / 2.0 : 0.0;
    return std::any_of(places.begin() + 1, places.end() - 1,
                       [&](Length at) { return std::abs(at.mm() - middle) > at_the_join; });
}

/// Where a curtain that can't pass them meets the elbow joints of a pole.
std::string joints_in_the_way(const LayerContext& layer, const FinishedSizes& sizes) {
    std::string places;
    if (sizes.run) {
        for (const Bend& bend : bends_in_the_way(layer.asked, *sizes.run)) {
            places += (places.empty() ? "" : ", ") + said(layer, bend.at);
        }
    }
    return places;
}

void flag_brackets(const LayerContext& layer, const FinishedSizes& sizes, Findings& findings) {
    const LayerAsked& asked = layer.asked;
    const HangsFrom from = heading_rule(asked.heading).hangs_from;
    if (asked.hardware == nullptr || asked.hardware_kind != HardwareKind::pole ||
        (from != HangsFrom::tabs && from != HangsFrom::threaded)) {
        return;
    }
    if (const std::string places = joints_in_the_way(layer, sizes); !places.empty()) {
        findings.flag("tab-centre-bracket", Severity::decide,
                      say("This heading can’t pass the pole’s joints at the corners ({} along from the "
                          "left). Hang one curtain between each two joints, choose a heading on rings that "
                          "pass them, or a track.",
                          places));
        return;
    }
    const int brackets =
        std::max(asked.hardware->brackets.value_or(0), static_cast<int>(asked.hardware->bracket_at.size()));
    if (asked.curtains() == 1 ? brackets >= 3 : spans_a_bracket(*asked.hardware, sizes.along)) {
        findings.flag(
            "tab-centre-bracket", Severity::decide,
            say("This heading can’t pass a bracket, and one stands in the curtain’s way. Part the curtains at it, "
                "or hang them otherwise."));
    }
}

/// How long the hardware would have to be for the drawn-back cloth to clear the glass.
Length length_to_clear(const LayerContext& layer, Length opening, double stack) {
    const Hardware& hardware = *layer.asked.hardware;
    const Length flat = 2.0 * hardware.return_depth + hardware.overlap;
    const double share = layer.asked.curtains() == 2 ? stack : 2.0 * stack;
    return (opening + share * flat) / (1.0 - share);
}

void flag_stack(const LayerContext& layer, const FinishedSizes& sizes, Findings& findings) {
    constexpr double told_from = 10.0;
    const auto glass = glass_covered(layer, sizes);
    if (!glass || glass->mm() < told_from - eps) {
        return;
    }
    const double covered = glass->mm();
    const double stack = heading_rule(layer.asked.heading).stack;
    const auto opening = layer.measured.largest_width();
    std::string text =
        say("Drawn back, the curtains cover {} of the glass at {}. A pole {} long would clear "
            "it",
            said(layer, Length::mm(covered)), layer.asked.curtains() == 2 ? say("each side") : say("one side"),
            said(layer, length_to_clear(layer, opening->value, stack)));
    const Estimate* left = layer.measured.spans.find("wall.left");
    const Estimate* right = layer.measured.spans.find("wall.right");
    if (left != nullptr && right != nullptr) {
        text += say("; the wall allows {}", said(layer, left->value + opening->value + right->value -
                                                            2.0 * layer.asked.hardware->finial.value_or(Length())));
    }
    findings.flag("stack-covers-glass", Severity::note, text + ".");
}

/// Between what heights it hangs, as far as they are known.
void place_heights(const LayerContext& layer, const FinishedSizes& sizes, HungAt& hung) {
    const LayerAsked& asked = layer.asked;
    const auto sill = band_of(layer, PlumbMark::sill);
    if (asked.is_inside_blind()) {
        const auto head = band_of(layer, PlumbMark::head);
        hung.top = head ? std::optional(head->high) : std::nullopt;
        hung.bottom = layer.measured.shape == Shape::door ? std::optional(Length())
                      : sill                              ? std::optional(sill->low)
                                                          : std::nullopt;
        return;
    }
    const bool from_floor = layer.measured.shape == Shape::door || (sizes.hem && sizes.hem->to == PlumbMark::floor);
    if (sizes.hem && from_floor) {
        hung.bottom = sizes.hem->over;
    } else if (sizes.hem && sill) {
        hung.bottom = sill->low + sizes.hem->over;
    }
    if (asked.is_shaped()) {
        hung.top = sizes.top;
        return;
    }
    if (const auto pole = band_of(layer, PlumbMark::pole)) {
        hung.pole_low = pole->low;
        hung.pole_high = pole->high;
        const bool known = asked.is_blind() || asked.is_on_track() ||
                           (asked.hardware != nullptr && asked.hardware->diameter.has_value());
        if (known) {
            hung.top = pole->high + top_over_pole(asked, sizes.tab_hang, layer.rules);
        }
    }
}

}  // namespace

std::optional<Length> glass_covered(const LayerContext& layer, const FinishedSizes& sizes) {
    const auto opening = layer.measured.largest_width();
    const Hardware* hardware = layer.asked.hardware;
    if (layer.asked.is_blind() || layer.asked.is_shaped() || !opening || !sizes.has_width || hardware == nullptr ||
        !hardware->length) {
        return std::nullopt;
    }
    const double stack = heading_rule(layer.asked.heading).stack;
    const Length covered = stack * sizes.width - (*hardware->length - opening->value) / 2.0;
    return covered.mm() > 0.0 ? covered : Length();
}

HungAt placed(const LayerContext& layer, const FinishedSizes& sizes) {
    const Hardware* hardware = layer.asked.hardware;
    const auto width = layer.measured.wall_width();
    const bool by_hardware =
        hardware != nullptr && hardware->length && !layer.asked.is_inside_blind() && !layer.asked.is_shaped();
    HungAt hung;
    if ((by_hardware || sizes.has_width) && !is_bent(layer.measured.shape)) {
        const Length length = by_hardware ? *hardware->length : sizes.curtains * sizes.width;
        if (by_hardware && hardware->left) {
            hung.left = *hardware->left;
        } else if (width) {
            hung.left = (width->value - length) / 2.0;
        }
        if (hung.left) {
            hung.right = *hung.left + length;
        }
    }
    hung.finial = by_hardware ? hardware->finial.value_or(Length()) : Length();
    if (hardware != nullptr) {
        hung.projection = hardware->projection;
    }
    place_heights(layer, sizes, hung);
    return hung;
}

bool may_lie_behind(const Obstruction& obstruction, const HungAt& hung) {
    const Box box = box_of(obstruction);
    const bool across = !hung.left || overlaps(box.left, box.right, hung.left->mm(), hung.right->mm());
    constexpr double far = 1e9;
    const bool up =
        overlaps(box.bottom, box.top, hung.bottom ? hung.bottom->mm() : -far, hung.top ? hung.top->mm() : far);
    return across && up;
}

void flag_clearances(const LayerContext& layer, const FinishedSizes& sizes, Findings& findings) {
    flag_heading(layer, findings);
    flag_brackets(layer, sizes, findings);
    flag_ceiling(layer, findings);
    const HungAt hung = placed(layer, sizes);
    const bool on_length = layer.asked.hardware != nullptr && layer.asked.hardware->length && !layer.asked.is_shaped();
    if (on_length || sizes.run) {
        flag_shape(layer, findings);
    }
    if (on_length && hung.left) {
        flag_ends(layer, hung, findings);
        flag_stack(layer, sizes, findings);
    }
    if (!layer.asked.is_inside_blind()) {
        flag_obstructions(layer, hung, findings);
        flag_sill_board(layer, hung, findings);
    }
}

}  // namespace truehang
