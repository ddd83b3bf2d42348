// SPDX-License-Identifier: Apache-2.0
#include "workroom/archive/rules_shelf.h"

#include "workroom/archive/archive.h"
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

Error saved_meanwhile() {
    return {ErrorCode::conflict, "rules", "Somebody saved other house rules meanwhile. Look at them first."};
}

Error no_such_version() { return {ErrorCode::missing, "rules", "There are no house rules of that version."}; }

Result<std::vector<long long>> rows(Database& database) {
    return database.read<std::vector<long long>>([](Records& records) -> Result<std::vector<long long>> {
        Query query(records, "SELECT version FROM house_rules ORDER BY version");
        std::vector<long long> found;
        while (query.step()) {
            found.push_back(query.number(0));
        }
        return found;
    });
}

Result<std::string> row(Database& database, long long number) {
    return database.read<std::string>([number](Records& records) -> Result<std::string> {
        Query query(records, "SELECT bytes FROM house_rules WHERE version = ?");
        query.bind(1, number);
        return query.step() ? Result<std::string>(query.text(0)) : Result<std::string>(no_such_version());
    });
}

Result<Done> keep_row(Database& database, long long number, const std::string& bytes) {
    return database.write_and_wait<Done>([&](Records& records) -> Result<Done> {
        Query insert(records, "INSERT INTO house_rules(version, bytes) VALUES(?, ?) ON CONFLICT(version) DO NOTHING");
        insert.bind(1, number);
        insert.bind_bytes(2, bytes);
        return insert.exec() == 1 ? Result<Done>(Done{}) : Result<Done>(saved_meanwhile());
    });
}

}  // namespace

RulesShelf::RulesShelf(Archive& archive)
    : folder_(archive.rules_folder()), records_(archive.database().hold_photos() ? &archive.database() : nullptr) {}

std::filesystem::path RulesShelf::file_of(long long number) const {
    return folder_ / (std::to_string(number) + ".json");
}

std::vector<long long> RulesShelf::files() const {
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

Result<std::vector<long long>> RulesShelf::versions() const {
    return records_ != nullptr ? rows(*records_) : Result<std::vector<long long>>(files());
}

Result<std::string> RulesShelf::bytes_of(long long number) const {
    if (records_ != nullptr) {
        return row(*records_, number);
    }
    std::ifstream file(file_of(number), std::ios::binary);
    return file ? Result<std::string>(std::string{std::istreambuf_iterator<char>(file), {}})
                : Result<std::string>(no_such_version());
}

Result<RulesDocument> RulesShelf::version(long long number) const {
    if (number == 0) {
        return default_rules_document();
    }
    const auto bytes = bytes_of(number);
    if (!bytes) {
        return bytes.error();
    }
    auto document = read_rules_document(*bytes);
    if (!document) {
        return Error{ErrorCode::damaged, file_of(number).string(), "The house rules can’t be read any more."};
    }
    return std::move(document).value();
}

Result<RulesDocument> RulesShelf::current() const {
    const auto there = versions();
    return there ? version(there->empty() ? 0 : there->back()) : Result<RulesDocument>(there.error());
}

Result<RulesDocument> RulesShelf::save(RulesDocument document, long long from, sync::Time now) {
    const long long number = from + 1;
    document.rules.version = number;
    document.rules.date = sync::write_time(now).substr(0, 10);
    const auto there = versions();
    if (!there) {
        return there.error();
    }
    if ((there->empty() ? 0 : there->back()) != from) {
        return saved_meanwhile();
    }
    const auto bytes = write_rules_document(document);
    const auto kept = records_ != nullptr ? keep_row(*records_, number, bytes) : keep_file(number, bytes);
    return kept ? Result<RulesDocument>(std::move(document)) : Result<RulesDocument>(kept.error());
}

Result<Done> RulesShelf::keep_file(long long number, const std::string& bytes) const {
    std::error_code error;
    std::filesystem::create_directories(folder_, error);
    const auto waiting = folder_ / (std::to_string(number) + "." + std::to_string(::getpid()) + ".new");
    if (error || !written(waiting, bytes)) {
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
        return fault == EEXIST ? saved_meanwhile() : system_error(file_of(number));
    }
    return sync_folder(folder_) && sync_folder(folder_.parent_path()) ? Result<Done>(Done{}) : system_error(folder_);
}

}  // namespace truehang::workroom
