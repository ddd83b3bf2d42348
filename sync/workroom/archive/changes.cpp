// SPDX-License-Identifier: Apache-2.0
#include "workroom/archive/changes.h"

#include <charconv>

namespace truehang::workroom {

std::string cursor_of(const std::string& instance, std::int64_t place) {
    return instance + "-" + std::to_string(place);
}

std::optional<std::int64_t> place_of_cursor(std::string_view cursor, const std::string& instance, std::int64_t last) {
    if (cursor.empty()) {
        return 0;
    }
    if (!cursor.starts_with(instance + "-")) {
        return std::nullopt;
    }
    cursor.remove_prefix(instance.size() + 1);
    std::int64_t place = 0;
    const auto [end, fault] = std::from_chars(cursor.data(), cursor.data() + cursor.size(), place);
    const bool whole = fault == std::errc{} && end == cursor.data() + cursor.size();
    return whole && place >= 0 && place <= last ? std::optional(place) : std::nullopt;
}

void note_erasure(Records& records, const std::string& survey) {
    Query note(records, "INSERT INTO change(survey, revision) VALUES(?, 0)");
    note.bind(1, survey);
    note.exec();
}

void become_another_instance(Records& records) {
    if (records.has_table("instance")) {
        records.run("UPDATE instance SET id = lower(hex(randomblob(8)))");
    }
}

Result<sync::Changes> changes_after(Archive& archive, std::string_view cursor, std::size_t most) {
    return archive.database().read<sync::Changes>([&](Records& records) -> Result<sync::Changes> {
        const Transaction one_state(records, Transaction::Use::reading);
        const auto instance = text_of(records, "SELECT id FROM instance");
        const auto last = number_of(records, "SELECT coalesce(max(at), 0) FROM change");
        const auto place = place_of_cursor(cursor, instance, last);
        if (!place) {
            return Error{ErrorCode::missing, "after", "These records didn’t give this cursor. Begin without one."};
        }
        Query query(records,
                    "SELECT at, survey, revision, coalesce(sha256, ''), coalesce(received_at, ''),"
                    " coalesce(erased_at, ''), coalesce(device.name, '') FROM change"
                    " LEFT JOIN revision USING (survey, revision) LEFT JOIN erased USING (survey)"
                    " LEFT JOIN device ON device.id = revision.device WHERE at > ? ORDER BY at LIMIT ?");
        query.bind(1, *place);
        query.bind(2, static_cast<std::int64_t>(most + 1));
        sync::Changes changes;
        std::int64_t reached = *place;
        while (query.step()) {
            if (changes.changes.size() == most) {
                changes.more = true;
                break;
            }
            reached = query.number(0);
            changes.changes.push_back(
                {{query.text(1), query.number(2), query.text(3), query.text(4)}, query.text(5), query.text(6)});
        }
        changes.next = cursor_of(instance, reached);
        return changes;
    });
}

}  // namespace truehang::workroom
