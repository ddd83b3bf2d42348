# SPDX-License-Identifier: Apache-2.0
"""Sections 4, 8 and 9 of the trade rules: one layer of a window, finished, cut and checked."""

import math

import cutting
import making
import hung_together
from readings import Opening
from rounding import at_least, down, more, nearest, up
from rules import HEADINGS, LINES

THREADED = ("tab", "eyelet", "slot")
HEAT = ("radiator", "heater", "fire")


def most_of(sizes):
    """The largest; of equals the first."""
    most = sizes[0]
    for size in sizes[1:]:
        if more(size.mm, most.mm):
            most = size
    return most


def least_of(sizes):
    """The least; of equals the first."""
    least = sizes[0]
    for size in sizes[1:]:
        if more(least.mm, size.mm):
            least = size
    return least


class Layer:
    """Figures of one hardware and treatment. `figures` as the contract's, unrounded where derived; `flags` by code."""

    def __init__(self, window, readings, layer, fabrics, house, room, window_hang):
        self.window, self.readings, self.house, self.fabrics, self.room = window, readings, house, fabrics, room
        self.hardware = layer.get("hardware") or {}
        self.treatment = layer.get("treatment") or {}
        self.flags = []
        self.cuts = []  # (fabric id, what, length, count), length unrounded
        self.figures = dict.fromkeys(("finished", "cloth", "lining", "interlining", "tabs", "eyelets", "weights",
                                      "blind", "pelmet", "mass_kg", "bracket_kg", "second_lining", "pleats",
                                      "hooks", "tie_back", "haberdashery", "load"))
        self.heading = self.treatment.get("heading")
        if self.heading not in HEADINGS:
            return
        self.kind = self.hardware.get("kind", "pole")
        self.roman = self.heading == "roman"
        self.inside = self.roman and self.treatment.get("fit", "inside") == "inside"
        # A blind inside hangs from no pole: its heights are those of the window's other hardware, where there is some.
        self.opening = Opening(readings, window_hang if self.inside else self.hardware.get("hang", "level"))
        self.in_recess = self.inside or any(s.startswith("pole.below") for s in readings.by)
        self.pair = not self.roman and self.treatment.get("layout", "pair") == "pair"
        self.n = 2 if self.pair else 1
        self.follows = not self.roman and self.treatment.get("drops") == "per-line"
        self.length_mm = self.hardware.get("length_mm")
        # Of a track the readings run to the glider's eye, and d = 0 (section 4).
        self.d = 0.0 if self.kind == "track" else self.hardware.get("diameter_mm")
        self._work()

    def flag(self, code, severity):
        self.flags.append((code, severity))

    def fabric(self, role):
        return self.fabrics.get(self.treatment.get(role)) if self.treatment.get(role) else None

    def _work(self):
        self._width()
        self._drop()
        self.figures["finished"] = {
            "curtains": self.n, "width_mm": None if self.w is None else nearest(self.w),
            "drop_mm": None if self.drop is None else nearest(self.drop),
            "width_u_mm": self.w_u if self.w is not None else None,
            "drop_u_mm": self.drop_u if self.drop is not None else None, "drops_mm": self._line_drops(),
            "planned": None}
        if self.w is None or (self.drop is None and ("impossible", "stop") not in self.flags):
            self.flag("missing-reading", "stop")
        if self._impossible():
            self.flag("impossible", "stop")
        elif self.w is not None and self.drop is not None and self._wished_in_vain():
            self.flag("impossible", "stop")
        elif self.w is not None:
            if self.roman:
                self._blind()
            else:
                self._curtains()
        self._pelmet()
        self._level()
        self._clear()
        self._made_up()
        self._waits()

    # Section 4 and the widths of 9 -------------------------------------------------------------------------------
    def _width(self):
        self.w = self.w_u = self.total_u = None
        measured = self.hardware.get("supply") == "existing"  # a chosen length has no uncertainty, a measured one has
        if self.roman:
            widths = self.opening.widths()
            if self.inside:
                if widths:
                    size = least_of(widths)
                    self.w, self.total_u = size.mm - self.house["blind_ease_mm"], size.u
            elif self.length_mm is not None:
                self.w, self.total_u = self.length_mm, self.readings.u_of(self.length_mm) if measured else 0.0
            elif widths:
                size = most_of(widths)
                self.w, self.total_u = size.mm + 2.0 * self.house["blind_over_mm"], size.u
        elif self.length_mm is not None:
            total = self.length_mm + 2.0 * self.hardware.get("return_mm", 0) + self.hardware.get("overlap_mm", 0)
            self.w, self.total_u = total / self.n, self.readings.u_of(self.length_mm) if measured else 0.0
        if self.w is not None:
            self.w_u = self.total_u / self.n

    def above_pole(self):
        """T - c, the curtain's top edge above the pole's centre line; None where the pole's diameter is missing."""
        house, d = self.house, self.d
        if self.roman:
            return 0.0
        if d is None:
            return None
        if self.heading == "tab":
            return -cutting.tab_hang(d, self.treatment.get("tab_cut_mm"), house)[1]
        if self.heading == "eyelet":
            return -(house["eyelet_inner_mm"] - d) / 2.0 + house["eyelet_top_mm"]
        if self.heading == "slot":
            return d / 2.0 + house["slot_stand_mm"]
        if self.kind == "track":
            return float(house["hook_mm"])
        return -d / 2.0 - house["ring_drop_mm"] + house["hook_mm"]

    def bottom(self):
        """(mark that the bottom hangs from, B above it), B None where it can't be said."""
        length, house = self.treatment.get("length", "floor"), self.house
        return {"floor": ("floor", house["floor_clearance_mm"]), "sill": ("sill", house["sill_clearance_mm"]),
                "below-sill": ("sill", -house["apron_mm"]), "break": ("floor", -house["break_mm"]),
                "puddle": ("floor", -house["puddle_mm"]), "given": ("floor", self.treatment.get("bottom_mm"))}[length]

    def _drop(self):
        self.drop = self.drop_u = self.drop_line = self.top = None
        self.drops = {}
        if self.inside:
            heights = [s for s in (self.opening.height(line, "sill", "head") for line in LINES) if s]
            if heights:
                least = least_of(heights)
                self.drop, self.drop_u = least.mm, least.u
            return
        base, bottom = self.bottom()
        top = self.above_pole()
        if self.window["shape"] == "door" and base == "sill":
            self.flag("impossible", "stop")
            return
        if bottom is None or top is None:
            return
        for line in LINES:
            pole = self.opening.height(line, base, "pole")
            if pole is not None:
                self.drops[line] = (pole.mm + top - bottom, pole.u)
        if self.drops:
            self.drop, self.drop_u = next(iter(self.drops.values()))
            self.drop_line = next(iter(self.drops))
            least = self.treatment.get("length", "floor") in ("floor", "sill") and not self.follows
            for line, (drop, u) in self.drops.items():  # of equals the first line
                if more(self.drop, drop) if least else more(drop, self.drop):
                    self.drop, self.drop_u, self.drop_line = drop, u, line
            # The top edge above the floor: at the line that decides, else at the first where it is known.
            for line in (self.drop_line,) + LINES:
                pole = self.opening.height(line, "floor", "pole")
                if pole is not None:
                    self.top = pole.mm + top
                    break

    def _line_drops(self):
        """The hem follows floor or sill: one drop at each plumb line, the longest is cut."""
        if not self.follows or not self.drops:
            return None
        if len(self.drops) == 1:
            self.flag("not-checked", "note")
        hang_there = {"left": ["left"], "centre": ["left", "right"], "right": ["right"]}
        return [{"line": line, "mm": nearest(drop), "u_mm": u, "curtains": hang_there[line] if self.pair else None}
                for line, (drop, u) in self.drops.items()]

    def stopped(self):
        return self.w is None or self.drop is None or any(severity == "stop" for _, severity in self.flags)

    def held_against(self, before):
        """Of a pole that is up: `before` is the same layer by the planned readings."""
        if self.inside or self.stopped():
            return
        told, moved = hung_together.planned(self, before)
        self.figures["finished"]["planned"] = told
        if moved:
            self.flag("pole-moved", "decide")

    def _waits(self):
        """The pole is said to be up, and its height is the planned one."""
        up_already = any(s.startswith("pole.") and r.get("stage") == "fixed" for s, r in self.readings.by.items())
        if self.hardware.get("stage") == "fixed" and not self.inside and not up_already:
            self.flag("pole-to-measure", "remeasure")

    def _level(self):
        """floor-not-level, sill-not-level (section 4)."""
        if self.inside or (self.window["shape"] == "door" and self.bottom()[0] == "sill"):
            return
        base = self.bottom()[0]
        if self.opening.tied:
            compared = [drop for drop, _ in self.drops.values()]
        else:
            compared = [s.mm for s in (self.opening.height(line, base, "head") for line in LINES) if s]
        if compared and more(max(compared) - min(compared), 10.0):
            self.flag(base + "-not-level", "note" if self.follows and self.opening.tied else "decide")

    def _impossible(self):
        hem = self.house["blind_hem_mm"] if self.roman else self.house["hem_mm"]
        if self.w is not None and self.w <= 0:
            return True
        if not self.roman and self.w is not None:
            if self.length_mm < self.hardware.get("overlap_mm", 0) or self.w - self.ease() <= 0:
                return True
        if self.drop is not None and (self.drop <= 0 or more(hem, self.drop)):
            return True
        return self.roman and self.drop is not None and self.drop <= self.house["blind_headrail_mm"]

    def _cant_be_joined(self):
        if self.drop is not None:  # else what is missing is said first
            self.flag("impossible", "stop")

    def _wished_in_vain(self):
        """What no cloth can meet, of what the random surveys ask."""
        house, treatment = self.house, self.treatment
        for role in ("fabric", "lining", "interlining", "second_lining"):
            cloth = self.fabric(role)
            if cloth and more(cutting.repeat_of(cloth), 1000.0 * house["roll_m"]):
                return True
        if not self.roman and (treatment.get("fullness") or HEADINGS[self.heading][0]) < 1:
            return True
        pelmet = treatment.get("pelmet")
        depth = (pelmet or {}).get("depth_mm", 5 * nearest(house["pelmet_share"] * self.drop / 5.0))
        if pelmet and (depth <= 0 or depth >= self.drop):
            return True
        if self.heading == "slot" and house["slot_stand_mm"] + self.pocket() >= self.drop:
            return True
        lined = self.fabric("lining") or self.fabric("second_lining")
        faced = self.heading == "tab" and self.fabric("fabric") and (
            not lined or treatment.get("lining_hung") == "separate")
        return bool(faced and house["facing_mm"] >= self.drop)

    def ease(self):
        """e of section 5: what of one curtain hangs flat."""
        back, over = self.hardware.get("return_mm", 0), self.hardware.get("overlap_mm", 0)
        return back + over / 2.0 if self.pair else 2.0 * back + over

    # Sections 5 to 7 ---------------------------------------------------------------------------------------------
    def pocket(self):
        return (math.pi * self.d + self.house["slot_ease_mm"]) / 2.0

    def head(self):
        if self.heading == "slot":
            given = self.house.given.get("head_mm", {}).get("slot")
            return given if given is not None else self.house["slot_stand_mm"] + self.pocket() + 10.0
        return self.house.head(self.heading)

    def _curtains(self):
        fabric, house = self.fabric("fabric"), self.house
        if fabric is None:
            return
        if self.heading == "slot" and self.d is None:
            return
        asked = self.treatment.get("fullness") or HEADINGS[self.heading][0]
        got = cutting.curtain_widths(self.w, self.pair, self.ease(), asked, house, fabric)
        if got is None:
            self._cant_be_joined()
            return
        k, flat, reached = got
        widths = up(self.n * k)
        cloth = {"fabric": fabric["id"], "widths_each": k, "widths": widths, "fullness": reached, "flat_mm": flat,
                 "cut_drop_mm": None, "length_mm": None, "joins_mm": cutting.curtain_joins(k, fabric, house) or None}
        self.figures["cloth"] = cloth
        _, least, most, _, _ = HEADINGS[self.heading]
        if more(least, reached) or more(reached, most):
            self.flag("fullness-range", "decide")
        pieces = []
        if self.drop is not None:
            self._cut(fabric, cloth, self.head() + house["hem_mm"], pieces)
        self._lining(flat, pieces)
        self._heading_parts(fabric, flat, widths, k)
        if self.drop is not None:
            self._mass(pieces)
        self._edge(fabric, asked, k)

    def _cut(self, fabric, cloth, allowance, pieces):
        raw = cutting.before_repeats(self.drop + allowance, fabric)
        cut, length = cutting.plan(raw, fabric, cloth["widths"])
        cloth["cut_drop_mm"], cloth["length_mm"] = up(cut), up(length)
        if more(cut, 1000.0 * self.house["roll_m"]):
            self.flag("impossible", "stop")
        self.cuts.append((fabric, "drops", length))
        pieces.append((fabric, cloth["widths"], cut))

    def _lining(self, flat, pieces):
        interlining = self.fabric("interlining")
        for key in ("lining", "second_lining"):
            lining = self.fabric(key)
            if lining and self.hangs_apart() and self.drop is not None:
                self.figures[key] = making.separate_lining(self, lining)
            elif lining and not self.hangs_apart():
                start = self.house["slot_stand_mm"] + self.pocket() if self.heading == "slot" else 0.0
                self.figures[key] = cutting.lining_of(lining, flat, self.drop, self.pair, self.n, self.house, start)
        if interlining:
            self.figures["interlining"] = cutting.interlining_of(interlining, flat, self.drop, self.pair, self.n)
        for key in ("lining", "second_lining", "interlining"):
            fabric = self.fabric(key)
            piece = self.figures[key]
            if piece and piece["cut_drop_mm"] is not None:
                self.cuts.append((fabric, key, piece["length_mm"]))
                pieces.append((fabric, piece["widths"], piece["cut_drop_mm"]))

    def _heading_parts(self, fabric, flat, widths, k):
        house = self.house
        if self.heading == "tab" and self.d is not None:
            cut, hang = cutting.tab_hang(self.d, self.treatment.get("tab_cut_mm"), house)
            tabs = self.figures["tabs"] = cutting.tabs_of(flat, self.n, fabric, cut, hang, house)
            self.cuts.append((fabric, "tabs", tabs["length_mm"]))
        lined = self.fabric("lining") or self.fabric("second_lining")
        if self.heading == "tab" and (not lined or self.hangs_apart()):
            self.cuts.append((fabric, "facing", widths * up((house["facing_mm"] + 20.0) / cutting.kept(fabric))))
        if self.heading == "eyelet":
            self.figures["eyelets"] = cutting.eyelets_of(flat, house)
        self.figures["weights"] = cutting.weights_of(k, house)
        if self.fabric("interlining"):
            self.flag("weights-not-needed", "note")
        if lined and self.hangs_apart() and self.heading in making.HOOKLESS:
            self.flag("lining-hung", "decide")
        pleats = making.pleats_of(self, flat, k) if self.heading in making.PLEATED else None
        self.figures["pleats"], self.figures["hooks"] = pleats, making.hooks_of(self, pleats)
        if self.drop is not None:
            self.figures["tie_back"], length = making.tie_back_of(self, fabric)
            if length is not None:
                self.cuts.append((fabric, "tie-backs", length))

    def _mass(self, pieces):
        mass = cutting.mass_of(pieces)
        self.figures["mass_kg"] = mass
        if mass is None:
            return
        brackets = self.hardware.get("brackets", len(self.hardware.get("bracket_at_mm", [])) or None)
        share = 1.0 if self.n == 1 else 0.625 if (brackets or 0) >= 3 else 0.5
        self.figures["bracket_kg"] = share * mass + self.hardware.get("mass_kg", 0)

    def _edge(self, fabric, asked, k):
        """on-the-edge (section 5)."""
        house = self.house
        total = self.w * self.n
        widths = []
        for change, fullness in ((2 * self.total_u, asked), (-2 * self.total_u, asked), (0, asked + 0.05),
                                 (0, asked - 0.05)):
            w = (total + change) / self.n
            if w - self.ease() > 0:
                got = cutting.curtain_widths(w, self.pair, self.ease(), fullness, house, fabric)
                widths.append(got[0] if got else k)
        edge = any(other != k for other in widths)
        if self.drop is not None:
            edge = edge or self._drop_edge(fabric, self.head() + house["hem_mm"], self.figures["cloth"]["widths"])
        if edge:
            self.flag("on-the-edge", "decide")

    def _drop_edge(self, fabric, allowance, widths):
        raws = [cutting.before_repeats(self.drop + sign * 2.0 * self.drop_u + allowance, fabric) for sign in (-1, 0, 1)]
        if cutting.repeat_of(fabric) > 0:
            if len({round(cutting.plan(raw, fabric, widths)[0] / cutting.repeat_of(fabric), 6) for raw in raws}) > 1:
                return True
        if fabric.get("railroad") and not fabric.get("one_way") and not self.roman:
            drops = [cutting.plan(raw, fabric, widths)[0] if cutting.repeat_of(fabric) <= 0 else up(raw) for raw in raws]
            return len({at_least(cutting.usable(fabric), drop) for drop in drops}) > 1
        return False

    # Section 9 ---------------------------------------------------------------------------------------------------
    def _blind(self):
        fabric, house, pieces = self.fabric("fabric"), self.house, []
        rods = None
        if self.drop is not None:
            rods = max(1, up(((self.drop - house["blind_headrail_mm"]) / house["blind_fold_mm"] - 1.0) / 2.0))
            fold = (self.drop - house["blind_headrail_mm"]) / (2.0 * rods + 1.0)
            self.figures["blind"] = {"rods": rods, "fold_mm": fold, "up_mm": fold + house["blind_headrail_mm"]}
        if fabric is None:
            return

        def least(w, alone, joined, seam, sides):
            return cutting.least_widths(1.0, 1.0, lambda k: at_least(
                k * (joined if k > 1 else alone) - 2.0 * seam * (k - 1), w + 2.0 * sides))
        u = (cutting.usable(fabric), cutting.joined(fabric))
        k = least(self.w, *u, house["seam_mm"], house["blind_side_mm"])
        if k is None:
            self._cant_be_joined()
            return
        cloth = {"fabric": fabric["id"], "widths_each": k, "widths": int(k), "fullness": None,
                 "flat_mm": self.w + 2.0 * house["blind_side_mm"], "cut_drop_mm": None, "length_mm": None,
                 "joins_mm": cutting.blind_joins(k, self.w, fabric, house) or None}
        self.figures["cloth"] = cloth
        allowance = house["blind_hem_mm"] + house["blind_head_mm"]
        edge = any(least(self.w + change, *u, house["seam_mm"], house["blind_side_mm"]) not in (k, None)
                   for change in (2 * self.total_u, -2 * self.total_u))
        if self.drop is not None:
            self._cut(fabric, cloth, allowance, pieces)
            edge = edge or self._drop_edge(fabric, allowance, int(k))
        if edge:
            self.flag("on-the-edge", "decide")
        for key in ("lining", "second_lining"):
            lining = self.fabric(key)
            if not lining:
                continue
            kl = least(self.w, cutting.usable(lining), cutting.usable(lining), house["lining_seam_mm"], 0)
            piece = self.figures[key] = {"fabric": lining["id"], "widths_each": kl, "widths": int(kl),
                                         "flat_mm": self.w, "cut_drop_mm": None, "length_mm": None}
            if self.drop is not None:
                raw = self.drop + house["lining_hem_mm"] / 2.0 + rods * house["blind_pocket_mm"]
                piece["cut_drop_mm"] = up(raw / cutting.kept(lining))
                piece["length_mm"] = piece["widths"] * piece["cut_drop_mm"]
                self.cuts.append((lining, "lining", piece["length_mm"]))
                pieces.append((lining, piece["widths"], piece["cut_drop_mm"]))
        if self.drop is not None:
            self._mass(pieces)

    def _pelmet(self):
        asked = self.treatment.get("pelmet")
        if not asked:
            return
        fabric, house = self.fabric("fabric"), self.house
        depth = asked.get("depth_mm")
        if depth is None and self.drop is not None:
            depth = 5 * nearest(house["pelmet_share"] * self.drop / 5.0)
        pelmet = self.figures["pelmet"] = dict.fromkeys(("depth_mm", "face_mm", "widths", "cut_drop_mm", "length_mm"))
        pelmet["depth_mm"] = depth
        if self.length_mm is None:
            return
        back = asked.get("return_mm", 0)
        face = pelmet["face_mm"] = self.length_mm + 2.0 * house["pelmet_over_mm"]
        if fabric is None:
            return
        alone, joined = cutting.usable(fabric), cutting.joined(fabric)
        k = cutting.least_widths(1, 1, lambda k: at_least(
            k * (joined if k > 1 else alone) - 2.0 * house["seam_mm"] * (k - 1), face + 2.0 * back + 2.0 * 40.0))
        if k is None:
            self._cant_be_joined()
        pelmet["widths"] = k
        if depth is not None and k is not None:
            cut, length = cutting.plan(depth + 100.0, fabric, k)
            pelmet["cut_drop_mm"], pelmet["length_mm"] = up(cut), up(length)
            self.cuts.append((fabric, "pelmet", length))

    # What is made up beside the cloth, and what it needs -------------------------------------------------------------
    def hangs_apart(self):
        return not self.roman and self.treatment.get("lining_hung") == "separate"

    def _made_up(self):
        making.flags_of_choices(self)
        if self.w is None or self.drop is None or ("impossible", "stop") in self.flags:
            return
        if self.figures["cloth"]:
            self.figures["load"] = making.load_of(self)
            making.flags_of_load(self)
        self.figures["haberdashery"] = making.bought_of(self)

    # Section 8 ---------------------------------------------------------------------------------------------------
    def span(self):
        """Left and right end of what hangs, from the opening's left edge; None where it can't be placed."""
        width = self.opening.across(self.opening.wall_width) if self.opening.wall_width else None
        long = self.w if self.roman else self.length_mm
        if long is None:
            return None
        left = self.hardware.get("left_mm")
        if left is None:
            if width is None:
                return None
            left = (width.mm - long) / 2.0
        return left, left + long

    def poles(self):
        return [s.mm for s in (self.opening.height(line, "floor", "pole") for line in LINES) if s]

    def _clear(self):
        self._ceiling()
        self._finials()
        self._fouls()
        self._heat()
        if not self.roman:
            self._stack()
        self._on_what()

    def _ceiling(self):
        if self.roman:
            return
        gaps = [s.mm for s in (self.opening.height(line, "pole", "ceiling") for line in LINES) if s]
        if any(more((self.d or 0.0) / 2.0 + 20.0, gap) for gap in gaps):
            self.flag("pole-near-ceiling", "decide")

    def _finials(self):
        if self.length_mm is None:
            return
        finial = self.hardware.get("finial_mm", 0)
        if self.in_recess:
            widths = self.opening.widths()
            if widths and more(self.length_mm + 2.0 * finial, min(s.mm for s in widths)):
                self.flag("finial-fouls", "decide")
            return
        span = self.span()
        width = self.opening.across(self.opening.wall_width) if self.opening.wall_width else None
        left, right = self.opening.wall_size("wall.left"), self.opening.wall_size("wall.right")
        if span is None:
            return
        if left is not None and more(finial - span[0], left.mm) or \
                right is not None and width is not None and more(span[1] + finial - width.mm, right.mm):
            self.flag("finial-fouls", "decide")
        if (left is None or right is None) and any(s.startswith("wall.") for s in self.readings.by):
            self.flag("not-checked", "note")

    def area(self):
        """Of what hangs: left, right, bottom, top (above the floor); None for what isn't known."""
        span = self.span()
        if self.inside:
            sills = [s.mm for s in (self.opening.height(line, "floor", "sill") for line in LINES) if s]
            heads = [s.mm for s in (self.opening.height(line, "floor", "head") for line in LINES) if s]
            if self.window["shape"] == "door":
                sills = [0.0]
            return span, min(sills) if sills else None, max(heads) if heads else None
        base, bottom = self.bottom()
        poles, above = self.poles(), self.above_pole()
        top = max(poles) + above if poles and above is not None else None
        if bottom is not None and base == "sill":
            sills = [s.mm for s in (self.opening.height(line, "floor", "sill") for line in LINES) if s]
            bottom = min(sills) + bottom if sills else None
        return span, bottom, top

    def _fouls(self):
        span, bottom, top = self.area()
        projection, poles = self.hardware.get("projection_mm"), self.poles()
        if projection is None or self.inside:
            return
        radius = (self.d or 0.0) / 2.0
        pole_hit = curtain_hit = False
        for o in self.window.get("obstructions", []) if span is not None else []:
            if any(o.get(key) is None for key in ("left_mm", "width_mm", "bottom_mm", "height_mm", "depth_mm")):
                continue
            finial = self.hardware.get("finial_mm", 0)
            across = more(o["left_mm"] + o["width_mm"], span[0]) and more(span[1], o["left_mm"])
            ends = more(o["left_mm"] + o["width_mm"], span[0] - finial) and more(span[1] + finial, o["left_mm"])
            low, high = o["bottom_mm"], o["bottom_mm"] + o["height_mm"]
            if ends and poles:
                pole_hit |= (more(high, min(poles) - radius) and more(max(poles) + radius, low)
                             and more(o["depth_mm"], projection - radius))
            if across and bottom is not None and top is not None:
                curtain_hit |= more(high, bottom) and more(top, low) and more(o["depth_mm"], projection)
        if "sill.projection" in self.readings and not self.in_recess:
            sills = [s.mm for s in (self.opening.height(line, "floor", "sill") for line in LINES) if s]
            reaches = (self.treatment.get("length", "floor") not in ("sill", "given") or
                       bottom is not None and sills and not more(bottom, min(sills)))
            curtain_hit |= bool(reaches) and more(self.readings.value("sill.projection") + 10.0, projection)
        if pole_hit:
            self.flag("hardware-fouls", "decide")
        if curtain_hit:
            self.flag("curtain-fouls", "decide")

    def _heat(self):
        # What can't be said of where it hangs counts as being there: an edge not known lies beyond everything.
        span, bottom, top = self.area()
        span = span or (-math.inf, math.inf)
        bottom = -math.inf if bottom is None else bottom
        top = math.inf if top is None else top
        hot = False
        for o in self.window.get("obstructions", []):
            if o.get("kind") not in HEAT:
                continue
            beside = max(span[0] - o["left_mm"] - o["width_mm"], o["left_mm"] - span[1], 0.0)
            over = max(bottom - o["bottom_mm"] - o["height_mm"], o["bottom_mm"] - top, 0.0)
            if o["kind"] == "radiator":
                hot |= (more(o["left_mm"] + o["width_mm"], span[0]) and more(span[1], o["left_mm"])
                        and more(o["bottom_mm"] + o["height_mm"], bottom) and more(top, o["bottom_mm"]))
            else:
                hot |= more(self.house["heat_clear_mm"], math.hypot(beside, over))
        noted = sum(o.get("kind") in HEAT for w in self.room["windows"] for o in w.get("obstructions", []))
        if hot or len(self.room.get("heat", [])) > noted:
            self.flag("curtain-over-heat", "caution")

    def _stack(self):
        widths = self.opening.widths()
        if self.length_mm is None or self.w is None or not widths:
            return
        opening = (min if self.in_recess else max)(s.mm for s in widths)
        stack = HEADINGS[self.heading][4] * self.w
        if at_least(max(0.0, stack - (self.length_mm - opening) / 2.0), 10.0):
            self.flag("stack-covers-glass", "note")

    def _on_what(self):
        """heading-hardware and tab-centre-bracket."""
        if self.roman or not self.hardware:
            return
        rod = self.kind in ("pole", "wire")
        wrong = (self.heading in THREADED and not rod) or (self.heading == "s-fold" and self.kind != "track") \
            or self.kind == "headrail"
        if self.heading == "eyelet" and rod and self.d is not None:
            wrong |= more(10.0, self.house["eyelet_inner_mm"] - self.d)
        if wrong:
            self.flag("heading-hardware", "decide")
        if self.heading in THREADED and rod and self._spans_bracket():
            self.flag("tab-centre-bracket", "decide")

    def _spans_bracket(self):
        at = sorted(self.hardware.get("bracket_at_mm", []))
        count = max(self.hardware.get("brackets", 0), len(at))
        if not self.pair:
            return count >= 3
        if at and self.length_mm:
            middle, slack = self.length_mm / 2.0, max(1.0, self.hardware.get("overlap_mm", 0) / 2.0)
            return any(abs(place - middle) > slack for place in at[1:-1])
        return count >= 4
