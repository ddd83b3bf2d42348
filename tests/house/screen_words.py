#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""screen_words.py ROOT: every text of the screens is in the catalogues, finished, with the same placeholders.

The catalogues are taken anew in a folder of their own (app/words/update), so that a text that is missing there shows.
"""
import pathlib
import re
import shutil
import subprocess
import sys
import tempfile
import xml.etree.ElementTree

import tree

PLACE = re.compile(r"%(?:L?\d+|n)")
TRANSLATES = re.compile(r"^QString (\w+)\(const char\* source\b", re.MULTILINE)


def messages(file):
    """(context, English, own texts, whether it is finished) of a catalogue."""
    for context in xml.etree.ElementTree.parse(file).getroot().iter("context"):
        name = context.findtext("name")
        for message in context.iter("message"):
            translation = message.find("translation")
            forms = [form.text or "" for form in translation.iter("numerusform")] or [translation.text or ""]
            yield name, message.findtext("source") or "", forms, translation.get("type") is None


def faults_of(path, file):
    for context, english, forms, finished in messages(file):
        what = f"{context}: {english}"
        if not finished or not all(forms):
            yield tree.Fault(path, 1, f"no words yet for {what}")
        elif any(sorted(PLACE.findall(form)) != sorted(PLACE.findall(english)) for form in forms):
            yield tree.Fault(path, 1, f"other placeholders than in {what}")


def taken_anew(root, folder):
    """The catalogues with the texts that the screens have now; which of them had to change."""
    here = pathlib.Path(root, "app/words")
    for file in here.glob("*.ts"):
        shutil.copy(file, folder)
    subprocess.run(["bash", here / "update", folder], check=True)
    for file in sorted(pathlib.Path(folder).glob("*.ts")):
        yield f"app/words/{file.name}", file, set(known(file)) - set(known(here / file.name))


def known(file):
    return ((context, english) for context, english, _, _ in messages(file))


def check(root):
    for path, file in tree.files(root, {".cpp"}):
        if path.startswith("app/"):
            text = tree.read(file) or ""
            bare = [name + '("' for name in TRANSLATES.findall(text)]
            for number, line in enumerate(text.splitlines(), 1):
                if any(call in line for call in bare):
                    yield tree.Fault(path, number, "a text that no catalogue takes: put it in QT_TRANSLATE_NOOP")
    with tempfile.TemporaryDirectory() as folder:
        for path, file, missing in taken_anew(root, folder):
            for context, english in sorted(missing):
                yield tree.Fault(path, 1, f"not taken in yet (app/words/update): {context}: {english}")
            yield from faults_of(path, file)


if __name__ == "__main__":
    tree.report("screen_words", check)
