# SPDX-License-Identifier: Apache-2.0
"""The least cloth for a house as an integer programme of its own, solved by CBC: it shares nothing with the planner.

Positions are let go. What counts in a clean stretch is how many runs of each kind lie wholly in it, how many pieces of a
run that goes on over a flaw, and which piece comes last: a piece of a straight repeat takes whole repeats, the last of a
stretch only its length. First the fewest rooms over several lots, then the least cloth by the rule of docs/rolls.md:
up to the last cut, less useful remnants that end at a flaw or a join, and all of the roll where none after it is useful.
All windows must be cut. Lengths are whole millimetres. Half-drops and loose pieces are not written here.
"""
import collections
import pathlib
import subprocess
import tempfile


def stretches_of(roll, repeat):
    """(from, to, first) by stretch: `first` is where the first piece can begin."""
    blocks = sorted([(flaw["from_mm"], flaw["to_mm"]) for flaw in roll["flaws"]]
                    + [(join["at_mm"], join["at_mm"]) for join in roll["joins"]])
    found, at = [], 0
    for begin, end in blocks + [(roll["length_mm"], roll["length_mm"])]:
        if begin > at:
            first = at + (roll["phase_mm"] - at) % repeat if repeat else at
            found.append((at, begin, first))
        at = max(at, end)
    return found


class Programme:
    def __init__(self, pieces, rolls, repeat, useful):
        """`pieces`: (window, room, run, length); a run’s pieces are alike."""
        self.rows, self.binary, self.whole, self.aim = [], [], [], collections.Counter()
        self.repeat, self.useful, self.rolls = repeat, useful, rolls
        self.lots = sorted({roll["lot"] for roll in rolls})
        self.rooms = {window: room for window, room, _, _ in pieces}
        runs = collections.Counter((window, run, length) for window, _, run, length in pieces)
        # Runs that are alike are counted together: of one window, or of the house where there is but one lot.
        self.kinds = collections.Counter()
        for (window, _, length), count in runs.items():
            self.kinds[(window if len(self.lots) > 1 else "", length, count)] += 1
        self.kinds = list(self.kinds.items())
        self.cut_by_lot = [[collections.Counter() for _ in self.lots] for _ in self.kinds]
        for number, roll in enumerate(rolls):
            self.write_roll(number, roll)
        self.write_lots()

    def row(self, terms, bound):
        """The sum of `terms` is at most `bound`."""
        self.rows.append((terms, bound))

    def equal(self, terms, value):
        self.row(terms, value)
        self.row({name: -times for name, times in terms.items()}, -value)

    def new(self, name, kind):
        kind.append(name)
        return name

    def room_of(self, length):
        return -(-length // self.repeat) * self.repeat if self.repeat else length

    def write_roll(self, r, roll):
        places = stretches_of(roll, self.repeat)
        # What is taken in each stretch from `first` on, as a sum of terms; the last piece gives back its overhang.
        taken = [collections.Counter() for _ in places]
        self.count_in = [collections.Counter() for _ in places]
        last = [[self.new(f"last_{k}_{r}_{s}", self.binary) for k in range(len(self.kinds))] for s in range(len(places))]
        across = collections.defaultdict(list)  # by stretch: (kind, takes part, pieces in it, is its last stretch)
        whole = [[self.new(f"whole_{k}_{r}_{s}", self.whole) for k in range(len(self.kinds))] for s in range(len(places))]
        over = [collections.Counter() for _ in places]    # runs that go over the end of a stretch
        within = [collections.Counter() for _ in places]  # runs that fill it and go on at both ends
        for k, ((_, length, count), runs) in enumerate(self.kinds):
            lot = self.cut_by_lot[k][self.lots.index(roll["lot"])]
            for s in range(len(places)):
                lot[whole[s][k]] += 1
                taken[s][whole[s][k]] += count * self.room_of(length)
                self.row({whole[s][k]: 1}, runs)
            for i in range(len(places)):
                for j in range(i + 1, len(places)):
                    self.write_across(r, k, i, j, lot, taken, over, within, across)
        for s, (begin, end, first) in enumerate(places):
            self.write_last(r, s, last, whole, across, taken)
            self.row(over[s], 1)
            for k, (_, runs) in enumerate(self.kinds):
                self.row({whole[s][k]: 1, **{name: runs for name in within[s]}}, runs)
        self.write_used(r, roll, places, taken)

    def write_across(self, r, k, i, j, lot, taken, over, within, across):
        """A run of kind k that begins in stretch i and ends in j."""
        (_, length, count), _ = self.kinds[k]
        if count < 2:
            return
        part = self.new(f"over_{k}_{r}_{i}_{j}", self.binary)
        lot[part] += 1
        in_all = {part: -count}
        for s in range(i, j + 1):
            in_it = self.new(f"of_{k}_{r}_{i}_{j}_{s}", self.whole)
            in_all[in_it] = 1
            self.row({in_it: 1, part: -count}, 0)
            if s in (i, j):
                self.row({part: 1, in_it: -1}, 0)
            taken[s][in_it] += self.room_of(length)
            across[s].append((k, part, in_it, s == j))
            if s < j:
                over[s][part] += 1
            if i < s < j:
                within[s][part] += 1
        self.equal(in_all, 0)

    def write_last(self, r, s, last, whole, across, taken):
        """At most one piece is the last of a stretch: of a run that goes on, else of one that lies in it, else of one
        that ends in it where nothing else lies in it."""
        self.row({name: 1 for name in last[s]}, 1)
        goes_on = collections.Counter(part for _, part, _, ends in across[s] if not ends)
        for k, ((_, length, _), runs) in enumerate(self.kinds):
            taken[s][last[s][k]] -= self.room_of(length) - length
            here = {last[s][k]: 1, whole[s][k]: -1}
            for kind, _, in_it, _ in across[s]:
                if kind == k:
                    here[in_it] = -1
            self.row(here, 0)
            own_goes_on = {part for kind, part, _, ends in across[s] if kind == k and not ends}
            self.row({last[s][k]: 1, **{part: 1 for part in goes_on if part not in own_goes_on}}, 1)
            ends_here = {part for kind, part, _, ends in across[s] if kind == k and ends}
            # Its last piece can be that of a run ending here only where no whole run lies behind it.
            for other, (_, others) in enumerate(self.kinds):
                if other != k and ends_here:
                    name = f"alone_{k}_{r}_{s}"
                    if name not in self.binary:
                        self.new(name, self.binary)
                        own = {last[s][k]: 1, name: -1, whole[s][k]: -1}
                        own.update({part: -1 for part in own_goes_on})
                        self.row(own, 0)
                    self.row({whole[s][other]: 1, name: others}, others)

    def write_used(self, r, roll, places, taken):
        length = roll["length_mm"]
        cut = self.new(f"cut_{r}", self.binary)
        ends = [self.new(f"stop_{r}_{s}", self.binary) for s in range(len(places))]
        self.equal({cut: -1, **{name: 1 for name in ends}}, 0)
        tail, saved = self.new(f"tail_{r}", self.binary), f"saved_{r}"
        useful_after = {tail: 1}
        together = collections.Counter({saved: 1, cut: -length})
        for s, (begin, end, first) in enumerate(places):
            clean = end - begin
            # What lies in it begins at `first`; an empty stretch keeps that too.
            holds = self.new(f"holds_{r}_{s}", self.binary)
            self.row({**taken[s], holds: -max(0, end - first)}, 0)
            self.row({holds: 1, **{name: -1 for name in ends[s:]}}, 0)
            fill = collections.Counter(taken[s])
            fill[holds] += first - begin
            together.update(fill)
            gap, counts, last_gap = f"gap_{r}_{s}", self.new(f"counts_{r}_{s}", self.binary), f"lastgap_{r}_{s}"
            self.row({**fill, gap: 1}, clean)
            self.row({gap: 1, counts: -clean}, 0)
            self.row({gap: 1, **{name: -clean for name in ends[s + 1:]}}, 0)
            self.row({**fill, counts: self.useful}, clean) if clean >= self.useful else self.row({counts: 1}, 0)
            together[gap] += 1
            self.aim[gap] -= 1
            self.new(last_gap, self.binary)
            self.row({last_gap: 1, counts: -1}, 0)
            self.row({last_gap: 1, ends[s]: -1}, 0)
            useful_after[last_gap] = -1
            if any(to - at >= self.useful for at, to, _ in places[s + 1:]):
                useful_after[ends[s]] = -1
            self.row({**fill, saved: 1, ends[s]: length}, 2 * length - begin)
        self.row({saved: 1, tail: -length}, 0)
        self.row(useful_after, 0)
        self.row(together, 0)
        self.aim[cut] += length
        self.aim[saved] -= 1

    def write_lots(self):
        from_lot = {(window, lot): self.new(f"from_{w}_{lot}", self.binary)
                    for w, window in enumerate(self.rooms) for lot in range(len(self.lots))}
        for window in self.rooms:
            self.equal({from_lot[window, lot]: 1 for lot in range(len(self.lots))}, 1)
        for k, ((window, _, _), runs) in enumerate(self.kinds):
            for lot in range(len(self.lots)):
                terms = dict(self.cut_by_lot[k][lot])
                if len(self.lots) > 1:
                    terms[from_lot[window, lot]] = -runs
                    self.equal(terms, 0)
                else:
                    self.equal(terms, runs)
        self.dear = sum(roll["length_mm"] for roll in self.rolls) + 1
        for number, room in enumerate(sorted(set(self.rooms.values()))):
            split = self.new(f"split_{number}", self.binary)
            self.aim[split] += self.dear
            taken_from = [self.new(f"room_{number}_{lot}", self.binary) for lot in range(len(self.lots))]
            for window, of in self.rooms.items():
                if of == room:
                    for lot in range(len(self.lots)):
                        self.row({from_lot[window, lot]: 1, taken_from[lot]: -1}, 0)
            self.row({split: 1 - len(self.lots), **{name: 1 for name in taken_from}}, 1)

    def text(self):
        def terms(of):
            return "\n ".join(f"{times:+d} {name}" for name, times in of.items() if times) or "0 cut_0"
        lines = ["Minimize", " aim: " + terms(self.aim), "Subject To"]
        lines += [f" r{i}: {terms(of)} <= {bound:d}" for i, (of, bound) in enumerate(self.rows) if any(of.values())]
        lines += ["Binary", *self.binary, "General", *self.whole, "End", ""]
        return "\n".join(lines)

    def solve(self, seconds, preprocess="on"):
        """("proved", split rooms, mm used), ("impossible", 0, 0), or ("unsettled", 0, 0). CBC 2.10.8's least can be
        too high by up to a thousandth: for house 138 it says 63,450 with its preprocessing and 63,436 without."""
        with tempfile.TemporaryDirectory() as folder:
            model, answer = pathlib.Path(folder, "model.lp"), pathlib.Path(folder, "answer")
            model.write_text(self.text(), encoding="utf-8")
            # The aim is a whole number of millimetres: nearer than 0.9 is the least.
            command = ["cbc", str(model), "-seconds", str(seconds), "-ratioGap", "0", "-allowableGap", "0.9",
                       "-preprocess", preprocess, "-solve", "-solution", str(answer)]
            try:
                subprocess.run(command, capture_output=True, text=True, check=True, timeout=4 * seconds + 60)
            except subprocess.TimeoutExpired:
                return "unsettled", 0, 0  # its seconds are the processor's, and others had it
            head, *lines = answer.read_text(encoding="utf-8").splitlines()
        if head.startswith("Infeasible") or head.startswith("Integer infeasible"):
            return "impossible", 0, 0
        if not head.startswith("Optimal"):
            return "unsettled", 0, 0
        levels = {line.replace("**", "").split()[1]: float(line.replace("**", "").split()[2]) for line in lines}
        used = round(sum(times * levels.get(name, 0.0) for name, times in self.aim.items()))
        return "proved", used // self.dear, used % self.dear
