// SPDX-License-Identifier: Apache-2.0
#include "workroom/archive/photo_intake.h"

#include "workroom/archive/disk.h"

#include <fcntl.h>
#include <unistd.h>

#include <cerrno>

namespace truehang::workroom {

PhotoIntake::PhotoIntake(const std::filesystem::path& folder, std::string name)
    : file_(folder / name), descriptor_(::open(file_.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, 0600)) {
    if (descriptor_ < 0) {
        fault_ = system_error(file_);
    }
}

PhotoIntake::~PhotoIntake() {
    if (descriptor_ >= 0) {
        ::close(descriptor_);
        ::unlink(file_.c_str());
    }
}

bool PhotoIntake::take(std::string_view piece) {
    if (fault_) {
        return false;
    }
    hash_.add(piece);
    bytes_ += static_cast<long long>(piece.size());
    while (!piece.empty()) {
        const auto written = ::write(descriptor_, piece.data(), piece.size());
        if (written < 0 && errno == EINTR) {
            continue;
        }
        if (written < 0) {
            fault_ = system_error(file_);
            return false;
        }
        piece.remove_prefix(static_cast<std::size_t>(written));
    }
    ::sync_file_range(descriptor_, 0, 0, SYNC_FILE_RANGE_WRITE);  // on its way to the disk while more comes
    return true;
}

sync::Sha256 PhotoIntake::digest() { return hash_.finish(); }

Result<Done> PhotoIntake::put(const std::filesystem::path& place) {
    std::error_code error;
    const bool new_folder = std::filesystem::create_directory(place.parent_path(), error);
    if (fault_ || error || ::fsync(descriptor_) != 0 || ::rename(file_.c_str(), place.c_str()) != 0 ||
        !sync_folder(place.parent_path()) || (new_folder && !sync_folder(place.parent_path().parent_path()))) {
        return fault_ ? *fault_ : system_error(place);
    }
    ::close(descriptor_);
    descriptor_ = -1;
    return Done{};
}

}  // namespace truehang::workroom
