// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "units/result.h"

#include <filesystem>
#include <string>
#include <string_view>

namespace truehang {

/// Writes `bytes` so that `file` is there whole or not at all, also after a loss of power: a temporary file beside it,
/// synced, renamed, its folder synced. Errors: `full`, `io`.
[[nodiscard]] Result<Done> write_whole(const std::filesystem::path& file, std::string_view bytes);

/// Makes a folder and those above it, on the disk.
[[nodiscard]] Result<Done> make_folder(const std::filesystem::path& folder);

/// Takes the bytes of a file that was written to the disk. Errors: `full`, `io`.
[[nodiscard]] Result<Done> sync_file(const std::filesystem::path& file);

/// Takes what was renamed into or made in a folder to the disk.
[[nodiscard]] Result<Done> sync_folder(const std::filesystem::path& folder);

/// The whole of a file. Errors: `missing`, `io`.
[[nodiscard]] Result<std::string> read_whole(const std::filesystem::path& file);

/// Photos by the sha256 of their bytes: `ab/abcd….jpg` in one folder.
class PhotoFolder {
public:
    explicit PhotoFolder(std::filesystem::path folder) : folder_(std::move(folder)) {}

    /// Puts the bytes on the disk where they aren't yet; their sha256.
    [[nodiscard]] Result<std::string> keep(std::string_view bytes, std::string_view media_type) const;
    /// The file, or `missing`.
    [[nodiscard]] Result<std::filesystem::path> find(std::string_view sha256) const;
    /// The bytes, or `missing`, or `damaged` where their sha256 is another.
    [[nodiscard]] Result<std::string> bytes(std::string_view sha256) const;
    /// Takes the file away, where it is there.
    [[nodiscard]] Result<Done> erase(std::string_view sha256) const;
    /// Copies what isn't there yet to another folder. Errors: `full`, `io`.
    [[nodiscard]] Result<Done> copy_to(const std::filesystem::path& other) const;
    /// Takes away what a broken write left.
    void tidy() const;

private:
    std::filesystem::path folder_;
};

/// "image/jpeg" for a file ending in .jpg; "application/octet-stream" where the ending says nothing.
[[nodiscard]] std::string media_type_of(const std::filesystem::path& photo);

}  // namespace truehang
