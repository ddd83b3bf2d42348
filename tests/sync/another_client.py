# SPDX-License-Identifier: Apache-2.0
"""A client of the workroom in a page, written from sync/protocol/README.md alone, on the standard library."""
import base64
import hashlib
import http.client
import json
import urllib.parse


class Workroom:
    """One workroom at `host`:`port`, as a device that it took on sees it."""

    def __init__(self, host, port, token=None):
        self.host, self.port, self.token = host, port, token

    def ask(self, method, path, body=None, **fields):
        """One request on a connection of its own: status, fields, and the body, read where it is JSON."""
        connection = http.client.HTTPConnection(self.host, self.port, timeout=20)
        headers = {name.replace("_", "-"): value for name, value in fields.items()}
        if self.token:
            headers["Authorization"] = f"Bearer {self.token}"
        connection.request(method, path, body=body, headers=headers)
        answer = connection.getresponse()
        content = answer.read()
        connection.close()
        is_json = (answer.getheader("Content-Type") or "").split("+")[-1].endswith("json")
        return answer.status, answer.headers, json.loads(content) if is_json and content else content

    def pair(self, code, name):
        asked = json.dumps({"code": code, "device_name": name})
        status, _, answer = self.ask("POST", "/pair", asked, Content_Type="application/json")
        assert status == 200, answer
        self.token = answer["token"]

    def send_survey(self, document, survey_id, revision):
        digest = base64.b64encode(hashlib.sha256(document).digest()).decode()
        path = f"/surveys/{urllib.parse.quote(survey_id, safe='')}/revisions/{revision}"
        return self.ask("PUT", path, document, Content_Type="application/json", Content_Digest=f"sha-256=:{digest}:")

    def receipt(self, survey_id):
        return self.ask("GET", f"/surveys/{urllib.parse.quote(survey_id, safe='')}/receipt")

    def changes(self, after=None):
        return self.ask("GET", "/changes" + (f"?after={urllib.parse.quote(after, safe='')}" if after else ""))

    def questions(self, after=None):
        """What was asked and answered since `after`, all of it, and where to go on."""
        found, more = [], True
        while more:
            query = f"?after={urllib.parse.quote(after, safe='')}" if after else ""
            status, _, answer = self.ask("GET", "/questions" + query)
            assert status == 200, answer
            found, after, more = found + answer["entries"], answer["next"], answer["more"]
        return found, after

    def answer(self, question, answer_id, at, **what):
        """Answers a question by `words`, `reading` or both."""
        record = {"survey": question["survey"], "number": question["number"], "id": answer_id, "at": at, **what}
        survey = urllib.parse.quote(question["survey"], safe="")
        return self.ask("PUT", f"/surveys/{survey}/questions/{question['number']}/answers/{answer_id}",
                        json.dumps(record), Content_Type="application/json")

    def begin(self, sha256, length):
        """Begins an upload in pieces, or finds it begun."""
        return self.ask("POST", f"/photos/{sha256}", Upload_Complete="?0", Upload_Length=str(length))

    def stands_at(self, sha256):
        """The byte at which an upload stands, or None."""
        status, fields, _ = self.ask("HEAD", f"/uploads/{sha256}")
        return int(fields["Upload-Offset"]) if status == 204 else None

    def send_piece(self, sha256, offset, piece, last=False, **more):
        return self.ask("PATCH", f"/uploads/{sha256}", piece, Content_Type="application/partial-upload",
                        Upload_Offset=str(offset), Upload_Complete="?1" if last else "?0", **more)

    def give_up(self, sha256):
        return self.ask("DELETE", f"/uploads/{sha256}")
