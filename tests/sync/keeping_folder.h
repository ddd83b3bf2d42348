// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "protocol/digest.h"
#include "receiver_process.h"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <string>
#include <vector>

// A workroom's folder with something in it, and the commands that keep it.

namespace truehang::sync::test {

/// Runs the built program with these words.
inline Outcome workroom(std::vector<std::string> words) {
    words.insert(words.begin(), TRUEHANG_WORKROOM);
    return run_program(words);
}

inline std::string digest_of(std::string_view bytes) { return hex(sha256(bytes)); }

/// Bytes that begin as a JPEG does (ITU-T T.81, SOI and APP0) and hold `text`.
inline std::string photo_of(const std::string& text) { return "\xff\xd8\xff\xe0" + text + std::string(3000, 'p'); }

/// The worked example that shows one photo, of a client.
inline std::string survey_with_photo(const std::string& id, long long revision, const std::string& photo,
                                     const std::string& client = "H. Kask") {
    auto survey = nlohmann::ordered_json::parse(example_survey(id, revision));
    survey["client"]["name"] = client;
    for (auto& room : survey["rooms"]) {
        for (auto& window : room["windows"]) {
            if (window.contains("photos")) {
                window["photos"][0]["sha256"] = digest_of(photo);
                window["photos"][0]["bytes"] = photo.size();
            }
        }
    }
    return survey.dump();
}

/// Where a photo's file lies in a folder that is kept.
inline std::filesystem::path photo_file(const std::filesystem::path& data, const std::string& photo) {
    const auto digest = digest_of(photo);
    return data / "photos" / digest.substr(0, 2) / digest;
}

inline void write_file(const std::filesystem::path& file, std::string_view bytes) {
    std::FILE* out = std::fopen(file.c_str(), "wb");
    ASSERT_NE(out, nullptr) << file;
    EXPECT_EQ(std::fwrite(bytes.data(), 1, bytes.size(), out), bytes.size());
    std::fclose(out);
}

}  // namespace truehang::sync::test
