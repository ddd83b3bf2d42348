// SPDX-License-Identifier: Apache-2.0
#include "store_fixture.h"
#include "typing.h"

#include <sys/wait.h>
#include <unistd.h>

#include <csignal>
#include <random>

// The program is killed while someone types: every digit and every reading it showed is there.

namespace truehang::testing {
namespace {

struct Shown {
    int reading = 0;
    int digits = 0;
    int lines = 0;
};

/// Starts the driver, kills it as soon as it has shown `lines` lines, and gives the last line that it showed.
Shown type_until_killed(const std::filesystem::path& folder, int lines) {
    std::array<int, 2> ends{};
    EXPECT_EQ(::pipe(ends.data()), 0);
    const pid_t child = ::fork();
    if (child == 0) {
        ::dup2(ends[1], STDOUT_FILENO);
        ::close(ends[0]);
        ::close(ends[1]);
        ::execl(TYPING_DRIVER, TYPING_DRIVER, folder.c_str(), nullptr);
        ::_exit(127);
    }
    ::close(ends[1]);
    FILE* const output = ::fdopen(ends[0], "r");
    Shown shown;
    int reading = 0;
    int digits = 0;
    while (std::fscanf(output, "%d %d", &reading, &digits) == 2) {
        shown = {reading, digits, shown.lines + 1};
        if (shown.lines == lines) {
            ::kill(child, SIGKILL);
        }
    }
    std::fclose(output);
    int status = 0;
    ::waitpid(child, &status, 0);
    EXPECT_TRUE(WIFSIGNALED(status) && WTERMSIG(status) == SIGKILL);
    return shown;
}

/// How far typing had come, counted in digits.
int progress(int reading, int digits) { return reading * 5 + digits; }

TEST(Killed, at_fifty_moments_while_typing_keeps_every_digit_and_reading_that_was_shown) {
    const Folder folder;
    std::mt19937 chance(48);
    int in_the_middle_of_a_number = 0;
    for (int kill = 0; kill < 50; ++kill) {
        const Shown shown = type_until_killed(folder.path(), 1 + static_cast<int>(chance() % 40));
        ASSERT_GT(shown.lines, 0);
        in_the_middle_of_a_number += shown.digits > 0 ? 1 : 0;
        const auto store = open_store(folder.path());
        ASSERT_TRUE(store);
        const Survey survey = must(store->visit(typed_visit));
        const auto& readings = survey.rooms.at(0).windows.at(0).readings;
        ASSERT_GE(static_cast<int>(readings.size()), shown.reading);
        for (std::size_t i = 0; i < readings.size(); ++i) {
            EXPECT_EQ(readings[i].typed, typed_text(static_cast<int>(i), 4));
        }
        const Draft draft = must(store->draft());
        const int draft_reading = std::stoi(draft.station);
        const int draft_digits = static_cast<int>(draft.typed.size());
        EXPECT_EQ(draft.typed, typed_text(draft_reading, draft_digits));
        if (shown.digits > 0) {
            EXPECT_GE(progress(draft_reading, draft_digits), progress(shown.reading, shown.digits));
        }
    }
    EXPECT_GT(in_the_middle_of_a_number, 10);
}

}  // namespace
}  // namespace truehang::testing
