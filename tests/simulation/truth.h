// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "survey/survey.h"

#include <map>
#include <set>
#include <string>
#include <vector>

// What people entered, by what they saw when they entered it: what must be there in the end, and what must not.

namespace truehang::sync::simulation {

class Truth {
public:
    void reading(const std::string& window, const std::string& id) {
        entered_[id] = window;
        readings_.insert(id);
        all_of_[window].insert(id);
    }
    void photo(const std::string& window, const std::string& sha256) { entered_[sha256] = window; }
    void window(const std::string& id) { windows_.insert(id); }
    void reading_taken_out(const std::string& id) { taken_out_.insert(id); }
    /// Somebody was asked, and kept it.
    void reading_kept(const std::string& id) { taken_out_.erase(id); }
    /// A window’s note was written over all of it that its writer saw.
    void note(const std::string& window, const std::string& text, const std::set<std::string>& seen);
    /// Of all that a window’s note was changed to, one was chosen by somebody who saw them all. Whoever wrote over the
    /// chosen one meanwhile wrote over it all the same.
    void note_chosen(const std::string& window, const std::string& chosen, const std::set<std::string>& seen);
    /// A window was taken out by somebody who saw it like this. Where another changed it meanwhile it comes back as it
    /// was before, so that what was taken out of it or written over may be there again.
    void window_taken_out(const Survey& seen, const Window& window);

    /// What is missing in a survey, there twice, or there although nobody entered it so.
    [[nodiscard]] std::vector<std::string> faults_of(const Survey& survey) const;

private:
    void look_at_windows(const Survey& survey, std::vector<std::string>& faults) const;
    void look_at_readings(const Survey& survey, std::vector<std::string>& faults) const;
    void look_at_notes(const Survey& survey, std::vector<std::string>& faults) const;

    std::map<std::string, std::string> entered_;  ///< readings by id and photos by digest: the window of each
    std::set<std::string> windows_, readings_, taken_out_, either_;  ///< `either_`: may be there or not
    std::map<std::string, std::set<std::string>> notes_;             ///< that stand, by window
    std::map<std::string, std::set<std::string>> all_of_;            ///< readings and notes ever, by window
};

/// What a reading of that name says, each something of its own.
[[nodiscard]] Length value_of(const std::string& reading);

/// All that a window’s note was changed to and that nobody settled yet.
[[nodiscard]] std::set<std::string> notes_of(const Survey& survey, const std::string& window);
/// Of those, what goes when another is written there: what stands, unless it waits to be settled besides.
[[nodiscard]] std::set<std::string> note_written_over(const Survey& survey, const std::string& window);

}  // namespace truehang::sync::simulation
