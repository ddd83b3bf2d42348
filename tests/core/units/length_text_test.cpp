// SPDX-License-Identifier: Apache-2.0
#include "units/length_text.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>

using namespace truehang;

namespace {

struct Reads {
    const char* typed;
    LengthUnit entry_unit;
    double mm;
    LengthUnit unit;
    bool unit_written;
};

class ReadLength : public testing::TestWithParam<Reads> {};

TEST_P(ReadLength, ReadsExactly) {
    const Reads& expected = GetParam();
    const auto read = read_length(expected.typed, expected.entry_unit);
    ASSERT_TRUE(read.ok()) << expected.typed << ": " << read.error().text;
    // Exactly: the double nearest to the true length, with no tolerance.
    EXPECT_EQ(read->length.mm(), expected.mm) << expected.typed;
    EXPECT_EQ(read->unit, expected.unit) << expected.typed;
    EXPECT_EQ(read->unit_written, expected.unit_written) << expected.typed;
}

constexpr auto mm = LengthUnit::mm;
constexpr auto cm = LengthUnit::cm;
constexpr auto m = LengthUnit::m;
constexpr auto in = LengthUnit::in;

// Expected lengths by hand: 1 in = 25.4 mm, 1 ft = 304.8 mm; 48 3/8 in = 48.375 * 25.4 = 1228.725 mm.
INSTANTIATE_TEST_SUITE_P(Metric, ReadLength,
                         testing::Values(Reads{"1240", mm, 1240, mm, false}, Reads{"0", mm, 0, mm, false},
                                         Reads{"124.5", cm, 1245, cm, false}, Reads{"124,5", cm, 1245, cm, false},
                                         Reads{"124.5", mm, 124.5, mm, false}, Reads{"124,5 cm", mm, 1245, cm, true},
                                         Reads{"124.5cm", mm, 1245, cm, true}, Reads{"1.24 m", mm, 1240, m, true},
                                         Reads{"1,24 m", in, 1240, m, true}, Reads{"1.240 m", mm, 1240, m, true},
                                         Reads{"1,240", m, 1240, m, false}, Reads{"1.24", m, 1240, m, false},
                                         Reads{"1240 mm", in, 1240, mm, true}, Reads{"1240mm", cm, 1240, mm, true},
                                         Reads{" 1240 ", mm, 1240, mm, false},
                                         Reads{"1240\u00a0mm", mm, 1240, mm, true},
                                         Reads{"1240\u202fmm", mm, 1240, mm, true},
                                         Reads{"1240 MM", mm, 1240, mm, true}, Reads{".5", m, 500, m, false},
                                         Reads{"0,5 m", mm, 500, m, true}, Reads{"100000", mm, 100000, mm, false},
                                         Reads{"100 m", mm, 100000, m, true}, Reads{"0001240", mm, 1240, mm, false},
                                         Reads{"10½ cm", mm, 105, cm, true}, Reads{"10 1/2 cm", mm, 105, cm, true},
                                         Reads{"1240.125 mm", mm, 1240.125, mm, true}, Reads{"0.1", mm, 0.1, mm, false},
                                         Reads{"0.3", cm, 3, cm, false}));

INSTANTIATE_TEST_SUITE_P(
    Inches, ReadLength,
    testing::Values(Reads{"48 3/8", in, 1228.725, in, false}, Reads{"48 3/8 in", mm, 1228.725, in, true},
                    Reads{"48 3/8\"", mm, 1228.725, in, true}, Reads{"48-3/8 in", mm, 1228.725, in, true},
                    Reads{"48⅜", in, 1228.725, in, false}, Reads{"48 ⅜ in", mm, 1228.725, in, true},
                    Reads{"48 3\u20448 in", mm, 1228.725, in, true}, Reads{"48.375 in", mm, 1228.725, in, true},
                    Reads{"48,375", in, 1228.725, in, false}, Reads{"48", in, 1219.2, in, false},
                    Reads{"1/2", in, 12.7, in, false}, Reads{"½ in", mm, 12.7, in, true},
                    Reads{"¼ in", mm, 6.35, in, true}, Reads{"¾ in", mm, 19.05, in, true},
                    Reads{"⅛ in", mm, 3.175, in, true}, Reads{"⅝ in", mm, 15.875, in, true},
                    Reads{"⅞ in", mm, 22.225, in, true}, Reads{"1/64 in", mm, 0.396875, in, true},
                    Reads{"48 6/16 in", mm, 1228.725, in, true}, Reads{"2 inches", mm, 50.8, in, true},
                    Reads{"1 inch", mm, 25.4, in, true}, Reads{"48″", mm, 1219.2, in, true},
                    Reads{"48”", mm, 1219.2, in, true}, Reads{"48''", mm, 1219.2, in, true}));

INSTANTIATE_TEST_SUITE_P(
    Feet, ReadLength,
    testing::Values(Reads{"4' 3 1/2\"", mm, 1308.1, in, true}, Reads{"4' 3 1/2\"", in, 1308.1, in, true},
                    Reads{"4'3½\"", mm, 1308.1, in, true}, Reads{"4′ 3½″", mm, 1308.1, in, true},
                    Reads{"4’ 3 1/2”", mm, 1308.1, in, true}, Reads{"4'-3 1/2\"", mm, 1308.1, in, true},
                    Reads{"4 ft 3 1/2 in", mm, 1308.1, in, true}, Reads{"4 ft 3.5 in", mm, 1308.1, in, true},
                    Reads{"4'3", mm, 1295.4, in, true}, Reads{"4'", mm, 1219.2, in, true},
                    Reads{"4 feet", mm, 1219.2, in, true}, Reads{"1 foot", mm, 304.8, in, true},
                    Reads{"4.5 ft", mm, 1371.6, in, true}, Reads{"0' 3 1/2''", mm, 88.9, in, true},
                    Reads{"4' 0\"", mm, 1219.2, in, true}, Reads{"4' 11 7/8\"", mm, 1520.825, in, true}));

struct Refuses {
    const char* typed;
    LengthUnit entry_unit;
    ErrorCode code;
};

class RefuseLength : public testing::TestWithParam<Refuses> {};

TEST_P(RefuseLength, SaysWhatIsUnderstood) {
    const Refuses& expected = GetParam();
    const auto read = read_length(expected.typed, expected.entry_unit);
    ASSERT_FALSE(read.ok()) << expected.typed << " was read as " << read->length.mm();
    EXPECT_EQ(read.error().code, expected.code) << expected.typed << ": " << read.error().text;
    ASSERT_FALSE(read.error().text.empty());
    EXPECT_EQ(read.error().text.back(), '.');
}

INSTANTIATE_TEST_SUITE_P(
    Unreadable, RefuseLength,
    testing::Values(Refuses{"", mm, ErrorCode::unreadable}, Refuses{"   ", mm, ErrorCode::unreadable},
                    Refuses{"abc", mm, ErrorCode::unreadable}, Refuses{"1240 km", mm, ErrorCode::unreadable},
                    Refuses{"1 240", mm, ErrorCode::unreadable}, Refuses{"1\u00a0240", mm, ErrorCode::unreadable},
                    Refuses{"1,240.5", mm, ErrorCode::unreadable}, Refuses{"1.240,5", mm, ErrorCode::unreadable},
                    Refuses{"12..4", mm, ErrorCode::unreadable}, Refuses{"124.", mm, ErrorCode::unreadable},
                    Refuses{"1e3", mm, ErrorCode::unreadable}, Refuses{"0x10", mm, ErrorCode::unreadable},
                    Refuses{"inf", mm, ErrorCode::unreadable}, Refuses{"nan", mm, ErrorCode::unreadable},
                    Refuses{"+5", mm, ErrorCode::unreadable}, Refuses{"12+4", mm, ErrorCode::unreadable},
                    Refuses{"1 m 24", mm, ErrorCode::unreadable}, Refuses{"1 m 24 cm", mm, ErrorCode::unreadable},
                    Refuses{"12 mm mm", mm, ErrorCode::unreadable}, Refuses{"mm", mm, ErrorCode::unreadable},
                    Refuses{"1240;", mm, ErrorCode::unreadable}, Refuses{"1240\n", mm, ErrorCode::unreadable},
                    Refuses{"0.1234567", mm, ErrorCode::unreadable}, Refuses{"١٢٤٠", mm, ErrorCode::unreadable}));

INSTANTIATE_TEST_SUITE_P(
    UnreadableFractions, RefuseLength,
    testing::Values(Refuses{"48 3/0", in, ErrorCode::unreadable}, Refuses{"48 3/7", in, ErrorCode::unreadable},
                    Refuses{"48 9/8", in, ErrorCode::unreadable}, Refuses{"483/8", in, ErrorCode::unreadable},
                    Refuses{"48 0/8", in, ErrorCode::unreadable}, Refuses{"48.5 3/8", in, ErrorCode::unreadable},
                    Refuses{"48 3/8 1/2", in, ErrorCode::unreadable}, Refuses{"1/2/4", in, ErrorCode::unreadable},
                    Refuses{"48 3/", in, ErrorCode::unreadable}, Refuses{"/8", in, ErrorCode::unreadable},
                    Refuses{"48 1.5/8", in, ErrorCode::unreadable}, Refuses{"48½½", in, ErrorCode::unreadable},
                    Refuses{"4' 13\"", in, ErrorCode::unreadable}, Refuses{"4' 12\"", in, ErrorCode::unreadable},
                    Refuses{"1'240", mm, ErrorCode::unreadable}, Refuses{"1'005", mm, ErrorCode::unreadable},
                    Refuses{"4.5' 3\"", in, ErrorCode::unreadable}, Refuses{"4½' 3\"", in, ErrorCode::unreadable},
                    Refuses{"4' 3'", in, ErrorCode::unreadable}, Refuses{"4' 3 cm", in, ErrorCode::unreadable},
                    Refuses{"4\" 3", in, ErrorCode::unreadable}, Refuses{"4' 3\" 1/2", in, ErrorCode::unreadable},
                    Refuses{"'", in, ErrorCode::unreadable}, Refuses{"\"", in, ErrorCode::unreadable}));

INSTANTIATE_TEST_SUITE_P(
    AmbiguousOrOutOfRange, RefuseLength,
    testing::Values(Refuses{"1,240", mm, ErrorCode::ambiguous}, Refuses{"1.240", mm, ErrorCode::ambiguous},
                    Refuses{"12,400", mm, ErrorCode::ambiguous}, Refuses{"1,240 mm", cm, ErrorCode::ambiguous},
                    Refuses{"48 3/8", mm, ErrorCode::ambiguous}, Refuses{"48⅜", cm, ErrorCode::ambiguous},
                    Refuses{"1/2", m, ErrorCode::ambiguous}, Refuses{"-5", mm, ErrorCode::out_of_range},
                    Refuses{"−5", mm, ErrorCode::out_of_range}, Refuses{"-48 3/8 in", mm, ErrorCode::out_of_range},
                    Refuses{"100000.1", mm, ErrorCode::out_of_range}, Refuses{"100001", mm, ErrorCode::out_of_range},
                    Refuses{"1240", m, ErrorCode::out_of_range}, Refuses{"10001", cm, ErrorCode::out_of_range},
                    Refuses{"4000", in, ErrorCode::out_of_range}, Refuses{"12400000", mm, ErrorCode::out_of_range},
                    Refuses{"999999999999999999999999", mm, ErrorCode::out_of_range},
                    Refuses{"329' 0\"", in, ErrorCode::out_of_range}));

TEST(ReadLengthBounds, TakesNoLongText) {
    const auto read = read_length(std::string(100000, '1'), mm);
    ASSERT_FALSE(read.ok());
    EXPECT_EQ(read.error().code, ErrorCode::unreadable);
}

struct Writes {
    double mm;
    LengthStyle style;
    const char* text;
};

class WriteLength : public testing::TestWithParam<Writes> {};

TEST_P(WriteLength, AsPeopleWriteIt) {
    EXPECT_EQ(write_length(Length::mm(GetParam().mm), GetParam().style), GetParam().text);
}

INSTANTIATE_TEST_SUITE_P(
    Everywhere, WriteLength,
    testing::Values(Writes{1240, {mm}, "1240"}, Writes{1240.04, {mm}, "1240"}, Writes{1240.25, {mm}, "1240.3"},
                    Writes{124.5, {mm, 8, ','}, "124,5"}, Writes{0, {mm}, "0"}, Writes{-0.01, {mm}, "0"},
                    Writes{-120, {mm}, "-120"}, Writes{1000, {mm, 8, '.', true}, "1000 mm"},
                    Writes{1245, {cm}, "124.5"}, Writes{1240, {cm, 8, '.', true}, "124 cm"},
                    Writes{1245.5, {cm, 8, ','}, "124,55"}, Writes{1240, {m}, "1.240"},
                    Writes{1240, {m, 8, ',', true}, "1,240 m"}, Writes{1240.6, {m}, "1.241"},
                    Writes{1228.725, {in}, "48 3/8"}, Writes{1228.725, {in, 16, '.', true}, "48 3/8 in"},
                    Writes{12.7, {in}, "1/2"}, Writes{25.4, {in}, "1"}, Writes{0, {in}, "0"}, Writes{0.5, {in}, "0"},
                    Writes{1.5875, {in, 16}, "1/16"}, Writes{1.5875, {in, 8}, "1/8"}, Writes{1219.0, {in}, "48"},
                    Writes{-12.7, {in}, "-1/2"}, Writes{-0.5, {in}, "0"}, Writes{-1228.725, {in}, "-48 3/8"}));

TEST(LengthUnits, HaveTheirWords) {
    for (const LengthUnit unit : {mm, cm, m, in}) {
        EXPECT_EQ(length_unit(word_of(unit)), unit);
    }
    EXPECT_EQ(length_unit("ft"), std::nullopt);
    EXPECT_EQ(length_unit("MM"), std::nullopt);
}

// Laws.

rc::Gen<char> any_decimal_mark() { return rc::gen::element('.', ','); }

RC_GTEST_PROP(LengthTextLaw, TenthsOfAMillimetreComeBackExactly, ()) {
    const auto tenths = *rc::gen::inRange(0, 1000001);
    const auto unit = *rc::gen::element(mm, cm);
    const LengthStyle style{unit, 8, *any_decimal_mark(), *rc::gen::arbitrary<bool>()};
    const Length length = Length::mm(tenths / 10.0);
    const auto read = read_length(write_length(length, style), unit);
    RC_ASSERT(read.ok());
    RC_ASSERT(read->length == length);
    RC_ASSERT(read->unit == unit);
    RC_ASSERT(read->unit_written == style.with_unit);
}

RC_GTEST_PROP(LengthTextLaw, WholeMillimetresComeBackFromMetres, ()) {
    const Length length = Length::mm(*rc::gen::inRange(0, 100001));
    const LengthStyle style{m, 8, *any_decimal_mark(), *rc::gen::arbitrary<bool>()};
    const auto read = read_length(write_length(length, style), m);
    RC_ASSERT(read.ok());
    RC_ASSERT(read->length == length);
}

RC_GTEST_PROP(LengthTextLaw, SixteenthsComeBackFromInches, ()) {
    const auto sixteenths = *rc::gen::inRange(0, 62992);
    const Length length = Length::mm(sixteenths * 254 / 160.0);
    const auto read = read_length(write_length(length, {in, 16, '.', *rc::gen::arbitrary<bool>()}), in);
    RC_ASSERT(read.ok());
    RC_ASSERT(read->length == length);
}

RC_GTEST_PROP(LengthTextLaw, FeetAndInchesAreTheSameAsInches, ()) {
    const auto feet = *rc::gen::inRange(0, 300);
    const auto inches = *rc::gen::inRange(0, 12);
    const auto fraction = *rc::gen::element<std::string>("", " 1/2", "½", " 3/8", " 15/16", "-1/64");
    const auto split = read_length(std::to_string(feet) + "' " + std::to_string(inches) + fraction + "\"", mm);
    const auto whole = read_length(std::to_string(12 * feet + inches) + fraction + " in", mm);
    RC_ASSERT(split.ok());
    RC_ASSERT(whole.ok());
    RC_ASSERT(split->length == whole->length);
}

RC_GTEST_PROP(LengthTextLaw, WrittenIsNearest, ()) {
    const Length length = Length::mm(*rc::gen::inRange(0, 100000000) / 1001.0);
    const auto denominator = *rc::gen::element(8, 16);
    const auto read = read_length(write_length(length, {in, denominator}), in);
    RC_ASSERT(read.ok());
    RC_ASSERT(std::abs(read->length.mm() - length.mm()) <= 25.4 / denominator / 2.0 + 1e-4);
}

RC_GTEST_PROP(LengthTextLaw, AnyTextIsReadInRangeOrRefusedWithAReason, ()) {
    const auto pieces = *rc::gen::container<std::vector<std::string>>(
        rc::gen::element<std::string>("0", "1", "48", "3", "8", "/", " ", "'", "\"", "½", "⅜", ".", ",", "-", "mm",
                                      "cm", "m", "in", "ft", "\u00a0", "\xff", "\xc2", "e", "″", "’", "999999"));
    std::string typed;
    for (const std::string& piece : pieces) {
        typed += piece;
    }
    const auto read = read_length(typed, *rc::gen::element(mm, cm, m, in));
    if (read.ok()) {
        RC_ASSERT(read->length.mm() >= 0.0);
        RC_ASSERT(read->length.mm() <= 100000.0);
    } else {
        RC_ASSERT(!read.error().text.empty());
    }
}

// Derived: an inch is 25.4 mm (international yard and pound agreement, 1959), a sixteenth 1.5875 mm.
TEST(SaidLength, IsInTheSurveyorsUnit) {
    EXPECT_EQ(said_length(Length::mm(12.4), LengthUnit::mm), "12 mm");
    EXPECT_EQ(said_length(Length::mm(12.4), LengthUnit::cm), "1.2 cm");
    EXPECT_EQ(said_length(Length::mm(1242.0), LengthUnit::m), "1.242 m");
    EXPECT_EQ(said_length(Length::mm(12.7), LengthUnit::in), "1/2 in");
    EXPECT_EQ(said_length(Length::mm(25.4 + 1.6), LengthUnit::in), "1 1/16 in");
}

}  // namespace
