// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "units/result.h"
#include "workroom/records/records.h"

#include <filesystem>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

// What was erased for good isn't taken in again. All of this is asked within the transaction that would take it in, so
// that nothing slips in beside one that erases.

namespace truehang::workroom {

class Archive;

/// What is still known of a survey that was erased.
struct ErasedSurvey {
    std::string survey;
    std::string erased_at;  ///< RFC 3339, UTC
    std::string erased_by;
    long long revisions = 0, rolls = 0, photos = 0;
};

/// The one that was erased last first.
[[nodiscard]] Result<std::vector<ErasedSurvey>> erased_surveys(Archive& archive);

[[nodiscard]] bool is_erased(Records& records, const std::string& survey);

/// Whether a photo was erased, and no survey has named it again since.
[[nodiscard]] Result<bool> is_erased_photo(Archive& archive, const std::string& sha256);

/// That a survey, or a photo, was erased and isn't taken.
[[nodiscard]] Error erased_error(std::string_view what);
[[nodiscard]] bool is_erased_error(const Error& error);

/// Each run of exactly 64 small hexadecimal digits in a document: whatever it may name by its SHA-256, each once.
[[nodiscard]] std::vector<std::string> digests_in(std::string_view document);

/// A survey that names a photo which was erased with another: from now on it is taken.
void take_photos_again(Records& records, std::string_view document);

/// Why a photo that stands in its place mustn't be recorded, or nothing: it was erased (its file is taken away), or its
/// file was taken away meanwhile (`busy`: to be sent again).
[[nodiscard]] std::optional<Error> why_not_record(Records& records, const std::string& sha256,
                                                  const std::filesystem::path& file);

}  // namespace truehang::workroom
