// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>

namespace truehang {

/// By what a printed sheet says of which revision it is, and where whether that is still the newest is told.
struct SheetStamp {
    std::string code;     ///< of the revision's document; empty: the workroom hasn't confirmed it
    std::string address;  ///< of the page that tells, as a picture code too; empty: not known
    long long revision = 0;
    std::string received;  ///< RFC 3339: when it came in
};

/// "revision 3, came in 14 March 2026, 10:20 UTC", or that it isn't in the workroom.
[[nodiscard]] std::string which_revision(const SheetStamp& stamp);

}  // namespace truehang
