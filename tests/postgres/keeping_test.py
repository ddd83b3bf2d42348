#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""keeping_test.py WORKROOM: `verify` and `export` on a database. What is exported of it is byte by byte what a folder
with the same records exports; one byte that changed in a document, a photo or the house rules is found and named."""
import hashlib
import json
import pathlib
import random
import sqlite3
import subprocess
import sys
import tempfile
import zipfile

import cluster
from client import Phone, Receiver

HOUSE = "house-of-both"
WHEN = "2026-03-14T10:00:00.000Z"


def survey(revision, *photos):
    return json.dumps({"format": "truehang.survey/1", "id": HOUSE, "revision": revision, "title": "Of both", "fabrics": [],
                       "rooms": [{"id": "r", "windows": [{"id": "w", "shape": "recess", "readings": [], "photos": [
                           {"sha256": photo, "media_type": "image/jpeg", "bytes": 1} for photo in photos]}]}]}).encode()


class Kept:
    """One workroom with the same records as the other."""

    def __init__(self, workroom, data, url):
        self.workroom, self.data, self.url = workroom, data, url

    def run(self, command, *words):
        database = ["--database", self.url] if self.url else []
        return subprocess.run([self.workroom, command, "--data", self.data, *database, *words], capture_output=True,
                              text=True, check=False)

    def fill(self, photos):
        receiver = Receiver(self.workroom, self.data, self.url)
        try:
            phone = Phone(receiver.port, receiver.code)
            digests = [hashlib.sha256(photo).hexdigest() for photo in photos]
            for revision in (1, 2):
                assert phone.put_survey(HOUSE, revision, survey(revision, *digests, "0" * 64))[0] == 201
            for photo in photos:
                assert phone.put_photo(photo)[0] == 201
            site = {"Host": f"127.0.0.1:{receiver.port}", "Origin": f"http://127.0.0.1:{receiver.port}",
                    "Content-Type": "application/x-www-form-urlencoded"}
            phone.token = None
            saved = phone.ask("POST", "/house-rules", b"from=0&name=Rules+of+the+quay", site)
            assert saved[0] == 303, saved
        finally:
            receiver.kill()


def main(workroom):
    server = cluster.Server(5432)
    try:
        server.sql("CREATE DATABASE kept")
        folder = pathlib.Path(tempfile.mkdtemp(prefix="truehang-keeping-"))
        files = Kept(workroom, folder / "files", None)
        database = Kept(workroom, folder / "database", server.url("kept"))
        photos = [b"\xff\xd8\xff" + random.Random(seed).randbytes(size) for seed, size in ((1, 2_500_000), (2, 10))]
        for kept in (files, database):
            kept.data.mkdir()
            kept.fill(photos)
        times = f"UPDATE revision SET received_at = '{WHEN}'; UPDATE photo SET received_at = '{WHEN}'"
        server.sql(times, "kept")
        records = sqlite3.connect(files.data / "workroom.sqlite")
        records.executescript(times)
        records.close()

        for kept in (files, database):
            whole = kept.run("verify")
            assert whole.returncode == 0, whole
            assert "2 documents, 2 photos (2.5 MB), 0 versions of rolls, 1 of house rules: all whole" in whole.stdout, whole
        assert server.url("kept") not in database.run("verify").stdout, "an address may hold a password"

        for words in ([], ["--visit"]):
            for kept in (files, database):
                done = kept.run("export", HOUSE, kept.data / f"out{len(words)}.zip", *words)
                assert done.returncode == 0 and "not here: 1 photo" in done.stdout, done
                left = [entry.name for entry in kept.data.iterdir() if entry.name.startswith(".truehang")]
                assert not left, left
            one, other = ((kept.data / f"out{len(words)}.zip").read_bytes() for kept in (files, database))
            assert words or one == other, "the bytes differ"
            names = [sorted(zipfile.ZipFile(kept.data / f"out{len(words)}.zip").namelist()) for kept in (files, database)]
            assert names[0] == names[1] and sum("photos/" in name for name in names[0]) == 2, names
            for name in names[0]:
                texts = [zipfile.ZipFile(kept.data / f"out{len(words)}.zip").read(name) for kept in (files, database)]
                assert texts[0] == texts[1], name
        assert database.run("export", HOUSE, database.data / "out0.zip").returncode == 2, "nothing is written over"
        assert database.run("export", "none", database.data / "none.zip").returncode == 2
        assert not (database.data / "none.zip").exists()

        digest = hashlib.sha256(photos[0]).hexdigest()
        server.sql("UPDATE revision SET bytes = set_byte(bytes, 5, 90) WHERE revision = 1", "kept")
        server.sql(f"UPDATE photo_piece SET bytes = set_byte(bytes, 7, (get_byte(bytes, 7) + 1) % 256)"
                   f" WHERE sha256 = '{digest}' AND number = 1", "kept")
        server.sql("UPDATE house_rules SET bytes = 'x'", "kept")
        server.sql("INSERT INTO photo_piece VALUES('" + "1" * 64 + "', 0, 'x')", "kept")
        found = database.run("verify")
        assert found.returncode == 1, found
        for line in (f"revision 1 of {HOUSE}: Its bytes aren’t the ones that were received.",
                     f"photo {digest}: Its bytes aren’t the ones that were received.",
                     "version 1 of the house rules: ", "photo " + "1" * 64 + ": No record tells of it", "3 faults"):
            assert line in found.stdout, (line, found.stdout)
        torn = database.run("export", HOUSE, database.data / "torn.zip")
        assert torn.returncode == 1 and digest in torn.stdout, torn
        server.sql(f"DELETE FROM photo_piece WHERE sha256 = '{digest}' AND number = 2", "kept")
        assert f"photo {digest}: It is 2097152 bytes long; 2500003 were received." in database.run("verify").stdout
        server.sql(f"DELETE FROM photo_piece WHERE sha256 = '{digest}'", "kept")
        assert f"photo {digest}: Its bytes aren’t there." in database.run("verify").stdout

        server.sql("CREATE DATABASE empty")
        nothing = Kept(workroom, database.data, server.url("empty")).run("verify")
        assert nothing.returncode == 2 and "No workroom" in nothing.stderr, nothing
        assert server.sql("SELECT count(*) FROM pg_tables WHERE schemaname = 'public'", "empty").strip() == "0"
        print("kept and found")
    finally:
        server.end()


if __name__ == "__main__":
    main(sys.argv[1])
