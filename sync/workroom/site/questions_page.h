// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "protocol/questions.h"
#include "survey/survey.h"
#include "workroom/site/frame.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace truehang::workroom {

/// `/surveys/ID/ask`
[[nodiscard]] std::string ask_path(std::string_view survey);
/// The same with a window chosen.
[[nodiscard]] std::string ask_path(std::string_view survey, const std::string& room, const std::string& window);

/// What is asked about: `ROOM/WINDOW/STATION` in a form, each percent-encoded, no station for the whole window.
struct AskedAbout {
    std::string room, window, station;
    friend bool operator==(const AskedAbout&, const AskedAbout&) = default;
};
[[nodiscard]] std::string write_asked_about(const AskedAbout& about);
[[nodiscard]] std::optional<AskedAbout> read_asked_about(std::string_view text);
/// Whether the survey has that window, and the window’s walk or readings that station.
[[nodiscard]] bool can_be_asked(const Survey& survey, const AskedAbout& about);

/// What the page has to say beside the questions.
struct QuestionsPage {
    std::string said;           ///< one sentence at the top, or nothing
    std::string by, words;      ///< what stands in the form
    bool by_signed_in = false;  ///< it is the one who is signed in, and isn’t typed
    bool may_ask = true;
    AskedAbout about;
    long long newest = 0;  ///< revision
};

/// The page on which a workroom asks about a window or a reading, and reads what was answered.
[[nodiscard]] std::string questions_page(const Survey& survey, const std::vector<sync::AskedQuestion>& asked,
                                         const QuestionsPage& page);

/// Questions with their answers for the partial `asked`, those that are open first.
[[nodiscard]] View questions_view(const Survey& survey, const std::vector<sync::AskedQuestion>& asked);

}  // namespace truehang::workroom
