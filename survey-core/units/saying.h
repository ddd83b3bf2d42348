// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "units/result.h"

#include <fmt/format.h>

#include <functional>
#include <locale>
#include <map>
#include <optional>
#include <string>
#include <string_view>

// What the core says to a person, in the language that is in force. English stands in the sources and is what
// documents are written in; another language is a table from English patterns to its own (survey-core/words).

namespace truehang {

/// The words of one language; never changes once it is read.
class Language {
public:
    /// Reads a table: pairs of lines, an English pattern and the language's own with the same placeholders in any
    /// order ({0}, {1} …), blank lines between; `#` begins a remark, `@decimal ,` says the decimal mark, `@within
    /// lower` that a first letter becomes small within a sentence. Error: `unreadable`, where names the line.
    [[nodiscard]] static Result<Language> read(std::string_view table);

    /// What it says for an English pattern; nothing where it has no words for it.
    [[nodiscard]] std::optional<std::string_view> find(std::string_view english) const;
    [[nodiscard]] char decimal() const { return decimal_; }
    [[nodiscard]] bool lowers_within() const { return lowers_within_; }
    /// How numbers are written into its patterns.
    [[nodiscard]] const std::locale& numbers() const { return numbers_; }

private:
    void set(std::string_view setting);

    std::map<std::string, std::string, std::less<>> said_;
    std::locale numbers_ = std::locale::classic();
    char decimal_ = '.';
    bool lowers_within_ = false;
};

/// From now on everything is said in this language on every thread; null: in English. It must outlive all that is said.
void speak(const Language* language);

/// The language in force here; null: English.
[[nodiscard]] const Language* spoken();

/// While it lives, this thread speaks English: for what goes into a document.
class EnglishHere {
public:
    EnglishHere();
    ~EnglishHere();
    EnglishHere(const EnglishHere&) = delete;
    EnglishHere& operator=(const EnglishHere&) = delete;
};

[[nodiscard]] std::string said_in_force(std::string_view english, fmt::format_args args);

/// A sentence or a part of one: `say("The pole meets the {}.", what)`. The pattern is a literal, so that a gate finds
/// it in the sources and misses no words for it.
template <typename... Args>
[[nodiscard]] std::string say(fmt::format_string<Args...> english, Args&&... args) {
    const fmt::string_view pattern = english;
    return said_in_force({pattern.data(), pattern.size()}, fmt::make_format_args(args...));
}

/// A fixed text out of a table, a list of words or a trace, in the language in force. A number in it (“facet 2”) stands
/// for {} in its pattern. As it is where the language has no words for it: a name that somebody gave stays.
[[nodiscard]] std::string worded(std::string_view english);

/// Marks a text of a table that is said through `worded` later, so that the gate finds it.
[[nodiscard]] constexpr std::string_view to_say(std::string_view english) { return english; }

/// The decimal mark of the language in force.
[[nodiscard]] char said_decimal();

/// What began a line, within a sentence: with a small first letter where the language does so. A name that goes on in
/// capitals keeps its own.
[[nodiscard]] std::string within_sentence(std::string says);

}  // namespace truehang
