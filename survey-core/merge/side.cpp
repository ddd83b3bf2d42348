// SPDX-License-Identifier: Apache-2.0
#include "merge/side.h"

#include <algorithm>

namespace truehang::merging {

namespace {

/// Whether a changed state chose among the base's values, as settling does, or holds one that did.
bool is_told(const State& base, const State& changed) {
    return changed.again != base.again || std::ranges::includes(base.all, changed.all);
}

}  // namespace

Entries entries_of(const Survey& survey) {
    Entries entries;
    for (const ChangedTwice& twice : survey.changed_twice) {
        entries.emplace(twice.at, twice);
    }
    return entries;
}

const ChangedTwice* Side::entry(std::string_view at) const {
    const auto found = entries->find(at);
    return found != entries->end() ? &found->second : nullptr;
}

std::vector<const ChangedTwice*> Side::entries_under(std::string_view at) const {
    std::vector<const ChangedTwice*> found;
    for (auto entry = entries->lower_bound(at); entry != entries->end() && entry->first.starts_with(at); ++entry) {
        if (entry->first.size() == at.size() || entry->first[at.size()] == '/') {
            found.push_back(&entry->second);
        }
    }
    return found;
}

State state_of(Value standing, const ChangedTwice* entry) {
    State state{standing, {}, false};
    if (entry != nullptr) {
        state.all.insert(entry->values.begin(), entry->values.end());
        state.again = entry->again;
    }
    state.all.insert(std::move(standing));
    return state;
}

State joined(const State& base, const State& ours, const State& theirs) {
    if (ours == theirs || theirs == base) {
        return ours;
    }
    if (ours == base) {
        return theirs;
    }
    State state = ours;
    state.standing = std::max(ours.standing, theirs.standing);
    state.all.insert(theirs.all.begin(), theirs.all.end());
    // Told in `again` by being another than the base's, since values alone don't: that somebody made less of the base's
    // values. So two changes that come to the base's own state, or to a third one's, are to be told from those.
    state.again = base.again != (is_told(base, ours) || is_told(base, theirs));
    return state;
}

bool same_below(const Side& a, const Side& b, const std::string& at) {
    if ((a.node == nullptr) != (b.node == nullptr) || (a.node != nullptr && json_text(*a.node) != json_text(*b.node))) {
        return false;
    }
    const auto alike = [](const ChangedTwice* one, const ChangedTwice* other) {
        return one->at == other->at && one->values == other->values && one->removed == other->removed &&
               one->again == other->again;
    };
    return std::ranges::equal(a.entries_under(at), b.entries_under(at), alike);
}

}  // namespace truehang::merging
