# SPDX-License-Identifier: Apache-2.0
"""Another client against a real receiver: `another_client_test.py truehang-workroom`.

What each answer has to be stands in sync/protocol/README.md, under "Sending a photo in pieces"; the names of fields,
the media type and the problem words are those of draft-ietf-httpbis-resumable-upload-12, sections 4 and 7.
"""
import base64
import hashlib
import http.client
import json
import pathlib
import random
import socket
import subprocess
import sys
import tempfile
import unittest
import urllib.parse

import jsonschema

sys.path.insert(0, str(pathlib.Path(__file__).parent))
from another_client import Workroom  # noqa: E402

PROGRAM = "truehang-workroom"
EXAMPLE = pathlib.Path(__file__).parents[1] / "reference/contract/survey.example.json"
SCHEMA = json.loads((pathlib.Path(__file__).parents[2] / "sync/protocol/schema/questions.schema.json").read_text())
MIB = 1024 * 1024


def photo_of(length, seed):
    """Bytes that stand for a photo, and their digest."""
    photo = random.Random(seed).randbytes(length)
    return photo, hashlib.sha256(photo).hexdigest()


class Receiver:
    """`truehang-workroom serve` over a folder of its own."""

    def __init__(self, folder):
        self.folder = folder
        self.start()

    def start(self):
        command = [PROGRAM, "serve", "--data", self.folder, "--port", "0", "--stall-seconds", "2"]
        self.process = subprocess.Popen(command, stdout=subprocess.PIPE, text=True)
        self.port = int(self.process.stdout.readline().rsplit(":", 1)[1])
        self.code = self.process.stdout.readline().rsplit(" ", 1)[1].strip()

    def kill(self):
        self.process.kill()
        self.process.wait()
        self.process.stdout.close()

    def device(self, name):
        workroom = Workroom("127.0.0.1", self.port)
        code = self.code or subprocess.check_output([PROGRAM, "pair", "--data", self.folder], text=True).strip()
        self.code = None
        workroom.pair(code, name)
        return workroom


class OfAReceiver(unittest.TestCase):
    def setUp(self):
        self.holder = tempfile.TemporaryDirectory()
        self.receiver = Receiver(self.holder.name)
        self.device = self.receiver.device("A client of another make")

    def tearDown(self):
        self.receiver.kill()
        self.holder.cleanup()

    def restart(self):
        self.receiver.kill()
        self.receiver.start()
        self.device.port = self.receiver.port

    def problem(self, answer, status, word):
        self.assertEqual(answer[0], status, answer[2])
        self.assertEqual(answer[2]["type"], f"urn:truehang:problem:{word}")
        self.assertEqual(answer[2]["status"], status)
        return answer



class Pieces(OfAReceiver):
    def raw_piece(self, sha256, offset, told, bytes_sent, last=False):
        """A piece that was admitted, and whose bytes aren't as many as it says; the connection stays open."""
        connection = socket.create_connection(("127.0.0.1", self.receiver.port), timeout=20)
        connection.sendall((f"PATCH /uploads/{sha256} HTTP/1.1\r\nHost: 127.0.0.1\r\nExpect: 100-continue\r\n"
                            f"Authorization: Bearer {self.device.token}\r\nContent-Type: application/partial-upload\r\n"
                            f"Upload-Offset: {offset}\r\nUpload-Complete: {'?1' if last else '?0'}\r\n"
                            f"Content-Length: {told}\r\n\r\n").encode())
        self.assertEqual(connection.recv(4096), b"HTTP/1.1 100 Continue\r\n\r\n")
        connection.sendall(bytes_sent)
        return connection

    def cut_piece(self, *arguments):
        """A piece cut off half way: what was sent has arrived, then the sending ends; returns when that was seen."""
        connection = self.raw_piece(*arguments)
        connection.shutdown(socket.SHUT_WR)
        while connection.recv(4096):
            pass
        connection.close()

    def test_a_visit_with_its_photo_in_three_pieces_and_a_cut(self):
        photo, sha256 = photo_of(3 * MIB + 17, 1)
        survey = json.loads(EXAMPLE.read_text())
        window = next(w for room in survey["rooms"] for w in room["windows"] if w.get("photos"))
        window["photos"][0].update(sha256=sha256, bytes=len(photo))
        before = self.device.changes()[2]
        document = json.dumps(survey).encode()
        status, _, receipt = self.device.send_survey(document, survey["id"], survey["revision"])
        self.assertEqual((status, receipt["sha256"]), (201, hashlib.sha256(document).hexdigest()))
        self.assertEqual(self.device.receipt(survey["id"])[2]["photos_missing"], [sha256])

        status, fields, _ = self.device.begin(sha256, len(photo))
        self.assertEqual((status, fields["Location"], fields["Upload-Offset"], fields["Upload-Complete"]),
                         (201, f"/uploads/{sha256}", "0", "?0"))
        self.assertIn(f"max-size={32 * MIB}", fields["Upload-Limit"])
        status, fields, _ = self.device.send_piece(sha256, 0, photo[:MIB])
        self.assertEqual((status, fields["Upload-Offset"], fields["Upload-Complete"]), (204, str(MIB), "?0"))
        half = MIB + MIB // 2
        self.cut_piece(sha256, MIB, MIB, photo[MIB:half])
        there = self.device.stands_at(sha256)
        self.assertEqual(there, half, "what had arrived of the piece is kept")
        self.assertEqual(self.device.send_piece(sha256, there, photo[there:2 * MIB])[0], 204)
        status, fields, receipt = self.device.send_piece(sha256, 2 * MIB, photo[2 * MIB:], last=True)
        self.assertEqual((status, fields["Upload-Complete"]), (201, "?1"))
        self.assertEqual((receipt["sha256"], receipt["bytes"]), (sha256, len(photo)))

        self.assertEqual(self.device.ask("GET", f"/photos/{sha256}")[2], photo)
        self.assertEqual(self.device.receipt(survey["id"])[2]["photos_missing"], [])
        changed = self.device.changes(before["next"])[2]["changes"]
        self.assertEqual([(c["id"], c["revision"]) for c in changed], [(survey["id"], survey["revision"])])
        status, fields, _ = self.device.ask("HEAD", f"/uploads/{sha256}")
        digest = base64.b64encode(bytes.fromhex(sha256)).decode()
        self.assertEqual((status, fields["Upload-Complete"], fields["Repr-Digest"], fields["Truehang-Received-At"]),
                         (204, "?1", f"sha-256=:{digest}:", receipt["received_at"]))
        status, fields, again = self.device.begin(sha256, len(photo))
        self.assertEqual((status, fields["Upload-Complete"], again), (200, "?1", receipt))

    def test_another_devices_upload_is_not_there(self):
        photo, sha256 = photo_of(MIB, 2)
        self.device.begin(sha256, len(photo))
        self.device.send_piece(sha256, 0, photo[:1000])
        other = self.receiver.device("Another device")
        self.assertIsNone(other.stands_at(sha256))
        self.problem(other.send_piece(sha256, 1000, photo[1000:], last=True), 404, "not-there")
        self.problem(other.give_up(sha256), 404, "not-there")
        nobody = Workroom("127.0.0.1", self.receiver.port)
        self.problem(nobody.begin(sha256, len(photo)), 401, "unauthorised")
        self.problem(nobody.send_piece(sha256, 1000, photo[1000:]), 401, "unauthorised")
        self.problem(nobody.give_up(sha256), 401, "unauthorised")
        self.assertEqual(other.begin(sha256, len(photo))[0], 201, "its own is another one")
        self.assertEqual(self.device.stands_at(sha256), 1000)
        self.assertEqual(self.device.send_piece(sha256, 1000, photo[1000:], last=True)[0], 201)
        self.assertEqual(other.send_piece(sha256, 0, photo, last=True)[0], 200, "it was there by then")

    def test_a_wrong_offset_says_the_right_one(self):
        photo, sha256 = photo_of(5000, 3)
        self.device.begin(sha256, len(photo))
        self.device.send_piece(sha256, 0, photo[:2000])
        for wrong in (0, 1999, 2001, 4000):
            answer = self.problem(self.device.send_piece(sha256, wrong, photo[wrong:wrong + 10]), 409,
                                  "mismatching-upload-offset")
            self.assertEqual((answer[2]["expected-offset"], answer[2]["provided-offset"]), (2000, wrong))
            self.assertEqual(answer[1]["Upload-Offset"], "2000")
        self.assertEqual(self.device.stands_at(sha256), 2000)

    def test_a_piece_longer_or_shorter_than_its_content_length(self):
        photo, sha256 = photo_of(5000, 4)
        self.device.begin(sha256, len(photo))
        longer = self.raw_piece(sha256, 0, 1000, photo[:1500])
        answers = b""
        while piece := longer.recv(4096):
            answers += piece
        longer.close()
        self.assertTrue(answers.startswith(b"HTTP/1.1 204"), "the piece ends where it said")
        self.assertIn(b"HTTP/1.1 400", answers, "what follows it is no request")
        self.assertEqual(self.device.stands_at(sha256), 1000)
        self.cut_piece(sha256, 1000, 4000, photo[1000:1700], True)
        self.assertEqual(self.device.stands_at(sha256), 1700, "shorter: kept as far as it came, and not the end")
        self.assertEqual(self.device.ask("HEAD", f"/photos/{sha256}")[0], 404)

    def test_beyond_or_before_the_length_that_was_told(self):
        photo, sha256 = photo_of(5000, 5)
        self.device.begin(sha256, len(photo))
        self.device.send_piece(sha256, 0, photo[:4000])
        beyond = self.device.send_piece(sha256, 4000, photo[4000:] + b"!", last=True)
        self.problem(beyond, 400, "inconsistent-upload-length")
        before = self.device.send_piece(sha256, 4000, photo[4000:4999], last=True)
        self.problem(before, 400, "inconsistent-upload-length")
        other = self.device.send_piece(sha256, 4000, photo[4000:], last=True, Upload_Length="4999")
        self.problem(other, 400, "inconsistent-upload-length")
        self.problem(self.device.begin(sha256, 4999), 400, "inconsistent-upload-length")
        self.assertEqual(self.device.stands_at(sha256), 4000)
        self.assertEqual(self.device.send_piece(sha256, 4000, photo[4000:])[0], 204, "all of it, but not said to be")
        self.assertEqual(self.device.send_piece(sha256, 5000, b"", last=True)[0], 201)

    def test_over_the_limits(self):
        answer = self.problem(self.device.begin("ab" * 32, 32 * MIB + 1), 413, "too-large")
        self.assertIn(f"max-size={32 * MIB}", answer[1]["Upload-Limit"])
        for number in range(4):  # 4 × 32 MiB are the 128 MiB that may be unfinished
            self.assertEqual(self.device.begin(f"{number:064x}", 32 * MIB)[0], 201)
        self.problem(self.device.begin("cd" * 32, 1), 429, "too-many-uploads")
        self.assertEqual(self.device.begin(f"{0:064x}", 32 * MIB)[0], 200, "one that was begun goes on")
        other = self.receiver.device("Another device")
        for number in range(8):
            self.assertEqual(other.begin(f"{number:064x}", 10)[0], 201)
        self.problem(other.begin("cd" * 32, 10), 429, "too-many-uploads")
        self.assertEqual(other.give_up(f"{0:064x}")[0], 204)
        self.assertEqual(other.begin("cd" * 32, 10)[0], 201)

    def test_requests_that_say_too_little(self):
        photo, sha256 = photo_of(500, 6)
        photos, uploads = f"/photos/{sha256}", f"/uploads/{sha256}"
        self.problem(self.device.ask("POST", photos, Upload_Complete="?0"), 411, "length-required")
        self.problem(self.device.ask("POST", photos, Upload_Length="500"), 400, "malformed-request")
        self.problem(self.device.ask("POST", photos, Upload_Complete="?1", Upload_Length="500"), 400,
                     "malformed-request")
        self.problem(self.device.ask("POST", photos, photo, Upload_Complete="?0", Upload_Length="500"), 413,
                     "too-large")
        self.problem(self.device.send_piece(sha256, 0, photo), 404, "not-there")
        self.device.begin(sha256, 500)
        typed = {"Content_Type": "application/partial-upload"}
        self.problem(self.device.ask("PATCH", uploads, photo, Upload_Offset="0", Upload_Complete="?1"), 415,
                     "wrong-type")
        for fields in ({"Upload_Offset": "0"}, {"Upload_Complete": "?1"},
                       {"Upload_Offset": "-1", "Upload_Complete": "?1"},
                       {"Upload_Offset": "0", "Upload_Complete": "true"},
                       {"Upload_Offset": "0x0", "Upload_Complete": "?1"}):
            self.problem(self.device.ask("PATCH", uploads, photo, **typed, **fields), 400, "malformed-request")
        self.problem(self.device.ask("PUT", uploads, photo, **typed), 405, "wrong-method")
        self.problem(self.device.ask("GET", uploads), 405, "wrong-method")
        self.assertEqual(self.device.stands_at(sha256), 0)

    def test_a_lying_digest_leaves_nothing_behind(self):
        photo, sha256 = photo_of(4000, 7)
        self.device.begin(sha256, len(photo))
        wrong = base64.b64encode(hashlib.sha256(b"another piece").digest()).decode()
        answer = self.device.send_piece(sha256, 0, photo[:2000], Content_Digest=f"sha-256=:{wrong}:")
        self.problem(answer, 400, "digest-mismatch")
        self.assertEqual(self.device.stands_at(sha256), 0, "nothing of a piece that changed on the way is kept")
        answer = self.problem(self.device.send_piece(sha256, 0, photo[:-1] + b"!", last=True), 400, "digest-mismatch")
        self.assertEqual(answer[1]["Upload-Complete"], "?1")
        self.assertIsNone(self.device.stands_at(sha256))
        self.assertEqual(self.device.ask("HEAD", f"/photos/{sha256}")[0], 404)
        left = [p for p in pathlib.Path(self.holder.name).rglob("*") if sha256 in p.name]
        self.assertEqual(left, [])

    def test_two_pieces_at_once(self):
        photo, sha256 = photo_of(MIB, 8)
        self.device.begin(sha256, len(photo))
        first = self.raw_piece(sha256, 0, 600000, photo[:300000])
        second = self.device.send_piece(sha256, 0, photo[:10])
        self.problem(second, 409, "mismatching-upload-offset")
        first.sendall(photo[300000:600000])
        self.assertTrue(first.recv(4096).startswith(b"HTTP/1.1 204"), "the one that was under way goes on")
        first.close()
        self.assertEqual(self.device.stands_at(sha256), 600000)

    def test_many_pieces_one_after_the_other_on_one_connection(self):
        photo, sha256 = photo_of(60 * 100, 11)
        self.device.begin(sha256, len(photo))
        connection = http.client.HTTPConnection("127.0.0.1", self.receiver.port, timeout=20)
        for at in range(0, len(photo), 100):
            last = at + 100 == len(photo)
            connection.request("PATCH", f"/uploads/{sha256}", photo[at:at + 100],
                               {"Authorization": f"Bearer {self.device.token}", "Upload-Offset": str(at),
                                "Upload-Complete": "?1" if last else "?0",
                                "Content-Type": "application/partial-upload"})
            answer = connection.getresponse()
            content = answer.read()
            self.assertEqual(answer.status, 201 if last else 204, content)
        connection.close()

    def test_asking_ends_a_piece_that_was_given_up(self):
        photo, sha256 = photo_of(MIB, 9)
        self.device.begin(sha256, len(photo))
        silent = self.raw_piece(sha256, 0, 600000, photo[:300000])
        there = self.device.stands_at(sha256)
        self.assertLessEqual(there, 300000)
        self.assertEqual(self.device.send_piece(sha256, there, photo[there:], last=True)[0], 201)
        silent.close()
        self.assertEqual(self.device.ask("GET", f"/photos/{sha256}")[2], photo)

    def test_goes_on_after_the_receiver_was_killed(self):
        photo, sha256 = photo_of(3 * MIB, 10)
        self.device.begin(sha256, len(photo))
        self.device.send_piece(sha256, 0, photo[:MIB])
        self.restart()
        self.assertEqual(self.device.stands_at(sha256), MIB)
        under_way = self.raw_piece(sha256, MIB, MIB, photo[MIB:MIB + 700000])
        self.restart()
        under_way.close()
        there = self.device.stands_at(sha256)
        self.assertTrue(MIB <= there <= MIB + 700000)
        self.assertEqual(self.device.send_piece(sha256, there, photo[there:], last=True)[0], 201)
        self.restart()
        self.assertEqual(self.device.ask("GET", f"/photos/{sha256}")[2], photo)


def checked(record, kind):
    """The record, held against its JSON Schema."""
    validator = jsonschema.Draft202012Validator({"$ref": f"#/$defs/{kind}", "$defs": SCHEMA["$defs"]})
    validator.validate(record)
    return record


class Questions(OfAReceiver):
    """sync/protocol/README.md, "Being asked"."""

    def setUp(self):
        super().setUp()
        document = EXAMPLE.read_bytes()
        self.survey, self.revision = (json.loads(document)[key] for key in ("id", "revision"))
        self.assertEqual(self.device.send_survey(document, self.survey, self.revision)[0], 201)

    def ask_on_the_page(self, words):
        """As a person’s browser sends the form."""
        fields = {"about": "parlour/parlour-south/opening.width.top", "words": words, "by": "Ann",
                  "revision": self.revision}
        browser = Workroom("127.0.0.1", self.receiver.port)
        status, _, page = browser.ask("POST", f"/surveys/{urllib.parse.quote(self.survey, safe='')}/ask",
                                      urllib.parse.urlencode(fields), Content_Type="application/x-www-form-urlencoded",
                                      Origin=f"http://127.0.0.1:{self.receiver.port}")
        self.assertEqual(status, 303, page)

    def test_asked_pulled_and_answered(self):
        jsonschema.Draft202012Validator.check_schema(SCHEMA)
        self.assertEqual(self.device.questions()[0], [])
        self.ask_on_the_page("Is that the top?")
        self.ask_on_the_page("And the width of the sill?")
        entries, after = self.device.questions()
        first, second = (checked(entry["question"], "question") for entry in entries)
        self.assertEqual((first["number"], first["words"]), (1, "Is that the top?"))
        reading = {"station": first["station"], "value_mm": 1241.5, "typed": "124.15 cm"}
        what = {"reading": reading, "revision": self.revision + 1, "by": "A. Client"}
        status, _, receipt = self.device.answer(first, "answer-1", "2026-03-14T10:00:00Z", **what)
        self.assertEqual(status, 201, receipt)
        checked(receipt, "receipt")
        self.restart()
        status, _, again = self.device.answer(first, "answer-1", "2026-03-14T10:00:00Z", **what)
        self.assertEqual((status, again), (200, receipt), "the same answer twice is success, and one answer")
        self.problem(self.device.answer(first, "answer-1", "2026-03-14T10:00:00Z", words="No."), 409, "conflict")
        self.assertEqual(self.device.answer(second, "answer-2", "2026-03-14T10:01:00Z", words="It is walled in.")[0], 201)
        entries, last = self.device.questions(after)
        answers = [checked(entry["answer"], "received_answer") for entry in entries]
        self.assertEqual([answer["id"] for answer in answers], ["answer-1", "answer-2"])
        self.assertEqual(answers[0]["reading"], reading)
        self.assertEqual(answers[0]["device"], "A client of another make")
        self.assertEqual(self.device.questions(last), ([], last))
        status, fields, whole = self.device.ask("GET", f"/surveys/{urllib.parse.quote(self.survey, safe='')}/questions")
        self.assertEqual((status, len(checked(whole, "questions")["questions"])), (200, 2))
        self.assertEqual(self.device.ask("GET", f"/surveys/{urllib.parse.quote(self.survey, safe='')}/questions",
                                         If_None_Match=fields["ETag"])[0], 304)


if __name__ == "__main__":
    PROGRAM = sys.argv.pop(1)
    unittest.main()
