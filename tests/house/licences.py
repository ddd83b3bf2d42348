#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""licences.py ROOT: every file that can carry a comment says its licence in its first line, or in the second where the
first tells which program runs it or which document it is."""
import tree

LINE = "SPDX-License-Identifier: Apache-2.0"
# Formats without comments, prose, pictures, faces, and the licences themselves.
BARE = {".json", ".md", ".png", ".jpg", ".jpeg", ".pdf", ".svg", ".csv", ".ttf", ".otf", ".golden", ".ts", ".tsv",
        ".gitignore", ".clang-format"}
BARE_NAMES = {"LICENSE", ".gitignore", ".clang-format", ".gitkeep", "qmldir"}
# Bytes that tests feed in as they are.
FED_IN = ("tests/reference/", "tests/fuzz/seeds/")


def check(root):
    for path, file in tree.files(root):
        if file.suffix in BARE or file.name in BARE_NAMES or path.startswith(FED_IN):
            continue
        text = tree.read(file)
        if text is None:
            yield tree.Fault(path, 1, "isn't text, and its kind isn't listed among those without a licence line")
            continue
        lines = text.splitlines()
        announced = bool(lines) and lines[0].startswith(("#!", "<!DOCTYPE", "<!doctype", "<?xml"))
        place = 1 if announced else 0
        if len(lines) <= place or LINE not in lines[place]:
            yield tree.Fault(path, place + 1, f'"{LINE}" is missing')


if __name__ == "__main__":
    tree.report("licences", check)
