// SPDX-License-Identifier: Apache-2.0
#include "units/saying.h"

#include <algorithm>
#include <atomic>
#include <cctype>
#include <vector>

namespace truehang {

namespace {

std::atomic<const Language*> in_force{nullptr};
thread_local int english_here = 0;

/// Numbers with another decimal mark, digits never grouped.
class Punctuation : public std::numpunct<char> {
public:
    explicit Punctuation(char decimal) : decimal_(decimal) {}

protected:
    char do_decimal_point() const override { return decimal_; }
    std::string do_grouping() const override { return {}; }

private:
    char decimal_;
};

/// Placeholders of decimals, told to use the language's mark: {:.1f} becomes {:.1Lf}.
std::string with_own_decimals(std::string_view pattern) {
    std::string text;
    for (std::size_t i = 0; i < pattern.size(); ++i) {
        const bool ends = i + 1 < pattern.size() && pattern[i + 1] == '}' && (pattern[i] == 'f' || pattern[i] == 'g');
        const std::size_t opens = pattern.substr(0, i).rfind('{');
        if (ends && opens != std::string_view::npos &&
            pattern.substr(opens, i - opens).find_first_of(":}") != std::string_view::npos &&
            pattern.substr(opens, i - opens).find('}') == std::string_view::npos) {
            text += 'L';
        }
        text += pattern[i];
    }
    return text;
}

bool is_ascii_digit(char c) { return c >= '0' && c <= '9'; }

/// A text with its numbers taken out: the pattern, and the numbers in order.
struct Numbered {
    std::string pattern;
    std::vector<std::string> numbers;
};

Numbered numbered(std::string_view text) {
    Numbered found;
    for (std::size_t i = 0; i < text.size();) {
        if (!is_ascii_digit(text[i])) {
            found.pattern += text[i++];
            continue;
        }
        std::size_t end = i;
        while (end < text.size() && (is_ascii_digit(text[end]) ||
                                     (text[end] == '.' && end + 1 < text.size() && is_ascii_digit(text[end + 1])))) {
            ++end;
        }
        found.pattern += "{}";
        found.numbers.emplace_back(text.substr(i, end - i));
        i = end;
    }
    return found;
}

/// The pattern with the numbers in their places, in order.
std::string filled(std::string_view pattern, const Numbered& from, char decimal) {
    std::string text;
    std::size_t next = 0;
    for (std::size_t i = 0; i < pattern.size(); ++i) {
        if (pattern.substr(i, 2) == "{}" && next < from.numbers.size()) {
            std::string number = from.numbers[next++];
            std::ranges::replace(number, '.', decimal);
            text += number;
            ++i;
        } else {
            text += pattern[i];
        }
    }
    return text;
}

Error unreadable(std::size_t line, std::string text) {
    return {ErrorCode::unreadable, fmt::format("line {}", line), std::move(text)};
}

}  // namespace

void Language::set(std::string_view setting) {
    constexpr std::string_view decimal = "@decimal ";
    if (setting.starts_with(decimal) && setting.size() == decimal.size() + 1) {
        decimal_ = setting.back();
        numbers_ = std::locale(std::locale::classic(), new Punctuation(decimal_));  // the locale owns it
    } else if (setting == "@within lower") {
        lowers_within_ = true;
    }
}

Result<Language> Language::read(std::string_view table) {
    Language language;
    std::string english;
    std::size_t line = 0;
    while (!table.empty()) {
        const std::size_t end = std::min(table.find('\n'), table.size());
        const std::string_view text = table.substr(0, end);
        table.remove_prefix(std::min(end + 1, table.size()));
        ++line;
        if (text.starts_with('#')) {
            continue;
        }
        if (text.starts_with('@')) {
            language.set(text);
        } else if (!english.empty() && text.empty()) {
            return unreadable(line, fmt::format("“{}” has no words. Write them in the line below it.", english));
        } else if (!english.empty()) {
            if (!language.said_.emplace(english, with_own_decimals(text)).second) {
                return unreadable(line, fmt::format("“{}” stands twice. Leave one of them out.", english));
            }
            english.clear();
        } else {
            english = text;
        }
    }
    if (!english.empty()) {
        return unreadable(line, fmt::format("“{}” has no words. Write them in the line below it.", english));
    }
    return language;
}

std::optional<std::string_view> Language::find(std::string_view english) const {
    const auto found = said_.find(english);
    return found == said_.end() ? std::nullopt : std::optional<std::string_view>(found->second);
}

void speak(const Language* language) { in_force.store(language, std::memory_order_release); }

const Language* spoken() { return english_here > 0 ? nullptr : in_force.load(std::memory_order_acquire); }

EnglishHere::EnglishHere() { ++english_here; }
EnglishHere::~EnglishHere() { --english_here; }

std::string said_in_force(std::string_view english, fmt::format_args args) {
    if (const Language* language = spoken()) {
        if (const auto own = language->find(english)) {
            try {
                return fmt::vformat(language->numbers(), *own, args);
            } catch (const fmt::format_error&) {
                // A table with other placeholders, which its gate would have told: the English is better than nothing.
            }
        }
    }
    return fmt::vformat(english, args);
}

std::string worded(std::string_view english) {
    const Language* language = spoken();
    if (language == nullptr) {
        return std::string(english);
    }
    if (const auto own = language->find(english)) {
        return std::string(*own);
    }
    const Numbered numbers = numbered(english);
    const auto own = language->find(numbers.pattern);
    return own ? filled(*own, numbers, language->decimal()) : std::string(english);
}

char said_decimal() {
    const Language* language = spoken();
    return language == nullptr ? '.' : language->decimal();
}

std::string within_sentence(std::string says) {
    const Language* language = spoken();
    const auto is_upper = [&](std::size_t at) {
        return at < says.size() && std::isupper(static_cast<unsigned char>(says[at])) != 0;
    };
    if ((language == nullptr || language->lowers_within()) && is_upper(0) && !is_upper(1)) {
        says[0] = static_cast<char>(std::tolower(static_cast<unsigned char>(says[0])));
    }
    return says;
}

}  // namespace truehang
