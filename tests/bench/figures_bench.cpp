// SPDX-License-Identifier: Apache-2.0
// How long the figures take: of one window, as the phone asks after every reading, and of a house with forty.
#include "adjust/photo_plane.h"
#include "document/document.h"
#include "figures/figures.h"
#include "units/angle_text.h"

#include <benchmark/benchmark.h>

#include <array>
#include <cstddef>
#include <fstream>
#include <iterator>
#include <stdexcept>
#include <string>
#include <utility>
#include <vector>

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

/// The example's first room again and again, its first window eight times in each; `windows` is a multiple of eight.
Survey house_of(int windows) {
    Survey survey = example();
    Room room = survey.rooms.front();
    const Window window = room.windows.front();
    survey.rooms.clear();
    for (int r = 1; r <= windows / 8; ++r) {
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

/// A photo of an opening of 1240 by 1130 with an A4 sheet on either side, two pixels a millimetre, narrowing upwards.
PhotoPlane photographed() {
    const auto tap = [](double x, double y) {
        const double w = 1.0 + 1e-4 * y;
        return Taps{{(800.0 + 2.0 * x) / w / 4032.0, (2800.0 - 2.0 * y) / w / 3024.0}};
    };
    const auto corners = [&](double x, double y, double width, double height) {
        return TappedCorners{tap(x, y + height), tap(x + width, y + height), tap(x + width, y), tap(x, y)};
    };
    const Length a4_width = Length::mm(210.0);
    const Length a4_height = Length::mm(297.0);
    return {4032,
            3024,
            {{a4_width, a4_height, corners(1300, 300, 210, 297), {}},
             {a4_width, a4_height, corners(-270, 300, 210, 297), {}}},
            corners(0, 0, 1240, 1130),
            {}};
}

void sizes_of_one_photo(benchmark::State& state) {
    const PhotoPlane plane = photographed();
    for (auto _ : state) {
        benchmark::DoNotOptimize(photo_shape(plane).value());
    }
}
BENCHMARK(sizes_of_one_photo)->Unit(benchmark::kMicrosecond);

void figures_with_a_photo(benchmark::State& state) {
    Survey survey = full_window(state.range(0) != 0);
    survey.rooms.front().windows.front().photos.emplace_back().plane = photographed();
    const Room& room = survey.rooms.front();
    for (auto _ : state) {
        benchmark::DoNotOptimize(work_out_window(survey, room, room.windows.front()));
    }
}
BENCHMARK(figures_with_a_photo)->ArgName("slipped")->Arg(0)->Arg(1)->Unit(benchmark::kMicrosecond);

/// A window of another shape as it was built (whole mm, degrees to the half), its readings typed as they stand; then
/// one digit pair exchanged in the first of `slips` readings, or in both.
struct Built {
    Shape shape;
    std::vector<std::pair<std::string, double>> readings;
    std::array<std::pair<std::string, double>, 2> slips;
};

/// Three facets of 610, 1240, 600 that turn by 45 and 44.5 degrees, with chord, depths and mouth angles.
Built bay() {
    return {Shape::bay,
            {{"facet.1.width", 610},
             {"facet.2.width", 1240},
             {"facet.3.width", 600},
             {"corner.1.angle_deg", 135},
             {"corner.2.angle_deg", 135.5},
             {"bay.chord", 2099},
             {"corner.1.depth", 429},
             {"corner.2.depth", 422},
             {"mouth.left.angle_deg", 44.5},
             {"mouth.right.angle_deg", 44.5}},
            {{{"corner.1.angle_deg", 153}, {"facet.2.width", 1420}}}};
}

/// Two windows that meet in a corner of 92 degrees.
Built corner() {
    return {Shape::corner,
            {{"facet.1.width", 840},
             {"facet.2.width", 1130},
             {"corner.1.angle_deg", 92},
             {"corner.chord", 1431},
             {"corner.1.depth", 663},
             {"mouth.left.angle_deg", 52},
             {"mouth.right.angle_deg", 36}},
            {{{"corner.1.angle_deg", 29}, {"facet.2.width", 1310}}}};
}

/// A segment of 1000 over 400, so of radius 512.5, with five heights along it.
Built arch() {
    return {Shape::arch,
            {{"opening.width.top", 1000},
             {"opening.height.left", 1500},
             {"opening.height.right", 1502},
             {"opening.height.centre", 1901},
             {"arch.rise", 400},
             {"ordinate.1.along", 100},
             {"ordinate.1.height", 207},
             {"ordinate.2.along", 300},
             {"ordinate.2.height", 359},
             {"ordinate.3.along", 500},
             {"ordinate.3.height", 400},
             {"ordinate.4.along", 700},
             {"ordinate.4.height", 359},
             {"ordinate.5.along", 900},
             {"ordinate.5.height", 207}},
            {{{"ordinate.2.height", 539}, {"ordinate.4.along", 770}}}};
}

/// Its apex 700 along a bottom edge of 1500.
Built gable() {
    return {Shape::gable,
            {{"opening.width.bottom", 1500},
             {"opening.height.left", 1200},
             {"opening.height.right", 1210},
             {"opening.height.centre", 1850},
             {"gable.apex.along", 700},
             {"gable.slope.left", 955},
             {"gable.slope.right", 1025}},
            {{{"gable.slope.left", 559}, {"opening.height.right", 1120}}}};
}

Survey survey_of(const Built& built, std::size_t slips) {
    Survey survey = example();
    Window& window = survey.rooms.front().windows.front();
    window.shape = Word<Shape>(built.shape);
    window.readings.clear();
    for (auto [station, value] : built.readings) {
        for (std::size_t i = 0; i < slips; ++i) {
            value = built.slips[i].first == station ? built.slips[i].second : value;
        }
        Reading reading;
        reading.id = reading.station = station;
        if (station.ends_with("_deg")) {
            reading.angle = Angle::degrees(value);
            reading.typed = write_angle(*reading.angle);
        } else {
            reading.value = Length::mm(value);
            reading.typed = std::to_string(static_cast<int>(value));
        }
        window.readings.push_back(reading);
    }
    return survey;
}

void figures_of(benchmark::State& state, const Built& built) {
    const Survey survey = survey_of(built, static_cast<std::size_t>(state.range(0)));
    const Room& room = survey.rooms.front();
    for (auto _ : state) {
        benchmark::DoNotOptimize(work_out_window(survey, room, room.windows.front()));
    }
}
BENCHMARK_CAPTURE(figures_of, a_bay, bay())->ArgName("slips")->DenseRange(0, 2)->Unit(benchmark::kMicrosecond);
BENCHMARK_CAPTURE(figures_of, a_corner, corner())->ArgName("slips")->DenseRange(0, 2)->Unit(benchmark::kMicrosecond);
BENCHMARK_CAPTURE(figures_of, an_arch, arch())->ArgName("slips")->DenseRange(0, 2)->Unit(benchmark::kMicrosecond);
BENCHMARK_CAPTURE(figures_of, a_gable, gable())->ArgName("slips")->DenseRange(0, 2)->Unit(benchmark::kMicrosecond);

void figures_of_a_house(benchmark::State& state) {
    const Survey survey = house_of(static_cast<int>(state.range(0)));
    for (auto _ : state) {
        benchmark::DoNotOptimize(work_out(survey));
    }
}
BENCHMARK(figures_of_a_house)->ArgName("windows")->Arg(40)->Arg(4000)->Unit(benchmark::kMicrosecond);

void document_to_figures_document(benchmark::State& state) {
    const std::string text = write_survey(house_of(40));
    for (auto _ : state) {
        const auto survey = read_survey(text);
        benchmark::DoNotOptimize(write_figures(work_out(survey.value())));
    }
}
BENCHMARK(document_to_figures_document)->Unit(benchmark::kMicrosecond);

}  // namespace
}  // namespace truehang
