// SPDX-License-Identifier: Apache-2.0
#include "workroom/archive/survey_states.h"

#include "document/document.h"
#include "figures/figures.h"
#include "protocol/digest.h"
#include "sheet/signed.h"
#include "workroom/archive/mark_shelf.h"
#include "workroom/archive/question_shelf.h"

#include <algorithm>
#include <map>
#include <tuple>

namespace truehang::workroom {

namespace {

using Counts = std::map<std::string, std::size_t>;
using LayerPlace = std::tuple<std::string, std::string, std::string>;

/// Layers by what is asked for them: nothing is worked out.
std::size_t layers_asked(const Survey& survey) {
    std::size_t layers = 0;
    for (const Room& room : survey.rooms) {
        for (const Window& window : room.windows) {
            layers += window.layers.size();
        }
    }
    return layers;
}

void count_marked(Counts& counts, const Survey& survey, const std::vector<sync::LayerMark>& standing) {
    std::map<LayerPlace, std::vector<const sync::LayerMark*>> marks;
    for (const auto& mark : standing) {
        marks[{mark.room, mark.window, mark.layer}].push_back(&mark);
    }
    for (const MadeLayer& layer : made_by(survey, work_out(survey)).layers) {
        const auto found = marks.find({layer.room, layer.window, layer.layer});
        if (found == marks.end()) {
            ++counts["new"];
            continue;
        }
        const auto digest = digest_of(layer);
        const auto step = (*std::ranges::max_element(found->second, {}, &sync::LayerMark::step))->step;
        ++counts[std::string(sync::word_of(step))];
        counts["changed"] +=
            std::ranges::any_of(found->second, [&digest](const auto* mark) { return mark->figures_sha256 != digest; })
                ? 1U
                : 0U;
        marks.erase(found);
    }
    counts["changed"] += marks.size();  // layers that are no longer there
}

void count_agreed(Counts& counts, const Survey& survey, bool was_agreed) {
    const auto since = since_signed(survey);
    if (since || was_agreed) {
        counts["agreed"] = 1;
        counts["agreed-changed"] = !since || since->differs() ? 1 : 0;
    }
}

}  // namespace

std::string digest_of(const MadeLayer& layer) { return sync::hex(sync::sha256(digest_text(layer))); }

bool note_agreement(Records& records, const std::string& survey_id, long long revision, const Survey& survey) {
    if (!survey.signed_off || !survey.signed_off->agreed) {
        return false;
    }
    Query note(records, "INSERT INTO agreed_revision(survey, revision) VALUES(?, ?) ON CONFLICT DO NOTHING");
    note.bind(1, survey_id);
    note.bind(2, revision);
    note.exec();
    return true;
}

void put_states(Records& records, const std::string& survey_id, long long change, const Survey& survey) {
    Query agreed(records, "SELECT 1 FROM agreed_revision WHERE survey = ?");
    agreed.bind(1, survey_id);
    const bool was_agreed = agreed.step();
    const auto standing = sync::standing_marks(marks_of(records, survey_id));
    Counts counts;
    if (standing.empty()) {
        counts["new"] = layers_asked(survey);
    } else {
        count_marked(counts, survey, standing);
    }
    count_agreed(counts, survey, was_agreed);
    counts["question"] = open_questions(records, survey_id);
    Query clear(records, "DELETE FROM head_state WHERE survey = ?");
    clear.bind(1, survey_id);
    clear.exec();
    Query insert(records, "INSERT INTO head_state(survey, state, change, layers) VALUES(?, ?, ?, ?)");
    for (const auto& [state, layers] : counts) {
        if (layers == 0 && !(standing.empty() && state == "new")) {
            continue;
        }
        insert.reset();
        insert.bind(1, survey_id);
        insert.bind(2, state);
        insert.bind(3, change);
        insert.bind(4, layers);
        insert.exec();
    }
}

void put_states_again(Records& records, const std::string& survey_id) {
    Query query(records,
                "SELECT head.change, revision.bytes FROM head JOIN revision ON revision.survey = head.survey AND"
                " revision.revision = head.revision WHERE head.survey = ?");
    query.bind(1, survey_id);
    if (!query.step()) {
        return;
    }
    if (const auto survey = read_survey(query.text(1))) {
        put_states(records, survey_id, query.number(0), *survey);
    }
}

std::vector<StateCount> states_of(Records& records, const std::string& survey_id) {
    Query query(records, "SELECT state, layers FROM head_state WHERE survey = ?");
    query.bind(1, survey_id);
    std::vector<StateCount> states;
    while (query.step()) {
        states.push_back({query.text(0), static_cast<std::size_t>(query.number(1))});
    }
    std::ranges::sort(states, {}, [](const StateCount& state) { return std::ranges::find(state_words, state.state); });
    return states;
}

}  // namespace truehang::workroom
