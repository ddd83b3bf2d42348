#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""foreign_zips.py SURVEY PHOTO OUT: writes visit's files and things that look like one into the folder OUT, by Python's
zipfile and by hand. SURVEY mentions PHOTO, and PHOTO alone, under its sha256."""
import hashlib
import pathlib
import struct
import sys
import warnings
import zipfile

survey_file, photo_file, out = map(pathlib.Path, sys.argv[1:4])
SURVEY = survey_file.read_bytes()
PHOTO = photo_file.read_bytes()
NAME = "photos/" + hashlib.sha256(PHOTO).hexdigest() + ".jpg"
warnings.simplefilter("ignore")  # of names that stand twice


def write(name, entries, **options):
    with zipfile.ZipFile(out / f"{name}.zip", "w", **options) as archive:
        for entry, data in entries:
            archive.writestr(entry, data)
    return out / f"{name}.zip"


def changed(name, source, old, new, count=-1):
    data = (out / f"{source}.zip").read_bytes()
    assert old in data, name
    (out / f"{name}.zip").write_bytes(data.replace(old, new, count))


good = [("survey.json", SURVEY), (NAME, PHOTO)]
write("sound", good)
write("sound-deflated", good, compression=zipfile.ZIP_DEFLATED)
write("sound-other-order", good[::-1])
write("without-photo", good[:1])

write("empty", [])
write("no-survey", good[1:])
write("survey-twice", [good[0], good[0]])
write("photo-twice", [*good, good[1]])
write("climbing", [*good, ("../outside.jpg", PHOTO)])
write("climbing-within", [*good, ("photos/../../outside.jpg", PHOTO)])
write("rooted", [*good, ("/etc/outside.jpg", PHOTO)])
write("backslash", [*good, (NAME.replace("/", "\\"), PHOTO)])
write("folder", [*good, ("photos/", b"")])
write("capital-digest", [good[0], ("photos/" + NAME[7:71].upper() + ".jpg", PHOTO)])
write("long-name", [*good, ("photos/" + "a" * 60_000, PHOTO)])
write("control-name", [*good, ("photos/\x1b[2J\n.jpg", PHOTO)])
write("program", [good[0], (NAME.replace(".jpg", ".exe"), PHOTO)])
write("note", [*good, ("read me.txt", b"hello")])
write("other-picture-kind", [good[0], (NAME.replace(".jpg", ".png"), PHOTO)])
other = PHOTO[:-3] + b"abc"
write("wrong-digest", [good[0], (NAME, other)])
write("unmentioned", [*good, ("photos/" + hashlib.sha256(other).hexdigest() + ".jpg", other)])
write("not-json", [("survey.json", b"{"), good[1]])
write("other-json", [("survey.json", b'{"format": "other/1"}'), good[1]])
write("survey-too-large", [("survey.json", b" " * (4 * 1024 * 1024 + 1))], compression=zipfile.ZIP_DEFLATED)
write("packed-otherwise", good, compression=zipfile.ZIP_BZIP2)

# A bomb: 65 MiB of nothing in some 64 KiB.
write("bomb", [good[0], (NAME, bytes(65 * 1024 * 1024))], compression=zipfile.ZIP_DEFLATED)
write("many", [good[0], *((f"photos/{n:064x}.jpg", b"") for n in range(5001))])
# One that says it is small: the size in both headers (APPNOTE 6.3, 4.3.7 and 4.3.12) is set to 1000.
large = 2 * 1024 * 1024
write("lying-bomb-before", [good[0], (NAME, bytes(large))], compression=zipfile.ZIP_DEFLATED)
changed("lying-bomb", "lying-bomb-before", struct.pack("<I", large), struct.pack("<I", 1000))
(out / "lying-bomb-before.zip").unlink()

# Bit 0 of the general purpose flags: encrypted (4.4.4), in the central directory's entries and before the bytes.
data = bytearray((out / "sound.zip").read_bytes())
for mark, flags in ((b"PK\x03\x04", 6), (b"PK\x01\x02", 8)):
    place = data.find(mark)
    while place >= 0:
        data[place + flags] |= 1
        place = data.find(mark, place + 4)
(out / "locked.zip").write_bytes(data)

# One byte of the photo is another, the headers as they were.
data = bytearray((out / "sound.zip").read_bytes())
data[data.find(PHOTO) + len(PHOTO) // 2] ^= 1
(out / "byte-changed.zip").write_bytes(data)

(out / "no-zip.zip").write_bytes(b"nothing of a zip" * 100)
(out / "nothing.zip").write_bytes(b"")
