// SPDX-License-Identifier: Apache-2.0
#include "store/photo_folder.h"

#include "store/failures.h"
#include "store/sha256.h"

#include <fcntl.h>
#include <unistd.h>

#include <array>
#include <cerrno>
#include <fstream>
#include <iterator>
#include <vector>

namespace truehang {
namespace {

namespace fs = std::filesystem;

constexpr std::string_view unfinished = ".part";

constexpr std::array<std::pair<std::string_view, std::string_view>, 6> endings{{{"image/jpeg", ".jpg"},
                                                                                {"image/png", ".png"},
                                                                                {"image/webp", ".webp"},
                                                                                {"image/heic", ".heic"},
                                                                                {"image/avif", ".avif"},
                                                                                {"application/octet-stream", ".bin"}}};

std::string_view ending_for(std::string_view media_type) {
    for (const auto& [type, ending] : endings) {
        if (type == media_type) {
            return ending;
        }
    }
    return ".bin";
}

Error last_refusal(const fs::path& where) { return error_of(std::error_code(errno, std::generic_category()), where); }

/// An open file descriptor, closed when it goes.
class OpenFile {
public:
    OpenFile(const fs::path& file, int flags) : descriptor_(::open(file.c_str(), flags | O_CLOEXEC, 0600)) {}
    ~OpenFile() {
        if (descriptor_ >= 0) {
            ::close(descriptor_);
        }
    }
    OpenFile(const OpenFile&) = delete;
    OpenFile& operator=(const OpenFile&) = delete;

    [[nodiscard]] bool is_open() const { return descriptor_ >= 0; }
    [[nodiscard]] bool write_all(std::string_view bytes) const {
        while (!bytes.empty()) {
            const ::ssize_t written = ::write(descriptor_, bytes.data(), bytes.size());
            if (written < 0 && errno != EINTR) {
                return false;
            }
            bytes.remove_prefix(static_cast<std::size_t>(written < 0 ? 0 : written));
        }
        return true;
    }
    [[nodiscard]] bool sync() const { return ::fsync(descriptor_) == 0; }

private:
    int descriptor_;
};

Result<Done> write_synced(const fs::path& file, std::string_view bytes) {
    const OpenFile open(file, O_WRONLY | O_CREAT | O_TRUNC);
    if (!open.is_open() || !open.write_all(bytes) || !open.sync()) {
        return last_refusal(file);
    }
    return Done{};
}

}  // namespace

Result<Done> sync_file(const fs::path& file) {
    const OpenFile open(file, O_RDONLY);
    if (!open.is_open() || !open.sync()) {
        return last_refusal(file);
    }
    return Done{};
}

Result<Done> sync_folder(const fs::path& folder) {
    const OpenFile open(folder.empty() ? fs::path(".") : folder, O_RDONLY | O_DIRECTORY);
    if (!open.is_open() || !open.sync()) {
        return last_refusal(folder);
    }
    return Done{};
}

Result<Done> make_folder(const fs::path& folder) {
    std::error_code code;
    if (folder.empty() || fs::is_directory(folder, code)) {
        return Done{};
    }
    if (const auto above = make_folder(folder.parent_path()); !above) {
        return above;
    }
    fs::create_directory(folder, code);
    if (code) {
        return error_of(code, folder);
    }
    return sync_folder(folder.parent_path());
}

Result<Done> write_whole(const fs::path& file, std::string_view bytes) {
    fs::path part = file;
    part += unfinished;
    auto written = write_synced(part, bytes);
    std::error_code code;
    if (written) {
        fs::rename(part, file, code);
        written = code ? Result<Done>(error_of(code, file)) : sync_folder(file.parent_path());
    }
    if (!written) {
        fs::remove(part, code);
    }
    return written;
}

Result<std::string> read_whole(const fs::path& file) {
    std::ifstream in(file, std::ios::binary);
    if (!in) {
        return last_refusal(file);
    }
    std::string bytes{std::istreambuf_iterator<char>(in), std::istreambuf_iterator<char>()};
    if (in.bad()) {
        return last_refusal(file);
    }
    return bytes;
}

Result<std::string> PhotoFolder::keep(std::string_view bytes, std::string_view media_type) const {
    const std::string sha256 = sha256_hex(bytes);
    if (this->bytes(sha256)) {
        return sha256;
    }
    const fs::path folder = folder_ / sha256.substr(0, 2);
    if (const auto made = make_folder(folder); !made) {
        return made.error();
    }
    const auto written = write_whole(folder / (sha256 + std::string(ending_for(media_type))), bytes);
    if (!written) {
        return written.error();
    }
    return sha256;
}

Result<fs::path> PhotoFolder::find(std::string_view sha256) const {
    const std::string name(sha256);
    if (is_sha256_hex(sha256)) {
        for (const auto& [type, ending] : endings) {
            fs::path file = folder_ / name.substr(0, 2) / (name + std::string(ending));
            std::error_code code;
            if (fs::is_regular_file(file, code)) {
                return file;
            }
        }
    }
    return Error{ErrorCode::missing, name, "This photo isn’t on this device."};
}

Result<Done> PhotoFolder::erase(std::string_view sha256) const {
    for (auto file = find(sha256); file; file = find(sha256)) {
        std::error_code code;
        fs::remove(file.value(), code);
        if (code) {
            return error_of(code, file.value());
        }
        if (const auto synced = sync_folder(file.value().parent_path()); !synced) {
            return synced;
        }
    }
    return Done{};
}

Result<std::string> PhotoFolder::bytes(std::string_view sha256) const {
    const auto file = find(sha256);
    if (!file) {
        return file.error();
    }
    auto read = read_whole(file.value());
    if (read && sha256_hex(read.value()) != sha256) {
        return damaged(file->string(), "the photo’s bytes have changed");
    }
    return read;
}

Result<Done> PhotoFolder::copy_to(const fs::path& other) const {
    std::error_code code;
    const PhotoFolder copies(other);
    std::vector<fs::path> files;
    for (fs::recursive_directory_iterator entry(folder_, code), end; !code && entry != end; entry.increment(code)) {
        if (entry->is_regular_file() && entry->path().extension() != unfinished) {
            files.push_back(entry->path());
        }
    }
    for (const fs::path& file : files) {
        const fs::path copy = other / file.lexically_relative(folder_);
        if (copies.bytes(file.stem().string())) {
            continue;
        }
        auto bytes = read_whole(file);
        if (!bytes) {
            return bytes.error();
        }
        if (const auto made = make_folder(copy.parent_path()); !made) {
            return made;
        }
        if (const auto written = write_whole(copy, bytes.value()); !written) {
            return written;
        }
    }
    return Done{};
}

void PhotoFolder::tidy() const {
    std::error_code code;
    std::vector<fs::path> left;
    for (fs::recursive_directory_iterator entry(folder_, code), end; !code && entry != end; entry.increment(code)) {
        if (entry->path().extension() == unfinished) {
            left.push_back(entry->path());
        }
    }
    for (const fs::path& file : left) {
        fs::remove(file, code);
    }
}

std::string media_type_of(const fs::path& photo) {
    for (const auto& [type, ending] : endings) {
        if (photo.extension() == ending) {
            return std::string(type);
        }
    }
    return "application/octet-stream";
}

}  // namespace truehang
