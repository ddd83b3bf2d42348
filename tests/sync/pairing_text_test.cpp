// SPDX-License-Identifier: Apache-2.0
#include "protocol/pairing_text.h"
#include "protocol/digest.h"
#include "protocol/pairing_code.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

using namespace truehang::sync;

namespace {

// The SHA-256 of “abc”: FIPS 180-2, appendix B.1.
const std::string pin = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad";
const std::string whole =
    "truehang:pair?at=https://192.0.2.7:8737&code=7K2M-QX4D&until=2026-03-14T10:30:00.000Z&pin=" + pin;

std::string where_of(const std::string& text) {
    const auto read = read_pairing_text(text);
    return read ? "read" : read.error().where;
}

}  // namespace

TEST(PairingText, isWrittenAsTheProtocolsPageSays) {
    const PairingText text{"https://192.0.2.7:8737", "7K2M-QX4D", read_time("2026-03-14T10:30:00Z"), pin};
    EXPECT_EQ(write_pairing_text(text), whole);
    EXPECT_EQ(write_pairing_text({"http://workroom.local:80", "7K2M-QX4D", {}, ""}),
              "truehang:pair?at=http://workroom.local:80&code=7K2M-QX4D");
    // RFC 3986, section 3.4: brackets must be escaped in a query.
    EXPECT_EQ(write_pairing_text({"https://[2001:db8::7]:8737", "7K2M-QX4D", {}, ""}),
              "truehang:pair?at=https://%5B2001:db8::7%5D:8737&code=7K2M-QX4D");
}

TEST(PairingText, isReadWithWhatSomebodyElseWouldWrite) {
    const auto read = read_pairing_text("  TrueHang:pair?new=1&pin=" + pin +
                                        "&code=7k2m%20qx4d&at=https%3A%2F%2F192.0.2.7%3A8737\r\n");
    ASSERT_TRUE(read.ok());
    EXPECT_EQ(read->address, "https://192.0.2.7:8737");
    EXPECT_EQ(read->code, "7k2m qx4d");
    EXPECT_EQ(read->pin, pin);
    EXPECT_FALSE(read->until);
}

TEST(PairingText, isRefusedWhereAnyOfItIsWrong) {
    ASSERT_EQ(where_of(whole), "read");
    const std::string at = "at=https://192.0.2.7";
    const std::string code = "&code=7K2M-QX4D";
    for (const auto& [text, where] : std::vector<std::pair<std::string, std::string>>{
             {"", ""},
             {"7K2M-QX4D", ""},
             {"https://192.0.2.7", ""},
             {"truehang:send?" + at + code, ""},
             {"truehang:pair", ""},
             {whole + "&more=" + std::string(pairing_text_limit, 'x'), ""},
             {"truehang:pair?" + code, "at"},
             {"truehang:pair?at=ftp://192.0.2.7" + code, "at"},
             {"truehang:pair?at=https://" + code, "at"},
             {"truehang:pair?at=https://a%0Ab" + code, "at"},
             {"truehang:pair?at=https://a%" + code, "at"},
             {"truehang:pair?" + at, "code"},
             {"truehang:pair?" + at + "&code=7K2M-QX4", "code"},
             {"truehang:pair?" + at + code + code, "code"},
             {"truehang:pair?" + at + code + "&until=soon", "until"},
             {"truehang:pair?" + at + code + "&pin=", "pin"},
             {"truehang:pair?" + at + code + "&pin=" + pin.substr(1), "pin"},
             {"truehang:pair?at=http://192.0.2.7" + code + "&pin=" + pin, "pin"}}) {
        EXPECT_EQ(where_of(text), where) << text;
    }
}

RC_GTEST_PROP(PairingTextLaws, whatIsWrittenIsReadTheSame, ()) {
    const auto host = *rc::gen::nonEmpty(rc::gen::container<std::string>(rc::gen::inRange<char>('!', '\x7f')));
    RC_PRE(host.size() < 150);
    PairingText text;
    const bool pinned = *rc::gen::arbitrary<bool>();
    text.address = (pinned ? "https://" : "http://") + host;
    text.code = pairing_code(*rc::gen::arbitrary<std::uint64_t>());
    text.pin = pinned ? hex(sha256(*rc::gen::arbitrary<std::string>())) : "";
    if (*rc::gen::arbitrary<bool>()) {
        text.until = Time(std::chrono::milliseconds(*rc::gen::inRange<std::int64_t>(0, 4'000'000'000'000)));
    }
    const auto read = read_pairing_text(write_pairing_text(text));
    RC_ASSERT(read.ok());
    RC_ASSERT(*read == text);
}

RC_GTEST_PROP(PairingTextLaws, whateverIsReadMeansTheSameWrittenAgain, ()) {
    auto text = whole;
    const auto changes = *rc::gen::inRange(1, 4);
    for (int i = 0; i < changes; ++i) {
        text.at(*rc::gen::inRange<std::size_t>(14, text.size())) = *rc::gen::elementOf(std::string("&=%:/aA07k\n[é"));
    }
    const auto read = read_pairing_text(text);
    RC_CLASSIFY(read.ok());
    if (read) {
        const auto again = read_pairing_text(write_pairing_text(*read));
        RC_ASSERT(again.ok());
        RC_ASSERT(*again == *read);
    }
}
