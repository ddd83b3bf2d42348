// SPDX-License-Identifier: Apache-2.0
#include "workroom/keeping/kept_folder.h"

#include "protocol/digest.h"
#include "workroom/archive/database.h"
#include "workroom/archive/disk.h"
#include "workroom/archive/schema.h"
#include "workroom/records/sqlite_records.h"

#include <fcntl.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <cerrno>

namespace truehang::workroom {

namespace fs = std::filesystem;

namespace {

constexpr int patience_ms = 30'000;  ///< for whoever writes meanwhile

/// A file descriptor and its end.
class Descriptor {
public:
    explicit Descriptor(int number) : number_(number) {}
    ~Descriptor() {
        if (number_ >= 0) {
            ::close(number_);
        }
    }
    Descriptor(const Descriptor&) = delete;
    Descriptor& operator=(const Descriptor&) = delete;
    [[nodiscard]] int number() const { return number_; }

private:
    int number_;
};

Error unread(const fs::path& file) {
    return errno == ENOENT || errno == ENOTDIR || errno == ELOOP
               ? Error{ErrorCode::missing, file.string(), "Its file isn’t there."}
               : Error{ErrorCode::io, file.string(),
                       "It can’t be read: " + std::system_category().message(errno) + "."};
}

bool write_all(int descriptor, std::string_view bytes) {
    while (!bytes.empty()) {
        const auto written = ::write(descriptor, bytes.data(), bytes.size());
        if (written < 0 && errno == EINTR) {
            continue;
        }
        if (written < 0) {
            return false;
        }
        bytes.remove_prefix(static_cast<std::size_t>(written));
    }
    return true;
}

/// Hands a file's bytes on in pieces and sums them; an error of `take` ends it.
Result<FileSum> read_through(const fs::path& file, const std::function<std::optional<Error>(std::string_view)>& take) {
    const Descriptor in(::open(file.c_str(), O_RDONLY | O_CLOEXEC | O_NOFOLLOW));
    std::error_code ignored;
    if (in.number() < 0 || !fs::is_regular_file(file, ignored)) {
        errno = in.number() < 0 ? errno : ENOENT;
        return unread(file);
    }
    sync::Sha256Stream hash;
    FileSum sum;
    std::array<char, std::size_t{1} << 16U> piece{};
    while (true) {
        const auto count = ::read(in.number(), piece.data(), piece.size());
        if (count == 0) {
            sum.sha256 = sync::hex(hash.finish());
            return sum;
        }
        if (count < 0) {
            return unread(file);
        }
        const std::string_view bytes(piece.data(), static_cast<std::size_t>(count));
        hash.add(bytes);
        sum.bytes += count;
        if (auto error = take(bytes)) {
            return std::move(*error);
        }
    }
}

std::unique_ptr<SQLite::Database> opened(const fs::path& file) {
    auto records = std::make_unique<SQLite::Database>(file.string(), SQLite::OPEN_READONLY, patience_ms);
    static_cast<void>(records->execAndGet("SELECT count(*) FROM sqlite_schema"));
    return records;
}

}  // namespace

Result<KeptFolder> KeptFolder::open(const fs::path& folder) {
    const auto file = folder / records_name;
    std::error_code ignored;
    if (!fs::is_regular_file(file, ignored)) {
        return Error{
            ErrorCode::missing, folder.string(),
            "No workroom’s records are there. Name the folder that `serve --data` is given, or a backup of it."};
    }
    return told<KeptFolder>(file, [&]() -> Result<KeptFolder> {
        auto records = opened(file);
        const int version = records->execAndGet("PRAGMA user_version").getInt();
        if (version > schema_version) {
            return Error{ErrorCode::newer_version, file.string(),
                         "A later version of Truehang wrote these records; use that one."};
        }
        if (version < 1) {
            return Error{ErrorCode::damaged, file.string(), "These aren’t a workroom’s records."};
        }
        return KeptFolder(folder, std::move(records));
    });
}

fs::path photo_file_in(const fs::path& folder, std::string_view sha256) {
    return folder / "photos" / sha256.substr(0, 2) / sha256;
}

bool KeptFolder::has_table(const std::string& name) { return records_->tableExists(name); }

std::vector<std::string> tables_with(SQLite::Database& database, const std::vector<std::string>& columns) {
    std::vector<std::string> found;
    SQLite::Statement tables(database, "SELECT name FROM sqlite_schema WHERE type = 'table' ORDER BY name");
    while (tables.executeStep()) {
        const auto table = tables.getColumn(0).getString();
        SQLite::Statement column(database, "SELECT count(*) FROM pragma_table_info(?) WHERE name = ?");
        const bool all = std::ranges::all_of(columns, [&](const std::string& name) {
            column.reset();
            column.bind(1, table);
            column.bind(2, name);
            return column.executeStep() && column.getColumn(0).getInt() > 0;
        });
        if (all) {
            found.push_back(table);
        }
    }
    return found;
}

Error error_under_way(const fs::path& where) {
    try {
        throw;
    } catch (const RecordsFault& thrown) {
        return thrown.error();
    } catch (const SQLite::Exception& thrown) {
        auto error = error_of(thrown);
        error.where = where.string();
        return error;
    } catch (const fs::filesystem_error& thrown) {
        const bool full = thrown.code().value() == ENOSPC || thrown.code().value() == EDQUOT;
        return {full ? ErrorCode::full : ErrorCode::io, thrown.path1().string(),
                full ? "There is no room left on the disk." : thrown.code().message() + "."};
    } catch (const std::exception& thrown) {
        return {ErrorCode::io, where.string(), thrown.what()};
    }
}

Result<FileSum> sum_of(const fs::path& file) {
    return read_through(file, [](std::string_view) { return std::optional<Error>(); });
}

Result<FileSum> copy_summed(const fs::path& from, const fs::path& to) {
    const Descriptor out(::open(to.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, 0600));
    if (out.number() < 0) {
        return errno == EEXIST ? Error{ErrorCode::conflict, to.string(), "Something of that name is there already."}
                               : system_error(to);
    }
    return read_through(from, [&](std::string_view bytes) {
        return write_all(out.number(), bytes) ? std::nullopt : std::optional(system_error(to));
    });
}

bool is_photo_name(const fs::path& file) {
    const auto name = file.filename().string();
    return sync::sha256_from_hex(name).has_value() && file.parent_path().filename() == name.substr(0, 2);
}

}  // namespace truehang::workroom
