// SPDX-License-Identifier: Apache-2.0
#include "workroom/keeping/kept_records.h"

#include "protocol/digest.h"
#include "workroom/archive/photo_pieces.h"
#include "workroom/archive/schema.h"
#include "workroom/records/postgres_records.h"
#include "workroom/records/sqlite_records.h"

#include <cerrno>
#include <cstdlib>
#include <fstream>

namespace truehang::workroom {

namespace fs = std::filesystem;

Scratch::~Scratch() {
    std::error_code ignored;
    if (!path_.empty()) {
        fs::remove_all(path_, ignored);
    }
}

const fs::path& Scratch::path() {
    if (path_.empty()) {
        auto name = ((beside_.empty() ? fs::path(".") : beside_) / ".truehang-XXXXXX").string();
        if (::mkdtemp(name.data()) == nullptr) {
            throw fs::filesystem_error("", beside_, std::error_code(errno, std::system_category()));
        }
        path_ = name;
    }
    return path_;
}

KeptRecords::KeptRecords(KeptFolder& folder)
    : records_(std::make_unique<SqliteRecords>(folder.records())), folder_(folder.folder()) {}

KeptRecords::KeptRecords(KeptFolder&& own)
    : own_(std::move(own)), records_(std::make_unique<SqliteRecords>(own_->records())), folder_(own_->folder()) {}

Result<std::unique_ptr<KeptRecords>> KeptRecords::open(const KeptAt& kept) {
    if (kept.database.empty()) {
        auto folder = KeptFolder::open(kept.data);
        if (!folder) {
            return folder.error();
        }
        return std::unique_ptr<KeptRecords>(new KeptRecords(std::move(folder).value()));
    }
    return told<std::unique_ptr<KeptRecords>>(kept.data, [&]() -> Result<std::unique_ptr<KeptRecords>> {
        auto records = PostgresEngine(kept.database).connect_to_read();
        const int version = records->has_table("writing") ? records->version() : 0;
        if (version == 0) {
            return Error{ErrorCode::missing, "database", "No workroom has written its records into this database."};
        }
        if (version > schema_version) {
            return Error{ErrorCode::newer_version, "database",
                         "A later version of Truehang wrote these records; use that one."};
        }
        return std::unique_ptr<KeptRecords>(new KeptRecords(kept.data, std::move(records)));
    });
}

Result<FileSum> KeptRecords::photo_sum(const std::string& sha256) {
    if (!hold_photos()) {
        return sum_of(photo_file_in(folder_, sha256));
    }
    sync::Sha256Stream hash;
    FileSum sum;
    for_each_piece(*records_, sha256, [&](std::string_view piece) {
        hash.add(piece);
        sum.bytes += static_cast<long long>(piece.size());
    });
    if (sum.bytes == 0) {
        return Error{ErrorCode::missing, sha256, "Its bytes aren’t there."};
    }
    sum.sha256 = sync::hex(hash.finish());
    return sum;
}

fs::path KeptRecords::photo_file(const std::string& sha256, Scratch& scratch) {
    if (!hold_photos()) {
        return photo_file_in(folder_, sha256);
    }
    auto file = scratch.path() / sha256;
    std::ofstream out;
    for_each_piece(*records_, sha256, [&](std::string_view piece) {
        if (!out.is_open()) {
            out.open(file, std::ios::binary);
            fs::permissions(file, fs::perms::owner_read | fs::perms::owner_write);  // as photos’ own files have them
        }
        out.write(piece.data(), static_cast<std::streamsize>(piece.size()));
        if (!out.flush()) {
            throw fs::filesystem_error("", file, std::error_code(errno, std::system_category()));
        }
    });
    return file;
}

}  // namespace truehang::workroom
