#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""compare.py PROGRAM: the plans of `truehang-workroom plan` for random houses against an integer programme of their own.

Fails where a plan takes more than 1 % above a proved least, the median above it isn't 0, a room is split or a window left
out that needn't be, or a plan or its bound contradicts the proof. A house whose programme isn't solved in its time says
nothing, and is counted as that.
"""
import argparse
import json
import pathlib
import statistics
import subprocess
import sys
import tempfile

from houses import house, rolls_of
from programme import Programme


def plan(program, survey, rolls):
    with tempfile.TemporaryDirectory() as folder:
        paths = [pathlib.Path(folder, name) for name in ("survey.json", "rolls.json")]
        for path, document in zip(paths, (survey, rolls)):
            path.write_text(json.dumps(document), encoding="utf-8")
        answer = subprocess.run([program, "plan", *map(str, paths)], capture_output=True, text=True, check=False)
    if answer.returncode:
        raise SystemExit(f"the plan was refused: {answer.stderr}")
    return json.loads(answer.stdout)


def pieces_of(document, survey):
    rooms = {window["id"]: room["id"] for room in survey["rooms"] for window in room["windows"]}
    pieces = []
    for piece in document["fabrics"][0]["pieces"]:
        length = round(piece["length_mm"])
        # The programme knows whole millimetres, one cloth of drops, and no half-drop.
        assert length == piece["length_mm"] and piece["what"] == "drops" and not piece["phase_mm"], piece
        pieces.append((piece["window"], rooms[piece["window"]], (piece.get("layer"), piece["curtain"]), length))
    return pieces


class Comparison:
    def __init__(self, options):
        self.options, self.gaps, self.unsettled, self.faults = options, [], 0, []
        self.cuts, self.refuted = 0, []

    def one(self, seed):
        rng, survey, repeat = house(seed, self.options.windows)
        nothing = {"format": "truehang.rolls/1", "survey": survey["id"], "useful_mm": 1000, "fabrics": [
            {"fabric": survey["fabrics"][0]["id"], "rolls": [{"id": "r", "lot": "a", "length_mm": 1000}]}]}
        pieces = pieces_of(plan(self.options.program, survey, nothing), survey)
        asked = sum(-(-length // repeat) * repeat if repeat else length for *_, length in pieces)
        rolls = rolls_of(rng, survey, asked, repeat)
        answer = plan(self.options.program, survey, rolls)["fabrics"][0]
        came = rolls["fabrics"][0]["rolls"]
        programme = Programme(pieces, came, repeat, rolls["useful_mm"])
        found, split, least = programme.solve(self.options.seconds)
        planned = len(answer["split_rooms"]), answer["used_mm"]
        if found == "proved" and not answer["not_placed"] and planned < (split, least - 0.5):
            self.refuted.append(seed)
            found, split, least = programme.solve(self.options.seconds, "off")
        said = f"house {seed}: {len(pieces)} cuts, {len(came)} rolls, repeat {repeat}: {found}"
        self.cuts += len(pieces)
        if found == "unsettled":
            self.unsettled += 1
        elif found == "impossible":
            self.require(answer["not_placed"], seed, "all is cut, though that is impossible")
        elif self.require(not answer["not_placed"], seed, "windows are left out that fit"):
            self.against(seed, answer, split, least)
            said += f", least {least}, planned {answer['used_mm']:g}, its own bound {answer['gap_pct']:.2f} % below"
        print(said, flush=True)

    def against(self, seed, answer, split, least):
        splits = len(answer["split_rooms"])
        self.require(splits >= split, seed, "fewer rooms are split than the proof allows")
        if not self.require(splits == split, seed, f"{splits} rooms are split instead of {split}"):
            return
        self.require(answer["used_mm"] >= least - 0.5, seed, f"{answer['used_mm']} used is below the proved {least}")
        self.require(answer["least_mm"] <= least + 0.5, seed, f"the bound {answer['least_mm']} is above the least {least}")
        self.gaps.append(100.0 * (answer["used_mm"] - least) / least)
        self.require(self.gaps[-1] <= 1.0, seed, f"{self.gaps[-1]:.2f} % above the least, {least}")

    def require(self, holds, seed, what):
        if not holds:
            self.faults.append(f"house {seed}: {what}")
        return bool(holds)

    def result(self):
        proved = len(self.gaps)
        print(f"{self.options.houses} houses, {self.cuts} cuts: {proved} compared with a proved least, "
              f"{self.unsettled} not settled in {self.options.seconds} s")
        if self.refuted:
            print(f"proofs that a plan refuted, solved again without preprocessing: houses {self.refuted}")
        if proved:
            print(f"above the least: median {statistics.median(self.gaps):.3f} %, worst {max(self.gaps):.3f} %, "
                  f"{sum(gap > 1e-6 for gap in self.gaps)} houses above it")
        if not proved or statistics.median(self.gaps) > 1e-6:
            self.faults.append("no house was proved" if not proved else "the median is above the least")
        print("\n".join(self.faults))
        return 1 if self.faults else 0


def main():
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("program")
    parser.add_argument("--houses", type=int, default=200)
    parser.add_argument("--first", type=int, default=1, help="seed of the first house")
    parser.add_argument("--windows", type=int, default=12, help="at most so many in a house")
    parser.add_argument("--seconds", type=int, default=60, help="for each house")
    options = parser.parse_args()
    comparison = Comparison(options)
    for seed in range(options.first, options.first + options.houses):
        comparison.one(seed)
    return comparison.result()


if __name__ == "__main__":
    sys.exit(main())
