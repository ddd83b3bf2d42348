// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "document/document.h"
#include "survey/survey.h"

#include <cstddef>
#include <string>
#include <string_view>

// Two people’s work on one visit, put together reading by reading against what both began from. No clock, no name and
// no order of arrival takes part.

namespace truehang {

/// What both began from, and what each made of it, put together:
/// - Rooms, windows, readings, obstructions, layers, fabrics are the same where their ids are, photos where their
///   digests are, not_taken where its station is; without an id where all they say is. What one added is there; what
///   one took out is gone where the other left it alone.
/// - What one took out while the other changed it, or the order of its list, stays, and an entry of `changed_twice`
/// with
///   `removed` says so, beside the values where two others changed it in different ways. So does the room of a window
///   that stays, and the fabric that something still names.
/// - Of a key (or of keys that belong together, as a position’s) that both changed in different ways stands the value
///   whose JSON text is greatest, and all the values stand in an entry of `changed_twice`. Readings, sign-off, house
///   rules and tape are such values as a whole. Two readings of a station with ids of their own are both there.
/// - A list stands in the base’s order, what was added at its end by id; another order counts as a change of the list.
/// - `revision` is the greater one; `parents` is left away, for whoever sends it knows them.
/// The result is sound as `read_survey` has it, and written by `write_survey` in the same bytes whoever merged; keys
/// that this version doesn’t know stand in the order of their names. Faults, each with its place: the ids of the three
/// differ; one isn’t sound; the result would be larger than a document may be.
///
/// With one base b for all, for any x, y, z made from it (m(x, y) for merge(b, x, y), all up to the order of unknown
/// keys): m(x, x) = x; m(x, b) = x; m(x, y) = m(y, x); m(m(x, y), z) = m(x, m(y, z)); m(m(x, y), y) = m(x, y). So any
/// order, any grouping and any repeats of several people’s work give the same bytes, and every reading of x or of y
/// that the other didn’t take out is in the result. All of it holds too where b has open entries. What it doesn’t hold
/// for, and then only for what is asked of orders and rooms, not for what was measured: the order within a room whose
/// order another changed while a window was moved there; whether a room stays, with a question, that one took out while
/// another changed a window in it and a third moved that away; an order that was open in b.
///
/// An entry that one settled and another changed meanwhile is open again with all values, and says so in `again`: it
/// counts as a change against what it was settled from, so whoever settles that in another way is asked once more.
///
/// With a chain of bases (each merged revision names as its parent the revision that it was merged with, and only its
/// children are taken) every new revision contains all before it, and the next is merged against the newest common
/// one. What doesn’t hold: an older ancestor than the newest common one as base brings back what was taken out, and
/// what was settled, in between (never the other way round: nothing is lost); and merging in two chains that never saw
/// one another’s settling gives the entry again.
[[nodiscard]] Result<Survey, Faults> merge(const Survey& base, const Survey& ours, const Survey& theirs);

/// What settling does with one entry of `changed_twice`.
struct Settling {
    std::string at;
    std::size_t choice =
        0;  ///< which of its values (of an entry without: 0 keeps it); of `removed` the last takes it out
};

/// How many ways there are to settle an entry.
[[nodiscard]] std::size_t ways_to_settle(const ChangedTwice& entry);

/// The survey with that value standing and without the entry; what is taken out takes the entries within it along, a
/// room its windows. `survey` as it was, without the entry, where the place is there no more; faults where no entry is
/// there, the choice isn’t one of it, or the value can’t stand there any more (a window in a room that has gone, a
/// cloth that is named taken out): nothing is changed then.
[[nodiscard]] Result<Survey, Faults> settle(const Survey& survey, const Settling& settling);

/// Takes the entries of `after` away whose place, or an item that it lies in, `before` has and `after` hasn’t: who
/// takes something out by hand has settled what was open about it.
void settle_what_went(const Survey& before, Survey& after);

/// Which of an entry’s values stands in the survey now; its number of values where none of them does.
[[nodiscard]] std::size_t standing_value(const Survey& survey, std::string_view at);

}  // namespace truehang
