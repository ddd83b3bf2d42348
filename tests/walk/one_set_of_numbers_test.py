#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""One window, one set of numbers: the command, the workroom's page in a browser, the printed sheet and the phone's
screen say the same. What a walk left (`truehang-walk --out DIR`) is looked at from outside; numbers are compared as
they are written, so that a rounding in one place only shows too."""

import argparse
import copy
import decimal
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


def tenth(value):
    """To one decimal, halves away from nothing, on the number as it is written."""
    return str(decimal.Decimal(str(value)).quantize(decimal.Decimal("0.1"), rounding=decimal.ROUND_HALF_UP))


def from_command(figures):
    """What the figures document says, written as a sheet writes it: ± is twice the standard uncertainty (contract),
    to a whole millimetre; masses to 0.1 kg; cloth in the steps it is sold by."""
    window = figures["windows"][0]
    said = {
        "finished.width_mm": whole(window["finished"]["width_mm"]),
        "finished.drop_mm": whole(window["finished"]["drop_mm"]),
        "finished.drop_u": 2 * window["finished"]["drop_u_mm"],
        "cloth.widths": str(window["cloth"]["widths"]),
        "cloth.cut_drop_mm": whole(window["cloth"]["cut_drop_mm"]),
        "lining.cut_drop_mm": whole(window["lining"]["cut_drop_mm"]),
        "tabs.each": str(window["tabs"]["each"]),
        "mass_kg": tenth(window['mass_kg']),
    }
    for order in figures["orders"]:
        said[f"order {order['fabric']}"] = tenth(order['order_m'])
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


def from_page(dom):
    """What stands on the workroom's page for the window, and ± from the cell after the drop."""
    cells = Cells(dom)
    said = {figure: number(texts[0]) for figure, texts in cells.found.items()}
    drop = next(row for row in cells.rows if row.split()[:1] == ["Drop"])
    said["finished.drop_u"] = after_sign(drop)
    # The page counts the tabs of all curtains.
    said["tabs.each"] = str(int(said["tabs.each"]) // int(said["finished.curtains"]))
    said["tabs.spacing_mm"] = spacing([int(said[f"tabs.centre.{at}"]) for at in range(1, int(said["tabs.each"]) + 1)])
    for figure in list(said):
        if figure.startswith("orders."):
            said["order " + figure[len("orders.") : -len(".order_m")]] = said[figure]
    return said


def spacing(centres):
    """Centre to centre as the first and the last written centre give it, to whole millimetres."""
    return f"{(centres[-1] - centres[0]) / (len(centres) - 1):.0f}"


def from_paper(text, fabrics):
    """What stands on the printed sheet, line by line."""

    def line(beginning, among=text):
        found = re.search(rf"(?:^|\s{{2,}}){beginning}\s+(.*)$", among, re.MULTILINE)
        return found.group(1) if found else ""

    curtains = int(number(line("Curtains")))
    cut = text[text.index("\nCut\n") : text.index("\nOrder\n")]
    drops = re.findall(r"^(\d+) drops?\s+(\d+) ", cut, re.MULTILINE)
    centres = re.search(r"on the flat\s*\n((?:\s*\d+)+)", cut).group(1).split()
    said = {
        "finished.width_mm": number(line("Width, each")),
        "finished.drop_mm": number(line("Drop")),
        "finished.drop_u": after_sign(line("Drop")),
        "cloth.widths": drops[0][0],
        "cloth.cut_drop_mm": drops[0][1],
        "lining.cut_drop_mm": drops[1][1],
        "tabs.each": str(int(re.search(r"^(\d+) tabs", cut, re.MULTILINE).group(1)) // curtains),
        "tabs.spacing_mm": spacing([int(centre) for centre in centres]),
        "mass_kg": number(line("In all")),
    }
    order = text[text.index("\nOrder\n") :]
    for fabric in fabrics:
        named = re.search(rf"^{re.escape(fabric['name'].split(',')[0])}.*?\s([\d.]+) m\s", order, re.MULTILINE)
        said[f"order {fabric['id']}"] = named.group(1) if named else None
    return said


def from_screen(names, fabrics):
    """What the visit's and the figures' page say to those who hear them."""
    said = {}
    for fabric in fabrics:
        order = re.compile(re.escape(fabric["name"].split(",")[0]) + r".*: ([\d.,]+) m$")
        heard = [match.group(1) for match in map(order.match, names) if match]
        said[f"order {fabric['id']}"] = number(heard[0]) if heard else None
    for figure, label in ON_SCREEN.items():
        heard = next((name for name in names if name.startswith(label + ": ")), label + ": ")
        said[figure] = number(heard[len(label) + 2 :])
        if figure == "finished.drop_mm":
            said["finished.drop_u"] = after_sign(heard)
    return said


def disagreements(said_by):
    """Every figure that two of them say differently, or that one that must say it doesn't."""
    found = []
    command = said_by["command"]
    drop_u = command["finished.drop_u"]
    for who, said in said_by.items():
        for figure in sorted(command):
            if figure.endswith("_u"):
                continue
            optional = who == "screen" and figure not in said
            if not optional and said.get(figure) != command[figure]:
                found.append(f"{figure}: the command {command[figure]}, the {who} {said.get(figure)}")
        # Twice the standard uncertainty, rounded to a whole millimetre on paper, page and screen.
        if who != "command" and (said["finished.drop_u"] is None or abs(float(said["finished.drop_u"]) - drop_u) > 0.5):
            found.append(f"±: the command {drop_u}, the {who} {said['finished.drop_u']}")
    return found


def dom_of(url, folder):
    chromium = ["chromium", "--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run",
                "--disable-background-networking", "--disable-component-update", "--disable-sync",
                f"--user-data-dir={folder}", "--dump-dom", url]
    return subprocess.run(chromium, check=True, capture_output=True, text=True, timeout=240).stdout


def served_dom(workroom, walked, scratch):
    """The page of the window as the workroom serves it, as a browser holds it."""
    data = scratch / "workroom"
    shutil.copytree(walked / "workroom", data)
    serving = subprocess.Popen([workroom, "serve", "--data", data, "--port", "0"], stdout=subprocess.PIPE, text=True)
    try:
        address = serving.stdout.readline().split()[-1]
        return dom_of(address + (walked / "page.txt").read_text(), scratch / "browser")
    finally:
        serving.terminate()
        serving.wait()


def everything_fails_when_changed(said_by):
    """Each figure, changed by one in the last place wherever it is said: the comparison must notice."""
    unseen = []
    for who, said in said_by.items():
        for figure, value in said.items():
            if value is None or figure not in said_by["command"] or (who == "command" and figure.endswith("_u")):
                continue
            changed = copy.deepcopy(said_by)
            last = 10 ** -len(value.partition(".")[2]) if isinstance(value, str) else 1
            changed[who][figure] = f"{float(value) + last:g}"
            if not disagreements(changed):
                unseen.append(f"{figure} of the {who}")
    return unseen


def main():
    options = argparse.ArgumentParser(description=__doc__)
    options.add_argument("--walked", type=pathlib.Path, required=True)
    options.add_argument("--workroom", required=True)
    asked = options.parse_args()
    survey = asked.walked / "survey.json"
    figures = json.loads(subprocess.run([asked.workroom, "figures", survey], check=True, capture_output=True).stdout)
    paper = subprocess.run(["pdftotext", "-layout", asked.walked / "sheet.pdf", "-"], check=True, capture_output=True,
                           text=True).stdout
    fabrics = json.loads(survey.read_text())["fabrics"]
    with tempfile.TemporaryDirectory() as scratch:
        page = from_page(served_dom(asked.workroom, asked.walked, pathlib.Path(scratch)))
    said_by = {
        "command": from_command(figures),
        "page": page,
        "paper": from_paper(paper, fabrics),
        "screen": from_screen(json.loads((asked.walked / "screen.json").read_text()), fabrics),
    }
    faults = disagreements(said_by)
    unseen = everything_fails_when_changed(said_by) if not faults else []
    for fault in faults:
        print(fault, file=sys.stderr)
    for one in unseen:
        print(f"a change isn't noticed: {one}", file=sys.stderr)
    if not faults and not unseen:
        print(f"{len(said_by['command'])} figures, one set of numbers in four places")
    return 1 if faults or unseen else 0


if __name__ == "__main__":
    sys.exit(main())
