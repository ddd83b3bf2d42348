#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""words.py ROOT: each sentence that the core says has its words in every language, with the same placeholders.

What is said stands in the sources as say("…"), worded("…") or to_say("…"), as the words of the tables named below, and
as the steps of traces. `words.py ROOT --list` prints all of it, each with the file that it was found in.
"""
import collections
import re
import sys

import tree

TOKEN = re.compile(r"""//[^\n]*|/\*.*?\*/|'(?:\\.|[^'\\])'|R"\((.*?)\)"|"((?:\\.|[^"\\])*)\"""", re.DOTALL)
TABLES = {
    "survey-core/survey/stations.cpp": re.compile(r"^[A-Z]"),
    "survey-core/survey/rule_words.cpp": re.compile(r"^[A-Z]"),
    "survey-core/sizing/headings.cpp": re.compile(r" "),
    "survey-core/cautions/caution_table.cpp": re.compile(r"^.{60,}\.$", re.DOTALL),
}
WORD_LISTS = ("HardwareKind", "Heading", "Shape", "ObstructionKind")
SAYING = re.compile(r"\b(?:say|worded|to_say)\($")
STEP = re.compile(r"\.(?:mm|count|ratio|length)\(")
NUMBERED = re.compile(r'numbered\("([A-Z][^"]*)", n, "([^"]*)"\)( \+\s*std::to_string\(n \+ 1\))?')
NUMBER = re.compile(r"\d+(?:\.\d+)?")
HOLE = re.compile(r"\{\{|\}\}|\{(\d*)(?::([^}]*))?\}")


def literals(text):
    """String literals as (start, end, value), neighbours joined as the compiler joins them."""
    found = []
    for match in TOKEN.finditer(text):
        if match.group(1) is None and match.group(2) is None:
            continue
        raw = match.group(1)
        if raw is None:
            raw = re.sub(r"\\(.)", lambda c: {"n": "\n"}.get(c.group(1), c.group(1)), match.group(2))
        if found and not text[found[-1][1]:match.start()].strip():
            found[-1] = (found[-1][0], match.end(), found[-1][2] + raw)
        else:
            found.append((match.start(), match.end(), raw))
    return found


def arguments(text, at):
    """Where the arguments of the call whose bracket opens before `at` end, as (end of the first, end of all)."""
    depth, first = 0, None
    quoted = [(start, end) for start, end, _ in literals(text[at:at + 2000])]
    for i, letter in enumerate(text[at:at + 2000]):
        if any(start <= i < end for start, end in quoted):
            continue
        if letter in "([{":
            depth += 1
        elif letter in ")]}":
            if depth == 0:
                return at + (i if first is None else first), at + i
            depth -= 1
        elif letter == "," and depth == 0 and first is None:
            first = i
    return at, at


def steps(text):
    """What the steps of traces are called, and what they came from as it is said."""
    for call in STEP.finditer(text):
        first, end = arguments(text, call.end())
        for _, _, value in literals(text[call.end():first]):
            yield pattern_of(value)
        for _, _, value in literals(text[first:end]):
            if " " in value and not value.startswith("rule "):
                said = value[:-3] if value.endswith("_mm") else value
                yield pattern_of(said.replace("_", " "))


def pattern_of(text):
    """A fixed text as its pattern: what was formatted into it, and numbers in it, as {}."""
    return NUMBER.sub("{}", re.sub(r"\{[^}]*\}", "{}", text))


def said_in(path, text):
    for start, _, value in literals(text):
        before = text[:start].rstrip()
        if SAYING.search(before) and value.strip():
            yield value
        elif path in TABLES and TABLES[path].search(value) and not before.endswith("numbered("):
            yield value
    if path == "survey-core/survey/stations.cpp":
        for match in NUMBERED.finditer(text):
            yield match.group(1) + "{}" + match.group(2) + ("{}" if match.group(3) else "")
    if re.match(r"survey-core/(sizing|cloth|figures)/", path):
        yield from steps(text)
    if path == "survey-core/survey/words.h":
        for kind in WORD_LISTS:
            for value in re.findall(r'\{"([^"]+)",\s*' + kind + "::", text):
                yield value
                if kind == "ObstructionKind":
                    yield value.replace("-", " ")


def all_said(root):
    """English pattern → the file it was first found in."""
    found = {}
    for path, file in tree.files(root, tree.CPP):
        if path.startswith("survey-core/") and "/units/saying." not in path:
            for value in said_in(path, tree.read(file) or ""):
                if re.search(r"[A-Za-z]{2}", re.sub(r"\{[^}]*\}", "", value)):
                    found.setdefault(value, path)
    return found


def holes(pattern):
    """The placeholders by the argument that they take, each with its format."""
    taken = collections.Counter()
    following = 0
    for match in HOLE.finditer(pattern):
        if match.group(0) in ("{{", "}}"):
            continue
        number = match.group(1)
        if number == "":
            number, following = str(following), following + 1
        taken[(number, match.group(2) or "")] += 1
    return set(taken)


def pairs(text):
    """(line number, English, own words) of a table; one of them empty where a line has no partner."""
    english, at = "", 0
    for number, line in enumerate(text.splitlines(), 1):
        if line.startswith(("#", "@")):
            continue
        if english:
            yield at, english, line
            english = ""
        elif line:
            english, at = line, number
    if english:
        yield at, english, ""


def check(root):
    said = all_said(root)
    for path, file in tree.files(root, {".txt"}):
        if not path.startswith("survey-core/words/"):
            continue
        known = set()
        for line, english, own in pairs(tree.read(file) or ""):
            if english in known:
                yield tree.Fault(path, line, f"stands twice: {english}")
            known.add(english)
            if not own:
                yield tree.Fault(path, line, f"no words for: {english}")
            elif holes(english) != holes(own):
                yield tree.Fault(path, line, f"other placeholders than in: {english}")
            if english not in said:
                yield tree.Fault(path, line, f"nothing says this any more: {english}")
        for english, where in sorted(said.items()):
            if english not in known:
                yield tree.Fault(path, 1, f"no words for what {where} says: {english}")


if __name__ == "__main__":
    if "--list" in sys.argv:
        for sentence, where in all_said(sys.argv[1]).items():
            print(f"{where}\t{sentence}")
    else:
        tree.report("words", check)
