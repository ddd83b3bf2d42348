// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "document/lists_document.h"
#include "survey/survey.h"

#include <QString>
#include <QVariantList>
#include <functional>
#include <string>

// Taking cloths and hardware out of the surveyor's own lists into a visit, and putting them there. What is taken is a
// copy: a list changed later changes no visit.

namespace truehang {

/// How many of a list stand among a field's choices; longer lists are searched on their own page.
inline constexpr int most_own_choices = 12;

/// The list's cloths that suit a cloth field (`fabric`, `lining`, `interlining`, `secondLining`) and aren't in the
/// visit yet, by name, as choices whose word names the list.
[[nodiscard]] QVariantList own_cloth_choices(const OwnLists& lists, const Survey& survey, const QString& field);

/// The id of the list's cloth that such a word names; empty for any other word.
[[nodiscard]] std::string own_cloth_of(const QString& word);

/// The visit's id of this cloth of the lists: of the same cloth where the visit has it already, else of a copy that is
/// put there under `new_id`.
std::string take_cloth(Survey& survey, const Fabric& own, const std::string& new_id);

/// The list's hardware by name, as choices whose word is the name.
[[nodiscard]] QVariantList own_hardware_choices(const OwnLists& lists);
[[nodiscard]] const Hardware* find_hardware(const OwnLists& lists, const std::string& name);

/// What hardware is called where nobody has named it: "Pole, 28 across, 1800 long".
[[nodiscard]] QString hardware_name(const Survey& survey, const Hardware& hardware);

/// The same hardware for another place: not where it hung, nor that it is up.
[[nodiscard]] Hardware for_another_place(Hardware hardware);

/// What hangs at one window, for another: under new ids, not yet up, nothing decided between two answers.
[[nodiscard]] std::vector<Layer> for_another_window(const std::vector<Layer>& layers,
                                                    const std::function<std::string()>& new_id);

}  // namespace truehang
