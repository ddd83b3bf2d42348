#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""One window, one set of numbers: the command, the workroom's page in a browser, the printed sheet and the phone's
screen say the same. What a walk left (`truehang-walk --out DIR`) is looked at from outside; numbers are compared as
they are written, so that a rounding in one place only shows too."""

import argparse
import copy
import html.parser
import json
import pathlib
import re
import shutil
import subprocess
import sys
import tempfile

# The figure's place in the figures document, and what it is called on the screen.
ON_SCREEN = {
    "finished.width_mm": "Finished width, each",
    "finished.drop_mm": "Finished drop",
    "cloth.widths": "Widths",
    "cloth.cut_drop_mm": "Cut drop",
    "lining.cut_drop_mm": "Lining, cut drop",
    "tabs.each": "Tabs in one curtain",
    "mass_kg": "Mass in all",
}


def number(text):
    """The first number in a text, as written."""
    found = re.search(r"-?\d+(?:[.,]\d+)?", text.replace("\u2212", "-"))
    return found.group(0).replace(",", ".") if found else None


def after_sign(text):
    found = re.search(r"±\s*(\d+(?:\.\d+)?)", text)
    return found.group(1) if found else None


def whole(value):
    return str(int(value)) if float(value).is_integer() else f"{value:g}"


def from_command(figures):
    """What the figures document says, written as a sheet writes it: ± is twice the standard uncertainty (contract),
    rounded up to a millimetre; masses to 0.1 kg; cloth in the steps it is sold by."""
    window = figures["windows"][0]
    said = {
        "finished.width_mm": whole(window["finished"]["width_mm"]),
        "finished.drop_mm": whole(window["finished"]["drop_mm"]),
        "finished.drop_u": 2 * window["finished"]["drop_u_mm"],
        "finished.width_u": 2 * window["finished"]["width_u_mm"],
        "cloth.widths": str(window["cloth"]["widths"]),
        "cloth.cut_drop_mm": whole(window["cloth"]["cut_drop_mm"]),
        "lining.cut_drop_mm": whole(window["lining"]["cut_drop_mm"]),
        "tabs.each": str(window["tabs"]["each"]),
        "mass_kg": f"{window['mass_kg']:.1f}",
    }
    for order in figures["orders"]:
        said[f"order {order['fabric']}"] = f"{order['order_m']:.1f}"
    said["tabs.spacing_mm"] = f"{window['tabs']['spacing_mm']:.0f}"
    return said


class Cells(html.parser.HTMLParser):
    """The text of every element with `data-figure`, and what stands in its row after it."""

    def __init__(self, text):
        super().__init__(convert_charrefs=True)
        self.found, self.open, self.rows, self.row = {}, [], [], ""
        self.feed(text)

    def handle_starttag(self, tag, attributes):
        figure = dict(attributes).get("data-figure")
        if figure:
            self.open.append((tag, figure))
            self.found.setdefault(figure, [])
            self.found[figure].append("")
        if tag == "tr":
            self.row = ""

    def handle_endtag(self, tag):
        if self.open and self.open[-1][0] == tag:
            self.open.pop()
        if tag == "tr":
            self.rows.append(self.row)

    def handle_data(self, data):
        for _, figure in self.open:
            self.found[figure][-1] += data
        self.row += data + " "
