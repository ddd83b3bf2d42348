// SPDX-License-Identifier: Apache-2.0
#include "hanging_edits.h"

#include "form_fields.h"
#include "writing.h"

#include <cmath>

namespace truehang {

namespace {

Hardware& hardware_of(Layer& layer) { return layer.hardware ? *layer.hardware : layer.hardware.emplace(); }
Treatment& treatment_of(Layer& layer) { return layer.treatment ? *layer.treatment : layer.treatment.emplace(); }

bool nothing(Layer&) { return false; }

bool is_mass(const QString& field) {
    return field == QStringLiteral("mass") || field == QStringLiteral("rated") ||
           field == QStringLiteral("bracketRated") || field == QStringLiteral("fixingRated");
}

std::optional<Mass> Hardware::*mass_member(const QString& field) {
    return field == QStringLiteral("rated")          ? &Hardware::rated
           : field == QStringLiteral("bracketRated") ? &Hardware::bracket_rated
           : field == QStringLiteral("fixingRated")  ? &Hardware::fixing_rated
                                                     : &Hardware::mass;
}

Result<LayerChange> hardware_number(const QString& field, const QString& text) {
    const bool brackets = field == QStringLiteral("brackets");
    const auto read = read_field_number(text, 0, brackets ? 100 : 500);
    if (!read) {
        return read.error();
    }
    const auto number = *read;
    if (brackets && number && *number != std::floor(*number)) {
        return Error{ErrorCode::unreadable, {}, bytes(QObject::tr("Brackets are counted: a whole number, as 3."))};
    }
    if (brackets) {
        return LayerChange([number](Layer& layer) {
            return replace(hardware_of(layer).brackets,
                           number ? std::optional(static_cast<int>(*number)) : std::nullopt);
        });
    }
    const auto member = mass_member(field);
    return LayerChange([member, number](Layer& layer) {
        return replace(hardware_of(layer).*member, number ? std::optional(Mass::kg(*number)) : std::nullopt);
    });
}

/// A length of a tie-back that was asked for already.
LayerChange tie_back_length(std::optional<Length> TieBackAsked::*member, std::optional<Length> length) {
    return [member, length](Layer& layer) {
        auto& tie_back = treatment_of(layer).tie_back;
        return tie_back && replace((*tie_back).*member, length);
    };
}

bool choose_pelmet(Treatment& held, const QString& word) {
    const bool wanted = word == QStringLiteral("yes");
    const bool differs = wanted != held.pelmet.has_value();
    if (differs) {
        held.pelmet = wanted ? std::optional(PelmetAsked()) : std::nullopt;
    }
    return differs;
}

/// None, or a kind of tie-back; what was asked of its height stays when the kind changes.
bool choose_tie_back(Treatment& held, const QString& word) {
    if (word.isEmpty()) {
        const bool differs = held.tie_back.has_value();
        held.tie_back.reset();
        return differs;
    }
    if (!Word<TieBackKind>::find(bytes(word))) {
        return false;
    }
    const bool added = !held.tie_back;
    TieBackAsked& asked = added ? held.tie_back.emplace() : *held.tie_back;
    return choose_word(asked.kind, word) || added;
}

}  // namespace

Result<LayerChange> hardware_field(const Survey& survey, const QString& field, const QString& text) {
    if (field == QStringLiteral("brackets") || is_mass(field)) {
        return hardware_number(field, text);
    }
    if (field == QStringLiteral("name")) {
        return LayerChange(
            [name = bytes(text.trimmed())](Layer& layer) { return replace(hardware_of(layer).name, name); });
    }
    const auto read = read_field_length(survey, text, field == QStringLiteral("left"));
    if (!read) {
        return read.error();
    }
    const auto length = *read;
    const auto sets = [length](std::optional<Length> Hardware::*member) {
        return LayerChange([member, length](Layer& layer) { return replace(hardware_of(layer).*member, length); });
    };
    const auto sets_plain = [length](Length Hardware::*member) {
        return LayerChange(
            [member, length](Layer& layer) { return replace(hardware_of(layer).*member, length.value_or(Length())); });
    };
    if (field == QStringLiteral("diameter")) {
        return sets(&Hardware::diameter);
    }
    if (field == QStringLiteral("length")) {
        return sets(&Hardware::length);
    }
    if (field == QStringLiteral("left")) {
        return sets(&Hardware::left);
    }
    if (field == QStringLiteral("projection")) {
        return sets(&Hardware::projection);
    }
    if (field == QStringLiteral("finial")) {
        return sets(&Hardware::finial);
    }
    if (field == QStringLiteral("return")) {
        return sets_plain(&Hardware::return_depth);
    }
    return field == QStringLiteral("overlap") ? sets_plain(&Hardware::overlap) : LayerChange(nothing);
}

Result<std::optional<double>> read_fullness(const QString& typed) { return read_field_number(typed, 1, 5); }

Result<LayerChange> treatment_field(const Survey& survey, const QString& field, const QString& text) {
    if (field == QStringLiteral("fullness")) {
        const auto read = read_fullness(text);
        if (!read) {
            return read.error();
        }
        return LayerChange([number = *read](Layer& layer) { return replace(treatment_of(layer).fullness, number); });
    }
    const auto read = read_field_length(survey, text);
    if (!read) {
        return read.error();
    }
    const auto length = *read;
    if (field == QStringLiteral("bottom")) {
        return LayerChange([length](Layer& layer) { return replace(treatment_of(layer).bottom, length); });
    }
    if (field == QStringLiteral("tabCut")) {
        return LayerChange([length](Layer& layer) { return replace(treatment_of(layer).tab_cut, length); });
    }
    if (field == QStringLiteral("tieBackHeight")) {
        return tie_back_length(&TieBackAsked::height, length);
    }
    if (field == QStringLiteral("tieBackLength")) {
        return tie_back_length(&TieBackAsked::length, length);
    }
    if (field == QStringLiteral("pelmetDepth")) {
        return LayerChange([length](Layer& layer) {
            auto& pelmet = treatment_of(layer).pelmet;
            return pelmet && replace(pelmet->depth, length);
        });
    }
    if (field == QStringLiteral("pelmetReturn")) {
        return LayerChange([length](Layer& layer) {
            auto& pelmet = treatment_of(layer).pelmet;
            return pelmet && replace(pelmet->return_depth, length.value_or(Length()));
        });
    }
    return LayerChange(nothing);
}

LayerChange hardware_choice(const QString& field, const QString& word) {
    return [field, word](Layer& layer) {
        Hardware& hardware = hardware_of(layer);
        return field == QStringLiteral("kind")     ? choose_word(hardware.kind, word)
               : field == QStringLiteral("supply") ? choose_word(hardware.supply, word)
               : field == QStringLiteral("hang")   ? choose_word(hardware.hang, word)
               : field == QStringLiteral("run")    ? choose_word(hardware.run, word)
               : field == QStringLiteral("stage")  ? choose_word(hardware.stage, word)
                                                   : false;
    };
}

LayerChange treatment_choice(const QString& field, const QString& word) {
    return [field, word](Layer& layer) {
        Treatment& held = treatment_of(layer);
        const auto cloth = word.isEmpty() ? std::nullopt : std::optional(bytes(word));
        return field == QStringLiteral("pelmet")         ? choose_pelmet(held, word)
               : field == QStringLiteral("tieBack")      ? choose_tie_back(held, word)
               : field == QStringLiteral("secondLining") ? replace(held.second_lining, cloth)
               : field == QStringLiteral("liningHung")   ? choose_word(held.lining_hung, word)
               : field == QStringLiteral("operation")    ? choose_word(held.operation, word)
               : field == QStringLiteral("weights")      ? choose_word(held.weights, word)
               : field == QStringLiteral("heading")      ? choose_word(held.heading, word)
               : field == QStringLiteral("fit")          ? choose_word(held.fit, word)
               : field == QStringLiteral("layout")       ? choose_word(held.layout, word)
               : field == QStringLiteral("length")       ? choose_word(held.length, word)
               : field == QStringLiteral("top")          ? choose_word(held.top, word)
               : field == QStringLiteral("drops")        ? choose_word(held.drops, word)
               : field == QStringLiteral("fabric")       ? replace(held.fabric, cloth)
               : field == QStringLiteral("lining")       ? replace(held.lining, cloth)
               : field == QStringLiteral("interlining")  ? replace(held.interlining, cloth)
                                                         : false;
    };
}

}  // namespace truehang
