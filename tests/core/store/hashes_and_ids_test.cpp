// SPDX-License-Identifier: Apache-2.0
#include "store/sha256.h"
#include "store/uuid7.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <set>

namespace truehang {
namespace {

// NIST, "SHA-256 Example" (one block, two blocks) and the FIPS 180-4 vectors of the empty message and a million "a".
TEST(Sha256, gives_the_published_values) {
    EXPECT_EQ(sha256_hex(""), "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855");
    EXPECT_EQ(sha256_hex("abc"), "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
    EXPECT_EQ(sha256_hex("abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq"),
              "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1");
    EXPECT_EQ(sha256_hex(std::string(1'000'000, 'a')),
              "cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0");
}

RC_GTEST_PROP(Sha256, does_not_depend_on_how_bytes_come_in_pieces, (const std::vector<std::string>& pieces)) {
    Sha256 in_pieces;
    std::string whole;
    for (const std::string& piece : pieces) {
        in_pieces.add(piece);
        whole += piece;
    }
    RC_ASSERT(in_pieces.hex() == sha256_hex(whole));
}

TEST(Sha256, knows_its_own_text) {
    EXPECT_TRUE(is_sha256_hex(sha256_hex("")));
    EXPECT_FALSE(is_sha256_hex(""));
    EXPECT_FALSE(is_sha256_hex(std::string(64, 'A')));
    EXPECT_FALSE(is_sha256_hex(std::string(63, 'a')));
}

// RFC 9562, appendix A.6: the example of a version 7 UUID (0x017F22E279B0 ms, rand_a 0xCC3, rand_b 0x18C4DC0C0C07398F).
TEST(IdMaker, gives_the_example_of_the_standard) {
    std::vector<std::uint64_t> random{0xCC3, 0x18C4DC0C0C07398F};
    std::size_t next = 0;
    IdMaker make([] { return 0x017F22E279B0U; }, [&] { return random.at(next++); });
    EXPECT_EQ(make(), "017f22e2-79b0-7cc3-98c4-dc0c0c07398f");
}

RC_GTEST_PROP(IdMaker, rises_strictly_whatever_clock_and_chance_do, ()) {
    const auto clock =
        *rc::gen::container<std::vector<std::uint64_t>>(100, rc::gen::inRange<std::uint64_t>(1000, 1004));
    const bool all_ones = *rc::gen::arbitrary<bool>();
    std::size_t look = 0;
    IdMaker make([&] { return clock.at(look++); }, [&] { return all_ones ? ~std::uint64_t{0} : std::uint64_t{0}; });
    std::string last;
    for (int i = 0; i < 100; ++i) {
        const std::string id = make();
        RC_ASSERT(id > last);
        RC_ASSERT(id.size() == 36U && id[14] == '7' && std::string("89ab").find(id[19]) != std::string::npos);
        last = id;
    }
}

}  // namespace
}  // namespace truehang
