// SPDX-License-Identifier: Apache-2.0
#include "survey/house_rules.h"

#include <array>

namespace truehang {

namespace {

constexpr std::array words{
    RuleWords{"edge_u_mm", "Measuring", "How sharply an edge is read: 1 planed frame, 2 sound plaster, 4 rough stone"},
    RuleWords{"angle_u_deg", "Measuring", "How surely an angle is read, in degrees"},
    RuleWords{"floor_clearance_mm", "Lengths", "Floor length hangs this far above the floor"},
    RuleWords{"sill_clearance_mm", "Lengths", "Sill length hangs this far above the sill"},
    RuleWords{"apron_mm", "Lengths", "Below-sill length ends this far below the sill"},
    RuleWords{"break_mm", "Lengths", "Break length: this much lies on the floor"},
    RuleWords{"puddle_mm", "Lengths", "Puddle length: this much lies on the floor"},
    RuleWords{"hem_mm", "Hems and turnings", "Cloth taken by the hem, in all"},
    RuleWords{"side_turn_mm", "Hems and turnings", "Cloth taken by one side of a curtain, in all"},
    RuleWords{"seam_mm", "Hems and turnings", "Seam allowance on each of two widths that are joined"},
    RuleWords{"fullness_slack", "Hems and turnings",
              "How far below its fullness a curtain may fall before more is cut"},
    RuleWords{"weight_every", "Hems and turnings", "Corner weights: one each this many widths"},
    RuleWords{"lining_hem_mm", "Linings", "Lining hem, in all"},
    RuleWords{"lining_rise_mm", "Linings", "The lining ends this far above the curtain’s hem"},
    RuleWords{"lining_inset_mm", "Linings", "The lining sits this far in from each side"},
    RuleWords{"lining_side_mm", "Linings", "Seam allowance at each side of the lining"},
    RuleWords{"lining_seam_mm", "Linings", "Seam allowance on each of two lining widths that are joined"},
    RuleWords{"lining_head_mm", "Linings", "Lining turned down at the top"},
    RuleWords{"separate_fullness", "Linings", "Fullness of a lining that hangs on its own tape"},
    RuleWords{"separate_head_mm", "Linings", "Cloth taken above a separate lining’s finished top"},
    RuleWords{"separate_hem_mm", "Linings", "A separate lining’s hem, in all"},
    RuleWords{"separate_side_mm", "Linings", "Cloth taken by one side of a separate lining"},
    RuleWords{"tab_hang_mm", "Tabs", "From the pole’s centre line down to the curtain’s top edge"},
    RuleWords{"tab_width_mm", "Tabs", "Finished width of a tab"},
    RuleWords{"tab_gap_mm", "Tabs", "Largest spacing of tabs, centre to centre"},
    RuleWords{"tab_seam_mm", "Tabs", "Seam allowance at each end of a tab"},
    RuleWords{"facing_mm", "Tabs", "Depth of the facing behind an unlined tab heading"},
    RuleWords{"eyelet_top_mm", "Eyelets, rings and slots", "Eyelet centre down from the top edge"},
    RuleWords{"eyelet_inner_mm", "Eyelets, rings and slots", "Inner diameter of an eyelet"},
    RuleWords{"eyelet_gap_mm", "Eyelets, rings and slots", "Largest spacing of eyelets, centre to centre"},
    RuleWords{"ring_drop_mm", "Eyelets, rings and slots", "Underside of the pole to the ring’s eye"},
    RuleWords{"hook_mm", "Eyelets, rings and slots", "The top edge stands this far above the eye that it hooks into"},
    RuleWords{"slot_ease_mm", "Eyelets, rings and slots", "A slot is this much longer round than its pole"},
    RuleWords{"slot_stand_mm", "Eyelets, rings and slots", "Frill that stands above a slot"},
    RuleWords{"pleats_per_width", "Pleats and hooks",
              "Pleats in one width of cloth, where a pleat has no size of its own"},
    RuleWords{"pleat_mm", "Pleats and hooks", "Cloth that one pleat is to take; 0: by the widths"},
    RuleWords{"hook_gap_mm", "Pleats and hooks", "Largest spacing of hooks, hung"},
    RuleWords{"tape_turn_mm", "Pleats and hooks", "Heading tape turned in at each end of a curtain"},
    RuleWords{"tie_back_share", "Tie-backs", "A tie-back holds at this share of the drop, from the top"},
    RuleWords{"tie_back_ease_mm", "Tie-backs", "A tie-back is this much longer than the way round the cloth"},
    RuleWords{"tie_back_width_mm", "Tie-backs", "Finished width of a tie-back"},
    RuleWords{"tie_back_turn_mm", "Tie-backs", "Seam allowance round a tie-back"},
    RuleWords{"blind_ease_mm", "Blinds", "Taken off the width of a blind inside a recess, in all"},
    RuleWords{"blind_over_mm", "Blinds", "A blind outside the recess passes the opening by this at each side"},
    RuleWords{"blind_side_mm", "Blinds", "Cloth turned back at each side of a blind"},
    RuleWords{"blind_hem_mm", "Blinds", "Cloth taken by a blind’s hem, in all"},
    RuleWords{"blind_head_mm", "Blinds", "Cloth taken above a blind’s finished top"},
    RuleWords{"blind_headrail_mm", "Blinds", "Depth at the top that doesn’t fold"},
    RuleWords{"blind_fold_mm", "Blinds", "Deepest fold allowed"},
    RuleWords{"blind_pocket_mm", "Blinds", "Lining taken by each rod’s pocket"},
    RuleWords{"rod_short_mm", "Blinds", "A rod is this much shorter than the blind is wide"},
    RuleWords{"cord_gap_mm", "Blinds", "Largest spacing of the cords or tapes that raise a blind"},
    RuleWords{"pelmet_share", "Pelmets", "A pelmet’s depth as a share of the curtain’s length"},
    RuleWords{"pelmet_over_mm", "Pelmets", "A pelmet passes the hardware by this at each end"},
    RuleWords{"order_step_m", "Ordering", "Cloth is sold by this step, in metres"},
    RuleWords{"haberdashery_step_m", "Ordering", "Tape, cord and the like are sold by this step, in metres"},
    RuleWords{"placing_repeats", "Ordering", "Repeats added once to an order, to place the pattern"},
    RuleWords{"roll_m", "Ordering", "A usual roll, in metres: nothing longer is cut in one piece"},
    RuleWords{"making_per_width", "Ordering", "Charge for making a width, in the cloth’s currency"},
    RuleWords{"heat_clear_mm", "Safety", "Clearance from a heater or fire"},
};

}  // namespace

std::span<const RuleWords> rule_words() { return words; }

}  // namespace truehang
