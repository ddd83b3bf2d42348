// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "units/result.h"
#include "workroom/keeping/kept_at.h"
#include "workroom/keeping/kept_folder.h"
#include "workroom/records/records.h"

#include <filesystem>
#include <memory>
#include <optional>
#include <string>

namespace truehang::workroom {

/// A folder of its own, for its owner alone, from when it is asked for until this ends.
class Scratch {
public:
    /// To be made in `beside`.
    explicit Scratch(std::filesystem::path beside) : beside_(std::move(beside)) {}
    ~Scratch();
    Scratch(const Scratch&) = delete;
    Scratch& operator=(const Scratch&) = delete;
    /// Throws std::filesystem::filesystem_error where it can’t be made.
    [[nodiscard]] const std::filesystem::path& path();

private:
    std::filesystem::path beside_, path_;
};

/// What a workroom keeps, opened to read beside whoever serves it: a folder, or a copy of one, or a folder with the
/// database that holds its records and photos. Nothing in it is changed.
class KeptRecords {
public:
    /// Of a folder that another holds open for as long.
    explicit KeptRecords(KeptFolder& folder);
    /// Errors: as `KeptFolder::open`; of a database `missing` where no workroom ever wrote into it.
    [[nodiscard]] static Result<std::unique_ptr<KeptRecords>> open(const KeptAt& kept);

    [[nodiscard]] Records& records() { return *records_; }
    [[nodiscard]] const std::filesystem::path& folder() const { return folder_; }
    /// What a person knows them by; never the database’s address, which may hold a password.
    [[nodiscard]] std::string place() const { return hold_photos() ? "the database" : folder_.string(); }
    /// Photos and rules lie in the records too.
    [[nodiscard]] bool hold_photos() const { return records_->hold_photos(); }

    /// Digest and length of the bytes that are here. Errors: `missing`, `io`.
    [[nodiscard]] Result<FileSum> photo_sum(const std::string& sha256);
    /// A file with a photo’s bytes: its own, or a copy in `scratch`, which isn’t there where nothing of it is.
    [[nodiscard]] std::filesystem::path photo_file(const std::string& sha256, Scratch& scratch);

private:
    explicit KeptRecords(KeptFolder&& own);
    KeptRecords(std::filesystem::path folder, std::unique_ptr<Records> records)
        : records_(std::move(records)), folder_(std::move(folder)) {}

    std::optional<KeptFolder> own_;
    std::unique_ptr<Records> records_;
    std::filesystem::path folder_;
};

}  // namespace truehang::workroom
