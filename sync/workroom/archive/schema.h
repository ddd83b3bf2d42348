// SPDX-License-Identifier: Apache-2.0
#pragma once

namespace truehang::workroom {

/// The version that `schema` makes, in SQLite's user_version.
inline constexpr int schema_version = 1;

/// Everything the workroom keeps but the photos' bytes. `bytes` are as they were received; a revision is never
/// written again. Of codes, tokens and sessions only SHA-256 digests are kept. Times ending in _ms are Unix time.
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

}  // namespace truehang::workroom
