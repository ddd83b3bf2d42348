#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""compare.py WORKROOM: documents a second of the receiver and of a PouchDB server, in turns in one run.

The same client (wrk, one thread), the same document byte for byte, each under an id of its own, so many at once. The receiver
answers once a document is on the disk (SQLite, WAL, synchronous=FULL) and has checked that it is a survey; the other as it
comes, on LevelDB, which it doesn't ask to sync. Goal: five times its documents. Needs npm, which fetches the server once."""
import pathlib
import re
import socket
import statistics
import subprocess
import sys
import tempfile
import time
import urllib.request

HERE = pathlib.Path(__file__).resolve().parent
sys.path.insert(0, str(HERE.parent.parent / "postgres"))
from client import Phone, Receiver, digest_field  # noqa: E402

SECONDS, ROUNDS = 5, 3


def document_files(folder):
    """The worked example of a survey, its id left open; ids for more documents than can be taken, with their digests."""
    text = (HERE.parent.parent / "reference/contract/survey.example.json").read_text(encoding="utf-8")
    text, count = re.subn(r'^(\s*"id": )"[^"]*"', r'\1"ID"', text, count=1, flags=re.MULTILINE)
    assert count == 1
    file = folder / "survey.json"
    file.write_text(text, encoding="utf-8")
    ids = [f"visit-{number}" for number in range(SECONDS * 20_000)]
    lines = folder / "digests"
    lines.write_text("".join(f"{id} {digest_field(text.replace('ID', id).encode())}\n" for id in ids), encoding="utf-8")
    return file, lines


def rate(url, at_once, where, files, *headers):
    done = subprocess.run(["wrk", "-t1", f"-c{at_once}", f"-d{SECONDS}s", "-s", HERE / "put.lua", url, "--", where,
                           *files, *headers], capture_output=True, text=True, check=True)
    assert "Non-2xx" not in done.stdout and not done.stderr, done.stdout + done.stderr
    return float(re.search(r"Requests/sec:\s+([\d.]+)", done.stdout).group(1))


def free_port():
    with socket.create_server(("127.0.0.1", 0)) as taken:
        return taken.getsockname()[1]


def ask(url, method="GET"):
    with urllib.request.urlopen(urllib.request.Request(url, method=method), timeout=5) as reply:
        return reply.status


class Pouch:
    def __init__(self, folder):
        folder.mkdir()
        self.url = f"http://127.0.0.1:{free_port()}"
        self.process = subprocess.Popen(
            [HERE / "node_modules/.bin/pouchdb-server", "--port", self.url.rsplit(":", 1)[1], "--dir", folder,
             "--no-stdout-logs"], cwd=folder, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
        for _ in range(100):
            try:
                ask(self.url)
                break
            except OSError:
                time.sleep(0.1)
        assert ask(self.url + "/surveys", "PUT") == 201

    def rate(self, at_once, files):
        return rate(self.url, at_once, "/surveys/ID", files)

    def end(self):
        self.process.terminate()
        self.process.wait()


class Workroom:
    def __init__(self, workroom, folder):
        self.receiver = Receiver(workroom, str(folder))
        self.token = Phone(self.receiver.port, self.receiver.code).token

    def rate(self, at_once, files):
        return rate(f"http://127.0.0.1:{self.receiver.port}", at_once, "/surveys/ID/revisions/1", files,
                    "Authorization:Bearer " + self.token)

    def end(self):
        self.receiver.process.terminate()
        self.receiver.process.wait()


def main(workroom):
    if not (HERE / "node_modules").is_dir():
        subprocess.run(["npm", "install", "--no-package-lock", "--no-audit", "--no-fund", "--loglevel=error"], cwd=HERE, check=True)
    with tempfile.TemporaryDirectory() as folder:
        folder = pathlib.Path(folder)
        files = document_files(folder)
        print(f"documents of {files[0].stat().st_size} bytes, {ROUNDS} rounds of {SECONDS} s each, medians:")
        for at_once in (1, 8, 32):
            ours, theirs = [], []
            for turn in range(ROUNDS):  # each in a fresh place: ids are new, and what is stored doesn't slow it
                for made, rates in ((Pouch, theirs), (lambda place: Workroom(workroom, place), ours)):
                    server = made(folder / f"{at_once}-{turn}-{len(ours)}-{len(theirs)}")
                    try:
                        rates.append(server.rate(at_once, files))
                    finally:
                        server.end()
            mine, other = statistics.median(ours), statistics.median(theirs)
            print(f"{at_once} at once: receiver {mine:.0f} a second, PouchDB server {other:.0f}; {mine / other:.1f} x (goal 5)")
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1]))
