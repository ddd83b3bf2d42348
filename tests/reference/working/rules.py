# SPDX-License-Identifier: Apache-2.0
"""Sections 1 and 2 of the trade rules: house rules with their defaults, headings, and the contract's word lists."""

DEFAULTS = {
    "edge_u_mm": 2.0, "angle_u_deg": 0.5,
    "floor_clearance_mm": 10, "sill_clearance_mm": 10, "apron_mm": 150, "break_mm": 30,
    "puddle_mm": 200, "side_turn_mm": 40, "seam_mm": 15, "hem_mm": 150, "fullness_slack": 0.10,
    "lining_hem_mm": 80, "lining_rise_mm": 30, "lining_inset_mm": 20, "lining_side_mm": 10, "lining_seam_mm": 10,
    "lining_head_mm": 25, "tab_hang_mm": 70, "tab_width_mm": 50, "tab_gap_mm": 240, "tab_seam_mm": 10,
    "eyelet_top_mm": 45, "eyelet_inner_mm": 40, "eyelet_gap_mm": 180, "ring_drop_mm": 20, "hook_mm": 20,
    "slot_ease_mm": 30, "slot_stand_mm": 25, "order_step_m": 0.1, "blind_ease_mm": 10, "blind_over_mm": 50,
    "blind_side_mm": 60, "blind_hem_mm": 80, "blind_head_mm": 20, "blind_headrail_mm": 60, "blind_fold_mm": 160,
    "blind_pocket_mm": 60, "pelmet_share": 0.1667, "pelmet_over_mm": 60, "facing_mm": 80, "placing_repeats": 0,
    "heat_clear_mm": 900, "weight_every": 0.5, "roll_m": 50, "making_per_width": 0,
    # Of the making: common practice, no source, but for pleats_per_width (S. Woodcock, Capper's Farmer, 2019).
    "pleats_per_width": 5, "pleat_mm": 0, "hook_gap_mm": 80, "tape_turn_mm": 40, "separate_fullness": 1.5,
    "separate_head_mm": 10, "separate_hem_mm": 80, "separate_side_mm": 20, "tie_back_share": 0.6667,
    "tie_back_ease_mm": 100, "tie_back_width_mm": 100, "tie_back_turn_mm": 15, "rod_short_mm": 20, "cord_gap_mm": 500,
    "haberdashery_step_m": 0.1,
}

# heading: asked, least, most, head_mm, stack
HEADINGS = {
    "tab": (1.5, 1.25, 2.0, 10, 0.28),
    "eyelet": (1.8, 1.5, 2.25, 100, 0.20),
    "slot": (2.0, 1.5, 2.5, None, 0.30),
    "pencil-pleat": (2.0, 1.75, 2.5, 75, 0.25),
    "pinch-pleat": (2.0, 1.9, 2.5, 100, 0.22),
    "goblet": (2.2, 2.0, 2.5, 150, 0.25),
    "box-pleat": (2.5, 2.25, 3.0, 100, 0.30),
    "s-fold": (2.0, 1.8, 2.4, 75, 0.15),
    "roman": None,
}

WORDS = {
    "kind of obstruction": {"radiator", "sill-board", "switch", "socket", "pipe", "beam", "cornice", "picture-rail",
                            "furniture", "door-swing", "casement-swing", "handle", "vent", "alarm", "shutter",
                            "bracket", "heater", "fire", "other"},
    "kind": {"pole", "track", "wire", "headrail"},
    "supply": {"existing", "to-supply", "others"},
    "hang": {"level", "head", "ceiling"},
    "heading": set(HEADINGS),
    "fit": {"inside", "outside"},
    "run": {"straight", "bent"},
    "top": {"straight", "shaped"},
    "drops": {"one", "per-line"},
    "layout": {"pair", "single", "left", "right"},
    "length": {"floor", "sill", "below-sill", "break", "puddle", "given"},
    "lining_hung": {"sewn-in", "separate"},
    "operation": {"cord", "chain", "wand", "cordless", "motor"},
    "weights": {"steel", "chain", "lead"},
    "tie_back": {"tie-back", "holdback"},
    "how": {"measured", "proposed", "estimated", "copied"},
    "stage": {"planned", "fixed"},
}

LINES = ("left", "centre", "right")


def stations(shape):
    """Every station of an upright rectangular opening (the contract's table)."""
    words = {f"opening.width.{at}" for at in ("top", "middle", "bottom")}
    words |= {f"opening.height.{line}" for line in LINES}
    words |= {"opening.diagonal.rising", "opening.diagonal.falling", "opening.depth", "wall.left", "wall.right",
              "wall.total", "sill.projection"}
    for mark in ("above", "below", "ceiling", "level"):
        words |= {f"{mark}.{line}" for line in LINES}
    for pole in ("pole.above", "pole.below", "pole.floor", "pole.ceiling"):
        words |= {pole} | {f"{pole}.{line}" for line in LINES}
    if shape == "door":  # a door has no `below`: its height starts at the floor
        words -= {f"below.{line}" for line in LINES}
    return words


class House:
    """The survey's rules over the defaults."""

    def __init__(self, given):
        self.given = given or {}

    def __getitem__(self, key):
        return self.given.get(key, DEFAULTS[key])

    def head(self, heading):
        return self.given.get("head_mm", {}).get(heading, HEADINGS[heading][3])
