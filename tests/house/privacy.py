#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""privacy.py ROOT: no paths of one machine, no package registries, no people who could be real."""
import re

import tree

RULES = [
    (re.compile(r"(?<![\w.$}/-])/(?:work|home|Users|root)/\w"), "a path of one machine"),
    (re.compile(r"(?<![\w.$}/-])/tmp/\w"), "a path of one machine: ask for a temporary folder"),
    (re.compile(r"\b(?:deb|registry|pypi|mirrors?|archive|snapshot|files|proxy)\.[a-z0-9-]+\.(?:org|com|io|net)\b"),
     "a package registry's host"),
    (re.compile(r"\b(?!(?:[\w.+-]*@(?:[\w-]+\.)*example\.(?:org|com|net)\b))[\w.+-]+@[\w-]+(?:\.[\w-]+)*\.[a-z]{2,}\b"),
     "a mail address outside example.org"),
    # Numbers that the British regulator keeps for fiction: 01632 960000 to 960999.
    (re.compile(r"(?:\+44 ?|\b0044 ?|\(0\) ?|\b0)(?!1632[ -]?960[ -]?\d{3}\b)[1-9]\d{1,4}[ -]\d{3,4}[ -]?\d{3,4}\b"),
     "a telephone number that isn't kept for fiction"),
]
PICTURES = {".png", ".jpg", ".jpeg", ".pdf", ".ttf", ".otf"}


def check(root):
    for path, file in tree.files(root):
        text = None if file.suffix in PICTURES or file.name == "LICENSE" else tree.read(file)
        if text is None:
            continue
        for number, line in enumerate(text.splitlines(), 1):
            for pattern, what in RULES:
                found = pattern.search(line)
                if found:
                    yield tree.Fault(path, number, f"{what} ({found.group(0)})")


if __name__ == "__main__":
    tree.report("privacy", check)
