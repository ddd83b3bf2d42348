// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <kainjow/mustache.hpp>

#include <string>
#include <string_view>
#include <vector>

// Templates and the frame that every page stands in. Whatever a template writes with two braces is escaped.

namespace truehang::workroom {

using View = kainjow::mustache::data;

/// An object to be filled with `set`.
[[nodiscard]] View view();
[[nodiscard]] View view_list();
/// True or false, for sections.
[[nodiscard]] View truth(bool value);

/// A flag's shape as the templates and the style sheet name it: `broken-circle`.
[[nodiscard]] std::string shape_name(std::string_view shape_word);

/// A template of `pages`, filled. `{{> name}}` in it is the template `name.mustache`.
[[nodiscard]] std::string fill(std::string_view template_name, View& values);

/// One step of the way back.
struct BackStep {
    std::string href;
    std::string text;
};

struct Frame {
    std::string title;
    std::string kind;  ///< class of the body
    std::vector<BackStep> back;
    bool standalone = false;  ///< the style sheet stands in the page, nothing is fetched
};

/// The whole page round `body`, which is HTML already.
[[nodiscard]] std::string framed(const Frame& frame, const std::string& body);

}  // namespace truehang::workroom
