// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "units/result.h"
#include "workroom/keeping/kept_folder.h"
#include "workroom/keeping/verify.h"

#include <filesystem>
#include <vector>

namespace truehang::workroom {

/// What a copy holds.
struct Copied {
    long long documents = 0, photos = 0, photo_bytes = 0;
    std::vector<Flaw> flaws;  ///< photos whose file isn't the one that was received; copied as it is where it is there
};

/// A copy of a kept folder on its way: made beside its place as `PLACE.part`, taken to the disk and then given its
/// name. What isn't finished leaves nothing behind but after the death of the program.
class FolderCopy {
public:
    /// Errors: `conflict` where something is at the place already (an empty folder is nothing), or a part of a copy
    /// that was broken off; `io`.
    [[nodiscard]] static Result<FolderCopy> begin(const std::filesystem::path& place);
    FolderCopy(FolderCopy&& other) noexcept
        : place_(std::move(other.place_)), part_(std::exchange(other.part_, std::filesystem::path())) {}
    FolderCopy& operator=(FolderCopy&&) = delete;
    ~FolderCopy();

    /// The records as they are at one moment, then each photo that they list, house rules and what else lies there; not
    /// what is on its way in. Errors: `busy` where a survey was erased meanwhile; `full`, `io`, `damaged`.
    [[nodiscard]] Result<Copied> fill(KeptFolder& from);
    /// The same for records that can't be read whole: whatever row of them can be.
    [[nodiscard]] Result<Copied> fill_with_what_reads(KeptFolder& from);

    /// The folder while it is on its way.
    [[nodiscard]] const std::filesystem::path& part() const { return part_; }
    /// Takes it to the disk and gives it its name.
    [[nodiscard]] Result<Done> finish();

private:
    explicit FolderCopy(std::filesystem::path place, std::filesystem::path part)
        : place_(std::move(place)), part_(std::move(part)) {}
    [[nodiscard]] Result<Copied> fill_rest(KeptFolder& from);

    std::filesystem::path place_;
    std::filesystem::path part_;  ///< empty: finished
};

/// Takes what isn't whole out of a copy: the rows of such documents, photos and rolls, and such files.
[[nodiscard]] Result<Done> leave_out(const std::filesystem::path& copy, const std::vector<Flaw>& flaws);

}  // namespace truehang::workroom
