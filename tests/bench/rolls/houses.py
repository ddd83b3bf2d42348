# SPDX-License-Identifier: Apache-2.0
"""Random houses for the roll planner: a survey with one cloth, and rolls with flaws, joins and lots. Invented, and the
same for the same seed."""
import copy
import json
import pathlib
import random

EXAMPLE = pathlib.Path(__file__).resolve().parents[2] / "reference" / "contract" / "survey.example.json"


def survey_of(rng, windows, repeat):
    survey = json.loads(EXAMPLE.read_text(encoding="utf-8"))
    cloth = survey["fabrics"][0]
    del survey["fabrics"][1:]
    cloth.update(repeat_mm=repeat, match="straight" if repeat else "none")
    room = survey["rooms"][0]
    model = room["windows"][0]
    survey["rooms"] = []
    for number in range(windows):
        if number % 3 == 0:
            survey["rooms"].append(dict(room, id=f"room-{number // 3 + 1}", windows=[]))
        window = copy.deepcopy(model)
        window["id"] = f"window-{number + 1}"
        below, height, above = rng.randint(300, 900), rng.randint(700, 1500), rng.randint(150, 400)
        readings = {"opening.height.left": height, "opening.height.right": height, "below.left": below,
                    "above.left": above, "ceiling.left": below + height + above}
        for reading in window["readings"]:
            value = readings.get(reading["station"])
            if value:
                reading.update(value_mm=value, typed=str(value))
        window["hardware"]["length_mm"] = rng.randint(1500, 3200)
        window["treatment"].update(heading="pencil-pleat", fullness=rng.choice([1.5, 1.75, 2.0]), lining=None)
        survey["rooms"][-1]["windows"].append(window)
    return survey


def rolls_of(rng, survey, asked, repeat):
    """Rolls with about a fifth to two fifths more cloth than is asked, in one to three lots, no roll of more than 20 m."""
    rolls = []
    lots = rng.randint(1, 3)
    room = asked * rng.uniform(1.2, 1.4) + 3000 * lots
    while room > 0:
        length = rng.randint(6000, 20000)
        roll = {"id": f"r{len(rolls) + 1}", "lot": f"lot {len(rolls) % lots + 1}", "length_mm": length,
                "phase_mm": rng.randint(0, repeat - 1) if repeat else 0, "flaws": [], "joins": []}
        for _ in range(rng.choice([0, 0, 1, 1, 2])):
            at = rng.randint(300, length - 600)
            roll["flaws"].append({"from_mm": at, "to_mm": at + rng.randint(5, 200)})
        if rng.random() < 0.2:
            roll["joins"].append({"at_mm": rng.randint(500, length - 500)})
        rolls.append(roll)
        room -= length
    return {"format": "truehang.rolls/1", "survey": survey["id"], "useful_mm": 1000,
            "fabrics": [{"fabric": survey["fabrics"][0]["id"], "rolls": rolls}]}


def house(seed, most_windows):
    rng = random.Random(seed)
    repeat = rng.choice([0, 0, 0, 240, 320, 640])
    return rng, survey_of(rng, rng.randint(3, most_windows), repeat), repeat
