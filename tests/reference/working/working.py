# SPDX-License-Identifier: Apache-2.0
"""An independent working of the trade rules: a survey document in, its figures out (as Python objects).

Run with a survey's path to see them as JSON. Written from the rules' text alone; README.md lists what the text left open.
"""

import json
import sys

import cutting
import making
import hung_together
from hanging import Layer
from readings import Opening, Readings
from rounding import up
from rules import DEFAULTS, HEADINGS, WORDS, House

WORKED = ("recess", "frame", "door")
KEYS = ("finished", "cloth", "lining", "interlining", "tabs", "eyelets", "weights", "blind", "pelmet", "mass_kg",
        "bracket_kg", "second_lining", "pleats", "hooks", "tie_back", "haberdashery", "load")


def unknown_rules(rules):
    """The contract counts a house rule among the words: one that isn't known stops every window that it may touch."""
    known = set(DEFAULTS) | {"name", "version", "date", "head_mm"}
    return [key for key in rules if key not in known] + [key for key in rules.get("head_mm", {}) if key not in HEADINGS]


def unknown_words(window, layers):
    found = [o.get("kind") for o in window.get("obstructions", [])
             if o.get("kind") is not None and o["kind"] not in WORDS["kind of obstruction"]]
    for layer in layers:
        for part, keys in (("hardware", ("kind", "supply", "hang", "run", "stage")),
                           ("treatment", ("heading", "fit", "layout", "length", "top", "drops", "lining_hung",
                                          "operation", "weights"))):
            for key in keys:
                value = (layer.get(part) or {}).get(key)
                if value is not None and value not in WORDS[key]:
                    found.append(value)
        tie_back = (layer.get("treatment") or {}).get("tie_back") or {}
        if tie_back.get("kind", "tie-back") not in WORDS["tie_back"]:
            found.append(tie_back["kind"])
    return found


def layers_of(window):
    if "layers" in window:
        return window["layers"]
    return [{"hardware": window.get("hardware"), "treatment": window.get("treatment")}]


def leading_hang(layers):
    """Sizes and checks follow the first layer that hangs from a pole, else the first."""
    for layer in layers:
        treatment = layer.get("treatment") or {}
        if layer.get("hardware") and not (treatment.get("heading") == "roman"
                                          and treatment.get("fit", "inside") == "inside"):
            return layer["hardware"].get("hang", "level")
    return next((layer["hardware"].get("hang", "level") for layer in layers if layer.get("hardware")), "level")


def work_window(window, room, survey, house):
    out = {"id": window["id"], "room": room["id"], "sizes": {}, "checks": [], "flags": [], "layers": []}
    cuts = []
    layers = layers_of(window)
    empty = [dict.fromkeys(KEYS) | {"id": layer.get("id"), "flags": []} for layer in layers]
    if window["shape"] not in WORKED:
        out["flags"].append(("not-understood", "stop"))
        out["layers"] = empty
        return out, cuts
    readings = Readings(window, survey.get("tape", {}), house["edge_u_mm"], survey.get("entry_unit", "mm"))
    opening = Opening(readings, leading_hang(layers))
    out["sizes"] = opening.sizes()
    out["checks"] = opening.checks
    out["flags"] += readings.flags + opening.flags
    if any(how == "proposed" for size in out["sizes"].values() for _, how in size.leans):
        out["flags"].append(("rests-on-proposal", "remeasure"))
    if unknown_words(window, layers) or unknown_rules(survey.get("rules", {})):
        out["flags"].append(("not-understood", "stop"))
    if ("not-understood", "stop") in out["flags"]:
        out["layers"] = empty
        return out, cuts
    fabrics = {f["id"]: f for f in survey["fabrics"]}
    hung = []
    for layer in layers:
        worked = Layer(window, readings, layer, fabrics, house, room, leading_hang(layers))
        if worked.heading in HEADINGS and hung_together.is_up(window):
            worked.held_against(planned_layer(window, survey, layer, fabrics, house, room, leading_hang(layers)))
        figures, flags, layer_cuts = whole_or_nothing(worked)
        out["layers"].append(figures | {"id": layer.get("id"), "flags": flags})
        cuts += layer_cuts
        if worked.heading in HEADINGS:
            hung.append((worked, flags))
    for at, code, severity in hung_together.layer_flags([worked for worked, _ in hung]):
        hung[at][1].append((code, severity))
    return out, cuts


def planned_layer(window, survey, layer, fabrics, house, room, hang):
    before = hung_together.as_planned(window)
    readings = Readings(before, survey.get("tape", {}), house["edge_u_mm"], survey.get("entry_unit", "mm"))
    return Layer(before, readings, layer, fabrics, house, room, hang)


def whole_or_nothing(worked):
    """Contract, "Where readings are missing": a layer that lacks a size, or can't be made, has no figures at all, since
    nothing can be cut from half of them; what its cloth alone gave cause to flag goes with them."""
    finished = worked.figures["finished"]
    stopped = any(severity == "stop" for _, severity in worked.flags)
    sizes = [finished[key] for key in ("width_mm", "drop_mm")] if finished is not None else [None]
    if not stopped and None not in sizes:
        return worked.figures, worked.flags, worked.cuts
    flags = [f for f in worked.flags if f[0] not in ("fullness-range", "on-the-edge", "lining-hung", "weights-not-needed",
                                                     "load-over-rating", "heavy-curtain")]
    return dict.fromkeys(worked.figures), flags, []


def work(survey):
    house = House(survey.get("rules"))
    windows, lengths, doubtful = [], {}, set()
    for room in survey["rooms"]:
        for window in room["windows"]:
            entry, cuts = work_window(window, room, survey, house)
            windows.append(entry)
            flags = entry["flags"] + [f for layer in entry["layers"] for f in layer["flags"]]
            stopped = any(severity in ("stop", "remeasure") for _, severity in flags)
            for fabric, what, length in cuts:
                lengths.setdefault(fabric["id"], 0.0)
                lengths[fabric["id"]] += length
                if stopped:
                    doubtful.add(fabric["id"])
    orders = {}
    for fabric in survey["fabrics"]:
        if fabric["id"] in lengths:
            length = lengths[fabric["id"]] + house["placing_repeats"] * cutting.repeat_of(fabric)
            orders[fabric["id"]] = {"length_mm": up(length), "order_m": cutting.order_m(length, house["order_step_m"]),
                                    "provisional": fabric["id"] in doubtful}
    layers = [layer for window in windows for layer in window["layers"]]
    return {"survey": survey["id"], "windows": windows, "orders": orders,
            "haberdashery": making.over_the_house(layers, house["haberdashery_step_m"])}


if __name__ == "__main__":
    with open(sys.argv[1], encoding="utf-8") as file:
        figures = work(json.load(file))
    json.dump(figures, sys.stdout, indent=1, default=lambda s: {"mm": s.mm, "u_mm": s.u, "rests_on": s.rests_on()})
    print()
