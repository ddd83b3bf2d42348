// SPDX-License-Identifier: Apache-2.0
#include "workroom/keeping/erase.h"

#include "protocol/sheet_code.h"
#include "workroom/archive/archive.h"
#include "workroom/archive/changes.h"
#include "workroom/archive/disk.h"
#include "workroom/archive/erasure.h"
#include "workroom/archive/upload_shelf.h"
#include "workroom/keeping/kept_folder.h"

#include <fcntl.h>
#include <fmt/format.h>
#include <sys/file.h>
#include <unistd.h>

#include <set>

namespace truehang::workroom {

namespace fs = std::filesystem;

namespace {

constexpr std::chrono::seconds patience{30};

long long count_of(Records& records, const std::string& table, const std::string& survey) {
    Query count(records, "SELECT count(*) FROM " + quoted_name(table) + " WHERE survey = ?");
    count.bind(1, survey);
    count.step();
    return count.number(0);
}

/// Takes away photos that a receiver which died left half received, where none serves the folder now: one that starts
/// does it itself.
void clear_incoming(const Archive& archive, const fs::path& folder) {
    const int mark = ::open((folder / "serving").c_str(), O_RDWR | O_CREAT | O_CLOEXEC, 0600);
    if (mark >= 0 && ::flock(mark, LOCK_EX | LOCK_NB) == 0) {
        archive.clear_incoming();
    }
    if (mark >= 0) {
        ::close(mark);
    }
}

/// One survey's erasure on a connection of its own.
class Eraser {
public:
    Eraser(fs::path folder, Records& records, const Erasing& erasing)
        : folder_(std::move(folder)), records_(records), erasing_(erasing) {}

    Result<ErasedCounts> run() {
        // What others name takes long to read: that is done before anybody is held up.
        long long seen = 0;
        static_cast<void>(own_photos());
        spare_named_by_others(seen);
        {
            Transaction all(records_, Transaction::Use::writing);
            counts_.before = is_erased(records_, erasing_.survey);
            if (!counts_.before && count_of(records_, "revision", erasing_.survey) == 0) {
                return Error{ErrorCode::missing, erasing_.survey, "No such survey is here. Nothing was erased."};
            }
            if (own_photos()) {
                seen = 0;  // a revision that names more photos came meanwhile
            }
            spare_named_by_others(seen);
            take_rows();
            all.commit();
        }
        try {
            take_files();
            return overwrite();
        } catch (const std::exception&) {
            return unfinished(error_under_way(folder_));
        }
    }

private:
    /// True where it names photos that weren’t looked at before.
    bool own_photos() {
        bool more = false;
        Query query(records_, "SELECT bytes FROM revision WHERE survey = ?");
        query.bind(1, erasing_.survey);
        while (query.step()) {
            for (auto& digest : digests_in(query.text(0))) {
                if (!spared_.contains(digest)) {
                    more = photos_.insert(std::move(digest)).second || more;
                }
            }
        }
        return more;
    }

    /// Of what came after `seen`, in pieces: all documents may be more than memory holds.
    void spare_named_by_others(long long& seen) {
        Query query(records_,
                    "SELECT at, bytes FROM change JOIN revision USING (survey, revision) WHERE at > ? AND survey <> ?"
                    " ORDER BY at LIMIT 64");
        bool more = true;
        while (!photos_.empty() && more) {
            more = false;
            query.reset();
            query.bind(1, seen);
            query.bind(2, erasing_.survey);
            while (!photos_.empty() && query.step()) {
                more = true;
                seen = query.number(0);
                spare(digests_in(query.text(1)));
            }
        }
    }

    void spare(const std::vector<std::string>& digests) {
        for (const auto& digest : digests) {
            if (photos_.erase(digest) > 0) {
                spared_.insert(digest);
            }
        }
    }

    /// So that the code on a printed sheet still says that its survey was erased.
    void note_sheets() {
        Query sheets(records_, fmt::format("INSERT INTO erased_sheet(digest_start, erased_with) SELECT DISTINCT"
                                           " substr(sha256, 1, {}), survey FROM revision WHERE survey = ?"
                                           " ON CONFLICT(digest_start) DO NOTHING",
                                           sync::sheet_code_digits));
        sheets.bind(1, erasing_.survey);
        sheets.exec();
    }

    void take_rows() {
        counts_.revisions = count_of(records_, "revision", erasing_.survey);
        counts_.rolls = count_of(records_, "rolls", erasing_.survey);
        note_sheets();
        for (const auto& table : records_.tables_with("survey")) {
            if (table != "erased") {
                Query gone(records_, "DELETE FROM " + quoted_name(table) + " WHERE survey = ?");
                gone.bind(1, erasing_.survey);
                gone.exec();
            }
        }
        for (const auto& photo : photos_) {
            Query gone(records_, "DELETE FROM photo WHERE sha256 = ?");
            gone.bind(1, photo);
            counts_.photos += gone.exec();
            Query mark(records_,
                       "INSERT INTO erased_photo(sha256, erased_with) VALUES(?, ?)"
                       " ON CONFLICT(sha256) DO UPDATE SET erased_with = excluded.erased_with");
            mark.bind(1, photo);
            mark.bind(2, erasing_.survey);
            mark.exec();
            if (records_.hold_photos()) {
                Query pieces(records_, "DELETE FROM photo_piece WHERE sha256 = ?");
                pieces.bind(1, photo);
                pieces.exec();
            }
        }
        Query mark(records_,
                   "INSERT INTO erased(survey, erased_at, erased_by, revisions, rolls, photos) "
                   "VALUES(?, ?, ?, ?, ?, ?) ON CONFLICT(survey) DO NOTHING");
        mark.bind(1, erasing_.survey);
        mark.bind(2, sync::write_time(erasing_.now));
        mark.bind(3, erasing_.by);
        mark.bind(4, static_cast<std::int64_t>(counts_.revisions));
        mark.bind(5, static_cast<std::int64_t>(counts_.rolls));
        mark.bind(6, static_cast<std::int64_t>(counts_.photos));
        mark.exec();
        note_erasure(records_, erasing_.survey);
    }

    /// With the records locked: nobody can record a photo whose file goes here.
    void take_files() {
        Transaction lock(records_, Transaction::Use::writing);
        Query query(records_,
                    "SELECT sha256 FROM erased_photo WHERE erased_with = ? AND NOT EXISTS (SELECT 1 FROM "
                    "photo WHERE photo.sha256 = erased_photo.sha256)");
        query.bind(1, erasing_.survey);
        while (query.step()) {
            const auto sha256 = query.text(0);
            const auto file = folder_ / "photos" / sha256.substr(0, 2) / sha256;
            const bool gone = remove_uploads_of(folder_ / "uploads", sha256);
            if ((fs::remove(file) && !sync_folder(file.parent_path())) || !gone) {
                throw fs::filesystem_error("", file, std::error_code(errno, std::system_category()));
            }
        }
    }

    /// What was freed may still stand in the files of the records, and what was changed in their log.
    Result<ErasedCounts> overwrite() {
        return records_.overwrite_freed()
                   ? Result<ErasedCounts>(counts_)
                   : unfinished({ErrorCode::busy, folder_.string(), "Somebody reads the records all the time."});
    }

    [[nodiscard]] Error unfinished(Error error) const {
        error.text = fmt::format(
            "The survey is gone from the records, but its traces in the files aren’t all overwritten: {} Run the same "
            "command again.",
            error.text);
        return error;
    }

    fs::path folder_;
    Records& records_;
    const Erasing& erasing_;
    std::set<std::string> photos_;  ///< digests that only this survey names
    std::set<std::string> spared_;
    ErasedCounts counts_;
};

}  // namespace

Result<ErasedCounts> erase_survey(const KeptAt& kept, const Erasing& erasing) {
    const fs::path folder = kept.data;
    if (kept.database.empty()) {
        if (const auto there = KeptFolder::open(folder); !there) {
            return there.error();
        }
    }
    {
        const auto brought_forward = Archive::open(
            folder, [&erasing] { return erasing.now; }, kept.database);
        if (!brought_forward) {
            return brought_forward.error();
        }
        clear_incoming(**brought_forward, folder);
    }
    return told<ErasedCounts>(folder, [&]() -> Result<ErasedCounts> {
        const auto records = engine_of(kept, patience)->connect_to_write();
        return Eraser(folder, *records, erasing).run();
    });
}

}  // namespace truehang::workroom
