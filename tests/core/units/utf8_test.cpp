// SPDX-License-Identifier: Apache-2.0
#include "units/utf8.h"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <string>

using namespace truehang;

// RFC 3629, section 7: its examples, and section 4's borders: the first and last character of each length, those round
// the surrogates, U+0000.
TEST(Utf8, isReadCharacterByCharacter) {
    using namespace std::string_view_literals;
    for (const auto text : {"\x41\xe2\x89\xa2\xce\x91\x2e"sv, "\xed\x95\x9c\xea\xb5\xad\xec\x96\xb4"sv,
                            "\xe6\x97\xa5\xe6\x9c\xac\xe8\xaa\x9e"sv, "\xef\xbb\xbf\xf0\xa3\x8e\xb4"sv, "\xc2\x80"sv,
                            "\xdf\xbf"sv, "\xe0\xa0\x80"sv, "\xed\x9f\xbf"sv, "\xee\x80\x80"sv, "\xf0\x90\x80\x80"sv,
                            "\xf4\x8f\xbf\xbf"sv, "\0a"sv, ""sv}) {
        EXPECT_TRUE(is_utf8(text)) << text;
    }
    EXPECT_EQ(character_length(""), 0U);
    EXPECT_EQ(character_length("\0"sv), 1U);
    EXPECT_EQ(character_length("\xc2\x80z"), 2U);
    EXPECT_EQ(character_length("\xe2\x89\xa2z"), 3U);
    EXPECT_EQ(character_length("\xf0\xa3\x8e\xb4z"), 4U);
}

// Section 3 and 10: a byte that goes on alone, one cut off, more bytes than needed, surrogates, beyond U+10FFFF.
TEST(Utf8, isntWhatIsCutOffTooLongOrNoCharacter) {
    for (const auto* text :
         {"\x80", "a\xff", "\xc3", "\xc3(", "\xe2\x82", "\xc0\x80", "\xc1\xbf", "\xe0\x9f\xbf", "\xf0\x8f\xbf\xbf",
          "\xed\xa0\x80", "\xed\xbf\xbf", "\xf4\x90\x80\x80", "\xf5\x80\x80\x80"}) {
        EXPECT_FALSE(is_utf8(text)) << text;
    }
}

// Against another implementation: nlohmann's JSON writer, which throws for what isn't UTF-8.
TEST(Utf8, isWhatAnotherReaderTakesForIt) {
    const auto other = [](const std::string& text) {
        try {
            return !nlohmann::json(text).dump().empty();
        } catch (const nlohmann::json::exception&) {
            return false;
        }
    };
    for (unsigned first = 0; first < 256; ++first) {
        for (unsigned second = 0; second < 256; ++second) {
            for (const auto* end : {"", "\x80", "\xbf\xbf", "z"}) {
                const auto text = std::string{static_cast<char>(first), static_cast<char>(second)} + end;
                ASSERT_EQ(is_utf8(text), other(text)) << first << ' ' << second << ' ' << end;
            }
        }
    }
}
