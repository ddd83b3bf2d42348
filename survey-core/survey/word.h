// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <utility>

namespace truehang {

/// The words of one list of the contract; specialised beside each enumeration as an array of {word, value}.
template <class E>
struct Words;

/// A word of the survey document that a list names: kept as it was written, so that what this version doesn't know
/// travels on unchanged; `known()` is empty for such a word.
template <class E>
class Word {
public:
    Word() = default;
    Word(E value) : text_(word_for(value)), value_(value) {}
    explicit Word(std::string text) : text_(std::move(text)), value_(find(text_)) {}

    [[nodiscard]] const std::string& text() const { return text_; }
    [[nodiscard]] std::optional<E> known() const { return value_; }
    [[nodiscard]] bool is(E value) const { return value_ == value; }
    friend bool operator==(const Word& a, const Word& b) { return a.text_ == b.text_; }

    [[nodiscard]] static std::optional<E> find(std::string_view text) {
        for (const auto& [word, value] : Words<E>::list) {
            if (word == text) {
                return value;
            }
        }
        return std::nullopt;
    }
    [[nodiscard]] static std::string word_for(E value) {
        for (const auto& [word, candidate] : Words<E>::list) {
            if (candidate == value) {
                return std::string(word);
            }
        }
        return {};
    }

private:
    std::string text_;
    std::optional<E> value_;
};

/// One entry of a word list.
template <class E>
using WordEntry = std::pair<std::string_view, E>;

}  // namespace truehang
