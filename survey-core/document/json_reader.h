// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "document/document.h"

#include <cstddef>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

// The JSON stage of reading a document: bytes to a tree that keeps members in their order and numbers as they were
// written, with every fault at the JSON pointer where it lies.

namespace truehang {

enum class JsonKind { null, boolean, number, string, object, array };

/// One JSON value.
struct JsonValue {
    JsonValue();  ///< null

    JsonKind kind = JsonKind::null;
    bool truth = false;                                      ///< of a boolean
    double number = 0.0;                                     ///< of a number, finite
    std::string text;                                        ///< of a string; of a number its literal
    std::vector<std::pair<std::string, JsonValue>> members;  ///< of an object, in the order written
    std::vector<JsonValue> items;                            ///< of an array

    /// The first member of that name, or nothing.
    [[nodiscard]] const JsonValue* find(std::string_view name) const;
};

/// A tree, and the pointers of keys that stand twice in their object (JSON allows it; a survey can't mean both).
struct JsonTree {
    JsonValue root;
    std::vector<std::string> repeated_keys;
};

/// Largest document in bytes, how many objects and lists may stand in one another, and how many values in all.
inline constexpr std::size_t largest_document = std::size_t{4} * 1024 * 1024;
inline constexpr std::size_t deepest_nesting = 100;
inline constexpr std::size_t most_values = 500000;

/// Reads JSON (RFC 8259) in UTF-8. Faults: larger than 4 MiB, deeper than 100, more than 500,000 values, not JSON, not
/// UTF-8, a number beyond what a double holds. Reading stops at the first of these, for nothing after it can be
/// trusted.
[[nodiscard]] Result<JsonTree, Faults> read_json(std::string_view bytes);

/// The value as JSON text on one line, numbers as they were written.
[[nodiscard]] std::string json_text(const JsonValue& value);

/// A string as a JSON string with its quotes; bytes that aren't UTF-8 become U+FFFD.
[[nodiscard]] std::string json_string(std::string_view text);

/// A finite number as JSON, shortest text that reads back as the same double, whole numbers without a point.
[[nodiscard]] std::string json_number(double number);

/// One more step of a JSON pointer (RFC 6901): `~` as `~0`, `/` as `~1`.
[[nodiscard]] std::string pointer_to(std::string_view parent, std::string_view name);
[[nodiscard]] std::string pointer_to(std::string_view parent, std::size_t index);

}  // namespace truehang
