// SPDX-License-Identifier: Apache-2.0
#include "document/document.h"

#include <gtest/gtest.h>

using namespace truehang;

namespace {

TEST(Rfc3339, TakesTheStandardsOwnExamples) {
    // RFC 3339, section 5.8.
    for (const char* text : {"1985-04-12T23:20:50.52Z", "1996-12-19T16:39:57-08:00", "1990-12-31T23:59:60Z",
                             "1990-12-31T15:59:60-08:00", "1937-01-01T12:00:27.87+00:20"}) {
        EXPECT_TRUE(is_rfc3339(text)) << text;
    }
}

TEST(Rfc3339, TakesWhatItsGrammarTakes) {
    for (const char* text : {"2026-03-14T10:20:00+00:00", "2026-03-14t10:20:00z", "2026-03-14T00:00:00-00:00",
                             "2024-02-29T23:59:59.999999999+14:00", "2000-02-29T00:00:00Z", "0000-01-01T00:00:00Z",
                             "9999-12-31T23:59:59+23:59", "2015-07-01T01:59:60+02:00"}) {
        EXPECT_TRUE(is_rfc3339(text)) << text;
    }
}

TEST(Rfc3339, RefusesWhatHasNoPlaceInTheCalendarOrOnTheClock) {
    // The Gregorian rule: 1900 and 2100 have no 29 February (RFC 3339, appendix C).
    for (const char* text :
         {"2026-02-29T00:00:00Z", "1900-02-29T00:00:00Z", "2100-02-29T00:00:00Z", "2026-04-31T00:00:00Z",
          "2026-13-01T00:00:00Z", "2026-00-01T00:00:00Z", "2026-01-00T00:00:00Z", "2026-01-32T00:00:00Z",
          "2026-01-01T24:00:00Z", "2026-01-01T23:60:00Z", "2026-01-01T23:59:61Z", "2026-01-01T00:00:00+24:00",
          "2026-01-01T00:00:00+01:60", "2026-12-31T23:58:60Z", "2026-12-30T23:59:60Z", "2026-12-31T23:59:60+01:00"}) {
        EXPECT_FALSE(is_rfc3339(text)) << text;
    }
}

TEST(Rfc3339, RefusesOtherSpellings) {
    for (const char* text :
         {"", "yesterday", "2026-03-14", "2026-03-14T10:20:00", "2026-03-14T10:20Z", "2026-03-14 10:20:00Z",
          "2026-03-14T10:20:00+0000", "2026-03-14T10:20:00+00", "2026-03-14T10:20:00 Z", "2026-3-14T10:20:00Z",
          "20260314T102000Z", "2026-03-14T10:20:00.Z", "2026-03-14T10:20:00,5Z", "+2026-03-14T10:20:00Z",
          "2026-03-14T10:20:00Z ", "2026-073T10:20:00Z", "2026-03-14T10:20:00ZZ", "2026-03-14T10:20:-1Z"}) {
        EXPECT_FALSE(is_rfc3339(text)) << text;
    }
}

}  // namespace
