#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""What the count of a test run makes of suites that pass, fail, skip, crash and never start."""
import contextlib
import io
import pathlib
import tempfile
import unittest

import count_cases
from count_cases import Count

# The closing lines as the three frameworks print them.
GOOGLE = "[==========] 5 tests from 2 test suites ran. (3 ms total)\n[  PASSED  ] 5 tests.\n"
GOOGLE_FAILED = ("[==========] 5 tests from 2 test suites ran. (3 ms total)\n[  PASSED  ] 3 tests.\n"
                 "[  SKIPPED ] 1 test, listed below:\n[  SKIPPED ] A.c\n[  FAILED  ] 1 test, listed below:\n")
QT = "Totals: 7 passed, 0 failed, 1 skipped, 0 blacklisted, 12ms\nTotals: 2 passed, 1 failed, 0 skipped, 0 blacklisted\n"
PYTHON = "Ran 6 tests in 0.01s\n\nOK (skipped=2)\n"
PYTHON_FAILED = "Ran 6 tests in 0.01s\n\nFAILED (failures=1, errors=2)\n"


class CountCases(unittest.TestCase):
    def test_suites_that_count_themselves(self):
        self.assertEqual(count_cases.count_suite(True, False, GOOGLE), Count(5, 0, 0))
        self.assertEqual(count_cases.count_suite(False, False, GOOGLE_FAILED), Count(3, 1, 1))
        self.assertEqual(count_cases.count_suite(False, False, QT), Count(9, 1, 1))
        self.assertEqual(count_cases.count_suite(True, False, PYTHON), Count(4, 0, 2))
        self.assertEqual(count_cases.count_suite(False, False, PYTHON_FAILED), Count(3, 3, 0))

    def test_a_program_without_a_count_is_one_case(self):
        self.assertEqual(count_cases.count_suite(True, False, "limits: 0 faults in 9 files\n"), Count(1, 0, 0))
        self.assertEqual(count_cases.count_suite(False, False, "limits: 1 faults in 9 files\n"), Count(0, 1, 0))

    def test_a_suite_that_dies_after_its_cases_has_failed(self):
        self.assertEqual(count_cases.count_suite(False, False, GOOGLE), Count(5, 1, 0))

    def test_a_suite_that_ran_nothing_has_failed(self):
        nothing = "[==========] 0 tests from 0 test suites ran. (0 ms total)\n[  PASSED  ] 0 tests.\n"
        self.assertEqual(count_cases.count_suite(True, False, nothing), Count(0, 1, 0))

    def count(self, cases, status):
        with tempfile.TemporaryDirectory() as folder:
            report = pathlib.Path(folder, "tests.xml")
            if cases is not None:
                report.write_text(f'<testsuite name="a">{cases}</testsuite>', encoding="utf-8")
            said = io.StringIO()
            with contextlib.redirect_stdout(said):
                code = count_cases.main(report, status)
            return code, said.getvalue().splitlines()[-1]

    def test_a_whole_run(self):
        passed = f'<testcase name="core" status="run"><system-out>{GOOGLE}</system-out></testcase>'
        failed = '<testcase name="gate" status="fail"><failure/><system-out>no</system-out></testcase>'
        absent = ('<testcase name="gone" status="notrun"><skipped message=""/>'
                  "<system-out>Unable to find executable: gone</system-out></testcase>")
        self.assertEqual(self.count(passed, 0), (0, "5 passed, 0 failed"))
        self.assertEqual(self.count(passed + failed, 8), (1, "5 passed, 1 failed"))
        self.assertEqual(self.count(passed + absent, 8), (1, "5 passed, 1 failed"))

    def test_a_run_that_says_nothing_has_failed(self):
        self.assertEqual(self.count(None, 8), (1, "0 passed, 1 failed"))
        self.assertEqual(self.count("", 0), (1, "0 passed, 1 failed"))

    def test_ctests_own_word_is_never_overruled(self):
        passed = f'<testcase name="core" status="run"><system-out>{GOOGLE}</system-out></testcase>'
        self.assertEqual(self.count(passed, 8), (1, "5 passed, 1 failed"))


if __name__ == "__main__":
    unittest.main()
