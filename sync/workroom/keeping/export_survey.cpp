// SPDX-License-Identifier: Apache-2.0
#include "workroom/keeping/export_survey.h"

#include "document/document.h"
#include "store/picture_kind.h"
#include "store/visit_file.h"
#include "workroom/archive/erasure.h"
#include "workroom/archive/mark_shelf.h"
#include "workroom/archive/question_shelf.h"
#include "workroom/keeping/survey_zip.h"

#include <nlohmann/json.hpp>

#include <fstream>
#include <set>

namespace truehang::workroom {

namespace fs = std::filesystem;

namespace {

using Json = nlohmann::ordered_json;

Error no_such(const std::string& survey) {
    return {ErrorCode::missing, survey, "No such survey is here. Nothing was written."};
}

/// One survey on its way from the records into a file.
class Packing {
public:
    Packing(KeptRecords& kept, const std::string& survey, Scratch& scratch)
        : kept_(kept), records_(kept.records()), survey_(survey), scratch_(scratch) {}

    Result<Exported> run(const fs::path& file) {
        revisions();
        if (exported_.revisions == 0) {
            return no_such(survey_);
        }
        rolls();
        marks();
        questions();
        for (const auto& sha256 : named_) {
            photo(sha256);
        }
        exported_.missing = missing_of_newest();
        const Json receipts{{"schema", "truehang.receipts/1"},
                            {"survey", survey_},
                            {"revisions", revision_receipts_},
                            {"photos", photo_receipts_}};
        packed_.texts.push_back({"receipts.json", receipts.dump(2, ' ', false, Json::error_handler_t::replace)});
        const auto written = write_survey_zip(file, packed_);
        return written ? Result<Exported>(exported_) : written.error();
    }

private:
    void revisions() {
        Query query(records_,
                    "SELECT revision, sha256, received_at, bytes, (SELECT name FROM device WHERE id = "
                    "device) FROM revision WHERE survey = ? ORDER BY revision");
        query.bind(1, survey_);
        while (query.step()) {
            const auto number = query.number(0);
            auto bytes = query.text(3);
            for (auto& digest : digests_in(bytes)) {
                named_.insert(std::move(digest));
            }
            revision_receipts_.push_back(Json{{"revision", number},
                                              {"sha256", query.text(1)},
                                              {"received_at", query.text(2)},
                                              {"device_name", query.text(4)}});
            packed_.texts.push_back({"revisions/" + std::to_string(number) + ".json", std::move(bytes)});
            ++exported_.revisions;
        }
    }

    [[nodiscard]] std::size_t missing_of_newest() const {
        const auto newest = read_survey(packed_.texts.at(exported_.revisions - 1).bytes);
        std::size_t missing = 0;
        for (const auto& sha256 : newest ? photos_mentioned(*newest) : std::vector<std::string>{}) {
            Query query(records_, "SELECT 1 FROM photo WHERE sha256 = ?");
            query.bind(1, sha256);
            missing += query.step() ? 0U : 1U;
        }
        return missing;
    }

    void rolls() {
        if (!records_.has_table("rolls")) {
            return;
        }
        Query query(records_, "SELECT version, bytes FROM rolls WHERE survey = ? ORDER BY version");
        query.bind(1, survey_);
        while (query.step()) {
            packed_.texts.push_back({"rolls/" + std::to_string(query.number(0)) + ".json", query.text(1)});
            ++exported_.rolls;
        }
    }

    void questions() {
        if (!records_.has_table("question_entry")) {
            return;
        }
        const sync::SurveyQuestions questions{survey_, questions_of(records_, survey_)};
        if (!questions.questions.empty()) {
            packed_.texts.push_back({"questions.json", sync::write_questions(questions)});
        }
    }

    void marks() {
        if (!records_.has_table("layer_mark")) {
            return;
        }
        const sync::LayerMarks marks{survey_, marks_of(records_, survey_)};
        if (!marks.marks.empty()) {
            packed_.texts.push_back({"marks.json", sync::write_marks(marks)});
        }
    }

    void photo(const std::string& sha256) {
        Query query(records_, "SELECT bytes, received_at FROM photo WHERE sha256 = ?");
        query.bind(1, sha256);
        if (!query.step()) {
            return;  // it never came, or what looks like a digest is something else's
        }
        const auto file = kept_.photo_file(sha256, scratch_);
        const auto sum = sum_of(file);
        if (!sum || sum->sha256 != sha256) {
            exported_.flaws.push_back({Flaw::Of::photo, "", 0, sha256,
                                       sum ? "Its bytes aren’t the ones that were received." : sum.error().text});
            return;
        }
        std::string beginning(picture_signature, '\0');
        std::ifstream in(file, std::ios::binary);
        in.read(beginning.data(), static_cast<std::streamsize>(beginning.size()));
        beginning.resize(static_cast<std::size_t>(in.gcount()));
        packed_.photos.push_back({"photos/" + sha256 + std::string(picture_ending(beginning)), file, sum->bytes});
        photo_receipts_.push_back(Json{{"sha256", sha256}, {"bytes", sum->bytes}, {"received_at", query.text(1)}});
        ++exported_.photos;
    }

    KeptRecords& kept_;
    Records& records_;
    const std::string& survey_;
    Scratch& scratch_;
    SurveyToPack packed_;
    std::set<std::string> named_;
    Json revision_receipts_ = Json::array();
    Json photo_receipts_ = Json::array();
    Exported exported_;
};

}  // namespace

Result<Exported> export_survey(KeptRecords& kept, const std::string& survey, const fs::path& file) {
    return told<Exported>(file, [&]() -> Result<Exported> {
        Scratch scratch(file.parent_path());
        const Transaction at_one_moment(kept.records(), Transaction::Use::reading);
        return Packing(kept, survey, scratch).run(file);
    });
}

Result<Exported> export_visit(KeptRecords& kept, const std::string& survey, const fs::path& file) {
    return told<Exported>(file, [&]() -> Result<Exported> {
        Scratch scratch(file.parent_path());
        const Transaction at_one_moment(kept.records(), Transaction::Use::reading);
        Query query(kept.records(), "SELECT bytes FROM revision WHERE survey = ? ORDER BY revision DESC LIMIT 1");
        query.bind(1, survey);
        if (!query.step()) {
            return no_such(survey);
        }
        VisitToPack visit{query.text(0), {}, 0};
        const auto document = read_survey(visit.document);
        std::error_code error;
        if (!document || fs::symlink_status(file, error).type() != fs::file_type::not_found) {
            return document ? Error{ErrorCode::conflict, file.string(),
                                    "Something is there already. Name a file that isn’t there yet."}
                            : Error{ErrorCode::damaged, survey, "Its newest revision doesn’t read as a survey."};
        }
        for (const auto& sha256 : photos_mentioned(*document)) {
            visit.photos.push_back({sha256, kept.photo_file(sha256, scratch)});
        }
        const auto packed = write_visit_file(file, visit, {});
        if (!packed) {
            return packed.error();
        }
        return Exported{
            1, 0, static_cast<std::size_t>((*packed)->photos), static_cast<std::size_t>((*packed)->missing), {}};
    });
}

}  // namespace truehang::workroom
