// SPDX-License-Identifier: Apache-2.0
#include "workroom/site/frame.h"

#include "workroom/site/template_text.h"

#include <algorithm>

namespace truehang::workroom {

namespace mustache = kainjow::mustache;

View view() { return View{View::type::object}; }
View view_list() { return View{View::type::list}; }
View truth(bool value) { return View{value ? View::type::bool_true : View::type::bool_false}; }

std::string shape_name(std::string_view shape_word) {
    std::string name(shape_word);
    std::replace(name.begin(), name.end(), ' ', '-');
    std::replace(name.begin(), name.end(), '_', '-');
    return name;
}

std::string fill(std::string_view template_name, View& values) {
    for (const auto* partial : {"block", "differences", "flag_shape", "mind", "session_table", "asked", "arrivals"}) {
        const std::string text(template_text(std::string(partial) + ".mustache"));
        values.set(partial, View{mustache::partial{[text] { return text; }}});
    }
    mustache::mustache page{std::string(template_text(std::string(template_name) + ".mustache"))};
    return page.render(values);
}

std::string framed(const Frame& frame, const std::string& body) {
    auto values = view();
    values.set("title", frame.title + " – Truehang");
    values.set("kind", frame.kind);
    values.set("body", body);
    if (frame.standalone) {
        values.set("style", std::string(template_text("style.css")));
    }
    if (!frame.back.empty() && !frame.standalone) {
        auto steps = view_list();
        for (const auto& step : frame.back) {
            auto entry = view();
            entry.set("href", step.href);
            entry.set("text", step.text);
            steps << entry;
        }
        values.set("back", truth(true));
        values.set("steps", steps);
    }
    return fill("frame", values);
}

}  // namespace truehang::workroom
