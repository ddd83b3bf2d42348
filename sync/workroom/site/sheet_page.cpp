// SPDX-License-Identifier: Apache-2.0
#include "workroom/site/sheet_page.h"

#include "protocol/paths.h"
#include "sheet/elevation.h"
#include "sheet/measure_sheet.h"
#include "sheet/svg.h"
#include "workroom/site/frame.h"

#include <algorithm>

namespace truehang::workroom {

namespace {

constexpr double drawing_width_mm = 97.0;
constexpr double drawing_height_mm = 84.0;
constexpr double px_in_mm = 25.4 / 96.0;

/// Blocks that stand beside the drawing; the others take the sheet's whole width.
bool stands_beside(const SheetBlock& block) { return block.key == "finished" || block.key == "hang"; }

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
        entry.set("text", block.columns[i]);
        entry.set("number", truth(std::any_of(block.rows.begin(), block.rows.end(), is_number)));
        columns << entry;
    }
    return columns;
}

View block_view(const SheetBlock& block) {
    auto entry = view();
    entry.set("key", block.key);
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

View photo_view(const Photo& photo, const PhotoIsHere& photo_is_here, bool standalone) {
    auto entry = view();
    const bool here = photo_is_here(photo.sha256);
    entry.set("caption", photo.caption.empty() ? "No caption" : photo.caption);
    entry.set("src", here && !standalone ? View{sync::photo_path(photo.sha256)} : truth(false));
    entry.set("absent", here || standalone ? truth(false) : View{"not here yet"});
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
std::string drawing_of(const Survey& survey, const WindowPlace& place, const WindowFigures& figures) {
    auto options = elevation_options_for(survey);
    options.width = drawing_width_mm;
    options.height = drawing_height_mm;
    options.pixel = px_in_mm;
    options.dimensions = false;  // what was measured stands in the figures beside it
    options.drawn = Drawn::back;
    SvgOptions svg;
    svg.palette = {"var(--paper)", "var(--ink)", "var(--soft)", "var(--thread)", "var(--wash)"};
    svg.unit = "mm";
    return svg_of(elevation_of(survey, *place.room, *place.window, figures, options), svg);
}

void set_words(View& values, const MeasureSheet& sheet) {
    values.set("window", sheet.window);
    values.set("layer", sheet.layer);
    values.set("title", sheet.title);
    values.set("corner", sheet.corner);
    values.set("description", sheet.description.empty() ? truth(false) : View{sheet.description});
    values.set("notes", sheet.notes.empty() ? truth(false) : View{sheet.notes});
    values.set("provisional", truth(sheet.provisional));
    values.set("provisional_text", sheet.provisional_text);
    set_list(values, "heading", sheet.heading, [](const std::string& line) { return View{line}; });
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

std::string sheet_page(const Survey& survey, const Figures& figures, const WindowPlace& place,
                       const PhotoIsHere& photo_is_here, bool standalone) {
    const auto sheet = measure_sheet(survey, figures, place.index, place.layer);
    auto values = view();
    set_words(values, sheet);
    std::vector<SheetBlock> beside;
    std::vector<SheetBlock> below;
    std::vector<SheetBlock> order;  // after what must be minded: a whole house's cloths fill half a page
    for (const auto& block : sheet.blocks) {
        (stands_beside(block) ? beside : block.key == "order" ? order : below).push_back(block);
    }
    set_list(values, "beside", beside, block_view);
    set_list(values, "below", below, block_view);
    set_list(values, "order", order, block_view);
    set_list(values, "mind", sheet.mind, mind_view);
    set_list(values, "workings", sheet.workings, working_view);
    set_list(values, "photos", place.window->photos,
             [&](const Photo& photo) { return photo_view(photo, photo_is_here, standalone); });
    values.set("drawing", drawing_of(survey, place, figures.windows.at(place.index)));
    Frame frame{sheet.title, "page-sheet", {}, standalone};
    frame.back = {{"/", "Surveys"},
                  {"/surveys/" + sync::percent_encode(survey.id), survey.title.empty() ? "Survey" : survey.title}};
    return framed(frame, fill("sheet", values));
}

}  // namespace truehang::workroom
