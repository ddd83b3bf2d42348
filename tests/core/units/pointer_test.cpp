// SPDX-License-Identifier: Apache-2.0
#include "units/pointer.h"

#include <gtest/gtest.h>

namespace truehang {

// RFC 6901, section 5 (the pointers) and the end of section 3 (`~01` is `~1`, not `/`).
TEST(Pointer, isReadInSteps) {
    using Steps = std::vector<std::string>;
    EXPECT_EQ(pointer_steps(""), Steps{});
    EXPECT_EQ(pointer_steps("/foo/0"), (Steps{"foo", "0"}));
    EXPECT_EQ(pointer_steps("/"), Steps{""});
    EXPECT_EQ(pointer_steps("/a~1b"), Steps{"a/b"});
    EXPECT_EQ(pointer_steps("/m~0n"), Steps{"m~n"});
    EXPECT_EQ(pointer_steps("/k\"l/ "), (Steps{"k\"l", " "}));
    EXPECT_EQ(pointer_steps("/~01"), Steps{"~1"});
}

}  // namespace truehang
