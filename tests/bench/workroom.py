#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""workroom.py WORKROOM: what receiving costs, in ratios of one run on this machine.

- A photo of 5 MB against a bare socket loop with the same client: read, SHA-256, write, fsync; no HTTP. (goal 70 % of
  its rate; the loop is Python's, whose read, digest, write and fsync are the C libraries').
- The receiver's memory with 32 photos of 5 MB on their way at once, above what it had before (goal 64 MiB).
- A document's time while 300 clients send a byte now and then, against its time without them (goal 1.5 x).
- Documents a second with a durable commit each, one client and eight."""
import concurrent.futures
import hashlib
import http.client
import json
import os
import pathlib
import random
import socket
import statistics
import sys
import tempfile
import threading
import time

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parent.parent / "postgres"))
from client import Phone, Receiver, digest_field  # noqa: E402

MB = 1_000_000
RUNS = 30


class Serving(Receiver):
    def __init__(self, workroom, folder):
        super().__init__(workroom, str(folder))
        self.phone = Phone(self.port, self.code)

    def memory(self, which="VmRSS"):
        """MiB."""
        for line in pathlib.Path(f"/proc/{self.process.pid}/status").read_text(encoding="utf-8").splitlines():
            if line.startswith(which + ":"):
                return int(line.split()[1]) / 1024
        raise RuntimeError(which)

    def end(self):
        self.process.terminate()
        self.process.wait()


def bare_loop(listener, folder):
    """Eight bytes of length, then so many bytes; answered with the digest once they are on the disk."""
    buffer = memoryview(bytearray(1024 * 1024))
    number = 0
    while True:
        connection, _ = listener.accept()
        with connection:
            while head := connection.recv(8, socket.MSG_WAITALL):
                left = int.from_bytes(head, "big")
                digest, number = hashlib.sha256(), number + 1
                with open(folder / f"{number}", "wb", buffering=0) as file:
                    while left:
                        count = connection.recv_into(buffer[:min(left, len(buffer))])
                        digest.update(buffer[:count])
                        file.write(buffer[:count])
                        left -= count
                    os.fsync(file.fileno())
                connection.sendall(digest.digest())


def photos(count):
    chance = random.Random(1)
    return [b"\xff\xd8\xff\xe0" + chance.randbytes(5 * MB) for _ in range(count)]


def timed(send, things):
    times = []
    for thing in things:
        began = time.perf_counter()
        send(thing)
        times.append(time.perf_counter() - began)
    return times


def photo_rate(workroom, folder):
    """The receiver's median rate as a share of the bare loop's, both of the same photos in turns."""
    receiver = Serving(workroom, folder / "rate")
    loop_folder = folder / "loop"
    loop_folder.mkdir()
    listener = socket.create_server(("127.0.0.1", 0))
    loop = os.fork()
    if loop == 0:
        bare_loop(listener, loop_folder)
        os._exit(0)
    bare = socket.create_connection(listener.getsockname())
    kept = http.client.HTTPConnection("127.0.0.1", receiver.port)
    listener.close()

    def to_loop(data):
        bare.sendall(len(data).to_bytes(8, "big"))
        bare.sendall(data)
        assert bare.recv(32, socket.MSG_WAITALL) == hashlib.sha256(data).digest()

    def to_receiver(data):
        kept.request("PUT", "/photos/" + hashlib.sha256(data).hexdigest(), data,
                     {"Content-Type": "image/jpeg", "Authorization": "Bearer " + receiver.phone.token})
        reply = kept.getresponse()
        reply.read()
        assert reply.status == 201, reply.status

    loop_times, receiver_times = [], []
    for photo in photos(RUNS):
        loop_times += timed(to_loop, [photo])
        receiver_times += timed(to_receiver, [photo])
    bare.close()
    os.kill(loop, 9)
    os.waitpid(loop, 0)
    receiver.end()
    loop_time, receiver_time = statistics.median(loop_times), statistics.median(receiver_times)
    print(f"photo of 5 MB: bare loop {loop_time * 1e3:.1f} ms, receiver {receiver_time * 1e3:.1f} ms;"
          f" {loop_time / receiver_time:.0%} of its rate (goal 70 %)")


def memory(workroom, folder):
    receiver = Serving(workroom, folder / "memory")
    receiver.phone.put_photo(photos(1)[0][:1000])
    before = receiver.memory()
    body, ready = photos(1)[0], threading.Barrier(32, timeout=60)

    def upload(number):
        data = body[:-4] + number.to_bytes(4, "big")
        connection = http.client.HTTPConnection("127.0.0.1", receiver.port)
        connection.putrequest("PUT", "/photos/" + hashlib.sha256(data).hexdigest())
        for name, value in {"Content-Type": "image/jpeg", "Content-Length": str(len(data)),
                            "Authorization": "Bearer " + receiver.phone.token}.items():
            connection.putheader(name, value)
        connection.endheaders()
        connection.send(data[:4 * MB])
        ready.wait()
        connection.send(data[4 * MB:])
        return connection.getresponse().status

    with concurrent.futures.ThreadPoolExecutor(32) as pool:
        statuses = list(pool.map(upload, range(32)))
    assert statuses == [201] * 32, statuses
    print(f"32 photos of 5 MB at once: + {receiver.memory('VmHWM') - before:.1f} MiB above {before:.1f} (goal 64)")
    receiver.end()


def document(name):
    return json.dumps({"format": "truehang.survey/1", "id": name, "revision": 1, "title": "A house",
                       "measured_at": "2026-03-14T10:00:00Z", "fabrics": [], "rooms": []}).encode()


def send_documents(receiver, names):
    connection = http.client.HTTPConnection("127.0.0.1", receiver.port)
    times = []
    for name in names:
        body = document(name)
        began = time.perf_counter()
        connection.request("PUT", f"/surveys/{name}/revisions/1", body,
                           {"Content-Type": "application/json", "Content-Digest": digest_field(body),
                            "Authorization": "Bearer " + receiver.phone.token})
        reply = connection.getresponse()
        reply.read()
        times.append(time.perf_counter() - began)
        assert reply.status == 201, reply.status
    return times


def slow_clients(workroom, folder):
    receiver = Serving(workroom, folder / "slow")
    send_documents(receiver, [f"warm-{i}" for i in range(50)])
    alone = send_documents(receiver, [f"alone-{i}" for i in range(300)])
    slow = [socket.create_connection(("127.0.0.1", receiver.port)) for _ in range(300)]
    for client in slow:
        client.sendall(b"PUT /photos/")
    stop = threading.Event()

    def trickle():
        while not stop.is_set():
            for client in slow:
                try:
                    client.sendall(b"0")
                except OSError:
                    pass  # dropped in its time
            stop.wait(0.5)

    thread = threading.Thread(target=trickle)
    thread.start()
    beside = send_documents(receiver, [f"beside-{i}" for i in range(300)])
    stop.set()
    thread.join()
    first, second = statistics.median(alone), statistics.median(beside)
    print(f"a document beside 300 slow clients: {second * 1e3:.2f} ms against {first * 1e3:.2f} ms, {second / first:.2f} x"
          " (goal 1.5)")
    receiver.end()


def documents(workroom, folder):
    for clients in (1, 8):
        receiver = Serving(workroom, folder / f"documents-{clients}")
        began = time.perf_counter()
        with concurrent.futures.ThreadPoolExecutor(clients) as pool:
            list(pool.map(lambda client: send_documents(receiver, [f"s-{client}-{i}" for i in range(2000 // clients)]),
                          range(clients)))
        print(f"documents, {clients} at once: {2000 / (time.perf_counter() - began):.0f} a second, each on the disk")
        receiver.end()


def main(workroom):
    with tempfile.TemporaryDirectory() as folder:
        for measure in (photo_rate, memory, slow_clients, documents):
            measure(workroom, pathlib.Path(folder))
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1]))
