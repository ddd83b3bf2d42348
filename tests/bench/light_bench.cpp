// SPDX-License-Identifier: Apache-2.0
// How long the sun's year on one window takes, at steps of ten minutes. Goal: 5 ms.
#include "light/window_sun.h"

#include <benchmark/benchmark.h>

namespace truehang {
namespace {

void sun_of_a_year(benchmark::State& state) {
    GlassOpening opening{Angle::degrees(200.0), Length::mm(1200.0), Length::mm(1400.0),
                         Length::mm(100.0),     Length::mm(150.0),  {}};
    for (int i = 0; i < state.range(0); ++i) {
        opening.skyline.push_back(
            {Angle::degrees(-60.0 + 20.0 * i), Angle::degrees(-40.0 + 20.0 * i), Angle::degrees(12.0)});
    }
    const Place london{Angle::degrees(51.5074), Angle::degrees(-0.1278)};
    for (auto _ : state) {
        benchmark::DoNotOptimize(sun_hours(london, opening, 2026, [](Moment) { return std::chrono::seconds(0); }));
    }
}
BENCHMARK(sun_of_a_year)->ArgName("blocks")->Arg(0)->Arg(6)->Unit(benchmark::kMillisecond);

}  // namespace
}  // namespace truehang

BENCHMARK_MAIN();
