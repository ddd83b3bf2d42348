// SPDX-License-Identifier: Apache-2.0
#include "workroom/archive/photo_pieces.h"

#include "workroom/archive/archive.h"
#include "workroom/archive/disk.h"

#include <fstream>

namespace truehang::workroom {

namespace {

constexpr std::size_t piece_bytes = std::size_t{1} << 20U;

}  // namespace

Result<Done> put_pieces(Records& records, const std::string& sha256, const std::filesystem::path& file) {
    std::ifstream in(file, std::ios::binary);
    std::string piece(piece_bytes, '\0');
    Query insert(records, "INSERT INTO photo_piece(sha256, number, bytes) VALUES(?, ?, ?)");
    for (long long number = 0; in.good(); ++number) {
        in.read(piece.data(), static_cast<std::streamsize>(piece.size()));
        const auto count = static_cast<std::size_t>(in.gcount());
        if (count == 0) {
            break;
        }
        insert.reset();
        insert.bind(1, sha256);
        insert.bind(2, number);
        insert.bind_bytes(3, std::string_view(piece).substr(0, count));
        insert.exec();
    }
    return in.eof() && !in.bad() ? Result<Done>(Done{}) : Result<Done>(system_error(file));
}

void for_each_piece(Records& records, const std::string& sha256, const std::function<void(std::string_view)>& take) {
    // One by one: all of a photo at once may be 32 MiB.
    Query query(records,
                "SELECT number, bytes FROM photo_piece WHERE sha256 = ? AND number > ? ORDER BY number LIMIT 1");
    query.bind(1, sha256);
    for (long long last = -1;;) {
        query.reset();
        query.bind(2, last);
        if (!query.step()) {
            return;
        }
        last = query.number(0);
        take(query.text(1));
    }
}

Result<std::string> photo_bytes(Archive& archive, const std::string& sha256) {
    return archive.database().read<std::string>([&](Records& records) -> Result<std::string> {
        Query query(records, "SELECT bytes FROM photo_piece WHERE sha256 = ? ORDER BY number");
        query.bind(1, sha256);
        std::string bytes;
        while (query.step()) {
            bytes += query.text(0);
        }
        return bytes;
    });
}

}  // namespace truehang::workroom
