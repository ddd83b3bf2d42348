# SPDX-License-Identifier: Apache-2.0
"""The program's figures against the independent working (tests/reference/working), over seeded random surveys and the demo
surveys, and against the contract's example.

    agreement_test.py PROGRAM            all of it
    agreement_test.py PROGRAM 17 41      only the surveys of these seeds, every difference shown
"""

import copy
import json
import os
import subprocess
import sys
from decimal import Decimal

HERE = os.path.dirname(os.path.abspath(__file__))
REFERENCE = os.path.join(HERE, "..", "..", "reference")
sys.dont_write_bytecode = True  # nothing is left in the source tree
sys.path.insert(0, os.path.join(REFERENCE, "working"))
import random_survey
import working

SURVEYS = 240
PARTS = ("finished", "cloth", "lining", "interlining", "tabs", "eyelets", "weights", "blind", "pelmet", "second_lining",
         "pleats", "hooks", "tie_back", "load")
# What the program reports to two decimals may differ by a hundredth; whole numbers may not differ.
TOLERANCE = {"u_mm": 0.011, "mm": 0.011, "width_u_mm": 0.011, "drop_u_mm": 0.011, "fullness": 0.00006, "flat_mm": 0.011,
             "hang_mm": 0.011, "joins_mm": 0.011, "spacing_mm": 0.011, "fold_mm": 0.011, "up_mm": 0.011, "mass_kg": 0.0051,
             "bracket_kg": 0.0051, "limit": 0.011, "chi2": 0.011, "order_m": 1e-6, "face_mm": 0.011, "depth_mm": 0.011,
             "pleat_mm": 0.0051, "space_mm": 0.0051, "first_mm": 0.0051, "last_mm": 0.0051, "positions_mm": 0.0051,
             "longer_mm": 0.011, "hem_left_mm": 0.011}
# Of section 10, and of what is made up and moved.
CODES = {"missing-reading", "not-understood", "impossible", "does-not-add-up", "typed-differs", "rests-on-proposal",
         "two-readings", "reading-spread", "out-of-square", "floor-not-level", "sill-not-level", "on-the-edge",
         "fullness-range", "heading-hardware", "not-checked", "pole-near-ceiling", "finial-fouls", "hardware-fouls",
         "curtain-fouls", "tab-centre-bracket", "stack-covers-glass", "curtain-over-heat", "cord-within-reach",
         "loop-within-reach", "lead-weights", "power-at-the-window", "heavy-curtain", "load-over-rating", "lining-hung",
         "weights-not-needed", "layers-foul", "layers-not-checked", "pole-moved", "pole-to-measure", "run-differs",
         "shaped-top"}


def run(program, document):
    done = subprocess.run([program, "figures", "-"], input=json.dumps(document).encode(), capture_output=True, timeout=60)
    if done.returncode != 0:
        raise RuntimeError(f"exit {done.returncode}: {done.stderr.decode(errors='replace')[:400]}")
    return json.loads(done.stdout)


def same(key, ours, theirs):
    if isinstance(ours, list) and isinstance(theirs, list):
        return len(ours) == len(theirs) and all(same(key, a, b) for a, b in zip(ours, theirs))
    if isinstance(ours, bool) or isinstance(theirs, bool) or ours is None or theirs is None or isinstance(ours, str):
        return ours == theirs
    if not isinstance(theirs, (int, float)):
        return False
    tolerance = TOLERANCE.get(key, 1e-9)
    if key == "chi2":
        tolerance = max(tolerance, 1e-5 * abs(ours))
    return abs(ours - theirs) <= tolerance


class Differences:
    def __init__(self):
        self.by_kind = {}

    def add(self, kind, where, ours, theirs):
        self.by_kind.setdefault(kind, []).append((where, ours, theirs))

    def count(self):
        return sum(len(rows) for rows in self.by_kind.values())

    def show(self, most):
        for kind, rows in sorted(self.by_kind.items(), key=lambda item: -len(item[1])):
            print(f"{kind}: {len(rows)} differences")
            for where, ours, theirs in rows[:most]:
                print(f"    {where}: worked {ours!r}, program {theirs!r}")


def parts_of(kind, where, key, ours, theirs, out):
    """`finished.drops_mm` and `finished.planned`."""
    if isinstance(ours, list) and isinstance(theirs, list) and len(ours) == len(theirs):
        for i, (mine, other) in enumerate(zip(ours, theirs)):
            if mine["line"] != other["line"] or mine["mm"] != other["mm"] or mine["curtains"] != other.get("curtains") \
                    or not same("u_mm", mine["u_mm"], other["u_mm"]):
                out.add(f"{kind}.{key}", f"{where} {i}", mine, other)
    elif isinstance(ours, dict) and isinstance(theirs, dict):
        objects(f"{kind}.{key}", where, ours, theirs, out)
    elif ours is not theirs:
        out.add(f"{kind}.{key}", where, ours, theirs)


def objects(kind, where, ours, theirs, out):
    if ours is None or theirs is None:
        if ours is not theirs:
            out.add(kind + " (null)", where, ours, theirs)
        return
    for key, value in ours.items():
        if key in ("rows", "row_mm") or (kind == "eyelets" and key not in theirs):
            continue
        if key in ("drops_mm", "planned"):
            parts_of(kind, where, key, value, theirs.get(key), out)
        elif not same(key, value, theirs.get(key)):
            out.add(f"{kind}.{key}", where, value, theirs.get(key))


def flags_of(flags, layer):
    return {(f["code"], f["severity"]) for f in flags if f.get("layer", "") == (layer or "") and f["code"] in CODES}


def sizes(where, ours, theirs, out):
    listed = {size["name"]: size for size in theirs}
    for name in sorted(set(ours) | set(listed)):
        if name not in ours or name not in listed:
            out.add("sizes, which (" + name.split(".")[0] + ")", f"{where} {name}", name in ours, name in listed)
            continue
        for key, value in (("mm", ours[name].mm), ("u_mm", ours[name].u)):
            if not same(key, value, listed[name][key]):
                out.add(f"sizes.{key}", f"{where} {name}", value, listed[name][key])
        rests = listed[name].get("rests_on", [])
        if sorted(rests) != ours[name].rests_on():
            out.add("sizes.rests_on", f"{where} {name}", ours[name].rests_on(), rests)


def window(where, ours, theirs, out):
    sizes(where, ours["sizes"], theirs["sizes"], out)
    listed = {check["network"]: check for check in theirs["checks"]}
    mine = {check["network"]: check for check in ours["checks"]}
    for name in sorted(set(mine) | set(listed)):
        objects("checks", f"{where} {name}", mine.get(name), listed.get(name), out)
    layered = "layers" in theirs
    said = {"": {f for f in map(tuple, ours["flags"]) if f[0] in CODES}}
    for layer in ours["layers"]:
        name = layer["id"] if layered else None
        entry = next((l for l in theirs["layers"] if l["id"] == name), None) if layered else theirs
        place = f"{where} {name}" if name else where
        if entry is None:
            out.add("layer", place, name, None)
            continue
        for part in PARTS:
            objects(part, place, layer[part], entry.get(part), out)
        for key in ("mass_kg", "bracket_kg"):
            if not same(key, layer[key], entry.get(key)):
                out.add(key, place, layer[key], entry.get(key))
        bought(f"{place} bought", layer["haberdashery"] or [], entry.get("haberdashery"), out)
        said.setdefault(name or "", set()).update(tuple(f) for f in layer["flags"])
    for name in sorted(said):
        theirs_said = flags_of(theirs["flags"], name)
        for flag in sorted(said[name] ^ theirs_said):
            out.add("flag " + flag[0], f"{where} {name}".strip(), flag[1] if flag in said[name] else None,
                    flag[1] if flag in theirs_said else None)


def bought(where, ours, theirs, out):
    """One layer's list, in whatever order."""
    def in_order(entries):
        return sorted((e["what"], e.get("count"), e.get("length_mm"), e.get("each_mm")) for e in entries)
    if theirs is None or in_order(ours) != in_order(theirs):
        out.add("haberdashery of a window", where, ours, theirs)


def bought_in_all(where, ours, theirs, out):
    """Over the house, by what it is; nothing may be listed twice."""
    listed = {e["what"]: {"count": e.get("count", 0), "length_mm": e.get("length_mm", 0), "order_m": e.get("order_m", 0),
                          "pieces": {p["length_mm"]: p["count"] for p in e.get("pieces", [])}} for e in theirs}
    if len(listed) != len(theirs) or set(listed) != set(ours):
        out.add("haberdashery, which", where, sorted(ours), [e["what"] for e in theirs])
        return
    for what, item in ours.items():
        objects("haberdashery", f"{where} {what}", {k: v for k, v in item.items() if k != "pieces"}, listed[what], out)
        if item["pieces"] != listed[what]["pieces"]:
            out.add("haberdashery, pieces", f"{where} {what}", item["pieces"], listed[what]["pieces"])


def label(seed):
    return f"seed {seed}" if isinstance(seed, int) else seed


def compare(seed, ours, theirs, out):
    listed = {w["id"]: w for w in theirs["windows"]}
    if list(listed) != [w["id"] for w in ours["windows"]]:
        out.add("windows", label(seed), [w["id"] for w in ours["windows"]], list(listed))
        return
    for entry in ours["windows"]:
        window(f"{label(seed)} {entry['id']}", entry, listed[entry["id"]], out)
    orders = {o["fabric"]: o for o in theirs["orders"]}
    for fabric in sorted(set(orders) | set(ours["orders"])):
        objects("orders", f"{label(seed)} {fabric}", ours["orders"].get(fabric), orders.get(fabric), out)
    bought_in_all(label(seed), ours["haberdashery"], theirs["haberdashery"], out)


# The contract's example, key by key ------------------------------------------------------------------------------------

def key_by_key(pointer, expected, got, out):
    """Numbers within half of the last decimal given; keys may be added; `trace` and a flag's `text` are free."""
    if isinstance(expected, dict):
        for key, value in expected.items():
            if key in ("trace", "text"):
                continue
            if not isinstance(got, dict) or key not in got:
                out.add("example", f"{pointer}/{key}", str(value), "absent")
            else:
                key_by_key(f"{pointer}/{key}", value, got[key], out)
    elif isinstance(expected, list):
        if not isinstance(got, list) or len(got) != len(expected):
            out.add("example", pointer, f"{len(expected)} entries", got)
            return
        for i, (a, b) in enumerate(zip(expected, got)):
            key_by_key(f"{pointer}/{i}", a, b, out)
    elif isinstance(expected, Decimal):
        half = Decimal(1).scaleb(expected.as_tuple().exponent) / 2
        if isinstance(got, bool) or not isinstance(got, (Decimal, int)) or abs(Decimal(got) - expected) > half:
            out.add("example", pointer, str(expected), str(got))
    elif expected != got or type(expected) is not type(got):
        out.add("example", pointer, expected, got)


def load_example(name):
    with open(os.path.join(REFERENCE, "contract", name), encoding="utf-8") as file:
        return json.load(file, parse_float=Decimal, parse_int=Decimal)


def example(program, out):
    path = os.path.join(REFERENCE, "contract", "survey.example.json")
    done = subprocess.run([program, "figures", path], capture_output=True, timeout=60)
    if done.returncode != 0 or done.stderr:
        out.add("example", path, "exit 0, nothing on standard error", (done.returncode, done.stderr[:400]))
        return
    got = json.loads(done.stdout, parse_float=Decimal, parse_int=Decimal)
    key_by_key("", load_example("figures.example.json"), got, out)


# The demo surveys --------------------------------------------------------------------------------------------------------

def demo(program, out):
    folder = os.path.join(HERE, "..", "..", "..", "demo-surveys")
    for name in ("pilot-house", "net-store", "sail-loft"):
        with open(os.path.join(folder, name + ".json"), encoding="utf-8") as file:
            document = json.load(file)
        # The working knows upright openings; what it says of other shapes stands in shapes_agreement_test.py.
        for room in document["rooms"]:
            room["windows"] = [w for w in room["windows"] if w["shape"] in ("recess", "frame", "door")]
        theirs = run(program, document)
        compare(name, working.work(document), theirs, out)
        if name == "pilot-house":
            planted_slip(theirs, out)


def planted_slip(figures, out):
    """Pilot house, east bedroom window: 1163 was keyed as 1136 (demo-surveys/README.md). It is found not to add up, and
    the reading at fault is among those to take again."""
    stations = [f["stations"] for w in figures["windows"] for f in w["flags"] if f["code"] == "does-not-add-up"]
    if not any("opening.height.centre" in named for named in stations):
        out.add("planted slip", "pilot-house", "opening.height.centre among the stations", stations)


# The comparison can fail -------------------------------------------------------------------------------------------------

def as_document(worked):
    """The independent working written as a figures document: only to try the comparison itself."""
    windows = []
    for entry in worked["windows"]:
        layered = entry["layers"][0]["id"] is not None
        w = {"id": entry["id"], "checks": copy.deepcopy(entry["checks"]),
             "sizes": [{"name": n, "mm": s.mm, "u_mm": s.u, "rests_on": s.rests_on()} for n, s in entry["sizes"].items()],
             "flags": [{"code": c, "severity": s} for c, s in entry["flags"]]}
        for layer in entry["layers"]:
            extra = {"layer": layer["id"]} if layered else {}
            w["flags"] += [{"code": c, "severity": s} | extra for c, s in layer["flags"]]
        figures = [{k: v for k, v in copy.deepcopy(layer).items() if k != "flags"} for layer in entry["layers"]]
        for part in figures:
            part["haberdashery"] = part["haberdashery"] or []
        w.update({"layers": figures} if layered else {k: v for k, v in figures[0].items() if k != "id"})
        windows.append(w)
    house = [{"what": what, "pieces": [{"length_mm": mm, "count": n} for mm, n in item["pieces"].items()]}
             | {k: v for k, v in item.items() if k != "pieces"} for what, item in worked["haberdashery"].items()]
    return {"windows": windows, "orders": [{"fabric": f} | o for f, o in worked["orders"].items()], "haberdashery": house}


def prove_it_can_fail():
    worked = working.work(random_survey.survey(3))
    clean = Differences()
    compare(3, worked, as_document(worked), clean)
    assert clean.count() == 0, clean.by_kind

    def spoilt(change):
        document = as_document(worked)
        change(document)
        out = Differences()
        compare(3, worked, document, out)
        return out.count()
    hung = next(i for i, w in enumerate(as_document(worked)["windows"])
                if w.get("finished") and w["finished"]["drop_mm"] and w.get("cloth"))
    changes = [lambda d: d["windows"][hung]["finished"].update(drop_mm=d["windows"][hung]["finished"]["drop_mm"] + 1),
               lambda d: d["windows"][hung]["cloth"].update(length_mm=None),
               lambda d: d["windows"][hung]["sizes"][0].update(mm=d["windows"][hung]["sizes"][0]["mm"] + 0.02),
               lambda d: d["windows"][hung]["flags"].append({"code": "out-of-square", "severity": "note"}),
               lambda d: d["haberdashery"][0].update(count=d["haberdashery"][0]["count"] + 1),
               lambda d: d["windows"][hung].update(haberdashery=[]),
               lambda d: d["orders"][0].update(order_m=d["orders"][0]["order_m"] + 0.1),
               lambda d: d["windows"].pop()]
    for change in changes:
        assert spoilt(change) > 0
    expected = load_example("figures.example.json")
    got = json.loads(json.dumps(expected, default=float), parse_float=Decimal, parse_int=Decimal)
    got["windows"][0]["mass_kg"] += Decimal("0.006")
    out = Differences()
    key_by_key("", expected, got, out)
    assert out.count() == 1, out.by_kind


def main():
    program, chosen = sys.argv[1], [int(seed) for seed in sys.argv[2:]]
    prove_it_can_fail()
    out = Differences()
    if not chosen:
        example(program, out)
        demo(program, out)
    for seed in chosen or range(SURVEYS):
        document = random_survey.survey(seed)
        try:
            compare(seed, working.work(document), run(program, document), out)
        except (RuntimeError, ValueError, KeyError, subprocess.TimeoutExpired) as fault:
            out.add("no figures", label(seed), "figures", repr(fault))
    out.show(1000 if chosen else 6)
    print(f"{len(chosen) or SURVEYS} surveys, {out.count()} differences")
    return 1 if out.count() else 0


if __name__ == "__main__":
    sys.exit(main())
