// SPDX-License-Identifier: Apache-2.0
#include "store/failures.h"
#include "store/photo_folder.h"
#include "store/store.h"
#include "store/store_inside.h"

#include <SQLiteCpp/Backup.h>

namespace truehang {
namespace {

namespace fs = std::filesystem;

/// Files that stand beside a database in use.
bool in_use(const fs::path& file) {
    fs::path log = file;
    log += "-wal";
    std::error_code code;
    return fs::exists(log, code);
}

void copy_database(SQLite::Database& from, const fs::path& to) {
    SQLite::Database copy(to.string(), SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
    SQLite::Backup backup(copy, from);
    backup.executeStep(-1);
}

/// A copy that is found must not let its finder into the workroom.
void take_pairing_out(const fs::path& file) {
    SQLite::Database copy(file.string(), SQLite::OPEN_READWRITE);
    copy.exec("PRAGMA journal_mode = DELETE");
    copy.exec("PRAGMA synchronous = FULL");
    copy.exec("PRAGMA secure_delete = ON");
    copy.exec("DELETE FROM pairing");
}

void remove_quietly(const fs::path& file) {
    for (const char* const beside : {"", "-journal", "-wal"}) {
        std::error_code code;
        fs::remove(file.string() + beside, code);
    }
}

}  // namespace

Result<Done> Store::backup_to(const fs::path& folder) {
    const fs::path file = folder / store_file;
    fs::path part = file;
    part += ".part";
    auto copied = guarded([&]() -> Result<Done> {
        value_or_throw(make_folder(folder));
        std::error_code code;
        if (in_use(file) || fs::equivalent(folder, inside_->folder, code)) {
            return Error{ErrorCode::busy, folder.string(), "A store is in use there: choose another folder."};
        }
        remove_quietly(part);
        copy_database(inside_->connection.database(), part);
        take_pairing_out(part);
        value_or_throw(make_folder(folder / photo_folder));
        value_or_throw(inside_->photos.copy_to(folder / photo_folder));
        fs::rename(part, file);
        return sync_folder(folder);
    });
    if (!copied) {
        remove_quietly(part);
    }
    return copied;
}

}  // namespace truehang
