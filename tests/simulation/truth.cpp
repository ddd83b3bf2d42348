// SPDX-License-Identifier: Apache-2.0
#include "truth.h"

#include <nlohmann/json.hpp>

#include <algorithm>

namespace truehang::sync::simulation {
namespace {

template <typename Visit>
void for_each_window(const Survey& survey, Visit visit) {
    for (const auto& room : survey.rooms) {
        for (const auto& window : room.windows) {
            visit(window);
        }
    }
}

std::set<std::string> standing(const Survey& survey, const std::string& window) {
    std::set<std::string> notes;
    for_each_window(survey, [&](const Window& at) {
        if (at.id == window && !at.notes.empty()) {
            notes.insert(at.notes);
        }
    });
    return notes;
}

std::set<std::string> unsettled(const Survey& survey, const std::string& window) {
    std::set<std::string> notes;
    for (const auto& entry : survey.changed_twice) {
        if (entry.at == "/windows/" + window + "/notes") {
            for (const auto& value : entry.values) {
                if (value) {
                    notes.insert(nlohmann::json::parse(*value).get<std::string>());
                }
            }
        }
    }
    return notes;
}

/// Whether it is to be settled yet if a reading is taken out.
bool is_asked(const Survey& survey, const std::string& reading) {
    return std::ranges::any_of(survey.changed_twice, [&](const ChangedTwice& entry) {
        return entry.removed && entry.at.ends_with("/readings/" + reading);
    });
}

}  // namespace

Length value_of(const std::string& reading) {
    return Length::mm(1000.0 + static_cast<double>(std::hash<std::string>{}(reading) % 1000));
}

std::set<std::string> notes_of(const Survey& survey, const std::string& window) {
    auto notes = unsettled(survey, window);
    notes.merge(standing(survey, window));
    return notes;
}

std::set<std::string> note_written_over(const Survey& survey, const std::string& window) {
    auto over = standing(survey, window);
    for (const auto& note : unsettled(survey, window)) {
        over.erase(note);
    }
    return over;
}

void Truth::note(const std::string& window, const std::string& text, const std::set<std::string>& seen) {
    auto& standing = notes_[window];
    for (const auto& note : seen) {
        standing.erase(note);
    }
    standing.insert(text);
    all_of_[window].insert(text);
}

void Truth::note_chosen(const std::string& window, const std::string& chosen, const std::set<std::string>& seen) {
    auto& standing = notes_[window];
    for (const auto& note : seen) {
        if (note != chosen) {
            standing.erase(note);
        }
    }
    if (!standing.contains(chosen)) {
        either_.insert(chosen);
    }
}

void Truth::window_taken_out(const Survey& seen, const Window& window) {
    either_.insert(window.id);
    for (const auto& reading : window.readings) {
        either_.insert(reading.id);
    }
    for (const auto& photo : window.photos) {
        either_.insert(photo.sha256);
    }
    either_.merge(notes_of(seen, window.id));
    for (const auto& gone : all_of_[window.id]) {
        if (taken_out_.contains(gone) || (!readings_.contains(gone) && !notes_[window.id].contains(gone))) {
            either_.insert(gone);
        }
    }
}

std::vector<std::string> Truth::faults_of(const Survey& survey) const {
    std::vector<std::string> faults;
    look_at_windows(survey, faults);
    look_at_readings(survey, faults);
    look_at_notes(survey, faults);
    return faults;
}

void Truth::look_at_windows(const Survey& survey, std::vector<std::string>& faults) const {
    std::multiset<std::string> there;
    for_each_window(survey, [&](const Window& window) { there.insert(window.id); });
    for (const auto& id : windows_) {
        if (there.count(id) != 1 && !(there.count(id) == 0 && either_.contains(id))) {
            faults.push_back("window " + id + (there.contains(id) ? " is there twice" : " is lost"));
        }
    }
}

void Truth::look_at_readings(const Survey& survey, std::vector<std::string>& faults) const {
    std::map<std::string, int> there;
    const auto look = [&](const std::string& id, const Window& window) {
        ++there[id];
        const auto entered = entered_.find(id);
        if (entered == entered_.end() || entered->second != window.id) {
            faults.push_back(id + " was never entered in " + window.id);
        }
    };
    for_each_window(survey, [&](const Window& window) {
        for (const auto& reading : window.readings) {
            look(reading.id, window);
            if (reading.value != value_of(reading.id)) {
                faults.push_back(reading.id + " has another value");
            }
        }
        for (const auto& photo : window.photos) {
            look(photo.sha256, window);
        }
    });
    for (const auto& [id, window] : entered_) {
        const auto times = there[id];
        if (times > 1) {
            faults.push_back(id + " is there twice");
        } else if (times == 0 && !taken_out_.contains(id) && !either_.contains(id)) {
            faults.push_back(id + " is lost");
        } else if (times == 1 && taken_out_.contains(id) && !either_.contains(id) && !is_asked(survey, id)) {
            faults.push_back(id + " is there again");
        }
    }
}

void Truth::look_at_notes(const Survey& survey, std::vector<std::string>& faults) const {
    for (const auto& [window, standing] : notes_) {
        const auto there = notes_of(survey, window);
        for (const auto& note : standing) {
            if (!there.contains(note) && !either_.contains(note)) {
                faults.push_back(note + " of " + window + " is lost");
            }
        }
        const auto asked = unsettled(survey, window);
        const auto& ever = all_of_.at(window);
        for (const auto& note : there) {
            // What is yet to be settled may offer what was written over meanwhile besides.
            if (!ever.contains(note) ||
                (!standing.contains(note) && !either_.contains(note) && !asked.contains(note))) {
                faults.push_back(note + " of " + window + " is there again");
            }
        }
    }
}

}  // namespace truehang::sync::simulation
