// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "units/result.h"
#include "workroom/records/records.h"

#include <SQLiteCpp/SQLiteCpp.h>

#include <filesystem>
#include <functional>
#include <memory>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

// A folder that a workroom keeps, or a copy of one, as the keeping commands read it beside whoever serves it.

namespace truehang::workroom {

/// The records' file in such a folder.
inline constexpr const char* records_name = "workroom.sqlite";

/// Where a photo’s file lies in such a folder.
[[nodiscard]] std::filesystem::path photo_file_in(const std::filesystem::path& folder, std::string_view sha256);

/// A folder opened to read; nothing in it is changed.
class KeptFolder {
public:
    /// Errors: `missing` where there are no records, `newer_version`, `damaged`, `busy`, `io`.
    [[nodiscard]] static Result<KeptFolder> open(const std::filesystem::path& folder);

    [[nodiscard]] SQLite::Database& records() { return *records_; }
    [[nodiscard]] const std::filesystem::path& folder() const { return folder_; }
    [[nodiscard]] std::filesystem::path photo_file(std::string_view sha256) const {
        return photo_file_in(folder_, sha256);
    }
    [[nodiscard]] std::filesystem::path rules_folder() const { return folder_ / "rules"; }
    [[nodiscard]] bool has_table(const std::string& name);

private:
    KeptFolder(std::filesystem::path folder, std::unique_ptr<SQLite::Database> records)
        : folder_(std::move(folder)), records_(std::move(records)) {}

    std::filesystem::path folder_;
    std::unique_ptr<SQLite::Database> records_;
};

/// Tables that have all of these columns. Throws SQLite::Exception.
[[nodiscard]] std::vector<std::string> tables_with(SQLite::Database& database, const std::vector<std::string>& columns);

/// What the exception under way says, of `where`.
[[nodiscard]] Error error_under_way(const std::filesystem::path& where);

/// What `work` gives, or what the exception that it threw says of `where`.
template <class T>
[[nodiscard]] Result<T> told(const std::filesystem::path& where, const std::function<Result<T>()>& work) {
    try {
        return work();
    } catch (const std::exception&) {
        return error_under_way(where);
    }
}

/// A file's digest and length.
struct FileSum {
    std::string sha256;
    long long bytes = 0;
};

/// Errors: `missing` where there is no plain file, `io`.
[[nodiscard]] Result<FileSum> sum_of(const std::filesystem::path& file);

/// Copies a file to a name that nothing has yet and sums it on the way; only its owner may read the copy. It isn't on
/// the disk before a sync. Errors: `missing`, `conflict` where the name is taken, `full`, `io`.
[[nodiscard]] Result<FileSum> copy_summed(const std::filesystem::path& from, const std::filesystem::path& to);

/// Whether a name in `photos` is a photo's, not something that lies there by accident.
[[nodiscard]] bool is_photo_name(const std::filesystem::path& file);

}  // namespace truehang::workroom
