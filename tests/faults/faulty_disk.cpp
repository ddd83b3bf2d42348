// SPDX-License-Identifier: Apache-2.0
#include "faulty_disk.h"

#include <sqlite3.h>

#include <fstream>
#include <new>

namespace truehang::testing {
namespace {

FaultyDisk* disk = nullptr;
sqlite3_vfs* system_vfs = nullptr;

/// SQLite's handle of an open file; the system's own handle stands right behind it.
struct OpenFile {
    sqlite3_file base;
    std::string* name;
    sqlite3_file* real() { return reinterpret_cast<sqlite3_file*>(this + 1); }
    static OpenFile& of(sqlite3_file* file) { return *reinterpret_cast<OpenFile*>(file); }
};

int close_file(sqlite3_file* file) {
    OpenFile& open = OpenFile::of(file);
    const int code = open.real()->pMethods->xClose(open.real());
    delete open.name;
    return code;
}
int read_file(sqlite3_file* file, void* into, int count, sqlite3_int64 offset) {
    return OpenFile::of(file).real()->pMethods->xRead(OpenFile::of(file).real(), into, count, offset);
}
int write_file(sqlite3_file* file, const void* from, int count, sqlite3_int64 offset) {
    OpenFile& open = OpenFile::of(file);
    std::string bytes(static_cast<const char*>(from), static_cast<std::size_t>(count));
    if (disk == nullptr || !disk->takes(*open.name, {offset, std::move(bytes), false})) {
        return SQLITE_FULL;
    }
    return open.real()->pMethods->xWrite(open.real(), from, count, offset);
}
int truncate_file(sqlite3_file* file, sqlite3_int64 size) {
    OpenFile& open = OpenFile::of(file);
    if (disk == nullptr || !disk->takes(*open.name, {size, "", true})) {
        return SQLITE_FULL;
    }
    return open.real()->pMethods->xTruncate(open.real(), size);
}
int sync_file(sqlite3_file* file, int) {
    if (disk != nullptr) {
        disk->sync(*OpenFile::of(file).name);
    }
    return SQLITE_OK;  // what is synced is what the disk remembers
}
int file_size(sqlite3_file* file, sqlite3_int64* size) {
    return OpenFile::of(file).real()->pMethods->xFileSize(OpenFile::of(file).real(), size);
}
int lock_file(sqlite3_file* file, int level) {
    return OpenFile::of(file).real()->pMethods->xLock(OpenFile::of(file).real(), level);
}
int unlock_file(sqlite3_file* file, int level) {
    return OpenFile::of(file).real()->pMethods->xUnlock(OpenFile::of(file).real(), level);
}
int check_lock(sqlite3_file* file, int* held) {
    return OpenFile::of(file).real()->pMethods->xCheckReservedLock(OpenFile::of(file).real(), held);
}
int control_file(sqlite3_file* file, int what, void* argument) {
    return OpenFile::of(file).real()->pMethods->xFileControl(OpenFile::of(file).real(), what, argument);
}
int sector_size(sqlite3_file* file) {
    return OpenFile::of(file).real()->pMethods->xSectorSize(OpenFile::of(file).real());
}
int characteristics(sqlite3_file*) { return 0; }  // nothing is promised: writes may tear and be reordered

const sqlite3_io_methods methods{
    1,         close_file,  read_file,  write_file,   truncate_file, sync_file,       file_size,
    lock_file, unlock_file, check_lock, control_file, sector_size,   characteristics, nullptr,
    nullptr,   nullptr,     nullptr,    nullptr,      nullptr};

int open_file(sqlite3_vfs*, const char* name, sqlite3_file* file, int flags, int* flags_out) {
    OpenFile& open = OpenFile::of(file);
    open.base.pMethods = nullptr;
    const int code = system_vfs->xOpen(system_vfs, name, open.real(), flags, flags_out);
    if (code == SQLITE_OK) {
        open.name = new std::string(name == nullptr ? "" : std::filesystem::path(name).filename().string());
        open.base.pMethods = &methods;
    }
    return code;
}

int delete_file(sqlite3_vfs*, const char* name, int sync_folder) {
    if (disk != nullptr) {
        disk->remove(std::filesystem::path(name).filename().string());
    }
    return system_vfs->xDelete(system_vfs, name, sync_folder);
}

sqlite3_vfs shim;

void apply(std::string& bytes, const FaultyDisk::Write& write, std::size_t count) {
    const auto offset = static_cast<std::size_t>(write.offset);
    if (write.truncates) {
        bytes.resize(offset);
        return;
    }
    if (bytes.size() < offset + count) {
        bytes.resize(offset + count, '\0');
    }
    bytes.replace(offset, count, write.bytes, 0, count);
}

}  // namespace

FaultyDisk::FaultyDisk() {
    system_vfs = sqlite3_vfs_find(nullptr);
    shim = *system_vfs;
    shim.zName = faulty_disk_vfs;
    shim.pNext = nullptr;
    shim.szOsFile = static_cast<int>(sizeof(OpenFile)) + system_vfs->szOsFile;
    shim.xOpen = open_file;
    shim.xDelete = delete_file;
    sqlite3_vfs_register(&shim, 0);
    disk = this;
}

FaultyDisk::~FaultyDisk() {
    sqlite3_vfs_unregister(&shim);
    disk = nullptr;
}

bool FaultyDisk::takes(const std::string& file, Write write) {
    if (before_each) {
        before_each();
    }
    if (writes_left_ && --*writes_left_ <= 0) {
        was_full_ = true;
        return false;
    }
    files_[file].since.push_back(std::move(write));
    return true;
}

void FaultyDisk::sync(const std::string& file) {
    if (before_each) {
        before_each();
    }
    Held& held = files_[file];
    std::string bytes = held.synced.value_or("");
    for (const Write& write : held.since) {
        apply(bytes, write, write.bytes.size());
    }
    held.synced = std::move(bytes);
    held.since.clear();
}

void FaultyDisk::remove(const std::string& file) { files_.erase(file); }

DiskImage FaultyDisk::synced() const {
    DiskImage image;
    for (const auto& [name, held] : files_) {
        if (held.synced) {
            image[name] = *held.synced;
        }
    }
    return image;
}

DiskImage FaultyDisk::torn(std::mt19937& chance) const {
    DiskImage image;
    for (const auto& [name, held] : files_) {
        std::string bytes = held.synced.value_or("");
        for (const Write& write : held.since) {
            if (chance() % 2 == 0) {
                const bool tears = write.bytes.size() > 512 && chance() % 4 == 0;
                apply(bytes, write, tears ? 512 * (chance() % (write.bytes.size() / 512)) : write.bytes.size());
            }
        }
        if (held.synced || !bytes.empty()) {
            image[name] = std::move(bytes);
        }
    }
    return image;
}

void write_image(const DiskImage& image, const std::filesystem::path& folder) {
    std::filesystem::create_directories(folder);
    for (const auto& [name, bytes] : image) {
        std::ofstream(folder / name, std::ios::binary) << bytes;
    }
}

}  // namespace truehang::testing
