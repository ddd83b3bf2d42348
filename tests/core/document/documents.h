// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <fstream>
#include <iterator>
#include <string>

// The documents that the tests of this folder read.

inline std::string bytes_of(const std::string& path) {
    std::ifstream file(path, std::ios::binary);
    if (!file) {
        throw std::runtime_error("can't read " + path);
    }
    return {std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
}

inline std::string source_file(const std::string& path) {
    return bytes_of(std::string(TRUEHANG_SOURCE_DIR "/") + path);
}
inline std::string example_survey() { return source_file("tests/reference/contract/survey.example.json"); }
inline std::string example_figures() { return source_file("tests/reference/contract/figures.example.json"); }
/// Every key of the contract at least once, in the contract's order.
inline std::string full_survey() { return source_file("tests/core/document/full.survey.json"); }
