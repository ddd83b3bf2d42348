// SPDX-License-Identifier: Apache-2.0
#include "workroom/keeping/verify.h"

#include "document/document.h"
#include "document/rolls_document.h"
#include "document/rules_document.h"
#include "protocol/digest.h"
#include "protocol/marks.h"
#include "protocol/questions.h"
#include "workroom/archive/rules_shelf.h"

#include <fmt/format.h>

#include <algorithm>
#include <optional>

namespace truehang::workroom {

namespace fs = std::filesystem;

namespace {

constexpr std::size_t most_structure_flaws = 100;

/// One row of what is looked at in small reads, so that no long one keeps the records from being tidied.
struct Document {
    std::string survey;
    long long revision = 0;
    std::string sha256, bytes;
};

struct PhotoRow {
    std::string sha256;
    long long bytes = 0;
};

std::optional<Document> document_after(Records& records, const std::string& survey, long long revision) {
    Query query(records,
                "SELECT survey, revision, sha256, bytes FROM revision WHERE (survey, revision) > (?, ?)"
                " ORDER BY survey, revision LIMIT 1");
    query.bind(1, survey);
    query.bind(2, revision);
    return query.step() ? std::optional(Document{query.text(0), query.number(1), query.text(2), query.text(3)})
                        : std::nullopt;
}

std::optional<PhotoRow> photo_after(Records& records, const std::string& sha256) {
    Query query(records, "SELECT sha256, bytes FROM photo WHERE sha256 > ? ORDER BY sha256 LIMIT 1");
    query.bind(1, sha256);
    return query.step() ? std::optional(PhotoRow{query.text(0), query.number(1)}) : std::nullopt;
}

bool has_photo(Records& records, const std::string& sha256) {
    Query query(records, "SELECT 1 FROM photo WHERE sha256 = ?");
    query.bind(1, sha256);
    return query.step();
}

/// Whether rolls read with any revision of their survey: a cloth that a later one no longer has is no fault.
bool rolls_read(Records& records, const std::string& survey, const std::string& bytes) {
    Query query(records, "SELECT bytes FROM revision WHERE survey = ? ORDER BY revision DESC");
    query.bind(1, survey);
    while (query.step()) {
        const auto document = read_survey(query.text(0));
        if (document && read_rolls(bytes, *document)) {
            return true;
        }
    }
    return false;
}

class LookingThrough {
public:
    explicit LookingThrough(KeptRecords& kept) : kept_(kept), records_(kept.records()) {}

    Looked run() {
        part(&LookingThrough::structure);
        part(&LookingThrough::documents);
        part(&LookingThrough::rolls);
        part(&LookingThrough::marks);
        part(&LookingThrough::questions);
        part(&LookingThrough::photos);
        part(&LookingThrough::rules);
        part(kept_.hold_photos() ? &LookingThrough::loose_pieces : &LookingThrough::loose_files);
        return std::move(looked_);
    }

private:
    /// A damaged record ends its part and is a flaw itself.
    void part(void (LookingThrough::*work)()) {
        try {
            (this->*work)();
        } catch (const SQLite::Exception& thrown) {
            flaw({Flaw::Of::records, "", 0, "", fmt::format("They can’t be read on: {}.", thrown.what())});
        } catch (const RecordsFault& thrown) {
            if (thrown.error().code != ErrorCode::damaged) {
                throw;
            }
            flaw({Flaw::Of::database, "", 0, "", thrown.error().text});
        }
    }

    void flaw(Flaw found) { looked_.flaws.push_back(std::move(found)); }

    void structure() {
        if (kept_.hold_photos()) {
            return;
        }
        Query check(records_, "PRAGMA integrity_check");
        std::size_t found = 0;
        while (found < most_structure_flaws && check.step()) {
            const auto text = check.text(0);
            if (text != "ok") {
                flaw({Flaw::Of::records, "", 0, "", text});
                ++found;
            }
        }
    }

    void documents() {
        std::string survey_before;
        long long revision_before = 0;
        while (const auto document = document_after(records_, survey_before, revision_before)) {
            survey_before = document->survey;
            revision_before = document->revision;
            ++looked_.documents;
            const Flaw here{Flaw::Of::document, document->survey, document->revision, "", ""};
            if (sync::hex(sync::sha256(document->bytes)) != document->sha256) {
                flaw(here);
                looked_.flaws.back().text = "Its bytes aren’t the ones that were received.";
            } else if (const auto survey = read_survey(document->bytes); !survey) {
                flaw(here);
                looked_.flaws.back().text = fmt::format("It doesn’t read as a survey: {}: {}",
                                                        survey.error().front().pointer, survey.error().front().text);
            }
        }
    }

    void rolls() {
        if (!records_.has_table("rolls")) {
            return;
        }
        Query query(records_, "SELECT survey, version, bytes FROM rolls ORDER BY survey, version");
        while (query.step()) {
            ++looked_.rolls;
            const auto survey = query.text(0);
            if (!rolls_read(records_, survey, query.text(2))) {
                flaw({Flaw::Of::rolls, survey, query.number(1), "",
                      "They don’t read as rolls with any revision of their survey."});
            }
        }
    }

    /// Each is of a step that is known, with a digest where it is done.
    void marks() {
        if (!records_.has_table("layer_mark")) {
            return;
        }
        Query query(records_,
                    "SELECT survey, number, step, figures_sha256, done FROM layer_mark ORDER BY survey, number");
        while (query.step()) {
            const auto digest = query.text(3);
            const bool done = query.number(4) != 0;
            if (!sync::step_of(query.text(2)) || (done ? !sync::sha256_from_hex(digest) : !digest.empty())) {
                flaw({Flaw::Of::mark, query.text(0), query.number(1), "",
                      "It isn’t of a step that is known, or the digest of its figures isn’t one."});
            }
        }
    }

    /// Each reads, and is the one that its row names.
    void questions() {
        if (!records_.has_table("question_entry")) {
            return;
        }
        Query query(records_, "SELECT survey, question, answer, record FROM question_entry ORDER BY at");
        while (query.step()) {
            const auto survey = query.text(0);
            const auto number = query.number(1);
            const auto id = query.text(2);
            const auto record = query.text(3);
            const auto question = id.empty() ? sync::read_question(record) : Result<sync::Question>(Error{});
            const auto answer = sync::read_answer(record);
            const bool fits = id.empty()
                                  ? question && question->survey == survey && question->number == number
                                  : answer && answer->survey == survey && answer->number == number && answer->id == id;
            if (!fits) {
                flaw({Flaw::Of::question, survey, number, "",
                      id.empty() ? "It doesn’t read any more." : "An answer to it doesn’t read any more.", id});
            }
        }
    }

    void photos() {
        std::string last;
        while (const auto photo = photo_after(records_, last)) {
            last = photo->sha256;
            ++looked_.photos;
            looked_.photo_bytes += photo->bytes;
            auto why = why_not_whole(*photo);
            if (!why.empty() && has_photo(records_, photo->sha256)) {
                flaw({Flaw::Of::photo, "", 0, photo->sha256, std::move(why)});
            }
        }
    }

    [[nodiscard]] std::string why_not_whole(const PhotoRow& photo) {
        const auto sum = kept_.photo_sum(photo.sha256);
        if (!sum) {
            return sum.error().text;
        }
        if (sum->bytes != photo.bytes) {
            return fmt::format("It is {} bytes long; {} were received.", sum->bytes, photo.bytes);
        }
        return sum->sha256 == photo.sha256 ? "" : "Its bytes aren’t the ones that were received.";
    }

    void rules() {
        if (kept_.hold_photos()) {
            return rules_of_records();
        }
        const RulesShelf shelf(kept_.folder() / "rules");
        const auto versions = shelf.versions().value();
        for (const long long version : versions) {
            ++looked_.rules;
            if (const auto document = shelf.version(version); !document) {
                flaw({Flaw::Of::rules, "", version, "", document.error().text});
            }
        }
    }

    void rules_of_records() {
        Query query(records_, "SELECT version, bytes FROM house_rules ORDER BY version");
        while (query.step()) {
            ++looked_.rules;
            if (!read_rules_document(query.text(1))) {
                flaw({Flaw::Of::rules, "", query.number(0), "", "The house rules can’t be read any more."});
            }
        }
    }

    void loose_pieces() {
        Query query(records_,
                    "SELECT DISTINCT sha256 FROM photo_piece AS p WHERE NOT EXISTS (SELECT 1 FROM photo WHERE "
                    "photo.sha256 = p.sha256) ORDER BY sha256");
        while (query.step()) {
            const auto sha256 = query.text(0);
            if (is_erased_photo(sha256)) {
                flaw({Flaw::Of::photo, "", 0, sha256,
                      "It was erased, but its bytes are there: erase its survey again."});
            } else if (!has_photo(records_, sha256)) {  // it may have come meanwhile
                looked_.loose.push_back("photo " + sha256);
            }
        }
    }

    void loose_files() {
        std::error_code error;
        fs::recursive_directory_iterator at(kept_.folder() / "photos", error);
        for (; !error && at != fs::recursive_directory_iterator(); at.increment(error)) {
            const auto& file = at->path();
            if (at->is_directory()) {
                continue;
            }
            const auto name = file.filename().string();
            if (is_photo_name(file) && is_erased_photo(name)) {
                flaw({Flaw::Of::photo, "", 0, name, "It was erased, but its file is there: erase its survey again."});
            } else if (!is_photo_name(file) || !has_photo(records_, name)) {
                looked_.loose.push_back(file.string());
            }
        }
        std::sort(looked_.loose.begin(), looked_.loose.end());
    }

    bool is_erased_photo(const std::string& sha256) {
        if (!records_.has_table("erased_photo")) {
            return false;
        }
        Query query(records_, "SELECT 1 FROM erased_photo WHERE sha256 = ?");
        query.bind(1, sha256);
        return query.step();
    }

    KeptRecords& kept_;
    Records& records_;
    Looked looked_;
};

}  // namespace

std::string place_of(const Flaw& flaw) {
    switch (flaw.of) {
        case Flaw::Of::document:
            return fmt::format("revision {} of {}", flaw.number, flaw.survey);
        case Flaw::Of::photo:
            return "photo " + flaw.sha256;
        case Flaw::Of::rolls:
            return fmt::format("version {} of the rolls of {}", flaw.number, flaw.survey);
        case Flaw::Of::mark:
            return fmt::format("mark {} of {}", flaw.number, flaw.survey);
        case Flaw::Of::question:
            return fmt::format("question {} of {}", flaw.number, flaw.survey);
        case Flaw::Of::rules:
            return fmt::format("version {} of the house rules", flaw.number);
        case Flaw::Of::database:
            return "the database";
        case Flaw::Of::records:
            break;
    }
    return records_name;
}

Result<Looked> look_through(KeptRecords& kept) {
    return told<Looked>(kept.folder(), [&]() -> Result<Looked> { return LookingThrough(kept).run(); });
}

Result<Looked> look_through(KeptFolder& folder) {
    KeptRecords kept(folder);
    return look_through(kept);
}

std::string amounts(const Looked& looked) {
    return fmt::format("{} documents, {} photos ({:.1f} MB), {} versions of rolls, {} of house rules", looked.documents,
                       looked.photos, static_cast<double>(looked.photo_bytes) / 1e6, looked.rolls, looked.rules);
}

}  // namespace truehang::workroom
