# SPDX-License-Identifier: Apache-2.0
"""The command that plans rolls: its document passes its schema, and what is malformed is refused with its place.

    plan_command_test.py PROGRAM
"""

import copy
import json
import os
import subprocess
import sys
import tempfile

from jsonschema import Draft202012Validator

ROOT = os.path.join(os.path.dirname(os.path.abspath(__file__)), "..", "..", "..")


def load(*path):
    with open(os.path.join(ROOT, *path), encoding="utf-8") as file:
        return json.load(file)


SURVEY = os.path.join(ROOT, "tests", "reference", "contract", "survey.example.json")
EXAMPLE = load("tests", "reference", "contract", "survey.example.json")
FIGURES = load("tests", "reference", "contract", "figures.example.json")
ROLLS_SCHEMA = load("survey-core", "document", "schema", "rolls.schema.json")
PLAN_SCHEMA = load("survey-core", "document", "schema", "rollplan.schema.json")
SOUND = {
    "format": "truehang.rolls/1", "survey": EXAMPLE["id"], "useful_mm": 800,
    "fabrics": [{"fabric": fabric["id"], "rolls": [
        {"id": "r1", "lot": "7", "length_mm": 28000, "phase_mm": 40, "flaws": [{"from_mm": 2000, "to_mm": 2100}, {"at_mm": 9000}],
         "joins": [{"at_mm": 12000, "phase_mm": 12050}]},
        {"id": "r2", "lot": "8", "length_mm": 4000, "from_a_newer_version": True}]} for fabric in EXAMPLE["fabrics"]],
}


def run(program, rolls):
    with tempfile.NamedTemporaryFile("w", suffix=".json", encoding="utf-8") as file:
        file.write(rolls if isinstance(rolls, str) else json.dumps(rolls))
        file.flush()
        return subprocess.run([program, "plan", SURVEY, file.name], capture_output=True, text=True, check=False)


def changed(pointer, value):
    document = copy.deepcopy(SOUND)
    holder = document
    steps = pointer.split("/")[1:]
    for step in steps[:-1]:
        holder = holder[int(step)] if isinstance(holder, list) else holder[step]
    holder[int(steps[-1]) if isinstance(holder, list) else steps[-1]] = value
    return document


ROLL = "/fabrics/0/rolls/0"
# What is set where, the pointer of its fault, and whether a schema can see it.
MALFORMED = [
    ("/format", "truehang.rolls/2", "/format", True), ("/survey", "another", "/survey", False),
    ("/useful_mm", 0, "/useful_mm", True), ("/fabrics/0/fabric", "never seen", "/fabrics/0/fabric", False),
    ("/fabrics/0/rolls/1/id", "r1", "/fabrics/0/rolls/1/id", False), (ROLL + "/length_mm", 0, ROLL + "/length_mm", True),
    (ROLL + "/length_mm", "long", ROLL + "/length_mm", True), (ROLL + "/flaws/0/to_mm", 1999, ROLL + "/flaws/0/to_mm", False),
    (ROLL + "/flaws/0/at_mm", 5, ROLL + "/flaws/0/at_mm", True), (ROLL + "/flaws/1", {}, ROLL + "/flaws/1/from_mm", True),
    (ROLL + "/flaws/1/at_mm", 28001, ROLL + "/flaws/1/at_mm", False), (ROLL + "/joins/0/at_mm", 28001, ROLL + "/joins/0/at_mm", False),
    ("/fabrics/0/rolls", None, "/fabrics/0/rolls", True),
]


def main(program):
    faults = []

    def require(holds, what):
        if not holds:
            faults.append(what)

    valid = Draft202012Validator(ROLLS_SCHEMA).is_valid
    Draft202012Validator.check_schema(ROLLS_SCHEMA)
    Draft202012Validator.check_schema(PLAN_SCHEMA)
    require(valid(SOUND), "the sound document fails its schema")
    answer = run(program, SOUND)
    require(answer.returncode == 0 and answer.stderr == "", f"a sound document: {answer.returncode} {answer.stderr}")
    require(": -0" not in answer.stdout, "a zero with a sign")
    plan = json.loads(answer.stdout)
    faults += [f"plan: {list(fault.absolute_path)} {fault.message}" for fault in Draft202012Validator(PLAN_SCHEMA).iter_errors(plan)]
    # The contract's example is cut whole: as many pieces of each fabric as its orders count, the half repeat aside.
    require(plan["short_windows"] == [], "the example is short")
    for fabric in plan["fabrics"]:
        order = next(order for order in FIGURES["orders"] if order["fabric"] == fabric["fabric"])
        count = sum(cut["count"] for cut in order["cuts"] if cut["what"] != "half repeat")
        cuts = [cut for roll in fabric["rolls"] for cut in roll["cuts"]]
        require(len(cuts) == count == len(fabric["pieces"]), f"{fabric['fabric']}: {len(cuts)} cuts, {count} ordered")
        require(fabric["count_first"][:1] == ["r1"], f"{fabric['fabric']}: 28 m aren't counted first")
    for pointer, value, where, schema_sees in MALFORMED:
        document = changed(pointer, value)
        answer = run(program, document)
        require(answer.returncode == 2 and answer.stdout == "" and any(
            line.startswith(f'"{where}": ') for line in answer.stderr.splitlines()),
            f"{pointer} = {value}: {answer.returncode} {answer.stderr}")
        require(valid(document) != schema_sees, f"{pointer} = {value}: the schema {'passes' if schema_sees else 'fails'} it")
    for text in ("", "[]", "{", '{"format": "truehang.rolls/1", "format": "truehang.rolls/1"}'):
        require(run(program, text).returncode == 2, f"{text!r} is taken")
    print("\n".join(faults) if faults else f"{len(MALFORMED) + 5} documents, 0 faults")
    return 1 if faults else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1]))
