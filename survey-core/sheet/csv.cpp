// SPDX-License-Identifier: Apache-2.0
#include "sheet/csv.h"

#include "sheet/roll_cuts.h"
#include "sheet/sheet_head.h"
#include "units/rounding.h"

#include <fmt/format.h>

#include <algorithm>
#include <initializer_list>

namespace truehang {

namespace {

/// What a spreadsheet begins a formula with; it may skip blanks before it.
bool reads_as_formula(std::string_view text) {
    const auto at = text.find_first_not_of(" \t\r\n");
    const bool blank_first = !text.empty() && (text[0] == '\t' || text[0] == '\r');
    return blank_first || (at != std::string_view::npos && std::string_view("=+-@").find(text[at]) != text.npos);
}

void add_line(std::string& csv, std::initializer_list<std::string> fields) {
    bool first = true;
    for (const std::string& field : fields) {
        csv += (first ? "" : ",") + csv_field(field);
        first = false;
    }
    csv += "\r\n";
}

std::string whole_mm(Length length) { return fmt::format("{:.0f}", ceil_whole(length.mm())); }

const Fabric* fabric_of(const Survey& survey, const std::string& id) {
    const auto found = std::ranges::find(survey.fabrics, id, &Fabric::id);
    return found == survey.fabrics.end() ? nullptr : &*found;
}

const char* yes_or_no(bool is_so) { return is_so ? "yes" : "no"; }

bool is_one_way(const Fabric* fabric) { return fabric != nullptr && fabric->one_way.value_or(false); }

std::string orders_csv(const Survey& survey, const Figures& figures) {
    std::string csv;
    add_line(csv, {"cloth_id", "cloth", "role", "width_mm", "pieces_mm", "order_m", "provisional", "one_way"});
    for (const Order& order : figures.orders) {
        const Fabric* fabric = fabric_of(survey, order.fabric);
        add_line(csv, {order.fabric, fabric == nullptr ? "" : fabric->name,
                       fabric == nullptr || !fabric->role ? "" : fabric->role->text(),
                       fabric == nullptr ? "" : fmt::format("{:g}", fabric->width.mm()), whole_mm(order.length),
                       fmt::format("{:g}", round_to(order.order_m, 0.001)), yes_or_no(order.provisional),
                       yes_or_no(is_one_way(fabric))});
    }
    return csv;
}

std::string curtain_word(const RollCut& cut) {
    if (cut.curtains.empty()) {
        return {};
    }
    return cut.curtains.size() == 2 ? "both" : std::to_string(cut.curtains.front() + 1);
}

std::string pieces_csv(const Survey& survey, const Figures& figures) {
    std::string csv;
    add_line(csv, {"cloth_id", "cloth", "no", "from_mm", "to_mm", "cut_mm", "what", "number", "of", "room", "window",
                   "window_id", "layer", "curtain", "provisional", "one_way"});
    for (const RollCuts& roll : cuts_as_ordered(survey, figures)) {
        const Fabric* fabric = fabric_of(survey, roll.fabric);
        const std::string name = fabric == nullptr ? "" : fabric->name;
        for (std::size_t i = 0; i < roll.cuts.size(); ++i) {
            const RollCut& cut = roll.cuts[i];
            const auto window = std::ranges::find(figures.windows, cut.window, &WindowFigures::id);
            SheetPlace place;
            bool provisional = false;
            if (window != figures.windows.end()) {
                place = sheet_place(survey, static_cast<std::size_t>(window - figures.windows.begin()));
                provisional = !provisional_text(minds_of(*window, cut.layer)).empty();
            }
            add_line(csv,
                     {roll.fabric, name, std::to_string(i + 1), whole_mm(cut.start), whole_mm(cut.end),
                      whole_mm(cut.end - cut.start), cut.what, std::to_string(cut.number), std::to_string(cut.of),
                      place.room == nullptr ? "" : place.room->name, place.window == nullptr ? "" : place.window->name,
                      cut.window, cut.layer, curtain_word(cut), yes_or_no(provisional), yes_or_no(is_one_way(fabric))});
        }
    }
    return csv;
}

}  // namespace

std::optional<CsvOf> csv_of_word(std::string_view word) {
    return word == "orders"   ? std::optional(CsvOf::orders)
           : word == "pieces" ? std::optional(CsvOf::pieces)
                              : std::nullopt;
}

std::string csv_field(std::string_view text) {
    std::string field = reads_as_formula(text) ? "'" + std::string(text) : std::string(text);
    if (field.find_first_of(",\"\r\n") == std::string::npos) {
        return field;
    }
    std::string quoted = "\"";
    for (const char c : field) {
        quoted += c == '"' ? std::string("\"\"") : std::string(1, c);
    }
    return quoted + "\"";
}

std::string csv_of(const Survey& survey, const Figures& figures, CsvOf what) {
    return what == CsvOf::orders ? orders_csv(survey, figures) : pieces_csv(survey, figures);
}

}  // namespace truehang
