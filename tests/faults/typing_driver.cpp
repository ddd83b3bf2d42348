// SPDX-License-Identifier: Apache-2.0
// Types readings into the store of the folder given, digit by digit, until it is killed. Each line it prints
// ("READING DIGITS") was kept before it was printed; 0 digits: the reading itself was entered.
#include "store/store.h"
#include "typing.h"

#include <unistd.h>

#include <cstdlib>

namespace truehang::testing {
namespace {

void say(int reading, int digits) {
    const std::string line = std::to_string(reading) + " " + std::to_string(digits) + "\n";
    if (::write(STDOUT_FILENO, line.data(), line.size()) < 0) {
        std::exit(1);
    }
}

template <class T>
T must(Result<T> result) {
    if (!result) {
        const std::string text = result.error().text + "\n";
        static_cast<void>(::write(STDERR_FILENO, text.data(), text.size()));
        std::exit(1);
    }
    return std::move(result).value();
}

int run(const char* folder) {
    StoreSurroundings given;
    given.now = [] { return std::string("2026-03-14T10:30:00+00:00"); };
    given.new_id = [] { return std::string("01924f6a-7c00-7000-8000-00000000d001"); };
    const auto store = must(Store::open(folder, given));
    int reading = 0;
    if (const auto visit = store->visit(typed_visit)) {
        reading = static_cast<int>(visit->rooms.at(0).windows.at(0).readings.size());
    } else {
        Survey survey;
        survey.id = typed_visit;
        survey.rooms.emplace_back().id = "parlour";
        survey.rooms[0].windows.push_back(typed_window(0));
        must(store->keep(survey, "Visit made"));
    }
    for (;; ++reading) {
        for (int digits = 1; digits <= 4; ++digits) {
            must(store->keep_draft(
                {typed_visit, "parlour", "south", "walk", std::to_string(reading), typed_text(reading, digits), ""}));
            say(reading, digits);
        }
        must(store->keep_window(typed_visit, "parlour", typed_window(reading + 1), "A reading"));
        say(reading + 1, 0);
    }
}

}  // namespace
}  // namespace truehang::testing

int main(int count, char** arguments) { return count == 2 ? truehang::testing::run(arguments[1]) : 2; }
