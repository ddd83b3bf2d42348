// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <filesystem>
#include <functional>
#include <map>
#include <optional>
#include <random>
#include <string>
#include <vector>

namespace truehang::testing {

/// What a disk holds when the power goes: file name and bytes.
using DiskImage = std::map<std::string, std::string>;

/// An SQLite VFS around the system's own that remembers, for each file, what was synced and what was only written, and
/// can be full. One at a time; registered as `faulty_disk_vfs` while it lives.
class FaultyDisk {
public:
    FaultyDisk();
    ~FaultyDisk();
    FaultyDisk(const FaultyDisk&) = delete;
    FaultyDisk& operator=(const FaultyDisk&) = delete;

    /// Only what was synced.
    [[nodiscard]] DiskImage synced() const;
    /// What was synced, and of the writes since each with even chance, the last of them perhaps torn at a sector.
    [[nodiscard]] DiskImage torn(std::mt19937& chance) const;

    /// From the nth write or truncation from now on (1 is the next) every write is refused with SQLITE_FULL.
    void fill_up_after(int writes) { writes_left_ = writes; }
    void make_room() { writes_left_.reset(); }
    [[nodiscard]] bool was_full() const { return was_full_; }

    /// Called before each write, truncation and sync.
    std::function<void()> before_each;

    // Called by the VFS.
    struct Write {
        std::int64_t offset = 0;
        std::string bytes;
        bool truncates = false;  ///< to `offset`
    };
    [[nodiscard]] bool takes(const std::string& file, Write write);
    void sync(const std::string& file);
    void remove(const std::string& file);

private:
    struct Held {
        std::optional<std::string> synced;
        std::vector<Write> since;
    };
    std::map<std::string, Held> files_;
    std::optional<int> writes_left_;
    bool was_full_ = false;
};

inline constexpr const char* faulty_disk_vfs = "faulty-disk";

/// Lays an image out in a folder.
void write_image(const DiskImage& image, const std::filesystem::path& folder);

}  // namespace truehang::testing
