// SPDX-License-Identifier: Apache-2.0
// How long the figures take: of one window, as the phone asks after every reading, and of a house with forty.
#include "document/document.h"
#include "figures/figures.h"

#include <benchmark/benchmark.h>

#include <cstddef>
#include <fstream>
#include <iterator>
#include <stdexcept>
#include <string>

namespace truehang {
namespace {

std::string example_text() {
    std::ifstream file(TRUEHANG_SOURCE_DIR "/tests/reference/contract/survey.example.json", std::ios::binary);
    return {std::istreambuf_iterator<char>(file), {}};
}

Survey example() {
    auto read = read_survey(example_text());
    if (!read || read->rooms.empty() || read->rooms.front().windows.empty()) {
        throw std::runtime_error("the example survey doesn't read");
    }
    return read.value();
}

/// The example's first room again and again, its first window eight times in each, until there are forty.
Survey house_of_forty() {
    Survey survey = example();
    Room room = survey.rooms.front();
    const Window window = room.windows.front();
    survey.rooms.clear();
    for (int r = 1; r <= 5; ++r) {
        room.id = "room-" + std::to_string(r);
        room.windows.assign(8, window);
        for (std::size_t w = 0; w < room.windows.size(); ++w) {
            room.windows[w].id = room.id + "-window-" + std::to_string(w + 1);
        }
        survey.rooms.push_back(room);
    }
    return survey;
}

void figures_of_one_window(benchmark::State& state) {
    const Survey survey = example();
    const Room& room = survey.rooms.front();
    for (auto _ : state) {
        benchmark::DoNotOptimize(work_out_window(survey, room, room.windows.front()));
    }
}
BENCHMARK(figures_of_one_window)->Unit(benchmark::kMicrosecond);

/// A window with every height, all sides and both diagonals, and the wall in one go: six networks.
Survey full_window(bool slipped) {
    Survey survey = example();
    Window& window = survey.rooms.front().windows.front();
    window.readings.clear();
    const auto add = [&](const std::string& station, int mm) {
        Reading reading;
        reading.id = reading.station = station;
        reading.value = Length::mm(mm);
        reading.typed = std::to_string(mm);
        window.readings.push_back(reading);
    };
    for (const auto* line : {"left", "centre", "right"}) {
        const std::string end = std::string(".") + line;
        add("below" + end, 860);
        add("opening.height" + end, 1130);
        add("above" + end, 148);
        add("ceiling" + end, slipped && end == ".left" ? 2183 : 2138);
        add("level" + end, 1000);
    }
    for (const auto* at : {"top", "middle", "bottom"}) {
        add(std::string("opening.width.") + at, slipped && std::string(at) == "top" ? 1420 : 1240);
    }
    add("opening.diagonal.rising", 1678);
    add("opening.diagonal.falling", 1677);
    add("wall.left", 400);
    add("wall.right", 600);
    add("wall.total", 2240);
    add("pole.above", 80);
    add("pole.floor", 2070);
    return survey;
}

void figures_of_a_full_window(benchmark::State& state) {
    const Survey survey = full_window(state.range(0) != 0);
    const Room& room = survey.rooms.front();
    for (auto _ : state) {
        benchmark::DoNotOptimize(work_out_window(survey, room, room.windows.front()));
    }
}
BENCHMARK(figures_of_a_full_window)->ArgName("slipped")->Arg(0)->Arg(1)->Unit(benchmark::kMicrosecond);

void figures_of_forty_windows(benchmark::State& state) {
    const Survey survey = house_of_forty();
    for (auto _ : state) {
        benchmark::DoNotOptimize(work_out(survey));
    }
}
BENCHMARK(figures_of_forty_windows)->Unit(benchmark::kMicrosecond);

void document_to_figures_document(benchmark::State& state) {
    const std::string text = write_survey(house_of_forty());
    for (auto _ : state) {
        const auto survey = read_survey(text);
        benchmark::DoNotOptimize(write_figures(work_out(survey.value())));
    }
}
BENCHMARK(document_to_figures_document)->Unit(benchmark::kMicrosecond);

}  // namespace
}  // namespace truehang
