// SPDX-License-Identifier: Apache-2.0
#include "merge/merge.h"

#include "merge/merging.h"

#include <algorithm>

namespace truehang {
namespace {

using namespace merging;

/// The survey as its document reads, or why it has none.
Result<Survey, Faults> as_document(const Survey& survey) { return read_survey(write_survey(survey, false)); }

std::optional<long long> greater(std::optional<long long> a, std::optional<long long> b) { return std::max(a, b); }

}  // namespace

Result<Survey, Faults> merge(const Survey& base, const Survey& ours, const Survey& theirs) {
    if (ours.id != theirs.id || base.id != ours.id) {
        return Faults{{"/id", "These are revisions of different visits; only those of one can be put together."}};
    }
    const auto base_tree = tree_of(base);
    const auto our_tree = tree_of(ours);
    const auto their_tree = tree_of(theirs);
    for (const auto* tree : {&base_tree, &our_tree, &their_tree}) {
        if (!*tree) {
            return tree->error();
        }
    }
    const Entries base_entries = entries_of(base);
    const Entries our_entries = entries_of(ours);
    const Entries their_entries = entries_of(theirs);
    Merging merging;
    const JsonValue tree =
        merging.survey({{&*base_tree, &base_entries}, {&*our_tree, &our_entries}, {&*their_tree, &their_entries}});
    auto merged = survey_of_tree(tree);
    if (!merged) {
        return merged;
    }
    merged.value().revision = greater(ours.revision, theirs.revision);
    for (auto& entry : merging.take_entries()) {
        merged.value().changed_twice.push_back(std::move(entry.second));
    }
    return as_document(*merged);
}

}  // namespace truehang
