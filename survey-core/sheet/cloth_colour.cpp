// SPDX-License-Identifier: Apache-2.0
#include "sheet/cloth_colour.h"

#include "units/saying.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

namespace truehang {

namespace {

std::optional<int> digit(char c) {
    if (c >= '0' && c <= '9') {
        return c - '0';
    }
    if (c >= 'a' && c <= 'f') {
        return c - 'a' + 10;
    }
    if (c >= 'A' && c <= 'F') {
        return c - 'A' + 10;
    }
    return std::nullopt;
}

/// Relative luminance, WCAG 2.1.
double luminance(Colour colour) {
    const auto linear = [](int value) {
        const double share = value / 255.0;
        return share <= 0.03928 ? share / 12.92 : std::pow((share + 0.055) / 1.055, 2.4);
    };
    return 0.2126 * linear(colour.red) + 0.7152 * linear(colour.green) + 0.0722 * linear(colour.blue);
}

}  // namespace

std::optional<Colour> read_colour(std::string_view text) {
    if (text.starts_with('#')) {
        text.remove_prefix(1);
    }
    if (text.size() != 6) {
        return std::nullopt;
    }
    std::array<int, 3> parts{};
    for (std::size_t i = 0; i < 3; ++i) {
        const auto high = digit(text[2 * i]);
        const auto low = digit(text[2 * i + 1]);
        if (!high || !low) {
            return std::nullopt;
        }
        parts[i] = *high * 16 + *low;
    }
    return Colour{parts[0], parts[1], parts[2]};
}

std::string write_colour(Colour colour) {
    return fmt::format("#{:02x}{:02x}{:02x}", colour.red, colour.green, colour.blue);
}

double contrast(Colour one, Colour other) {
    const auto [dark, light] = std::minmax({luminance(one), luminance(other)});
    return (light + 0.05) / (dark + 0.05);
}

Colour blended(Colour from, Colour to, double share) {
    const auto part = [&](int a, int b) { return static_cast<int>(std::lround(a + (b - a) * share)); };
    return {part(from.red, to.red), part(from.green, to.green), part(from.blue, to.blue)};
}

Colour shaded(Colour cloth) {
    constexpr double dark = 0.08;
    return luminance(cloth) > dark ? blended(cloth, {0, 0, 0}, 0.14) : blended(cloth, {255, 255, 255}, 0.13);
}

std::string line_over(std::string_view cloth, Role role, std::string_view ink, std::string_view paper) {
    const auto under = read_colour(cloth);
    const auto dark = read_colour(ink);
    const auto light = read_colour(paper);
    if (!under || !dark || !light) {
        return std::string(ink);
    }
    const Colour line = contrast(*under, *dark) >= contrast(*under, *light) ? *dark : *light;
    return write_colour(role == Role::ink ? line : blended(line, *under, 0.5));
}

const std::vector<Dye>& dyes() {
    static const std::vector<Dye> list{
        {"chalk", to_say("Chalk white"), "#f2efe6"},   {"oat", to_say("Oat straw"), "#d8c7a3"},
        {"weld", to_say("Weld yellow"), "#c9a227"},    {"rust", to_say("Iron rust"), "#a5532a"},
        {"madder", to_say("Madder red"), "#8f2f2f"},   {"heather", to_say("Heather"), "#84687f"},
        {"woad", to_say("Woad blue"), "#3d5a80"},      {"tide", to_say("Tide green"), "#4d7a6c"},
        {"lichen", to_say("Lichen grey"), "#9aa38f"},  {"slate", to_say("Slate"), "#53606b"},
        {"walnut", to_say("Walnut brown"), "#5b4434"}, {"soot", to_say("Soot black"), "#24262b"},
    };
    return list;
}

}  // namespace truehang
