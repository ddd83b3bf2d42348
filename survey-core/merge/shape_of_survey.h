// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "document/json_reader.h"
#include "survey/survey.h"

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

// The tree that surveys are merged as: the document’s own, with windows in one list (each naming its `room`), what
// hangs there always as `layers`, keys that are changed together as one (`latitude+longitude`), and members by name.

namespace truehang::merging {

/// By what an item of a list is known again.
enum class KnownBy {
    id,      ///< its id; without one, all that it says
    place,   ///< its id; without one, its place among those without
    sha256,  ///< a photo’s digest
    station,
    content,  ///< all that it says
};

enum class Form { value, object, list };

struct Part;

/// How one node of the tree is merged.
struct Node {
    Form form = Form::value;
    KnownBy known_by = KnownBy::content;         ///< of a list
    const Node* item = nullptr;                  ///< of a list
    std::span<const Part> parts;                 ///< of an object; members that aren’t named are values
    std::span<const std::string_view> together;  ///< of an object: keys that are changed together, as `a+b`
};

struct Part {
    std::string_view name;
    const Node* node;
    bool whole_where_new = false;  ///< made by two, it is one value: its members aren’t mixed
};

[[nodiscard]] const Node& survey_node();
[[nodiscard]] const Node& room_node();
[[nodiscard]] const Node& window_node();

/// The tree of a survey; faults where the survey isn’t sound.
[[nodiscard]] Result<JsonValue, Faults> tree_of(const Survey& survey);

/// The survey of a tree with its windows back in their rooms; faults as `read_survey` finds them.
[[nodiscard]] Result<Survey, Faults> survey_of_tree(const JsonValue& tree);

/// What the items of a list are known by, each once: two that are alike are told apart by `#2`, `#3`.
[[nodiscard]] std::vector<std::string> keys_of(const JsonValue& list, KnownBy known_by);

/// How the member is merged, and whether it is one value where two made it.
[[nodiscard]] Part part_named(const Node& object, std::string_view name);

}  // namespace truehang::merging
