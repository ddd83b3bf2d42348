// SPDX-License-Identifier: Apache-2.0
#include "workroom/keeping/verify.h"

#include "document/document.h"
#include "document/rolls_document.h"
#include "protocol/digest.h"
#include "protocol/marks.h"
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
    long long row = 0;
    std::string survey;
    long long revision = 0;
    std::string sha256, bytes;
};

struct PhotoRow {
    std::string sha256;
    long long bytes = 0;
};

std::optional<Document> document_after(SQLite::Database& records, long long row) {
    SQLite::Statement query(records,
                            "SELECT rowid, survey, revision, sha256, bytes FROM revision WHERE rowid > ? "
                            "ORDER BY rowid LIMIT 1");
    query.bind(1, static_cast<std::int64_t>(row));
    if (!query.executeStep()) {
        return std::nullopt;
    }
    return Document{query.getColumn(0).getInt64(), query.getColumn(1).getString(), query.getColumn(2).getInt64(),
                    query.getColumn(3).getString(), query.getColumn(4).getString()};
}

std::optional<PhotoRow> photo_after(SQLite::Database& records, const std::string& sha256) {
    SQLite::Statement query(records, "SELECT sha256, bytes FROM photo WHERE sha256 > ? ORDER BY sha256 LIMIT 1");
    query.bind(1, sha256);
    return query.executeStep() ? std::optional(PhotoRow{query.getColumn(0).getString(), query.getColumn(1).getInt64()})
                               : std::nullopt;
}

bool has_photo(SQLite::Database& records, const std::string& sha256) {
    SQLite::Statement query(records, "SELECT 1 FROM photo WHERE sha256 = ?");
    query.bind(1, sha256);
    return query.executeStep();
}

/// Whether rolls read with any revision of their survey: a cloth that a later one no longer has is no fault.
bool rolls_read(SQLite::Database& records, const std::string& survey, const std::string& bytes) {
    SQLite::Statement query(records, "SELECT bytes FROM revision WHERE survey = ? ORDER BY revision DESC");
    query.bind(1, survey);
    while (query.executeStep()) {
        const auto document = read_survey(query.getColumn(0).getString());
        if (document && read_rolls(bytes, *document)) {
            return true;
        }
    }
    return false;
}

class LookingThrough {
public:
    explicit LookingThrough(KeptFolder& folder) : folder_(folder) {}

    Looked run() {
        part(&LookingThrough::structure);
        part(&LookingThrough::documents);
        part(&LookingThrough::rolls);
        part(&LookingThrough::marks);
        part(&LookingThrough::photos);
        rules();
        part(&LookingThrough::loose_files);
        return std::move(looked_);
    }

private:
    /// A damaged record ends its part and is a flaw itself.
    void part(void (LookingThrough::*work)()) {
        try {
            (this->*work)();
        } catch (const SQLite::Exception& thrown) {
            flaw({Flaw::Of::records, "", 0, "", fmt::format("They can’t be read on: {}.", thrown.what())});
        }
    }

    void flaw(Flaw found) { looked_.flaws.push_back(std::move(found)); }

    void structure() {
        SQLite::Statement check(folder_.records(), "PRAGMA integrity_check");
        std::size_t found = 0;
        while (check.executeStep() && found < most_structure_flaws) {
            const auto text = check.getColumn(0).getString();
            if (text != "ok") {
                flaw({Flaw::Of::records, "", 0, "", text});
                ++found;
            }
        }
    }

    void documents() {
        long long row = 0;
        while (const auto document = document_after(folder_.records(), row)) {
            row = document->row;
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
        if (!folder_.has_table("rolls")) {
            return;
        }
        SQLite::Statement query(folder_.records(), "SELECT survey, version, bytes FROM rolls ORDER BY survey, version");
        while (query.executeStep()) {
            ++looked_.rolls;
            const auto survey = query.getColumn(0).getString();
            if (!rolls_read(folder_.records(), survey, query.getColumn(2).getString())) {
                flaw({Flaw::Of::rolls, survey, query.getColumn(1).getInt64(), "",
                      "They don’t read as rolls with any revision of their survey."});
            }
        }
    }

    /// Each is of a step that is known, with a digest where it is done.
    void marks() {
        if (!folder_.has_table("layer_mark")) {
            return;
        }
        SQLite::Statement query(
            folder_.records(),
            "SELECT survey, number, step, figures_sha256, done FROM layer_mark ORDER BY survey, number");
        while (query.executeStep()) {
            const auto digest = query.getColumn(3).getString();
            const bool done = query.getColumn(4).getInt() != 0;
            if (!sync::step_of(query.getColumn(2).getString()) ||
                (done ? !sync::sha256_from_hex(digest) : !digest.empty())) {
                flaw({Flaw::Of::mark, query.getColumn(0).getString(), query.getColumn(1).getInt64(), "",
                      "It isn’t of a step that is known, or the digest of its figures isn’t one."});
            }
        }
    }

    void photos() {
        std::string last;
        while (const auto photo = photo_after(folder_.records(), last)) {
            last = photo->sha256;
            ++looked_.photos;
            looked_.photo_bytes += photo->bytes;
            auto why = why_not_whole(*photo);
            if (!why.empty() && has_photo(folder_.records(), photo->sha256)) {
                flaw({Flaw::Of::photo, "", 0, photo->sha256, std::move(why)});
            }
        }
    }

    [[nodiscard]] std::string why_not_whole(const PhotoRow& photo) const {
        const auto sum = sum_of(folder_.photo_file(photo.sha256));
        if (!sum) {
            return sum.error().text;
        }
        if (sum->bytes != photo.bytes) {
            return fmt::format("It is {} bytes long; {} were received.", sum->bytes, photo.bytes);
        }
        return sum->sha256 == photo.sha256 ? "" : "Its bytes aren’t the ones that were received.";
    }

    void rules() {
        const RulesShelf shelf(folder_.rules_folder());
        const auto versions = shelf.versions().value();
        for (const long long version : versions) {
            ++looked_.rules;
            if (const auto document = shelf.version(version); !document) {
                flaw({Flaw::Of::rules, "", version, "", document.error().text});
            }
        }
    }

    void loose_files() {
        std::error_code error;
        fs::recursive_directory_iterator at(folder_.folder() / "photos", error);
        for (; !error && at != fs::recursive_directory_iterator(); at.increment(error)) {
            const auto& file = at->path();
            if (at->is_directory()) {
                continue;
            }
            const auto name = file.filename().string();
            if (is_photo_name(file) && is_erased_photo(name)) {
                flaw({Flaw::Of::photo, "", 0, name, "It was erased, but its file is there: erase its survey again."});
            } else if (!is_photo_name(file) || !has_photo(folder_.records(), name)) {
                looked_.loose.push_back(file.string());
            }
        }
        std::sort(looked_.loose.begin(), looked_.loose.end());
    }

    bool is_erased_photo(const std::string& sha256) {
        if (!folder_.has_table("erased_photo")) {
            return false;
        }
        SQLite::Statement query(folder_.records(), "SELECT 1 FROM erased_photo WHERE sha256 = ?");
        query.bind(1, sha256);
        return query.executeStep();
    }

    KeptFolder& folder_;
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
        case Flaw::Of::rules:
            return fmt::format("version {} of the house rules", flaw.number);
        case Flaw::Of::records:
            break;
    }
    return records_name;
}

Result<Looked> look_through(KeptFolder& folder) {
    return told<Looked>(folder.folder(), [&]() -> Result<Looked> { return LookingThrough(folder).run(); });
}

std::string amounts(const Looked& looked) {
    return fmt::format("{} documents, {} photos ({:.1f} MB), {} versions of rolls, {} of house rules", looked.documents,
                       looked.photos, static_cast<double>(looked.photo_bytes) / 1e6, looked.rolls, looked.rules);
}

}  // namespace truehang::workroom
