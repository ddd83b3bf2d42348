// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "units/result.h"

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <tuple>
#include <vector>

// What a workroom has done with each layer of a survey: marks that are added and never changed (format
// truehang.marks/1).

namespace truehang::sync {

/// What is done with a layer, in this order.
enum class Step { ordered, cut, made, hung };
inline constexpr std::array<Step, 4> all_steps{Step::ordered, Step::cut, Step::made, Step::hung};
[[nodiscard]] std::string_view word_of(Step step);
[[nodiscard]] std::optional<Step> step_of(std::string_view word);

/// The most bytes of a person’s name.
inline constexpr std::size_t name_limit = 100;
/// The most marks of one survey.
inline constexpr long long marks_limit = 10'000;

/// One step of one layer that a person marked as done, or took back.
struct LayerMark {
    long long number = 0;             ///< from 1, rising in a survey
    std::string room, window, layer;  ///< ids as the survey has them; no layer where the window isn’t layered
    Step step = Step::ordered;
    bool done = true;            ///< false: the mark before is taken back
    long long revision = 0;      ///< of the survey, that it was done by
    std::string figures_sha256;  ///< of the layer’s figures then; empty where it is taken back
    std::string by;              ///< who marked it
    std::string at;              ///< RFC 3339, UTC
    friend bool operator==(const LayerMark&, const LayerMark&) = default;
};

/// All marks of one survey, rising: answer to `GET /surveys/{id}/marks`.
struct LayerMarks {
    std::string survey;
    std::vector<LayerMark> marks;
    friend bool operator==(const LayerMarks&, const LayerMarks&) = default;
};

[[nodiscard]] std::string write_marks(const LayerMarks& marks);
/// Error `unreadable` with the JSON pointer in `where`: another format, a key that is missing or of a wrong type, a
/// number out of its order, a step that isn't known.
[[nodiscard]] Result<LayerMarks> read_marks(std::string_view json);

/// What a mark is of: two of one place are about the same step of the same layer.
using StepPlace = std::tuple<std::string, std::string, std::string, Step>;
[[nodiscard]] StepPlace place_of(const LayerMark& mark);

/// The marks that stand: of each layer and step the last, where it wasn't taken back.
[[nodiscard]] std::vector<LayerMark> standing_marks(const std::vector<LayerMark>& marks);

}  // namespace truehang::sync
