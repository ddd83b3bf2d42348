// SPDX-License-Identifier: Apache-2.0
#include "workroom/archive/archive.h"

#include "workroom/archive/erasure.h"
#include "workroom/archive/lineage.h"
#include "workroom/archive/photo_pieces.h"
#include "workroom/records/postgres_records.h"

namespace truehang::workroom {

using sync::PhotoReceipt;
using sync::SurveyReceipt;

namespace {

constexpr const char* receipt_columns = "survey, revision, sha256, received_at";

SurveyReceipt receipt_of(Query& row) { return {row.text(0), row.number(1), row.text(2), row.text(3)}; }

KeptDocument document_of(Query& row) { return {receipt_of(row), row.text(4)}; }

std::optional<SurveyReceipt> find_revision(Records& records, const ReceivedRevision& received) {
    Query query(records, std::string("SELECT ") + receipt_columns + " FROM revision WHERE survey = ? AND revision = ?");
    query.bind(1, received.survey);
    query.bind(2, static_cast<std::int64_t>(received.revision));
    return query.step() ? std::optional(receipt_of(query)) : std::nullopt;
}

std::optional<PhotoReceipt> find_photo(Records& records, const std::string& sha256) {
    Query query(records, "SELECT sha256, bytes, received_at FROM photo WHERE sha256 = ?");
    query.bind(1, sha256);
    if (!query.step()) {
        return std::nullopt;
    }
    return PhotoReceipt{query.text(0), query.number(1), query.text(2)};
}

Result<Kept<SurveyReceipt>> insert_revision(Records& records, const ReceivedRevision& received,
                                            const std::string& now) {
    if (const auto there = find_revision(records, received)) {
        if (there->sha256 == received.sha256) {
            return Kept<SurveyReceipt>{*there, true};
        }
        return Error{ErrorCode::conflict, "/revision",
                     "This revision is here already with other content. Send it under a new revision."};
    }
    if (is_erased(records, received.survey)) {
        return erased_error("This survey");
    }
    if (received.parents && is_stale(records, received.survey, received.revision, *received.parents)) {
        return Error{ErrorCode::conflict, "/parents",
                     "It was made from something older than what is here. Put both together, and send that."};
    }
    take_photos_again(records, received.bytes);
    Query insert(records,
                 "INSERT INTO revision(survey, revision, sha256, received_at, device, bytes) "
                 "VALUES(?, ?, ?, ?, ?, ?)");
    insert.bind(1, received.survey);
    insert.bind(2, static_cast<std::int64_t>(received.revision));
    insert.bind(3, received.sha256);
    insert.bind(4, now);
    insert.bind(5, received.device);
    insert.bind_bytes(6, received.bytes);
    insert.exec();
    const SurveyReceipt receipt{received.survey, received.revision, received.sha256, now};
    note_revision(records, receipt, received.head);
    return Kept<SurveyReceipt>{receipt, false};
}

/// A photo’s file goes once what became of it is known: its bytes are in the records, or will come again.
Archive::Then<Kept<PhotoReceipt>> and_away_with(std::filesystem::path file, Archive::Then<Kept<PhotoReceipt>> then) {
    return [file = std::move(file), then = std::move(then)](Result<Kept<PhotoReceipt>> kept) {
        std::error_code ignored;
        std::filesystem::remove(file, ignored);
        then(std::move(kept));
    };
}

}  // namespace

Archive::Archive(std::filesystem::path folder, Clock clock, std::unique_ptr<Database> database)
    : folder_(std::move(folder)), clock_(std::move(clock)), database_(std::move(database)) {}

Result<std::unique_ptr<Archive>> Archive::open(const std::filesystem::path& folder, Clock clock,
                                               std::string_view database_url) {
    std::error_code error;
    for (const auto* part : {"incoming", "photos", "uploads"}) {
        std::filesystem::create_directories(folder / part, error);
        if (error) {
            return Error{ErrorCode::io, folder.string(), "The folder can’t be made: " + error.message() + "."};
        }
    }
    std::filesystem::permissions(folder, std::filesystem::perms::owner_all, error);
    auto database = database_url.empty() ? Database::open(folder / "workroom.sqlite")
                                         : Database::open(std::make_unique<PostgresEngine>(std::string(database_url)));
    if (!database) {
        return database.error();
    }
    if (const auto made = make_missing_heads(**database); !made) {
        return made.error();
    }
    return std::unique_ptr<Archive>(new Archive(folder, std::move(clock), std::move(database).value()));
}

void Archive::clear_incoming() const {
    std::error_code ignored;
    for (const auto& entry : std::filesystem::directory_iterator(incoming_folder(), ignored)) {
        std::filesystem::remove(entry.path(), ignored);
    }
    if (database_->hold_photos()) {  // what stands there was on its way into the records
        for (const auto& entry : std::filesystem::directory_iterator(folder_ / "photos", ignored)) {
            std::filesystem::remove_all(entry.path(), ignored);
        }
    }
}

std::filesystem::path Archive::photo_file(std::string_view sha256) const {
    return folder_ / "photos" / sha256.substr(0, 2) / sha256;
}

void Archive::keep_revision(ReceivedRevision received, Then<Kept<SurveyReceipt>> then) {
    auto now = sync::write_time(clock_());
    database_->write<Kept<SurveyReceipt>>([received = std::move(received), now = std::move(now)](
                                              Records& records) { return insert_revision(records, received, now); },
                                          std::move(then));
}

void Archive::keep_photo(std::string sha256, long long bytes, std::string device, Then<Kept<PhotoReceipt>> then) {
    const PhotoReceipt receipt{std::move(sha256), bytes, sync::write_time(clock_())};
    database_->write<Kept<PhotoReceipt>>(
        [receipt, device = std::move(device),
         file = photo_file(receipt.sha256)](Records& records) -> Result<Kept<PhotoReceipt>> {
            if (const auto there = find_photo(records, receipt.sha256)) {
                return Kept<PhotoReceipt>{*there, true};
            }
            if (auto why_not = why_not_record(records, receipt.sha256, file)) {
                return std::move(*why_not);
            }
            Query insert(records, "INSERT INTO photo(sha256, bytes, received_at, device) VALUES(?, ?, ?, ?)");
            insert.bind(1, receipt.sha256);
            insert.bind(2, receipt.bytes);
            insert.bind(3, receipt.received_at);
            insert.bind(4, device);
            insert.exec();
            if (records.hold_photos()) {
                if (auto put = put_pieces(records, receipt.sha256, file); !put) {
                    return put.error();
                }
            }
            return Kept<PhotoReceipt>{receipt, false};
        },
        database_->hold_photos() ? and_away_with(photo_file(receipt.sha256), std::move(then)) : std::move(then));
}

/// A commit whose wait was broken off (a primary that started anew) is seen before it is on the standby; the next
/// commit waits for it too.
Result<Done> Archive::confirm() { return database_->hold_photos() ? database_->try_writing() : Result<Done>(Done{}); }

Result<std::vector<SurveyReceipt>> Archive::receipts(std::string_view survey) {
    return database_->read<std::vector<SurveyReceipt>>(
        [survey = std::string(survey)](Records& records) -> Result<std::vector<SurveyReceipt>> {
            Query query(records,
                        std::string("SELECT ") + receipt_columns + " FROM revision WHERE survey = ? ORDER BY revision");
            query.bind(1, survey);
            std::vector<SurveyReceipt> receipts;
            while (query.step()) {
                receipts.push_back(receipt_of(query));
            }
            return receipts;
        });
}

Result<std::optional<KeptDocument>> Archive::newest(std::string_view survey) {
    return database_->read<std::optional<KeptDocument>>(
        [survey = std::string(survey)](Records& records) -> Result<std::optional<KeptDocument>> {
            Query query(records, std::string("SELECT ") + receipt_columns +
                                     ", bytes FROM revision WHERE survey = ? ORDER BY revision DESC LIMIT 1");
            query.bind(1, survey);
            return query.step() ? std::optional(document_of(query)) : std::nullopt;
        });
}

Result<std::optional<KeptDocument>> Archive::revision(std::string_view survey, long long number) {
    return database_->read<std::optional<KeptDocument>>(
        [survey = std::string(survey), number](Records& records) -> Result<std::optional<KeptDocument>> {
            Query query(records, std::string("SELECT ") + receipt_columns +
                                     ", bytes FROM revision WHERE survey = ? AND revision = ?");
            query.bind(1, survey);
            query.bind(2, static_cast<std::int64_t>(number));
            return query.step() ? std::optional(document_of(query)) : std::nullopt;
        });
}

Result<std::optional<PhotoReceipt>> Archive::photo(std::string_view sha256) {
    return database_->read<std::optional<PhotoReceipt>>(
        [sha256 = std::string(sha256)](Records& records) -> Result<std::optional<PhotoReceipt>> {
            return find_photo(records, sha256);
        });
}

}  // namespace truehang::workroom
