// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "protocol/time_text.h"
#include "units/result.h"
#include "workroom/keeping/kept_at.h"

#include <cstddef>
#include <filesystem>
#include <string>

namespace truehang::workroom {

/// What came in, and how much of it was there before.
struct Imported {
    std::string survey;
    std::size_t revisions = 0, photos = 0, rolls = 0;
    std::size_t revisions_before = 0, photos_before = 0, rolls_before = 0;
};

/// Takes in a survey document, a survey’s zip or a visit’s file, as though a device named “imported” had sent it. All
/// of it is read and checked before the first byte is kept. Errors: `conflict` where a revision or version of rolls is
/// there with other content, `unreadable`, `damaged`, `out_of_range`, `missing`, and that the survey was erased.
[[nodiscard]] Result<Imported> import_survey(const KeptAt& kept, const std::filesystem::path& file, sync::Time now);

}  // namespace truehang::workroom
