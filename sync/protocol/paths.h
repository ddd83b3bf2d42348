// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <optional>
#include <string>
#include <string_view>

// What stands where on a workroom. Paths are written percent-encoded (RFC 3986) and must be sent as they are.

namespace truehang::sync {

inline constexpr std::string_view pair_path = "/pair";
inline constexpr std::string_view health_path = "/health";

/// `/changes`: GET tells what came in after a cursor.
inline constexpr std::string_view changes_path = "/changes";

/// `/surveys/{id}/revisions/{n}`: PUT stores a revision, GET fetches it.
[[nodiscard]] std::string revision_path(std::string_view survey_id, long long revision);
/// `/surveys/{id}/receipt`: GET tells which revisions are there.
[[nodiscard]] std::string receipt_path(std::string_view survey_id);
/// `/surveys/{id}/figures`: GET works the newest revision.
[[nodiscard]] std::string figures_path(std::string_view survey_id);
/// `/surveys/{id}/marks`: GET tells what was done with each layer.
[[nodiscard]] std::string marks_path(std::string_view survey_id);
/// `/questions`: GET tells what was asked and answered after a cursor; `/surveys/{id}/questions`: of one survey.
inline constexpr std::string_view all_questions_path = "/questions";
[[nodiscard]] std::string questions_path(std::string_view survey_id);
/// `/surveys/{id}/questions/{number}/answers/{answer id}`: PUT answers.
[[nodiscard]] std::string answer_path(std::string_view survey_id, long long number, std::string_view answer_id);
/// `/photos/{sha256}`: PUT stores, POST begins an upload in pieces, HEAD asks, GET fetches.
[[nodiscard]] std::string photo_path(std::string_view sha256_hex);
/// `/uploads/{sha256}`: HEAD asks how far a photo has come in pieces, PATCH appends, DELETE gives up. It is begun with
/// POST to the photo's own path.
[[nodiscard]] std::string upload_path(std::string_view sha256_hex);

/// `/rules`: GET fetches the house rules in use; `/rules/{n}`: one version of them.
inline constexpr std::string_view rules_path_now = "/rules";
[[nodiscard]] std::string rules_path(long long version);

/// What a path of the protocol names.
struct Place {
    enum class Kind {
        pair,
        health,
        revision,
        receipt,
        figures,
        photo,
        upload,
        rules,
        changes,
        marks,
        all_questions,
        questions,
        answer
    };
    Kind kind = Kind::health;
    std::string survey;      ///< decoded id, of all that is one survey’s
    long long revision = 0;  ///< of revision: 1 to `revision_limit`; of rules their version, 0 for those in use; of an
                             ///< answer its question’s number
    std::string answer;      ///< its id
    std::string sha256;      ///< of photo and upload: 64 lower-case hexadecimal digits
};

/// Reads a path (no query). Nothing where it isn't one of the protocol's: a bad percent-encoding, an id that can't
/// travel, a revision that isn't a plain whole number from 1 up, a digest that isn't 64 lower-case digits.
[[nodiscard]] std::optional<Place> read_path(std::string_view path);

/// Whether a survey's id can travel: 1 to `id_limit` bytes, no control characters, neither "." nor "..".
[[nodiscard]] bool id_travels(std::string_view id);

/// Every byte but the unreserved ones of RFC 3986 as %XX.
[[nodiscard]] std::string percent_encode(std::string_view text);
/// The bytes that a percent-encoded segment stands for; nothing where an escape is cut short or not hexadecimal.
[[nodiscard]] std::optional<std::string> percent_decode(std::string_view text);

}  // namespace truehang::sync
