# SPDX-License-Identifier: Apache-2.0
"""Layers held against each other, and a pole that is up held against its plan: house practice, worked a second time.

Half of what folded cloth takes, front to back: 40 mm, 50 for eyelets and pinch pleats, 60 for goblets and s-folds; of a
Roman blind drawn up 12.5 for its batten and 3 for each rod; never less than half the pole. A drop that moved by more
than 3 mm is said. A hem wants 40 mm of cloth, or all that the house gives it where that is less.
"""

import cutting
from rounding import more, nearest, up
from rules import LINES

HALF = {"eyelet": 50.0, "pinch-pleat": 50.0, "goblet": 60.0, "s-fold": 60.0}


class Standing:
    """How far off the wall a layer reaches, between which ends, and how high its hem hangs."""

    def __init__(self, layer):
        self.inside = layer.inside
        half = HALF.get(layer.heading, 40.0)
        if layer.roman:
            half = 12.5 + 3.0 * (layer.figures["blind"]["rods"] if layer.figures["blind"] else 0)
        self.near = self.far = None
        projection = layer.hardware.get("projection_mm")
        if self.inside:
            recess = layer.readings.by.get("opening.depth")
            self.far = 2.0 * half - recess["value_mm"] if recess else 0.0
        elif projection is not None:
            reach = max(half, 0.0 if layer.roman else (layer.d or 0.0) / 2.0)
            self.near, self.far = projection - reach, projection + reach
        self.ends = self._ends(layer)
        self.hem = None if layer.stopped() else self._hem(layer)

    @staticmethod
    def _ends(layer):
        own = layer.length_mm if not layer.inside else None
        long = own if own is not None else layer.w
        widths = [s.mm for s in layer.opening.widths()]
        if long is None:
            return None
        if own is not None and "left_mm" in layer.hardware:
            return layer.hardware["left_mm"], layer.hardware["left_mm"] + long
        return ((max(widths) - long) / 2.0, (max(widths) + long) / 2.0) if widths else None

    @staticmethod
    def _hem(layer):
        if layer.inside:
            return None
        for line in (layer.drop_line,) + LINES:
            pole = layer.opening.height(line, "floor", "pole")
            if pole is not None:
                return pole.mm + layer.above_pole() - layer.drop
        base, bottom = layer.bottom()
        if base == "floor":
            return bottom
        return next((s.mm + bottom for s in (layer.opening.height(line, "floor", "sill") for line in LINES) if s), None)


def layer_flags(layers):
    """[(index of the layer it concerns, code, severity)], layers from glass to room."""
    flags = []
    stands = [Standing(layer) for layer in layers]
    for i, inner in enumerate(stands):
        if inner.inside and inner.far is not None and more(inner.far, 0.0):
            flags.append((i, "layers-foul", "decide"))
        if i + 1 == len(stands):
            break
        outer = stands[i + 1]
        if inner.far is None or outer.near is None:
            flags.append((i + 1, "layers-not-checked", "note"))
        elif more(inner.far, outer.near):
            flags.append((i + 1, "layers-foul", "decide"))
        if inner.ends and outer.ends and (more(outer.ends[0], inner.ends[0]) or more(inner.ends[1], outer.ends[1])):
            flags.append((i + 1, "layers-foul", "decide"))
        if not inner.inside and inner.hem is not None and outer.hem is not None and more(outer.hem - inner.hem, 5.0):
            flags.append((i + 1, "layers-foul", "note"))
    return flags


def is_up(window):
    return any(r.get("stage") == "fixed" and r["station"].startswith("pole.") for r in window["readings"])


def as_planned(window):
    return dict(window, readings=[r for r in window["readings"] if r.get("stage") != "fixed"])


def planned(now, before):
    """`finished.planned` and whether the pole moved; None where the plan couldn't be made."""
    if before.stopped():
        return None, False
    longer = now.drop - before.drop
    out = {"width_mm": nearest(before.w), "drop_mm": nearest(before.drop), "longer_mm": longer, "cut_drop_mm": None,
           "hem_left_mm": None, "short_by_mm": None}
    fabric, cloth = now.fabric("fabric"), before.figures["cloth"]
    if fabric and cloth and cloth["cut_drop_mm"] is not None:
        house = now.house
        hem = house["blind_hem_mm"] if now.roman else house["hem_mm"]
        head = house["blind_head_mm"] if now.roman else now.head()
        out["cut_drop_mm"] = cloth["cut_drop_mm"]
        out["hem_left_mm"] = hem - longer
        if more(min(40.0, hem), hem - longer):
            skew = fabric.get("skew_mm") or 0.0  # of each width, no use for its length
            least = (before.drop + head + hem) / cutting.kept(fabric) + skew
            exact = cutting.plan(least, fabric, cloth["widths"])[0] - skew
            out["short_by_mm"] = max(0, up((now.drop + head + hem) / cutting.kept(fabric) - exact))
    return out, more(abs(longer), 3.0)
