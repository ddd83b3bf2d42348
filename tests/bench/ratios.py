#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""ratios.py FOLDER: the medians of every Google Benchmark report in the folder, and the ratios between them that say
something on any machine. Fails where a benchmark that a ratio needs isn't there."""
import json
import pathlib
import sys

MICROSECONDS = {"ns": 1e-3, "us": 1.0, "ms": 1e3, "s": 1e6}
# What is compared with what, and why.
RATIOS = [
    ("figures_of_a_house/windows:40", "figures_of_one_window", "a house of forty against one window"),
    ("figures_of_a_house/windows:4000", "figures_of_a_house/windows:40", "a house of 4,000 against one of forty"),
    ("durable_reading", "raw_commit", "a durable reading against a raw SQLite commit"),
    ("plan_of_two_hundred_matched_cuts", "plan_of_two_hundred_cuts", "200 cuts on rolls with a repeat against without"),
]


def medians(folder):
    found = {}
    for report in sorted(folder.glob("*_bench.json")):
        for run in json.loads(report.read_text(encoding="utf-8"))["benchmarks"]:
            if run.get("error_occurred"):
                print(f"{run['run_name']}: {run['error_message']}", file=sys.stderr)
            if run.get("aggregate_name") == "median":
                name = run["run_name"].split("/repeats:")[0]
                found[name] = run["real_time"] * MICROSECONDS[run["time_unit"]]
    return found


def main(folder):
    found = medians(folder)
    for name, median in sorted(found.items()):
        print(f"{name:40} {median:12.1f} us")
    missing = [name for ratio in RATIOS for name in ratio[:2] if name not in found]
    for above, below, what in RATIOS:
        if above in found and below in found:
            print(f"{what:50} {found[above] / found[below]:8.2f}")
    frame = json.loads((folder / "first_frame.json").read_text(encoding="utf-8"))
    print(f"{'first frame, 500 visits, against an empty window':50} {frame['ratio']:8.2f}"
          f"   ({frame['program_ms']} ms and {frame['empty_window_ms']} ms;"
          f" {frame['program_at_rest_ms']} ms to the last of the start)")
    for name in missing:
        print(f"missing: {name}", file=sys.stderr)
    return 1 if missing else 0


if __name__ == "__main__":
    sys.exit(main(pathlib.Path(sys.argv[1])))
