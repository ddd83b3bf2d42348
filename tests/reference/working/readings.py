# SPDX-License-Identifier: Apache-2.0
"""Section 3 of the trade rules and the contract's "A reading", "Stations": from readings to sizes of one window."""

import math
import re
from datetime import datetime

from adjusting import SIDES, Levelling, Size, adjust_opening, chi_square_quantile
from rounding import at_least, more, up
from rules import LINES, stations

UNITS = {"mm": 1.0, "cm": 10.0, "m": 1000.0, "in": 25.4, '"': 25.4, "ft": 304.8, "'": 304.8}
TAPES = {"I": (0.1, 0.1), "II": (0.3, 0.2), "III": (0.6, 0.4)}  # OIML R 35-1


def typed_mm(text, unit):
    """What was keyed in, in mm; None where it can't be read. A number alone is in the survey's entry unit."""
    parts = re.findall(r"(?:(\d+)\s+)?(\d+)/(\d+)|(\d+(?:[.,]\d+)?)", text)
    suffix = re.search(r"(mm|cm|m|in|ft|\"|')\s*$", text.strip())
    rest = re.sub(r"(?:\d+\s+)?\d+/\d+|\d+(?:[.,]\d+)?|mm|cm|m|in|ft|\"|'|\s", "", text)
    if len(parts) != 1 or rest:
        return None
    whole, above, below, plain = parts[0]
    number = float(plain.replace(",", ".")) if plain else int(whole or 0) + int(above) / int(below)
    return number * UNITS[suffix.group(1) if suffix else unit]


class Readings:
    """The readings of a window that count, and what is to be said about them."""

    def __init__(self, window, tape, edge_u, entry_unit):
        self.flags = []  # (code, severity)
        self.tape, self.edge_u = tape, edge_u
        self.shape = window["shape"]
        known = stations(self.shape)
        replaced = {r["replaces"] for r in window["readings"] if r.get("replaces")}
        by_station = {}
        for r in window["readings"]:
            if r["station"] not in known or r.get("how", "measured") not in ("measured", "proposed", "estimated", "copied"):
                self.flags.append(("not-understood", "stop"))
            elif r.get("id") not in replaced or r.get("id") is None:
                by_station.setdefault(r["station"], []).append(r)
        self.by = {}
        for station, rows in by_station.items():
            self.by[station] = self._counting(rows)
        if any(r.get("stage") == "fixed" for s, r in self.by.items() if s.startswith("pole.")):
            # A pole that is up is where it is: what was planned for it no longer counts.
            self.by = {s: r for s, r in self.by.items() if not s.startswith("pole.") or r.get("stage") == "fixed"}
        for r in self.by.values():
            read = typed_mm(r["typed"], entry_unit) if r.get("typed") else None
            if read is not None and abs(read - r["value_mm"]) > 0.05:
                self.flags.append(("typed-differs", "remeasure"))

    def _counting(self, rows):
        fixed = [r for r in rows if r.get("stage") == "fixed"]
        rows = fixed or rows
        if len(rows) > 1 and any(r.get("id") for r in rows):
            self.flags.append(("two-readings", "decide"))
        return max(enumerate(rows), key=lambda pair: (self._when(pair[1]), pair[0]))[1]

    @staticmethod
    def _when(reading):
        text = reading.get("taken_at")
        return datetime.fromisoformat(text.replace("Z", "+00:00")).timestamp() if text else -math.inf

    def __contains__(self, station):
        return station in self.by

    def value(self, station):
        return self.by[station]["value_mm"]

    def how(self, station):
        return self.by[station].get("how", "measured")

    def u(self, station):
        r = self.by[station]
        if r.get("how") == "estimated" and r.get("u_mm"):
            return float(r["u_mm"])
        return self.u_of(r["value_mm"])

    def u_of(self, length):
        """Standard uncertainty of one reading (section 3)."""
        a, b = TAPES[self.tape.get("class", "II")]
        mpe = a + b * up(length / 1000.0)
        graduation = self.tape.get("graduation_mm", 1)
        return math.sqrt(mpe ** 2 / 3.0 + graduation ** 2 / 12.0 + self.edge_u ** 2)

    def single(self, station):
        return Size(self.value(station), self.u(station), [(station, self.how(station))])


class Opening:
    """All sizes of one window: heights from the plumb networks, widths from the opening's, the wall's, or as read."""

    def __init__(self, readings, hang):
        self.readings, self.hang = readings, hang
        self.flags = []
        self.checks = []
        self._plumb()
        self._wall()
        self._opening()
        self._spreads()
        self._square()

    # Plumb lines -------------------------------------------------------------------------------------------------
    def _observe(self, lower, upper, station):
        r = self.readings
        return dict(lower=lower, upper=upper, value=r.value(station), u=r.u(station), station=station,
                    how=r.how(station))

    def _plumb(self):
        r = self.readings
        self.tied = sum(f"level.{line}" in r for line in LINES) >= 2
        own = [line for line in LINES if any(f"{s}.{line}" in r for s in ("opening.height", "below", "above", "ceiling"))]
        self.first_line = own[0] if own else "left"
        observations = []
        for line in LINES:
            floor, sill, head, ceiling = (f"{m}.{line}" for m in ("floor", "sill", "head", "ceiling"))
            if self.readings.shape == "door":
                sill = floor  # a door's height starts at the floor
            for station, lower, upper in ((f"opening.height.{line}", sill, head), (f"below.{line}", floor, sill),
                                          (f"above.{line}", head, ceiling), (f"ceiling.{line}", floor, ceiling),
                                          (f"level.{line}", floor, self.mark("level", line))):
                if station in r:
                    observations.append(self._observe(lower, upper, station))
            observations += self._pole(line, floor, head, ceiling)
        self.plumb = Levelling(observations)
        for part in self.plumb.parts:
            shared = {"level", "pole"} & set(part["marks"])
            name = "plumb" if shared else "plumb." + part["marks"][0].split(".")[1]
            part["name"] = name
            self._check(name, part["redundancy"], part["chi2"])

    def mark(self, word, line):
        """The level line is one mark where two lines carry it; then a pole that hangs level is one mark, too."""
        if self.tied and (word == "level" or (word == "pole" and self.hang == "level")):
            return word
        return f"{word}.{line}"

    def _pole(self, line, floor, head, ceiling):
        pole, out = self.mark("pole", line), []
        everywhere = {"head": ("pole.above", "pole.below"), "ceiling": ("pole.ceiling",)}.get(self.hang, ())
        for station, lower, upper in (("pole.above", head, pole), ("pole.below", pole, head),
                                      ("pole.floor", floor, pole), ("pole.ceiling", pole, ceiling)):
            if f"{station}.{line}" in self.readings:
                out.append(self._observe(lower, upper, f"{station}.{line}"))
            if station in self.readings and (line == self.first_line or station in everywhere):
                out.append(self._observe(lower, upper, station))
        return out

    def height(self, line, lower, upper):
        if self.readings.shape == "door":
            lower, upper = (("floor" if m == "sill" else m) for m in (lower, upper))
        return self.plumb.difference(self.mark(lower, line), self.mark(upper, line))

    def _check(self, name, redundancy, chi2):
        if redundancy < 1:
            return
        limit = chi_square_quantile(0.999, redundancy)
        self.checks.append({"network": name, "redundancy": redundancy, "chi2": chi2, "limit": limit,
                            "adds_up": chi2 < limit})
        if chi2 >= limit:
            self.flags.append(("does-not-add-up", "remeasure"))

    # The wall ----------------------------------------------------------------------------------------------------
    def _wall(self):
        self.wall_width = next((s for s in ("opening.width.top", "opening.width.middle", "opening.width.bottom")
                                if s in self.readings), None)
        ends = {"wall.left": ("stop.left", "edge.left"), "wall.right": ("edge.right", "stop.right"),
                "wall.total": ("stop.left", "stop.right")}
        if self.wall_width:
            ends[self.wall_width] = ("edge.left", "edge.right")
        self.wall_ends = ends
        self.wall = Levelling([self._observe(*marks, s) for s, marks in ends.items() if s in self.readings])
        for part in self.wall.parts:
            self._check("wall", part["redundancy"], part["chi2"])

    def wall_size(self, station):
        return self.wall.difference(*self.wall_ends[station])

    # The opening -------------------------------------------------------------------------------------------------
    STATION_OF = {"bottom": "opening.width.bottom", "top": "opening.width.top", "left": "opening.height.left",
                  "right": "opening.height.right", "rising": "opening.diagonal.rising",
                  "falling": "opening.diagonal.falling"}

    def _opening(self):
        r = self.readings
        self.four_sides = None
        independent = {side: s in r and r.how(s) not in ("proposed", "copied") for side, s in self.STATION_OF.items()}
        there = [s in r for s in self.STATION_OF.values()]
        if not all(there):
            return
        left_out = [side for side in SIDES if not independent[side]]
        if len(left_out) > 1:
            return
        values = [r.value(self.STATION_OF[side]) if independent[side] else None for side in SIDES]
        us = [r.u(self.STATION_OF[side]) for side in SIDES]
        self.four_sides = adjust_opening(values, us)
        if self.four_sides is None:
            self.flags.append(("does-not-add-up", "remeasure"))
            return
        self._check("opening", self.four_sides["redundancy"], self.four_sides["chi2"])

    def across(self, station):
        """A width or diagonal: the opening's network where there is one, else the wall's, else the reading."""
        r = self.readings
        if self.four_sides:
            for side, s in self.STATION_OF.items():
                if s == station:
                    leans = [(t, r.how(t)) for t in self.STATION_OF.values()
                             if r.how(t) not in ("proposed", "copied")]
                    return Size(self.four_sides["mm"][side], self.four_sides["u"][side], leans)
        if station == self.wall_width:
            return self.wall_size(station)
        return r.single(station) if station in r else None

    def widths(self):
        found = [self.across(f"opening.width.{at}") for at in ("top", "middle", "bottom")
                 if f"opening.width.{at}" in self.readings]
        return found

    # Flags of section 3 ------------------------------------------------------------------------------------------
    def _spreads(self):
        r = self.readings
        for words in ([f"opening.width.{at}" for at in ("top", "middle", "bottom")],
                      [f"opening.height.{line}" for line in LINES]):
            taken = [s for s in words if s in r]
            if len(taken) < 2:
                continue
            values = [r.value(s) for s in taken]
            spread = max(values) - min(values)
            noise = 3.29 * math.sqrt(2.0) * max(r.u(s) for s in taken)
            if more(spread, 10.0):
                self.flags.append(("reading-spread", "decide"))
            elif noise < 10.0 and at_least(spread, noise):
                self.flags.append(("reading-spread", "note"))

    def _square(self):
        r = self.readings
        diagonals = [f"opening.diagonal.{d}" for d in ("rising", "falling") if f"opening.diagonal.{d}" in r]
        sides = {side: r.value(s) for side, s in self.STATION_OF.items() if s in r}
        triangles = {"rising": (("bottom", "right"), ("top", "left")), "falling": (("bottom", "left"), ("top", "right"))}
        for station in diagonals:
            word = station.rsplit(".", 1)[1]
            for a, b in triangles[word]:
                if a in sides and b in sides:
                    three = sorted((sides[a], sides[b], sides[word]))
                    if more(three[2], three[0] + three[1]):
                        self.flags.append(("does-not-add-up", "remeasure"))
        if len(diagonals) == 2:
            if more(abs(r.value(diagonals[0]) - r.value(diagonals[1])), 10.0):
                self.flags.append(("out-of-square", "decide"))
        elif diagonals and all(side in sides for side in ("bottom", "top", "left", "right")):
            word = diagonals[0].rsplit(".", 1)[1]
            for width, height in triangles[word]:
                self._corner(width, height, word)

    def _corner(self, width, height, diagonal):
        """How far the corner between a width and a height leaves the plumb over that height, and its u."""
        w, h, d = (self.readings.value(self.STATION_OF[side]) for side in (width, height, diagonal))
        uw, uh, ud = (self.readings.u(self.STATION_OF[side]) for side in (width, height, diagonal))
        if w <= 0:
            return
        offset = (w * w + h * h - d * d) / (2.0 * w)
        u = math.sqrt((uw * (w * w - h * h + d * d) / (2.0 * w * w)) ** 2 + (uh * h / w) ** 2 + (ud * d / w) ** 2)
        if more(abs(offset), 10.0) and more(abs(offset), 3.29 * u):
            self.flags.append(("out-of-square", "decide"))

    # The list of sizes -------------------------------------------------------------------------------------------
    def sizes(self):
        out = {}
        r = self.readings
        for station in ["opening.width.top", "opening.width.middle", "opening.width.bottom", "opening.diagonal.rising",
                        "opening.diagonal.falling", "opening.depth", "wall.left", "wall.right", "wall.total",
                        "sill.projection"]:
            if station in r:
                out[station] = self.wall_size(station) if station.startswith("wall") else self.across(station)
        for line in LINES:
            for mark in ("sill", "head", "pole", "ceiling", "level"):
                if mark == "sill" and r.shape == "door":
                    continue
                size = self.height(line, "floor", mark)
                if size is not None:
                    out[f"{mark}.{line}"] = size
        return out


