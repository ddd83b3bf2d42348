// SPDX-License-Identifier: Apache-2.0
#include "workroom/archive/arrivals.h"

#include "workroom/archive/changes.h"

#include <fmt/format.h>

#include <cstdint>

namespace truehang::workroom {

namespace {

constexpr std::int64_t most_looked_at = 1000;

/// What happened to the surveys since: how many came in and were erased, the last that came.
struct Happened {
    std::int64_t came = 0, erased = 0, revision = 0;
    std::string last;
    bool all = true;  ///< nothing older was left out
};

Happened look(Records& records, std::int64_t since, std::string_view survey) {
    const std::string of_one = survey.empty() ? "" : " AND survey = ?";
    Query query(records,
                "SELECT survey, max(at), max(revision), count(*) FROM"
                " (SELECT at, survey, revision FROM change WHERE at > ?" +
                    of_one + " ORDER BY at DESC LIMIT " + std::to_string(most_looked_at) +
                    ") AS latest GROUP BY survey ORDER BY max(at) DESC");
    query.bind(1, since);
    if (!survey.empty()) {
        query.bind(2, std::string(survey));
    }
    Happened happened;
    std::int64_t seen = 0;
    while (query.step()) {
        seen += query.number(3);
        if (query.number(2) == 0) {
            ++happened.erased;
        } else if (++happened.came == 1) {
            happened.last = query.text(0);
            happened.revision = query.number(2);
        }
    }
    happened.all = seen < most_looked_at;
    return happened;
}

std::string title_of(Records& records, const std::string& survey) {
    Query query(records, "SELECT title FROM head WHERE survey = ?");
    query.bind(1, survey);
    auto title = query.step() ? query.text(0) : std::string();
    for (char& letter : title) {
        letter = static_cast<unsigned char>(letter) < 0x20 ? ' ' : letter;
    }
    return title.empty() ? "Untitled visit" : title;
}

std::string says_of_all(Records& records, const Happened& happened) {
    std::string says;
    if (happened.came > 0) {
        const auto title = title_of(records, happened.last);
        says = happened.came == 1 ? fmt::format("“{}” has come in.", title)
                                  : fmt::format("{}{} visits have come in, “{}” last.", happened.all ? "" : "At least ",
                                                happened.came, title);
    }
    if (happened.erased > 0) {
        says += fmt::format("{}{} erased.", says.empty() ? "" : " ",
                            happened.erased == 1 ? "A visit was" : fmt::format("{} visits were", happened.erased));
    }
    return says;
}

std::string says_of_one(const Happened& happened) {
    if (happened.came > 0) {
        return fmt::format("Revision {} of this visit has come in: what stands here is older.", happened.revision);
    }
    return happened.erased > 0 ? "This visit was erased." : "";
}

std::int64_t newest_place(Records& records) { return number_of(records, "SELECT coalesce(max(at), 0) FROM change"); }

std::string instance_of(Records& records) { return text_of(records, "SELECT id FROM instance"); }

}  // namespace

Result<std::string> newest_cursor(Archive& archive) {
    return archive.database().read<std::string>(
        [](Records& records) -> Result<std::string> { return cursor_of(instance_of(records), newest_place(records)); });
}

Result<Arrivals> arrivals_since(Archive& archive, std::string_view since, std::string_view survey) {
    return archive.database().read<Arrivals>([&](Records& records) -> Result<Arrivals> {
        const Transaction one_state(records, Transaction::Use::reading);
        const auto instance = instance_of(records);
        const auto last = newest_place(records);
        Arrivals arrivals{cursor_of(instance, last), ""};
        const auto place = place_of_cursor(since, instance, last);
        if (!place) {
            arrivals.says = "The records were brought back from a copy: what stands here may be older.";
            return arrivals;
        }
        const auto happened = look(records, *place, survey);
        arrivals.says = survey.empty() ? says_of_all(records, happened) : says_of_one(happened);
        return arrivals;
    });
}

}  // namespace truehang::workroom
