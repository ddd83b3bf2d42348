# SPDX-License-Identifier: Apache-2.0
"""What the contract calls malformed is refused whole, each fault with its place; what it calls not understood isn't.

    malformed_test.py PROGRAM

Every case is the contract's example with one thing changed. A fault's line begins with its JSON pointer (RFC 6901) in
double quotes: `"/rooms/0/windows/0/shape": text`.
"""

import copy
import json
import os
import re
import subprocess
import sys

REFERENCE = os.path.join(os.path.dirname(os.path.abspath(__file__)), "..", "..", "reference")
with open(os.path.join(REFERENCE, "contract", "survey.example.json"), encoding="utf-8") as file:
    EXAMPLE = json.load(file)
WINDOW = "/rooms/0/windows/0"
LINE = re.compile(r'^"((?:/(?:[^~/]|~[01])*)*)": \S')


def place(document, pointer):
    """The object or list that holds the pointer's last step, and that step."""
    steps = pointer.split("/")[1:]
    for step in steps[:-1]:
        document = document[int(step)] if isinstance(document, list) else document[step]
    return document, int(steps[-1]) if isinstance(document, list) else steps[-1]


def setting(pointer, value):
    document = copy.deepcopy(EXAMPLE)
    holder, step = place(document, pointer)
    holder[step] = value
    return document


def without(pointer):
    document = copy.deepcopy(EXAMPLE)
    holder, step = place(document, pointer)
    del holder[step]
    return document


def twice(pointer):
    """One entry of a list again, with the same id."""
    document = copy.deepcopy(EXAMPLE)
    holder, step = place(document, pointer)
    holder.append(copy.deepcopy(holder[step]))
    return document, pointer.rsplit("/", 1)[0] + f"/{len(holder) - 1}"


def raw(document):
    return document if isinstance(document, bytes) else json.dumps(document).encode()


def malformed_cases():
    """(what, bytes, pointers any one of which must be named)."""
    cases = []

    def changed(what, pointer, value):
        cases.append((what, raw(setting(pointer, value)), [pointer]))
    text = json.dumps(EXAMPLE)
    # Where the text stops being JSON: the whole, or the place that reading had come to.
    cases.append(("not JSON", b"{ \"format\": ", ["", "/format"]))
    cases.append(("nothing at all", b"", [""]))
    cases.append(("text after the document", text.encode() + b" and more", [""]))
    cases.append(("not UTF-8", text.replace("Oduya", "Od\xfcya").encode("latin-1"), ["", "/client/name"]))
    nest = ["/from_a_newer_phone" + "/0" * depth for depth in range(101)]  # the whole, or any place down the nest
    cases.append(("nested deeper than 100", raw(EXAMPLE | {"from_a_newer_phone": json.loads("[" * 100 + "]" * 100)}),
                  [""] + nest))
    cases.append(("larger than 4 MiB", raw(EXAMPLE | {"notes": "x" * (4 * 1024 * 1024)}), [""]))
    cases.append(("a list, not an object", b"[]", [""]))
    changed("another format", "/format", "truehang.figures/1")
    changed("another major version", "/format", "truehang.survey/2")
    for pointer in ("/format", "/id", "/fabrics", "/rooms", "/fabrics/0/id", "/fabrics/1/width_mm", WINDOW + "/id",
                    WINDOW + "/shape", WINDOW + "/readings", WINDOW + "/readings/0/station", WINDOW + "/readings/0/value_mm"):
        cases.append((pointer + " is missing", raw(without(pointer)), [pointer, pointer.rsplit("/", 1)[0]]))
    changed("rooms is an object", "/rooms", {})
    changed("a width is text", "/fabrics/0/width_mm", "1400")
    changed("a reading is text", WINDOW + "/readings/3/value_mm", "1130")
    changed("young_children is a number", "/rooms/0/young_children", 1)
    changed("brackets is a fraction", WINDOW + "/hardware/brackets", 2.5)
    changed("title is null", "/title", None)
    changed("a reading below 0", WINDOW + "/readings/6/value_mm", -1)
    changed("a reading above 100 m", WINDOW + "/readings/6/value_mm", 100001)
    changed("shrinkage above 50", "/fabrics/0/shrinkage_pct", 51)
    changed("shrinkage below 0", "/fabrics/0/shrinkage_pct", -0.5)
    changed("latitude 91", "/site/latitude", 91)
    changed("longitude -181", "/site/longitude", -181)
    changed("bearing 360", WINDOW + "/bearing_deg", 360)
    changed("bearing below 0", WINDOW + "/bearing_deg", -0.1)
    changed("a pole longer than 100 m", WINDOW + "/hardware/length_mm", 1e9)
    cases.append(("no cloth between the selvedges", raw(setting("/fabrics/1/selvedge_mm", 685)),
                  ["/fabrics/1/selvedge_mm", "/fabrics/1/width_mm", "/fabrics/1"]))
    cases.append(("a number that isn't finite", text.replace('"value_mm": 1242', '"value_mm": 1e999').encode(),
                  ["", WINDOW + "/readings/0/value_mm"]))
    cases.append(("NaN", text.replace('"value_mm": 1242', '"value_mm": NaN').encode(),
                  ["", WINDOW + "/readings/0/value_mm"]))
    changed("a time that can't be read", "/measured_at", "yesterday")
    changed("a time without an offset", WINDOW + "/readings/0/taken_at", "2026-03-14T10:22:10")
    changed("a thirteenth month", "/signed_off/at", "2026-13-14T10:22:10+00:00")
    for pointer in ("/fabrics/0", "/rooms/0", WINDOW, WINDOW + "/readings/0", WINDOW + "/obstructions/0"):
        document, second = twice(pointer)
        cases.append((f"{pointer} twice", raw(document), [second, second + "/id", pointer + "/id", pointer.rsplit("/", 1)[0]]))
    for role in ("fabric", "lining", "interlining"):
        changed(f"a {role} that isn't there", f"{WINDOW}/treatment/{role}", "velvet")
    return cases


def run(program, data):
    return subprocess.run([program, "figures", "-"], input=data, capture_output=True, timeout=60)


def faults_of(done):
    return [line for line in done.stderr.decode("utf-8", "replace").split("\n") if line]


def check_malformed(program, failed):
    cases = malformed_cases()
    for what, data, pointers in cases:
        done = run(program, data)
        lines = faults_of(done)
        said = [match.group(1) for match in map(LINE.match, lines) if match]
        if done.returncode != 2:
            failed.append(f"{what}: exit {done.returncode}, not 2")
        elif done.stdout:
            failed.append(f"{what}: standard output isn't empty")
        elif not lines or len(said) != len(lines):
            failed.append(f"{what}: a line doesn't begin with a pointer: {lines[:3]}")
        elif not set(said) & set(pointers):
            failed.append(f"{what}: none of {pointers} named, but {said[:4]}")
    return len(cases)


def check_all_in_one(program, failed):
    """Several faults come in one answer, a line each."""
    document = setting("/fabrics/0/width_mm", -3)
    document["rooms"][0]["windows"][0]["readings"][2]["value_mm"] = "x"
    document["site"]["latitude"] = 123
    said = [match.group(1) for match in map(LINE.match, faults_of(run(program, raw(document)))) if match]
    for pointer in ("/fabrics/0/width_mm", WINDOW + "/readings/2/value_mm", "/site/latitude"):
        if pointer not in said:
            failed.append(f"three faults at once: {pointer} isn't named, only {said}")


def check_not_understood(program, failed):
    """An unknown word stops its own window and no other."""
    places = ["/shape", "/readings/0/station", "/readings/0/how", "/readings/0/stage", "/obstructions/0/kind",
              "/hardware/kind", "/hardware/supply", "/hardware/hang", "/treatment/heading", "/treatment/layout",
              "/treatment/length", "/treatment/fit"]
    drop = json.loads(run(program, raw(EXAMPLE)).stdout)["windows"][0]["finished"]
    for pointer in places:
        document = copy.deepcopy(EXAMPLE)
        windows = document["rooms"][0]["windows"]
        windows.append(copy.deepcopy(windows[0]))
        windows[1]["id"] = "parlour-north"
        holder, step = place(windows[0], pointer)
        holder[step] = "porthole-like"
        done = run(program, raw(document))
        if done.returncode != 0 or done.stderr:
            failed.append(f"unknown word at {pointer}: exit {done.returncode}, {faults_of(done)[:2]}")
            continue
        odd, other = json.loads(done.stdout)["windows"]
        flags = [f for f in odd["flags"] if f["code"] == "not-understood"]
        if not flags or flags[0]["severity"] != "stop" or "porthole-like" not in json.dumps(flags):
            failed.append(f"unknown word at {pointer}: no stop flag that names it: {flags}")
        if any(f["code"] == "not-understood" for f in other["flags"]) or other["finished"] != drop:
            failed.append(f"unknown word at {pointer}: the other window isn't worked as before")
    document = setting("/rules/swag_share", 0.2)  # the contract counts a rule among the words
    windows = json.loads(run(program, raw(document)).stdout)["windows"]
    if not any(f["code"] == "not-understood" and "swag_share" in f["text"] for f in windows[0]["flags"]):
        failed.append("an unknown house rule: no flag that names it")
    for shape in ("bay", "arch", "gable", "corner"):  # known words: never a fault of the document
        done = run(program, raw(setting(WINDOW + "/shape", shape)))
        if done.returncode != 0:
            failed.append(f"shape {shape}: exit {done.returncode}, {faults_of(done)[:2]}")
    return len(places)


def check_unknown_keys(program, failed):
    """A newer phone's keys are no fault and change no figure."""
    document = copy.deepcopy(EXAMPLE)
    rules = document.pop("rules")  # a rule is a word, not a key

    def add(value):
        if isinstance(value, dict):
            for part in list(value.values()):
                add(part)
            value["from_a_newer_phone"] = {"list": [1, None, "x"], "deep": {"yes": True}}
        elif isinstance(value, list):
            for part in value:
                add(part)
    add(document)
    document["rules"] = rules
    done, plain = run(program, raw(document)), run(program, raw(EXAMPLE))
    if done.returncode != 0 or json.loads(done.stdout) != json.loads(plain.stdout):
        failed.append(f"unknown keys: exit {done.returncode}, {faults_of(done)[:3]}, or other figures")


def main():
    program, failed = sys.argv[1], []
    count = check_malformed(program, failed)
    check_all_in_one(program, failed)
    words = check_not_understood(program, failed)
    check_unknown_keys(program, failed)
    print("\n".join(failed))
    print(f"{count} malformed documents, {words} unknown words, unknown keys: {len(failed)} failed")
    return 1 if failed else 0


if __name__ == "__main__":
    sys.exit(main())
