# SPDX-License-Identifier: Apache-2.0
"""Random surveys of old houses, the same for the same seed: crooked rooms read with a tape, 1 to 3 mm of noise.

`survey(seed)` is one survey document. All people, cloths and places are invented.
"""

import json
import math
import random
import sys

RULES = {
    "edge_u_mm": (1.0, 2.0, 3.0, 4.0), "floor_clearance_mm": (0, 5, 12, 15, 20), "sill_clearance_mm": (5, 13, 15),
    "apron_mm": (100, 120, 200), "break_mm": (20, 50), "puddle_mm": (150, 300), "side_turn_mm": (30, 50, 60),
    "seam_mm": (10, 12, 20), "hem_mm": (100, 120, 160, 200), "fullness_slack": (0.0, 0.05, 0.15),
    "lining_hem_mm": (60, 100), "lining_rise_mm": (20, 25, 40), "lining_inset_mm": (15, 25), "lining_side_mm": (8, 15),
    "lining_seam_mm": (12, 15), "lining_head_mm": (20, 30), "tab_hang_mm": (60, 75, 80, 85.5), "tab_width_mm": (40, 60),
    "tab_gap_mm": (180, 200, 220), "tab_seam_mm": (8, 12), "eyelet_top_mm": (40, 50), "eyelet_inner_mm": (44, 50, 66),
    "eyelet_gap_mm": (150, 160, 200), "ring_drop_mm": (15, 25, 30), "hook_mm": (10, 15, 30), "slot_ease_mm": (20, 40),
    "slot_stand_mm": (0, 15, 40), "order_step_m": (0.05, 0.25, 0.5, 1.0), "blind_ease_mm": (6, 8, 12),
    "blind_over_mm": (40, 75, 100), "blind_side_mm": (40, 50), "blind_hem_mm": (60, 100), "blind_head_mm": (15, 30),
    "blind_headrail_mm": (40, 50, 75), "blind_fold_mm": (120, 150, 200), "blind_pocket_mm": (40, 50),
    "pelmet_share": (0.2, 0.18), "pelmet_over_mm": (40, 80), "facing_mm": (70, 100), "placing_repeats": (1, 2),
    "heat_clear_mm": (600, 1200), "weight_every": (1.0, 0.25),
}
MAKING_RULES = {
    "pleats_per_width": (3, 4, 4.5, 6), "pleat_mm": (120, 130, 177.8), "hook_gap_mm": (60, 75, 77.5, 100),
    "tape_turn_mm": (20, 50), "separate_fullness": (1.25, 2.0), "separate_head_mm": (5, 20, 40),
    "separate_hem_mm": (50, 100), "separate_side_mm": (15, 30), "tie_back_share": (0.6, 0.75),
    "tie_back_ease_mm": (60, 150), "tie_back_width_mm": (80, 120), "tie_back_turn_mm": (10, 20), "rod_short_mm": (10, 30),
    "cord_gap_mm": (300, 400), "haberdashery_step_m": (0.25, 0.5, 1.0),
}
HEADINGS = ("tab", "eyelet", "slot", "pencil-pleat", "pinch-pleat", "goblet", "box-pleat", "s-fold", "roman")
LINES = ("left", "centre", "right")
HEAT = ("radiator", "heater", "fire")


class Maker:
    def __init__(self, seed):
        self.seed = seed
        self.random = random.Random(seed)
        self.making = random.Random(f"making {seed}")  # of its own, so that the rest of a seed's house stays as it was
        self.cloth_random = random.Random(f"cloth {seed}")  # of its own, so that what is drawn here moves nothing else
        self.later = random.Random(f"{seed} later")  # what was added later: the house stays the same for the same seed
        self.count = 0
        self.minute = 0

    def chance(self, share):
        return self.random.random() < share

    def pick(self, *choices):
        return self.random.choice(choices)

    def whole(self, low, high):
        return self.random.randint(low, high)

    def identity(self, word):
        self.count += 1
        return f"{word}-{self.count}"

    # The whole -------------------------------------------------------------------------------------------------------
    def survey(self):
        self.unit = self.random.choices(("mm", "cm", "in"), (8, 1, 2))[0]
        self.noise = self.pick(0.5, 0.8, 1.0, 1.3)
        survey = {"format": "truehang.survey/1", "id": f"random-{self.seed}", "revision": self.whole(1, 5),
                  "title": f"Random house {self.seed}", "measured_by": "J. Tamm",
                  "measured_at": "2026-03-14T10:20:00+00:00", "time_zone": "Europe/London", "entry_unit": self.unit,
                  "rules": self.rules(), "fabrics": self.fabrics(), "rooms": []}
        if self.chance(0.8):
            survey["tape"] = {"class": self.pick("I", "II", "III"), "length_mm": 5000,
                              "graduation_mm": self.pick(1, 1, 1, 0.5, 2), "case_mm": 80}
            if self.chance(0.1):
                del survey["tape"]["class"]
        self.cloths = survey["fabrics"]
        for _ in range(self.whole(1, 3)):
            survey["rooms"].append(self.room())
        return survey

    def rules(self):
        rules = {"name": "house rules of a random house"}
        for key in self.random.sample(sorted(RULES), self.pick(0, 0, 3, 8, 20)):
            rules[key] = self.random.choice(RULES[key])
        if self.chance(0.2):
            rules["head_mm"] = {"eyelet": 90, "pencil-pleat": 80, "goblet": 160}
        for key in sorted(MAKING_RULES):
            if self.making.random() < 0.08:
                rules[key] = self.making.choice(MAKING_RULES[key])
        return rules

    def fabrics(self):
        out = []
        for i in range(self.whole(2, 4)):
            cloth = {"id": f"face-{i}", "role": self.pick("face", "face", "sheer"), "name": f"Cloth {i}",
                     "width_mm": self.pick(1200, 1370, 1400, 1400, 1500, 2800, 3000), "match": "none"}
            kind = self.pick("plain", "straight", "half-drop", "half-drop")
            if kind != "plain":
                cloth["match"] = kind
                cloth["repeat_mm"] = self.pick(80, 160, 320, 640, 457.2, 317.5, 213.3, 91)
            elif self.chance(0.3):
                cloth["repeat_mm"] = 240  # named, but with nothing to match
            self.common(cloth)
            if self.chance(0.25):
                cloth["railroad"] = True
                if self.chance(0.3):
                    cloth["one_way"] = True
            self.woven(cloth)
            out.append(cloth)
        for role, width in (("lining", self.pick(1220, 1370, 1370, 1500)), ("interlining", self.pick(1220, 1400))):
            cloth = {"id": role, "role": role, "name": role, "width_mm": width, "match": "none"}
            self.common(cloth)
            out.append(cloth)
        return out

    def woven(self, cloth):
        """A repeat across, and a print that runs off square."""
        draw = self.cloth_random
        if draw.random() < 0.35:
            cloth["repeat_across_mm"] = draw.choice((64, 160, 228.6, 320, 457.2, 640, 680, 700, 1500))
        if draw.random() < 0.25:
            cloth["skew_mm"] = draw.choice((4, 12.5, 20, 35))
        if draw.random() < 0.2:
            cloth["one_way"] = True
        if "repeat_mm" in cloth and draw.random() < 0.02:
            cloth["repeat_mm"] = 64000  # keyed in as if in cm

    def ask_in_vain(self, treatment):
        """Now and then what can't be made: curtains narrower than their pole, a pelmet that hides them."""
        draw = self.cloth_random
        if "fullness" in treatment and draw.random() < 0.02:
            treatment["fullness"] = draw.choice((0.4, 0.8, 0.99))
        if "depth_mm" in treatment.get("pelmet", {}) and draw.random() < 0.2:
            treatment["pelmet"]["depth_mm"] = draw.choice((0, 4000))

    def common(self, cloth):
        if self.chance(0.8):
            cloth["selvedge_mm"] = self.pick(0, 5, 10, 12.5, 20)
        if self.chance(0.85):
            cloth["shrinkage_pct"] = self.pick(0, 1.5, 2.0, 3.0, 5.0)
        if self.chance(0.9):
            cloth["mass_gsm"] = self.whole(60, 600)

    def room(self):
        room = {"id": self.identity("room"), "name": "Room", "wall": "plaster on stone", "windows": []}
        self.slope = self.pick(0, 0, 0.004, -0.006, 0.012)  # the floor, along the wall
        for _ in range(self.whole(1, 3)):
            room["windows"].append(self.window())
        if self.making.random() < 0.4:
            room["young_children"] = self.making.random() < 0.5
        if self.making.random() < 0.1:
            room["wall"] = ""
        hot = sum(o["kind"] in HEAT for w in room["windows"] for o in w.get("obstructions", []))
        if hot or self.chance(0.1):
            room["heat"] = ["heat"] * max(1, hot)
        return room

    # One window ------------------------------------------------------------------------------------------------------
    def window(self):
        self.shape = self.random.choices(("recess", "frame", "door", "porthole"), (60, 25, 15, 1))[0]
        self.width = self.whole(500, 2600)
        self.rows = []
        self.below = self.chance(0.08)  # a pole inside the recess
        window = {"id": self.identity("window"), "name": "Window", "shape": self.shape, "readings": self.rows}
        self.geometry()
        self.lines = self.random.choices((("left",), ("left", "right"), LINES, ("centre",), ("right",), ("left", "centre")),
                                         (15, 25, 45, 6, 3, 6))[0]
        hang = self.random.choices(("level", "head", "ceiling"), (60, 25, 15))[0]
        layered = self.chance(0.12)
        layers = [{"id": self.identity("layer")} for _ in range(2 if layered else 1)]
        for i, layer in enumerate(layers):
            inside = layered and i == 0
            layer["treatment"] = self.treatment(inside)
            layer["hardware"] = self.hardware(layer["treatment"], hang)
        if layered:
            window["layers"] = layers
        else:
            window["hardware"], window["treatment"] = layers[0]["hardware"], layers[0]["treatment"]
            if self.chance(0.03):
                del window["treatment"]
            elif self.making.random() < 0.006:  # a newer program's word
                window["treatment"][self.making.choice(("operation", "lining_hung", "weights"))] = "unheard-of"
        self.pole_at(hang)
        self.read_all(hang)
        self.obstructions(window)
        self.spoil(window)
        self.choose_more(window, hang)
        return window

    def choose_more(self, window, hang):
        """Hems that follow the floor, poles that are up, a layer between two others."""
        layers = window.get("layers", [window])
        for layer in layers:
            if layer.get("treatment") and self.later.random() < 0.12:
                layer["treatment"]["drops"] = self.later.choice(("per-line", "per-line", "per-line", "one"))
        if "layers" in window and self.later.random() < 0.5:
            window["layers"].insert(1, {
                "id": self.identity("layer"),
                "hardware": {"kind": "track", "hang": hang, "projection_mm": self.later.randint(30, 120),
                             "length_mm": self.width + self.later.randint(0, 700)},
                "treatment": {"heading": self.later.choice(("s-fold", "pencil-pleat")), "fabric": "face-0",
                              "length": self.later.choice(("floor", "sill", "below-sill") if self.shape != "door"
                                                          else ("floor",))}})
        if self.later.random() < 0.12:
            self.put_up(window, layers)

    def put_up(self, window, layers):
        """The pole is up, mostly a little off what was planned, and mostly measured again."""
        for layer in layers:
            if layer.get("hardware") and self.later.random() < 0.5:
                layer["hardware"]["stage"] = "fixed"
        taken = [r for r in self.rows if r["station"].startswith("pole.")]
        if not taken or self.later.random() < 0.15:
            return
        moved = self.later.choice((0, 1, 3, 4, -12, -40, 25, 60, 110, 130))
        for row in taken if self.later.random() < 0.5 else taken[:1]:
            below = row["station"].split(".")[1] in ("below", "ceiling")
            again = {key: row[key] for key in ("station", "value_mm")}
            again.update(id=row["id"] + "f", stage="fixed", taken_at="2026-04-20T10:00:00+00:00",
                         value_mm=max(0, row["value_mm"] + (-moved if below else moved)))
            self.rows.append(again)

    def geometry(self):
        """True heights above a level datum along each plumb line, and the corners across."""
        centre = self.width / 2.0
        lean = self.pick(0, 0, 1, 3, 8)
        sill = 0 if self.shape == "door" else self.whole(300, 1100)
        head = sill + (self.whole(1900, 2150) if self.shape == "door" else self.whole(700, 1600))
        ceiling = head + self.whole(60, 450)
        tilt = [self.random.gauss(0, 0.002) for _ in range(3)]
        self.truth = {}
        for line, x in zip(LINES, (0.0, centre, float(self.width))):
            floor = self.slope * x
            self.truth[line] = {"floor": floor, "sill": floor if self.shape == "door" else sill + tilt[0] * x,
                                "head": head + tilt[1] * x, "ceiling": ceiling + tilt[2] * x, "level": 1000.0}
        left, right = self.truth["left"], self.truth["right"]
        self.corners = {"bl": (0.0, left["sill"]), "br": (float(self.width), right["sill"]),
                        "tl": (self.random.gauss(0, lean), left["head"]),
                        "tr": (self.width + self.random.gauss(0, lean), right["head"])}

    def pole_at(self, hang):
        away = -self.whole(20, 60) if self.below else self.whole(15, 160)
        base = max(self.truth[line]["head"] for line in LINES)
        drop = self.whole(20, 140)
        for line in LINES:
            t = self.truth[line]
            t["pole"] = {"level": base + away, "head": t["head"] + away, "ceiling": t["ceiling"] - drop}[hang]

    def between(self, a, b):
        return math.dist(self.corners[a], self.corners[b])

    def read(self, station, true):
        value = max(0.0, true + self.random.gauss(0, self.noise))
        if self.unit == "in":
            eighths = round(value / 25.4 * 8)
            whole, part = divmod(eighths, 8)
            value = round(eighths * 25.4 / 8, 4)
            typed = f"{whole}" if part == 0 else f"{whole} {part}/8 in"
        elif self.unit == "cm":
            value = round(value)
            typed = f"{value / 10:.1f}"
        else:
            value = round(value)
            typed = str(value)
        self.minute += 1
        row = {"id": f"m{self.minute}", "station": station, "value_mm": value, "typed": typed,
               "taken_at": f"2026-03-14T{10 + self.minute // 3600:02d}:{self.minute // 60 % 60:02d}:{self.minute % 60:02d}+00:00"}
        if self.chance(0.15):
            del row["typed"]
        self.rows.append(row)

    def read_all(self, hang):
        c = self.corners
        wide = [("top", self.between("tl", "tr")), ("middle", (self.between("tl", "tr") + self.between("bl", "br")) / 2),
                ("bottom", self.between("bl", "br"))]
        for at, true in wide if self.chance(0.8) else self.random.sample(wide, self.whole(0, 2)):
            self.read(f"opening.width.{at}", true)
        full = self.chance(0.35)
        for line in self.lines:
            t = self.truth[line]
            side = {"left": ("bl", "tl"), "right": ("br", "tr")}.get(line)
            height = self.between(*side) if side and self.shape != "door" else t["head"] - t["sill"]
            if self.chance(0.93):
                self.read(f"opening.height.{line}", height)
            if self.shape != "door" and (full or self.chance(0.85)):
                self.read(f"below.{line}", t["sill"] - t["floor"])
            if full or self.chance(0.5):
                self.read(f"above.{line}", t["ceiling"] - t["head"])
            if full or self.chance(0.5):
                self.read(f"ceiling.{line}", t["ceiling"] - t["floor"])
        levels = self.lines if self.chance(0.35) else self.lines[:1] if self.chance(0.2) else ()
        for line in levels:
            self.read(f"level.{line}", self.truth[line]["level"] - self.truth[line]["floor"])
        if self.chance(0.4):
            diagonals = (("rising", self.between("bl", "tr")), ("falling", self.between("tl", "br")))
            for word, true in diagonals if self.chance(0.7) else diagonals[:1] if self.chance(0.5) else diagonals[1:]:
                self.read(f"opening.diagonal.{word}", true)
        if self.shape == "recess" and self.chance(0.5):
            self.read("opening.depth", self.whole(60, 450))
        self.read_pole(hang)
        self.read_wall()
        if self.shape != "door" and self.chance(0.25):
            self.read("sill.projection", self.whole(0, 160))

    def read_pole(self, hang):
        first = self.lines[0]
        ways = {"level": ["above", "above", "floor", "ceiling"], "head": ["above"], "ceiling": ["ceiling"]}[hang]
        ways = ["below" if self.below and way == "above" else way for way in ways]
        chosen = {self.random.choice(ways)}
        if self.chance(0.2):
            chosen.add("floor")
        for way in sorted(chosen):
            suffixed = self.chance(0.3)
            for line in self.lines if suffixed and self.chance(0.6) else (first,):
                t = self.truth[line]
                true = {"above": t["pole"] - t["head"], "below": t["head"] - t["pole"], "floor": t["pole"] - t["floor"],
                        "ceiling": t["ceiling"] - t["pole"]}[way]
                self.read(f"pole.{way}" + (f".{line}" if suffixed else ""), true)

    def read_wall(self):
        left, right = self.whole(80, 900), self.whole(80, 900)
        share = self.random.random()
        if share < 0.7:
            self.read("wall.left", left)
        if share < 0.6:
            self.read("wall.right", right)
        if share < 0.3 or share > 0.95:
            self.read("wall.total", left + right + self.between("tl", "tr"))

    # What hangs there ------------------------------------------------------------------------------------------------
    def treatment(self, inside):
        heading = "roman" if inside else self.random.choice(HEADINGS)
        faces = [c["id"] for c in self.cloths if c["id"].startswith("face")]
        out = {"heading": heading, "fabric": self.random.choice(faces), "lining": self.pick("lining", "lining", None),
               "interlining": None}
        base = "floor" if self.shape == "door" and not self.chance(0.05) else \
            self.random.choices(("floor", "sill", "below-sill", "break", "puddle", "given"), (45, 15, 15, 8, 7, 10))[0]
        if heading == "roman":
            out["fit"] = "inside" if inside or self.chance(0.5) else "outside"
            out["length"] = base if self.shape == "door" else self.pick("sill", "below-sill")
        else:
            out["layout"] = self.random.choices(("pair", "single", "left", "right"), (70, 10, 10, 10))[0]
            out["length"] = base
            out["interlining"] = self.pick("interlining", None, None)
            if self.chance(0.8):
                out["fullness"] = self.pick(1.4, 1.5, 1.75, 1.8, 2.0, 2.0, 2.2, 2.5, 2.75)
            if self.chance(0.12):
                out["pelmet"] = {"return_mm": self.pick(0, 80, 120)}
                if self.chance(0.4):
                    out["pelmet"]["depth_mm"] = self.whole(180, 420)
        if out["length"] == "given":
            out["bottom_mm"] = self.whole(10, 400)
        if heading == "tab" and self.chance(0.3):
            out["tab_cut_mm"] = self.pick(180, 200, 220, 250)
        self.make_up(out)
        self.ask_in_vain(out)
        return out

    def make_up(self, out):
        """Second and separate linings, tie-backs, what moves it, lead: each seldom."""
        draw = self.making
        if draw.random() < 0.15:
            out["second_lining"] = draw.choice(("lining", "interlining", None))
        if draw.random() < 0.15:
            out["lining_hung"] = draw.choice(("separate", "separate", "sewn-in"))
        if draw.random() < 0.15:
            tie_back = out["tie_back"] = {}
            if draw.random() < 0.7:
                tie_back["kind"] = draw.choice(("tie-back", "tie-back", "holdback"))
            if draw.random() < 0.4:
                tie_back["height_mm"] = draw.randint(600, 1200)
            if draw.random() < 0.3:
                tie_back["length_mm"] = draw.choice((480, 560.5, 700, 1600))
        if draw.random() < (0.5 if out["heading"] == "roman" else 0.06):
            out["operation"] = draw.choice(("cord", "chain", "wand", "cordless", "motor"))
        if draw.random() < 0.06:
            out["weights"] = draw.choice(("steel", "chain", "lead"))

    def hardware(self, treatment, hang):
        heading = treatment["heading"]
        out = {"kind": "pole", "supply": self.random.choices(("to-supply", "existing", "others"), (60, 30, 10))[0],
               "hang": hang, "projection_mm": self.whole(60, 160), "return_mm": self.pick(0, 0, 60, 100),
               "overlap_mm": self.pick(0, 0, 80, 100)}
        if hang == "level" and self.chance(0.4):
            del out["hang"]
        if heading == "roman":
            out.update(kind="headrail", return_mm=0, overlap_mm=0)
            if treatment["fit"] == "outside" and self.chance(0.4):
                out["length_mm"] = self.width + self.whole(60, 300)
            return out
        track = heading == "s-fold" or self.chance(0.3 if heading not in ("tab", "eyelet", "slot") else 0.05)
        if heading == "s-fold" and self.chance(0.1):
            track = False
        out["length_mm"] = self.width - self.whole(5, 25) if self.below else self.width + self.whole(0, 900)
        out["brackets"] = self.pick(2, 2, 3, 4)
        if track:
            out["kind"] = "track"
        else:
            out["diameter_mm"] = self.pick(19, 25, 28, 30, 35, 45)
            out["finial_mm"] = 0 if self.below else self.pick(0, 40, 60, 120)
        if self.chance(0.25):
            out["left_mm"] = -self.whole(0, 300)
        if self.chance(0.2):
            length, inner = out["length_mm"], out["brackets"] - 2
            out["bracket_at_mm"] = [60] + [round(60 + (length - 120) * (i + 1) / (inner + 1), 1) for i in range(inner)] \
                + [length - 60]
        if self.chance(0.4):
            out["mass_kg"] = round(self.random.uniform(0.8, 6.0), 2)
        for key in ("rated_kg", "bracket_rated_kg", "fixing_rated_kg"):
            if self.making.random() < 0.15:
                out[key] = round(self.making.uniform(2.0, 25.0), 1)
        return out

    def obstructions(self, window):
        out = []
        for _ in range(self.random.choices((0, 1, 2), (45, 40, 15))[0]):
            kind = self.random.choices(("radiator", "heater", "fire", "beam", "socket", "furniture", "pipe", "picture-rail"),
                                       (35, 5, 5, 10, 15, 15, 10, 5))[0]
            low, high, deep = {"radiator": (100, 200, (60, 180)), "heater": (0, 50, (80, 300)), "fire": (0, 1, (0, 500)),
                               "beam": (1900, 2400, (80, 250)), "socket": (300, 450, (10, 12)),
                               "furniture": (0, 1, (300, 600)), "pipe": (0, 100, (15, 60)),
                               "picture-rail": (1900, 2300, (15, 40))}[kind]
            out.append({"id": self.identity("thing"), "kind": kind, "left_mm": self.whole(-1200, self.width),
                        "width_mm": self.whole(80, 1400), "bottom_mm": self.whole(low, high),
                        "height_mm": self.whole(60, 700), "depth_mm": self.whole(*deep)})
        if out:
            window["obstructions"] = out

    def spoil(self, window):
        """What goes wrong in a house: slips, readings taken again, accepted offers, estimates, copies."""
        rows = window["readings"]
        if rows and self.chance(0.12):  # a slip
            row = self.random.choice(rows)
            row["value_mm"] = max(0, row["value_mm"] + self.pick(-100, 100, 90, -30, 45, 300))
            row.pop("typed", None)
        if rows and self.chance(0.12):  # taken again
            row = self.random.choice(rows)
            again = dict(row, id=row["id"] + "b", replaces=row["id"], value_mm=row["value_mm"] + self.pick(0, 1, 2))
            again.pop("typed", None)
            rows.append(again)
        if rows and self.chance(0.04):  # twice, with neither replaced
            row = self.random.choice(rows)
            if row["id"] not in [r.get("replaces") for r in rows] and "replaces" not in row:
                later = dict(row, id=row["id"] + "c", value_mm=row["value_mm"] + 2, taken_at="2026-03-14T18:00:00+00:00")
                later.pop("typed", None)
                rows.append(later)
        for how, share in (("proposed", 0.06), ("copied", 0.05), ("estimated", 0.06)):
            if rows and self.chance(share):
                row = self.random.choice(rows)
                if row["id"] not in [r.get("replaces") for r in rows]:
                    row["how"] = how
                    if how == "estimated":
                        row["u_mm"] = self.pick(5, 10, 20)
        if rows and self.chance(0.03):
            self.random.choice(rows)["typed"] = "7"
        if rows and self.chance(0.02):
            rows.append({"id": self.identity("odd"), "station": "opening.girth", "value_mm": 1200})


def survey(seed):
    return Maker(seed).survey()


if __name__ == "__main__":
    json.dump(survey(int(sys.argv[1])), sys.stdout, indent=1)
    print()
