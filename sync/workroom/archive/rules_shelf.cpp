// SPDX-License-Identifier: Apache-2.0
#include "workroom/archive/rules_shelf.h"

#include "workroom/archive/disk.h"

#include <fcntl.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <charconv>
#include <fstream>
#include <iterator>

namespace truehang::workroom {

namespace {

bool written(const std::filesystem::path& file, std::string_view text) {
    const int descriptor = ::open(file.c_str(), O_WRONLY | O_CREAT | O_TRUNC | O_CLOEXEC, 0600);
    if (descriptor < 0) {
        return false;
    }
    while (!text.empty()) {
        const auto count = ::write(descriptor, text.data(), text.size());
        if (count < 0 && errno == EINTR) {
            continue;
        }
        if (count < 0) {
            break;
        }
        text.remove_prefix(static_cast<std::size_t>(count));
    }
    const bool done = text.empty() && ::fsync(descriptor) == 0;
    const int fault = errno;
    ::close(descriptor);
    errno = fault;
    return done;
}

}  // namespace

std::filesystem::path RulesShelf::file_of(long long number) const {
    return folder_ / (std::to_string(number) + ".json");
}

std::vector<long long> RulesShelf::versions() const {
    std::vector<long long> found;
    std::error_code error;
    for (const auto& entry : std::filesystem::directory_iterator(folder_, error)) {
        const std::string name = entry.path().stem().string();
        long long number = 0;
        const auto [end, fault] = std::from_chars(name.data(), name.data() + name.size(), number);
        if (fault == std::errc{} && end == name.data() + name.size() && number > 0 &&
            entry.path().extension() == ".json") {
            found.push_back(number);
        }
    }
    std::sort(found.begin(), found.end());
    return found;
}

Result<RulesDocument> RulesShelf::version(long long number) const {
    if (number == 0) {
        return default_rules_document();
    }
    std::ifstream file(file_of(number), std::ios::binary);
    if (!file) {
        return Error{ErrorCode::missing, "rules", "There are no house rules of that version."};
    }
    const std::string bytes{std::istreambuf_iterator<char>(file), {}};
    auto document = read_rules_document(bytes);
    if (!document) {
        return Error{ErrorCode::damaged, file_of(number).string(), "The house rules can’t be read any more."};
    }
    return std::move(document).value();
}

Result<RulesDocument> RulesShelf::current() const {
    const auto there = versions();
    return version(there.empty() ? 0 : there.back());
}

Result<RulesDocument> RulesShelf::save(RulesDocument document, long long from, sync::Time now) {
    const long long number = from + 1;
    document.rules.version = number;
    document.rules.date = sync::write_time(now).substr(0, 10);
    const auto there = versions();
    if ((there.empty() ? 0 : there.back()) != from) {
        return Error{ErrorCode::conflict, "rules", "Somebody saved other house rules meanwhile. Look at them first."};
    }
    std::error_code error;
    std::filesystem::create_directories(folder_, error);
    const auto waiting = folder_ / (std::to_string(number) + "." + std::to_string(::getpid()) + ".new");
    if (error || !written(waiting, write_rules_document(document))) {
        const auto fault = system_error(waiting);
        ::unlink(waiting.c_str());
        return fault;
    }
    // A link fails where the name is taken: of two savers one wins.
    const bool linked = ::link(waiting.c_str(), file_of(number).c_str()) == 0;
    const int fault = errno;
    ::unlink(waiting.c_str());
    errno = fault;
    if (!linked) {
        return fault == EEXIST ? Error{ErrorCode::conflict, "rules",
                                       "Somebody saved other house rules meanwhile. Look at them first."}
                               : system_error(file_of(number));
    }
    if (!sync_folder(folder_) || !sync_folder(folder_.parent_path())) {
        return system_error(folder_);
    }
    return document;
}

}  // namespace truehang::workroom
