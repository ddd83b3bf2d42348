// SPDX-License-Identifier: Apache-2.0
#include "workroom/archive/heads.h"

#include "document/document.h"
#include "protocol/limits.h"
#include "survey/photos.h"
#include "units/folded.h"
#include "workroom/archive/archive.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>

namespace truehang::workroom {

namespace {

constexpr std::size_t most_words = 64;
constexpr std::size_t longest_word = 60;  ///< bytes
constexpr std::array head_tables{"head", "head_word", "photo_named", "head_state"};

/// As much of a word as it is found by, cut between two characters of UTF-8 (RFC 3629: what goes on begins with 10).
std::string beginning_of(std::string_view word) {
    auto end = std::min(word.size(), longest_word);
    while (end > 0 && end < word.size() && (static_cast<unsigned char>(word[end]) & 0xc0U) == 0x80U) {
        --end;
    }
    return std::string(word.substr(0, end));
}

/// The words that a survey is found by, each once.
std::vector<std::string> words_of(const HeadText& text) {
    std::vector<std::string> words;
    const std::string all = folded(text.title + " " + text.client + " " + text.address);
    std::string_view rest = all;
    while (!rest.empty() && words.size() < most_words) {
        const auto end = std::min(rest.find_first_of(" ,;()"), rest.size());
        const auto word = beginning_of(rest.substr(0, end));
        if (!word.empty() && std::find(words.begin(), words.end(), word) == words.end()) {
            words.push_back(word);
        }
        rest.remove_prefix(std::min(end + 1, rest.size()));
    }
    return words;
}

void replace_rows(Records& records, const std::string& table, const std::string& column, const std::string& survey,
                  const std::vector<std::string>& values) {
    Query clear(records, "DELETE FROM " + table + " WHERE survey = ?");
    clear.bind(1, survey);
    clear.exec();
    Query insert(records, "INSERT INTO " + table + "(survey, " + column + ") VALUES(?, ?)");
    for (const auto& value : values) {
        insert.reset();
        insert.bind(1, survey);
        insert.bind(2, value);
        insert.exec();
    }
}

void put_head(Records& records, const sync::SurveyReceipt& receipt, long long change, const HeadText& text) {
    Query put(records,
              "INSERT INTO head(survey, change, revision, received_at, title, client, address, measured_at, windows)"
              " VALUES(?, ?, ?, ?, ?, ?, ?, ?, ?) ON CONFLICT(survey) DO UPDATE SET change = excluded.change,"
              " revision = excluded.revision, received_at = excluded.received_at, title = excluded.title,"
              " client = excluded.client, address = excluded.address, measured_at = excluded.measured_at,"
              " windows = excluded.windows");
    put.bind(1, receipt.id);
    put.bind(2, static_cast<std::int64_t>(change));
    put.bind(3, static_cast<std::int64_t>(receipt.revision));
    put.bind(4, receipt.received_at);
    put.bind(5, text.title);
    put.bind(6, text.client);
    put.bind(7, text.address);
    put.bind(8, text.measured_at);
    put.bind(9, static_cast<std::int64_t>(text.windows));
    put.exec();
    replace_rows(records, "head_word", "word", receipt.id, words_of(text));
    replace_rows(records, "photo_named", "sha256", receipt.id, text.photos);
    put_states(records, receipt.id, change, *text.survey);
}

/// Of all revisions of a survey. Only those are read that say the word of it.
void note_agreements(Records& records, const std::string& survey_id) {
    Query query(records, "SELECT revision, bytes FROM revision WHERE survey = ?");
    query.bind(1, survey_id);
    while (query.step()) {
        const auto bytes = query.text(1);
        if (bytes.find("\"signed_off\"") == std::string::npos) {
            continue;
        }
        if (const auto survey = read_survey(bytes)) {
            note_agreement(records, survey_id, query.number(0), *survey);
        }
    }
}

/// The condition that word number `at` sets, bound at 2 at + 3 and, with its end, at 2 at + 4. The first leads to the
/// surveys by the words' own order; of those the others are asked for one by one.
std::string found_by(std::size_t at) {
    const auto begins = fmt::format("word >= ?{} AND word < ?{}", 2 * at + 3, 2 * at + 4);
    return at == 0 ? " AND head.survey IN (SELECT survey FROM head_word WHERE " + begins + ")"
                   : " AND EXISTS (SELECT 1 FROM head_word AS w WHERE w.survey = head.survey AND " + begins + ")";
}

Head head_of(Query& row) {
    Head head;
    head.survey = row.text(0);
    head.change = row.number(1);
    head.revision = row.number(2);
    head.received_at = row.text(3);
    head.title = row.text(4);
    head.client = row.text(5);
    head.address = row.text(6);
    head.measured_at = row.text(7);
    head.windows = static_cast<std::size_t>(row.number(8));
    head.photos = static_cast<std::size_t>(row.number(9));
    head.photos_here = static_cast<std::size_t>(row.number(10));
    return head;
}

/// With a state and no words the state leads, in the order of arrival; words find fewer and lead where there are any.
std::string heads_query(std::size_t words, bool by_state) {
    std::string query =
        "SELECT head.survey, head.change, head.revision, head.received_at, title, client, address, measured_at, "
        "windows,"
        " (SELECT count(*) FROM photo_named AS n WHERE n.survey = head.survey),"
        " (SELECT count(*) FROM photo_named AS n JOIN photo USING (sha256) WHERE n.survey = head.survey)";
    if (by_state && words == 0) {
        return query +
               " FROM head_state AS s JOIN head ON head.survey = s.survey WHERE s.state = ?3 AND s.change < ?1"
               " ORDER BY s.change DESC LIMIT ?2";
    }
    query += " FROM head WHERE head.change < ?1";
    for (std::size_t word = 0; word < words; ++word) {
        query += found_by(word);
    }
    if (by_state) {
        query +=
            fmt::format(" AND EXISTS (SELECT 1 FROM head_state AS s WHERE s.survey = head.survey AND s.state = ?{})",
                        2 * words + 3);
    }
    return query + " ORDER BY head.change DESC LIMIT ?2";
}

}  // namespace

HeadText::HeadText(const Survey& of)
    : title(of.title),
      client(of.client ? of.client->name : ""),
      address(of.site ? of.site->address : ""),
      measured_at(of.measured_at),
      photos(photos_of(of)),
      survey(std::make_shared<const Survey>(of)) {
    for (const auto& room : of.rooms) {
        windows += room.windows.size();
    }
}

std::vector<std::string> photos_of(const Survey& survey) {
    std::vector<std::string> digests;
    for (const PhotoPlace& place : photos_in(survey)) {
        if (std::find(digests.begin(), digests.end(), place.photo->sha256) == digests.end()) {
            digests.push_back(place.photo->sha256);
        }
    }
    return digests;
}

Result<HeadsPage> find_heads(Archive& archive, const HeadsAsked& asked) {
    auto words = search_words(asked.words);
    std::ranges::stable_sort(words, std::ranges::greater{}, &std::string::size);  // the longest finds the fewest
    return archive.database().read<HeadsPage>([&](Records& records) -> Result<HeadsPage> {
        Query query(records, heads_query(words.size(), !asked.state.empty()));
        query.bind(1, static_cast<std::int64_t>(asked.before > 0 ? asked.before : sync::revision_limit));
        query.bind(2, static_cast<std::int64_t>(asked.most + 1));
        for (std::size_t word = 0; word < words.size(); ++word) {
            const auto beginning = beginning_of(words[word]);
            query.bind(2 * static_cast<int>(word) + 3, beginning);
            query.bind(2 * static_cast<int>(word) + 4, end_of_beginning(beginning));
        }
        if (!asked.state.empty()) {
            query.bind(2 * static_cast<int>(words.size()) + 3, asked.state);
        }
        HeadsPage page;
        while (query.step()) {
            page.heads.push_back(head_of(query));
        }
        page.has_older = page.heads.size() > asked.most;
        page.heads.resize(std::min(page.heads.size(), asked.most));
        for (Head& head : page.heads) {
            head.states = states_of(records, head.survey);
        }
        return page;
    });
}

Result<std::vector<std::string>> missing_photos(Archive& archive, std::string_view survey) {
    return archive.database().read<std::vector<std::string>>([&](Records& records) -> Result<std::vector<std::string>> {
        Query query(records,
                    "SELECT sha256 FROM photo_named AS n WHERE survey = ? AND NOT EXISTS"
                    " (SELECT 1 FROM photo WHERE photo.sha256 = n.sha256)");
        query.bind(1, std::string(survey));
        std::vector<std::string> missing;
        while (query.step()) {
            missing.push_back(query.text(0));
        }
        return missing;
    });
}

void note_revision(Records& records, const sync::SurveyReceipt& receipt, const HeadText& text) {
    Query change(records, "INSERT INTO change(survey, revision) VALUES(?, ?) RETURNING at");
    change.bind(1, receipt.id);
    change.bind(2, static_cast<std::int64_t>(receipt.revision));
    change.step();
    const auto at = change.number(0);
    const bool is_agreed = note_agreement(records, receipt.id, receipt.revision, *text.survey);
    Query later(records, "SELECT 1 FROM head WHERE survey = ? AND revision > ?");
    later.bind(1, receipt.id);
    later.bind(2, static_cast<std::int64_t>(receipt.revision));
    if (later.step()) {
        if (is_agreed) {
            put_states_again(records, receipt.id);
        }
        return;
    }
    put_head(records, receipt, at, text);
}

void forget_head(Records& records, const std::string& survey) {
    for (const auto* table : head_tables) {
        if (records.has_table(table)) {
            Query forget(records, std::string("DELETE FROM ") + table + " WHERE survey = ?");
            forget.bind(1, survey);
            forget.exec();
        }
    }
}

void forget_heads(Records& records) {
    for (const auto* table : head_tables) {
        if (records.has_table(table)) {
            records.run(std::string("DELETE FROM ") + table);
        }
    }
}

Result<Done> make_missing_heads(Database& database) {
    return database.write_and_wait<Done>([](Records& writer) -> Result<Done> {
        writer.run(
            "INSERT INTO change(survey, revision) SELECT survey, revision FROM revision AS r WHERE NOT EXISTS"
            " (SELECT 1 FROM change AS c WHERE c.survey = r.survey AND c.revision = r.revision)"
            " ORDER BY received_at, survey, revision");
        Query query(writer,
                    "SELECT r.survey, revision, sha256, received_at, bytes,"
                    " (SELECT max(at) FROM change WHERE change.survey = r.survey)"
                    " FROM revision AS r WHERE NOT EXISTS (SELECT 1 FROM head WHERE survey = r.survey) AND"
                    " revision = (SELECT max(revision) FROM revision WHERE survey = r.survey)");
        while (query.step()) {
            note_agreements(writer, query.text(0));
            const sync::SurveyReceipt receipt{query.text(0), query.number(1), query.text(2), query.text(3)};
            auto survey = read_survey(query.text(4));
            Survey unread;
            unread.title = receipt.id;
            put_head(writer, receipt, query.number(5), HeadText(survey ? std::move(survey).value() : unread));
        }
        return Done{};
    });
}

}  // namespace truehang::workroom
