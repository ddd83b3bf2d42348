// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "units/result.h"
#include "workroom/records/records.h"

#include <filesystem>
#include <functional>
#include <string>
#include <string_view>

// Photos’ bytes in the records themselves (`Records::hold_photos`), in pieces of a megabyte, so that one database that
// is copied elsewhere holds everything.

namespace truehang::workroom {

class Archive;

/// Puts the bytes of `file` into the records, within the transaction under way. `io` where it can’t be read.
[[nodiscard]] Result<Done> put_pieces(Records& records, const std::string& sha256, const std::filesystem::path& file);

/// Hands a photo’s bytes on, piece by piece; no call where nothing of it is there. Throws what the records throw.
void for_each_piece(Records& records, const std::string& sha256, const std::function<void(std::string_view)>& take);

/// All of a photo; empty where nothing of it is there.
[[nodiscard]] Result<std::string> photo_bytes(Archive& archive, const std::string& sha256);

}  // namespace truehang::workroom
