// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <utility>
#include <variant>

namespace truehang {

/// The closed set of what can go wrong in the core. Where it lies and what to do stand in `Error`.
enum class ErrorCode {
    unreadable,     ///< text that isn't a number, a time or a document
    ambiguous,      ///< text that could mean two things; never guessed
    out_of_range,   ///< readable, but outside the range the contract gives
    unknown_word,   ///< a word that none of the lists names
    missing,        ///< a key, row or file that should be there
    conflict,       ///< what is there already contradicts what was asked
    busy,           ///< another process holds the store
    full,           ///< no room on the disk
    damaged,        ///< stored bytes that don't read back
    newer_version,  ///< written by a later version of the program
    io,             ///< any other refusal of the operating system
};

/// One failure: what kind, where (a JSON pointer, a path or a table), and one sentence that says what to do.
struct Error {
    ErrorCode code = ErrorCode::unreadable;
    std::string where;
    std::string text;
};

/// Either a value or an error. Reading the wrong one is a programming fault (std::bad_variant_access).
template <class T, class E = Error>
class [[nodiscard]] Result {
public:
    Result(T value) : held_(std::in_place_index<0>, std::move(value)) {}
    Result(E error) : held_(std::in_place_index<1>, std::move(error)) {}

    [[nodiscard]] bool ok() const { return held_.index() == 0; }
    explicit operator bool() const { return ok(); }
    [[nodiscard]] const T& value() const& { return std::get<0>(held_); }
    [[nodiscard]] T& value() & { return std::get<0>(held_); }
    [[nodiscard]] T&& value() && { return std::get<0>(std::move(held_)); }
    [[nodiscard]] const E& error() const { return std::get<1>(held_); }
    const T* operator->() const { return &value(); }
    const T& operator*() const& { return value(); }

private:
    std::variant<T, E> held_;
};

/// The value of a call that returns nothing else.
struct Done {};

}  // namespace truehang
