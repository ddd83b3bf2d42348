#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""erase_test.py WORKROOM: of a survey that was erased neither a table of the database nor a file of its tables holds
anything but that it was erased. (Its write-ahead log is let go in the database's own time.)"""
import json
import pathlib
import random
import subprocess
import sys
import tempfile

import cluster
from client import Phone, Receiver

HOUSE = "house-that-goes"
CLIENT = "Zebedee Quillfeather"


def survey(name, client, photo):
    return json.dumps({"format": "truehang.survey/1", "id": name, "revision": 1, "client": {"name": client}, "fabrics": [],
                       "rooms": [{"id": "r", "windows": [{"id": "w", "shape": "recess", "readings": [], "photos": [
                           {"sha256": photo, "media_type": "image/jpeg", "bytes": 1}]}]}]}).encode()


def held(server, pieces):
    """Which of the byte strings some file of the database's tables holds."""
    server.sql("CHECKPOINT")
    files = [file.read_bytes() for file in (server.data / "base").rglob("*") if file.is_file()]
    return {piece for piece in pieces if any(piece in file for file in files)}


def main(workroom):
    server = cluster.Server(5432)
    receiver = None
    try:
        server.sql("CREATE DATABASE kept")
        data = pathlib.Path(tempfile.mkdtemp(prefix="truehang-erase-"))
        receiver = Receiver(workroom, data, server.url("kept"))
        phone = Phone(receiver.port, receiver.code)
        photos = [random.Random(seed).randbytes(1_500_000) for seed in (1, 2)]  # random bytes are kept as they are
        digests = [json.loads(phone.put_photo(photo)[1])["sha256"] for photo in photos]
        assert phone.put_survey(HOUSE, 1, survey(HOUSE, CLIENT, digests[0]))[0] == 201
        assert phone.put_survey("house-that-stays", 1, survey("house-that-stays", "Another", digests[1]))[0] == 201
        words = [CLIENT.encode(), photos[0][500:564], photos[1][500:564]]
        assert held(server, words) == set(words), "what isn’t found before proves nothing"
        subprocess.run([workroom, "erase", "--data", data, "--database", server.url("kept"), HOUSE], check=True)
        assert held(server, words) == {words[2]}, "the files of the tables hold what was erased"
        tables = server.sql("SELECT tablename FROM pg_tables WHERE schemaname = 'public'", "kept").split()
        assert len(tables) > 10
        for table in tables:
            rows = server.sql(f"SELECT t::text FROM {table} AS t", "kept")
            tells = table in ("change",) or table.startswith("erased")
            assert tells or (HOUSE not in rows and digests[0] not in rows), table
        assert server.sql("SELECT count(DISTINCT sha256) FROM photo_piece", "kept").strip() == "1"
        assert phone.ask("GET", f"/photos/{digests[1]}")[1] == photos[1]
        print("erased")
    finally:
        if receiver:
            receiver.kill()
        server.end()


if __name__ == "__main__":
    main(sys.argv[1])
