// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "survey/word.h"

// The word lists of the survey document, one place each. A new heading, shape or kind is one line here and its rule
// where it is worked.

namespace truehang {

enum class TapeClass { I, II, III };
template <>
struct Words<TapeClass> {
    static constexpr std::array<WordEntry<TapeClass>, 3> list{
        {{"I", TapeClass::I}, {"II", TapeClass::II}, {"III", TapeClass::III}}};
};

enum class FabricRole { face, lining, interlining, sheer };
template <>
struct Words<FabricRole> {
    static constexpr std::array<WordEntry<FabricRole>, 4> list{{{"face", FabricRole::face},
                                                                {"lining", FabricRole::lining},
                                                                {"interlining", FabricRole::interlining},
                                                                {"sheer", FabricRole::sheer}}};
};

enum class Match { none, straight, half_drop };
template <>
struct Words<Match> {
    static constexpr std::array<WordEntry<Match>, 3> list{
        {{"none", Match::none}, {"straight", Match::straight}, {"half-drop", Match::half_drop}}};
};

enum class Shape { recess, frame, door, bay, arch, gable, corner };
template <>
struct Words<Shape> {
    static constexpr std::array<WordEntry<Shape>, 7> list{{{"recess", Shape::recess},
                                                           {"frame", Shape::frame},
                                                           {"door", Shape::door},
                                                           {"bay", Shape::bay},
                                                           {"arch", Shape::arch},
                                                           {"gable", Shape::gable},
                                                           {"corner", Shape::corner}}};
};

enum class How { measured, proposed, estimated, copied };
template <>
struct Words<How> {
    static constexpr std::array<WordEntry<How>, 4> list{{{"measured", How::measured},
                                                         {"proposed", How::proposed},
                                                         {"estimated", How::estimated},
                                                         {"copied", How::copied}}};
};

enum class Stage { planned, fixed };
template <>
struct Words<Stage> {
    static constexpr std::array<WordEntry<Stage>, 2> list{{{"planned", Stage::planned}, {"fixed", Stage::fixed}}};
};

enum class ObstructionKind {
    radiator,
    sill_board,
    switch_,
    socket,
    pipe,
    beam,
    cornice,
    picture_rail,
    furniture,
    door_swing,
    casement_swing,
    handle,
    vent,
    alarm,
    shutter,
    bracket,
    heater,
    fire,
    other
};
template <>
struct Words<ObstructionKind> {
    static constexpr std::array<WordEntry<ObstructionKind>, 19> list{
        {{"radiator", ObstructionKind::radiator},
         {"sill-board", ObstructionKind::sill_board},
         {"switch", ObstructionKind::switch_},
         {"socket", ObstructionKind::socket},
         {"pipe", ObstructionKind::pipe},
         {"beam", ObstructionKind::beam},
         {"cornice", ObstructionKind::cornice},
         {"picture-rail", ObstructionKind::picture_rail},
         {"furniture", ObstructionKind::furniture},
         {"door-swing", ObstructionKind::door_swing},
         {"casement-swing", ObstructionKind::casement_swing},
         {"handle", ObstructionKind::handle},
         {"vent", ObstructionKind::vent},
         {"alarm", ObstructionKind::alarm},
         {"shutter", ObstructionKind::shutter},
         {"bracket", ObstructionKind::bracket},
         {"heater", ObstructionKind::heater},
         {"fire", ObstructionKind::fire},
         {"other", ObstructionKind::other}}};
};

enum class HardwareKind { pole, track, wire, headrail };
template <>
struct Words<HardwareKind> {
    static constexpr std::array<WordEntry<HardwareKind>, 4> list{{{"pole", HardwareKind::pole},
                                                                  {"track", HardwareKind::track},
                                                                  {"wire", HardwareKind::wire},
                                                                  {"headrail", HardwareKind::headrail}}};
};

enum class Supply { existing, to_supply, others };
template <>
struct Words<Supply> {
    static constexpr std::array<WordEntry<Supply>, 3> list{
        {{"existing", Supply::existing}, {"to-supply", Supply::to_supply}, {"others", Supply::others}}};
};

enum class Hang { level, head, ceiling };
template <>
struct Words<Hang> {
    static constexpr std::array<WordEntry<Hang>, 3> list{
        {{"level", Hang::level}, {"head", Hang::head}, {"ceiling", Hang::ceiling}}};
};

/// How hardware lies in a bay or corner: straight across, or bent with the facets.
enum class Run { straight, bent };
template <>
struct Words<Run> {
    static constexpr std::array<WordEntry<Run>, 2> list{{{"straight", Run::straight}, {"bent", Run::bent}}};
};

enum class Heading { tab, eyelet, slot, pencil_pleat, pinch_pleat, goblet, box_pleat, s_fold, roman };
template <>
struct Words<Heading> {
    static constexpr std::array<WordEntry<Heading>, 9> list{{{"tab", Heading::tab},
                                                             {"eyelet", Heading::eyelet},
                                                             {"slot", Heading::slot},
                                                             {"pencil-pleat", Heading::pencil_pleat},
                                                             {"pinch-pleat", Heading::pinch_pleat},
                                                             {"goblet", Heading::goblet},
                                                             {"box-pleat", Heading::box_pleat},
                                                             {"s-fold", Heading::s_fold},
                                                             {"roman", Heading::roman}}};
};

enum class Fit { inside, outside };
template <>
struct Words<Fit> {
    static constexpr std::array<WordEntry<Fit>, 2> list{{{"inside", Fit::inside}, {"outside", Fit::outside}}};
};

enum class Layout { pair, single, left, right };
template <>
struct Words<Layout> {
    static constexpr std::array<WordEntry<Layout>, 4> list{
        {{"pair", Layout::pair}, {"single", Layout::single}, {"left", Layout::left}, {"right", Layout::right}}};
};

enum class HemAt { floor, sill, below_sill, break_, puddle, given };
template <>
struct Words<HemAt> {
    static constexpr std::array<WordEntry<HemAt>, 6> list{{{"floor", HemAt::floor},
                                                           {"sill", HemAt::sill},
                                                           {"below-sill", HemAt::below_sill},
                                                           {"break", HemAt::break_},
                                                           {"puddle", HemAt::puddle},
                                                           {"given", HemAt::given}}};
};

/// How a lining is made up with its curtain.
enum class LiningHung { sewn_in, separate };
template <>
struct Words<LiningHung> {
    static constexpr std::array<WordEntry<LiningHung>, 2> list{
        {{"sewn-in", LiningHung::sewn_in}, {"separate", LiningHung::separate}}};
};

/// What moves a blind or a corded track.
enum class Operation { cord, chain, wand, cordless, motor };
template <>
struct Words<Operation> {
    static constexpr std::array<WordEntry<Operation>, 5> list{{{"cord", Operation::cord},
                                                               {"chain", Operation::chain},
                                                               {"wand", Operation::wand},
                                                               {"cordless", Operation::cordless},
                                                               {"motor", Operation::motor}}};
};

enum class TieBackKind { tie_back, holdback };
template <>
struct Words<TieBackKind> {
    static constexpr std::array<WordEntry<TieBackKind>, 2> list{
        {{"tie-back", TieBackKind::tie_back}, {"holdback", TieBackKind::holdback}}};
};

enum class WeightKind { steel, chain, lead };
template <>
struct Words<WeightKind> {
    static constexpr std::array<WordEntry<WeightKind>, 3> list{
        {{"steel", WeightKind::steel}, {"chain", WeightKind::chain}, {"lead", WeightKind::lead}}};
};

/// A curtain's top edge: straight across, or cut to the arch or the slopes that it hangs under.
enum class TopEdge { straight, shaped };
template <>
struct Words<TopEdge> {
    static constexpr std::array<WordEntry<TopEdge>, 2> list{
        {{"straight", TopEdge::straight}, {"shaped", TopEdge::shaped}}};
};

/// One drop for the whole hem, or one at each plumb line, so that the hem follows the floor.
enum class DropsAt { one, per_line };
template <>
struct Words<DropsAt> {
    static constexpr std::array<WordEntry<DropsAt>, 2> list{{{"one", DropsAt::one}, {"per-line", DropsAt::per_line}}};
};

/// What told which way a window faces.
enum class BearingFrom { compass, shadow, plan };
template <>
struct Words<BearingFrom> {
    static constexpr std::array<WordEntry<BearingFrom>, 3> list{
        {{"compass", BearingFrom::compass}, {"shadow", BearingFrom::shadow}, {"plan", BearingFrom::plan}}};
};

/// To which side of a street’s line on a plan a window looks.
enum class Looks { left, right };
template <>
struct Words<Looks> {
    static constexpr std::array<WordEntry<Looks>, 2> list{{{"left", Looks::left}, {"right", Looks::right}}};
};

/// What stands before the sky outside.
enum class SkylineKind { house, tree, hill, wall };
template <>
struct Words<SkylineKind> {
    static constexpr std::array<WordEntry<SkylineKind>, 4> list{{{"house", SkylineKind::house},
                                                                 {"tree", SkylineKind::tree},
                                                                 {"hill", SkylineKind::hill},
                                                                 {"wall", SkylineKind::wall}}};
};

/// How much light a room's own surfaces give back.
enum class Surfaces { light, middling, dark };
template <>
struct Words<Surfaces> {
    static constexpr std::array<WordEntry<Surfaces>, 3> list{
        {{"light", Surfaces::light}, {"middling", Surfaces::middling}, {"dark", Surfaces::dark}}};
};

}  // namespace truehang
