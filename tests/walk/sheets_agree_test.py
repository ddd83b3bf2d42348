#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""One set of numbers on every kind of sheet: what the workroom's page says in its cells stands in the figures document,
and row by row on the phone's PDF, on either paper and in either unit. Looked at from outside: the page as HTML, the PDF
as pdftotext reads it, the figures as JSON."""

import argparse
import collections
import decimal
import html.parser
import json
import pathlib
import re
import subprocess
import sys
import tempfile

# Cells that write a figure of a layer to a whole mm.
WHOLE = ["finished.width_mm", "finished.drop_mm", "cloth.flat_mm", "cloth.cut_drop_mm", "lining.flat_mm",
         "lining.cut_drop_mm", "interlining.cut_drop_mm"]
KINDS = ["measure", "cutting", "making", "hanging"]


class Page(html.parser.HTMLParser):
    """The rows of all tables as lists of (figure, text, is a number), each with the window and layer of its sheet."""

    def __init__(self, text):
        super().__init__(convert_charrefs=True)
        self.rows, self.where, self.cell = [], ("", ""), None
        self.feed(text)

    def handle_starttag(self, tag, attributes):
        values = dict(attributes)
        if tag == "article":
            self.where = (values["data-window"], values["data-layer"])
        elif tag == "tr" or (tag == "p" and values.get("class") == "run"):
            self.rows.append((self.where, []))
        elif tag in ("td", "th", "span") and self.rows:
            number = "number" in (values.get("class") or "") or tag == "span"
            self.cell = [values.get("data-figure") or "", "", number]
            self.rows[-1][1].append(self.cell)

    def handle_endtag(self, tag):
        if tag in ("td", "th", "span"):
            self.cell = None

    def handle_data(self, data):
        if self.cell is not None:
            self.cell[1] += data


def run(*command):
    return subprocess.run([str(part) for part in command], check=True, capture_output=True, text=True).stdout


def layers_of(figures):
    """Every layer's figures by window and layer id."""
    found = {}
    for window in figures["windows"]:
        for layer in window.get("layers") or [window]:
            found[(window["id"], layer["id"] if layer is not window else "")] = layer
    return found


def whole(value):
    """To a whole millimetre, halves away from nothing, on the number as it is written."""
    return str(decimal.Decimal(str(value)).quantize(decimal.Decimal(1), rounding=decimal.ROUND_HALF_UP))


def value_at(layer, path):
    for key in path.split("."):
        layer = (layer or {}).get(key)
    return layer


def against_figures(page, figures):
    """What the page says otherwise than the document, and how much was compared."""
    faults, compared = [], 0
    layers = layers_of(figures)
    orders = {order["fabric"]: order for order in figures["orders"]}
    for where, cells in page.rows:
        for figure, text, _ in cells:
            if figure in WHOLE:
                expected = whole(value_at(layers[where], figure))
            elif figure.startswith("orders.") and figure.endswith(".length_mm"):
                expected = f"{orders[figure[7:-10]]['length_mm']:g}"
            elif figure.startswith("orders.") and figure.endswith(".order_m"):
                expected = f"{orders[figure[7:-8]]['order_m']:.1f} m"
            else:
                continue
            compared += 1
            if text != expected:
                faults.append(f"{where} {figure}: the page {text}, the figures {expected}")
    return faults, compared


def on_paper(page, paper):
    """Rows whose numbers don't stand together in one line of the PDF, and how many rows were looked for."""
    lines = [" " + re.sub(r"\s+", " ", line) + " " for line in paper.splitlines()]
    missing, looked_for = [], 0
    for where, cells in page.rows:
        numbers = [re.sub(r"\s+", " ", text).strip() for figure, text, number in cells if number and figure and text]
        if not numbers:
            continue
        looked_for += 1
        in_order = re.compile(r".*?".join(rf"(?<=\s){re.escape(number)}(?=\s)" for number in numbers))
        if not any(in_order.search(line) for line in lines):
            missing.append(f"{where}: {numbers}")
    return missing, looked_for


def changed(page):
    """The page with the last digit of one number after the other changed: each must be noticed."""
    for _, cells in page.rows:
        for cell in cells:
            if cell[2] and cell[0] in WHOLE and cell[1][-1:].isdigit():
                said = cell[1]
                cell[1] = said[:-1] + str((int(said[-1]) + 1) % 10)
                yield f"{cell[0]} {said}"
                cell[1] = said


def main():
    options = argparse.ArgumentParser(description=__doc__)
    options.add_argument("--program", required=True)
    options.add_argument("--workroom", required=True)
    options.add_argument("--survey", type=pathlib.Path, required=True)
    asked = options.parse_args()
    figures = json.loads(run(asked.workroom, "figures", asked.survey))
    faults, counts = [], collections.Counter()
    with tempfile.TemporaryDirectory() as scratch:
        for kind in KINDS:
            for unit, paper in (("mm", "a4"), ("in", "letter")):
                name = pathlib.Path(scratch) / f"{kind}-{unit}"
                same = ["--unit", unit, "--paper", paper]
                page = Page(run(asked.workroom, "sheet", asked.survey, "--kind", kind, *same))
                run(asked.program, "--print", asked.survey, "-", f"{name}.pdf", "--sheet", kind, *same)
                text = run("pdftotext", "-layout", f"{name}.pdf", "-")
                missing, rows = on_paper(page, text)
                faults += [f"{kind} in {unit}, not on paper: {row}" for row in missing]
                counts["rows on paper"] += rows
                if unit == "mm":
                    wrong, compared = against_figures(page, figures)
                    faults += wrong
                    counts["figures"] += compared
                    for what in changed(page):
                        if not against_figures(page, figures)[0]:
                            faults.append(f"{kind}: a change isn't noticed: {what}")
    for fault in faults:
        print(fault, file=sys.stderr)
    print(", ".join(f"{count} {what}" for what, count in counts.items()))
    return 1 if faults or counts["figures"] < 50 or counts["rows on paper"] < 200 else 0


if __name__ == "__main__":
    sys.exit(main())
