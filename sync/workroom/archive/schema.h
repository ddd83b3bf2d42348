// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <array>

namespace truehang::workroom {

/// The version that `schema` and all of `later_schemas` make.
inline constexpr int schema_version = 11;

/// Version 1: everything the workroom receives but the photos' bytes. `bytes` are as they were received; a revision is
/// never written again. Of codes, tokens and sessions only SHA-256 digests are kept. Times ending in _ms are Unix time.
inline constexpr const char* schema = R"sql(
CREATE TABLE device(
    id TEXT PRIMARY KEY,
    name TEXT NOT NULL,
    token_sha256 TEXT NOT NULL,
    paired_at TEXT NOT NULL
) STRICT, WITHOUT ROWID;
CREATE TABLE pairing_code(
    code_sha256 TEXT PRIMARY KEY,
    expires_ms INTEGER NOT NULL
) STRICT, WITHOUT ROWID;
CREATE TABLE session(
    id TEXT PRIMARY KEY,
    secret_sha256 TEXT NOT NULL,
    expires_ms INTEGER NOT NULL
) STRICT, WITHOUT ROWID;
CREATE TABLE revision(
    survey TEXT NOT NULL,
    revision INTEGER NOT NULL,
    sha256 TEXT NOT NULL,
    received_at TEXT NOT NULL,
    device TEXT NOT NULL REFERENCES device(id),
    bytes BLOB NOT NULL,
    UNIQUE(survey, revision)
) STRICT;
CREATE TABLE photo(
    sha256 TEXT PRIMARY KEY,
    bytes INTEGER NOT NULL,
    received_at TEXT NOT NULL,
    device TEXT NOT NULL REFERENCES device(id)
) STRICT, WITHOUT ROWID;
)sql";

/// What each later version adds, from 2 on. Version 2: the rolls that came, a document a version, none written again.
/// Version 3: of each survey the plan that was last worked out, and the digests of what it was worked from.
/// Version 4: when a device was last seen, and since when it is revoked.
/// Version 5: what was erased; of its photos the digests, so that they aren’t taken again.
/// Version 6: what came in and was erased (revision 0) in the order of the commits, and of each survey what the list
/// says and is searched by. `at` is never given twice. Heads of what was there before are made when the archive is
/// opened.
/// Version 7: what was marked as done with each layer, `number` from 1 in each survey; a mark is never written again,
/// and stays where the revision that it names was left out of a copy.
/// Version 8: revisions by their digest, for the codes of printed sheets, and how the digests of erased ones began; at
/// which step each survey's layers are. Heads are made anew with it when the archive is opened.
/// Version 9: people with their roles and the kept forms of their passwords, and the browsers that they signed in from.
/// Version 10: what was asked and answered, each as the record that travels, in the order of the commits; an answer’s
/// row has its id, a question’s none. No row is written again.
/// Version 11: which revisions a client signed. The table may be there already: records that began at version 8, 9 or
/// 10 were made with it for a while. Heads are made anew with it when the archive is opened.
inline constexpr std::array<const char*, 10> later_schemas{R"sql(
CREATE TABLE rolls(
    survey TEXT NOT NULL,
    version INTEGER NOT NULL,
    saved_at TEXT NOT NULL,
    bytes BLOB NOT NULL,
    UNIQUE(survey, version)
) STRICT;
)sql",
                                                           R"sql(
CREATE TABLE roll_plan(
    survey TEXT PRIMARY KEY,
    survey_sha256 TEXT NOT NULL,
    rolls_sha256 TEXT NOT NULL,
    rules_sha256 TEXT NOT NULL,
    planner INTEGER NOT NULL,
    worked_at TEXT NOT NULL,
    bytes BLOB NOT NULL
) STRICT, WITHOUT ROWID;
)sql",
                                                           R"sql(
ALTER TABLE device ADD COLUMN last_seen_ms INTEGER;
ALTER TABLE device ADD COLUMN revoked_at TEXT;
CREATE INDEX revision_by_device ON revision(device, survey);
)sql",
                                                           R"sql(
CREATE TABLE erased(
    survey TEXT PRIMARY KEY,
    erased_at TEXT NOT NULL,
    erased_by TEXT NOT NULL,
    revisions INTEGER NOT NULL,
    rolls INTEGER NOT NULL,
    photos INTEGER NOT NULL
) STRICT, WITHOUT ROWID;
CREATE TABLE erased_photo(
    sha256 TEXT PRIMARY KEY,
    erased_with TEXT NOT NULL
) STRICT, WITHOUT ROWID;
)sql",
                                                           R"sql(
CREATE TABLE instance(id TEXT NOT NULL) STRICT;
INSERT INTO instance VALUES(lower(hex(randomblob(8))));
CREATE TABLE change(
    at INTEGER PRIMARY KEY AUTOINCREMENT,
    survey TEXT NOT NULL,
    revision INTEGER NOT NULL,
    UNIQUE(survey, revision)
) STRICT;
INSERT INTO change(survey, revision) SELECT survey, revision FROM revision ORDER BY rowid;
CREATE TABLE head(
    survey TEXT PRIMARY KEY,
    change INTEGER NOT NULL UNIQUE,
    revision INTEGER NOT NULL,
    received_at TEXT NOT NULL,
    title TEXT NOT NULL,
    client TEXT NOT NULL,
    address TEXT NOT NULL,
    measured_at TEXT NOT NULL,
    windows INTEGER NOT NULL
) STRICT, WITHOUT ROWID;
CREATE TABLE head_word(
    word TEXT NOT NULL,
    survey TEXT NOT NULL,
    PRIMARY KEY(word, survey)
) STRICT, WITHOUT ROWID;
CREATE INDEX head_word_by_survey ON head_word(survey);
CREATE TABLE photo_named(
    survey TEXT NOT NULL,
    sha256 TEXT NOT NULL,
    PRIMARY KEY(survey, sha256)
) STRICT, WITHOUT ROWID;
CREATE INDEX photo_named_by_digest ON photo_named(sha256);
)sql",
                                                           R"sql(
CREATE TABLE layer_mark(
    survey TEXT NOT NULL,
    number INTEGER NOT NULL,
    room_id TEXT NOT NULL,
    window_id TEXT NOT NULL,
    layer_id TEXT NOT NULL,
    step TEXT NOT NULL,
    done INTEGER NOT NULL,
    by_revision INTEGER NOT NULL,
    figures_sha256 TEXT NOT NULL,
    marked_by TEXT NOT NULL,
    marked_at TEXT NOT NULL,
    PRIMARY KEY(survey, number)
) STRICT, WITHOUT ROWID;
)sql",
                                                           R"sql(
CREATE INDEX revision_by_digest ON revision(sha256);
CREATE TABLE erased_sheet(
    digest_start TEXT PRIMARY KEY,
    erased_with TEXT NOT NULL
) STRICT, WITHOUT ROWID;
CREATE TABLE head_state(
    survey TEXT NOT NULL,
    state TEXT NOT NULL,
    change INTEGER NOT NULL,
    layers INTEGER NOT NULL,
    PRIMARY KEY(survey, state)
) STRICT, WITHOUT ROWID;
CREATE UNIQUE INDEX head_state_by_change ON head_state(state, change);
DELETE FROM head;
DELETE FROM head_word;
DELETE FROM photo_named;
)sql",
                                                           R"sql(
CREATE TABLE person(
    id TEXT PRIMARY KEY,
    name TEXT NOT NULL,
    name_key TEXT NOT NULL UNIQUE,
    role TEXT NOT NULL,
    password TEXT NOT NULL,
    added_at TEXT NOT NULL
) STRICT, WITHOUT ROWID;
CREATE TABLE person_session(
    id TEXT PRIMARY KEY,
    person TEXT NOT NULL,
    secret_sha256 TEXT NOT NULL,
    begun_ms INTEGER NOT NULL,
    expires_ms INTEGER NOT NULL,
    known_until_ms INTEGER NOT NULL,
    agent TEXT NOT NULL
) STRICT, WITHOUT ROWID;
CREATE INDEX person_session_by_person ON person_session(person);
)sql",
                                                           R"sql(
CREATE TABLE question_entry(
    at INTEGER PRIMARY KEY AUTOINCREMENT,
    survey TEXT NOT NULL,
    question INTEGER NOT NULL,
    answer TEXT NOT NULL,
    record TEXT NOT NULL,
    received_at TEXT NOT NULL,
    device TEXT NOT NULL,
    UNIQUE(survey, question, answer)
) STRICT;
)sql",
                                                           R"sql(
CREATE TABLE IF NOT EXISTS agreed_revision(
    survey TEXT NOT NULL,
    revision INTEGER NOT NULL,
    PRIMARY KEY(survey, revision)
) STRICT, WITHOUT ROWID;
DELETE FROM head;
DELETE FROM head_word;
DELETE FROM photo_named;
DELETE FROM head_state;
)sql"};

/// What else lies in the records where they hold what is files otherwise: photos’ bytes as pieces in order from 0, and
/// the house rules, a document a version.
inline constexpr const char* all_within_schema = R"sql(
CREATE TABLE IF NOT EXISTS photo_piece(
    sha256 TEXT NOT NULL,
    number INTEGER NOT NULL,
    bytes BLOB NOT NULL,
    PRIMARY KEY(sha256, number)
) STRICT, WITHOUT ROWID;
CREATE TABLE IF NOT EXISTS house_rules(
    version INTEGER PRIMARY KEY,
    bytes BLOB NOT NULL
) STRICT;
)sql";
static_assert(schema_version == 1 + static_cast<int>(later_schemas.size()));

}  // namespace truehang::workroom
