#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""failover_test.py WORKROOM [--without-waiting]: two receivers behind nginx on a PostgreSQL with a synchronous standby. While phones send,
first a receiver is killed, then the primary (SIGKILL, all its processes), and the standby takes over. Every revision
and photo that a receipt was given for must be there, under the digest that the receipt says, and be told once by the
cursor. Without waiting, commits don't wait for the standby and the same look must find what is lost then."""
import hashlib
import json
import os
import pathlib
import random
import signal
import subprocess
import sys
import tempfile
import threading
import time

import cluster
from client import Phone, Receiver

SEED = 20261127
PHONES = 6
NGINX = """
worker_processes 1; daemon off; pid {folder}/nginx.pid; error_log {folder}/nginx.log;
events {{ worker_connections 256; }}
http {{
  access_log off; client_max_body_size 33m; client_body_temp_path {folder}/body; proxy_temp_path {folder}/proxy;
  fastcgi_temp_path {folder}/f; uwsgi_temp_path {folder}/u; scgi_temp_path {folder}/s;
  upstream workroom {{ server 127.0.0.1:{first}; server 127.0.0.1:{second}; }}
  server {{
    listen 127.0.0.1:{port};
    location / {{
      proxy_pass http://workroom; proxy_http_version 1.1; proxy_set_header Host $host:$server_port;
      proxy_set_header Connection ""; proxy_set_header X-Forwarded-For $remote_addr; proxy_request_buffering off;
      proxy_connect_timeout 2s;
    }}
  }}
}}
"""


class Sender(threading.Thread):
    """One phone that sends surveys and photos, each again until there is a receipt, as the protocol says."""

    def __init__(self, number, phone, until):
        super().__init__()
        self.number, self.phone, self.until = number, phone, until
        self.chance = random.Random(SEED + number)
        self.receipts, self.photos, self.failures, self.fault = [], [], 0, None

    def again(self, send):
        while True:
            status, body = send()
            if status in (200, 201):
                return json.loads(body)
            self.failures += 1
            if status not in (0, 500, 502, 503, 504) or self.failures > 2000:
                raise RuntimeError(f"answered {status}: {body!r}")
            time.sleep(0.05)

    def run(self):
        try:
            self.send_all()
        except Exception as fault:  # told by whoever waits for the thread
            self.fault = fault

    def send_all(self):
        turn = 0
        while not self.until.is_set():
            turn += 1
            survey = f"house-{self.number}-{turn // 4}"
            document = json.dumps({"format": "truehang.survey/1", "id": survey, "revision": turn % 4 + 1,
                                   "title": f"House {turn}", "fabrics": [], "rooms": []}).encode()
            self.receipts.append(self.again(lambda: self.phone.put_survey(survey, turn % 4 + 1, document)))
            if turn % 5 == 0:
                photo = self.chance.randbytes(self.chance.randint(1, 2_500_000))
                self.photos.append(self.again(lambda: self.phone.put_photo(photo)))


def free_port():
    import socket
    with socket.socket() as taken:
        taken.bind(("127.0.0.1", 0))
        return taken.getsockname()[1]


def all_changes(phone):
    """What the cursor tells, from its beginning."""
    told, after, more = [], "", True
    while more:
        status, body = phone.ask("GET", "/changes" + (f"?after={after}" if after else ""))
        assert status == 200, (status, body)
        page = json.loads(body)
        told += page["changes"]
        after, more = page["next"], page["more"]
    return told


def look(phone, senders):
    """What is not there that a receipt was given for."""
    lost = []
    told = [(change["id"], change["revision"], change["sha256"]) for change in all_changes(phone)]
    if len(told) != len(set(told)):
        lost.append("a revision was told twice")
    for receipt in (receipt for sender in senders for receipt in sender.receipts):
        status, body = phone.ask("GET", f"/surveys/{receipt['id']}/revisions/{receipt['revision']}")
        if status != 200 or hashlib.sha256(body).hexdigest() != receipt["sha256"]:
            lost.append(f"{receipt}: {status}")
        if (receipt["id"], receipt["revision"], receipt["sha256"]) not in told:
            lost.append(f"{receipt}: not told")
    for receipt in (receipt for sender in senders for receipt in sender.photos):
        status, body = phone.ask("GET", f"/photos/{receipt['sha256']}")
        if status != 200 or hashlib.sha256(body).hexdigest() != receipt["sha256"]:
            lost.append(f"photo {receipt}: {status}")
    return lost


def counts(senders):
    return sum(len(sender.receipts) for sender in senders), sum(len(sender.photos) for sender in senders)


def main(workroom, waiting=True):
    folder = pathlib.Path(tempfile.mkdtemp(prefix="truehang-failover-"))
    primary = cluster.Server(5432)
    primary.sql("CREATE DATABASE kept")
    standby = cluster.Server(5433, like=primary)
    primary.set(f"synchronous_standby_names = '{'*' if waiting else ''}'\n")
    primary.reload()
    while primary.sql(f"SELECT count(*) FROM pg_stat_replication WHERE sync_state = '{'sync' if waiting else 'async'}'"
                      ).strip() != "1":
        time.sleep(0.05)
    database = (f"postgresql:///kept?host={primary.folder},{primary.folder}&port=5432,5433&user=truehang"
                "&target_session_attrs=read-write")
    receivers = [Receiver(workroom, folder / name, database) for name in ("one", "two")]
    port = free_port()
    (folder / "nginx.conf").write_text(NGINX.format(folder=folder, port=port, first=receivers[0].port,
                                                    second=receivers[1].port))
    nginx = subprocess.Popen(["nginx", "-c", folder / "nginx.conf", "-e", folder / "nginx.log"])
    try:
        first = Phone(receivers[0].port, receivers[0].code)
        until = threading.Event()
        senders = [Sender(number, Phone(port, token=first.token), until) for number in range(PHONES)]
        for sender in senders:
            sender.start()
        marks = []

        def after(seconds):
            time.sleep(seconds)
            marks.append(counts(senders))

        after(4)
        receivers[0].kill()
        after(3)
        # What is written from here on doesn't reach the standby: a receipt for it would be a promise broken.
        held = standby.hold_receiving()
        time.sleep(0.5)
        primary.kill()
        os.kill(held, signal.SIGCONT)
        standby.promote()
        after(6)
        until.set()
        for sender in senders:
            sender.join(120)
        phone = Phone(port, token=first.token)
        lost = look(phone, senders)
        surveys, photos = counts(senders)
        print(f"receipts before the first kill, the second, and after: {marks}; in all {surveys} revisions and {photos} "
              f"photos; {sum(sender.failures for sender in senders)} tries failed; lost: {len(lost)}")
        for line in lost[:10]:
            print(line)
        # A run in which nothing was sent around a kill would prove nothing.
        moved = marks[0][0] > 20 and marks[1][0] > marks[0][0] and marks[2][0] > marks[1][0] and photos > 5
        dead = [sender.number for sender in senders if sender.is_alive() or sender.fault]
        for sender in senders:
            if sender.fault:
                print(f"phone {sender.number}: {sender.fault}")
        return 0 if moved and bool(lost) != waiting and not dead else 1
    finally:
        until.set()
        nginx.terminate()
        for receiver in receivers:
            receiver.kill()
        standby.end()
        primary.end()


if __name__ == "__main__":
    sys.exit(main(sys.argv[1], "--without-waiting" not in sys.argv))
