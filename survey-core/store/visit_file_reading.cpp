// SPDX-License-Identifier: Apache-2.0
#include "store/failures.h"
#include "store/photo_folder.h"
#include "store/picture_kind.h"
#include "store/sha256.h"
#include "store/visit_file.h"

#include "document/document.h"

#include <fmt/format.h>
#include <zip.h>

#include <algorithm>
#include <array>
#include <set>

namespace truehang {

namespace fs = std::filesystem;
namespace limits = visit_file_limits;

struct VisitFile::Archive {
    struct Discard {
        void operator()(zip_t* archive) const { zip_discard(archive); }
    };
    std::unique_ptr<zip_t, Discard> open;
};

namespace {

constexpr std::string_view document_name = "survey.json";
constexpr std::string_view photo_folder_name = "photos/";
constexpr std::size_t digest_length = 64;
constexpr std::size_t longest_shown = 90;

/// A name as it can be shown: what isn't plain ASCII as a question mark, not too long.
std::string shown_name(std::string_view name) {
    std::string shown(name.substr(0, longest_shown));
    std::replace_if(
        shown.begin(), shown.end(), [](char c) { return c < ' ' || c > '~'; }, '?');
    return shown.empty() ? "(an entry without a name)" : shown;
}

Failure refusal(ErrorCode code, std::string_view entry, std::string_view why) {
    return {{code, std::string(entry), fmt::format("{}: {} Nothing was taken in.", shown_name(entry), why)}};
}

Failure no_visit_file(const fs::path& file) {
    return {{ErrorCode::unreadable, file.string(),
             "This isn’t a visit’s file, or it didn’t come whole: ask for it again. Nothing was taken in."}};
}

using OpenZip = std::unique_ptr<zip_t, decltype(&zip_discard)>;

/// The strict opening refuses a name that stands twice without saying which: looked for here.
void refuse_what_is_there_twice(const fs::path& file) {
    const OpenZip archive(zip_open(file.c_str(), ZIP_RDONLY, nullptr), &zip_discard);
    std::set<std::string> names;
    const zip_int64_t entries = archive ? zip_get_num_entries(archive.get(), 0) : 0;
    for (zip_int64_t entry = 0; entry < entries; ++entry) {
        const char* const name = zip_get_name(archive.get(), static_cast<zip_uint64_t>(entry), ZIP_FL_ENC_RAW);
        if (name && !names.insert(name).second) {
            throw refusal(ErrorCode::unreadable, name, "it is in the file twice.");
        }
    }
}

OpenZip opened(const fs::path& file) {
    std::error_code code;
    const auto size = fs::file_size(file, code);
    if (code) {
        throw Failure{error_of(code, file)};
    }
    if (size > static_cast<std::uintmax_t>(limits::file_bytes)) {
        throw Failure{{ErrorCode::out_of_range, file.string(),
                       "This file is larger than a visit’s file can be. Nothing was taken in."}};
    }
    OpenZip archive(zip_open(file.c_str(), ZIP_RDONLY | ZIP_CHECKCONS, nullptr), &zip_discard);
    if (!archive) {
        refuse_what_is_there_twice(file);
        throw no_visit_file(file);
    }
    return archive;
}

/// What the archive says of one entry, within the limits.
struct Listed {
    std::string name;
    long long bytes = 0;
};

Listed listed(zip_t* archive, std::size_t entry, const fs::path& file) {
    zip_stat_t about;
    zip_stat_init(&about);
    constexpr zip_uint64_t needed = ZIP_STAT_NAME | ZIP_STAT_SIZE | ZIP_STAT_COMP_METHOD | ZIP_STAT_ENCRYPTION_METHOD;
    if (zip_stat_index(archive, entry, ZIP_FL_ENC_RAW, &about) != 0 || (about.valid & needed) != needed) {
        throw no_visit_file(file);
    }
    Listed found{about.name, static_cast<long long>(about.size)};
    if (about.encryption_method != ZIP_EM_NONE) {
        throw refusal(ErrorCode::unreadable, found.name, "it is locked with a password: ask for an open file.");
    }
    if (about.comp_method != ZIP_CM_STORE && about.comp_method != ZIP_CM_DEFLATE) {
        throw refusal(ErrorCode::unreadable, found.name, "it is packed in a way that isn’t understood here.");
    }
    const long long most = found.name == document_name ? limits::document_bytes : limits::photo_bytes;
    if (found.bytes < 0 || found.bytes > most) {
        throw refusal(ErrorCode::out_of_range, found.name, "it is larger than it may be.");
    }
    return found;
}

/// The digest and ending in `photos/<sha256>.<ending>`, or a refusal.
std::pair<std::string, std::string> photo_named(const std::string& name) {
    if (name.starts_with(photo_folder_name) && name.size() > photo_folder_name.size() + digest_length) {
        std::string digest = name.substr(photo_folder_name.size(), digest_length);
        std::string ending = name.substr(photo_folder_name.size() + digest_length);
        constexpr std::array<std::string_view, 5> endings{".jpg", ".png", ".webp", ".heic", ".avif"};
        if (is_sha256_hex(digest) && std::find(endings.begin(), endings.end(), ending) != endings.end()) {
            return {std::move(digest), std::move(ending)};
        }
    }
    throw refusal(ErrorCode::unreadable, name, "this doesn’t belong in a visit’s file.");
}

/// Hands an entry's bytes on in pieces, exactly as many as were said; false from `take` leaves off.
void unpack(zip_t* archive, std::size_t entry, const Listed& about, const std::function<bool(std::string_view)>& take) {
    const std::unique_ptr<zip_file_t, int (*)(zip_file_t*)> open(zip_fopen_index(archive, entry, 0), &zip_fclose);
    std::array<char, 1U << 16U> piece{};
    long long done = 0;
    zip_int64_t read = open ? 1 : -1;
    while (read > 0 && done <= about.bytes) {
        read = zip_fread(open.get(), piece.data(), piece.size());
        done += std::max(read, zip_int64_t{0});
        if (read > 0 && !take({piece.data(), static_cast<std::size_t>(read)})) {
            return;
        }
    }
    if (read < 0 || done != about.bytes) {
        throw refusal(ErrorCode::damaged, about.name, "its bytes didn’t come whole: ask for the file again.");
    }
}

}  // namespace

/// The road of a file from its list of entries to a visit that may be taken in.
class VisitFileCheck {
public:
    VisitFileCheck(const fs::path& file, const LongWork& work) : file_(file), work_(work) {}

    std::optional<VisitFile> run() {
        found_.archive_ = std::make_unique<VisitFile::Archive>();
        found_.archive_->open.reset(opened(file_).release());
        list();
        read_document();
        match_photos();
        for (const VisitFile::Photo& photo : found_.photos_) {
            if (stopped()) {
                return std::nullopt;
            }
            check(photo);
        }
        return stopped() ? std::nullopt : std::optional(std::move(found_));
    }

private:
    [[nodiscard]] zip_t* archive() const { return found_.archive_->open.get(); }
    [[nodiscard]] bool stopped() const { return work_.stopped && work_.stopped(); }

    void list() {
        const auto entries = static_cast<std::size_t>(std::max(zip_get_num_entries(archive(), 0), zip_int64_t{0}));
        if (entries > limits::photos + 1) {
            throw Failure{{ErrorCode::out_of_range, file_.string(),
                           "This file holds more than a visit’s file can. Nothing was taken in."}};
        }
        for (std::size_t entry = 0; entry < entries; ++entry) {
            Listed about = listed(archive(), entry, file_);
            if (about.name != document_name) {
                auto [digest, ending] = photo_named(about.name);
                found_.photos_.push_back({std::move(digest), media_type_of("photo" + ending), entry, about.bytes});
            }
            all_bytes_ += about.bytes;
            listed_.push_back(std::move(about));
        }
        if (all_bytes_ > limits::file_bytes) {
            throw Failure{{ErrorCode::out_of_range, file_.string(),
                           "Unpacked, this file is larger than a visit can be. Nothing was taken in."}};
        }
    }

    void read_document() {
        const auto place = std::find_if(listed_.begin(), listed_.end(),
                                        [](const Listed& about) { return about.name == document_name; });
        if (place == listed_.end()) {
            throw refusal(ErrorCode::missing, document_name, "it isn’t in this file: it isn’t a visit’s file.");
        }
        unpack(archive(), static_cast<std::size_t>(place - listed_.begin()), *place, [&](std::string_view piece) {
            found_.document_ += piece;
            return true;
        });
        auto survey = read_survey(found_.document_);
        if (!survey) {
            const Fault& fault = survey.error().front();
            throw refusal(ErrorCode::unreadable, document_name,
                          fmt::format("{}{}{}", fault.pointer, fault.pointer.empty() ? "" : ": ", fault.text));
        }
        found_.survey_ = std::move(survey).value();
        done_ = place->bytes;
    }

    void match_photos() {
        const std::vector<std::string> mentioned = photos_mentioned(found_.survey_);
        for (const VisitFile::Photo& photo : found_.photos_) {
            if (std::find(mentioned.begin(), mentioned.end(), photo.sha256) == mentioned.end()) {
                throw refusal(ErrorCode::unreadable, listed_.at(photo.entry).name,
                              "the survey mentions no such photo.");
            }
        }
        found_.missing_ = static_cast<int>(mentioned.size()) - static_cast<int>(found_.photos_.size());
    }

    void check(const VisitFile::Photo& photo) {
        const Listed& about = listed_.at(photo.entry);
        Sha256 hash;
        std::string beginning;
        unpack(archive(), photo.entry, about, [&](std::string_view piece) {
            hash.add(piece);
            beginning.append(piece.substr(0, picture_signature - std::min(beginning.size(), picture_signature)));
            done_ += static_cast<long long>(piece.size());
            if (work_.on_progress) {
                work_.on_progress(static_cast<double>(done_) / static_cast<double>(std::max(all_bytes_, 1LL)));
            }
            return !stopped();
        });
        if (stopped()) {
            return;
        }
        if (hash.hex() != photo.sha256) {
            throw refusal(ErrorCode::damaged, about.name, "its bytes aren’t the ones it is named for.");
        }
        if (!about.name.ends_with(picture_ending(beginning)) || picture_ending(beginning).empty()) {
            throw refusal(ErrorCode::unreadable, about.name, "it isn’t the kind of picture it is named for.");
        }
    }

    const fs::path& file_;
    const LongWork& work_;
    VisitFile found_;
    std::vector<Listed> listed_;
    long long all_bytes_ = 0;
    long long done_ = 0;
};

VisitFile::VisitFile() = default;
VisitFile::VisitFile(VisitFile&&) noexcept = default;
VisitFile& VisitFile::operator=(VisitFile&&) noexcept = default;
VisitFile::~VisitFile() = default;

Result<std::optional<VisitFile>> VisitFile::open(const fs::path& file, const LongWork& work) {
    return guarded([&]() -> Result<std::optional<VisitFile>> { return VisitFileCheck(file, work).run(); });
}

Result<std::string> VisitFile::bytes_of(const Photo& photo) const {
    return guarded([&]() -> Result<std::string> {
        std::string bytes;
        unpack(archive_->open.get(), photo.entry, {"photos/" + photo.sha256, photo.bytes}, [&](std::string_view piece) {
            bytes += piece;
            return true;
        });
        if (sha256_hex(bytes) != photo.sha256) {
            throw refusal(ErrorCode::damaged, "photos/" + photo.sha256,
                          "its bytes have changed since it was looked at.");
        }
        return bytes;
    });
}

}  // namespace truehang
