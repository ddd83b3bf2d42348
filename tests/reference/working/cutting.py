# SPDX-License-Identifier: Apache-2.0
"""Sections 5, 6 and 7 of the trade rules: cloth, lining, tabs, eyelets, weights, mass."""

import math

from rounding import at_least, down, more, nearest, settle, up


def usable(fabric):
    return fabric["width_mm"] - 2.0 * fabric.get("selvedge_mm", 0)


def joined(fabric):
    """Usable where widths are joined: a whole number of the repeats across, where the joins must match."""
    across = fabric.get("repeat_across_mm", 0)
    if across <= 0 or fabric.get("match") == "none":
        return usable(fabric)
    return down(usable(fabric) / across) * float(across)


def kept(fabric):
    """What shrinkage leaves of a length."""
    return 1.0 - fabric.get("shrinkage_pct", 0) / 100.0


def repeat_of(fabric):
    return 0.0 if fabric.get("match", "straight") == "none" else float(fabric.get("repeat_mm", 0))


def least_widths(start, step, fits):
    k = start
    while not fits(k):
        k += step
        if k > 10000:
            return None
    return k


def joins(k):
    return up(k) - 1


def plan(raw, fabric, count):
    """Section 5: (cut drop, length for the window), both unrounded where the repeat is no whole number."""
    repeat = repeat_of(fabric)
    if repeat <= 0:
        return up(raw), count * up(raw)
    whole = up(raw / repeat) * repeat
    if fabric.get("match", "straight") != "half-drop" or count < 2:
        return whole, count * whole
    batch = count * whole + repeat / 2.0  # all widths of one phase, then all of the other
    turn = (max(0, up(raw / repeat - 0.5)) + 0.5) * repeat  # phases in turn
    return (turn, count * turn) if more(batch, count * turn) else (whole, batch)


def before_repeats(length, fabric):
    """What one drop takes: the shrinkage put on, then the skew of the print over a width."""
    return length / kept(fabric) + fabric.get("skew_mm", 0)


def curtain_joins(k, fabric, house):
    """From the leading edge: full widths there, a half width at the outer edge. The first width gives its side turn and
    one seam, each further one two seams."""
    at, found = -house["side_turn_mm"], []
    for i in range(joins(k)):
        at += joined(fabric) - (1 if i == 0 else 2) * house["seam_mm"]
        found.append(at)
    return found


def blind_joins(k, w, fabric, house):
    """From the left edge: a full width in the middle, the rest at both sides alike (one join at each side for every two
    further widths); two widths that don't reach so are joined once."""
    if k < 2:
        return []
    u, seam = joined(fabric), house["seam_mm"]
    pairs = down(k / 2.0)
    if at_least(k * u - 4.0 * pairs * seam, w + 2.0 * house["blind_side_mm"]):
        return [w / 2.0 + sign * (i + 0.5) * (u - 2.0 * seam)
                for sign, places in ((-1, range(pairs - 1, -1, -1)), (1, range(pairs))) for i in places]
    at, found = -house["blind_side_mm"], []
    for i in range(int(k) - 1):
        at += u - (1 if i == 0 else 2) * seam
        found.append(at)
    return found


def curtain_widths(w, pair, e, asked, house, fabric):
    """Least k with (flat - e)/(w - e) >= fullness - slack; returns k, flat and the fullness reached."""
    def flat(k):
        u = joined(fabric) if joins(k) else usable(fabric)
        return k * u - 2.0 * house["seam_mm"] * joins(k) - 2.0 * house["side_turn_mm"]
    wanted = asked - house["fullness_slack"]
    k = least_widths(0.5 if pair else 1.0, 0.5 if pair else 1.0,
                     lambda k: at_least((flat(k) - e) / (w - e), wanted))
    return (k, flat(k), (flat(k) - e) / (w - e)) if k else None


def lining_of(fabric, flat, drop, pair, n, house, below_top):
    """Section 6. `below_top`: how far under a slot heading's top it starts."""
    u, inset = usable(fabric), house["lining_inset_mm"]
    flat_lining = flat - 2.0 * inset
    k = least_widths(0.5 if pair else 1.0, 0.5 if pair else 1.0, lambda k: at_least(
        k * u - 2.0 * house["lining_seam_mm"] * joins(k), flat_lining + 2.0 * house["lining_side_mm"]))
    if k is None:
        return None
    out = {"fabric": fabric["id"], "widths_each": k, "widths": up(n * k), "flat_mm": flat_lining,
           "cut_drop_mm": None, "length_mm": None}
    if drop is not None:
        raw = drop - house["lining_rise_mm"] + house["lining_hem_mm"] + house["lining_head_mm"] - below_top
        out["cut_drop_mm"] = up(raw / kept(fabric))
        out["length_mm"] = out["widths"] * out["cut_drop_mm"]
    return out


def interlining_of(fabric, flat, drop, pair, n):
    u = usable(fabric)
    k = least_widths(0.5 if pair else 1.0, 0.5 if pair else 1.0, lambda k: at_least(k * u, flat))
    if k is None:
        return None
    out = {"fabric": fabric["id"], "widths_each": k, "widths": up(n * k), "flat_mm": flat, "cut_drop_mm": None,
           "length_mm": None}
    if drop is not None:
        out["cut_drop_mm"] = up(drop / kept(fabric))
        out["length_mm"] = out["widths"] * out["cut_drop_mm"]
    return out


def tab_hang(diameter, cut, house):
    """Section 7: the tab's cut length and the hang which that cut gives."""
    round_pole = math.pi * diameter / 2.0
    if cut is None:
        cut = 10 * nearest((round_pole + 2.0 * house["tab_hang_mm"] + 2.0 * house["tab_seam_mm"]) / 10.0)
    return cut, (cut - 2.0 * house["tab_seam_mm"] - round_pole) / 2.0


def tabs_of(flat, n, fabric, cut, hang, house):
    gap = up((flat - house["tab_width_mm"]) / house["tab_gap_mm"])
    each = 1 + gap
    each += 1 - each % 2
    cut_width = 2.0 * house["tab_width_mm"] + 2.0 * house["tab_seam_mm"]
    out = {"cut_length_mm": cut, "hang_mm": hang, "each": each, "cut_width_mm": cut_width,
           "spacing_mm": (flat - house["tab_width_mm"]) / (each - 1) if each > 1 else None, "length_mm": None,
           "positions_mm": [house["tab_width_mm"] / 2.0 + i * (flat - house["tab_width_mm"]) / max(1, each - 1)
                            for i in range(each)]}
    if fabric:
        row = down(usable(fabric) / cut_width)
        out["rows"] = up(each * n / row)
        out["row_mm"] = up(cut / kept(fabric))
        out["length_mm"] = out["rows"] * out["row_mm"]
    return out


def eyelets_of(flat, house):
    least = 1.0 + (flat - 100.0) / house["eyelet_gap_mm"]
    each = max(2, 2 * up(least / 2.0))
    return {"each": each, "spacing_mm": (flat - 100.0) / (each - 1),
            "positions_mm": [50.0 + i * (flat - 100.0) / (each - 1) for i in range(each)]}


def weights_of(k, house):
    return {"each": 1 + up(k / house["weight_every"])}


def mass_of(pieces):
    """kg of (fabric, widths, cut drop); None where a mass per area is missing."""
    total = 0.0
    for fabric, widths, cut_drop in pieces:
        if fabric.get("mass_gsm") is None or cut_drop is None:
            return None
        total += widths * usable(fabric) * cut_drop * fabric["mass_gsm"] / 1e9
    return total


def order_m(length, step):
    return settle(up(length / 1000.0 / step) * step)
