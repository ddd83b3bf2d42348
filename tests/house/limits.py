#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""limits.py ROOT: .h at most 400 lines, .cpp 600, .qml 300; a function's braces at most 40 lines apart."""
import re

import tree

FILE_LINES = {".h": 400, ".cpp": 600, ".qml": 300}
FUNCTION_LINES = 40

# Comments, raw strings, strings and characters; a digit separator (1'000) is no character.
CPP_NOISE = re.compile(r'//[^\n]*|/\*.*?\*/|R"(?P<mark>[^()\s\\]*)\(.*?\)(?P=mark)"|"(?:\\.|[^"\\\n])*"|'
                       r"(?<![0-9a-zA-Z_])'(?:\\.|[^'\\\n])+'", re.DOTALL)
QML_NOISE = re.compile(r'//[^\n]*|/\*.*?\*/|"(?:\\.|[^"\\\n])*"|\'(?:\\.|[^\'\\\n])*\'|`(?:\\.|[^`\\])*`', re.DOTALL)
# What opens a scope in which functions are declared rather than statements run.
SCOPE = re.compile(r"(?:^|[\s;{}])(?:namespace|class|struct|union|enum|extern)\b[^;()]*$|"
                   r"(?:^|[\s;{}>])(?:class|struct|union)\s[^;{}=]*$")
QML_FUNCTION = re.compile(r"\bfunction\s+(\w+)[^{]*\{|\b(on[A-Z]\w*)\s*:\s*(?:function\s*\([^)]*\)\s*|\([^)]*\)\s*=>\s*)?\{")


def blank(text, noise):
    """The text with comments and literals blanked, lines kept."""
    return noise.sub(lambda found: re.sub(r"[^\n]", " ", found.group(0)), text)


def closing(text, opening):
    """Where the brace at `opening` is closed."""
    depth = 0
    for place in range(opening, len(text)):
        if text[place] == "{":
            depth += 1
        elif text[place] == "}":
            depth -= 1
            if depth == 0:
                return place
    return len(text)


def cpp_functions(text):
    """(name, first line, lines between its braces) of every outermost function body."""
    text = re.sub(r"^[ \t]*#(?:\\\n|[^\n])*", lambda found: re.sub(r"[^\n]", " ", found.group(0)),
                  blank(text, CPP_NOISE), flags=re.MULTILINE)
    place, head_start = 0, 0
    while place < len(text):
        if text[place] in ";}":
            head_start = place + 1
        elif text[place] == "{":
            head = text[head_start:place]
            if ("(" in head and not SCOPE.search(head)) or head.rstrip().endswith(("=", ",")):
                end = closing(text, place)
                named = re.search(r"([\w:~]+|operator\W+)\s*\(", head)
                if named and not head.rstrip().endswith("="):
                    first = text.count("\n", 0, place) + 1
                    yield named.group(1), first, text.count("\n", place, end)
                place = end
            head_start = place + 1
        place += 1


def qml_functions(text):
    text = blank(text, QML_NOISE)
    for found in QML_FUNCTION.finditer(text):
        opening = found.end() - 1
        end = closing(text, opening)
        yield found.group(1) or found.group(2), text.count("\n", 0, opening) + 1, text.count("\n", opening, end)


def check(root):
    for path, file in tree.files(root, set(FILE_LINES)):
        text = file.read_text(encoding="utf-8")
        lines, limit = len(text.splitlines()), FILE_LINES[file.suffix]
        if lines > limit:
            yield tree.Fault(path, lines, f"{lines} lines, at most {limit}")
        functions = qml_functions(text) if file.suffix == ".qml" else cpp_functions(text)
        for name, line, length in functions:
            if length > FUNCTION_LINES:
                yield tree.Fault(path, line, f"{name} is {length} lines long, at most {FUNCTION_LINES}")


if __name__ == "__main__":
    tree.report("limits", check)
