#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""count_cases.py JUNIT_XML CTEST_STATUS: counts the cases that every suite of a ctest run says it ran.

A suite is one ctest entry. GoogleTest, QtTest and unittest close with a count of their own, which is taken; any other
program is one case. A suite that ctest calls failed without a failed case of its own (it crashed, hung or leaked)
counts as one failed case, and so does one that ran no case at all. Prints one line per suite that failed or skipped,
and closes with "N passed, N failed".
"""
import re
import sys
import xml.etree.ElementTree as ElementTree
from typing import NamedTuple


class Count(NamedTuple):
    passed: int = 0
    failed: int = 0
    skipped: int = 0


def number(pattern, text):
    found = re.search(pattern, text, re.MULTILINE)
    return int(found.group(1)) if found else 0


def googletest(text):
    if not re.search(r"^\[==========\] \d+ tests? from .* ran\.", text, re.MULTILINE):
        return None
    return Count(
        number(r"^\[  PASSED  \] (\d+) tests?\.", text),
        number(r"^\[  FAILED  \] (\d+) tests?, listed below", text),
        number(r"^\[  SKIPPED \] (\d+) tests?, listed below", text),
    )


def qttest(text):
    totals = re.findall(r"^Totals: (\d+) passed, (\d+) failed, (\d+) skipped", text, re.MULTILINE)
    if not totals:
        return None
    return Count(*(sum(int(row[column]) for row in totals) for column in range(3)))


def unittest(text):
    ran = re.search(r"^Ran (\d+) tests? in ", text, re.MULTILINE)
    if not ran:
        return None
    failed = number(r"^FAILED \(.*?failures=(\d+)", text) + number(r"^FAILED \(.*?errors=(\d+)", text)
    skipped = number(r"^(?:OK|FAILED) \(.*?skipped=(\d+)", text)
    return Count(int(ran.group(1)) - failed - skipped, failed, skipped)


def count_suite(succeeded, skipped, text):
    """The count of one suite from what it printed and what ctest says of it."""
    if skipped:
        return Count(skipped=1)
    own = googletest(text) or qttest(text) or unittest(text) or (Count(passed=1) if succeeded else Count())
    if (not succeeded and own.failed == 0) or own == Count():
        return Count(own.passed, own.failed + 1, own.skipped)
    return own


def count_report(root):
    """(name, count) of every suite in a JUnit report of ctest."""
    for case in root.iter("testcase"):
        text = case.findtext("system-out") or ""
        skipped = case.find("skipped") is not None or case.get("status") in ("notrun", "disabled")
        missing = skipped and "Unable to find executable" in (text + (case.findtext("skipped") or ""))
        succeeded = case.get("status") == "run"
        yield case.get("name"), count_suite(succeeded and not missing, skipped and not missing, text)


def main(report, status):
    try:
        suites = list(count_report(ElementTree.parse(report).getroot()))
    except (OSError, ElementTree.ParseError) as error:
        print(f"tests: no report of the run: {error}")
        suites = []
    total = Count(*(sum(column) for column in zip(*(count for _, count in suites)))) if suites else Count()
    for name, count in suites:
        if count.failed or count.skipped:
            print(f"{name}: {count.passed} passed, {count.failed} failed, {count.skipped} skipped")
    failed = total.failed
    if failed == 0 and (status != 0 or total.passed == 0):
        failed = 1
    print(f"{len(suites)} suites")
    print(f"{total.passed} passed, {failed} failed")
    return 1 if failed else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1], int(sys.argv[2])))
