# SPDX-License-Identifier: Apache-2.0
"""The project's own files, and how a gate reports: one line a fault, exit 1 where there is one."""
import os
import pathlib
import re
import sys
from typing import NamedTuple

NOT_OURS = re.compile(r"^(\.git|\.cache|out|build.*|node_modules|__pycache__|Testing)$")
CPP = {".h", ".cpp"}


class Fault(NamedTuple):
    path: str
    line: int
    text: str


def files(root, suffixes=None):
    """Every file of ours under `root` as (relative path with /, absolute path), sorted; only `suffixes` where given."""
    found = []
    for folder, folders, names in os.walk(root):
        folders[:] = [name for name in folders if not NOT_OURS.match(name)]
        for name in names:
            path = pathlib.Path(folder, name)
            if name != ".git" and not path.is_symlink() and (suffixes is None or path.suffix in suffixes):
                found.append((path.relative_to(root).as_posix(), path))
    return sorted(found)


def read(path):
    """The text of a file, or nothing where it isn't text."""
    try:
        return path.read_text(encoding="utf-8")
    except UnicodeDecodeError:
        return None


def report(name, check):
    """Runs `check(root)` on the folder named on the command line."""
    root = pathlib.Path(sys.argv[1])
    faults = list(check(root))
    for fault in faults:
        print(f"{fault.path}:{fault.line}: {fault.text}")
    seen = len(files(root))
    if seen == 0:
        print(f"{name}: no files under {root}")
        sys.exit(1)
    print(f"{name}: {len(faults)} faults in {seen} files")
    sys.exit(1 if faults else 0)
