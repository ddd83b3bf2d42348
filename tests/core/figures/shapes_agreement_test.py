# SPDX-License-Identifier: Apache-2.0
"""Random bays, corners, arches and gables, adjusted by condition equations (the readings' closures) in place of unknowns.

The program solves for a figure's points; here no point is solved for: each redundant reading is one closure of the
readings, f(l) = 0, and least squares moves the readings by as little as closes it (adjustment by conditions, as in any
text on adjustment: v = -Q B' (B Q B')^-1 w, chi-square w' (B Q B')^-1 w at the solution). Derivatives are taken by
differences. Standard uncertainties are those of the trade rules, section 3.
"""

import json
import math
import random
import subprocess
import sys

EDGE_U, ANGLE_U = 2.0, 0.5


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
    """Cramer's rule, for one or two conditions."""
    if len(right) == 1:
        return [right[0] / matrix[0][0]]
    det = matrix[0][0] * matrix[1][1] - matrix[0][1] * matrix[1][0]
    return [(right[0] * matrix[1][1] - right[1] * matrix[0][1]) / det,
            (right[1] * matrix[0][0] - right[0] * matrix[1][0]) / det]


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
    u = {}
    for n in names:
        column = [weight[n] * row[n] for row in rows]
        taken = sum(c * f for c, f in zip(column, solved(normal, column)))
        u[n] = math.sqrt(max(0.0, weight[n] - taken))
    return now, chi2, u


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
    closed, chi2, u = adjusted(read, conditions)
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


def main(program):
    rng = random.Random(20260314)
    cases = []
    for i in range(240):
        shape = ("bay", "bay", "corner", "arch", "gable", "gable")[i % 6]
        cases.append((shape, any_arch(rng) if shape == "arch" else any_gable(rng) if shape == "gable"
                      else any_bay(rng, shape)))
    windows = [{"id": f"{shape} {i}", "shape": shape,
                "readings": [{"station": s, ("value_deg" if s.endswith("_deg") else "value_mm"): v}
                             for s, v in case[0].items()]} for i, (shape, case) in enumerate(cases)]
    document = {"format": "truehang.survey/1", "id": "shapes", "fabrics": [],
                "rooms": [{"id": "room", "windows": windows}]}
    done = subprocess.run([program, "figures", "-"], input=json.dumps(document), capture_output=True, text=True, check=True)
    failed = []
    for (_, case), figures in zip(cases, json.loads(done.stdout)["windows"], strict=True):
        compare(figures["id"], case, figures, failed)
    print("\n".join(failed[:20]))
    print(f"{len(cases)} windows, {len(failed)} differences")
    return 1 if failed else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1]))
