// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string_view>

namespace truehang::testing {

/// A file of version 1 with one visit that was measured, edited, sent once and edited again; it stays as it is.
inline constexpr std::string_view version_1_file = R"sql(
PRAGMA application_id = 0x54726861;

CREATE TABLE store (
    name  TEXT PRIMARY KEY,
    value TEXT NOT NULL
) WITHOUT ROWID;

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

CREATE TABLE reading (
    visit_id  TEXT NOT NULL,
    room_id   TEXT NOT NULL,
    window_id TEXT NOT NULL,
    place     INTEGER NOT NULL,
    body      TEXT NOT NULL,
    PRIMARY KEY (visit_id, room_id, window_id, place),
    FOREIGN KEY (visit_id, room_id, window_id) REFERENCES room_window DEFERRABLE INITIALLY DEFERRED
) WITHOUT ROWID;

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

INSERT INTO store VALUES ('device_id', '01924f6a-7c00-7000-8000-00000000beef');
INSERT INTO visit VALUES ('visit-1', 'Sail loft', '2 Ropewalk, Ferrymouth', '2026-03-14T10:00:00+00:00',
                          '2026-03-14T10:05:00+00:00', 0, 3, 2, 3, 600);
INSERT INTO visit_body VALUES ('visit-1', '{"format":"truehang.survey/1","id":"visit-1","title":"Sail loft","site":{"address":"2 Ropewalk, Ferrymouth"},"fabrics":[],"weather":"dry"}');
INSERT INTO room VALUES ('visit-1', 'loft', 0, '{"id":"loft","name":"Loft"}');
INSERT INTO room_window VALUES ('visit-1', 'loft', 'gable', 0, '{"id":"gable","name":"Gable","shape":"recess"}');
INSERT INTO reading VALUES ('visit-1', 'loft', 'gable', 0, '{"id":"m1","station":"opening.width.top","value_mm":905,"typed":"905","taken_at":"2026-03-14T10:02:00+00:00"}');
INSERT INTO reading VALUES ('visit-1', 'loft', 'gable', 1, '{"id":"m2","station":"opening.height.left","value_mm":57.15,"typed":"2 2/8 in","taken_at":"2026-03-14T10:05:00+00:00"}');
INSERT INTO edit VALUES (1, 'visit-1', 'edit', NULL, 'first', 1, '2026-03-14T10:00:00+00:00', 'Visit made', '[]');
INSERT INTO edit VALUES (2, 'visit-1', 'edit', NULL, 'done', 2, '2026-03-14T10:02:00+00:00', 'Across the top: 905',
  '[{"row":"reading","room":"loft","window":"gable","place":0,"before":null,"after":{"place":0,"body":"{\"id\":\"m1\",\"station\":\"opening.width.top\",\"value_mm\":905,\"typed\":\"905\",\"taken_at\":\"2026-03-14T10:02:00+00:00\"}"}}]');
INSERT INTO edit VALUES (3, 'visit-1', 'edit', NULL, 'done', 3, '2026-03-14T10:05:00+00:00', 'Sill to head, left: 2 2/8 in',
  '[{"row":"reading","room":"loft","window":"gable","place":1,"before":null,"after":{"place":1,"body":"{\"id\":\"m2\",\"station\":\"opening.height.left\",\"value_mm\":57.15,\"typed\":\"2 2/8 in\",\"taken_at\":\"2026-03-14T10:05:00+00:00\"}"}}]');
INSERT INTO outbox VALUES ('survey', 'visit-1', 3, 'waiting', '2026-03-14T10:05:00+00:00', '', '', 0, 3);
INSERT INTO receipt VALUES ('survey', 'visit-1', 2, 'receipt-2', '2026-03-14T10:03:00+00:00');
INSERT INTO pairing VALUES (1, 'https://192.0.2.7:8443', 'token-1', '');
INSERT INTO draft VALUES (1, 'visit-1', 'loft', 'gable', 'walk', 'opening.height.centre', '12', '');
PRAGMA user_version = 1;
)sql";

}  // namespace truehang::testing
