// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "document/document.h"
#include "store/store.h"

#include <gtest/gtest.h>

#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <map>
#include <string>

namespace truehang::testing {

/// A folder of its own that goes with the test.
class Folder {
public:
    Folder() {
        std::string pattern = (std::filesystem::temp_directory_path() / "truehang-XXXXXX").string();
        path_ = ::mkdtemp(pattern.data());
    }
    ~Folder() {
        std::error_code code;
        std::filesystem::remove_all(path_, code);
    }
    Folder(const Folder&) = delete;
    Folder& operator=(const Folder&) = delete;
    [[nodiscard]] const std::filesystem::path& path() const { return path_; }

private:
    std::filesystem::path path_;
};

/// A clock that moves on a second at each look, and ids that count.
inline StoreSurroundings surroundings(const std::string& vfs = "") {
    auto count = std::make_shared<int>(0);
    StoreSurroundings given;
    given.now = [count] {
        ++*count;
        char text[64];
        std::snprintf(text, sizeof text, "2026-03-14T%02d:%02d:%02d+00:00", 10 + *count / 3600 % 14, *count / 60 % 60,
                      *count % 60);
        return std::string(text);
    };
    given.new_id = [] { return std::string("01924f6a-7c00-7000-8000-00000000d001"); };
    given.vfs = vfs;
    return given;
}

inline std::unique_ptr<Store> open_store(const std::filesystem::path& folder,
                                         StoreSurroundings given = surroundings()) {
    auto opened = Store::open(folder, std::move(given));
    if (!opened) {
        ADD_FAILURE() << opened.error().where << ": " << opened.error().text;
        return nullptr;
    }
    return std::move(opened).value();
}

inline std::string file_text(const std::filesystem::path& file) {
    std::ifstream in(file, std::ios::binary);
    return {std::istreambuf_iterator<char>(in), std::istreambuf_iterator<char>()};
}

/// Every file of a folder with its bytes.
inline std::map<std::string, std::string> folder_bytes(const std::filesystem::path& folder) {
    std::map<std::string, std::string> files;
    for (const auto& entry : std::filesystem::recursive_directory_iterator(folder)) {
        if (entry.is_regular_file()) {
            files[entry.path().lexically_relative(folder).string()] = file_text(entry.path());
        }
    }
    return files;
}

/// The contract's example: Pilot house, one room, one window, nine readings.
inline Survey pilot_house() {
    const auto read = read_survey(
        file_text(std::filesystem::path(TRUEHANG_SOURCE_DIR) / "tests/reference/contract/survey.example.json"));
    if (!read) {
        ADD_FAILURE() << read.error().front().pointer << ": " << read.error().front().text;
        return {};
    }
    return read.value();
}

/// The document without its revision: what two surveys have in common when nothing was lost.
inline std::string document_of(Survey survey) {
    survey.revision.reset();
    return write_survey(survey, false);
}

inline Reading reading(const std::string& id, const std::string& station, double mm) {
    Reading made;
    made.id = id;
    made.station = station;
    made.value = Length::mm(mm);
    made.typed = std::to_string(static_cast<int>(mm));
    made.taken_at = "2026-03-14T10:30:00+00:00";
    return made;
}

inline Window window(const std::string& id) {
    Window made;
    made.id = id;
    made.name = "Window " + id;
    made.shape = Shape::recess;
    return made;
}

/// The value, or a failed test and a value made of nothing.
template <class T>
T must(Result<T> result) {
    if (!result) {
        ADD_FAILURE() << result.error().where << ": " << result.error().text;
        if constexpr (std::is_default_constructible_v<T>) {
            return T{};
        }
    }
    return std::move(result).value();
}

}  // namespace truehang::testing
