// SPDX-License-Identifier: Apache-2.0
#include "workroom/archive/disk.h"

#include <fcntl.h>
#include <unistd.h>

#include <cerrno>
#include <cstring>

namespace truehang::workroom {

Error system_error(const std::filesystem::path& where) {
    const int number = errno;
    const bool full = number == ENOSPC || number == EDQUOT;
    return {full ? ErrorCode::full : ErrorCode::io, where.string(),
            full ? "There is no room left on the disk."
                 : std::string("The file can’t be written: ") + std::strerror(number)};
}

bool sync_folder(const std::filesystem::path& folder) {
    const int descriptor = ::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC);
    const bool synced = descriptor >= 0 && ::fsync(descriptor) == 0;
    if (descriptor >= 0) {
        ::close(descriptor);
    }
    return synced;
}

}  // namespace truehang::workroom
