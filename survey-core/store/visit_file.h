// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "store/store.h"

#include <cstddef>

// A visit as one file, to hand on or to keep: a zip (PKWARE APPNOTE 6.3) with `survey.json` and
// `photos/<sha256>.<ending>` for each photo that it mentions, and nothing else. `docs/visit-file.md`.

namespace truehang {

/// How a visit's file is called after its name.
inline constexpr std::string_view visit_file_ending = ".truehang.zip";

namespace visit_file_limits {
inline constexpr long long file_bytes = 2LL << 30;      ///< of the file, and of all that is packed in it
inline constexpr long long document_bytes = 4LL << 20;  ///< as `read_survey` has it
inline constexpr long long photo_bytes = 64LL << 20;    ///< of one photo
inline constexpr std::size_t photos = 5000;
}  // namespace visit_file_limits

/// Work that a person waits for. Both are called on the thread that works; either may be none.
struct LongWork {
    std::function<void(double)> on_progress;  ///< how much is done, rising from 0 to 1
    std::function<bool()> stopped;            ///< true: leave off
};

/// What goes into a visit's file.
struct VisitToPack {
    struct Photo {
        std::string sha256;
        std::filesystem::path file;
    };
    std::string document;  ///< as it would be sent
    std::vector<Photo> photos;
    int missing = 0;  ///< photos that the survey mentions and this device hasn't got
};

/// The visit as it stands, and where its photos lie. `missing`, `damaged`, `io` as `Store::visit`.
[[nodiscard]] Result<VisitToPack> visit_to_pack(Store& store, std::string_view visit_id);

/// What came to be in a visit's file.
struct PackedVisit {
    int photos = 0;
    int missing = 0;  ///< photos that the survey mentions and that aren't in it: not here, damaged, or no picture
};

/// Writes the visit's file beside its place, takes it to the disk and gives it its name; the same visit makes the same
/// bytes. Nothing where it was stopped. Stopped or failed, it leaves what stood there before. Errors: `full`, `io`, and
/// `out_of_range` for more than a file may hold.
[[nodiscard]] Result<std::optional<PackedVisit>> write_visit_file(const std::filesystem::path& file,
                                                                  const VisitToPack& visit, const LongWork& work);

/// A visit's file that was read and found sound; its photos stay in it until they are asked for.
class VisitFile {
public:
    struct Photo {
        std::string sha256;
        std::string media_type;
        std::size_t entry = 0;
        long long bytes = 0;
    };

    /// Reads and checks all of it: names, sizes, the survey, the sha256 of every photo. Nothing where it was stopped.
    /// Errors name the entry in `where` and in the sentence: `unreadable` for what isn't such a file or holds something
    /// else, `out_of_range` beyond the limits, `damaged` where bytes aren't what they should be, `missing`, `io`.
    [[nodiscard]] static Result<std::optional<VisitFile>> open(const std::filesystem::path& file, const LongWork& work);
    VisitFile(VisitFile&&) noexcept;
    VisitFile& operator=(VisitFile&&) noexcept;
    ~VisitFile();

    [[nodiscard]] const Survey& survey() const { return survey_; }
    /// The bytes of `survey.json`.
    [[nodiscard]] const std::string& document() const { return document_; }
    [[nodiscard]] const std::vector<Photo>& photos() const { return photos_; }
    /// How many photos the survey mentions that aren't in the file.
    [[nodiscard]] int missing() const { return missing_; }
    /// A photo's bytes, checked again.
    [[nodiscard]] Result<std::string> bytes_of(const Photo& photo) const;

private:
    struct Archive;
    friend class VisitFileCheck;
    VisitFile();

    std::unique_ptr<Archive> archive_;
    Survey survey_;
    std::string document_;
    std::vector<Photo> photos_;
    int missing_ = 0;
};

/// The sha256 of each photo that a survey mentions, of windows and of cloths, each once, in the survey's order.
[[nodiscard]] std::vector<std::string> photos_mentioned(const Survey& survey);

}  // namespace truehang
