// SPDX-License-Identifier: Apache-2.0
#include "store/schema.h"

#include <SQLiteCpp/Transaction.h>

#include <array>
#include <string>

namespace truehang {
namespace {

// `body` columns hold the document's JSON object without what stands in tables below it, so that keys which this
// version doesn't know stay. Foreign keys are checked at the commit: undo writes rows in any order.
constexpr std::string_view version_1 = R"sql(
PRAGMA application_id = 0x54726861;

CREATE TABLE store (
    name  TEXT PRIMARY KEY,
    value TEXT NOT NULL
) WITHOUT ROWID;

-- One visit: what the list shows and what changes with each edit; small, because each edit writes it.
CREATE TABLE visit (
    visit_id           TEXT PRIMARY KEY,
    title              TEXT NOT NULL,
    address            TEXT NOT NULL,
    created_at         TEXT NOT NULL,
    updated_at         TEXT NOT NULL,
    removed            INTEGER NOT NULL DEFAULT 0 CHECK (removed IN (0, 1)),
    revision           INTEGER NOT NULL,
    confirmed_revision INTEGER NOT NULL DEFAULT 0,
    last_edit          INTEGER NOT NULL DEFAULT 0,
    body_bytes         INTEGER NOT NULL DEFAULT 0
) WITHOUT ROWID;

-- The survey without rooms and revision.
CREATE TABLE visit_body (
    visit_id TEXT PRIMARY KEY REFERENCES visit DEFERRABLE INITIALLY DEFERRED,
    body     TEXT NOT NULL
) WITHOUT ROWID;

CREATE TABLE room (
    visit_id TEXT NOT NULL REFERENCES visit DEFERRABLE INITIALLY DEFERRED,
    room_id  TEXT NOT NULL,
    place    INTEGER NOT NULL,
    body     TEXT NOT NULL,
    PRIMARY KEY (visit_id, room_id)
) WITHOUT ROWID;

CREATE TABLE room_window (
    visit_id  TEXT NOT NULL,
    room_id   TEXT NOT NULL,
    window_id TEXT NOT NULL,
    place     INTEGER NOT NULL,
    body      TEXT NOT NULL,
    PRIMARY KEY (visit_id, room_id, window_id),
    FOREIGN KEY (visit_id, room_id) REFERENCES room DEFERRABLE INITIALLY DEFERRED
) WITHOUT ROWID;

-- By place, not by id: readings of old documents may have none.
CREATE TABLE reading (
    visit_id  TEXT NOT NULL,
    room_id   TEXT NOT NULL,
    window_id TEXT NOT NULL,
    place     INTEGER NOT NULL,
    body      TEXT NOT NULL,
    PRIMARY KEY (visit_id, room_id, window_id, place),
    FOREIGN KEY (visit_id, room_id, window_id) REFERENCES room_window DEFERRABLE INITIALLY DEFERRED
) WITHOUT ROWID;

-- Every edit with the rows it changed, before and after. Undo and redo are edits that name the one they are about.
CREATE TABLE edit (
    number   INTEGER PRIMARY KEY,
    visit_id TEXT NOT NULL REFERENCES visit DEFERRABLE INITIALLY DEFERRED,
    kind     TEXT NOT NULL CHECK (kind IN ('edit', 'undo', 'redo')),
    about    INTEGER REFERENCES edit DEFERRABLE INITIALLY DEFERRED,
    state    TEXT NOT NULL CHECK (state IN ('first', 'done', 'undone', 'dropped', 'record')),
    revision INTEGER NOT NULL,
    made_at  TEXT NOT NULL,
    what     TEXT NOT NULL,
    changes  TEXT NOT NULL
);
CREATE INDEX edit_by_state ON edit (visit_id, state, number);

-- Which photos a window mentions, or a room (its window_id is empty).
CREATE TABLE photo_use (
    visit_id  TEXT NOT NULL REFERENCES visit DEFERRABLE INITIALLY DEFERRED,
    room_id   TEXT NOT NULL,
    window_id TEXT NOT NULL,
    place     INTEGER NOT NULL,
    sha256    TEXT NOT NULL,
    PRIMARY KEY (visit_id, room_id, window_id, place)
) WITHOUT ROWID;
CREATE INDEX photo_use_by_photo ON photo_use (sha256);

CREATE TABLE photo (
    sha256     TEXT PRIMARY KEY,
    media_type TEXT NOT NULL,
    bytes      INTEGER NOT NULL
) WITHOUT ROWID;

-- What is to be sent: one row for the newest revision of each visit, one for each photo. `edit_number` is the edit
-- that queued it, for the order.
CREATE TABLE outbox (
    kind        TEXT NOT NULL CHECK (kind IN ('survey', 'photo')),
    id          TEXT NOT NULL,
    revision    INTEGER NOT NULL,
    state       TEXT NOT NULL CHECK (state IN ('waiting', 'refused', 'confirmed')),
    since       TEXT NOT NULL,
    hold        TEXT NOT NULL DEFAULT '',
    why         TEXT NOT NULL DEFAULT '',
    tries       INTEGER NOT NULL DEFAULT 0,
    edit_number INTEGER NOT NULL,
    PRIMARY KEY (kind, id)
) WITHOUT ROWID;

-- The bytes that were handed out to be sent, until they are confirmed.
CREATE TABLE sending (
    visit_id TEXT NOT NULL REFERENCES visit DEFERRABLE INITIALLY DEFERRED,
    revision INTEGER NOT NULL,
    sha256   TEXT NOT NULL,
    bytes    BLOB NOT NULL,
    PRIMARY KEY (visit_id, revision)
);

CREATE TABLE receipt (
    kind     TEXT NOT NULL,
    id       TEXT NOT NULL,
    revision INTEGER NOT NULL,
    text     TEXT NOT NULL,
    at       TEXT NOT NULL,
    PRIMARY KEY (kind, id, revision)
) WITHOUT ROWID;

CREATE TABLE pairing (
    one                     INTEGER PRIMARY KEY CHECK (one = 1),
    address                 TEXT NOT NULL,
    token                   TEXT NOT NULL,
    certificate_fingerprint TEXT NOT NULL
);

CREATE TABLE draft (
    one     INTEGER PRIMARY KEY CHECK (one = 1),
    visit   TEXT NOT NULL,
    room    TEXT NOT NULL,
    window  TEXT NOT NULL,
    screen  TEXT NOT NULL,
    station TEXT NOT NULL,
    typed   TEXT NOT NULL,
    more    TEXT NOT NULL
);
)sql";

// What the list of visits shows, is narrowed by and searched in without the document: `day` is the visit's own,
// `found_by` the folded title, client and address. The counts are none until the program makes them.
constexpr std::string_view version_2 = R"sql(
ALTER TABLE room_window ADD COLUMN taken INTEGER;
ALTER TABLE room_window ADD COLUMN asked INTEGER;

ALTER TABLE visit ADD COLUMN client TEXT NOT NULL DEFAULT '';
ALTER TABLE visit ADD COLUMN day TEXT NOT NULL DEFAULT '';
ALTER TABLE visit ADD COLUMN found_by TEXT NOT NULL DEFAULT '';
ALTER TABLE visit ADD COLUMN windows INTEGER NOT NULL DEFAULT 0;
ALTER TABLE visit ADD COLUMN windows_begun INTEGER;
ALTER TABLE visit ADD COLUMN windows_measured INTEGER;
ALTER TABLE visit ADD COLUMN questions INTEGER NOT NULL DEFAULT 0;

UPDATE visit SET
    client  = coalesce((SELECT json_extract(body, '$.client.name') FROM visit_body b
                         WHERE b.visit_id = visit.visit_id), ''),
    day     = substr(coalesce((SELECT json_extract(body, '$.measured_at') FROM visit_body b
                                WHERE b.visit_id = visit.visit_id), created_at), 1, 10),
    windows = (SELECT count(*) FROM room_window w WHERE w.visit_id = visit.visit_id);
UPDATE visit SET found_by = folded(title || ' ' || client || ' ' || address);

CREATE INDEX visit_by_day ON visit (removed, day DESC, last_edit DESC);
CREATE INDEX visit_to_count ON visit (visit_id) WHERE windows_begun IS NULL;

CREATE VIEW visit_summary AS
SELECT visit_id, title, address, client, day, updated_at, removed, revision, confirmed_revision, last_edit, windows,
       windows_begun, windows_measured, questions, photos, photos_confirmed, found_by,
       CASE WHEN questions > 0 THEN 'asked'
            WHEN confirmed_revision > 0 AND confirmed_revision = revision
            THEN CASE WHEN photos_confirmed < photos THEN 'to_send' ELSE 'there' END
            WHEN windows_begun = 0 THEN 'to_measure'
            WHEN windows_measured < windows THEN 'measuring'
            WHEN windows_begun IS NOT NULL THEN 'to_send' END AS state
  FROM (SELECT visit.*,
               (SELECT count(DISTINCT sha256) FROM photo_use WHERE photo_use.visit_id = visit.visit_id) AS photos,
               (SELECT count(DISTINCT sha256) FROM photo_use
                  JOIN outbox ON outbox.kind = 'photo' AND outbox.id = sha256 AND outbox.state = 'confirmed'
                 WHERE photo_use.visit_id = visit.visit_id) AS photos_confirmed
          FROM visit);
)sql";

// The photos whose files are still to be taken away, and what of a window was looked at.
constexpr std::string_view version_3 = R"sql(
CREATE TABLE erasing (sha256 TEXT PRIMARY KEY) WITHOUT ROWID;

CREATE TABLE seen (
    visit_id  TEXT NOT NULL REFERENCES visit DEFERRABLE INITIALLY DEFERRED,
    window_id TEXT NOT NULL,
    mark      TEXT NOT NULL,
    PRIMARY KEY (visit_id, window_id, mark)
) WITHOUT ROWID;
)sql";

// What of a visit is known elsewhere too: documents that it was made from, by their digests, the later ones with their
// bytes. `place` rises. Of what was confirmed before, the receipt still tells the digest. What was handed out before
// may have gone out.
constexpr std::string_view version_4 = R"sql(
CREATE TABLE parent (
    visit_id TEXT NOT NULL REFERENCES visit DEFERRABLE INITIALLY DEFERRED,
    place    INTEGER NOT NULL,
    sha256   TEXT NOT NULL,
    bytes    BLOB,
    PRIMARY KEY (visit_id, sha256)
) WITHOUT ROWID;

INSERT INTO parent
SELECT visit_id, 1, json_extract(text, '$.sha256'), NULL FROM visit
  JOIN receipt ON kind = 'survey' AND id = visit_id AND receipt.revision = confirmed_revision
 WHERE json_valid(text) AND json_extract(text, '$.sha256') IS NOT NULL;

ALTER TABLE sending ADD COLUMN gone_out INTEGER NOT NULL DEFAULT 1;

CREATE TABLE met (
    visit_id    TEXT PRIMARY KEY REFERENCES visit DEFERRABLE INITIALLY DEFERRED,
    sent_by     TEXT NOT NULL,
    received_at TEXT NOT NULL,
    bytes       BLOB NOT NULL
) WITHOUT ROWID;
)sql";

// How far the workroom was asked what came to it, and what of the visits here isn’t in them yet.
constexpr std::string_view version_5 = R"sql(
CREATE TABLE asked (
    one    INTEGER PRIMARY KEY CHECK (one = 1),
    cursor TEXT NOT NULL
);

CREATE TABLE coming (
    visit_id    TEXT PRIMARY KEY REFERENCES visit DEFERRABLE INITIALLY DEFERRED,
    revision    INTEGER NOT NULL,
    sha256      TEXT NOT NULL,
    received_at TEXT NOT NULL,
    sent_by     TEXT NOT NULL
) WITHOUT ROWID;
)sql";

// What the workroom asks, and what is answered: `record` is what an answer given here is sent as. Answers wait in the
// outbox beside surveys and photos, which takes a table with another check.
constexpr std::string_view version_6 = R"sql(
CREATE TABLE question (
    visit_id  TEXT NOT NULL REFERENCES visit DEFERRABLE INITIALLY DEFERRED,
    number    INTEGER NOT NULL,
    room_id   TEXT NOT NULL,
    window_id TEXT NOT NULL,
    station   TEXT NOT NULL,
    words     TEXT NOT NULL,
    who       TEXT NOT NULL,
    at        TEXT NOT NULL,
    PRIMARY KEY (visit_id, number)
) WITHOUT ROWID;

CREATE TABLE answer (
    visit_id  TEXT NOT NULL,
    number    INTEGER NOT NULL,
    answer_id TEXT NOT NULL,
    place     INTEGER NOT NULL,
    words     TEXT NOT NULL,
    station   TEXT NOT NULL,
    typed     TEXT NOT NULL,
    who       TEXT NOT NULL,
    at        TEXT NOT NULL,
    device    TEXT NOT NULL,
    record    TEXT NOT NULL,
    PRIMARY KEY (visit_id, number, answer_id),
    FOREIGN KEY (visit_id, number) REFERENCES question DEFERRABLE INITIALLY DEFERRED
) WITHOUT ROWID;
CREATE INDEX answer_by_id ON answer (answer_id);

CREATE TABLE questions_asked (
    one    INTEGER PRIMARY KEY CHECK (one = 1),
    cursor TEXT NOT NULL
);

DROP VIEW visit_summary;
CREATE TABLE outbox_with_answers (
    kind        TEXT NOT NULL CHECK (kind IN ('survey', 'photo', 'answer')),
    id          TEXT NOT NULL,
    revision    INTEGER NOT NULL,
    state       TEXT NOT NULL CHECK (state IN ('waiting', 'refused', 'confirmed')),
    since       TEXT NOT NULL,
    hold        TEXT NOT NULL DEFAULT '',
    why         TEXT NOT NULL DEFAULT '',
    tries       INTEGER NOT NULL DEFAULT 0,
    edit_number INTEGER NOT NULL,
    PRIMARY KEY (kind, id)
) WITHOUT ROWID;
INSERT INTO outbox_with_answers SELECT * FROM outbox;
DROP TABLE outbox;
ALTER TABLE outbox_with_answers RENAME TO outbox;

CREATE VIEW visit_summary AS
SELECT visit_id, title, address, client, day, updated_at, removed, revision, confirmed_revision, last_edit, windows,
       windows_begun, windows_measured, questions, photos, photos_confirmed, found_by,
       CASE WHEN questions > 0 THEN 'asked'
            WHEN confirmed_revision > 0 AND confirmed_revision = revision
            THEN CASE WHEN photos_confirmed < photos OR answers_waiting THEN 'to_send' ELSE 'there' END
            WHEN windows_begun = 0 THEN 'to_measure'
            WHEN windows_measured < windows THEN 'measuring'
            WHEN windows_begun IS NOT NULL THEN 'to_send' END AS state
  FROM (SELECT visit.*,
               (SELECT count(DISTINCT sha256) FROM photo_use WHERE photo_use.visit_id = visit.visit_id) AS photos,
               (SELECT count(DISTINCT sha256) FROM photo_use
                  JOIN outbox ON outbox.kind = 'photo' AND outbox.id = sha256 AND outbox.state = 'confirmed'
                 WHERE photo_use.visit_id = visit.visit_id) AS photos_confirmed,
               EXISTS (SELECT 1 FROM answer JOIN outbox ON outbox.kind = 'answer' AND outbox.id = answer_id
                 WHERE answer.visit_id = visit.visit_id AND outbox.state = 'waiting') AS answers_waiting
          FROM visit);
)sql";

constexpr std::array<Migration, 6> all_steps{
    {{1, version_1}, {2, version_2}, {3, version_3}, {4, version_4}, {5, version_5}, {6, version_6}}};

}  // namespace

std::span<const Migration> migrations() { return all_steps; }

int layout_version(SQLite::Database& database) { return database.execAndGet("PRAGMA user_version").getInt(); }

void migrate(SQLite::Database& database, std::span<const Migration> steps) {
    const int from = layout_version(database);
    for (const auto& [to, sql] : steps) {
        if (to <= from) {
            continue;
        }
        SQLite::Transaction transaction(database, SQLite::TransactionBehavior::IMMEDIATE);
        database.exec(std::string(sql));
        database.exec("PRAGMA user_version = " + std::to_string(to));
        transaction.commit();
    }
}

}  // namespace truehang
