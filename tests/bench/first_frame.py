#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""first_frame.py EMPTY_WINDOW PROGRAM [ARGUMENT...]: milliseconds from the start of a process to its first frame, of the
program and of an empty Qt Quick window, taken in turns; prints both medians and their ratio as JSON.

The frame is seen through Qt's own scene-graph log, so nothing in the program is made for this. The program gets an
empty home for every start."""
import json
import os
import select
import signal
import statistics
import subprocess
import sys
import tempfile
import time

ROUNDS = 15
LIMIT_S = 30.0


def first_frame_ms(command):
    with tempfile.TemporaryDirectory() as home:
        environment = {**os.environ, "QT_LOGGING_RULES": "qt.scenegraph.time.renderloop.debug=true",
                       "QT_FORCE_STDERR_LOGGING": "1", "HOME": home, "XDG_DATA_HOME": home, "XDG_CONFIG_HOME": home,
                       "XDG_CACHE_HOME": home}
        environment.setdefault("QT_QPA_PLATFORM", "offscreen")
        started = time.monotonic()
        process = subprocess.Popen(command, stdin=subprocess.DEVNULL, stdout=subprocess.DEVNULL,
                                   stderr=subprocess.PIPE, env=environment)
        try:
            said = b""
            while b"rame rendered" not in said:
                ready, _, _ = select.select([process.stderr], [], [], LIMIT_S - (time.monotonic() - started))
                some = os.read(process.stderr.fileno(), 65536) if ready else b""
                if not some:
                    raise SystemExit(f"{command[0]} showed no frame; it said:\n{said.decode(errors='replace')}")
                said += some
            return (time.monotonic() - started) * 1000.0
        finally:
            process.send_signal(signal.SIGKILL)
            process.wait()
            process.stderr.close()


def main(empty, program):
    first_frame_ms([empty])  # brings Qt's libraries into the page cache
    first_frame_ms(program)
    pairs = [(first_frame_ms(program), first_frame_ms([empty])) for _ in range(ROUNDS)]
    ours, theirs = (statistics.median(column) for column in zip(*pairs))
    print(json.dumps({"program_ms": round(ours, 1), "empty_window_ms": round(theirs, 1),
                      "ratio": round(ours / theirs, 2), "rounds": ROUNDS}))


if __name__ == "__main__":
    main(sys.argv[1], sys.argv[2:])
