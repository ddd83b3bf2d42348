// SPDX-License-Identifier: Apache-2.0
#include "units/length.h"

#include <gtest/gtest.h>

#include <concepts>
#include <type_traits>

using namespace truehang;
using namespace truehang::literals;

namespace {

template <class A, class B>
concept Addable = requires(A a, B b) {
    a + b;
};
template <class A, class B>
concept Subtractable = requires(A a, B b) {
    a - b;
};
template <class A, class B>
concept Multipliable = requires(A a, B b) {
    a* b;
};
template <class A, class B>
concept Divisible = requires(A a, B b) {
    a / b;
};
template <class A, class B>
concept Comparable = requires(A a, B b) {
    a < b;
};

// What means something compiles ...
static_assert(Addable<Length, Length> && Subtractable<Length, Length> && Comparable<Length, Length>);
static_assert(Multipliable<double, Length> && Multipliable<Length, double> && Divisible<Length, double>);
static_assert(std::same_as<decltype(1_mm / 1_mm), double>);
static_assert(std::same_as<decltype(2.0 * 1_mm), Length>);
static_assert(Addable<Mass, Mass>);

// ... and what doesn't, doesn't.
static_assert(!std::is_convertible_v<double, Length> && !std::is_constructible_v<Length, double>);
static_assert(!std::is_convertible_v<Length, double> && !std::is_constructible_v<double, Length>);
static_assert(!Addable<Length, double> && !Addable<double, Length> && !Addable<Length, int>);
static_assert(!Subtractable<Length, double> && !Subtractable<double, Length>);
static_assert(!Multipliable<Length, Length>, "an area is no length");
static_assert(!Divisible<double, Length>);
static_assert(!Comparable<Length, double> && !Comparable<Length, int>);
static_assert(!Addable<Length, Mass> && !Addable<Length, Angle> && !Comparable<Length, Mass>);
static_assert(!std::is_assignable_v<Length&, double> && !std::is_assignable_v<Length&, Mass>);
static_assert(!std::is_convertible_v<Angle, Length> && !std::is_convertible_v<double, Angle>);

TEST(Length, HoldsTheSameLengthInEveryUnit) {
    EXPECT_EQ(Length::metres(1.24).mm(), 1240.0);
    // The international inch is 25.4 mm exactly (agreement of 1959; NIST SP 811, appendix B).
    EXPECT_EQ(Length::inches(1).mm(), 25.4);
    EXPECT_EQ(Length::mm(254).inches(), 10.0);
    EXPECT_EQ(Length::mm(1240).metres(), 1.24);
}

TEST(Length, AddsSubtractsAndScales) {
    Length sum = 860_mm + 1130_mm;
    EXPECT_EQ(sum, 1990_mm);
    sum += 80_mm;
    EXPECT_EQ(sum - 2138_mm, -68_mm);
    sum -= 70_mm;
    EXPECT_EQ(sum, 2000_mm);
    EXPECT_EQ(sum / 2.0, 0.5 * 2000_mm);
    EXPECT_EQ(1720_mm / 860_mm, 2.0);
    EXPECT_LT(1238_mm, 1240_mm);
}

}  // namespace
