// SPDX-License-Identifier: Apache-2.0
#include "trade_words.h"

#include <QCoreApplication>
#include <algorithm>
#include <array>
#include <utility>

namespace truehang {

namespace {

QString trade_text(const char* source) { return QCoreApplication::translate("trade", source); }

}  // namespace

QString says(TapeClass tape_class) {
    switch (tape_class) {
        case TapeClass::I:
            return trade_text(QT_TRANSLATE_NOOP("trade", "Class I"));
        case TapeClass::II:
            return trade_text(QT_TRANSLATE_NOOP("trade", "Class II"));
        case TapeClass::III:
            break;
    }
    return trade_text(QT_TRANSLATE_NOOP("trade", "Class III"));
}

QString says(FabricRole role) {
    switch (role) {
        case FabricRole::face:
            return trade_text(QT_TRANSLATE_NOOP("trade", "Face cloth"));
        case FabricRole::lining:
            return trade_text(QT_TRANSLATE_NOOP("trade", "Lining"));
        case FabricRole::interlining:
            return trade_text(QT_TRANSLATE_NOOP("trade", "Interlining"));
        case FabricRole::sheer:
            break;
    }
    return trade_text(QT_TRANSLATE_NOOP("trade", "Sheer"));
}

QString says(Match match) {
    switch (match) {
        case Match::none:
            return trade_text(QT_TRANSLATE_NOOP("trade", "No match"));
        case Match::straight:
            return trade_text(QT_TRANSLATE_NOOP("trade", "Straight match"));
        case Match::half_drop:
            break;
    }
    return trade_text(QT_TRANSLATE_NOOP("trade", "Half drop match"));
}

QString says(Shape shape) {
    switch (shape) {
        case Shape::recess:
            return trade_text(QT_TRANSLATE_NOOP("trade", "Recess"));
        case Shape::frame:
            return trade_text(QT_TRANSLATE_NOOP("trade", "Frame on the wall"));
        case Shape::door:
            return trade_text(QT_TRANSLATE_NOOP("trade", "Door"));
        case Shape::bay:
            return trade_text(QT_TRANSLATE_NOOP("trade", "Bay"));
        case Shape::arch:
            return trade_text(QT_TRANSLATE_NOOP("trade", "Arch"));
        case Shape::gable:
            return trade_text(QT_TRANSLATE_NOOP("trade", "Gable"));
        case Shape::corner:
            break;
    }
    return trade_text(QT_TRANSLATE_NOOP("trade", "Corner"));
}

QString tells(Shape shape) {
    switch (shape) {
        case Shape::recess:
            return trade_text(QT_TRANSLATE_NOOP("trade", "set back in the wall"));
        case Shape::frame:
            return trade_text(QT_TRANSLATE_NOOP("trade", "no recess: the frame ends flat with the wall or stands out"));
        case Shape::door:
            return trade_text(QT_TRANSLATE_NOOP("trade", "no sill: it goes down to the floor"));
        case Shape::bay:
            return trade_text(QT_TRANSLATE_NOOP("trade", "built out, in several parts at angles"));
        case Shape::arch:
            return trade_text(QT_TRANSLATE_NOOP("trade", "round or pointed at the head"));
        case Shape::gable:
            return trade_text(QT_TRANSLATE_NOOP("trade", "the head slopes with the roof"));
        case Shape::corner:
            break;
    }
    return trade_text(QT_TRANSLATE_NOOP("trade", "two windows that meet in a corner of the room"));
}

QString runs_between(Shape shape, const Station& station) {
    const bool is_recess = shape == Shape::recess || shape == Shape::arch || shape == Shape::gable;
    if (station.kind != StationKind::width || (!is_recess && shape != Shape::frame)) {
        return {};
    }
    return is_recess ? trade_text(QT_TRANSLATE_NOOP("trade", "Side to side of the recess, not the glass"))
                     : trade_text(QT_TRANSLATE_NOOP("trade", "Outer edges of the frame, not the glass"));
}

QString says(ObstructionKind kind) {
    static constexpr std::array<std::pair<ObstructionKind, const char*>, 19> words{{
        {ObstructionKind::radiator, QT_TRANSLATE_NOOP("trade", "Radiator")},
        {ObstructionKind::sill_board, QT_TRANSLATE_NOOP("trade", "Sill board")},
        {ObstructionKind::switch_, QT_TRANSLATE_NOOP("trade", "Switch")},
        {ObstructionKind::socket, QT_TRANSLATE_NOOP("trade", "Socket")},
        {ObstructionKind::pipe, QT_TRANSLATE_NOOP("trade", "Pipe")},
        {ObstructionKind::beam, QT_TRANSLATE_NOOP("trade", "Beam")},
        {ObstructionKind::cornice, QT_TRANSLATE_NOOP("trade", "Cornice")},
        {ObstructionKind::picture_rail, QT_TRANSLATE_NOOP("trade", "Picture rail")},
        {ObstructionKind::furniture, QT_TRANSLATE_NOOP("trade", "Furniture")},
        {ObstructionKind::door_swing, QT_TRANSLATE_NOOP("trade", "Door swing")},
        {ObstructionKind::casement_swing, QT_TRANSLATE_NOOP("trade", "Casement swing")},
        {ObstructionKind::handle, QT_TRANSLATE_NOOP("trade", "Handle")},
        {ObstructionKind::vent, QT_TRANSLATE_NOOP("trade", "Vent")},
        {ObstructionKind::alarm, QT_TRANSLATE_NOOP("trade", "Alarm")},
        {ObstructionKind::shutter, QT_TRANSLATE_NOOP("trade", "Shutter")},
        {ObstructionKind::bracket, QT_TRANSLATE_NOOP("trade", "Bracket")},
        {ObstructionKind::heater, QT_TRANSLATE_NOOP("trade", "Heater")},
        {ObstructionKind::fire, QT_TRANSLATE_NOOP("trade", "Fire")},
        {ObstructionKind::other, QT_TRANSLATE_NOOP("trade", "Something else")},
    }};
    const auto* found = std::ranges::find(words, kind, &std::pair<ObstructionKind, const char*>::first);
    return trade_text(found == words.end() ? words.back().second : found->second);
}

QString says(HardwareKind kind) {
    switch (kind) {
        case HardwareKind::pole:
            return trade_text(QT_TRANSLATE_NOOP("trade", "Pole"));
        case HardwareKind::track:
            return trade_text(QT_TRANSLATE_NOOP("trade", "Track"));
        case HardwareKind::wire:
            return trade_text(QT_TRANSLATE_NOOP("trade", "Wire"));
        case HardwareKind::headrail:
            break;
    }
    return trade_text(QT_TRANSLATE_NOOP("trade", "Headrail"));
}

QString says(Supply supply) {
    switch (supply) {
        case Supply::existing:
            return trade_text(QT_TRANSLATE_NOOP("trade", "There already"));
        case Supply::to_supply:
            return trade_text(QT_TRANSLATE_NOOP("trade", "We supply it"));
        case Supply::others:
            break;
    }
    return trade_text(QT_TRANSLATE_NOOP("trade", "Others supply it"));
}

QString says(Hang hang) {
    switch (hang) {
        case Hang::level:
            return trade_text(QT_TRANSLATE_NOOP("trade", "Level"));
        case Hang::head:
            return trade_text(QT_TRANSLATE_NOOP("trade", "With the head"));
        case Hang::ceiling:
            break;
    }
    return trade_text(QT_TRANSLATE_NOOP("trade", "With the ceiling"));
}

QString says(Run run) {
    return run == Run::bent ? trade_text(QT_TRANSLATE_NOOP("trade", "Bent round the corners"))
                            : trade_text(QT_TRANSLATE_NOOP("trade", "Straight across"));
}

QString says(Stage stage) {
    return stage == Stage::fixed ? trade_text(QT_TRANSLATE_NOOP("trade", "It is up: measure it again"))
                                 : trade_text(QT_TRANSLATE_NOOP("trade", "Not up yet"));
}

QString says(TopEdge top) {
    return top == TopEdge::shaped ? trade_text(QT_TRANSLATE_NOOP("trade", "Shaped to the window, fixed"))
                                  : trade_text(QT_TRANSLATE_NOOP("trade", "Straight across"));
}

QString says(DropsAt drops) {
    return drops == DropsAt::per_line ? trade_text(QT_TRANSLATE_NOOP("trade", "Follows the floor or sill"))
                                      : trade_text(QT_TRANSLATE_NOOP("trade", "Straight, one drop"));
}

QString says(Heading heading) {
    switch (heading) {
        case Heading::tab:
            return trade_text(QT_TRANSLATE_NOOP("trade", "Tab"));
        case Heading::eyelet:
            return trade_text(QT_TRANSLATE_NOOP("trade", "Eyelet"));
        case Heading::slot:
            return trade_text(QT_TRANSLATE_NOOP("trade", "Slot"));
        case Heading::pencil_pleat:
            return trade_text(QT_TRANSLATE_NOOP("trade", "Pencil pleat"));
        case Heading::pinch_pleat:
            return trade_text(QT_TRANSLATE_NOOP("trade", "Pinch pleat"));
        case Heading::goblet:
            return trade_text(QT_TRANSLATE_NOOP("trade", "Goblet"));
        case Heading::box_pleat:
            return trade_text(QT_TRANSLATE_NOOP("trade", "Box pleat"));
        case Heading::s_fold:
            return trade_text(QT_TRANSLATE_NOOP("trade", "S-fold"));
        case Heading::roman:
            break;
    }
    return trade_text(QT_TRANSLATE_NOOP("trade", "Roman blind"));
}

QString says(Fit fit) {
    switch (fit) {
        case Fit::inside:
            return trade_text(QT_TRANSLATE_NOOP("trade", "Inside the recess"));
        case Fit::outside:
            break;
    }
    return trade_text(QT_TRANSLATE_NOOP("trade", "Outside the recess"));
}

QString says(Layout layout) {
    switch (layout) {
        case Layout::pair:
            return trade_text(QT_TRANSLATE_NOOP("trade", "A pair"));
        case Layout::single:
            return trade_text(QT_TRANSLATE_NOOP("trade", "A single curtain"));
        case Layout::left:
            return trade_text(QT_TRANSLATE_NOOP("trade", "One, drawn to the left"));
        case Layout::right:
            break;
    }
    return trade_text(QT_TRANSLATE_NOOP("trade", "One, drawn to the right"));
}

QString says(HemAt length) {
    switch (length) {
        case HemAt::floor:
            return trade_text(QT_TRANSLATE_NOOP("trade", "To the floor"));
        case HemAt::sill:
            return trade_text(QT_TRANSLATE_NOOP("trade", "To the sill"));
        case HemAt::below_sill:
            return trade_text(QT_TRANSLATE_NOOP("trade", "Below the sill"));
        case HemAt::break_:
            return trade_text(QT_TRANSLATE_NOOP("trade", "Breaking on the floor"));
        case HemAt::puddle:
            return trade_text(QT_TRANSLATE_NOOP("trade", "Puddled on the floor"));
        case HemAt::given:
            break;
    }
    return trade_text(QT_TRANSLATE_NOOP("trade", "To a given height"));
}

QString says(LiningHung hung) {
    switch (hung) {
        case LiningHung::sewn_in:
            return trade_text(QT_TRANSLATE_NOOP("trade", "Sewn in"));
        case LiningHung::separate:
            break;
    }
    return trade_text(QT_TRANSLATE_NOOP("trade", "On its own tape"));
}

QString says(Operation operation) {
    switch (operation) {
        case Operation::cord:
            return trade_text(QT_TRANSLATE_NOOP("trade", "A cord"));
        case Operation::chain:
            return trade_text(QT_TRANSLATE_NOOP("trade", "A chain loop"));
        case Operation::wand:
            return trade_text(QT_TRANSLATE_NOOP("trade", "A wand"));
        case Operation::cordless:
            return trade_text(QT_TRANSLATE_NOOP("trade", "By hand, no cord"));
        case Operation::motor:
            break;
    }
    return trade_text(QT_TRANSLATE_NOOP("trade", "A motor"));
}

QString says(TieBackKind kind) {
    return kind == TieBackKind::tie_back ? trade_text(QT_TRANSLATE_NOOP("trade", "Tie-backs"))
                                         : trade_text(QT_TRANSLATE_NOOP("trade", "Holdbacks"));
}

QString says(WeightKind kind) {
    switch (kind) {
        case WeightKind::steel:
            return trade_text(QT_TRANSLATE_NOOP("trade", "Steel"));
        case WeightKind::chain:
            return trade_text(QT_TRANSLATE_NOOP("trade", "Chain"));
        case WeightKind::lead:
            break;
    }
    return trade_text(QT_TRANSLATE_NOOP("trade", "Lead"));
}

QString says(SkylineKind kind) {
    switch (kind) {
        case SkylineKind::house:
            return trade_text(QT_TRANSLATE_NOOP("trade", "House"));
        case SkylineKind::tree:
            return trade_text(QT_TRANSLATE_NOOP("trade", "Tree"));
        case SkylineKind::hill:
            return trade_text(QT_TRANSLATE_NOOP("trade", "Hill"));
        case SkylineKind::wall:
            break;
    }
    return trade_text(QT_TRANSLATE_NOOP("trade", "Wall"));
}

QString says(Surfaces surfaces) {
    switch (surfaces) {
        case Surfaces::light:
            return trade_text(QT_TRANSLATE_NOOP("trade", "Light walls and floor"));
        case Surfaces::middling:
            return trade_text(QT_TRANSLATE_NOOP("trade", "Middling"));
        case Surfaces::dark:
            break;
    }
    return trade_text(QT_TRANSLATE_NOOP("trade", "Dark walls and floor"));
}

QString says(Looks looks) {
    return looks == Looks::left ? trade_text(QT_TRANSLATE_NOOP("trade", "To the left of the line"))
                                : trade_text(QT_TRANSLATE_NOOP("trade", "To the right of the line"));
}

QString says(LengthUnit unit) {
    switch (unit) {
        case LengthUnit::mm:
            return trade_text(QT_TRANSLATE_NOOP("trade", "Millimetres"));
        case LengthUnit::cm:
            return trade_text(QT_TRANSLATE_NOOP("trade", "Centimetres"));
        case LengthUnit::m:
            return trade_text(QT_TRANSLATE_NOOP("trade", "Metres"));
        case LengthUnit::in:
            break;
    }
    return trade_text(QT_TRANSLATE_NOOP("trade", "Inches"));
}

}  // namespace truehang
