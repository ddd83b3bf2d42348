// SPDX-License-Identifier: Apache-2.0
#include "workroom/archive/archive.h"

#include "workroom/archive/erasure.h"

namespace truehang::workroom {

using sync::PhotoReceipt;
using sync::SurveyReceipt;

namespace {

constexpr const char* receipt_columns = "survey, revision, sha256, received_at";

SurveyReceipt receipt_of(SQLite::Statement& row) {
    return {row.getColumn(0).getString(), row.getColumn(1).getInt64(), row.getColumn(2).getString(),
            row.getColumn(3).getString()};
}

KeptDocument document_of(SQLite::Statement& row) { return {receipt_of(row), row.getColumn(4).getString()}; }

std::optional<SurveyReceipt> find_revision(SQLite::Database& database, const ReceivedRevision& received) {
    SQLite::Statement query(
        database, std::string("SELECT ") + receipt_columns + " FROM revision WHERE survey = ? AND revision = ?");
    query.bind(1, received.survey);
    query.bind(2, static_cast<std::int64_t>(received.revision));
    return query.executeStep() ? std::optional(receipt_of(query)) : std::nullopt;
}

std::optional<PhotoReceipt> find_photo(SQLite::Database& database, const std::string& sha256) {
    SQLite::Statement query(database, "SELECT sha256, bytes, received_at FROM photo WHERE sha256 = ?");
    query.bind(1, sha256);
    if (!query.executeStep()) {
        return std::nullopt;
    }
    return PhotoReceipt{query.getColumn(0).getString(), query.getColumn(1).getInt64(), query.getColumn(2).getString()};
}

Result<Kept<SurveyReceipt>> insert_revision(SQLite::Database& database, const ReceivedRevision& received,
                                            const std::string& now) {
    if (const auto there = find_revision(database, received)) {
        if (there->sha256 == received.sha256) {
            return Kept<SurveyReceipt>{*there, true};
        }
        return Error{ErrorCode::conflict, "/revision",
                     "This revision is here already with other content. Send it under a new revision."};
    }
    if (is_erased(database, received.survey)) {
        return erased_error("This survey");
    }
    take_photos_again(database, received.bytes);
    SQLite::Statement insert(database,
                             "INSERT INTO revision(survey, revision, sha256, received_at, device, bytes) "
                             "VALUES(?, ?, ?, ?, ?, ?)");
    insert.bind(1, received.survey);
    insert.bind(2, static_cast<std::int64_t>(received.revision));
    insert.bind(3, received.sha256);
    insert.bind(4, now);
    insert.bind(5, received.device);
    insert.bind(6, received.bytes.data(), static_cast<int>(received.bytes.size()));
    insert.exec();
    const SurveyReceipt receipt{received.survey, received.revision, received.sha256, now};
    note_revision(database, receipt, received.head);
    return Kept<SurveyReceipt>{receipt, false};
}

}  // namespace

Archive::Archive(std::filesystem::path folder, Clock clock, std::unique_ptr<Database> database)
    : folder_(std::move(folder)), clock_(std::move(clock)), database_(std::move(database)) {}

Result<std::unique_ptr<Archive>> Archive::open(const std::filesystem::path& folder, Clock clock) {
    std::error_code error;
    for (const auto* part : {"incoming", "photos"}) {
        std::filesystem::create_directories(folder / part, error);
        if (error) {
            return Error{ErrorCode::io, folder.string(), "The folder can’t be made: " + error.message() + "."};
        }
    }
    std::filesystem::permissions(folder, std::filesystem::perms::owner_all, error);
    auto database = Database::open(folder / "workroom.sqlite");
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
}

std::filesystem::path Archive::photo_file(std::string_view sha256) const {
    return folder_ / "photos" / sha256.substr(0, 2) / sha256;
}

void Archive::keep_revision(ReceivedRevision received, Then<Kept<SurveyReceipt>> then) {
    auto now = sync::write_time(clock_());
    database_->write<Kept<SurveyReceipt>>(
        [received = std::move(received), now = std::move(now)](SQLite::Database& database) {
            return insert_revision(database, received, now);
        },
        std::move(then));
}

void Archive::keep_photo(std::string sha256, long long bytes, std::string device, Then<Kept<PhotoReceipt>> then) {
    const PhotoReceipt receipt{std::move(sha256), bytes, sync::write_time(clock_())};
    database_->write<Kept<PhotoReceipt>>(
        [receipt, device = std::move(device),
         file = photo_file(receipt.sha256)](SQLite::Database& database) -> Result<Kept<PhotoReceipt>> {
            if (const auto there = find_photo(database, receipt.sha256)) {
                return Kept<PhotoReceipt>{*there, true};
            }
            if (auto why_not = why_not_record(database, receipt.sha256, file)) {
                return std::move(*why_not);
            }
            SQLite::Statement insert(database,
                                     "INSERT INTO photo(sha256, bytes, received_at, device) VALUES(?, ?, ?, ?)");
            insert.bind(1, receipt.sha256);
            insert.bind(2, static_cast<std::int64_t>(receipt.bytes));
            insert.bind(3, receipt.received_at);
            insert.bind(4, device);
            insert.exec();
            return Kept<PhotoReceipt>{receipt, false};
        },
        std::move(then));
}

Result<std::vector<SurveyReceipt>> Archive::receipts(std::string_view survey) {
    return database_->read<std::vector<SurveyReceipt>>(
        [survey = std::string(survey)](SQLite::Database& database) -> Result<std::vector<SurveyReceipt>> {
            SQLite::Statement query(database, std::string("SELECT ") + receipt_columns +
                                                  " FROM revision WHERE survey = ? ORDER BY revision");
            query.bind(1, survey);
            std::vector<SurveyReceipt> receipts;
            while (query.executeStep()) {
                receipts.push_back(receipt_of(query));
            }
            return receipts;
        });
}

Result<std::optional<KeptDocument>> Archive::newest(std::string_view survey) {
    return database_->read<std::optional<KeptDocument>>(
        [survey = std::string(survey)](SQLite::Database& database) -> Result<std::optional<KeptDocument>> {
            SQLite::Statement query(database,
                                    std::string("SELECT ") + receipt_columns +
                                        ", bytes FROM revision WHERE survey = ? ORDER BY revision DESC LIMIT 1");
            query.bind(1, survey);
            return query.executeStep() ? std::optional(document_of(query)) : std::nullopt;
        });
}

Result<std::optional<KeptDocument>> Archive::revision(std::string_view survey, long long number) {
    return database_->read<std::optional<KeptDocument>>(
        [survey = std::string(survey), number](SQLite::Database& database) -> Result<std::optional<KeptDocument>> {
            SQLite::Statement query(database, std::string("SELECT ") + receipt_columns +
                                                  ", bytes FROM revision WHERE survey = ? AND revision = ?");
            query.bind(1, survey);
            query.bind(2, static_cast<std::int64_t>(number));
            return query.executeStep() ? std::optional(document_of(query)) : std::nullopt;
        });
}

Result<std::optional<PhotoReceipt>> Archive::photo(std::string_view sha256) {
    return database_->read<std::optional<PhotoReceipt>>(
        [sha256 = std::string(sha256)](SQLite::Database& database) -> Result<std::optional<PhotoReceipt>> {
            return find_photo(database, sha256);
        });
}

}  // namespace truehang::workroom
