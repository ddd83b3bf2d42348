// SPDX-License-Identifier: Apache-2.0
#include "store/failures.h"

#include <sqlite3.h>

namespace truehang {

Error error_of(const SQLite::Exception& thrown) {
    const std::string detail = thrown.what();
    switch (thrown.getErrorCode()) {
        case SQLITE_FULL:
            return {ErrorCode::full, "truehang.sqlite",
                    "There is no room left on this device: free some and try again. Nothing that was kept is lost."};
        case SQLITE_BUSY:
        case SQLITE_LOCKED:
            return {ErrorCode::busy, "truehang.sqlite",
                    "Another program has the surveys open: close it and try again."};
        case SQLITE_CORRUPT:
        case SQLITE_NOTADB:
            return {ErrorCode::damaged, "truehang.sqlite",
                    "The file of surveys is damaged (" + detail + "). It was left as it is: open a backup."};
        default:
            return {ErrorCode::io, "truehang.sqlite",
                    "The surveys could not be read or written (" + detail + "): try again."};
    }
}

Error error_of(const std::error_code& code, const std::filesystem::path& where) {
    if (code == std::errc::no_space_on_device || code.value() == EDQUOT) {
        return {ErrorCode::full, where.string(), "There is no room left on this device: free some and try again."};
    }
    if (code == std::errc::no_such_file_or_directory) {
        return {ErrorCode::missing, where.string(), "There is no such file."};
    }
    return {ErrorCode::io, where.string(), "It could not be read or written (" + code.message() + "): try again."};
}

Error damaged(std::string where, const std::string& why) {
    return {ErrorCode::damaged, std::move(where),
            "What is stored here doesn’t read back (" + why + "). It was left as it is: open a backup."};
}

}  // namespace truehang
