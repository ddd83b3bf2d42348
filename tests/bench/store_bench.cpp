// SPDX-License-Identifier: Apache-2.0
#include "document/document.h"
#include "store/store.h"

#include <SQLiteCpp/SQLiteCpp.h>
#include <benchmark/benchmark.h>

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>

// What a durable reading costs beside the least that SQLite can do: one small row committed under the same pragmas. The
// ratio of the two medians is what counts; both run on the same disk.

namespace truehang {
namespace {

namespace fs = std::filesystem;

class Folder {
public:
    Folder() {
        std::string pattern = (fs::temp_directory_path() / "truehang-bench-XXXXXX").string();
        path_ = ::mkdtemp(pattern.data());
    }
    ~Folder() { fs::remove_all(path_); }
    Folder(const Folder&) = delete;
    Folder& operator=(const Folder&) = delete;
    [[nodiscard]] const fs::path& path() const { return path_; }

private:
    fs::path path_;
};

Survey pilot_house() {
    std::ifstream in(fs::path(TRUEHANG_SOURCE_DIR) / "tests/reference/contract/survey.example.json");
    return read_survey(std::string{std::istreambuf_iterator<char>(in), std::istreambuf_iterator<char>()}).value();
}

std::unique_ptr<Store> open_store(const fs::path& folder) {
    StoreSurroundings given;
    given.now = [] { return std::string("2026-03-14T10:30:00+00:00"); };
    given.new_id = [] { return std::string("01924f6a-7c00-7000-8000-00000000d001"); };
    return std::move(Store::open(folder, std::move(given))).value();
}

void raw_commit_of_one_row(benchmark::State& state) {
    const Folder folder;
    SQLite::Database database((folder.path() / "raw.sqlite").string(), SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
    database.exec(
        "PRAGMA locking_mode = EXCLUSIVE; PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL;"
        "CREATE TABLE reading (station TEXT, value_mm REAL)");
    SQLite::Statement insert(database, "INSERT INTO reading VALUES ('opening.width.top', 1242)");
    for (auto _ : state) {
        insert.exec();
        insert.reset();
    }
}
BENCHMARK(raw_commit_of_one_row)->Unit(benchmark::kMicrosecond)->UseRealTime();

void durable_reading(benchmark::State& state) {
    const Folder folder;
    const auto store = open_store(folder.path());
    const Survey survey = pilot_house();
    if (!store->keep(survey, "Visit made")) {
        state.SkipWithError("the visit was not kept");
        return;
    }
    Window south = survey.rooms.at(0).windows.at(0);
    double mm = 1000.0;
    for (auto _ : state) {
        south.readings.back().value = Length::mm(mm += 0.5);
        if (!store->keep_window(survey.id, "parlour", south, "Across the top")) {
            state.SkipWithError("a reading was not kept");
            break;
        }
    }
}
BENCHMARK(durable_reading)->Unit(benchmark::kMicrosecond)->UseRealTime();

void kept_digit(benchmark::State& state) {
    const Folder folder;
    const auto store = open_store(folder.path());
    Draft draft{"visit", "parlour", "south", "walk", "opening.width.top", "", ""};
    int digit = 0;
    for (auto _ : state) {
        draft.typed = std::to_string(++digit);
        if (!store->keep_draft(draft)) {
            state.SkipWithError("a digit was not kept");
            break;
        }
    }
}
BENCHMARK(kept_digit)->Unit(benchmark::kMicrosecond)->UseRealTime();

}  // namespace
}  // namespace truehang
