// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "store/connection.h"
#include "store/photo_folder.h"
#include "store/store.h"

namespace truehang {

inline constexpr std::string_view store_file = "truehang.sqlite";
inline constexpr std::string_view photo_folder = "photos";

/// What a Store is made of.
struct Store::Inside {
    StoreSurroundings surroundings;
    std::filesystem::path folder;
    Connection connection;
    PhotoFolder photos;
    std::string device_id;

    Inside(StoreSurroundings given, const std::filesystem::path& in)
        : surroundings(std::move(given)),
          folder(in),
          connection(in / store_file, surroundings.vfs),
          photos(in / photo_folder) {}
};

}  // namespace truehang
