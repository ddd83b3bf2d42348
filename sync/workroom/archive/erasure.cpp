// SPDX-License-Identifier: Apache-2.0
#include "workroom/archive/erasure.h"

#include "workroom/archive/archive.h"

#include <fmt/format.h>

#include <algorithm>

namespace truehang::workroom {

namespace {

constexpr std::string_view mark = "erased";
constexpr std::size_t digest_length = 64;

bool is_digit(char c) { return (c >= '0' && c <= '9') || (c >= 'a' && c <= 'f'); }

bool has(Records& records, const char* query, const std::string& key) {
    Query statement(records, query);
    statement.bind(1, key);
    return statement.step();
}

}  // namespace

Result<std::vector<ErasedSurvey>> erased_surveys(Archive& archive) {
    return archive.database().read<std::vector<ErasedSurvey>>(
        [](Records& records) -> Result<std::vector<ErasedSurvey>> {
            Query query(records,
                        "SELECT survey, erased_at, erased_by, revisions, rolls, photos FROM erased "
                        "ORDER BY erased_at DESC, survey");
            std::vector<ErasedSurvey> erased;
            while (query.step()) {
                erased.push_back(
                    {query.text(0), query.text(1), query.text(2), query.number(3), query.number(4), query.number(5)});
            }
            return erased;
        });
}

bool is_erased(Records& records, const std::string& survey) {
    return has(records, "SELECT 1 FROM erased WHERE survey = ?", survey);
}

Result<bool> is_erased_photo(Archive& archive, const std::string& sha256) {
    return archive.database().read<bool>([&](Records& records) -> Result<bool> {
        return has(records, "SELECT 1 FROM erased_photo WHERE sha256 = ?", sha256);
    });
}

Error erased_error(std::string_view what) {
    return {ErrorCode::missing, std::string(mark),
            fmt::format("{} was erased here for good; it isn’t taken in again.", what)};
}

bool is_erased_error(const Error& error) { return error.where == mark; }

std::vector<std::string> digests_in(std::string_view document) {
    std::vector<std::string> digests;
    for (std::size_t at = 0; at < document.size();) {
        const auto begin = std::find_if(document.begin() + static_cast<std::ptrdiff_t>(at), document.end(), is_digit);
        const auto end = std::find_if_not(begin, document.end(), is_digit);
        if (end - begin == static_cast<std::ptrdiff_t>(digest_length)) {
            digests.emplace_back(begin, end);
        }
        at = static_cast<std::size_t>(end - document.begin());
    }
    std::sort(digests.begin(), digests.end());
    digests.erase(std::unique(digests.begin(), digests.end()), digests.end());
    return digests;
}

void take_photos_again(Records& records, std::string_view document) {
    if (!Query(records, "SELECT 1 FROM erased_photo LIMIT 1").step()) {
        return;
    }
    Query again(records, "DELETE FROM erased_photo WHERE sha256 = ?");
    for (const auto& digest : digests_in(document)) {
        again.reset();
        again.bind(1, digest);
        again.exec();
    }
}

std::optional<Error> why_not_record(Records& records, const std::string& sha256, const std::filesystem::path& file) {
    std::error_code ignored;
    if (has(records, "SELECT 1 FROM erased_photo WHERE sha256 = ?", sha256)) {
        std::filesystem::remove(file, ignored);
        return erased_error("This photo");
    }
    if (!std::filesystem::exists(file, ignored)) {
        return Error{ErrorCode::busy, "photos", "The photo was taken away meanwhile; send it again."};
    }
    return std::nullopt;
}

}  // namespace truehang::workroom
