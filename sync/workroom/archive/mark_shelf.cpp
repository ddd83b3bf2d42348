// SPDX-License-Identifier: Apache-2.0
#include "workroom/archive/mark_shelf.h"

#include "workroom/archive/erasure.h"
#include "workroom/archive/survey_states.h"

#include <algorithm>
#include <map>

namespace truehang::workroom {

using sync::LayerMark;

namespace {

void insert_mark(Records& records, const std::string& survey, const LayerMark& mark) {
    Query insert(records,
                 "INSERT INTO layer_mark(survey, number, room_id, window_id, layer_id, step, done, by_revision, "
                 "figures_sha256, marked_by, marked_at) VALUES(?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)");
    insert.bind(1, survey);
    insert.bind(2, mark.number);
    insert.bind(3, mark.room);
    insert.bind(4, mark.window);
    insert.bind(5, mark.layer);
    insert.bind(6, sync::word_of(mark.step));
    insert.bind(7, mark.done ? 1 : 0);
    insert.bind(8, mark.revision);
    insert.bind(9, mark.figures_sha256);
    insert.bind(10, mark.by);
    insert.bind(11, mark.at);
    insert.exec();
}

using Standing = std::map<sync::StepPlace, LayerMark>;

/// Whether it says nothing that doesn't stand.
bool stands(const Standing& standing, const LayerMark& mark) {
    const auto before = standing.find(sync::place_of(mark));
    const bool is_done = before != standing.end() && before->second.done;
    return mark.done == is_done && (!mark.done || (before->second.revision == mark.revision &&
                                                   before->second.figures_sha256 == mark.figures_sha256));
}

Error no_such_revision() {
    return {ErrorCode::missing, "revision", "That revision isn’t here. Load the page again and mark it from there."};
}

Result<std::size_t> add_marks(Records& records, const std::string& survey, std::vector<LayerMark> marks) {
    if (is_erased(records, survey)) {
        return erased_error("This survey");
    }
    Standing standing;
    long long number = 0;
    for (LayerMark& mark : marks_of(records, survey)) {
        number = mark.number;
        standing.insert_or_assign(sync::place_of(mark), std::move(mark));
    }
    std::size_t added = 0;
    for (LayerMark& mark : marks) {
        // One is taken back also where the revision that it names was left out of a copy.
        if (mark.done && !has_revision(records, survey, mark.revision)) {
            return no_such_revision();
        }
        if (stands(standing, mark)) {
            continue;
        }
        mark.number = ++number;
        if (mark.number > sync::marks_limit) {
            return Error{ErrorCode::out_of_range, "marks", "This survey has as many marks as one may have."};
        }
        insert_mark(records, survey, mark);
        standing.insert_or_assign(sync::place_of(mark), mark);
        ++added;
    }
    if (added > 0) {
        put_states_again(records, survey);
    }
    return added;
}

Result<Done> take_in_marks(Records& records, const sync::LayerMarks& marks) {
    if (is_erased(records, marks.survey)) {
        return erased_error("This survey");
    }
    const auto here = marks_of(records, marks.survey);
    const auto common = std::min(here.size(), marks.marks.size());
    if (!std::equal(here.begin(), here.begin() + static_cast<std::ptrdiff_t>(common), marks.marks.begin())) {
        return Error{ErrorCode::conflict, "marks of " + marks.survey,
                     "Other marks are written down here; those stay as they are."};
    }
    for (std::size_t i = common; i < marks.marks.size(); ++i) {
        insert_mark(records, marks.survey, marks.marks[i]);
    }
    put_states_again(records, marks.survey);
    return Done{};
}

}  // namespace

bool has_revision(Records& records, const std::string& survey, long long revision) {
    Query query(records, "SELECT 1 FROM revision WHERE survey = ? AND revision = ?");
    query.bind(1, survey);
    query.bind(2, revision);
    return query.step();
}

std::vector<LayerMark> marks_of(Records& records, const std::string& survey) {
    Query query(records,
                "SELECT number, room_id, window_id, layer_id, step, done, by_revision, figures_sha256, "
                "marked_by, marked_at FROM layer_mark WHERE survey = ? ORDER BY number");
    query.bind(1, survey);
    std::vector<LayerMark> marks;
    while (query.step()) {
        LayerMark& mark = marks.emplace_back();
        mark.number = query.number(0);
        mark.room = query.text(1);
        mark.window = query.text(2);
        mark.layer = query.text(3);
        mark.step = sync::step_of(query.text(4)).value_or(sync::Step::ordered);
        mark.done = query.number(5) != 0;
        mark.revision = query.number(6);
        mark.figures_sha256 = query.text(7);
        mark.by = query.text(8);
        mark.at = query.text(9);
    }
    return marks;
}

Result<std::vector<LayerMark>> MarkShelf::marks(std::string_view survey) const {
    return archive_.database().read<std::vector<LayerMark>>(
        [survey = std::string(survey)](Records& records) -> Result<std::vector<LayerMark>> {
            return marks_of(records, survey);
        });
}

Result<std::size_t> MarkShelf::add(std::string_view survey, std::vector<LayerMark> marks) const {
    const auto now = sync::write_time(archive_.clock()());
    for (LayerMark& mark : marks) {
        mark.at = now;
    }
    return archive_.database().write_and_wait<std::size_t>(
        [survey = std::string(survey), marks = std::move(marks)](Records& records) {
            return add_marks(records, survey, marks);
        });
}

Result<Done> MarkShelf::take_in(const sync::LayerMarks& marks) const {
    return archive_.database().write_and_wait<Done>(
        [marks](Records& records) { return take_in_marks(records, marks); });
}

}  // namespace truehang::workroom
