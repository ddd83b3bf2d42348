# SPDX-License-Identifier: Apache-2.0
"""Section 3 of the trade rules: networks of readings, adjusted by weighted least squares, and whether they add up.

Independent of the program: normal equations in plain Python, the chi-square quantile by bisecting the incomplete gamma
function (Abramowitz and Stegun 6.5.29 for the series, 26.4 for the distribution).
"""

import math


def inverse(matrix):
    """Gauss-Jordan with the largest pivot; None where the matrix is singular."""
    n = len(matrix)
    work = [list(row) + [1.0 if i == j else 0.0 for j in range(n)] for i, row in enumerate(matrix)]
    for column in range(n):
        pivot = max(range(column, n), key=lambda row: abs(work[row][column]))
        if abs(work[pivot][column]) < 1e-14:
            return None
        work[column], work[pivot] = work[pivot], work[column]
        scale = work[column][column]
        work[column] = [value / scale for value in work[column]]
        for row in range(n):
            if row != column and work[row][column] != 0.0:
                factor = work[row][column]
                work[row] = [a - factor * b for a, b in zip(work[row], work[column])]
    return [row[n:] for row in work]


def incomplete_gamma(a, x):
    """Regularised lower incomplete gamma function P(a, x)."""
    if x <= 0.0:
        return 0.0
    if x < a + 1.0:
        term = total = 1.0 / a
        k = a
        while abs(term) > abs(total) * 1e-16:
            k += 1.0
            term *= x / k
            total += term
        return total * math.exp(-x + a * math.log(x) - math.lgamma(a))
    b = x + 1.0 - a
    c = 1e300
    d = 1.0 / b
    h = d
    for i in range(1, 500):
        an = -i * (i - a)
        b += 2.0
        d = 1.0 / (an * d + b)
        c = b + an / c
        h *= d * c
        if abs(d * c - 1.0) < 1e-16:
            break
    return 1.0 - math.exp(-x + a * math.log(x) - math.lgamma(a)) * h


def chi_square_quantile(probability, degrees):
    low, high = 0.0, 1000.0 + 10.0 * degrees
    for _ in range(200):
        middle = (low + high) / 2.0
        if incomplete_gamma(degrees / 2.0, middle / 2.0) < probability:
            low = middle
        else:
            high = middle
    return (low + high) / 2.0


class Size:
    """An adjusted difference: value, standard uncertainty, and the stations it leans on (with their `how`)."""

    def __init__(self, mm, u, leans):
        self.mm, self.u, self.leans = mm, u, leans

    def rests_on(self):
        return sorted({station for station, how in self.leans if how != "measured"})


class Levelling:
    """A network of marks on one line or several: every observation is `value = upper - lower`."""

    def __init__(self, observations):
        # observations: dicts with lower, upper, value, u, station, how
        self.parts = []
        self.place = {}
        self._join(observations)
        for part in self.parts:
            self._solve(part)

    def _join(self, observations):
        parent = {}

        def root(mark):
            parent.setdefault(mark, mark)
            while parent[mark] != mark:
                mark = parent[mark]
            return mark

        taken = []
        for independent in (True, False):  # proposed and copied readings only where they close no loop
            for o in observations:
                if (o["how"] not in ("proposed", "copied")) != independent:
                    continue
                a, b = root(o["lower"]), root(o["upper"])
                if not independent and a == b:
                    continue
                parent[a] = b
                taken.append(o)
        groups = {}
        for o in taken:
            groups.setdefault(root(o["lower"]), []).append(o)
        self.parts = [{"observations": list(group)} for group in groups.values()]

    def _solve(self, part):
        marks = []
        for o in part["observations"]:
            for mark in (o["lower"], o["upper"]):
                if mark not in marks:
                    marks.append(mark)
        part["marks"] = marks
        for mark in marks:
            self.place[mark] = part
        index = {mark: i - 1 for i, mark in enumerate(marks)}  # the first mark is the datum
        n = len(marks) - 1
        normal = [[0.0] * n for _ in range(n)]
        rows = []
        for o in part["observations"]:
            row = [0.0] * n
            if index[o["upper"]] >= 0:
                row[index[o["upper"]]] += 1.0
            if index[o["lower"]] >= 0:
                row[index[o["lower"]]] -= 1.0
            rows.append(row)
            weight = 1.0 / o["u"] ** 2
            for i in range(n):
                for j in range(n):
                    normal[i][j] += weight * row[i] * row[j]
        cov = inverse(normal)
        gains = [[sum(cov[i][j] * row[j] for j in range(n)) / o["u"] ** 2
                  for o, row in zip(part["observations"], rows)] for i in range(n)]
        heights = [sum(g * o["value"] for g, o in zip(gain, part["observations"])) for gain in gains]
        part.update(index=index, cov=cov, gains=gains, heights=heights)
        part["redundancy"] = len(rows) - n
        part["chi2"] = sum(((o["value"] - sum(a * h for a, h in zip(row, heights))) / o["u"]) ** 2
                           for o, row in zip(part["observations"], rows))

    def difference(self, lower, upper):
        """upper - lower as a Size, or None where the two marks aren't tied."""
        part = self.place.get(lower)
        if part is None or self.place.get(upper) is not part:
            return None
        n = len(part["marks"]) - 1
        vector = [0.0] * n
        if part["index"][upper] >= 0:
            vector[part["index"][upper]] += 1.0
        if part["index"][lower] >= 0:
            vector[part["index"][lower]] -= 1.0
        mm = sum(v * h for v, h in zip(vector, part["heights"]))
        variance = sum(vector[i] * part["cov"][i][j] * vector[j] for i in range(n) for j in range(n))
        leans = [(o["station"], o["how"]) for k, o in enumerate(part["observations"])
                 if abs(sum(vector[i] * part["gains"][i][k] for i in range(n))) > 1e-9]
        return Size(mm, math.sqrt(max(0.0, variance)), leans)


SIDES = ("bottom", "left", "right", "top", "rising", "falling")


def _distances(p):
    """Of the quadrilateral bottom-left (0, 0), bottom-right (w, 0), top-left (x, y), top-right (s, t)."""
    w, x, y, s, t = p
    return [w, math.hypot(x, y), math.hypot(s - w, t), math.hypot(s - x, t - y), math.hypot(s, t),
            math.hypot(x - w, y)]


def _gradients(p):
    w, x, y, s, t = p
    left, right, top = math.hypot(x, y), math.hypot(s - w, t), math.hypot(s - x, t - y)
    rising, falling = math.hypot(s, t), math.hypot(x - w, y)
    return [[1.0, 0.0, 0.0, 0.0, 0.0],
            [0.0, x / left, y / left, 0.0, 0.0],
            [-(s - w) / right, 0.0, 0.0, (s - w) / right, t / right],
            [0.0, -(s - x) / top, -(t - y) / top, (s - x) / top, (t - y) / top],
            [0.0, 0.0, 0.0, s / rising, t / rising],
            [-(x - w) / falling, (x - w) / falling, y / falling, 0.0, 0.0]]


def adjust_opening(values, us):
    """Four sides and two diagonals (None: not taken): adjusted lengths with u of all six, redundancy, chi2.

    Gauss-Newton from a true rectangle; None where fewer than five are there or they can't be solved."""
    used = [i for i, value in enumerate(values) if value is not None]
    if len(used) < 5:
        return None
    known = dict(zip(SIDES, values))
    w = known["bottom"] or known["top"]
    h = known["left"] or known["right"]
    top = known["top"] or w
    right = known["right"] or h
    if not w or not h or not top or not right:
        return None
    p = [w, (w - top) / 2.0, h, (w + top) / 2.0, right]
    for _ in range(100):
        model, jacobian = _distances(p), _gradients(p)
        normal = [[sum(jacobian[i][a] * jacobian[i][b] / us[i] ** 2 for i in used) for b in range(5)] for a in range(5)]
        right_side = [sum(jacobian[i][a] * (values[i] - model[i]) / us[i] ** 2 for i in used) for a in range(5)]
        cov = inverse(normal)
        if cov is None:
            return None
        step = [sum(cov[a][b] * right_side[b] for b in range(5)) for a in range(5)]
        p = [value + change for value, change in zip(p, step)]
        if any(not math.isfinite(value) or abs(value) > 1e7 for value in p):
            return None
        if max(abs(change) for change in step) < 1e-9:
            break
    else:
        return None
    model, jacobian = _distances(p), _gradients(p)
    out = [math.sqrt(sum(jacobian[i][a] * cov[a][b] * jacobian[i][b] for a in range(5) for b in range(5)))
           for i in range(6)]
    chi2 = sum(((values[i] - model[i]) / us[i]) ** 2 for i in used)
    return {"mm": dict(zip(SIDES, model)), "u": dict(zip(SIDES, out)), "redundancy": len(used) - 5, "chi2": chi2}
