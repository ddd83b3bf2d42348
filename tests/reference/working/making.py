# SPDX-License-Identifier: Apache-2.0
"""What the workroom makes up beside the cloth: pleats and hooks, positions, second and separate linings, tie-backs, what
is bought, what the load rests on. Worked from the rules' words (README.md, "Making"), on the figures of one layer."""

from cutting import kept, least_widths, joins, usable
from rounding import at_least, down, more, nearest, up

STACK = {"tab": 0.28, "eyelet": 0.20, "slot": 0.30, "pencil-pleat": 0.25, "pinch-pleat": 0.22, "goblet": 0.25,
         "box-pleat": 0.30, "s-fold": 0.15}
PLEATED = ("pinch-pleat", "goblet", "box-pleat")
TAPED = ("pencil-pleat", "s-fold")
HOOKLESS = ("tab", "eyelet", "slot")


def spread(first, last, count):
    if count == 1:
        return [first]
    return [first + i * (last - first) / (count - 1) for i in range(count)]


def edges(layer):
    """(leading, trailing): what hangs flat at either edge of one curtain."""
    back, over = layer.hardware.get("return_mm", 0), layer.hardware.get("overlap_mm", 0)
    return (over / 2.0, back) if layer.pair else (back + over, back)


def pleats_of(layer, flat, k):
    house = layer.house
    leading, trailing = edges(layer)
    into = flat - layer.w
    hung = layer.w - leading - trailing
    if not more(into, 0.0) or not more(hung, 0.0):
        return None
    each = nearest(into / house["pleat_mm"]) if house["pleat_mm"] > 0 else down(house["pleats_per_width"] * k)
    each = max(2, each)
    size = into / each
    at = spread(leading + size / 2.0, flat - trailing - size / 2.0, each)
    return {"each": each, "pleat_mm": size, "space_mm": hung / (each - 1), "first_mm": at[0], "last_mm": at[-1],
            "positions_mm": at}


def gaps(width, gap):
    return max(1, up(width / gap))


def hooks_of(layer, pleats):
    if layer.heading in TAPED:
        each = 1 + gaps(layer.w, layer.house["hook_gap_mm"])
        return {"each": each, "in_all": layer.n * each, "spacing_mm": layer.w / (each - 1)}
    if layer.heading in PLEATED and pleats:
        each = pleats["each"] + sum(more(edge, 0.0) for edge in edges(layer))
        return {"each": each, "in_all": layer.n * each, "spacing_mm": pleats["space_mm"]}
    return None


def separate_lining(layer, fabric):
    """Gathered to a fullness of its own and hemmed at its sides."""
    house = layer.house
    leading, trailing = edges(layer)
    flat_part = leading + trailing
    across = (house["separate_fullness"] - house["fullness_slack"]) * (layer.w - flat_part) + flat_part

    def flat(k):
        return k * usable(fabric) - 2.0 * house["lining_seam_mm"] * joins(k) - 2.0 * house["separate_side_mm"]
    step = 0.5 if layer.pair else 1.0
    k = least_widths(step, step, lambda k: at_least(flat(k), across))
    raw = layer.drop - house["lining_rise_mm"] + house["separate_hem_mm"] + house["separate_head_mm"]
    cut = up(raw / kept(fabric))
    widths = up(layer.n * k)
    return {"fabric": fabric["id"], "widths_each": k, "widths": widths, "flat_mm": flat(k), "cut_drop_mm": cut,
            "length_mm": widths * cut, "hung": "separate"}


def tie_back_of(layer, fabric):
    """The figures and the cut of the face cloth."""
    asked, house = layer.treatment.get("tie_back"), layer.house
    if asked is None:
        return None, None
    kind = asked.get("kind", "tie-back")
    height = asked.get("height_mm")
    if height is None and layer.top is not None:
        height = nearest(layer.top - house["tie_back_share"] * layer.drop)
        height = height if height > 0 else None
    out = {"kind": kind, "count": layer.n, "height_mm": height, "length_mm": None, "cut_length_mm": None,
           "cut_width_mm": None}
    if kind == "holdback":
        return out, None
    length = asked.get("length_mm")
    if length is None:
        length = 10 * nearest((2.0 * STACK[layer.heading] * layer.w + house["tie_back_ease_mm"]) / 10.0)
    turn = 2.0 * house["tie_back_turn_mm"]
    out["length_mm"], out["cut_length_mm"], out["cut_width_mm"] = length, up(length + turn), \
        up(house["tie_back_width_mm"] + turn)
    across, along = out["cut_length_mm"], out["cut_width_mm"]
    if more(across, usable(fabric)):
        across, along = along, across
    rows = up(2 * layer.n / down(usable(fabric) / across))
    return out, rows * up(along / kept(fabric))


class Basket(list):
    def count(self, what, number, each=None):
        if number > 0:
            self.append({"what": what, "count": number} | ({"each_mm": each} if each else {}))

    def length(self, what, mm):
        if mm > 0:
            self.append({"what": what, "length_mm": up(mm)})


def bought_for_curtains(layer, basket):
    house, figures = layer.house, layer.figures
    flat = figures["cloth"]["flat_mm"]
    tape = 2.0 * house["tape_turn_mm"]
    if layer.heading in TAPED:
        basket.length("heading tape", layer.n * (flat + tape))
    elif layer.heading in PLEATED or layer.heading == "eyelet":
        basket.length("buckram", layer.n * flat)
    for key in ("lining", "second_lining"):
        lining = figures[key]
        if lining and lining.get("hung") == "separate":
            basket.length("lining tape", layer.n * (lining["flat_mm"] + tape))
            basket.count("lining hooks", layer.n * (1 + gaps(layer.w, house["hook_gap_mm"])))
    if figures["hooks"]:
        basket.count("hooks", figures["hooks"]["in_all"])
        basket.count("gliders" if layer.kind == "track" else "rings", figures["hooks"]["in_all"])
    if figures["eyelets"]:
        basket.count("eyelets", layer.n * figures["eyelets"]["each"])
    basket.count("weights", layer.n * figures["weights"]["each"])
    if figures["tie_back"]:
        if figures["tie_back"]["kind"] == "holdback":
            basket.count("holdbacks", layer.n)
        else:
            basket.count("tie-back rings", 2 * layer.n)
            basket.count("tie-back hooks", layer.n)


def bought_for_blind(layer, basket):
    house, rods = layer.house, layer.figures["blind"]["rods"]
    rod = up(max(0.0, layer.w - house["rod_short_mm"]))
    lines = 1 + gaps(layer.w, house["cord_gap_mm"])
    basket.count("blind rods", rods, rod)
    basket.count("blind bottom bars", 1, rod)
    basket.length("hook-and-loop", layer.w)
    basket.count("blind rings", lines * rods)
    operation = layer.treatment.get("operation", "cord")
    if operation == "cord":
        basket.length("cord", lines * (2.0 * layer.drop + layer.w / 2.0))
        basket.count("cleats", 1)
    elif operation in ("chain", "motor"):
        basket.length("lift cord", lines * layer.drop)


def bought_of(layer):
    basket = Basket()
    if layer.roman:
        bought_for_blind(layer, basket)
    elif layer.figures["cloth"]:
        bought_for_curtains(layer, basket)
    pelmet = layer.figures["pelmet"]
    if pelmet and pelmet["length_mm"] is not None:
        basket.count("pelmet boards", 1, up(pelmet["face_mm"]))
        basket.length("hook-and-loop", pelmet["face_mm"] + 2.0 * layer.treatment["pelmet"].get("return_mm", 0))
    return list(basket)


def over_the_house(layers, step):
    """What is bought, by `what`: count, length, the length upward to its step, and pieces by their length."""
    out = {}
    for entry in (entry for layer in layers for entry in layer["haberdashery"] or []):
        item = out.setdefault(entry["what"], {"count": 0, "length_mm": 0, "pieces": {}})
        item["count"] += entry.get("count", 0)
        item["length_mm"] += entry.get("length_mm", 0)
        if "each_mm" in entry:
            item["pieces"][entry["each_mm"]] = item["pieces"].get(entry["each_mm"], 0) + entry["count"]
    for item in out.values():
        item["order_m"] = up(item["length_mm"] / 1000.0 / step) * step
    return out


def load_of(layer):
    hardware = layer.hardware
    lacking = [(layer.figures["mass_kg"], "the mass of a cloth"), (hardware.get("mass_kg"), "the mass of the hardware"),
               (hardware.get("brackets") is not None or hardware.get("bracket_at_mm") or None, "how many brackets carry it"),
               (hardware.get("rated_kg"), "what the maker of the hardware says it carries"),
               (hardware.get("bracket_rated_kg"), "what the maker of the brackets says one carries"),
               (hardware.get("fixing_rated_kg"), "what the fixings hold in this wall"),
               (layer.room.get("wall") or None, "what the wall is made of")]
    return {"bracket_kg": layer.figures["bracket_kg"], "not_known": [what for known, what in lacking if known is None]}


def flags_of_load(layer):
    """Over what a maker says, and more in one curtain than one person carries."""
    mass, hardware = layer.figures["mass_kg"], layer.hardware
    if mass is None:
        return
    loads = ((mass + hardware.get("mass_kg", 0), "rated_kg"), (layer.figures["bracket_kg"], "bracket_rated_kg"),
             (layer.figures["bracket_kg"], "fixing_rated_kg"))
    if any(hardware.get(key) is not None and more(load, hardware[key]) for load, key in loads):
        layer.flag("load-over-rating", "caution")
    if more(mass / layer.n, 10.0):
        layer.flag("heavy-curtain", "caution")


def flags_of_choices(layer):
    """Cords, loops and lead where small children may be; a motor anywhere."""
    operation = layer.treatment.get("operation")
    corded = operation in ("cord", "chain") or (operation is None and layer.roman)
    if layer.room.get("young_children", True):
        if corded:
            layer.flag("cord-within-reach", "caution")
        tie_back = layer.treatment.get("tie_back")
        if not layer.roman and tie_back is not None and tie_back.get("kind", "tie-back") != "holdback":
            layer.flag("loop-within-reach", "caution")
        if not layer.roman and layer.treatment.get("weights") == "lead":
            layer.flag("lead-weights", "caution")
    if operation == "motor":
        layer.flag("power-at-the-window", "caution")
