// SPDX-License-Identifier: Apache-2.0
#include "workroom/documents.h"

#include "document/rolls_document.h"
#include "protocol/limits.h"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <cerrno>
#include <cstdio>
#include <cstring>
#include <memory>

namespace truehang::workroom {

namespace {

using File = std::unique_ptr<std::FILE, int (*)(std::FILE*)>;

std::string one_line(std::string text) {
    for (char& c : text) {
        c = static_cast<unsigned char>(c) < 0x20 ? ' ' : c;
    }
    return text;
}

std::string quoted(const std::string& pointer) {
    return nlohmann::json(pointer).dump(-1, ' ', false, nlohmann::json::error_handler_t::replace);
}

/// What a file holds, or nothing and its faults on standard error.
template <class Document, class Read>
std::optional<Document> read_or_faults(const std::string& path, const Read& read) {
    const auto bytes = read_document(path);
    if (!bytes) {
        fmt::print(stderr, "{}: {}\n", one_line(bytes.error().where), bytes.error().text);
        return std::nullopt;
    }
    auto document = read(*bytes);
    if (!document) {
        print_faults(document.error());
        return std::nullopt;
    }
    return std::move(document).value();
}

}  // namespace

Result<std::string> read_document(const std::string& path) {
    const bool standard = path == "-";
    const File file(standard ? stdin : std::fopen(path.c_str(), "rb"),
                    standard ? [](std::FILE*) { return 0; } : &std::fclose);
    if (!file) {
        return Error{ErrorCode::missing, path, std::string("It can’t be opened: ") + std::strerror(errno) + "."};
    }
    std::string bytes(sync::document_limit + 1, '\0');
    bytes.resize(std::fread(bytes.data(), 1, bytes.size(), file.get()));
    if (std::ferror(file.get()) != 0) {
        return Error{ErrorCode::io, path, std::string("It can’t be read: ") + std::strerror(errno) + "."};
    }
    return bytes;
}

void print_faults(const Faults& faults) {
    for (const auto& fault : faults) {
        fmt::print(stderr, "{}: {}\n", quoted(fault.pointer), one_line(fault.text));
    }
}

std::optional<Survey> survey_or_faults(const std::string& path) {
    return read_or_faults<Survey>(path, [](const std::string& bytes) { return read_survey(bytes); });
}

std::optional<RollsThatCame> rolls_or_faults(const std::string& path, const Survey& survey) {
    return read_or_faults<RollsThatCame>(path, [&](const std::string& bytes) { return read_rolls(bytes, survey); });
}

bool write_out(const std::string& text, const std::string& file) {
    const File out(file.empty() ? stdout : std::fopen(file.c_str(), "wb"),
                   file.empty() ? [](std::FILE*) { return 0; } : &std::fclose);
    const bool written =
        out && std::fwrite(text.data(), 1, text.size(), out.get()) == text.size() && std::fflush(out.get()) == 0;
    if (!written) {
        fmt::print(stderr, "{}: It can’t be written: {}.\n", file.empty() ? "standard output" : file,
                   std::strerror(errno));
    }
    return written;
}

}  // namespace truehang::workroom
