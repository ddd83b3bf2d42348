// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <vector>

namespace truehang::workroom {

/// How phones reach this workroom.
struct Reach {
    std::vector<std::string> addresses;   ///< "https://192.0.2.7:8737", the likeliest first
    std::string pin;                      ///< of the workroom's own certificate, as `PairingText::pin`; else empty
    bool from_this_machine_only = false;  ///< nobody else can
};

}  // namespace truehang::workroom
