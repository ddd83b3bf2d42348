// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "store/store.h"
#include "survey/survey.h"

#include <QList>
#include <QString>
#include <optional>
#include <string>

// What two people took or changed differently on one visit, as it is shown to whoever settles it.

namespace truehang {

/// One way to settle it.
struct TwiceChoice {
    QString says;         ///< "1242 mm", "Damp.", "Take it out"
    QString who;          ///< from whom and when, as far as it is known; may be empty
    bool stands = false;  ///< it holds meanwhile
    std::string reading;  ///< of a station: the reading's id
};

/// One thing that is to be settled.
struct TwiceThing {
    QString key;
    QString window;   ///< id; empty: in none
    QString station;  ///< of readings; empty: something else
    QString says;     ///< "Two people changed the notes in different ways. …"
    QList<TwiceChoice> choices;
    std::string at;  ///< of an entry of `changed_twice`
};

/// What somebody else sent last of a visit, read.
struct MetSurvey {
    Survey survey;
    QString sent_by;  ///< the device's name; may be empty
    QString when;     ///< "14 March 2026, 10:32"
};
[[nodiscard]] std::optional<MetSurvey> read_met(const std::optional<MetRevision>& met);

/// All that is to be settled, window by window, then the visit itself: stations of which two readings stand, and
/// entries of `changed_twice`.
[[nodiscard]] QList<TwiceThing> taken_twice(const Survey& survey, const std::optional<MetSurvey>& met);

/// How many there are, and how many of them lie in a window.
[[nodiscard]] int count_taken_twice(const Survey& survey);
[[nodiscard]] int count_taken_twice(const Survey& survey, const Window& window);

}  // namespace truehang
