#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""first_frame.py EMPTY_WINDOW PROGRAM DEMO: milliseconds from the start of a process to its first frame, and to the last
one before it rests, of the program with 500 visits stored and of an empty Qt Quick window, taken in turns; prints the
medians and their ratios as JSON.

The frames are seen through Qt's own scene-graph log, so nothing in the program is made for this. Every start has a home
of its own, with the visits (copies of DEMO/sail-loft.json) in it."""
import json
import os
import pathlib
import select
import shutil
import signal
import sqlite3
import statistics
import subprocess
import sys
import tempfile
import time

ROUNDS = 15
VISITS = 500
LIMIT_S = 60.0
REST_S = 0.4
SETTLE_S = 3.0  # the store is written to no more


def started(command, home):
    environment = {**os.environ, "QT_LOGGING_RULES": "qt.scenegraph.time.renderloop.debug=true",
                   "QT_FORCE_STDERR_LOGGING": "1", "HOME": home, "XDG_DATA_HOME": home, "XDG_CONFIG_HOME": home,
                   "XDG_CACHE_HOME": home}
    environment.setdefault("QT_QPA_PLATFORM", "offscreen")
    return subprocess.Popen(command, stdin=subprocess.DEVNULL, stdout=subprocess.DEVNULL, stderr=subprocess.PIPE,
                            env=environment)


def ended(process):
    process.send_signal(signal.SIGKILL)
    process.wait()
    process.stderr.close()


def frames_ms(command, home):
    """When the first frame was there, and the last before REST_S without one."""
    begun = time.monotonic()
    process = started(command, home)
    said, first, last = b"", None, None
    try:
        while True:
            ready, _, _ = select.select([process.stderr], [], [], REST_S if first else LIMIT_S)
            some = os.read(process.stderr.fileno(), 65536) if ready else b""
            if not some and first:
                return first, last
            if not some:
                raise SystemExit(f"{command[0]} showed no frame; it said:\n{said.decode(errors='replace')}")
            said += some
            if b"rame rendered" in some:
                last = (time.monotonic() - begun) * 1000.0
                first = first or last
    finally:
        ended(process)


def fill(program, demo, folder):
    """Has the program take in VISITS copies of a demo survey, each by another name."""
    survey = json.loads((demo / "sail-loft.json").read_text())
    with tempfile.TemporaryDirectory() as made:
        for at in range(VISITS):
            survey["id"] = f"019dfcc4-0eb7-7882-8bf7-{at:012x}"
            survey["title"] = f"Sail loft {at}"
            (pathlib.Path(made) / f"{at:03}.json").write_text(json.dumps(survey))
        process = started([program, "--data", str(folder), "--demo", made], str(folder))
        time.sleep(SETTLE_S)
        while time.time() - max(file.stat().st_mtime for file in folder.iterdir()) < SETTLE_S:
            time.sleep(0.1)
        ended(process)
    with sqlite3.connect(folder / "truehang.sqlite") as database:
        there = database.execute("SELECT count(*) FROM visit").fetchone()[0]
    if there != VISITS:
        raise SystemExit(f"{program} took in {there} of {VISITS} visits")


def program_ms(program, full):
    with tempfile.TemporaryDirectory() as home:
        data = pathlib.Path(home) / "data"
        shutil.copytree(full, data)
        return frames_ms([program, "--data", str(data)], home)


def empty_ms(empty):
    with tempfile.TemporaryDirectory() as home:
        return frames_ms([empty], home)


def main(empty, program, demo):
    with tempfile.TemporaryDirectory() as full:
        fill(program, pathlib.Path(demo), pathlib.Path(full))
        program_ms(program, full)  # brings libraries into the page cache
        pairs = [(*program_ms(program, full), empty_ms(empty)[0]) for _ in range(ROUNDS)]
    first, last, theirs = (statistics.median(column) for column in zip(*pairs))
    print(json.dumps({"program_ms": round(first, 1), "program_at_rest_ms": round(last, 1),
                      "empty_window_ms": round(theirs, 1), "ratio": round(first / theirs, 2),
                      "ratio_at_rest": round(last / theirs, 2), "visits": VISITS, "rounds": ROUNDS}))


if __name__ == "__main__":
    main(*sys.argv[1:4])
