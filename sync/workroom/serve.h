// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "workroom/keeping/kept_at.h"

#include <cstdint>
#include <string>
#include <vector>

namespace truehang::workroom {

struct ServeOptions {
    KeptAt kept;
    std::string listen = "127.0.0.1";
    std::uint16_t port = 8737;
    std::string certificate, key;
    bool without_tls = false;
    bool sign_in = false;
    bool log = false;  ///< a line of JSON on standard error for each answer
    std::string name = "Workroom";
    std::string pairing_code_file;
    std::vector<std::string> reached_at;  ///< addresses to tell phones, in place of those listened on
    double header_seconds = 10.0, idle_seconds = 60.0, stall_seconds = 10.0;
};

/// Receives until SIGTERM or SIGINT. The result is the exit code: 0, or 2 with a line on standard error.
[[nodiscard]] int serve(ServeOptions options);

/// Prints a new pairing code, whether the records are being served or not.
[[nodiscard]] int print_pairing_code(const KeptAt& kept);

}  // namespace truehang::workroom
