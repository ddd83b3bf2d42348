#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""theme.py ROOT: outside the theme, QML names no colour, type size or type face of its own; nothing in it moves by itself."""
import re

import tree

RULES = [
    (re.compile(r"""["']#[0-9a-fA-F]{3,8}["']"""), "a colour written as digits"),
    (re.compile(r"\bQt\.(?:rgba|hsla|hsva|lighter|darker|tint|alpha)\s*\("), "a colour made on the spot"),
    (re.compile(r"""\b(?:\w*[cC]olor)\s*:\s*["'](?!transparent["'])[a-zA-Z]+["']"""), "a colour by name"),
    (re.compile(r"\b(?:pixelSize|pointSize)\s*:\s*[0-9]"), "a type size of its own"),
    (re.compile(r"""\bfamily\s*:\s*["']"""), "a type face of its own"),
    (re.compile(r"\bfont\.italic\s*:\s*true"), "a type face that isn't shipped"),
]
# A page changes at once, whatever the person asked of the system: there is no movement to be reduced.
MOVES = re.compile(r"\b(?:Behavior\s+on|Transition|\w*Animat(?:ion|or)|AnimatedImage|AnimatedSprite|FrameAnimation)\b[^:;]*\{")


def is_theme(path):
    return path.startswith("qml/theme/") or path.rsplit("/", 1)[-1] == "Theme.qml"


def check(root):
    for path, file in tree.files(root, {".qml"}):
        if is_theme(path) or not path.startswith(("qml/", "app/")):
            continue
        for number, line in enumerate(file.read_text(encoding="utf-8").splitlines(), 1):
            code = line.split("//")[0] if "://" not in line else line
            for pattern, what in RULES:
                if pattern.search(code):
                    yield tree.Fault(path, number, f"{what}: take it from the theme")
            if MOVES.search(code):
                yield tree.Fault(path, number, "moves by itself: show it where it is to be")


if __name__ == "__main__":
    tree.report("theme", check)
