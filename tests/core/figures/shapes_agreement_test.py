# SPDX-License-Identifier: Apache-2.0
"""Random bays, corners, arches and gables, adjusted by condition equations (the readings' closures) in place of unknowns.

The program solves for a figure's points; here no point is solved for: each redundant reading is one closure of the
readings, f(l) = 0, and least squares moves the readings by as little as closes it (adjustment by conditions, as in any
text on adjustment: v = -Q B' (B Q B')^-1 w, chi-square w' (B Q B')^-1 w at the solution). Derivatives are taken by
differences. Standard uncertainties are those of the trade rules, section 3.
"""

import json
import math
import os
import random
import subprocess
import sys

sys.dont_write_bytecode = True  # nothing is left in the source tree
sys.path.insert(0, os.path.join(os.path.dirname(os.path.abspath(__file__)), "..", "..", "reference", "working"))
import shaping
from rounding import nearest

EDGE_U, ANGLE_U = 2.0, 0.5
WINDOWS, HUNG = 240, 400


def sigma(station, value):
    if station.endswith("_deg"):
        return ANGLE_U
    mpe = 0.3 + 0.2 * math.ceil(value / 1000.0 - 1e-9)
    return math.sqrt(mpe * mpe / 3.0 + 1.0 / 12.0 + EDGE_U * EDGE_U)


def mouth(readings, facets):
    """The gap between the outer edges, walked by widths and inside angles as a sum of complex numbers."""
    at, heading = 0j, 1 + 0j
    for n in range(1, facets + 1):
        at += readings[f"facet.{n}.width"] * heading
        if n < facets:
            turn = math.radians(180.0 - readings[f"corner.{n}.angle_deg"])
            heading *= complex(math.cos(turn), -math.sin(turn))
    return abs(at)


def solved(matrix, right):
    """Gauss's elimination, for one condition or a few."""
    rows = [list(row) + [value] for row, value in zip(matrix, right)]
    for i, row in enumerate(rows):
        pivot = max(range(i, len(rows)), key=lambda k: abs(rows[k][i]))
        rows[i], rows[pivot] = rows[pivot], rows[i]
        row = rows[i] = [value / rows[i][i] for value in rows[i]]
        for k in range(len(rows)):
            if k != i:
                rows[k] = [a - rows[k][i] * b for a, b in zip(rows[k], row)]
    return [row[-1] for row in rows]


def adjusted(read, conditions):
    """The readings that close, chi-square, and each one's standard uncertainty."""
    names = list(read)
    weight = {name: sigma(name, read[name]) ** 2 for name in names}
    now = dict(read)
    for _ in range(200):
        rows = []
        for condition in conditions:
            row = {}
            for name in names:
                step = 1e-4
                row[name] = (condition(now | {name: now[name] + step}) - condition(now | {name: now[name] - step})) / (
                    2 * step)
            rows.append(row)
        gaps = [condition(now) + sum(row[n] * (read[n] - now[n]) for n in names)
                for condition, row in zip(conditions, rows)]
        normal = [[sum(a[n] * weight[n] * b[n] for n in names) for b in rows] for a in rows]
        factors = solved(normal, gaps)
        moved = {n: read[n] - weight[n] * sum(k * row[n] for k, row in zip(factors, rows)) for n in names}
        done = max(abs(moved[n] - now[n]) for n in names) < 1e-9
        now = moved
        if done:
            break
    chi2 = sum((now[n] - read[n]) ** 2 / weight[n] for n in names)
    u = {n: u_of({n: 1.0}, names, weight, rows, normal) for n in names}
    return now, chi2, u, lambda gradient: u_of(gradient, names, weight, rows, normal)


def u_of(gradient, names, weight, rows, normal):
    """Standard uncertainty of what moves with the adjusted readings so: g' (Q - Q B' (B Q B')^-1 B Q) g."""
    own = sum(weight[n] * gradient.get(n, 0.0) ** 2 for n in names)
    column = [sum(weight[n] * row[n] * gradient.get(n, 0.0) for n in names) for row in rows]
    taken = sum(c * f for c, f in zip(column, solved(normal, column)))
    return math.sqrt(max(0.0, own - taken))


def any_bay(rng, shape):
    facets = 2 if shape == "corner" else rng.randint(2, 9)
    read = {}
    for n in range(1, facets + 1):
        read[f"facet.{n}.width"] = float(rng.randint(300, 1400))
    for n in range(1, facets):
        turn = rng.randint(20, 70) if facets < 4 else rng.randint(-15, 20)
        read[f"corner.{n}.angle_deg"] = 180.0 - turn
    chord = f"{shape}.chord"
    read[chord] = float(round(mouth(read, facets)) + rng.choice((0, 0, 1, -3, 6, 25)))
    return read, [lambda now: mouth(now, facets) - now[chord]], shape


def any_arch(rng):
    left, rise = float(rng.randint(600, 1500)), float(rng.randint(150, 700))
    right = left + rng.randint(-6, 6)
    read = {"opening.height.left": left, "opening.height.right": right, "arch.rise": rise,
            "opening.height.centre": round((left + right) / 2 + rise) + rng.choice((0.0, 2.0, -8.0, 40.0))}
    return read, [lambda now: (now["opening.height.left"] + now["opening.height.right"]) / 2 + now["arch.rise"]
                  - now["opening.height.centre"]], "arch"


def any_gable(rng):
    left, right, width = (float(rng.randint(*span)) for span in ((500, 1500), (500, 1500), (700, 2400)))
    apex = max(left, right) + rng.randint(200, 1200)
    along = round(width * rng.uniform(0.25, 0.75))
    read = {"opening.width.bottom": width, "opening.height.left": left, "opening.height.right": right,
            "opening.height.centre": float(apex), "gable.apex.along": float(along),
            "gable.slope.left": round(math.hypot(along, apex - left)) + rng.choice((0.0, 2.0, -5.0, 15.0)),
            "gable.slope.right": float(round(math.hypot(width - along, apex - right)))}
    return read, [lambda now: math.hypot(now["gable.apex.along"],
                                         now["opening.height.centre"] - now["opening.height.left"])
                  - now["gable.slope.left"],
                  lambda now: math.hypot(now["opening.width.bottom"] - now["gable.apex.along"],
                                         now["opening.height.centre"] - now["opening.height.right"])
                  - now["gable.slope.right"]], "gable"


def compare(name, case, figures, failed):
    read, conditions, network = case
    closed, chi2, u, _ = adjusted(read, conditions)
    check = next((c for c in figures["checks"] if c["network"] == network), None)
    if check is None or check["redundancy"] != len(conditions):
        failed.append(f"{name}: no check of redundancy {len(conditions)}: {check}")
        return
    if abs(check["chi2"] - chi2) > 0.006 + 1e-4 * chi2:
        failed.append(f"{name}: chi-square {check['chi2']}, not {chi2}")
    sizes = {size["name"]: size for size in figures["sizes"]}
    for station, value in closed.items():
        if station.startswith("opening.height"):
            continue  # the plumb lines' own
        size = sizes.get(station, {})
        told, told_u = (size.get("deg"), size.get("u_deg")) if station.endswith("_deg") else (size.get("mm"),
                                                                                              size.get("u_mm"))
        if told is None or abs(told - value) > 0.011 or abs(told_u - u[station]) > 0.011:
            failed.append(f"{name} {station}: {told} ± {told_u}, not {value} ± {u[station]}")


# What hangs round them -------------------------------------------------------------------------------------------------

HEIGHTS = {"below.left": 900, "facet.1.height": 1200, "pole.above": 150}
CLOTH = {"id": "linen", "width_mm": 1400}


def bent_window(rng, name):
    shape = rng.choice(("bay", "bay", "corner"))
    read, conditions, _ = any_bay(rng, shape)
    heading = rng.choice(("tab", "eyelet", "pencil-pleat", "s-fold"))
    hardware = {"kind": "track" if heading == "s-fold" else rng.choice(("pole", "track")), "run": "bent",
                "diameter_mm": 28, "projection_mm": rng.randint(40, 110), "return_mm": rng.choice((0, 80)),
                "overlap_mm": rng.choice((0, 80))}
    treatment = {"heading": heading, "layout": rng.choice(("pair", "pair", "single")), "fabric": "linen"}
    return {"id": name, "shape": shape, "hardware": hardware, "treatment": treatment,
            "readings": readings_of(read | HEIGHTS)}, (read, conditions)


def compare_bent(window, case, figures, failed):
    closed, _, _, u_of_it = adjusted(*case)
    facets = sum(s.startswith("facet.") for s in closed)
    widths = [f"facet.{n}.width" for n in range(1, facets + 1)]
    angles = [f"corner.{n}.angle_deg" for n in range(1, facets)]
    hardware = window["hardware"]

    def legs(now):
        return shaping.offset_run([now[w] for w in widths], [now[a] for a in angles], hardware["projection_mm"])
    step = 1e-4
    gradient = {n: (sum(legs(closed | {n: closed[n] + step})) - sum(legs(closed | {n: closed[n] - step}))) / (2 * step)
                for n in widths + angles}
    told = legs(closed)
    length, u = sum(told), u_of_it(gradient)
    run = figures.get("run") or {}
    if abs(run.get("length_mm", 0) - length) > 0.011 or abs(run.get("u_mm", 0) - u) > 0.011:
        failed.append(f"{window['id']}: run {run.get('length_mm')} ± {run.get('u_mm')}, not {length} ± {u}")
        return
    places = [sum(told[:n]) for n in range(1, facets)]
    for bend, at, angle in zip(run["bends"], places, angles, strict=True):
        if abs(bend["at_mm"] - at) > 0.011 or abs(bend["angle_deg"] - closed[angle]) > 0.011:
            failed.append(f"{window['id']}: bend {bend}, not {at} {closed[angle]}")
    curtains = 2 if window["treatment"]["layout"] == "pair" else 1
    wide = (length + 2 * hardware["return_mm"] + hardware["overlap_mm"]) / curtains
    finished = figures["finished"] or {}
    if finished.get("width_mm") != nearest(wide) or abs(finished["width_u_mm"] - u / curtains) > 0.011:
        failed.append(f"{window['id']}: finished {finished}, not {wide} ± {u / curtains}")
    stopped = hardware["kind"] == "pole" and window["treatment"]["heading"] in ("tab", "eyelet") and any(
        curtains == 1 or abs(at - length / 2) > 50 for at in places)
    if stopped != any(f["code"] == "tab-centre-bracket" for f in figures["flags"]):
        failed.append(f"{window['id']}: tab-centre-bracket is {not stopped}, joints at {places} of {length}")


def readings_of(read):
    return [{"station": s, ("value_deg" if s.endswith("_deg") else "value_mm"): v} for s, v in read.items()]


def shaped_window(rng, name):
    shape = rng.choice(("arch", "gable"))
    lines = ("left", "centre", "right")
    below = dict(zip(lines, (rng.randint(500, 900) + rng.choice((0, 0, 4, 15)) * i for i in range(3))))
    read = {f"below.{line}": float(value) for line, value in below.items()}
    if shape == "arch":
        own, conditions, _ = any_arch(rng)
        own["opening.width.top"] = float(2 * rng.randint(math.ceil(own["arch.rise"]) + 4, 1400))
    else:
        own, conditions, _ = any_gable(rng)
        for slope in ("left", "right"):
            del own[f"gable.slope.{slope}"]
        conditions = []
    treatment = {"heading": rng.choice(("pencil-pleat", "pinch-pleat", "goblet", "box-pleat")), "top": "shaped",
                 "layout": rng.choice(("pair", "single")), "fabric": "linen",
                 "length": rng.choice(("floor", "floor", "puddle", "sill", "below-sill")),
                 "drops": rng.choice(("one", "per-line"))}
    return {"id": name, "shape": shape, "treatment": treatment, "readings": readings_of(read | own)}, (own, conditions, below)


def compare_shaped(window, case, figures, failed):
    own, conditions, below = case
    closed = adjusted(own, conditions)[0] if conditions else own
    treatment, lines = window["treatment"], ("left", "centre", "right")
    base, over = {"floor": ("floor", 10), "puddle": ("floor", -200), "sill": ("sill", 10),
                  "below-sill": ("sill", -150)}[treatment["length"]]
    heads = [own[f"opening.height.{line}"] + (below[line] if base == "floor" else 0) - over for line in lines]
    if window["shape"] == "arch":
        width, rise = own["opening.width.top"], closed["arch.rise"]
        feet = [heads[0], heads[1] - rise, heads[2]]
        if treatment["drops"] == "one":
            feet = [(min if treatment["length"] in ("floor", "sill") else max)(feet)] * 3

        def drop(x):
            half = width / 2
            low, high, share = (feet[0], feet[1], x / half) if x <= half else (feet[1], feet[2], x / half - 1)
            return low + (high - low) * share + shaping.arch_over(x, width, rise)
    else:
        width = own["opening.width.bottom"]

        def drop(x):
            return shaping.gable_over(x, width, heads[0], heads[2], own["gable.apex.along"], heads[1])
    places = [width * i / 20000 for i in range(20001)] + ([own["gable.apex.along"]] if window["shape"] == "gable" else [])
    if min(drop(0), drop(width), drop(width / 2)) <= 0:
        if figures["finished"] is not None:
            failed.append(f"{window['id']}: worked with no length at its side")
        return
    longest = max(drop(x) for x in places)
    finished = figures["finished"] or {}
    curtains = 2 if treatment["layout"] == "pair" else 1
    if finished.get("width_mm") != nearest(width / curtains) or abs(finished.get("drop_mm", 0) - longest) > 0.52:
        failed.append(f"{window['id']}: finished {finished}, not {width / curtains} by {longest}")
        return
    fullness = figures["cloth"]["flat_mm"] / (width / curtains)
    for i, top in enumerate(figures["top"]["curtains"]):
        for point in top["points"]:
            x = i * width / curtains + point["hung_mm"]
            steep = 0.03 if window["shape"] == "gable" or 20 < x < width - 20 else 0.6  # of the place's own rounding
            if abs(point["drop_mm"] - drop(min(x, width))) > steep:
                failed.append(f"{window['id']}: at {x} the drop is {point['drop_mm']}, not {drop(min(x, width))}")
            if abs(point["flat_mm"] - fullness * point["hung_mm"]) > 0.03:
                failed.append(f"{window['id']}: at {x} flat is {point['flat_mm']}")


def main(program):
    rng = random.Random(20260314)
    cases = []
    for i in range(WINDOWS):
        shape = ("bay", "bay", "corner", "arch", "gable", "gable")[i % 6]
        cases.append((shape, any_arch(rng) if shape == "arch" else any_gable(rng) if shape == "gable"
                      else any_bay(rng, shape)))
    windows = [{"id": f"{shape} {i}", "shape": shape,
                "readings": [{"station": s, ("value_deg" if s.endswith("_deg") else "value_mm"): v}
                             for s, v in case[0].items()]} for i, (shape, case) in enumerate(cases)]
    hung = [(bent_window if i % 2 else shaped_window)(rng, f"hung {i}") for i in range(HUNG)]
    windows += [window for window, _ in hung]
    document = {"format": "truehang.survey/1", "id": "shapes", "fabrics": [CLOTH],
                "rooms": [{"id": "room", "windows": windows}]}
    done = subprocess.run([program, "figures", "-"], input=json.dumps(document), capture_output=True, text=True, check=True)
    failed = []
    worked = json.loads(done.stdout)["windows"]
    for (_, case), figures in zip(cases, worked):
        compare(figures["id"], case, figures, failed)
    for (window, case), figures in zip(hung, worked[len(cases):], strict=True):
        (compare_bent if "hardware" in window else compare_shaped)(window, case, figures, failed)
    print("\n".join(failed[:20]))
    print(f"{len(worked)} windows, {len(failed)} differences")
    return 1 if failed else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1]))
