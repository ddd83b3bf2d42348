// SPDX-License-Identifier: Apache-2.0
#include "workroom/keeping/survey_zip.h"

#include "protocol/digest.h"
#include "protocol/limits.h"
#include "store/visit_file.h"
#include "workroom/archive/disk.h"

#include <fcntl.h>
#include <fmt/format.h>
#include <unistd.h>
#include <zip.h>

#include <algorithm>
#include <array>
#include <cerrno>
#include <charconv>
#include <optional>

namespace truehang::workroom {

namespace fs = std::filesystem;

namespace {

constexpr zip_uint16_t first_day = 1U << 5U | 1U;  // 1980-01-01, the earliest a zip can say
constexpr std::size_t longest_shown = 90;

using Zip = std::unique_ptr<zip_t, decltype(&zip_discard)>;

Error zip_failure(zip_t* zip, const fs::path& file) {
    zip_error_t* const error = zip_get_error(zip);
    if (zip_error_system_type(error) == ZIP_ET_SYS) {
        errno = zip_error_code_system(error);
        return system_error(file);
    }
    return {ErrorCode::io, file.string(), fmt::format("It can’t be written: {}.", zip_error_strerror(error))};
}

/// Stored as it is, at a fixed time: the same survey makes the same bytes.
bool add(zip_t* zip, const std::string& name, zip_source_t* source) {
    const auto entry = source != nullptr ? zip_file_add(zip, name.c_str(), source, ZIP_FL_ENC_UTF_8) : -1;
    if (source != nullptr && entry < 0) {
        zip_source_free(source);
    }
    const auto index = static_cast<zip_uint64_t>(std::max(entry, zip_int64_t{0}));
    return entry >= 0 && zip_set_file_compression(zip, index, ZIP_CM_STORE, 0) == 0 &&
           zip_file_set_dostime(zip, index, 0, first_day, 0) == 0;
}

Result<Done> pack(const fs::path& part, const SurveyToPack& survey) {
    int code = 0;
    Zip zip(zip_open(part.c_str(), ZIP_CREATE | ZIP_EXCL, &code), &zip_discard);
    if (!zip) {
        return code == ZIP_ER_EXISTS ? Error{ErrorCode::conflict, part.string(),
                                             "It is left from an export that was broken off: remove it."}
                                     : Error{ErrorCode::io, part.string(), "It can’t be written there."};
    }
    for (const auto& text : survey.texts) {
        if (!add(zip.get(), text.name, zip_source_buffer(zip.get(), text.bytes.data(), text.bytes.size(), 0))) {
            return zip_failure(zip.get(), part);
        }
    }
    for (const auto& photo : survey.photos) {
        if (!add(zip.get(), photo.name, zip_source_file(zip.get(), photo.file.c_str(), 0, photo.bytes))) {
            return zip_failure(zip.get(), part);
        }
    }
    if (zip_close(zip.get()) != 0) {
        return zip_failure(zip.get(), part);
    }
    static_cast<void>(zip.release());  // zip_close has freed it
    return Done{};
}

/// Takes a file to the disk and gives it its name where nothing has it yet.
Result<Done> put(const fs::path& part, const fs::path& file) {
    const int descriptor = ::open(part.c_str(), O_RDONLY | O_CLOEXEC);
    const bool synced = descriptor >= 0 && ::fsync(descriptor) == 0;
    if (descriptor >= 0) {
        ::close(descriptor);
    }
    if (!synced || ::link(part.c_str(), file.c_str()) != 0) {
        return errno == EEXIST ? Error{ErrorCode::conflict, file.string(),
                                       "Something is there already. Name a file that isn’t there yet."}
                               : system_error(file);
    }
    const auto above = file.parent_path().empty() ? fs::path(".") : file.parent_path();
    return sync_folder(above) ? Result<Done>(Done{}) : system_error(above);
}

Error refusal(ErrorCode code, std::string_view entry, std::string_view why) {
    std::string shown(entry.substr(0, longest_shown));
    std::ranges::replace_if(
        shown, [](char c) { return c < ' ' || c > '~'; }, '?');
    return {code, shown, fmt::format("{} Nothing was taken in.", why)};
}

/// N of `FOLDER/N.json`.
std::optional<long long> number_in(std::string_view name, std::string_view folder) {
    constexpr std::string_view ending = ".json";
    if (!name.starts_with(folder) || !name.ends_with(ending) || name.size() <= folder.size() + ending.size()) {
        return std::nullopt;
    }
    const auto digits = name.substr(folder.size(), name.size() - folder.size() - ending.size());
    long long number = 0;
    const auto [end, fault] = std::from_chars(digits.data(), digits.data() + digits.size(), number);
    const bool plain = digits.front() >= '1' && digits.front() <= '9';
    return plain && fault == std::errc{} && end == digits.data() + digits.size() && number <= sync::revision_limit
               ? std::optional(number)
               : std::nullopt;
}

/// The digest of `photos/<sha256>` with or without an ending.
std::optional<std::string> photo_in(std::string_view name) {
    constexpr std::string_view folder = "photos/";
    constexpr std::array<std::string_view, 6> endings{"", ".jpg", ".png", ".webp", ".heic", ".avif"};
    if (!name.starts_with(folder)) {
        return std::nullopt;
    }
    const auto digest = name.substr(folder.size(), 64);
    const auto ending = name.substr(folder.size() + digest.size());
    return sync::sha256_from_hex(digest) && std::ranges::find(endings, ending) != endings.end()
               ? std::optional(std::string(digest))
               : std::nullopt;
}

}  // namespace

Result<Done> write_survey_zip(const fs::path& file, const SurveyToPack& survey) {
    long long bytes = 0;
    for (const auto& text : survey.texts) {
        bytes += static_cast<long long>(text.bytes.size());
    }
    for (const auto& photo : survey.photos) {
        bytes += photo.bytes;
    }
    if (bytes > visit_file_limits::file_bytes / 100 * 99 || survey.photos.size() > visit_file_limits::photos) {
        return Error{ErrorCode::out_of_range, file.string(),
                     "This survey has more than a file may hold (2 GiB, 5,000 photos). Make a backup instead."};
    }
    std::error_code error;
    if (fs::symlink_status(file, error).type() != fs::file_type::not_found) {
        return Error{ErrorCode::conflict, file.string(),
                     "Something is there already. Name a file that isn’t there yet."};
    }
    auto part = file;
    part += ".part";
    auto written = pack(part, survey);
    if (!written && written.error().code == ErrorCode::conflict) {
        return written;
    }
    if (written) {
        written = put(part, file);
    }
    fs::remove(part, error);
    return written;
}

struct SurveyZip::Opened {
    Zip zip;
    fs::path file;
};

Result<SurveyZip> SurveyZip::open(const fs::path& file) {
    std::error_code error;
    const auto size = fs::file_size(file, error);
    if (error) {
        return Error{ErrorCode::missing, file.string(), "It can’t be opened: " + error.message() + "."};
    }
    if (size > static_cast<std::uintmax_t>(visit_file_limits::file_bytes)) {
        return Error{ErrorCode::out_of_range, file.string(), "It is larger than 2 GiB. Nothing was taken in."};
    }
    auto opened = std::make_shared<Opened>(
        Opened{Zip(zip_open(file.c_str(), ZIP_RDONLY | ZIP_CHECKCONS, nullptr), &zip_discard), file});
    if (!opened->zip) {
        return Error{ErrorCode::unreadable, file.string(),
                     "It is no sound zip, or something is in it twice. Nothing was taken in."};
    }
    SurveyZip zip(std::move(opened));
    const auto listed = zip.list();
    return listed ? Result<SurveyZip>(std::move(zip)) : listed.error();
}

Result<Done> SurveyZip::list() {
    const auto entries = static_cast<std::size_t>(std::max(zip_get_num_entries(opened_->zip.get(), 0), zip_int64_t{0}));
    if (entries > visit_file_limits::photos + 2 * revisions_limit + 2) {
        return refusal(ErrorCode::out_of_range, opened_->file.string(), "It holds more than one survey can.");
    }
    long long all = 0;
    for (std::size_t index = 0; index < entries; ++index) {
        zip_stat_t about;
        zip_stat_init(&about);
        constexpr zip_uint64_t needed =
            ZIP_STAT_NAME | ZIP_STAT_SIZE | ZIP_STAT_COMP_METHOD | ZIP_STAT_ENCRYPTION_METHOD;
        if (zip_stat_index(opened_->zip.get(), index, ZIP_FL_ENC_RAW, &about) != 0 ||
            (about.valid & needed) != needed) {
            return refusal(ErrorCode::unreadable, opened_->file.string(), "It is no sound zip.");
        }
        if (about.encryption_method != ZIP_EM_NONE ||
            (about.comp_method != ZIP_CM_STORE && about.comp_method != ZIP_CM_DEFLATE)) {
            return refusal(ErrorCode::unreadable, about.name, "It is locked or packed in a way not understood here.");
        }
        const bool photo = photo_in(about.name).has_value();
        if (about.size > (photo ? sync::photo_limit : sync::document_limit)) {
            return refusal(ErrorCode::out_of_range, about.name, "It is larger than it may be.");
        }
        all += static_cast<long long>(about.size);
        if (auto placed = place({about.name, index, static_cast<long long>(about.size)}); !placed) {
            return placed;
        }
    }
    return all <= visit_file_limits::file_bytes
               ? Result<Done>(Done{})
               : refusal(ErrorCode::out_of_range, opened_->file.string(), "Unpacked, it is larger than 2 GiB.");
}

Result<Done> SurveyZip::place(Entry entry) {
    const std::string name = entry.name;
    bool once = false;
    if (const auto photo = photo_in(name)) {
        once = photos_.emplace(*photo, std::move(entry)).second;
    } else if (const auto revision = number_in(name, "revisions/")) {
        once = revisions_.emplace(*revision, std::move(entry)).second;
    } else if (name == "survey.json") {
        once = revisions_.emplace(0, std::move(entry)).second;
    } else if (const auto version = number_in(name, "rolls/")) {
        once = rolls_.emplace(*version, std::move(entry)).second;
    } else if (name == "receipts.json") {
        once = !receipts_;
        receipts_ = std::make_unique<Entry>(std::move(entry));
    } else if (name == "marks.json") {
        once = !marks_;
        marks_ = std::make_unique<Entry>(std::move(entry));
    } else if (name == "questions.json") {
        once = !questions_;
        questions_ = std::make_unique<Entry>(std::move(entry));
    } else {
        return refusal(ErrorCode::unreadable, name, "This doesn’t belong in a survey’s file.");
    }
    return once ? Result<Done>(Done{}) : refusal(ErrorCode::unreadable, name, "It is in the file twice.");
}

Result<Done> SurveyZip::unpack(const Entry& entry, const std::function<bool(std::string_view)>& take) const {
    const std::unique_ptr<zip_file_t, int (*)(zip_file_t*)> open(zip_fopen_index(opened_->zip.get(), entry.index, 0),
                                                                 &zip_fclose);
    std::array<char, 1U << 16U> piece{};
    long long done = 0;
    zip_int64_t read = open ? 1 : -1;
    while (read > 0 && done <= entry.bytes) {
        read = zip_fread(open.get(), piece.data(), piece.size());
        done += std::max(read, zip_int64_t{0});
        if (read > 0 && !take({piece.data(), static_cast<std::size_t>(read)})) {
            return Done{};
        }
    }
    return read < 0 || done != entry.bytes
               ? Result<Done>(
                     refusal(ErrorCode::damaged, entry.name, "Its bytes didn’t come whole: ask for the file again."))
               : Result<Done>(Done{});
}

Result<std::string> SurveyZip::text_of(const Entry& entry) const {
    std::string text;
    const auto read = unpack(entry, [&text](std::string_view piece) {
        text += piece;
        return true;
    });
    return read ? Result<std::string>(std::move(text)) : read.error();
}

}  // namespace truehang::workroom
