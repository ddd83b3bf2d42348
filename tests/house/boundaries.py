#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""boundaries.py ROOT: a folder includes only itself and folders named before it; Qt, time, chance and files stay above
their lines; qml/ has no C++."""
import re

import tree

CORE = ["units", "survey", "adjust", "sizing", "cloth", "cautions", "figures", "rolls", "document", "light", "merge", "sheet", "store"]
SYNC = ["protocol", "outbox", "transport", "workroom"]
ORDER = [f"survey-core/{name}" for name in CORE] + [f"sync/{name}" for name in SYNC] + ["app"]
# What an include path starts with, and the folder that it names.
PREFIX = {**{name: f"survey-core/{name}" for name in CORE}, **{name: f"sync/{name}" for name in SYNC}}
MAY_USE_QT = {"sync/transport", "app"}

INCLUDE = re.compile(r'^\s*#\s*include\s*([<"])([^">]+)[>"]')
QT_HEADER = re.compile(r"^(Q[A-Za-z]\w*(/|$)|q[a-z0-9_]+\.h$)")
FILE_HEADERS = {"fstream", "iostream", "cstdio", "stdio.h", "filesystem", "unistd.h", "fcntl.h"}
ASKS = re.compile(r"\b(?:system_clock|steady_clock|high_resolution_clock|utc_clock)::now\b|\bstd::time\s*\(|"
                  r"\brandom_device\b|\bstd::rand\b|\bgetenv\b|\bgettimeofday\b|\bclock_gettime\b")


def folder_of(path):
    """The folder of the order that a file belongs to, or None."""
    for folder in ORDER:
        if path.startswith(folder + "/"):
            return folder
    return None


def folder_named(root, from_path, included):
    """The folder of the order that an include names, or None for a library's header."""
    first = included.split("/")[0]
    if "/" in included and first in PREFIX:
        return PREFIX[first]
    if "/" in included and (root / "app" / included).exists():
        return "app"
    beside = (root / from_path).parent / included
    if beside.exists():
        return folder_of(from_path)
    if (root / "app" / included).exists():
        return "app"
    return None


def include_faults(root, path, number, quoted, included):
    folder = folder_of(path)
    if ".." in included.split("/"):
        yield tree.Fault(path, number, f'"{included}" climbs out of its folder: include from the library\'s root')
        return
    if QT_HEADER.match(included) and not quoted and folder not in MAY_USE_QT:
        yield tree.Fault(path, number, f"{folder} includes Qt ({included}): Qt stands above it")
    if folder.startswith("survey-core/") and folder != "survey-core/store" and included in FILE_HEADERS:
        yield tree.Fault(path, number, f"{folder} includes <{included}>: in the core only store/ touches files")
    named = folder_named(root, path, included)
    if named is not None and ORDER.index(named) > ORDER.index(folder):
        yield tree.Fault(path, number, f"{folder} includes {included}: {named} is named after it")


def cmake_faults(root):
    for path, file in tree.files(root):
        if path.startswith("survey-core/") and file.name == "CMakeLists.txt":
            for number, line in enumerate(file.read_text(encoding="utf-8").splitlines(), 1):
                if re.search(r"\bQt\d?::|find_package\(Qt", line):
                    yield tree.Fault(path, number, "the core's build names Qt")


def check(root):
    for path, file in tree.files(root, tree.CPP):
        if path.startswith("qml/"):
            yield tree.Fault(path, 1, "qml/ has no C++")
        if folder_of(path) is None:
            continue
        for number, line in enumerate(file.read_text(encoding="utf-8").splitlines(), 1):
            include = INCLUDE.match(line)
            if include:
                yield from include_faults(root, path, number, include.group(1) == '"', include.group(2))
            elif path.startswith("survey-core/") and ASKS.search(line.split("//")[0]):
                yield tree.Fault(path, number, "the core asks for time, chance or the environment: have it passed in")
    yield from cmake_faults(root)


if __name__ == "__main__":
    tree.report("boundaries", check)
