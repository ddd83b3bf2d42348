// SPDX-License-Identifier: Apache-2.0
#include "workroom/keeping/folder_copy.h"

#include "workroom/archive/changes.h"
#include "workroom/archive/disk.h"
#include "workroom/archive/heads.h"
#include "workroom/keeping/salvage.h"
#include "workroom/records/sqlite_records.h"

#include <SQLiteCpp/Backup.h>
#include <fcntl.h>
#include <fmt/format.h>
#include <sqlite3.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <cerrno>
#include <cstdio>

namespace truehang::workroom {

namespace fs = std::filesystem;

namespace {

/// What a copy makes itself, or isn't to have: the records and what stands beside them while they are in use, photos,
/// what is on its way in (in pieces too: phones still have it), the mark of whoever serves.
bool copied_otherwise(const std::string& name) {
    static constexpr std::array<std::string_view, 4> others{"photos", "incoming", "uploads", "serving"};
    return name.starts_with(records_name) || std::ranges::find(others, name) != others.end();
}

Result<Done> copy_one(const fs::path& from, const fs::path& to) {
    const auto copied = copy_summed(from, to);
    if (!copied && copied.error().code != ErrorCode::missing) {
        return copied.error();
    }
    if (!copied) {
        fs::remove(to);  // it was there for a moment only: something being saved
    }
    return Done{};
}

Result<Done> copy_others(const fs::path& from, const fs::path& to) {
    for (const auto& entry : fs::directory_iterator(from)) {
        const auto name = entry.path().filename();
        if (copied_otherwise(name.string()) || entry.is_symlink()) {
            continue;
        }
        if (entry.is_directory()) {
            fs::create_directory(to / name);
            if (auto done = copy_others(entry.path(), to / name); !done) {
                return done;
            }
        } else if (entry.is_regular_file()) {
            if (auto done = copy_one(entry.path(), to / name); !done) {
                return done;
            }
        }
    }
    return Done{};
}

long long count_of(SQLite::Database& records, const std::string& table) {
    return records.tableExists(table) ? records.execAndGet("SELECT count(*) FROM " + quoted_name(table)).getInt64() : 0;
}

/// One file, without a log beside it, that any later opening takes up again.
void settle_records(const fs::path& file) {
    SQLite::Database copy(file.string(), SQLite::OPEN_READWRITE);
    copy.exec("PRAGMA journal_mode = DELETE");
}

Result<Done> copy_records(SQLite::Database& from, const fs::path& to) {
    {
        SQLite::Database copy(to.string(), SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
        SQLite::Backup backup(copy, from);
        if (backup.executeStep(-1) != SQLITE_DONE) {
            return Error{ErrorCode::busy, to.string(), "The records are being written all the time; try again."};
        }
    }
    settle_records(to);
    return Done{};
}

class PhotoCopy {
public:
    PhotoCopy(KeptFolder& from, fs::path to) : from_(from), to_(std::move(to)) {}

    Result<Done> run(SQLite::Database& listed, Copied& copied) {
        fs::create_directory(to_);
        SQLite::Statement query(listed, "SELECT sha256, bytes FROM photo ORDER BY sha256");
        while (query.executeStep()) {
            const auto sha256 = query.getColumn(0).getString();
            auto why = one(sha256, query.getColumn(1).getInt64());
            if (!why) {
                return why.error();
            }
            ++copied.photos;
            copied.photo_bytes += query.getColumn(1).getInt64();
            if (!why->empty()) {
                copied.flaws.push_back({Flaw::Of::photo, "", 0, sha256, *why});
            }
        }
        return Done{};
    }

private:
    /// Empty, or why the photo isn't whole.
    Result<std::string> one(const std::string& sha256, long long bytes) {
        const auto place = to_ / sha256.substr(0, 2) / sha256;
        fs::create_directory(place.parent_path());
        const auto sum = copy_summed(from_.photo_file(sha256), place);
        if (!sum && sum.error().code != ErrorCode::missing) {
            return sum.error();
        }
        if (!sum) {
            fs::remove(place);
            return sum.error().text;
        }
        return std::string(
            sum->sha256 == sha256 && sum->bytes == bytes ? "" : "Its bytes aren’t the ones that were received.");
    }

    KeptFolder& from_;
    fs::path to_;
};

void drop(SQLite::Database& copy, const Flaw& flaw) {
    const auto with_number = [&](const char* column) {
        for (const auto& table : tables_with(copy, {"survey", column})) {
            SQLite::Statement gone(
                copy, fmt::format("DELETE FROM {} WHERE survey = ? AND {} = ?", quoted_name(table), column));
            gone.bind(1, flaw.survey);
            gone.bind(2, static_cast<std::int64_t>(flaw.number));
            gone.exec();
        }
    };
    if (flaw.of == Flaw::Of::document) {
        with_number("revision");
    } else if (flaw.of == Flaw::Of::rolls) {
        with_number("version");
    } else if (flaw.of == Flaw::Of::mark) {
        with_number("number");
    } else if (flaw.of == Flaw::Of::question && flaw.answer.empty()) {
        with_number("question");
    } else if (flaw.of == Flaw::Of::question) {
        SQLite::Statement gone(copy, "DELETE FROM question_entry WHERE survey = ? AND question = ? AND answer = ?");
        gone.bind(1, flaw.survey);
        gone.bind(2, static_cast<std::int64_t>(flaw.number));
        gone.bind(3, flaw.answer);
        gone.exec();
    } else if (flaw.of == Flaw::Of::photo) {
        SQLite::Statement gone(copy, "DELETE FROM photo WHERE sha256 = ?");
        gone.bind(1, flaw.sha256);
        gone.exec();
    }
    if (flaw.of == Flaw::Of::document || flaw.of == Flaw::Of::mark || flaw.of == Flaw::Of::question) {
        SqliteRecords records(copy);  // what the list says of the survey is worked from these, anew at the next start
        forget_head(records, flaw.survey);
    }
}

}  // namespace

Result<FolderCopy> FolderCopy::begin(const fs::path& named) {
    const auto place = named.has_filename() ? named : named.parent_path();
    std::error_code error;
    if (fs::symlink_status(place, error).type() != fs::file_type::not_found &&
        !(fs::is_directory(place, error) && fs::is_empty(place, error))) {
        return Error{ErrorCode::conflict, place.string(),
                     "Something is there already. Name a folder that isn’t there yet; nothing is written over."};
    }
    auto part = place;
    part += ".part";
    if (::mkdir(part.c_str(), 0700) != 0) {
        return errno == EEXIST ? Error{ErrorCode::conflict, part.string(),
                                       "It is left from a copy that was broken off, or one is being made: remove it, "
                                       "then try again."}
                               : system_error(part);
    }
    return FolderCopy(place, part);
}

FolderCopy::~FolderCopy() {
    if (!part_.empty()) {
        std::error_code ignored;
        fs::remove_all(part_, ignored);
    }
}

Result<Copied> FolderCopy::fill(KeptFolder& from) {
    return told<Copied>(part_, [&]() -> Result<Copied> {
        const auto records = copy_records(from.records(), part_ / records_name);
        return records ? fill_rest(from) : records.error();
    });
}

Result<Copied> FolderCopy::fill_with_what_reads(KeptFolder& from) {
    return told<Copied>(part_, [&]() -> Result<Copied> {
        {
            SQLite::Database copy((part_ / records_name).string(), SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
            salvage(from.records(), copy);
            SqliteRecords records(copy);
            forget_heads(records);
        }
        return fill_rest(from);
    });
}

Result<Copied> FolderCopy::fill_rest(KeptFolder& from) {
    Copied copied;
    SQLite::Database listed((part_ / records_name).string(), SQLite::OPEN_READWRITE);
    SqliteRecords records(listed);
    become_another_instance(records);
    copied.documents = count_of(listed, "revision");
    if (auto done = PhotoCopy(from, part_ / "photos").run(listed, copied); !done) {
        return done.error();
    }
    if (auto done = copy_others(from.folder(), part_); !done) {
        return done.error();
    }
    if (count_of(from.records(), "erased") != count_of(listed, "erased")) {
        return Error{ErrorCode::busy, from.folder().string(), "A survey was erased meanwhile. Start the copy again."};
    }
    return copied;
}

Result<Done> FolderCopy::finish() {
    const int descriptor = ::open(part_.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC);
    const bool synced = descriptor >= 0 && ::syncfs(descriptor) == 0;
    const int fault = errno;
    if (descriptor >= 0) {
        ::close(descriptor);
    }
    errno = fault;
    // A folder takes the place of an empty one, never of anything else.
    if (!synced || std::rename(part_.c_str(), place_.c_str()) != 0) {
        return errno == ENOTEMPTY || errno == EEXIST || errno == ENOTDIR
                   ? Error{ErrorCode::conflict, place_.string(),
                           "Something was put there meanwhile. Name another place."}
                   : system_error(place_);
    }
    part_.clear();
    const auto above = place_.parent_path().empty() ? fs::path(".") : place_.parent_path();
    return sync_folder(above) ? Result<Done>(Done{}) : system_error(above);
}

Result<Done> leave_out(const fs::path& folder, const std::vector<Flaw>& flaws) {
    return told<Done>(folder, [&]() -> Result<Done> {
        SQLite::Database copy((folder / records_name).string(), SQLite::OPEN_READWRITE);
        SQLite::Transaction all(copy);
        for (const Flaw& flaw : flaws) {
            drop(copy, flaw);
            if (flaw.of == Flaw::Of::photo) {
                fs::remove(folder / "photos" / flaw.sha256.substr(0, 2) / flaw.sha256);
            } else if (flaw.of == Flaw::Of::rules) {
                fs::remove(folder / "rules" / (std::to_string(flaw.number) + ".json"));
            }
        }
        all.commit();
        return Done{};
    });
}

}  // namespace truehang::workroom
