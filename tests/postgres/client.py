# SPDX-License-Identifier: Apache-2.0
"""A receiver’s process, and a phone in a few lines, as sync/protocol/README.md has it."""
import base64
import hashlib
import http.client
import json
import signal
import subprocess


def digest_field(data):
    return "sha-256=:" + base64.b64encode(hashlib.sha256(data).digest()).decode() + ":"


class Receiver:
    """On a port of this machine, with its one-time `code`; its records in `data`, or where `database` says."""

    def __init__(self, workroom, data, database=None, port=0):
        self.process = subprocess.Popen([workroom, "serve", "--data", data, "--port", str(port),
                                         *(["--database", database] if database else [])],
                                        stdout=subprocess.PIPE, text=True)
        self.port = int(self.process.stdout.readline().rsplit(":", 1)[1])
        self.code = self.process.stdout.readline().strip()[-9:]

    def kill(self):
        self.process.send_signal(signal.SIGKILL)
        self.process.wait()


class Phone:
    """One device at the workroom on a port of this machine."""

    def __init__(self, port, code=None, token=None):
        self.port = port
        self.token = token
        if token is None:
            status, body = self.ask("POST", "/pair", json.dumps({"code": code, "device_name": "A test's phone"}).encode(),
                                    {"Content-Type": "application/json"})
            if status != 200:
                raise RuntimeError(f"not paired: {status} {body!r}")
            self.token = json.loads(body)["token"]

    def ask(self, method, path, body=None, headers=None):
        """Status and body; status 0 where no answer came."""
        connection = http.client.HTTPConnection("127.0.0.1", self.port, timeout=30)
        try:
            sent = dict(headers or {})
            if self.token:
                sent["Authorization"] = f"Bearer {self.token}"
            connection.request(method, path, body, sent)
            reply = connection.getresponse()
            return reply.status, reply.read()
        except (OSError, http.client.HTTPException):
            return 0, b""
        finally:
            connection.close()

    def put_survey(self, survey, revision, document):
        return self.ask("PUT", f"/surveys/{survey}/revisions/{revision}", document,
                        {"Content-Type": "application/json", "Content-Digest": digest_field(document)})

    def put_photo(self, data):
        return self.ask("PUT", f"/photos/{hashlib.sha256(data).hexdigest()}", data, {"Content-Type": "image/jpeg"})
