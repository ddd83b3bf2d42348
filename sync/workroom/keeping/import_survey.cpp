// SPDX-License-Identifier: Apache-2.0
#include "workroom/keeping/import_survey.h"

#include "document/document.h"
#include "document/rolls_document.h"
#include "protocol/digest.h"
#include "protocol/limits.h"
#include "protocol/paths.h"
#include "workroom/archive/access.h"
#include "workroom/archive/archive.h"
#include "workroom/archive/erasure.h"
#include "workroom/archive/mark_shelf.h"
#include "workroom/archive/photo_intake.h"
#include "workroom/archive/question_shelf.h"
#include "workroom/archive/rolls_shelf.h"
#include "workroom/documents.h"
#include "workroom/keeping/kept_folder.h"
#include "workroom/keeping/survey_zip.h"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <fstream>
#include <future>
#include <map>
#include <optional>

namespace truehang::workroom {

namespace fs = std::filesystem;

namespace {

const std::string device = "imported";

/// What a file holds, read and checked.
struct Read {
    std::string survey;
    std::map<long long, std::string> revisions, rolls;
    std::map<long long, Survey> surveys;  ///< of the revisions
    std::vector<sync::LayerMark> marks;
    sync::SurveyQuestions questions;
    std::optional<SurveyZip> zip;
};

Error refusal(ErrorCode code, std::string where, std::string_view why) {
    return {code, std::move(where), fmt::format("{} Nothing was taken in.", why)};
}

/// Adds a revision; `number` 0: the document's own.
Result<Done> add_revision(Read& read, long long number, std::string bytes, const std::string& where) {
    auto survey = read_survey(bytes);
    if (!survey) {
        const auto& fault = survey.error().front();
        return refusal(ErrorCode::unreadable, where, fmt::format("{}: {}", fault.pointer, fault.text));
    }
    const long long own = survey->revision.value_or(number == 0 ? 1 : number);
    if ((number != 0 && own != number) || own < 1 || own > sync::revision_limit) {
        return refusal(ErrorCode::unreadable, where, "Its revision isn’t the one that it is named for.");
    }
    if (!sync::id_travels(survey->id) || (!read.survey.empty() && survey->id != read.survey)) {
        return refusal(ErrorCode::unreadable, where,
                       read.survey.empty() ? "Its id can’t be taken." : "It belongs to another survey than the first.");
    }
    read.survey = survey->id;
    if (!read.revisions.emplace(own, std::move(bytes)).second) {
        return refusal(ErrorCode::unreadable, where, "The same revision is in the file twice.");
    }
    read.surveys.emplace(own, std::move(survey).value());
    return Done{};
}

Result<Done> read_revisions(const SurveyZip& zip, Read& read) {
    for (const auto& [number, entry] : zip.revisions()) {
        auto text = zip.text_of(entry);
        const auto added =
            text ? add_revision(read, number, std::move(text).value(), entry.name) : Result<Done>(text.error());
        if (!added) {
            return added;
        }
    }
    return read.revisions.empty() ? refusal(ErrorCode::missing, "revisions/", "No survey is in this file.")
                                  : Result<Done>(Done{});
}

Result<Done> read_rolls_entries(const SurveyZip& zip, Read& read) {
    for (const auto& [version, entry] : zip.rolls()) {
        auto text = zip.text_of(entry);
        if (!text) {
            return text.error();
        }
        const bool reads =
            std::ranges::any_of(read.surveys, [&text](const auto& one) { return read_rolls(*text, one.second).ok(); });
        if (!reads) {
            return refusal(ErrorCode::unreadable, entry.name, "It doesn’t read as rolls of this survey.");
        }
        read.rolls.emplace(version, std::move(text).value());
    }
    return Done{};
}

Result<Done> read_marks_entry(const SurveyZip& zip, Read& read) {
    if (!zip.marks()) {
        return Done{};
    }
    const auto text = zip.text_of(*zip.marks());
    auto marks = text ? sync::read_marks(*text) : Result<sync::LayerMarks>(text.error());
    if (!marks) {
        return refusal(ErrorCode::unreadable, "marks.json", marks.error().where + ": " + marks.error().text);
    }
    if (marks->survey != read.survey) {
        return refusal(ErrorCode::unreadable, "marks.json", "It tells of another survey.");
    }
    read.marks = std::move(marks->marks);
    return Done{};
}

Result<Done> read_questions_entry(const SurveyZip& zip, Read& read) {
    read.questions.survey = read.survey;
    if (!zip.questions()) {
        return Done{};
    }
    const auto text = zip.text_of(*zip.questions());
    auto questions = text ? sync::read_questions(*text) : Result<sync::SurveyQuestions>(text.error());
    if (!questions) {
        return refusal(ErrorCode::unreadable, "questions.json",
                       questions.error().where + ": " + questions.error().text);
    }
    if (questions->survey != read.survey) {
        return refusal(ErrorCode::unreadable, "questions.json", "It tells of another survey.");
    }
    read.questions = std::move(questions).value();
    return Done{};
}

/// Each revision is the one that was received, where the file tells.
Result<Done> check_receipts(const SurveyZip& zip, const Read& read) {
    if (!zip.receipts()) {
        return Done{};
    }
    const auto text = zip.text_of(*zip.receipts());
    const auto json = text ? nlohmann::json::parse(*text, nullptr, false) : nlohmann::json();
    if (!json.is_object() || !json.contains("revisions") || !json["revisions"].is_array()) {
        return refusal(ErrorCode::unreadable, "receipts.json", "It doesn’t read as receipts.");
    }
    for (const auto& receipt : json["revisions"]) {
        const bool told = receipt.is_object() && receipt.contains("revision") && receipt.contains("sha256") &&
                          receipt["revision"].is_number_integer() && receipt["sha256"].is_string();
        const auto found = told ? read.revisions.find(receipt["revision"].get<long long>()) : read.revisions.end();
        if (found == read.revisions.end() ||
            sync::hex(sync::sha256(found->second)) != receipt["sha256"].get<std::string>()) {
            return refusal(ErrorCode::damaged, "receipts.json", "A revision isn’t the one that it tells of.");
        }
    }
    return Done{};
}

Result<Done> check_photos(const SurveyZip& zip, const Read& read) {
    std::vector<std::string> named;
    for (const auto& [number, bytes] : read.revisions) {
        std::ranges::move(digests_in(bytes), std::back_inserter(named));
    }
    for (const auto& [sha256, entry] : zip.photos()) {
        sync::Sha256Stream hash;
        const auto unpacked = zip.unpack(entry, [&hash](std::string_view piece) {
            hash.add(piece);
            return true;
        });
        if (!unpacked) {
            return unpacked;
        }
        if (sync::hex(hash.finish()) != sha256) {
            return refusal(ErrorCode::damaged, entry.name, "Its bytes aren’t the ones that it is named for.");
        }
        if (std::ranges::find(named, sha256) == named.end()) {
            return refusal(ErrorCode::unreadable, entry.name, "The survey names no such photo.");
        }
    }
    return Done{};
}

bool begins_as_zip(const fs::path& file) {
    std::string beginning(4, '\0');
    std::ifstream in(file, std::ios::binary);
    in.read(beginning.data(), 4);
    return beginning == "PK\x03\x04";
}

Result<Read> read_file(const fs::path& file) {
    Read read;
    if (!begins_as_zip(file)) {
        auto bytes = read_document(file.string());
        const auto added =
            bytes ? add_revision(read, 0, std::move(bytes).value(), file.string()) : Result<Done>(bytes.error());
        return added ? Result<Read>(std::move(read)) : added.error();
    }
    auto zip = SurveyZip::open(file);
    if (!zip) {
        return zip.error();
    }
    for (const auto& step : {read_revisions, read_rolls_entries, read_marks_entry, read_questions_entry}) {
        if (const auto done = step(zip.value(), read); !done) {
            return done.error();
        }
    }
    for (const auto& check : {check_receipts, check_photos}) {
        if (const auto done = check(zip.value(), read); !done) {
            return done.error();
        }
    }
    read.zip = std::move(zip).value();
    return read;
}

/// Waits for what the archive answers on its writing thread.
template <class T, class Ask>
Result<T> answer_of(const Ask& ask) {
    std::promise<Result<T>> promise;
    auto coming = promise.get_future();
    ask([&promise](Result<T> result) { promise.set_value(std::move(result)); });
    return coming.get();
}

/// Takes what was read into the archive.
class Importing {
public:
    Importing(Archive& archive, const Read& read) : archive_(archive), read_(read) { imported_.survey = read.survey; }

    Result<Imported> run() {
        for (const auto step : {&Importing::look_for_conflicts, &Importing::enter_device, &Importing::revisions,
                                &Importing::photos, &Importing::rolls, &Importing::marks, &Importing::questions}) {
            if (const auto done = (this->*step)(); !done) {
                return done.error();
            }
        }
        return imported_;
    }

private:
    /// Before anything is kept.
    Result<Done> look_for_conflicts() {
        const auto there = archive_.receipts(read_.survey);
        if (!there) {
            return there.error();
        }
        for (const auto& receipt : *there) {
            const auto own = read_.revisions.find(receipt.revision);
            if (own != read_.revisions.end() && sync::hex(sync::sha256(own->second)) != receipt.sha256) {
                return refusal(ErrorCode::conflict, fmt::format("revision {} of {}", receipt.revision, read_.survey),
                               "It is here already with other content; that stays as it is.");
            }
        }
        const auto erased = archive_.database().read<bool>(
            [this](Records& records) -> Result<bool> { return is_erased(records, read_.survey); });
        if (!erased || *erased) {
            return erased ? Error{ErrorCode::conflict, read_.survey, erased_error("This survey").text} : erased.error();
        }
        const auto other_marks = look_for_other_marks();
        if (!other_marks) {
            return other_marks;
        }
        const auto other_questions = look_for_other_questions();
        return other_questions ? look_for_other_rolls() : other_questions;
    }

    Result<Done> look_for_other_marks() {
        const auto here = MarkShelf(archive_).marks(read_.survey);
        if (!here) {
            return here.error();
        }
        const auto common = static_cast<std::ptrdiff_t>(std::min(here->size(), read_.marks.size()));
        return std::equal(here->begin(), here->begin() + common, read_.marks.begin())
                   ? Result<Done>(Done{})
                   : refusal(ErrorCode::conflict, "marks of " + read_.survey,
                             "Other marks are written down here; those stay as they are.");
    }

    Result<Done> look_for_other_questions() {
        const auto could = QuestionShelf(archive_).could_take_in(read_.questions);
        return could ? could : refusal(could.error().code, could.error().where, could.error().text);
    }

    Result<Done> look_for_other_rolls() {
        const RollsShelf shelf(archive_);
        const auto versions = shelf.versions(read_.survey);
        if (!versions) {
            return versions.error();
        }
        long long next = static_cast<long long>(versions->size()) + 1;
        for (const auto& [version, bytes] : read_.rolls) {
            const auto kept = shelf.version(read_.survey, version);
            if (!kept) {
                return kept.error();
            }
            const bool fits = *kept ? (*kept)->bytes == bytes : version == next++;
            if (!fits) {
                return refusal(ErrorCode::conflict, fmt::format("version {} of the rolls of {}", version, read_.survey),
                               "Other rolls are written down here; those stay as they are.");
            }
        }
        return Done{};
    }

    Result<Done> enter_device() {
        return archive_.database().write_and_wait<Done>([this](Records& records) -> Result<Done> {
            // No token has an empty digest: nobody can send in this name.
            Query insert(records,
                         "INSERT INTO device(id, name, token_sha256, paired_at) VALUES(?, ?, '', ?)"
                         " ON CONFLICT(id) DO NOTHING");
            insert.bind(1, device);
            insert.bind(2, device);
            insert.bind(3, sync::write_time(archive_.clock()()));
            insert.exec();
            return Done{};
        });
    }

    Result<Done> photos() {
        if (!read_.zip) {
            return Done{};
        }
        for (const auto& [sha256, entry] : read_.zip->photos()) {
            const auto there = archive_.photo(sha256);
            if (!there || *there) {
                imported_.photos_before += there ? 1 : 0;
                imported_.photos += there ? 1 : 0;
                if (!there) {
                    return there.error();
                }
                continue;
            }
            if (auto done = photo(sha256, entry); !done) {
                return done;
            }
            ++imported_.photos;
        }
        return Done{};
    }

    Result<Done> photo(const std::string& sha256, const SurveyZip::Entry& entry) {
        PhotoIntake intake(archive_.incoming_folder(), sync::hex(sync::sha256(random_bytes(16))));
        const auto unpacked =
            read_.zip->unpack(entry, [&intake](std::string_view piece) { return intake.take(piece); });
        if (!unpacked || intake.fault()) {
            return unpacked ? *intake.fault() : unpacked.error();
        }
        if (sync::hex(intake.digest()) != sha256) {
            return Error{ErrorCode::damaged, entry.name, "The file changed while it was read. Import it again."};
        }
        if (auto put = intake.put(archive_.photo_file(sha256)); !put) {
            return put;
        }
        const auto kept = answer_of<Kept<sync::PhotoReceipt>>(
            [&](auto then) { archive_.keep_photo(sha256, intake.bytes(), device, std::move(then)); });
        return kept ? Result<Done>(Done{}) : kept.error();
    }

    Result<Done> revisions() {
        for (const auto& [number, bytes] : read_.revisions) {
            const auto kept = answer_of<Kept<sync::SurveyReceipt>>([&, n = number](auto then) {
                archive_.keep_revision(
                    {read_.survey, n, bytes, sync::hex(sync::sha256(bytes)), device, HeadText(read_.surveys.at(n))},
                    std::move(then));
            });
            if (!kept) {
                return kept.error();
            }
            ++imported_.revisions;
            imported_.revisions_before += kept->was_there ? 1 : 0;
        }
        return Done{};
    }

    Result<Done> rolls() {
        const RollsShelf shelf(archive_);
        for (const auto& [version, bytes] : read_.rolls) {
            const auto there = shelf.version(read_.survey, version);
            if (!there) {
                return there.error();
            }
            ++imported_.rolls;
            imported_.rolls_before += *there ? 1 : 0;
            if (!*there) {
                const auto saved = shelf.save(read_.survey, bytes, version - 1);
                if (!saved) {
                    return saved.error();
                }
            }
        }
        return Done{};
    }

    Result<Done> questions() {
        return read_.questions.questions.empty() ? Result<Done>(Done{})
                                                 : QuestionShelf(archive_).take_in(read_.questions);
    }

    Result<Done> marks() { return MarkShelf(archive_).take_in({read_.survey, read_.marks}); }

    Archive& archive_;
    const Read& read_;
    Imported imported_;
};

}  // namespace

Result<Imported> import_survey(const KeptAt& kept, const fs::path& file, sync::Time now) {
    if (kept.database.empty()) {
        if (const auto there = KeptFolder::open(kept.data); !there) {
            return there.error();
        }
    }
    return told<Imported>(file, [&]() -> Result<Imported> {
        const auto read = read_file(file);
        if (!read) {
            return read.error();
        }
        const auto archive = Archive::open(
            kept.data, [now] { return now; }, kept.database);
        return archive ? Importing(**archive, *read).run() : archive.error();
    });
}

}  // namespace truehang::workroom
