// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <QString>
#include <QStringList>

// The languages that the program speaks: what screens say comes from Qt's own catalogues (app/words), what the core
// says from its tables (survey-core/words).

namespace truehang {

/// "en" and "de": what can be chosen beside the system's own.
[[nodiscard]] QStringList language_words();

/// Speaks a language from now on: one of `language_words`, or by the system's locale for anything else, English where
/// its language isn't spoken. Numbers follow. What is already on the screen stays as it was said.
void speak(const QString& language);

/// What a choice is called, in its own words: "English", "Deutsch".
[[nodiscard]] QString own_name(const QString& language);

}  // namespace truehang
