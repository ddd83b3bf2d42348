# SPDX-License-Identifier: Apache-2.0
"""Draws the photographs of the demo surveys: line drawings of each window to scale, as small JPEGs without metadata.

    draw_photos.py            redraws all, names each by its SHA-256 and writes hash and size into the documents

Needs ImageMagick's `convert`. A photo is found by its place in the document; its caption says what it shows: a caption
that begins with "Close" is a close view of the obstruction that it names by kind.
"""

import hashlib
import json
import os
import re
import subprocess
import sys

HERE = os.path.dirname(os.path.abspath(__file__))
DOCUMENTS = ("pilot-house.json", "net-store.json", "sail-loft.json")
WIDE, HIGH = 960, 720
PAPER, INK, SHADE, WOOD = "#efe9dc", "#2b2a28", "#d9d0bd", "#b59a72"


def value(window, *stations):
    replaced = {r.get("replaces") for r in window["readings"]}
    for station in stations:
        for reading in window["readings"]:
            if reading["station"] == station and reading["id"] not in replaced:
                return reading["value_mm"]
    return None


class Room:
    """What is drawn, in mm: x from the opening's left edge, y above the floor."""

    def __init__(self, window):
        self.window = window
        self.width = value(window, "opening.width.top", "opening.width.bottom", "gable.width.bottom") or 1100
        self.sill = 0 if window["shape"] == "door" else value(window, "below.left", "below.centre", "gable.below") or 820
        self.head = self.sill + (value(window, "opening.height.left", "opening.height.centre") or 1150)
        self.apex = self.sill + (value(window, "gable.height.apex") or 1500)
        self.ceiling = self.head + (value(window, "above.left", "above.centre") or 260)
        if window["shape"] == "gable":
            self.ceiling = self.apex + 180
        layer = window["layers"][-1] if "layers" in window else window
        self.hardware = layer.get("hardware") or {}
        self.left = -min(700, (value(window, "wall.left") or 450))
        self.right = self.width + min(700, (value(window, "wall.right") or 450))

    def view(self, caption):
        """(x, y, mm per pixel) of the picture's lower left corner."""
        x0, x1, y0, y1 = self.left - 120, self.right + 120, -150, self.ceiling + 150
        thing = self.close_up(caption)
        if thing:
            x0, x1 = thing["left_mm"] - 260, thing["left_mm"] + thing["width_mm"] + 260
            y0, y1 = thing["bottom_mm"] - 260, thing["bottom_mm"] + thing["height_mm"] + 260
        scale = max((x1 - x0) / WIDE, (y1 - y0) / HIGH)
        return (x0 + x1) / 2 - scale * WIDE / 2, (y0 + y1) / 2 - scale * HIGH / 2, scale

    def close_up(self, caption):
        if caption.startswith("Close"):
            for thing in self.window.get("obstructions", []):
                if thing["kind"].replace("-", " ") in caption:
                    return thing
        return None

    def fraction(self, caption, x, y):
        """Where a point of the room lies in the picture, as the marks have it."""
        left, low, scale = self.view(caption)
        return [round((x - left) / scale / WIDE, 3), round(1 - (y - low) / scale / HIGH, 3)]


class Picture:
    def __init__(self, room, caption):
        self.room = room
        self.left, self.low, self.scale = room.view(caption)
        self.commands = []

    def point(self, x, y):
        return f"{(x - self.left) / self.scale:.1f},{HIGH - (y - self.low) / self.scale:.1f}"

    def draw(self, primitive, fill="none", stroke=INK, width=2.0):
        self.commands += ["-fill", fill, "-stroke", stroke, "-strokewidth", str(width), "-draw", primitive]

    def shape(self, points, fill="none", width=2.0):
        self.draw("polygon " + " ".join(self.point(x, y) for x, y in points), fill, INK, width)

    def box(self, x, y, wide, high, fill="none", width=2.0):
        self.shape([(x, y), (x + wide, y), (x + wide, y + high), (x, y + high)], fill, width)

    def line(self, x1, y1, x2, y2, width=2.0):
        self.draw(f"line {self.point(x1, y1)} {self.point(x2, y2)}", "none", INK, width)

    def all(self):
        room = self.room
        self.box(room.left, 0, room.right - room.left, room.ceiling, "#f6f2e8", 2.5)
        self.line(room.left - 400, 0, room.right + 400, -6, 4)
        for x in range(int(room.left), int(room.right), 190):  # boards of the floor
            self.line(x, 0, x - 60, -140, 1)
        self.opening()
        for thing in room.window.get("obstructions", []):
            self.thing(thing)
        self.pole()
        return self

    def opening(self):
        room, window = self.room, self.room.window
        w, sill, head = room.width, room.sill, room.head
        if window["shape"] == "gable":
            apex = room.apex
            self.shape([(0, sill), (w, sill), (w / 2, apex)], "#dfe6e6", 3)
            self.line(w / 2, sill, w / 2, apex)
            self.line(w / 4, (sill + apex) / 2, 3 * w / 4, (sill + apex) / 2)
            return
        bottom = value(window, "opening.width.bottom") or w
        right_head = sill + (value(window, "opening.height.right") or head - sill)
        corners = [((w - bottom) / 2, sill), ((w + bottom) / 2, sill), (w, right_head), (0, head)]
        self.shape(corners, WOOD if window["shape"] == "door" else "#dfe6e6", 3)
        inset = 45
        if window["shape"] == "door":
            for low, high in ((0.08, 0.48), (0.56, 0.93)):
                for x in (0.14, 0.55):
                    self.box(w * x, head * low, w * 0.31, head * (high - low), "#c3aa84")
            return
        self.shape([(x + (inset if x < w / 2 else -inset), y + (inset if y < (sill + head) / 2 else -inset))
                    for x, y in corners], "#cfdcdf")
        self.line(w / 2, sill + inset, w / 2, head - inset, 3)
        for share in (1 / 3, 2 / 3):
            self.line(inset, sill + share * (head - sill), w - inset, sill + share * (head - sill), 2)

    def thing(self, o):
        x, y, wide, high = o["left_mm"], o["bottom_mm"], o["width_mm"], o["height_mm"]
        kind = o["kind"]
        if kind == "casement-swing":  # a leaf that stands open, seen through
            self.shape([(x, y), (x + wide * 0.55, y - 60), (x + wide * 0.55, y + high - 60), (x, y + high)], "none", 2.5)
            return
        fill = {"beam": WOOD, "radiator": "#f3f1ec", "sill-board": WOOD, "furniture": "#c9b48d"}.get(kind, SHADE)
        self.box(x, y, wide, high, fill, 2.5)
        if kind == "radiator":
            for i in range(1, int(wide // 60)):
                self.line(x + i * wide / (wide // 60), y + 25, x + i * wide / (wide // 60), y + high - 25, 1.5)
            self.box(x + wide, y + 40, 60, 45, SHADE)
        elif kind == "socket":
            for share in (0.3, 0.7):
                cx, cy = x + wide * share, y + high / 2
                self.draw(f"circle {self.point(cx, cy)} {self.point(cx + 9, cy)}", INK)
        elif kind == "beam":
            for share in (0.3, 0.55, 0.8):
                self.line(x + 30, y + high * share, x + wide - 60, y + high * share - 8, 1)
        elif kind == "furniture":
            self.box(x + 30, y + 40, wide - 60, high - 80, "none", 1.5)

    def pole(self):
        hardware, room = self.room.hardware, self.room
        length, above = hardware.get("length_mm"), value(room.window, "pole.above", "pole.above.left")
        if length is None or above is None:
            return
        left = hardware.get("left_mm", (room.width - length) / 2)
        height, end = room.head + above, hardware.get("finial_mm", 0)
        radius = hardware.get("diameter_mm", 20) / 2
        self.box(left, height - radius, length, 2 * radius, WOOD, 1.5)
        for x, away in ((left, -1), (left + length, 1)):
            if end:
                middle = self.point(x + away * end / 2, height)
                self.draw(f"circle {middle} {self.point(x + away * end / 2 + end / 2, height)}", WOOD)

    def jpeg(self):
        command = ["convert", "-size", f"{WIDE}x{HIGH}", f"xc:{PAPER}", *self.commands, "-strip", "-sampling-factor", "4:2:0",
                   "-quality", "72", "jpg:-"]
        return subprocess.run(command, check=True, capture_output=True).stdout


def redraw(name, kept):
    path = os.path.join(HERE, name)
    with open(path, encoding="utf-8") as file:
        text = file.read()
    for room in json.loads(text)["rooms"]:
        for window in room["windows"]:
            for photo in window.get("photos", []):
                picture = Picture(Room(window), photo["caption"]).all().jpeg()
                digest = hashlib.sha256(picture).hexdigest()
                with open(os.path.join(HERE, "photos", digest + ".jpg"), "wb") as file:
                    file.write(picture)
                kept.add(digest + ".jpg")
                # Only hash and size change: the rest of the document stays as it is written.
                text = re.sub('"' + photo["sha256"] + r'"(,\s*"media_type": "image/jpeg",\s*"bytes": )\d+',
                              f'"{digest}"\\g<1>{len(picture)}', text)
    with open(path, "w", encoding="utf-8") as file:
        file.write(text)


def main():
    kept = set()
    os.makedirs(os.path.join(HERE, "photos"), exist_ok=True)
    for name in DOCUMENTS:
        redraw(name, kept)
    for name in sorted(os.listdir(os.path.join(HERE, "photos"))):
        if name not in kept:
            os.remove(os.path.join(HERE, "photos", name))
    print(f"{len(kept)} photos")
    return 0


if __name__ == "__main__":
    sys.exit(main())
