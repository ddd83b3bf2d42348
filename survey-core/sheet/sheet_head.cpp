// SPDX-License-Identifier: Apache-2.0
#include "sheet/sheet_head.h"

#include "units/saying.h"

#include <algorithm>

namespace truehang {

SheetPlace sheet_place(const Survey& survey, std::size_t window_index) {
    for (const Room& room : survey.rooms) {
        if (window_index < room.windows.size()) {
            return {&room, &room.windows[window_index]};
        }
        window_index -= room.windows.size();
    }
    return {};
}

namespace {

/// "Measured 14 March 2026 by Ann"; empty where neither is known.
std::string measured_line(const Survey& survey) {
    if (survey.measured_at.empty()) {
        return survey.measured_by.empty() ? std::string() : say("Measured by {}", survey.measured_by);
    }
    const std::string day = day_text(survey.measured_at);
    return survey.measured_by.empty() ? say("Measured {}", day) : say("Measured {} by {}", day, survey.measured_by);
}

}  // namespace

std::vector<std::string> heading_lines(const Survey& survey, const SheetStyle& style) {
    std::vector<std::string> lines;
    std::string who = survey.client ? survey.client->name : std::string();
    if (survey.site && !survey.site->address.empty()) {
        who += (who.empty() ? "" : ", ") + survey.site->address;
    }
    if (!who.empty()) {
        lines.push_back(who + ".");
    }
    if (const std::string measured = measured_line(survey); !measured.empty()) {
        lines.push_back(measured + (measured.ends_with('.') ? "" : "."));
    }
    lines.push_back(unit_sentence(style));
    return lines;
}

std::vector<std::string> heading_paragraphs(const std::vector<std::string>& lines, const std::string& description) {
    std::string first;
    for (const std::string& line : lines) {
        first += (first.empty() ? "" : " ") + line;
    }
    std::vector<std::string> paragraphs{std::move(first)};
    if (!description.empty()) {
        paragraphs.push_back(description);
    }
    return paragraphs;
}

std::vector<SheetMind> minds_of(const WindowFigures& window, const std::string& layer) {
    std::vector<SheetMind> minds;
    for (const Flag& flag : window.flags) {
        if (flag.layer.empty() || flag.layer == layer) {
            minds.push_back({.severity = flag.severity,
                             .shape = shape_of(flag.severity),
                             .word = worded(flag_word(flag.severity)),
                             .text = flag.text,
                             .code = flag.code});
        }
    }
    std::ranges::stable_sort(minds, {}, &SheetMind::severity);
    return minds;
}

std::string corner_of(const Survey& survey) {
    std::string corner = survey.title.substr(0, survey.title.find(','));
    if (survey.revision) {
        corner += corner.empty() ? say("Revision {}", *survey.revision) : ", " + say("revision {}", *survey.revision);
    }
    return corner;
}

std::string provisional_text(const std::vector<SheetMind>& minds) {
    if (minds.empty() || minds.front().severity > Severity::remeasure) {
        return {};
    }
    return minds.front().severity == Severity::stop
               ? say("Provisional: nothing can be cut from this sheet yet.")
               : say("Provisional: don’t cut from this sheet before the reading is taken again.");
}

SheetMind caution_mind(const Caution& caution) {
    return {.severity = Severity::caution,
            .shape = shape_of(Severity::caution),
            .word = worded(flag_word(Severity::caution)),
            .text = worded(caution.text),
            .code = {}};
}

std::vector<SheetMind> one_way_minds(const Survey& survey, const LayerFigures& layer) {
    std::vector<SheetMind> minds;
    for (const Fabric& fabric : survey.fabrics) {
        const auto is = [&](const auto& cloth) { return cloth && cloth->fabric == fabric.id; };
        if (fabric.one_way.value_or(false) &&
            (is(layer.cloth) || is(layer.lining) || is(layer.making.second_lining) || is(layer.interlining))) {
            minds.push_back({.severity = Severity::note,
                             .shape = shape_of(Severity::note),
                             .word = worded(flag_word(Severity::note)),
                             .text = one_way_text(fabric),
                             .code = std::string(one_way_code)});
        }
    }
    return minds;
}

SheetCell word_cell(std::string text) { return {.text = std::move(text), .figure = {}, .number = false}; }

SheetCell figure_cell(std::string text, std::string figure) {
    return {.text = std::move(text), .figure = std::move(figure), .number = true};
}

}  // namespace truehang
