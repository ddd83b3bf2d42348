// SPDX-License-Identifier: Apache-2.0
#include "workroom/site/sheet_page.h"

#include "protocol/paths.h"
#include "protocol/sheet_code.h"
#include "sheet/svg.h"
#include "workroom/site/frame.h"
#include "workroom/site/pairing_page.h"
#include "workroom/site/photo_view.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>

namespace truehang::workroom {

namespace {

/// One row of nothing but numbers, set as a line of text: the centres of tabs.
bool is_run(const SheetBlock& block) {
    return block.rows.size() == 1 && block.columns.empty() &&
           std::all_of(block.rows[0].cells.begin(), block.rows[0].cells.end(),
                       [](const SheetCell& cell) { return cell.number; });
}

View cells_view(const SheetRow& row) {
    auto cells = view_list();
    for (std::size_t i = 0; i < row.cells.size(); ++i) {
        const auto& cell = row.cells[i];
        auto entry = view();
        entry.set("text", cell.text);
        entry.set("heads", truth(i == 0 && !cell.number));
        entry.set("number", truth(cell.number));
        // Each inner section looks outward for a name it lacks, so an empty one must be said.
        entry.set("figure", cell.figure.empty() ? truth(false) : View{cell.figure});
        cells << entry;
    }
    return cells;
}

View columns_view(const SheetBlock& block) {
    auto columns = view_list();
    for (std::size_t i = 0; i < block.columns.size(); ++i) {
        const auto is_number = [i](const SheetRow& row) { return i < row.cells.size() && row.cells[i].number; };
        auto entry = view();
        entry.set("text", block.columns[i].empty() ? truth(false) : View{block.columns[i]});
        entry.set("number", truth(std::any_of(block.rows.begin(), block.rows.end(), is_number)));
        columns << entry;
    }
    return columns;
}

View block_view(const SheetBlock& block, const std::string& id) {
    auto entry = view();
    entry.set("key", block.key);
    entry.set("id", id);
    entry.set("title", block.title);
    entry.set("run", truth(is_run(block)));
    entry.set("note", block.note.empty() ? truth(false) : View{block.note});
    entry.set("columns_some", truth(!block.columns.empty()));
    entry.set("columns", columns_view(block));
    auto rows = view_list();
    for (const auto& row : block.rows) {
        auto cells = view();
        cells.set("cells", cells_view(row));
        rows << cells;
    }
    entry.set("rows", rows);
    return entry;
}

View mind_view(const SheetMind& mind) {
    auto entry = view();
    const auto shape = shape_name(word_of(mind.shape));
    entry.set("shape", shape);
    for (const auto* name : {"triangle", "circle", "square", "broken-circle", "bar"}) {
        entry.set(name, truth(shape == name));
    }
    entry.set("word", mind.word);
    entry.set("text", mind.text);
    entry.set("code", mind.code);
    return entry;
}

View working_view(const SheetWorking& working) {
    auto entry = view();
    entry.set("figure", working.figure);
    entry.set("title", working.title);
    auto steps = view_list();
    for (const auto& step : working.steps) {
        steps << View{step};
    }
    entry.set("steps", steps);
    return entry;
}

template <class Items, class ViewOf>
void set_list(View& values, const std::string& name, const Items& items, const ViewOf& view_of) {
    auto list = view_list();
    for (const auto& item : items) {
        list << view_of(item);
    }
    values.set(name, list);
    values.set(name + "_some", truth(!items.empty()));
}

/// In the colours of the page it stands on, so that it follows the dark look and comes out light on paper.
std::string drawing_of(const Elevation& drawing, const std::string& id) {
    SvgOptions svg;
    svg.palette = {"var(--paper)", "var(--ink)", "var(--soft)", "var(--thread)", "var(--wash)"};
    svg.unit = "mm";
    svg.id = id;
    return svg_of(drawing, svg);
}

/// The parts of one sheet as the template takes them, a drawing together with the blocks beside it.
class PartsView {
public:
    explicit PartsView(std::string sheet_id) : sheet_id_(std::move(sheet_id)) {}

    View of(const std::vector<SheetPart>& parts) {
        for (std::size_t i = 0; i < parts.size(); ++i) {
            if (const auto* drawing = std::get_if<SheetDrawing>(&parts[i])) {
                i = drawing_and_beside(*drawing, parts, i);
            } else {
                std::visit([this](const auto& part) { add(part); }, parts[i]);
            }
        }
        return list_;
    }

private:
    [[nodiscard]] std::string next_id() { return sheet_id_ + "-" + std::to_string(++count_); }

    /// A part with nothing in it: an inner section looks outward for a name it lacks, so each must be said.
    static View empty_part() {
        auto part = view();
        for (const auto* name : {"top", "wide", "table", "minds", "workings", "words"}) {
            part.set(name, truth(false));
        }
        return part;
    }

    std::size_t drawing_and_beside(const SheetDrawing& drawing, const std::vector<SheetPart>& parts, std::size_t at) {
        auto blocks = view_list();
        const auto svg = drawing_of(drawing.drawing, next_id());
        std::size_t last = at;
        for (; last + 1 < parts.size(); ++last) {
            const auto* block = std::get_if<SheetBlock>(&parts[last + 1]);
            if (block == nullptr || !block->beside) {
                break;
            }
            blocks << block_view(*block, next_id());
        }
        auto part = empty_part();
        auto inner = view();
        inner.set("drawing", svg);
        inner.set("title", drawing.title.empty() ? truth(false) : View{drawing.title});
        inner.set("beside", blocks);
        part.set(last > at ? "top" : "wide", inner);
        list_ << part;
        return last;
    }
    void add(const SheetBlock& block) {
        auto part = empty_part();
        part.set("table", block_view(block, next_id()));
        list_ << part;
    }
    void add(const SheetDrawing&) {}  // it is added with what stands beside it
    void add(const SheetMinds& minds) {
        auto inner = view();
        inner.set("title", minds.title);
        set_list(inner, "said", minds.minds, mind_view);
        put("minds", inner);
    }
    void add(const SheetWorkings& workings) {
        auto inner = view();
        inner.set("title", workings.title);
        set_list(inner, "working", workings.workings, working_view);
        put("workings", inner);
    }
    void add(const SheetWords& words) {
        auto inner = view();
        inner.set("title", words.title.empty() ? truth(false) : View{words.title});
        set_list(inner, "lines", words.lines, [](const std::string& line) { return View{line}; });
        put("words", inner);
    }
    void put(const char* name, const View& inner) {
        auto part = empty_part();
        part.set(name, inner);
        list_ << part;
    }

    std::string sheet_id_;
    int count_ = 0;
    View list_ = view_list();
};

View stamp_view(const SheetStamp& stamp) {
    auto entry = view();
    entry.set("code", stamp.code);
    entry.set("which", which_revision(stamp));
    entry.set("address", stamp.address.empty() ? truth(false) : View{stamp.address});
    entry.set("href", sync::sheet_code_path(stamp.code));
    entry.set("picture", stamp.address.empty() ? std::string()
                                               : picture_code(stamp.address, "Where this sheet’s revision is told"));
    return entry;
}

View sheet_view(const Sheet& sheet, const std::optional<SheetStamp>& stamp, std::size_t number) {
    auto values = view();
    values.set("stamp", stamp ? stamp_view(*stamp) : truth(false));
    values.set("kind", std::string(word_of(sheet.kind)));
    values.set("kind_title", std::string(title_of(sheet.kind)));
    values.set("window", sheet.window);
    values.set("layer", sheet.layer);
    values.set("title", sheet.title);
    values.set("corner", sheet.corner);
    values.set("provisional", sheet.provisional.empty() ? truth(false) : View{sheet.provisional});
    set_list(values, "heading", sheet.heading, [](const std::string& line) { return View{line}; });
    set_list(values, "first", sheet.first, mind_view);
    values.set("parts", PartsView("s" + std::to_string(number)).of(sheet.parts));
    return values;
}

/// One link among several of which one is where the page is.
View choice_view(const std::string& href, const std::string& text, bool here) {
    auto entry = view();
    entry.set("href", href);
    entry.set("text", text);
    entry.set("here", truth(here));
    return entry;
}

/// The same page on other paper and in the other unit.
View choices_view(const SheetPageAsked& asked) {
    const bool inches = asked.style.unit == LengthUnit::in;
    const auto href = [&](Paper paper, bool in) {
        return asked.path + "?paper=" + std::string(word_of(paper)) + "&unit=" + (in ? "in" : "mm");
    };
    auto choices = view_list();
    choices << choice_view(href(Paper::a4, inches), "A4", asked.paper == Paper::a4);
    choices << choice_view(href(Paper::letter, inches), "US Letter", asked.paper == Paper::letter);
    choices << choice_view(href(asked.paper, false), "mm", !inches);
    choices << choice_view(href(asked.paper, true), "inches", inches);
    return choices;
}

const Window* window_of(const Survey& survey, const SheetsAsked& asked) {
    for (const auto& room : survey.rooms) {
        for (const auto& window : room.windows) {
            if (!asked.window.empty() && window.id == asked.window && (asked.room.empty() || room.id == asked.room)) {
                return &window;
            }
        }
    }
    return nullptr;
}

std::optional<std::size_t> find_layer(const Window& window, std::string_view layer) {
    if (layer.empty()) {
        return 0;
    }
    for (std::size_t i = 0; i < window.layers.size(); ++i) {
        if (window.layers[i].id == layer) {
            return i;
        }
    }
    return std::nullopt;
}

}  // namespace

std::optional<WindowPlace> find_window(const Survey& survey, std::string_view room_id, std::string_view id,
                                       std::string_view layer) {
    std::size_t index = 0;
    for (const auto& room : survey.rooms) {
        for (const auto& window : room.windows) {
            if (window.id == id && (room_id.empty() || room.id == room_id)) {
                const auto found = find_layer(window, layer);
                return found ? std::optional(WindowPlace{&room, &window, index, *found}) : std::nullopt;
            }
            ++index;
        }
    }
    return std::nullopt;
}

std::optional<WindowPlace> find_window(const Survey& survey, std::string_view id, std::string_view layer) {
    if (const auto place = find_window(survey, {}, id, layer)) {
        return place;
    }
    for (const auto& room : survey.rooms) {
        if (id.size() > room.id.size() && id.starts_with(room.id) && id[room.id.size()] == '/') {
            return find_window(survey, room.id, id.substr(room.id.size() + 1), layer);
        }
    }
    return std::nullopt;
}

std::string sheet_path(const Survey& survey, const Room& room, const Window& window, std::string_view layer) {
    using sync::percent_encode;
    const auto path = "/surveys/" + percent_encode(survey.id) + "/rooms/" + percent_encode(room.id) + "/windows/" +
                      percent_encode(window.id);
    return layer.empty() ? path : path + "/layers/" + percent_encode(layer);
}

std::string choices_path(const Survey& survey, const Room& room, const Window& window, std::string_view layer) {
    return sheet_path(survey, room, window, layer) + "/choices";
}

std::string house_sheets_path(const Survey& survey, SheetKind kind) {
    return "/surveys/" + sync::percent_encode(survey.id) + "/sheets/" + std::string(word_of(kind));
}

std::optional<std::string> sheets_page(const Survey& survey, const Figures& figures, const SheetPageAsked& asked,
                                       const PhotoIsHere& photo_is_here) {
    const auto sheets = sheets_of(survey, figures, asked.sheets, asked.style);
    if (sheets.empty()) {
        return std::nullopt;
    }
    auto values = view();
    auto list = view_list();
    for (std::size_t i = 0; i < sheets.size(); ++i) {
        list << sheet_view(sheets[i], asked.stamp, i + 1);
    }
    values.set("sheets", list);
    values.set("running", sheets.front().corner);
    values.set("choices_some", truth(!asked.standalone));
    values.set("choices", asked.standalone ? view_list() : choices_view(asked));
    const auto* window = window_of(survey, asked.sheets);
    const bool with_photos = window != nullptr && asked.sheets.kind == SheetKind::measure;
    std::size_t number = 0;
    set_list(values, "photos", with_photos ? window->photos : std::vector<Photo>{}, [&](const Photo& photo) {
        return photo_view(photo, window->shape.known().value_or(Shape::recess), ++number, photo_is_here(photo.sha256),
                          asked.standalone);
    });
    const std::string title = sheets.size() == 1 ? sheets.front().title : std::string(title_of(asked.sheets.kind));
    Frame frame{title, "page-sheet paper-" + std::string(word_of(asked.paper)), {}, asked.standalone};
    frame.back = {{"/", "Surveys"},
                  {"/surveys/" + sync::percent_encode(survey.id), survey.title.empty() ? "Survey" : survey.title}};
    return framed(frame, fill("sheet", values));
}

}  // namespace truehang::workroom
