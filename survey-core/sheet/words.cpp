// SPDX-License-Identifier: Apache-2.0
#include "sheet/words.h"

#include "sizing/headings.h"
#include "sizing/layer.h"
#include "units/rounding.h"
#include "units/saying.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cctype>
#include <charconv>
#include <cmath>

namespace truehang {

namespace {

constexpr std::string_view minus = "−";
constexpr double eighths = 8.0;
constexpr double inches_in_a_yard = 36.0;

/// Metres to the decimals that the step needs: "4.9", "5.25".
std::string metres_text(double metres, const SheetStyle& style) {
    for (const int decimals : {1, 2}) {
        const double scale = decimals == 1 ? 10.0 : 100.0;
        if (std::abs(std::round(metres * scale) / scale - metres) < whole_tolerance) {
            return number_text(metres, decimals, style) + " m";
        }
    }
    return number_text(metres, 3, style) + " m";
}

std::string upper_first(std::string text) {
    if (!text.empty()) {
        text[0] = static_cast<char>(std::toupper(static_cast<unsigned char>(text[0])));
    }
    return text;
}

struct FigureName {
    std::string_view path;
    std::string_view says;
};

constexpr std::array figure_names{
    FigureName{"finished.curtains", to_say("Curtains")},
    FigureName{"finished.width_mm", to_say("Finished width, each")},
    FigureName{"finished.drop_mm", to_say("Finished drop")},
    FigureName{"finished.drops_mm.left", to_say("Finished drop, left")},
    FigureName{"finished.drops_mm.centre", to_say("Finished drop, centre")},
    FigureName{"finished.drops_mm.right", to_say("Finished drop, right")},
    FigureName{"finished.planned.width_mm", to_say("Planned width, each")},
    FigureName{"finished.planned.drop_mm", to_say("Planned drop")},
    FigureName{"finished.planned.cut_drop_mm", to_say("Cut drop, as planned")},
    FigureName{"finished.planned.hem_left_mm", to_say("Left in the hem of cloth cut so")},
    FigureName{"finished.planned.short_by_mm", to_say("Cloth cut so is short by")},
    FigureName{"run.length_mm", to_say("Length of the run")},
    FigureName{"cloth.widths_each", to_say("Widths in one")},
    FigureName{"cloth.widths", to_say("Widths")},
    FigureName{"cloth.joins_mm", to_say("Joins")},
    FigureName{"cloth.fullness", to_say("Fullness")},
    FigureName{"cloth.flat_mm", to_say("Flat width, each")},
    FigureName{"cloth.cut_drop_mm", to_say("Cut drop")},
    FigureName{"cloth.length_mm", to_say("Length of cloth")},
    FigureName{"cloth.railroaded_mm", to_say("Length of cloth, turned sideways")},
    FigureName{"lining.widths_each", to_say("Lining widths in one")},
    FigureName{"lining.widths", to_say("Lining widths")},
    FigureName{"lining.flat_mm", to_say("Lining, flat width")},
    FigureName{"lining.cut_drop_mm", to_say("Lining, cut drop")},
    FigureName{"lining.length_mm", to_say("Length of lining")},
    FigureName{"second_lining.widths_each", to_say("Second lining widths in one")},
    FigureName{"second_lining.widths", to_say("Second lining widths")},
    FigureName{"second_lining.flat_mm", to_say("Second lining, flat width")},
    FigureName{"second_lining.cut_drop_mm", to_say("Second lining, cut drop")},
    FigureName{"second_lining.length_mm", to_say("Length of second lining")},
    FigureName{"interlining.widths", to_say("Interlining widths")},
    FigureName{"interlining.widths_each", to_say("Interlining widths in one")},
    FigureName{"interlining.flat_mm", to_say("Interlining, flat width")},
    FigureName{"interlining.cut_drop_mm", to_say("Interlining, cut drop")},
    FigureName{"interlining.length_mm", to_say("Length of interlining")},
    FigureName{"tabs.cut_length_mm", to_say("Tab, cut length")},
    FigureName{"tabs.hang_mm", to_say("Tab hang")},
    FigureName{"tabs.each", to_say("Tabs in one curtain")},
    FigureName{"tabs.spacing_mm", to_say("Tab spacing")},
    FigureName{"tabs.cut_width_mm", to_say("Tab, cut width")},
    FigureName{"tabs.length_mm", to_say("Cloth for tabs")},
    FigureName{"eyelets.each", to_say("Eyelets in one curtain")},
    FigureName{"eyelets.spacing_mm", to_say("Eyelet spacing")},
    FigureName{"pleats.each", to_say("Pleats in one curtain")},
    FigureName{"pleats.pleat_mm", to_say("Cloth in one pleat")},
    FigureName{"pleats.space_mm", to_say("Space between pleats")},
    FigureName{"hooks.each", to_say("Hooks in one curtain")},
    FigureName{"tie_back.height_mm", to_say("Tie-back above the floor")},
    FigureName{"tie_back.length_mm", to_say("Tie-back length")},
    FigureName{"tie_back.cut_length_mm", to_say("Tie-back, cut length")},
    FigureName{"weights.each", to_say("Weights in one curtain")},
    FigureName{"blind.rods", to_say("Rods")},
    FigureName{"blind.fold_mm", to_say("Fold")},
    FigureName{"blind.up_mm", to_say("Depth drawn up")},
    FigureName{"pelmet.depth_mm", to_say("Pelmet depth")},
    FigureName{"pelmet.face_mm", to_say("Pelmet face")},
    FigureName{"pelmet.widths", to_say("Pelmet widths")},
    FigureName{"pelmet.cut_drop_mm", to_say("Pelmet, cut depth")},
    FigureName{"pelmet.length_mm", to_say("Cloth for the pelmet")},
    FigureName{"mass_kg", to_say("Mass in all")},
    FigureName{"bracket_kg", to_say("On the most loaded bracket")},
};

std::string hardware_text(const Hardware& hardware, const SheetStyle& style) {
    const auto kind = hardware.kind ? hardware.kind->known() : std::optional(HardwareKind::pole);
    if (!kind) {
        return {};
    }
    const std::string word = worded(Word<HardwareKind>::word_for(*kind));
    std::string text = *kind == HardwareKind::pole && hardware.diameter
                           ? say("on a {} {} {}", written(*hardware.diameter, style), word_of(style.unit), word)
                           : say("on a {}", word);
    if (hardware.run && hardware.run->is(Run::bent)) {
        text += " " + say("bent round the corners");  // its length is measured, not chosen
    } else if (hardware.length) {
        text += " " + say("{} long", written(*hardware.length, style));
    }
    const auto hang = hardware.hang ? hardware.hang->known() : std::optional(Hang::level);
    if (hang) {
        text += ", " + (*hang == Hang::level  ? say("level")
                        : *hang == Hang::head ? say("parallel to the head")
                                              : say("parallel to the ceiling"));
    }
    if (hardware.supply && hardware.supply->is(Supply::existing)) {
        text += ", " + say("which is there");
    } else if (hardware.supply && hardware.supply->is(Supply::others)) {
        text += ", " + say("supplied by others");
    }
    return text;
}

std::string lining_text(const Treatment& treatment) {
    if (treatment.lining) {
        return ", " + (treatment.interlining ? say("lined and interlined") : say("lined"));
    }
    return ", " + (treatment.interlining ? say("interlined") : say("unlined"));
}

std::string length_words(const Treatment& treatment, const SheetStyle& style) {
    const auto length = treatment.length ? treatment.length->known() : std::optional(HemAt::floor);
    if (!length) {
        return {};
    }
    switch (*length) {
        case HemAt::floor:
            return ", " + say("floor length");
        case HemAt::sill:
            return ", " + say("sill length");
        case HemAt::below_sill:
            return ", " + say("to below the sill");
        case HemAt::break_:
            return ", " + say("breaking on the floor");
        case HemAt::puddle:
            return ", " + say("puddling on the floor");
        case HemAt::given:
            break;
    }
    return treatment.bottom ? ", " + say("to {} above the floor", written(*treatment.bottom, style)) : std::string();
}

std::string layout_words(const Treatment& treatment, bool blind) {
    if (blind) {
        return treatment.fit && treatment.fit->is(Fit::outside) ? say("A Roman blind outside the opening")
                                                                : say("A Roman blind inside the opening");
    }
    const auto layout = treatment.layout ? treatment.layout->known() : std::optional(Layout::pair);
    if (!layout) {
        return say("Curtains");
    }
    switch (*layout) {
        case Layout::pair:
            return say("A pair");
        case Layout::left:
            return say("One curtain, drawn to the left");
        case Layout::right:
            return say("One curtain, drawn to the right");
        case Layout::single:
            break;
    }
    return say("One curtain");
}

}  // namespace

FlagShape shape_of(Severity severity) {
    switch (severity) {
        case Severity::stop:
            return FlagShape::bar;
        case Severity::remeasure:
            return FlagShape::broken_circle;
        case Severity::decide:
            return FlagShape::square;
        case Severity::caution:
            return FlagShape::triangle;
        case Severity::note:
            break;
    }
    return FlagShape::circle;
}

std::string_view word_of(FlagShape shape) {
    switch (shape) {
        case FlagShape::triangle:
            return "triangle";
        case FlagShape::circle:
            return "circle";
        case FlagShape::square:
            return "square";
        case FlagShape::broken_circle:
            return "broken circle";
        case FlagShape::bar:
            break;
    }
    return "bar";
}

std::string_view flag_word(Severity severity) {
    switch (severity) {
        case Severity::stop:
            return to_say("Stop");
        case Severity::remeasure:
            return to_say("Measure again");
        case Severity::decide:
            return to_say("Decide");
        case Severity::caution:
            return to_say("Caution");
        case Severity::note:
            break;
    }
    return to_say("Note");
}

SheetStyle sheet_style_for(const Survey& survey) {
    const bool inches = survey.entry_unit && length_unit(*survey.entry_unit) == LengthUnit::in;
    return {.unit = inches ? LengthUnit::in : LengthUnit::mm};
}

std::string unit_sentence(const SheetStyle& style) {
    const std::string unit = style.unit == LengthUnit::in
                                 ? say("inches, to the eighth (what is cut never below it; sums are worked finer)")
                                 : std::string(word_of(style.unit));
    return say("All in {} unless said; ± is twice the standard uncertainty.", unit);
}

Length cut_length(Length length, const SheetStyle& style) {
    return style.unit == LengthUnit::in ? Length::inches(ceil_whole(length.inches() * eighths) / eighths)
                                        : cut_up(length);
}

std::string written_cut(Length length, const SheetStyle& style) { return written(cut_length(length, style), style); }

std::string order_text(double metres, const SheetStyle& style) {
    std::string text = metres_text(metres, style);
    if (style.unit == LengthUnit::in) {
        const double yards = Length::metres(metres).inches() / inches_in_a_yard;
        text += " (" + number_text(ceil_whole(yards * 100.0) / 100.0, 2, style) + " yd)";
    }
    return text;
}

std::string written(Length length, const SheetStyle& style) {
    if (style.unit == LengthUnit::mm) {
        return number_text(round_whole(length.mm()), 0, style);
    }
    const LengthStyle said{.unit = style.unit, .decimal = style.decimal};
    return length.mm() < 0.0 ? std::string(minus) + write_length(-length, said) : write_length(length, said);
}

std::string number_text(double value, int decimals, const SheetStyle& style) {
    const double scale = std::pow(10.0, decimals);
    const double rounded = round_whole(std::abs(value) * scale) / scale;
    std::string text = fmt::format("{:.{}f}", rounded, decimals);
    std::ranges::replace(text, '.', style.decimal);
    return value < 0.0 && rounded > 0.0 ? std::string(minus) + text : text;
}

std::string plus_minus(Length u, const SheetStyle& style) {
    if (u.mm() <= 0.0) {
        return {};
    }
    const Length twice = Length::mm(std::max(1.0, round_whole(2.0 * u.mm())));
    return "± " + written_cut(twice, style);
}

std::string mass_text(Mass mass, const SheetStyle& style) {
    // From the two decimals of the figures document, so that whoever starts from it writes the same.
    return number_text(round_to(mass.kg(), 0.01), 1, style) + " kg";
}

std::string count_word(int count) {
    constexpr std::array<std::string_view, 13> words{to_say("no"),    to_say("one"),  to_say("two"), to_say("three"),
                                                     to_say("four"),  to_say("five"), to_say("six"), to_say("seven"),
                                                     to_say("eight"), to_say("nine"), to_say("ten"), to_say("eleven"),
                                                     to_say("twelve")};
    return count >= 0 && count < static_cast<int>(words.size()) ? worded(words[static_cast<std::size_t>(count)])
                                                                : std::to_string(count);
}

std::string counted(int count, std::string_view one, std::string_view many) {
    return fmt::format("{} {}", count, worded(count == 1 ? one : many));
}

std::string piece_text(std::string_view what, int count) {
    if (what == "drops") {
        return counted(count, to_say("drop"), to_say("drops"));
    }
    if (what == "tabs") {
        return counted(count, to_say("row of tabs"), to_say("rows of tabs"));
    }
    if (what == "facing") {
        return counted(count, to_say("facing"), to_say("facings"));
    }
    if (what == "pelmet") {
        return counted(count, to_say("pelmet width"), to_say("pelmet widths"));
    }
    if (what == "tie-backs") {
        return counted(count, to_say("row of tie-backs"), to_say("rows of tie-backs"));
    }
    if (what == "half repeat") {
        return counted(count, to_say("half repeat between the phases"), to_say("half repeats between the phases"));
    }
    if (what == "placing the pattern") {
        return counted(count, to_say("allowance for placing the pattern"),
                       to_say("allowances for placing the pattern"));
    }
    return fmt::format("{} {}", count, worded(what));
}

std::string day_text(std::string_view rfc3339) {
    constexpr std::array<std::string_view, 12> months{
        to_say("{} January {}"),   to_say("{} February {}"), to_say("{} March {}"),    to_say("{} April {}"),
        to_say("{} May {}"),       to_say("{} June {}"),     to_say("{} July {}"),     to_say("{} August {}"),
        to_say("{} September {}"), to_say("{} October {}"),  to_say("{} November {}"), to_say("{} December {}")};
    int year = 0;
    int month = 0;
    int day = 0;
    const auto read = [&](std::size_t at, std::size_t digits, int& into) {
        const char* from = rfc3339.data() + at;
        const auto result = std::from_chars(from, from + digits, into);
        return result.ec == std::errc() && result.ptr == from + digits;
    };
    if (rfc3339.size() < 10 || !read(0, 4, year) || !read(5, 2, month) || !read(8, 2, day) || month < 1 || month > 12) {
        return std::string(rfc3339);
    }
    return fmt::format(fmt::runtime(worded(months[static_cast<std::size_t>(month - 1)])), day, year);
}

std::string moment_text(std::string_view rfc3339) {
    return rfc3339.size() < 16 ? std::string(rfc3339) : say("{}, {} UTC", day_text(rfc3339), rfc3339.substr(11, 5));
}

std::string window_title(const Room& room, const Window& window) {
    const std::string window_name = window.name.empty() ? window.id : window.name;
    if (room.name.empty()) {
        return upper_first(window_name);
    }
    return upper_first(room.name) + ", " + within_sentence(window_name);
}

std::string treatment_text(const Layer& layer, const SheetStyle& style) {
    std::string text;
    if (layer.treatment) {
        const Treatment& treatment = *layer.treatment;
        const auto heading = treatment.heading ? treatment.heading->known() : std::nullopt;
        const bool blind = heading == Heading::roman;
        text = layout_words(treatment, blind);
        if (heading && !blind) {
            text += ", " + worded(heading_rule(*heading).says);
        }
        if (treatment.top && treatment.top->is(TopEdge::shaped) && !blind) {
            text += ", " + say("shaped top");
        }
        text += lining_text(treatment);
        if (!blind) {
            text += length_words(treatment, style);
        }
        if (treatment.pelmet) {
            text += ", " + say("under a pelmet");
        }
    }
    if (layer.hardware) {
        const std::string hardware = hardware_text(*layer.hardware, style);
        if (!hardware.empty()) {
            text += (text.empty() ? "" : ", ") + hardware;
        }
    }
    return text.empty() ? text : upper_first(text) + ".";
}

std::string obstruction_text(const Obstruction& obstruction) {
    if (!obstruction.kind || obstruction.kind->is(ObstructionKind::other)) {
        return obstruction.note.empty() ? say("something in the way") : obstruction.note;
    }
    std::string text = obstruction.kind->text();
    std::ranges::replace(text, '-', ' ');
    return worded(text);
}

std::string figure_text(std::string_view figure) {
    const auto found = std::ranges::find(figure_names, figure, &FigureName::path);
    return found == figure_names.end() ? std::string(figure) : worded(found->says);
}

std::string one_way_text(const Fabric& fabric) {
    return say("{} runs one way, by its design or its nap: every piece of it top to top, the small ones too.",
               short_name(fabric));
}

std::string short_name(const Fabric& fabric) {
    return fabric.name.empty() ? fabric.id : fabric.name.substr(0, fabric.name.find(','));
}

}  // namespace truehang
