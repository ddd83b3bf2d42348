// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "survey/survey.h"
#include "units/result.h"

#include <QString>
#include <functional>
#include <optional>

// What a field of the forms for hardware and treatment changes in a layer.

namespace truehang {

using LayerChange = std::function<bool(Layer&)>;

/// Reads what was typed in a field; the error is the line under it. An unknown field changes nothing.
[[nodiscard]] Result<LayerChange> hardware_field(const Survey& survey, const QString& field, const QString& text);
[[nodiscard]] Result<LayerChange> treatment_field(const Survey& survey, const QString& field, const QString& text);

/// The fullness that was typed; nothing where the field is empty.
[[nodiscard]] Result<std::optional<double>> read_fullness(const QString& typed);

/// Takes a chosen word.
[[nodiscard]] LayerChange hardware_choice(const QString& field, const QString& word);
[[nodiscard]] LayerChange treatment_choice(const QString& field, const QString& word);

}  // namespace truehang
