// SPDX-License-Identifier: Apache-2.0
#include "world.h"

#include <fmt/format.h>
#include <CLI/CLI.hpp>

#include <iostream>

// simulate [--from SEED] [--runs N] [--bug WORD] [--tell]: ends with 0 where every run ended as it must.

using namespace truehang::sync::simulation;

namespace {

void print(const Tally& tally) {
    for (const auto& [way, phase, fault] : cases()) {
        fmt::print("{:>9} {:<13} {:<10} {}\n", tally.of(way, phase, fault), way_words[static_cast<std::size_t>(way)],
                   phase_words[static_cast<std::size_t>(phase)], fault_words[static_cast<std::size_t>(fault)]);
    }
}

}  // namespace

int main(int argc, char** argv) {
    CLI::App app("Phones, wire and workroom in simulated time");
    std::uint64_t from = 1;
    std::uint64_t runs = 1000;
    std::string word = "none";
    bool tell = false;
    app.add_option("--from", from, "the first seed");
    app.add_option("--runs", runs, "how many seeds");
    app.add_option("--bug", word, "a fault put into the protocol")
        ->check(CLI::IsMember(std::vector<std::string>(bug_words.begin(), bug_words.end())));
    app.add_flag("--tell", tell, "tell all that happens");
    CLI11_PARSE(app, argc, argv);
    const auto bug = static_cast<Bug>(std::find(bug_words.begin(), bug_words.end(), word) - bug_words.begin());

    Tally tally;
    long long wrong = 0;
    long long edits = 0;
    long long together = 0;
    long long requests = 0;
    for (std::uint64_t seed = from; seed < from + runs; ++seed) {
        const auto ended = World(seed, bug, tell ? &std::cout : nullptr).run();
        tally.add(ended.tally);
        edits += ended.edits;
        together += ended.put_together;
        requests += ended.requests;
        wrong += ended.wrong.empty() ? 0 : 1;
        if (!ended.wrong.empty() && wrong <= 20) {
            fmt::print("seed {}: {} ({} in all)\n", seed, ended.wrong.front(), ended.wrong.size());
        }
    }
    print(tally);
    fmt::print(
        "{} runs from seed {}: {} edits, {} requests, {} put together, {} faults, the rarest {} times; {} wrong\n",
        runs, from, edits, requests, together, tally.all(), tally.least(), wrong);
    return wrong == 0 ? 0 : 1;
}
