// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <QObject>
#include <QString>

namespace truehang {

class SurveyKeeping;

/// Takes the survey documents of a folder into the store, with the photos beside them (`photos/SHA256.jpg`), where the
/// store has no visit yet. Done before anything that is posted later. What can't be taken in is told on standard error.
void import_demo(SurveyKeeping& keeping, const QString& folder);

}  // namespace truehang
