#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""receiver_killed_test.py WORKROOM [UPLOADS]: a receiver is killed (SIGKILL) again and again while phones send UPLOADS
surveys and photos, and started anew on the same folder. Every record that a receipt was given for must be there to the
byte, each once; nothing may be there twice or half; and `verify` must find the folder whole."""
import hashlib
import json
import pathlib
import random
import subprocess
import sys
import tempfile
import threading
import time

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parent.parent / "postgres"))
from client import Phone, Receiver  # noqa: E402

SEED = 20261127
PHONES = 4


class Sender(threading.Thread):
    """Sends its share, each again until there is a receipt."""

    def __init__(self, number, phone, uploads):
        super().__init__()
        self.number, self.phone, self.uploads = number, phone, uploads
        self.chance = random.Random(SEED + number)
        self.receipts, self.cut, self.fault = [], 0, None

    def again(self, send):
        for _ in range(2000):
            status, body = send()
            if status in (200, 201):
                return json.loads(body)
            if status not in (0, 500, 503):
                raise RuntimeError(f"answered {status}: {body!r}")
            self.cut += 1
            time.sleep(0.02)
        raise RuntimeError("never answered")

    def run(self):
        try:
            for turn in range(self.uploads):
                if turn % 2:
                    data = self.chance.randbytes(self.chance.randrange(1_000, 2_000_000))
                    data = b"\xff\xd8\xff\xe0" + data
                    receipt = self.again(lambda: self.phone.put_photo(data))
                    path = f"/photos/{receipt['sha256']}"
                else:
                    survey = f"house-{self.number}-{turn}"
                    data = json.dumps({"format": "truehang.survey/1", "id": survey, "revision": 1, "title": "A house",
                                       "measured_at": "2026-03-14T10:00:00Z", "fabrics": [], "rooms": []}).encode()
                    receipt = self.again(lambda: self.phone.put_survey(survey, 1, data))
                    path = f"/surveys/{survey}/revisions/1"
                self.receipts.append((path, hashlib.sha256(data).hexdigest(), receipt["sha256"]))
        except Exception as fault:  # told by whoever waits for the thread
            self.fault = fault


def told(phone):
    """Every change that the cursor tells, as (id, revision)."""
    changes, query = [], ""
    while True:
        status, body = phone.ask("GET", "/changes" + query)
        if status != 200:
            raise RuntimeError(f"changes: {status} {body!r}")
        page = json.loads(body)
        changes += [(change["id"], change["revision"]) for change in page["changes"]]
        if not page["more"]:
            return changes
        query = "?after=" + page["next"]


def faults_of(phone, senders):
    faults = [f"phone {sender.number}: {sender.fault}" for sender in senders if sender.fault]
    for path, sent, said in (receipt for sender in senders for receipt in sender.receipts):
        status, body = phone.ask("GET", path)
        if said != sent or status != 200 or hashlib.sha256(body).hexdigest() != sent:
            faults.append(f"{path}: {status}, {len(body)} bytes")
    changes = told(phone)
    surveys = sum(path.startswith("/surveys") for sender in senders for path, _, _ in sender.receipts)
    if len(changes) != surveys or len(set(changes)) != surveys:
        faults.append(f"{surveys} surveys have receipts, {len(changes)} are told, {len(set(changes))} of them different")
    return faults


def main(workroom, uploads):
    chance = random.Random(SEED)
    with tempfile.TemporaryDirectory() as data:
        receiver = Receiver(workroom, data)
        phone = Phone(receiver.port, receiver.code)
        senders = [Sender(i, phone, uploads // PHONES) for i in range(PHONES)]
        for sender in senders:
            sender.start()
        kills = 0
        while any(sender.is_alive() for sender in senders):
            time.sleep(chance.uniform(0.03, 0.2))
            receiver.kill()
            kills += 1
            receiver = Receiver(workroom, data, port=receiver.port)
        faults = faults_of(phone, senders)
        receiver.process.terminate()
        receiver.process.wait()
        verify = subprocess.run([workroom, "verify", "--data", data], capture_output=True, text=True, check=False)
        if verify.returncode:
            faults.append(verify.stdout + verify.stderr)
        cut = sum(sender.cut for sender in senders)
        receipts = sum(len(sender.receipts) for sender in senders)
        print(f"{receipts} uploads with receipts, killed {kills} times, {cut} tries cut; {len(faults)} faults")
        for fault in faults[:10]:
            print(fault)
        # Kills between which nothing was cut would prove nothing.
        return 0 if not faults and receipts == uploads and kills > 3 and cut > 10 else 1


if __name__ == "__main__":
    sys.exit(main(sys.argv[1], int(sys.argv[2]) if len(sys.argv) > 2 else 200))
