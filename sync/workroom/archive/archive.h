// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "protocol/records.h"
#include "protocol/time_text.h"
#include "units/result.h"
#include "workroom/archive/database.h"
#include "workroom/archive/heads.h"

#include <filesystem>
#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace truehang::workroom {

/// One survey revision as it came in.
struct ReceivedRevision {
    std::string survey;
    long long revision = 0;
    std::string bytes;
    std::string sha256;
    std::string device;                                 ///< id of the device that sent it
    HeadText head;                                      ///< of the document in `bytes`
    std::optional<std::vector<std::string>> parents{};  ///< as the document tells them; none: it doesn’t
};

/// A receipt, and whether it was there before this call.
template <class Receipt>
struct Kept {
    Receipt receipt;
    bool was_there = false;
};

/// A document as it is kept.
struct KeptDocument {
    sync::SurveyReceipt receipt;
    std::string bytes;
};

/// What the workroom has received: documents as the exact bytes that came, in the records, and photos as files
/// named by their digest or in the records too. Nothing is ever replaced.
class Archive {
public:
    using Clock = std::function<sync::Time()>;
    template <class T>
    using Then = std::function<void(Result<T>)>;

    /// Opens or makes the folder, with the records in it unless `database_url` names the PostgreSQL database that holds
    /// them. Errors as `Database::open`, and `io` where the folder can't be made.
    [[nodiscard]] static Result<std::unique_ptr<Archive>> open(const std::filesystem::path& folder, Clock clock,
                                                               std::string_view database_url = {});

    /// Keeps a revision; `then` is called when it is on the disk. `conflict` where that revision is there with other
    /// bytes, or the document tells its parents and what is newest here isn’t among them (`lineage.h`).
    void keep_revision(ReceivedRevision received, Then<Kept<sync::SurveyReceipt>> then);

    /// Records a photo whose file stands in its place already (`PhotoIntake`).
    void keep_photo(std::string sha256, long long bytes, std::string device, Then<Kept<sync::PhotoReceipt>> then);

    /// Receipts of one survey, revisions rising; empty where there is none.
    [[nodiscard]] Result<std::vector<sync::SurveyReceipt>> receipts(std::string_view survey);
    /// The newest revision of one survey, or nothing.
    [[nodiscard]] Result<std::optional<KeptDocument>> newest(std::string_view survey);
    [[nodiscard]] Result<std::optional<KeptDocument>> revision(std::string_view survey, long long number);
    [[nodiscard]] Result<std::optional<sync::PhotoReceipt>> photo(std::string_view sha256);

    /// To be asked before what was only read is told as received: where a commit waits for other machines' disks too,
    /// all that could be read is on them when this returns. Else it costs nothing.
    [[nodiscard]] Result<Done> confirm();

    /// Where a photo's bytes lie, or would; where the records hold them, until they do.
    [[nodiscard]] std::filesystem::path photo_file(std::string_view sha256) const;
    /// Where the workroom's house rules lie.
    [[nodiscard]] std::filesystem::path rules_folder() const { return folder_ / "rules"; }
    /// Where bytes wait whose digest isn't known yet; emptied when the archive is opened to receive.
    [[nodiscard]] std::filesystem::path incoming_folder() const { return folder_ / "incoming"; }
    void clear_incoming() const;
    /// Where photos lie that came in part (`UploadShelf`).
    [[nodiscard]] std::filesystem::path uploads_folder() const { return folder_ / "uploads"; }

    /// Writes what is queued and ends the writing; nothing may be asked of the archive afterwards.
    void close() { database_.reset(); }

    [[nodiscard]] Database& database() { return *database_; }
    [[nodiscard]] const Clock& clock() const { return clock_; }

private:
    Archive(std::filesystem::path folder, Clock clock, std::unique_ptr<Database> database);

    std::filesystem::path folder_;
    Clock clock_;
    std::unique_ptr<Database> database_;
};

}  // namespace truehang::workroom
