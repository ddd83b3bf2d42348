// SPDX-License-Identifier: Apache-2.0
#include "store/failures.h"
#include "store/photo_folder.h"
#include "store/picture_kind.h"
#include "store/sha256.h"
#include "store/visit_file.h"

#include "document/document.h"
#include "survey/photos.h"

#include <zip.h>

#include <algorithm>
#include <array>
#include <fstream>

namespace truehang {
namespace {

namespace fs = std::filesystem;
namespace limits = visit_file_limits;

constexpr double share_of_checking = 0.5;  // every photo is read twice: to check it, and to pack it
constexpr double progress_step = 0.005;
constexpr zip_uint16_t first_day = 1U << 5U | 1U;                  // 1980-01-01, the earliest a zip can say
constexpr zip_uint32_t plain_file = zip_uint32_t{0100644} << 16U;  // as Unix has it

bool is_stopped(const LongWork& work) { return work.stopped && work.stopped(); }

void tell(const LongWork& work, double done) {
    if (work.on_progress) {
        work.on_progress(std::min(done, 1.0));
    }
}

/// A photo that is sound, and how it is called in the file.
struct Entry {
    std::string name;
    fs::path file;
    long long bytes = 0;
};

/// Nothing where the photo isn't there, has other bytes than it should, is too large or no picture.
std::optional<Entry> checked(const VisitToPack::Photo& photo, const std::function<bool(long long)>& read_on) {
    std::ifstream in(photo.file, std::ios::binary);
    std::array<char, 1U << 16U> piece{};
    Sha256 hash;
    std::string beginning;
    long long bytes = 0;
    while (in) {
        in.read(piece.data(), piece.size());
        const std::string_view read(piece.data(), static_cast<std::size_t>(in.gcount()));
        hash.add(read);
        beginning.append(read.substr(0, picture_signature - std::min(beginning.size(), picture_signature)));
        bytes += static_cast<long long>(read.size());
        if (bytes > limits::photo_bytes || !read_on(static_cast<long long>(read.size()))) {
            return std::nullopt;
        }
    }
    const std::string_view ending = picture_ending(beginning);
    if (in.bad() || ending.empty() || hash.hex() != photo.sha256) {
        return std::nullopt;
    }
    return Entry{"photos/" + photo.sha256 + std::string(ending), photo.file, bytes};
}

long long bytes_on_disk(const std::vector<VisitToPack::Photo>& photos) {
    long long bytes = 0;
    for (const VisitToPack::Photo& photo : photos) {
        std::error_code code;
        const auto size = fs::file_size(photo.file, code);
        bytes += code ? 0 : static_cast<long long>(size);
    }
    return bytes;
}

/// The sound ones; nothing where it was stopped.
std::optional<std::vector<Entry>> sound_photos(const std::vector<VisitToPack::Photo>& photos, const LongWork& work) {
    const auto all = static_cast<double>(std::max(bytes_on_disk(photos), 1LL));
    long long done = 0;
    std::vector<Entry> entries;
    for (const VisitToPack::Photo& photo : photos) {
        auto entry = checked(photo, [&](long long read) {
            done += read;
            tell(work, share_of_checking * static_cast<double>(done) / all);
            return !is_stopped(work);
        });
        if (is_stopped(work)) {
            return std::nullopt;
        }
        if (entry) {
            entries.push_back(std::move(*entry));
        }
    }
    return entries;
}

struct Discard {
    void operator()(zip_t* archive) const { zip_discard(archive); }
};
using Archive = std::unique_ptr<zip_t, Discard>;

Failure failed(zip_error_t* error, const fs::path& file) {
    if (zip_error_system_type(error) == ZIP_ET_SYS) {
        return {error_of(std::error_code(zip_error_code_system(error), std::generic_category()), file)};
    }
    return {
        {ErrorCode::io, file.string(), std::string("The file can’t be written: ") + zip_error_strerror(error) + "."}};
}

Archive new_archive(const fs::path& file) {
    int code = 0;
    Archive archive(zip_open(file.c_str(), ZIP_CREATE | ZIP_TRUNCATE, &code));
    if (!archive) {
        zip_error_t error;
        zip_error_init_with_code(&error, code);
        const Failure failure = failed(&error, file);
        zip_error_fini(&error);
        throw Failure(failure);
    }
    return archive;
}

/// Stored as it is, at a fixed time: the same visit makes the same bytes, whatever packs it.
void add(zip_t* archive, const std::string& name, zip_source_t* source, const fs::path& file) {
    const zip_int64_t entry = source ? zip_file_add(archive, name.c_str(), source, ZIP_FL_ENC_UTF_8) : -1;
    if (source && entry < 0) {
        zip_source_free(source);
    }
    const auto index = static_cast<zip_uint64_t>(std::max(entry, zip_int64_t{0}));
    if (entry < 0 || zip_set_file_compression(archive, index, ZIP_CM_STORE, 0) != 0 ||
        zip_file_set_dostime(archive, index, 0, first_day, 0) != 0 ||
        zip_file_set_external_attributes(archive, index, 0, ZIP_OPSYS_UNIX, plain_file) != 0) {
        throw failed(zip_get_error(archive), file);
    }
}

void watch(zip_t* archive, const LongWork& work) {
    // Neither changes what it is given: libzip's callbacks only know plain pointers.
    void* const given = const_cast<LongWork*>(&work);  // NOLINT(cppcoreguidelines-pro-type-const-cast)
    zip_register_progress_callback_with_state(
        archive, progress_step,
        [](zip_t*, double done, void* to) {
            tell(*static_cast<const LongWork*>(to), share_of_checking + (1.0 - share_of_checking) * done);
        },
        nullptr, given);
    zip_register_cancel_callback_with_state(
        archive, [](zip_t*, void* asked) { return is_stopped(*static_cast<const LongWork*>(asked)) ? 1 : 0; }, nullptr,
        given);
}

/// False where it was stopped.
bool pack(const fs::path& file, const std::string& document, const std::vector<Entry>& photos, const LongWork& work) {
    Archive archive = new_archive(file);
    zip_t* const open = archive.get();
    add(open, "survey.json", zip_source_buffer(open, document.data(), document.size(), 0), file);
    for (const Entry& photo : photos) {
        add(open, photo.name, zip_source_file(open, photo.file.c_str(), 0, photo.bytes), file);
    }
    watch(open, work);
    if (zip_close(open) != 0) {
        zip_error_t* const error = zip_get_error(open);
        if (zip_error_code_zip(error) == ZIP_ER_CANCELLED) {
            return false;
        }
        throw failed(error, file);
    }
    static_cast<void>(archive.release());  // zip_close has freed it
    return true;
}

void check_limits(const VisitToPack& visit, const std::vector<Entry>& photos, const fs::path& file) {
    auto bytes = static_cast<long long>(visit.document.size());
    for (const Entry& photo : photos) {
        bytes += photo.bytes + static_cast<long long>(4 * photo.name.size()) + 256;  // with what a zip says of it
    }
    if (bytes > limits::file_bytes || photos.size() > limits::photos) {
        throw Failure{{ErrorCode::out_of_range, file.string(),
                       "This visit has more photos than a file may hold: send it to the workroom instead."}};
    }
}

}  // namespace

std::vector<std::string> photos_mentioned(const Survey& survey) {
    std::vector<std::string> photos;
    const auto mention = [&](const Photo& photo) {
        if (!photo.sha256.empty() && std::find(photos.begin(), photos.end(), photo.sha256) == photos.end()) {
            photos.push_back(photo.sha256);
        }
    };
    for (const Fabric& fabric : survey.fabrics) {
        if (fabric.photo) {
            mention(*fabric.photo);
        }
    }
    for (const PhotoPlace& place : photos_in(survey)) {
        mention(*place.photo);
    }
    return photos;
}

namespace {

/// The document of a visit as it is handed on: the same bytes as the last time where nothing changed since.
std::string document_to_hand_on(Survey survey, std::vector<std::string> parents) {
    if (!parents.empty()) {
        survey.parents = std::vector<std::string>(parents.begin() + 1, parents.end());
        std::string last = write_survey(survey, false);
        if (sha256_hex(last) == parents.front()) {
            return last;
        }
    }
    survey.parents = std::move(parents);
    return write_survey(survey, false);
}

}  // namespace

Result<VisitToPack> visit_to_pack(Store& store, std::string_view visit_id) {
    const auto survey = store.visit(visit_id);
    auto parents = store.parents(visit_id);
    if (!survey || !parents) {
        return survey ? parents.error() : survey.error();
    }
    VisitToPack visit;
    visit.document = document_to_hand_on(*survey, std::move(parents).value());
    // Whoever takes the file in works on from this document, as this device does.
    if (const auto noted = store.add_parent(visit_id, visit.document); !noted) {
        return noted.error();
    }
    for (const std::string& sha256 : photos_mentioned(*survey)) {
        if (auto file = store.photo_file(sha256)) {
            visit.photos.push_back({sha256, std::move(file).value()});
        } else {
            ++visit.missing;
        }
    }
    return visit;
}

Result<std::optional<PackedVisit>> write_visit_file(const fs::path& file, const VisitToPack& visit,
                                                    const LongWork& work) {
    fs::path part = file;
    part += ".part";
    auto written = guarded([&]() -> Result<std::optional<PackedVisit>> {
        const auto photos = sound_photos(visit.photos, work);
        if (!photos) {
            return std::optional<PackedVisit>();
        }
        check_limits(visit, *photos, file);
        value_or_throw(make_folder(file.parent_path()));
        if (!pack(part, visit.document, *photos, work)) {
            return std::optional<PackedVisit>();
        }
        value_or_throw(sync_file(part));
        fs::rename(part, file);
        value_or_throw(sync_folder(file.parent_path()));
        tell(work, 1.0);
        const int packed = static_cast<int>(photos->size());
        return std::optional(PackedVisit{packed, visit.missing + static_cast<int>(visit.photos.size()) - packed});
    });
    if (!written || !written.value()) {
        std::error_code code;
        fs::remove(part, code);
    }
    return written;
}

}  // namespace truehang
