// SPDX-License-Identifier: Apache-2.0
#include "workroom/site/rolls_form.h"

#include "units/length_text.h"
#include "units/utf8.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>

namespace truehang::workroom {

namespace {

constexpr std::size_t longest_name = 60;
constexpr std::size_t longest_list = 2000;
constexpr std::array row_names{"name", "lot", "length", "line", "flaws", "joins"};

std::string trimmed(std::string_view text) {
    constexpr std::string_view blank = " \t\r\n";
    const auto first = text.find_first_not_of(blank);
    return first == std::string_view::npos ? std::string()
                                           : std::string(text.substr(first, text.find_last_not_of(blank) - first + 1));
}

std::string field_of(const FormFields& fields, const std::string& name) {
    const auto found = fields.find(name);
    return found == fields.end() ? std::string() : trimmed(found->second);
}

/// Whether a text is UTF-8 on one line.
bool is_plain(const std::string& text) {
    return is_utf8(text) &&
           std::ranges::none_of(text, [](char c) { return static_cast<unsigned char>(c) < 0x20 || c == 0x7f; });
}

std::optional<std::size_t> rows_of(const FormFields& fields) {
    const std::string text = field_of(fields, "rows");
    std::size_t rows = 0;
    const auto [end, fault] = std::from_chars(text.data(), text.data() + text.size(), rows);
    const bool whole = !text.empty() && fault == std::errc{} && end == text.data() + text.size();
    return whole && rows <= most_rows ? std::optional(rows) : std::nullopt;
}

/// The parts of a list with ";" between, none of them blank.
std::vector<std::string> parts_of(const std::string& list) {
    std::vector<std::string> parts;
    std::string_view rest = list;
    while (!rest.empty()) {
        const auto end = std::min(rest.find(';'), rest.size());
        auto part = trimmed(rest.substr(0, end));
        rest.remove_prefix(std::min(end + 1, rest.size()));
        if (!part.empty()) {
            parts.push_back(std::move(part));
        }
    }
    return parts;
}

/// Splits at the first of the signs that stands in the text.
std::optional<std::pair<std::string, std::string>> split_at(const std::string& text,
                                                            std::initializer_list<std::string_view> signs) {
    for (const std::string_view sign : signs) {
        const auto at = text.find(sign);
        if (at != std::string::npos) {
            return std::pair{trimmed(std::string_view(text).substr(0, at)),
                             trimmed(std::string_view(text).substr(at + sign.size()))};
        }
    }
    return std::nullopt;
}

/// Reads the rows of one form.
class RowReader {
public:
    RowReader(const FormFields& fields, LengthUnit unit, std::map<std::string, std::string>& faults)
        : fields_(fields), unit_(unit), faults_(faults) {}

    /// The roll of a row; nothing where the row is blank.
    std::optional<Roll> read(std::size_t row) {
        row_ = row;
        const bool blank = std::ranges::all_of(
            row_names, [&](const char* name) { return field_of(fields_, row_field(name, row)).empty(); });
        if (blank) {
            return std::nullopt;
        }
        Roll roll;
        roll.id = line("name", "name");
        roll.lot = line("lot", "lot");
        if (roll.id.empty()) {
            fault("name", "Give the roll its own name or number, as in A or 1.");
        }
        if (text("length").empty()) {
            fault("length", "Write how long the roll measures, from its start to its end.");
        } else {
            roll.length = length("length", text("length")).value_or(Length());
        }
        roll.phase = text("line").empty() ? Length() : length("line", text("line")).value_or(Length());
        read_flaws(roll);
        read_joins(roll);
        return roll;
    }

private:
    [[nodiscard]] std::string text(const char* name) const { return field_of(fields_, row_field(name, row_)); }

    void fault(const char* name, std::string says) { faults_.emplace(row_field(name, row_), std::move(says)); }

    std::string line(const char* name, const char* called) {
        auto typed = text(name);
        if (typed.size() > longest_name || !is_plain(typed)) {
            fault(name, fmt::format("A {} is one line of at most {} letters. Shorten it.", called, longest_name));
        }
        return typed;
    }

    std::optional<Length> length(const char* name, const std::string& typed) {
        const auto read = read_length(typed, unit_);
        if (!read) {
            fault(name, is_plain(typed) ? fmt::format("“{}”: {}", typed, read.error().text) : read.error().text);
            return std::nullopt;
        }
        return read->length;
    }

    std::vector<std::string> list(const char* name) {
        const auto typed = text(name);
        if (typed.size() > longest_list) {
            fault(name, fmt::format("That is more than {} letters. Write the nearest ones as one longer place.",
                                    longest_list));
            return {};
        }
        return parts_of(typed);
    }

    void read_flaws(Roll& roll) {
        for (const std::string& part : list("flaws")) {
            const auto split = split_at(part, {"–", "—", " to ", "-"});
            const auto from = length("flaws", split ? split->first : part);
            const auto to = split ? length("flaws", split->second) : from;
            if (from && to) {
                roll.flaws.push_back({*from, *to});
            }
        }
    }

    void read_joins(Roll& roll) {
        for (const std::string& part : list("joins")) {
            const auto split = split_at(part, {" line "});
            const auto at = length("joins", split ? split->first : part);
            RollJoin join{at.value_or(Length()), {}};
            if (split) {
                join.phase = length("joins", split->second);
            }
            if (at) {
                roll.joins.push_back(join);
            }
        }
    }

    const FormFields& fields_;
    LengthUnit unit_;
    std::map<std::string, std::string>& faults_;
    std::size_t row_ = 0;
};

/// What the document's reader finds, on the fields that it comes from. `rows`: the row of each roll of the fabric.
void take_faults(const Faults& found, std::size_t fabric, const std::vector<std::size_t>& rows,
                 std::map<std::string, std::string>& faults) {
    static constexpr std::array<std::pair<std::string_view, const char*>, 6> keys{{{"id", "name"},
                                                                                   {"lot", "lot"},
                                                                                   {"length_mm", "length"},
                                                                                   {"phase_mm", "line"},
                                                                                   {"flaws", "flaws"},
                                                                                   {"joins", "joins"}}};
    for (const Fault& fault : found) {
        const std::string start = fmt::format("/fabrics/{}/rolls/", fabric);
        std::size_t index = rows.size();
        std::string_view rest = fault.pointer;
        if (rest.starts_with(start)) {
            rest.remove_prefix(start.size());
            const auto slash = std::min(rest.find('/'), rest.size());
            std::from_chars(rest.data(), rest.data() + slash, index);
            rest.remove_prefix(std::min(slash + 1, rest.size()));
        }
        const auto* const key =
            std::ranges::find(keys, rest.substr(0, rest.find('/')), [](const auto& each) { return each.first; });
        faults.emplace(index < rows.size() && key != keys.end() ? row_field(key->second, rows[index]) : "", fault.text);
    }
}

/// A length in the unit, or in mm where the unit would round it, so that it reads back to the same.
std::string field_text(Length length, LengthUnit unit) {
    auto text = write_length(length, {.unit = unit, .inch_denominator = 16});
    const auto back = read_length(text, unit);
    if (back && std::abs((back->length - length).mm()) < 1e-9) {
        return text;
    }
    text = fmt::format("{:.6f}", length.mm());
    text.erase(text.find_last_not_of('0') + 1);
    // Exactly three decimals could be read as thousands.
    return text + (text.size() - text.find('.') == 4 ? "0 mm" : " mm");
}

}  // namespace

LengthUnit entry_unit_of(const Survey& survey) {
    return survey.entry_unit ? length_unit(*survey.entry_unit).value_or(LengthUnit::mm) : LengthUnit::mm;
}

std::string row_field(const char* name, std::size_t row) { return fmt::format("{}.{}", name, row); }

bool is_rolls_form(const FormFields& fields, const Survey& survey) {
    const auto fabric = fields.find("fabric");
    return fabric != fields.end() && rows_of(fields) &&
           std::ranges::any_of(survey.fabrics, [&](const Fabric& each) { return each.id == fabric->second; });
}

TypedRolls typed_rolls(const RollsThatCame& before, const Survey& survey, const FormFields& fields) {
    TypedRolls typed{before, {}};
    auto& fabrics = typed.came.fabrics;
    typed.came.survey = survey.id;
    RollsOfFabric of{fields.at("fabric"), {}};
    std::vector<std::size_t> rows;
    RowReader reader(fields, entry_unit_of(survey), typed.faults);
    for (std::size_t row = 0; row < rows_of(fields).value_or(0); ++row) {
        auto roll = reader.read(row);
        if (!roll) {
            continue;
        }
        if (!roll->id.empty() && std::ranges::count(of.rolls, roll->id, &Roll::id) > 0) {
            typed.faults.emplace(row_field("name", row),
                                 "Another roll of this cloth has that name already. Give this one another.");
        }
        of.rolls.push_back(std::move(*roll));
        rows.push_back(row);
    }
    auto place = std::ranges::find(fabrics, of.fabric, &RollsOfFabric::fabric);
    if (place == fabrics.end()) {
        place = fabrics.insert(fabrics.end(), of);
    } else {
        *place = of;
    }
    const auto index = static_cast<std::size_t>(place - fabrics.begin());
    if (const auto read = read_rolls(write_rolls(typed.came), survey); !read) {
        take_faults(read.error(), index, rows, typed.faults);
    }
    if (of.rolls.empty()) {
        fabrics.erase(place);
    }
    return typed;
}

FormFields form_of(const RollsThatCame& came, const Survey& survey, const std::string& fabric) {
    FormFields fields;
    const auto of = std::ranges::find(came.fabrics, fabric, &RollsOfFabric::fabric);
    const auto unit = entry_unit_of(survey);
    std::size_t row = 0;
    for (const Roll& roll : of == came.fabrics.end() ? std::vector<Roll>{} : of->rolls) {
        std::string flaws;
        for (const RollFlaw& flaw : roll.flaws) {
            flaws += (flaws.empty() ? "" : "; ") + field_text(flaw.from, unit);
            flaws += flaw.from == flaw.to ? "" : "–" + field_text(flaw.to, unit);
        }
        std::string joins;
        for (const RollJoin& join : roll.joins) {
            joins += (joins.empty() ? "" : "; ") + field_text(join.at, unit);
            joins += join.phase ? " line " + field_text(*join.phase, unit) : "";
        }
        fields[row_field("name", row)] = roll.id;
        fields[row_field("lot", row)] = roll.lot;
        fields[row_field("length", row)] = field_text(roll.length, unit);
        fields[row_field("line", row)] = roll.phase > Length() ? field_text(roll.phase, unit) : "";
        fields[row_field("flaws", row)] = flaws;
        fields[row_field("joins", row)] = joins;
        ++row;
    }
    fields["rows"] = std::to_string(row);
    return fields;
}

}  // namespace truehang::workroom
