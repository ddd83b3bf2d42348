// SPDX-License-Identifier: Apache-2.0
#include "workroom/site/steps_table.h"

#include "document/document.h"
#include "protocol/digest.h"
#include "sheet/words.h"
#include "workroom/archive/mark_shelf.h"
#include "workroom/archive/survey_states.h"

#include <algorithm>

namespace truehang::workroom {

using sync::LayerMark;
using sync::Step;

namespace {

std::string hangs_text(const Survey& survey, const MadeLayer& made) {
    for (const Room& room : survey.rooms) {
        for (const Window& window : room.windows) {
            for (const Layer& layer : window.layers) {
                if (room.id == made.room && window.id == made.window && layer.id == made.layer) {
                    return treatment_text(layer, sheet_style_for(survey));
                }
            }
        }
    }
    return {};
}

/// The layer of a mark; one that is gone is added.
StepsLayer& layer_of(std::vector<StepsLayer>& layers, const LayerMark& mark) {
    const auto found = std::ranges::find_if(layers, [&mark](const StepsLayer& layer) {
        return layer.made.room == mark.room && layer.made.window == mark.window && layer.made.layer == mark.layer;
    });
    if (found != layers.end()) {
        return *found;
    }
    StepsLayer gone;
    gone.made = {mark.room, mark.window, mark.layer, mark.window, {}};
    gone.is_there = false;
    return layers.emplace_back(std::move(gone));
}

Result<Done> put_marks(Archive& archive, StepsTable& table) {
    const auto marks = MarkShelf(archive).marks(table.survey.id);
    if (!marks) {
        return marks.error();
    }
    for (const LayerMark& mark : sync::standing_marks(*marks)) {
        StepsLayer& layer = layer_of(table.layers, mark);
        layer.steps.at(static_cast<std::size_t>(mark.step)) = mark;
        if (mark.revision != table.newest() && !table.before.contains(mark.revision)) {
            auto made = made_by_revision(archive, table.survey.id, mark.revision);
            if (!made) {
                return made.error();
            }
            if (*made) {
                table.before.emplace(mark.revision, std::move(**made));
            }
        }
        const auto then = table.before.find(mark.revision);
        const auto* named = layer.is_there || then == table.before.end()
                                ? nullptr
                                : find_layer(then->second, mark.room, mark.window, mark.layer);
        if (named != nullptr) {
            layer.made.title = named->title;
        }
    }
    return Done{};
}

}  // namespace

bool StepsLayer::has_changed(Step step) const {
    const auto& mark = steps.at(static_cast<std::size_t>(step));
    return mark && mark->figures_sha256 != digest;
}

bool StepsLayer::has_changed() const {
    return std::ranges::any_of(sync::all_steps, [this](Step step) { return has_changed(step); });
}

const LayerMark* StepsLayer::furthest() const {
    const auto found = std::find_if(steps.rbegin(), steps.rend(), [](const auto& mark) { return mark.has_value(); });
    return found == steps.rend() ? nullptr : &**found;
}

LayerDifference StepsTable::since(long long revision, const StepsLayer& layer) const {
    const auto house = before.find(revision);
    const auto* then = house == before.end()
                           ? nullptr
                           : find_layer(house->second, layer.made.room, layer.made.window, layer.made.layer);
    return written_differences(survey, then == nullptr ? MadeLayer{} : *then, layer.made, sheet_style_for(survey));
}

Result<std::optional<MadeHouse>> made_by_revision(Archive& archive, const std::string& survey, long long revision) {
    const auto document = archive.revision(survey, revision);
    if (!document) {
        return document.error();
    }
    const auto read = *document ? read_survey((*document)->bytes) : Result<Survey, Faults>(Faults{});
    return read ? std::optional(made_by(*read, work_out(*read))) : std::nullopt;
}

Result<std::optional<StepsTable>> lay_out_steps(Archive& archive, const std::string& survey_id) {
    const auto document = archive.newest(survey_id);
    auto receipts = archive.receipts(survey_id);
    if (!document || !receipts) {
        return document ? receipts.error() : document.error();
    }
    if (!*document) {
        return std::optional<StepsTable>();
    }
    auto survey = read_survey((*document)->bytes);
    if (!survey) {
        return Error{ErrorCode::damaged, "revision", "A stored document can’t be read any more."};
    }
    StepsTable table{std::move(survey).value(), {}, std::move(receipts).value(), {}, {}, false, {}};
    std::erase_if(table.receipts,
                  [&](const auto& receipt) { return receipt.revision > (*document)->receipt.revision; });
    table.figures = work_out(table.survey);
    table.made = made_by(table.survey, table.figures);
    for (const MadeLayer& made : table.made.layers) {
        table.layers.push_back({made, true, hangs_text(table.survey, made), digest_of(made), {}});
    }
    if (const auto put = put_marks(archive, table); !put) {
        return put.error();
    }
    const auto states = archive.database().read<std::vector<StateCount>>(
        [&](Records& records) -> Result<std::vector<StateCount>> { return states_of(records, survey_id); });
    if (!states) {
        return states.error();
    }
    table.lost_agreement = !(table.survey.signed_off && table.survey.signed_off->agreed) &&
                           std::ranges::find(*states, "agreed", &StateCount::state) != states->end();
    return std::optional(std::move(table));
}

}  // namespace truehang::workroom
