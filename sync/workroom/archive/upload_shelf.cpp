// SPDX-License-Identifier: Apache-2.0
#include "workroom/archive/upload_shelf.h"

#include "protocol/limits.h"
#include "protocol/upload.h"
#include "workroom/archive/disk.h"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <vector>

namespace truehang::workroom {

namespace fs = std::filesystem;

namespace {

constexpr std::size_t digest_digits = 64;
constexpr std::size_t gates_before_tidying = 64;

/// The files in a folder, or the folders; none where it isn't there.
std::vector<fs::path> listed(const fs::path& folder) {
    std::vector<fs::path> entries;
    std::error_code error;
    for (fs::directory_iterator at(folder, error); !error && at != fs::directory_iterator(); at.increment(error)) {
        entries.push_back(at->path());
    }
    return entries;
}

bool is_upload_of(const fs::path& file, std::string_view sha256) {
    const auto name = file.filename().string();
    return name.size() > digest_digits && name[digest_digits] == '-' && name.substr(0, digest_digits) == sha256;
}

/// The length that an upload was begun for, from its file's name; nothing for any other file.
std::optional<long long> length_in(const fs::path& file) {
    const auto name = file.filename().string();
    return name.size() > digest_digits && name[digest_digits] == '-'
               ? sync::read_byte_count(std::string_view(name).substr(digest_digits + 1))
               : std::nullopt;
}

sync::Time time_of(const timespec& time) {
    return sync::Time(std::chrono::seconds(time.tv_sec) +
                      std::chrono::duration_cast<std::chrono::milliseconds>(std::chrono::nanoseconds(time.tv_nsec)));
}

Error not_there(const fs::path& file) {
    return {ErrorCode::missing, file.string(), "The upload was taken away meanwhile; begin it anew."};
}

}  // namespace

PieceIntake::PieceIntake(std::shared_ptr<UploadGate> gate, std::uint64_t number, fs::path file, int descriptor,
                         long long offset, std::optional<sync::Sha256> digest)
    : gate_(std::move(gate)),
      number_(number),
      file_(std::move(file)),
      descriptor_(descriptor),
      begin_(offset),
      end_(offset),
      digest_(digest) {}

PieceIntake::~PieceIntake() {
    ::close(descriptor_);
    let_go();
}

void PieceIntake::let_go() {
    auto own = number_;
    gate_->holder.compare_exchange_strong(own, 0);
}

bool PieceIntake::take(std::string_view piece) {
    const std::lock_guard lock(gate_->mutex);
    if (!holds() || fault_) {
        return false;
    }
    if (digest_) {
        hash_.add(piece);
    }
    while (!piece.empty()) {
        const auto written = ::pwrite(descriptor_, piece.data(), piece.size(), static_cast<off_t>(end_));
        if (written < 0 && errno == EINTR) {
            continue;
        }
        if (written < 0) {
            fault_ = system_error(file_);
            return false;
        }
        end_ += written;
        piece.remove_prefix(static_cast<std::size_t>(written));
    }
    return true;
}

Result<long long> PieceIntake::finish() {
    const std::lock_guard lock(gate_->mutex);
    if (!holds()) {
        return Error{ErrorCode::conflict, file_.string(), "Another request took this upload on."};
    }
    if (fault_) {
        return *fault_;
    }
    const bool wrong = digest_ && hash_.finish() != *digest_;
    if ((wrong && ::ftruncate(descriptor_, static_cast<off_t>(begin_)) != 0) || ::fsync(descriptor_) != 0) {
        return system_error(file_);
    }
    if (wrong) {
        return Error{ErrorCode::unreadable, file_.string(), "The piece’s bytes changed on the way. Send it again."};
    }
    return end_;
}

Result<std::string> PieceIntake::digest_of_all() const {
    sync::Sha256Stream hash;
    std::vector<char> piece(std::size_t{1} << 18U);
    for (long long at = 0; at < end_;) {
        const auto count = ::pread(descriptor_, piece.data(), piece.size(), static_cast<off_t>(at));
        if (count < 0 && errno == EINTR) {
            continue;
        }
        if (count <= 0) {
            return Error{ErrorCode::io, file_.string(), "What came can’t be read back."};
        }
        hash.add({piece.data(), static_cast<std::size_t>(count)});
        at += count;
    }
    return sync::hex(hash.finish());
}

bool PieceIntake::is_this_file(const fs::path& file) const {
    struct stat own {};
    struct stat other {};
    return ::fstat(descriptor_, &own) == 0 && ::stat(file.c_str(), &other) == 0 && own.st_dev == other.st_dev &&
           own.st_ino == other.st_ino;
}

Result<Done> PieceIntake::put(const std::string& sha256, const fs::path& beside, const fs::path& place) {
    const std::lock_guard lock(gate_->mutex);
    const auto digest = digest_of_all();
    if (!digest) {
        return digest.error();
    }
    if (!holds() || !is_this_file(file_)) {
        return not_there(file_);
    }
    if (*digest != sha256) {
        ::unlink(file_.c_str());
        return Error{ErrorCode::unreadable, file_.string(),
                     "The photo’s bytes have another digest than its path. Nothing was stored."};
    }
    if (::link(file_.c_str(), beside.c_str()) != 0) {
        return errno == ENOENT ? not_there(file_) : system_error(file_);
    }
    const bool same = is_this_file(beside);  // not one that was begun in its place this very moment
    std::error_code error;
    const bool new_folder = same && fs::create_directory(place.parent_path(), error);
    const bool stands = same && !error && ::rename(beside.c_str(), place.c_str()) == 0 &&
                        sync_folder(place.parent_path()) &&
                        (!new_folder || sync_folder(place.parent_path().parent_path()));
    auto why_not = same ? system_error(place) : not_there(file_);
    ::unlink(beside.c_str());  // left over where both names were one file already
    return stands ? Result<Done>(Done{}) : std::move(why_not);
}

UploadShelf::UploadShelf(fs::path folder, Clock clock) : folder_(std::move(folder)), clock_(std::move(clock)) {}

std::optional<UploadState> UploadShelf::state_of(const fs::path& file) const {
    const auto length = length_in(file);
    struct stat status {};
    if (!length || ::stat(file.c_str(), &status) != 0 || !S_ISREG(status.st_mode)) {
        return std::nullopt;
    }
    UploadState state;
    state.offset = std::min<long long>(status.st_size, *length);
    state.length = *length;
    const auto age = std::max(clock_() - time_of(status.st_mtim), std::chrono::milliseconds(0));
    state.left = std::chrono::duration_cast<std::chrono::seconds>(sync::upload_life - age);
    return state;
}

std::optional<UploadShelf::Found> UploadShelf::find(const UploadKey& key) const {
    for (const auto& file : listed(folder_ / key.device)) {
        const auto state = is_upload_of(file, key.sha256) ? state_of(file) : std::nullopt;
        if (state && state->left.count() > 0) {
            return Found{file, *state};
        }
    }
    return std::nullopt;
}

std::shared_ptr<UploadGate> UploadShelf::gate_of(const UploadKey& key) {
    const std::lock_guard lock(mutex_);
    if (gates_.size() > gates_before_tidying) {
        std::erase_if(gates_, [](const auto& entry) { return entry.second.expired(); });
    }
    auto& kept = gates_[key.device + "/" + key.sha256];
    auto gate = kept.lock();
    if (!gate) {
        gate = std::make_shared<UploadGate>();
        kept = gate;
    }
    return gate;
}

bool UploadShelf::has_room(const fs::path& device, long long length) const {
    std::size_t count = 0;
    long long bytes = length;
    for (const auto& file : listed(device)) {
        if (const auto state = state_of(file)) {
            ++count;
            bytes += state->length;
        }
    }
    return count < sync::uploads_at_once && bytes <= sync::unfinished_limit;
}

Result<UploadState> UploadShelf::begin(const UploadKey& key, long long length) {
    sweep();
    const std::lock_guard lock(mutex_);  // so that two at once don't pass the limit together
    if (auto found = find(key)) {
        if (found->state.length != length) {
            return Error{ErrorCode::conflict, found->file.string(), "It was begun for another length."};
        }
        found->state.was_there = true;
        return found->state;
    }
    const auto device = folder_ / key.device;
    if (!has_room(device, length)) {
        return Error{ErrorCode::out_of_range, device.string(), "This device has too much unfinished."};
    }
    std::error_code error;
    const bool new_folder = fs::create_directories(device, error);
    const auto file = device / (key.sha256 + "-" + std::to_string(length));
    const int made = error ? -1 : ::open(file.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, 0600);
    if (made < 0) {
        return system_error(file);
    }
    ::close(made);
    if (!sync_folder(device) || (new_folder && !sync_folder(folder_))) {
        return system_error(file);
    }
    return UploadState{0, length, sync::upload_life, false};
}

Result<std::optional<UploadState>> UploadShelf::look(const UploadKey& key) {
    const auto gate = gate_of(key);
    const std::lock_guard lock(gate->mutex);
    gate->holder = 0;
    auto found = find(key);
    if (!found) {
        return std::optional<UploadState>();
    }
    const int file = ::open(found->file.c_str(), O_WRONLY | O_CLOEXEC);
    const bool synced = file >= 0 && ::fsync(file) == 0;
    const auto why_not = system_error(found->file);
    if (file >= 0) {
        ::close(file);
    }
    if (!synced) {
        return why_not;
    }
    return std::optional(found->state);
}

std::optional<UploadState> UploadShelf::glance(const UploadKey& key) const {
    const auto found = find(key);
    return found ? std::optional(found->state) : std::nullopt;
}

Result<UploadShelf::Piece> UploadShelf::open_piece(const UploadKey& key, long long offset,
                                                   std::optional<sync::Sha256> digest) {
    const auto gate = gate_of(key);
    const std::lock_guard lock(gate->mutex);
    const auto found = find(key);
    Piece piece;
    if (!found) {
        return piece;
    }
    piece.state = found->state;
    piece.under_way = gate->holder.load() != 0;
    if (piece.under_way || found->state.offset != offset) {
        return piece;
    }
    const int file = ::open(found->file.c_str(), O_RDWR | O_CLOEXEC);
    if (file < 0) {
        return system_error(found->file);
    }
    const auto number = ++pieces_;
    gate->holder = number;
    piece.intake = std::make_shared<PieceIntake>(gate, number, found->file, file, offset, digest);
    return piece;
}

bool UploadShelf::forget(const UploadKey& key) {
    const auto gate = gate_of(key);
    const std::lock_guard lock(gate->mutex);
    gate->holder = 0;
    const auto found = find(key);
    return found && ::unlink(found->file.c_str()) == 0;
}

void UploadShelf::sweep() {
    for (const auto& device : listed(folder_)) {
        for (const auto& file : listed(device)) {
            if (const auto state = state_of(file); state && state->left.count() <= 0) {
                ::unlink(file.c_str());
            }
        }
    }
}

std::set<std::string> UploadShelf::digests() const {
    std::set<std::string> found;
    for (const auto& device : listed(folder_)) {
        for (const auto& file : listed(device)) {
            if (length_in(file)) {
                found.insert(file.filename().string().substr(0, digest_digits));
            }
        }
    }
    return found;
}

bool remove_uploads_of(const fs::path& uploads, std::string_view sha256) {
    bool all = true;
    for (const auto& device : listed(uploads)) {
        for (const auto& file : listed(device)) {
            if (is_upload_of(file, sha256)) {
                all = (::unlink(file.c_str()) == 0 || errno == ENOENT) && sync_folder(device) && all;
            }
        }
    }
    return all;
}

void remove_uploads_from(const fs::path& uploads, const std::string& device) {
    for (const auto& file : listed(uploads / device)) {
        if (length_in(file)) {
            ::unlink(file.c_str());
        }
    }
}

UnfinishedUploads unfinished_in(const fs::path& uploads) {
    UnfinishedUploads all;
    for (const auto& device : listed(uploads)) {
        for (const auto& file : listed(device)) {
            std::error_code error;
            const auto size = fs::file_size(file, error);
            if (length_in(file) && !error) {
                ++all.uploads;
                all.bytes += static_cast<long long>(size);
            }
        }
    }
    return all;
}

}  // namespace truehang::workroom
