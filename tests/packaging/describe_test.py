#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""describe_test.py WORKROOM: the manual page is set by groff (man(7)) without a warning and names each command and
option that the program takes; completion offers them in a bash, and after an option with a few words just those."""
import pathlib
import re
import subprocess
import sys
import unittest

DESCRIBE = pathlib.Path(__file__).resolve().parents[2] / "packaging" / "workroom" / "describe.py"
WORKROOM = sys.argv.pop()


def made(what):
    return subprocess.run([sys.executable, DESCRIBE, what, WORKROOM], check=True, capture_output=True, text=True).stdout


def said(*words):
    return subprocess.run([WORKROOM, *words, "--help"], check=True, capture_output=True, text=True).stdout


def commands():
    return re.findall(r"^  (\w+) ", said().split("Subcommands:")[1], re.M)


def offered(*words):
    """What bash offers for the last of the words."""
    script = made("completion") + f"""
        COMP_WORDS=(truehang-workroom {" ".join(f"'{word}'" for word in words)}) COMP_CWORD={len(words)}
        _truehang_workroom 2>/dev/null; printf '%s\\n' "${{COMPREPLY[@]}}"
    """
    return subprocess.run(["bash", "-c", script], check=True, capture_output=True, text=True).stdout.split()


class Describe(unittest.TestCase):
    def test_the_page_is_set_without_a_warning(self):
        done = subprocess.run(["groff", "-man", "-Kutf8", "-Tutf8", "-ww"], input=made("man"), check=True,
                              capture_output=True, text=True)
        self.assertEqual(done.stderr, "")
        page = re.sub(r"\x1b\[[0-9;]*m|.\x08", "", done.stdout)
        for command in commands():
            self.assertIn(f"\n   {command} ", page)
            for option in re.findall(r"--[a-z][a-z-]+", said(command).replace("--help", "")):
                self.assertIn(option, page.replace("\u2010", "-"))

    def test_completion_offers_commands_and_options(self):
        self.assertEqual(sorted(offered("")), sorted(commands()))
        self.assertEqual(sorted(offered("serve", "--da")), ["--data", "--database"])
        self.assertEqual(offered("erase", "--b"), ["--by"])

    def test_completion_offers_the_words_of_an_option(self):
        self.assertEqual(sorted(offered("sheet", "--unit", "")), ["in", "mm"])


if __name__ == "__main__":
    unittest.main()
